"""The demonstration is held to what three surgeons' protocols after hip abductor repair agree on.

The protocols' time tables were read; A, B and C stand for them here as in the programme's own sources. Where
a number is the demonstration's own choice, the test says so.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from generator.body.shown import with_angles
from generator.catalogue.exercise import JointWork
from generator.catalogue.programme import Programme, Use
from generator.catalogue.restricted import (
    SETTLING,
    Track,
    Work,
    entry,
    work_of,
    work_of_daily_life,
    work_of_use,
)
from generator.catalogue.terms import Against, Carries, Demand, How, Joint, Movement, Posture
from generator.catalogue.values import Catalogue
from generator.checks import check_content
from generator.problems import Severity
from generator.progression.weeks import windows
from generator.progression.withheld import withheld_variations
from generator.reading import read_content, read_files

CONTENT = Path(__file__).parents[2] / "content"
PROGRAMME = "hip-abductor-repair"
OWN_STRENGTH = frozenset({How.ASSISTED, How.ACTIVE, How.RESISTED})


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    """Return the demonstration's catalogue."""
    read = read_content(CONTENT).catalogue
    assert read is not None
    return with_angles(read)


def entries(catalogue: Catalogue) -> Iterator[tuple[int, int, str, Work]]:
    """Yield week and delayed week of entry, name and work of each use and of each variation it offers."""
    programme = catalogue.programmes[PROGRAMME]
    withheld = withheld_variations(catalogue, programme)
    for phase in programme.phases:
        for use in phase.uses:
            exercise = catalogue.exercises[use.use]
            weeks = entry(phase, use, Track.USUAL), entry(phase, use, Track.DELAYED)
            yield *weeks, use.use, work_of_use(exercise, use)
            for variation in exercise.variations.values():
                if f"{use.use}/{variation.id}" not in withheld[phase.number]:
                    yield *weeks, f"{use.use}/{variation.id}", work_of(exercise, variation)
        for id_ in phase.daily_life:
            item = catalogue.daily_life[id_]
            yield phase.week, phase.delayed_week, id_, work_of_daily_life(item)


def abducts(work: Work, ways: frozenset[How], against: Against | None = None) -> bool:
    """Return whether the operated hip is abducted in one of the ways."""
    return any(
        (item.joint, item.movement) == (Joint.HIP, Movement.ABDUCTION)
        and item.how in ways
        and (against is None or item.against is against)
        for item in work.operated.moves
    )


def moves(work: Work, movement: Movement) -> Iterator[JointWork]:
    """Yield the operated hip's movements in one direction."""
    for item in work.operated.moves:
        if (item.joint, item.movement) == (Joint.HIP, movement):
            yield item


def reaches(work: Work, movement: Movement) -> float:
    """Return how far the operated hip goes in one direction: by its poses, else by what is typed."""
    shown = work.operated.shown_angle(Joint.HIP, movement)
    if work.operated.shown is not None:
        return shown.degrees if shown else 0.0
    return max((180.0 if item.to is None else item.to for item in moves(work, movement)), default=0.0)


def test_no_active_abduction_before_week_6(catalogue: Catalogue) -> None:
    """A, B and C: no active abduction in the first 4 weeks; 6 weeks are the demonstration's own choice."""
    early = [name for week, _, name, work in entries(catalogue) if week < 6 and abducts(work, OWN_STRENGTH)]
    assert early == []


def test_no_abduction_against_gravity_before_week_12(catalogue: Catalogue) -> None:
    """C: no side-lying abduction against gravity before week 12; A and B: concentric abduction from week 12.

    Week 15 on the delayed track is the demonstration's own choice.
    """
    lifted = [
        (week, delayed)
        for week, delayed, _, work in entries(catalogue)
        if abducts(work, OWN_STRENGTH, Against.GRAVITY)
    ]
    assert lifted
    assert all(week >= 12 and delayed >= 15 for week, delayed in lifted)


def test_side_lying_abduction_enters_in_week_12(catalogue: Catalogue) -> None:
    """The exercise that is named for it: not before week 12, delayed 15."""
    phase, use = next(
        (phase, use)
        for phase in catalogue.programmes[PROGRAMME].phases
        for use in phase.uses
        if use.use == "side-lying-abduction"
    )
    assert (entry(phase, use, Track.USUAL), entry(phase, use, Track.DELAYED)) == (12, 15)


def test_weight_is_limited_for_six_weeks(catalogue: Catalogue) -> None:
    """B and C: touch weight of about 20 lb (9 kg), C until week 6; A: partial until week 6."""
    heavy = [
        name
        for week, _, name, work in entries(catalogue)
        if week < 6 and work.operated.carries not in (Carries.NONE, Carries.TOUCH)
    ]
    assert heavy == []


def test_nobody_stands_on_the_operated_leg_alone_before_week_8(catalogue: Catalogue) -> None:
    """A: as tolerated with crutches in weeks 7 and 8; B: full weight by week 8; C: from week 6."""
    alone = [
        name
        for week, _, name, work in entries(catalogue)
        if week < 8 and work.operated.carries is Carries.ONE_LEG
    ]
    assert alone == []


