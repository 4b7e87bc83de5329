"""A booklet for one patient: wishes narrow what the programme allows, and nothing they ask for widens it."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from generator.body.ranges import LARGEST
from generator.body.shown import with_angles
from generator.catalogue.base import Text
from generator.catalogue.dose import DoseKind, DoseStep, is_harder
from generator.catalogue.in_force import in_force
from generator.catalogue.one_patient import (
    PATIENT_WEIGHT,
    Avoided,
    LeftOut,
    LeftOutKind,
    Limit,
    OperatedSide,
    Wishes,
)
from generator.catalogue.programme import Phase, Use
from generator.catalogue.restricted import Track, is_forbidden, work_of
from generator.catalogue.terms import Joint, Movement, Position, Surface, Then, WeightBearing
from generator.catalogue.values import Catalogue
from generator.checks import check_content
from generator.problems import Severity
from generator.progression.one_patient import Narrowed, narrow
from generator.reading import read_content
from tests.content import ANKLE_PUMP, FILES, catalogue_of, with_change

PROGRAMME = "programmes/tendon-repair.yml"
PROJECT = Path(__file__).parents[2]
HEEL_RAISE_USE = "      - use: heel-raise\n"
PUMP_USE = """\
      - use: ankle-pump
        dose-steps: [5 times an hour, 10 times an hour]
        times-a-day: 1
        days-a-week: 7
        then: ends
"""
SEATED = """\
      - use: seated-raise
        dose-steps: [1 x 8, 2 x 8]
        times-a-day: 1
        days-a-week: 3
        rest-days: 1
        then: replaced
        replaced-by: heel-raise
"""
TOE_CURL = ANKLE_PUMP.replace("name: Ankle pump", "name: Toe curl")
HALF_WEIGHT = """\
  - kind: weight-bearing
    id: half-weight
    leg: operated
    allows: partial
    percent: 50
    words: Put no more than half your weight on your operated leg.
    why: The repair is young.
    until: {week: 10, delayed-week: 12, phase: 2}
    source: {text: Invented for tests, status: invented}
"""


def narrowed(files: Mapping[str, str] = FILES, phase: int = 2, **wishes: Any) -> Narrowed:
    """Return the small content narrowed by wishes."""
    return narrow(catalogue_of(files), "tendon-repair", phase, Wishes(**wishes))


def phase_of(found: Narrowed, number: int = 2, programme: str = "tendon-repair") -> Phase:
    """Return the narrowed phase of wishes that were not refused."""
    assert found.problems == ()
    return found.catalogue.programmes[programme].phase(number)


def uses(found: Narrowed, number: int = 2) -> list[str]:
    """Return the exercises that stay."""
    return [use.use for use in phase_of(found, number).uses]


def refused(found: Narrowed) -> list[str]:
    """Return code, place and message of each refusal; nothing was changed then."""
    assert found.told.left_out == ()
    return [f"{problem.code} {problem.place}: {problem.message}" for problem in found.problems]


def two_exercises() -> dict[str, str]:
    """Return the content with ankle pump and heel raise both beginning in phase 2, and one more before."""
    files = with_change(
        {**FILES, "exercises/toe-curl.yml": TOE_CURL}, PROGRAMME, "use: ankle-pump", "use: toe-curl"
    )
    return with_change(files, PROGRAMME, HEEL_RAISE_USE, PUMP_USE + HEEL_RAISE_USE)


def test_no_wish_changes_nothing() -> None:
    """Without a wish the booklet is the programme's own."""
    found = narrowed()
    assert found.catalogue == catalogue_of()
    assert (found.told.left_out, found.told.dates, found.withheld) == ((), None, frozenset())


def test_what_strains_is_replaced_by_its_alternative() -> None:
    """The alternative comes with the doses of the phase in which it was reached."""
    found = narrowed(avoid=Avoided(strains=frozenset({"knee"})))
    (use,) = phase_of(found).uses
    assert use.use == "ankle-pump"
    assert [step.count for step in use.dose_steps] == [5, 10]
    assert use.then is Then.ENDS
    assert found.told.left_out == (LeftOut("heel-raise", LeftOutKind.STRAIN, ("knee",), "ankle-pump"),)