def test_hip_flexion_and_midline_are_kept_to_week_6(catalogue: Catalogue) -> None:
    """B: no flexion above 90 degrees, no adduction past the midline to week 6; C: flexion 0 to 90.

    Angles from poses count, start pose included; 3 degrees are allowed where nobody typed the angle.
    """
    for week, _, name, work in entries(catalogue):
        if week < 6:
            assert reaches(work, Movement.FLEXION) <= 90, name
            assert reaches(work, Movement.ADDUCTION) <= SETTLING, name
            assert reaches(work, Movement.EXTENSION) <= SETTLING, name


def test_nothing_turns_the_leg_out_or_in_before_week_4(catalogue: Catalogue) -> None:
    """A, B and C: no passive external rotation to week 4; A and C: no active internal rotation."""
    for week, _, name, work in entries(catalogue):
        if week < 4:
            out = [item.how for item in moves(work, Movement.EXTERNAL_ROTATION)]
            assert How.PASSIVE not in out, name
            assert not OWN_STRENGTH & {item.how for item in moves(work, Movement.INTERNAL_ROTATION)}, name


def test_squeezing_the_buttock_waits_for_week_2(catalogue: Catalogue) -> None:
    """A and B: extension isometrics from week 2."""
    first = min(week for week, _, name, _ in entries(catalogue) if name == "buttock-squeeze")
    assert first >= 2


def test_phases_leave_no_gap(catalogue: Catalogue) -> None:
    """The weeks that the demonstration chose: 0, 6, 10 (delayed 13), 16 (delayed 20)."""
    found = windows(catalogue.programmes[PROGRAMME])
    assert [(item.start, item.delayed_start) for item in found] == [(0, 0), (6, 6), (10, 13), (16, 20)]
    assert [item.end for item in found] == [6, 10, 16, None]


def test_no_hop_lunge_or_squat_on_one_leg_in_early_strengthening(catalogue: Catalogue) -> None:
    """Whatever their activity: low activity is no permission (common practice, no source)."""
    programme = catalogue.programmes[PROGRAMME]
    for phase in programme.phases[:3]:
        for use in phase.uses:
            words = set(use.use.split("-"))
            assert not words & {"hop", "lunge", "jump"}, use.use
            assert not {"single", "leg", "squat"} <= words, use.use
            assert work_of_use(catalogue.exercises[use.use], use).demand is not Demand.JUMPING


def test_pain_stays_low_while_the_repair_is_protected(catalogue: Catalogue) -> None:
    """At most 2 of 10 (safe in the pain-monitoring model, recalled): the demonstration's own choice."""
    for phase in catalogue.programmes[PROGRAMME].phases[:2]:
        assert max(phase.pain.during, phase.pain.after, phase.pain.next_morning) <= 2


def test_activity_alone_would_let_the_clam_in_too_early() -> None:
    """A band does not enforce the protocols: only the restriction keeps the clam out of the second phase."""
    found = codes_with_use("clam")
    assert "forbidden" in found
    assert "demand-too-high" not in found


def codes_with_use(exercise: str) -> set[str]:
    """Return the codes found when an editor adds the exercise to the phase that starts in week 6."""
    path = f"programmes/{PROGRAMME}.yml"
    files: Mapping[str, bytes] = {
        item.relative_to(CONTENT).as_posix(): item.read_bytes() for item in sorted(CONTENT.rglob("*.yml"))
    }
    text = files[path].decode("utf-8")
    second = text.index("    uses:\n", text.index("name: Wake the muscles"))
    use = f"      - use: {exercise}\n        dose-steps: [1 x 6]\n        times-a-day: 1\n"
    use += "        days-a-week: 3\n        rest-days: 1\n        then: ends\n"
    changed = text[:second] + "    uses:\n" + use + text[second + len("    uses:\n") :]
    catalogue = read_files({**files, path: changed.encode("utf-8")}).catalogue
    assert catalogue is not None
    return {
        problem.code for problem in check_content(catalogue) if f"'{exercise}' in phase 2" in problem.message
    }


def test_the_demonstration_has_no_errors_of_the_trade(catalogue: Catalogue) -> None:
    """All rules hold on all programmes of the demonstration."""
    errors = [item.message for item in check_content(catalogue) if item.severity is Severity.ERROR]
    assert errors == []


def uses_of(programme: Programme) -> Iterator[Use]:
    """Yield every use."""
    for phase in programme.phases:
        yield from phase.uses


def test_nobody_lies_on_the_operated_side_before_week_12(catalogue: Catalogue) -> None:
    """Common practice; the weeks are the demonstration's own choice."""
    for week, delayed, name, work in entries(catalogue):
        if work.operated.lain_on:
            assert (week >= 12, delayed >= 15) == (True, True), name
    lying = [use.use for use in uses_of(catalogue.programmes[PROGRAMME])]
    assert any(catalogue.exercises[id_].posture is Posture.ON_SIDE for id_ in lying)