@pytest.mark.parametrize(("own", "says"), [("", None), ("The swelling has gone.", "The swelling has gone.")])
def test_an_alternative_has_its_own_condition(own: str, says: str | None) -> None:
    """It was begun in an earlier phase, so it does not wait for what the one it replaces waits for."""
    late = "        week: 9\n        delayed-week: 11\n        when: Two sessions went well.\n"
    files = with_change(FILES, PROGRAMME, HEEL_RAISE_USE, HEEL_RAISE_USE + late)
    if own:
        files = with_change(files, PROGRAMME, PUMP_USE, PUMP_USE + f"        when: {own}\n")
    (use,) = phase_of(narrowed(files, avoid=Avoided(strains=frozenset({"knee"})))).uses
    assert (use.use, use.week, use.delayed_week) == ("ankle-pump", None, None)
    assert (use.when.source if use.when else None) == says


def test_an_alternative_that_does_not_pass_is_not_printed() -> None:
    """What takes the place is held to the same wishes; when nothing is left the booklet is refused."""
    avoid = Avoided(strains=frozenset({"knee"}), surfaces=frozenset({Surface.BED, Surface.FLOOR}))
    assert refused(narrowed(avoid=avoid)) == ["patient-empty --avoid: no exercise of phase 2 is left"]


@pytest.mark.parametrize(
    ("wishes", "option"),
    [
        ({"without": frozenset({"heel-raise"})}, "without"),
        ({"limits": (Limit(Joint.ANKLE, Movement.PLANTARFLEXION, 10),)}, "limit"),
        ({"avoid": Avoided(surfaces=frozenset(Surface))}, "avoid"),
    ],
)
def test_the_option_that_leaves_nothing_is_named(wishes: dict[str, Any], option: str) -> None:
    """A clinician takes back the wish that excludes most."""
    assert refused(narrowed(**wishes)) == [f"patient-empty --{option}: no exercise of phase 2 is left"]


def test_an_alternative_of_a_later_phase_is_not_brought_in() -> None:
    """Its doses are not reached yet, so the exercise is listed for the clinician without one."""
    files = with_change(
        FILES, "exercises/ankle-pump.yml", "strains: []", "strains: [knee]\nalternative: heel-raise"
    )
    files = with_change(files, PROGRAMME, PUMP_USE, PUMP_USE + PUMP_USE.replace("ankle-pump", "toe-curl"))
    files = {**files, "exercises/toe-curl.yml": TOE_CURL}
    found = narrowed(files, phase=1, avoid=Avoided(strains=frozenset({"knee"})))
    assert found.told.left_out[0] == LeftOut("ankle-pump", LeftOutKind.STRAIN, ("knee",), None)


def test_a_tighter_limit_drops_what_goes_beyond_it() -> None:
    """The heel raise reaches 30 degrees; with 20 allowed the ankle pump, which stays at 20, is done."""
    limit = Limit(Joint.ANKLE, Movement.PLANTARFLEXION, 20)
    found = narrowed(limits=(limit,))
    assert uses(found) == ["ankle-pump"]
    assert found.told.left_out[0].kind is LeftOutKind.LIMIT
    assert found.told.left_out[0].what == (limit.id,)
    assert found.told.added == (limit.id,)
    assert limit.id in {rule.id for rule in found.catalogue.programmes["tendon-repair"].restrictions}


def test_a_limit_that_nothing_reaches_leaves_all_exercises() -> None:
    """It is still printed among what is forbidden, until a person lifts it, whatever the week."""
    found = narrowed(limits=(Limit(Joint.ANKLE, Movement.PLANTARFLEXION, 30),))
    assert uses(found) == ["heel-raise"]
    programme = found.catalogue.programmes["tendon-repair"]
    (rule,) = (rule for rule in in_force(programme, programme.phase(2)) if rule.id.startswith("patient-"))
    assert rule.until.release is not None


def test_a_tighter_limit_stands_for_the_programmes_own() -> None:
    """Two limits on the same movement side by side would confuse; the tighter one is printed."""
    files = with_change(FILES, PROGRAMME, "    limit: 0 deg\n", "    limit: 15 deg\n")
    found = narrowed(files, phase=1, limits=(Limit(Joint.ANKLE, Movement.DORSIFLEXION, 5),))
    ids = [rule.id for rule in found.catalogue.programmes["tendon-repair"].restrictions]
    assert ids == ["no-jumping", "patient-ankle-dorsiflexion"]


@pytest.mark.parametrize(
    ("limit", "says"),
    [
        (Limit(Joint.ANKLE, Movement.DORSIFLEXION, 5), "more than 'no-stretch' of the programme allows: 0"),
        (Limit(Joint.ANKLE, Movement.PLANTARFLEXION, 63), "not between 0 and 62.1"),
        (Limit(Joint.ANKLE, Movement.PLANTARFLEXION, -1), "not between 0 and 62.1"),
        (Limit(Joint.KNEE, Movement.ABDUCTION, 5), "there is no knee abduction"),
    ],
)
def test_a_wider_limit_is_refused(limit: Limit, says: str) -> None:
    """A limit above the programme's or above the largest normal angle narrows nothing."""
    (message,) = refused(narrowed(phase=1, limits=(limit,)))
    assert message.startswith("patient-wider --limit: ")
    assert says in message


def test_weight_bearing_only_tightens() -> None:
    """As much as is comfortable is refused while half is allowed; touch drops what shares the weight."""
    files = with_change(FILES, PROGRAMME, "phases:\n", HALF_WEIGHT + "phases:\n")
    (message,) = refused(narrowed(files, weight_bearing=WeightBearing.AS_TOLERATED))
    assert message.endswith("'as tolerated' is more than the programme allows in phase 2: partial")
    assert uses(narrowed(files, weight_bearing=WeightBearing.PARTIAL)) == ["heel-raise"]
    found = narrowed(files, weight_bearing=WeightBearing.TOUCH)
    assert uses(found) == ["ankle-pump"]
    assert "half-weight" not in {rule.id for rule in found.catalogue.programmes["tendon-repair"].restrictions}


def test_part_of_the_weight_without_an_amount_is_less_than_half() -> None:
    """Where the programme allows all of it, 'partial' does not say half, so nothing that shares it stays."""
    assert uses(narrowed(weight_bearing=WeightBearing.PARTIAL)) == ["ankle-pump"]


def test_the_phase_says_the_tighter_weight_bearing() -> None:
    """The programme's sentence on weight would contradict it."""
    words = {PATIENT_WEIGHT: Text("Put no weight on your operated leg.")}
    wishes = Wishes(weight_bearing=WeightBearing.NONE)
    found = narrow(catalogue_of(), "tendon-repair", 2, wishes, words)
    assert phase_of(found).weight_bearing.source == "Put no weight on your operated leg."


def test_what_is_not_at_hand_is_not_asked_for() -> None:
    """The heel raise needs a worktop; who has none gets its alternative."""
    assert uses(narrowed(have=frozenset({"worktop"}))) == ["heel-raise"]
    found = narrowed(have=frozenset())
    assert found.told.left_out == (LeftOut("heel-raise", LeftOutKind.THING, ("worktop",), "ankle-pump"),)


def test_a_variation_is_not_offered_without_its_thing() -> None:
    """An easier form that needs something else falls out by itself, the exercise stays."""
    files = with_change(
        FILES, "exercises/heel-raise.yml", "    demand: lying", "    equipment: [stool]\n    demand: lying"
    )
    files = {**files, "equipment.yml": files["equipment.yml"] + "stool:\n  name: A stool\n"}
    found = narrowed(files, have=frozenset({"worktop"}))
    assert uses(found) == ["heel-raise"]
    assert found.withheld == {"heel-raise/seated"}


def test_a_surface_to_avoid_is_not_offered() -> None:
    """The ankle pump is done on the bed or on the floor; without the floor the bed is left."""
    found = narrowed(phase=1, avoid=Avoided(surfaces=frozenset({Surface.FLOOR})))
    assert found.catalogue.exercises["ankle-pump"].surface == (Surface.BED,)
    (message,) = refused(narrowed(phase=1, avoid=Avoided(surfaces=frozenset({Surface.FLOOR, Surface.BED}))))
    assert message.startswith("patient-empty")


def test_a_position_to_avoid_is_found_in_the_posture() -> None:
    """On hands and knees one kneels, whether the file says so or not."""
    files = with_change(FILES, "exercises/heel-raise.yml", "posture: standing", "posture: on hands and knees")
    found = narrowed(files, avoid=Avoided(positions=frozenset({Position.KNEELING})))
    assert found.told.left_out[0] == LeftOut("heel-raise", LeftOutKind.POSITION, ("kneeling",), "ankle-pump")


def test_only_and_without_choose() -> None:
    """What a clinician leaves out is not replaced, and is listed."""
    files = two_exercises()
    found = narrowed(files, only=frozenset({"ankle-pump"}))
    assert uses(found) == ["ankle-pump"]
    assert found.told.left_out == (LeftOut("heel-raise", LeftOutKind.NOT_CHOSEN),)
    found = narrowed(files, without=frozenset({"heel-raise"}))
    assert found.told.left_out == (LeftOut("heel-raise", LeftOutKind.ASKED),)


def test_a_prerequisite_of_what_stays_must_stay() -> None:
    """The heel raise needs the ankle pump first; left out it must be mastered, and the checks agree."""
    files = two_exercises()
    (message,) = refused(narrowed(files, without=frozenset({"ankle-pump"})))
    assert message == (
        "patient-prerequisite --mastered: 'heel-raise' stays and needs 'ankle-pump' first, which is left out"
    )
    found = narrowed(files, without=frozenset({"ankle-pump"}), mastered=frozenset({"ankle-pump"}))
    assert uses(found) == ["heel-raise"]
    assert [one for one in check_content(found.catalogue) if one.severity is Severity.ERROR] == []


def test_what_an_earlier_phase_did_counts_as_done() -> None:
    """In the small content the ankle pump belongs to phase 1, so phase 2 may be without it."""
    assert uses(narrowed(only=frozenset({"heel-raise"}))) == ["heel-raise"]


def test_one_of_several_prerequisites_must_stay() -> None:
    """Where one of them is enough, leaving out all of them is refused."""
    files = with_change(two_exercises(), "exercises/heel-raise.yml", "requires: [", "requires-one-of: [")
    (message,) = refused(narrowed(files, without=frozenset({"ankle-pump"})))
    assert "needs one of 'ankle-pump' first" in message
    mastered = frozenset({"ankle-pump"})
    assert uses(narrowed(files, without=mastered, mastered=mastered)) == ["heel-raise"]


def reps(sets: int, count: int) -> DoseStep:
    """Return a dose of sets and repetitions."""
    return DoseStep(DoseKind.REPETITIONS, sets, count)


@pytest.mark.parametrize(
    ("dose", "steps"),
    [
        (reps(2, 8), ["2x8", "3x8", "3x10", "3x10"]),
        (reps(3, 8), ["3x8", "3x10", "3x10"]),
        (reps(2, 9), ["2x9", "3x10", "3x10"]),
        (reps(1, 6), ["1x6", "2x8", "3x8", "3x10", "3x10"]),
    ],
)
def test_a_dose_begins_at_or_below_a_step(dose: DoseStep, steps: list[str]) -> None:
    """What is above it in the phase's own steps follows; what is not, is not printed."""
    (use,) = phase_of(narrowed(doses={"heel-raise": dose})).uses
    assert [f"{step.sets}x{step.count}" for step in use.dose_steps] == steps


@pytest.mark.parametrize(
    ("exercise", "dose", "says"),
    [
        ("heel-raise", reps(3, 12), "harder than each dose step"),
        ("heel-raise", reps(4, 8), "4 sets are not within 1 to 3"),
        ("heel-raise", reps(2, 5), "5 is not within 6 to 12"),
        ("heel-raise", DoseStep(DoseKind.MINUTES, 1, 5), "counts minutes"),
        ("ankle-pump", DoseStep(DoseKind.HOURLY, 1, 5), "not in this booklet"),
    ],
)
def test_a_dose_that_is_not_reached_is_refused(exercise: str, dose: DoseStep, says: str) -> None:
    """Outside the permitted range, above every step of the phase, or of what is not printed."""
    (message,) = refused(narrowed(doses={exercise: dose}))
    assert message.startswith("patient-dose --dose: ")
    assert says in message


def test_a_refused_dose_is_answered_with_those_there_are() -> None:
    """The remedy names the dose steps of the phase, or the exercises of the booklet."""
    high, absent = reps(3, 12), {"ankle-pump": reps(1, 5)}
    (above,) = narrowed(doses={"heel-raise": high}).problems
    (missing,) = narrowed(doses=absent).problems
    assert above.remedy.endswith("dose steps: 2 x 8, 3 x 8, 3 x 10, 3 x 10 with light band")
    assert missing.remedy == "in it are: heel-raise"


def test_what_was_to_be_replaced_by_what_falls_out_has_a_real_heir() -> None:
    """The seated raise makes way for the heel raise; it goes on where that falls out, alternative or not."""
    seated = FILES["exercises/heel-raise.yml"].replace("[knee]", "[]").replace("shared", "nothing")
    late = HEEL_RAISE_USE + "        week: 9\n        delayed-week: 11\n"
    files = with_change(FILES, PROGRAMME, HEEL_RAISE_USE, SEATED + late) | {
        "exercises/seated-raise.yml": seated
    }
    first, _ = phase_of(narrowed(files)).uses
    assert (first.then, first.replaced_by) == (Then.REPLACED, "heel-raise")
    first, second = phase_of(narrowed(files, avoid=Avoided(strains=frozenset({"knee"})))).uses
    assert (first.then, first.replaced_by) == (Then.ENDS, None)
    assert (second.use, second.week, second.then) == ("ankle-pump", None, Then.ENDS)
    (first,) = phase_of(narrowed(files, without=frozenset({"heel-raise"}))).uses
    assert (first.then, first.replaced_by) == (Then.ENDS, None)


def test_days_on_the_chosen_track() -> None:
    """Phase 2 is not before 6 full weeks, delayed not before 8 (day 0 is the operation)."""
    surgery = datetime.date(2024, 2, 29)
    usual = narrowed(surgery=surgery).told.dates
    late = narrowed(surgery=surgery, track=Track.DELAYED).told.dates
    assert usual is not None
    assert late is not None
    assert (usual.phase, usual.following) == (datetime.date(2024, 4, 11), None)
    assert late.phase == datetime.date(2024, 4, 25)
    first = narrowed(phase=1, surgery=surgery).told.dates
    assert first is not None
    assert (first.phase, first.following) == (surgery, datetime.date(2024, 4, 11))


def test_two_operated_sides_need_a_programme_for_both() -> None:
    """Else the exercises would rely on a good leg."""
    (message,) = refused(narrowed(side=OperatedSide.BOTH))
    assert message == "patient-both-sides --side: 'tendon-repair' is for one operated side only"
    files = with_change(FILES, PROGRAMME, "aim: protects\n", "aim: protects\nboth-sides: yes\n")
    assert narrowed(files, side=OperatedSide.BOTH).told.side is OperatedSide.BOTH


def test_unknown_ids_are_refused() -> None:
    """An exercise of another phase is none of this one."""
    found = refused(narrowed(only=frozenset({"ankle-pump"}), without=frozenset({"heel-rise"})))
    assert found == [
        "patient-unknown --only: 'ankle-pump' is not used in phase 2 of 'tendon-repair'",
        "patient-unknown --without: 'heel-rise' is not used in phase 2 of 'tendon-repair'",
    ]


@pytest.fixture(scope="module")
def demo() -> Catalogue:
    """Return the demonstration with the angles that its poses show."""
    catalogue = read_content(PROJECT / "content").catalogue
    assert catalogue is not None
    return with_angles(catalogue)


STRAINS = ("knee", "dizziness", "spine", "heart", "shoulder-or-wrist", "breath-holding", "kneeling", "prone")
THINGS = ("worktop", "shoes", "firm-chair", "pillow", "strap", "belt", "elastic-band", "step", "walking-aid")
LIMITED = ((Joint.HIP, Movement.FLEXION), (Joint.KNEE, Movement.FLEXION), (Joint.HIP, Movement.ABDUCTION))


def few(values: Any) -> Any:
    """Return a strategy for small sets."""
    return st.frozensets(st.sampled_from(values), max_size=2)


PHASES = (*(("hip-abductor-repair", n) for n in range(1, 5)), *(("knee-replacement", n) for n in range(1, 4)))
WISHES = st.builds(
    Wishes,
    have=st.none() | st.frozensets(st.sampled_from(THINGS)),
    avoid=st.builds(
        Avoided, strains=few(STRAINS), surfaces=few(list(Surface)), positions=few(list(Position))
    ),
    limits=st.sampled_from(LIMITED).flatmap(
        lambda key: st.lists(st.builds(Limit, *map(st.just, key), st.floats(0, LARGEST[key])), max_size=1)
    ).map(tuple),
    weight_bearing=st.none() | st.sampled_from(list(WeightBearing)),
    mastered=st.frozensets(st.sampled_from(("weight-shift", "thigh-squeeze", "single-leg-stand"))),
)  # fmt: skip


@pytest.mark.slow
@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(wishes=WISHES, which=st.sampled_from(PHASES))
def test_no_wish_ever_widens(demo: Catalogue, wishes: Wishes, which: tuple[str, int]) -> None:
    """Exercises and doses are the programme's, reached by then; all it forbids stays forbidden."""
    name, number = which
    found = narrow(demo, name, number, wishes)
    if found.problems:
        assert found.catalogue is demo
        return
    before, after = demo.programmes[name], found.catalogue.programmes[name]
    reached: dict[str, list[Use]] = {}
    for phase in before.phases[:number]:
        for use in phase.uses:
            reached.setdefault(use.use, []).append(use)
    own = {use.use for use in before.phase(number).uses}
    kept = {use.use for use in after.phase(number).uses}
    listed = [one.item for one in found.told.left_out if not one.daily_life]
    assert own - kept <= set(listed)
    assert len(listed) == len(set(listed))
    for use in after.phase(number).uses:
        assert any(set(use.dose_steps) <= set(one.dose_steps) for one in reached[use.use])
        assert not set(demo.exercises[use.use].strains) & wishes.avoid.strains
        assert use.replaced_by not in own - kept
    held, tighter = in_force(before, before.phase(number)), in_force(after, after.phase(number))
    for exercise in demo.exercises.values():
        for work in (work_of(exercise), *(work_of(exercise, one) for one in exercise.variations.values())):
            assert not is_forbidden(work, held) or is_forbidden(work, tighter)


@pytest.mark.slow
@given(sets=st.integers(1, 4), count=st.integers(1, 20))
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_no_dose_is_above_the_phases_last(demo: Catalogue, sets: int, count: int) -> None:
    """A dose that is taken is at or below a step of the phase and within the exercise's range."""
    found = narrow(demo, "hip-abductor-repair", 1, Wishes(doses={"heel-slide": reps(sets, count)}))
    written = next(
        use for use in demo.programmes["hip-abductor-repair"].phase(1).uses if use.use == "heel-slide"
    )
    possible = any(not is_harder(reps(sets, count), step) for step in written.dose_steps)
    permitted = demo.exercises["heel-slide"].dose.count.holds(count) and sets in (1, 2)
    assert (found.problems == ()) == (possible and permitted)
