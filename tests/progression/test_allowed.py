"""What is allowed when, what a phase withholds, and what to do instead after it got worse."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.catalogue.arranged import Hold, RestrictionRow, StepBack
from generator.catalogue.programme import Programme
from generator.catalogue.restricted import Track, in_force_on
from generator.catalogue.values import Catalogue
from generator.progression import (
    restriction_table,
    step_back,
    steps_back,
    things_of_phase,
    withheld_variations,
)
from tests.content import FILES, catalogue_of, with_change

RAISE = "exercises/heel-raise.yml"
REPAIR = "programmes/tendon-repair.yml"
SEATED = "    demand: lying or sitting\nactivity:"
RAISE_USE = "      - use: heel-raise\n"
WEEKS = st.integers(0, 60)


def programme_of(catalogue: Catalogue) -> Programme:
    """Return the small programme."""
    return catalogue.programmes["tendon-repair"]


SMALL = programme_of(catalogue_of())


def held(phase: int, week: int, track: Track = Track.USUAL) -> list[str]:
    """Return the ids of the restrictions in force."""
    return [rule.id for rule in in_force_on(SMALL, phase, week, track)]


@pytest.mark.parametrize(
    ("phase", "week", "track", "holds"),
    [
        (1, 5, Track.USUAL, True),
        (1, 6, Track.USUAL, True),
        (2, 5, Track.USUAL, True),
        (2, 6, Track.USUAL, False),
        (2, 6, Track.DELAYED, True),
        (2, 8, Track.DELAYED, False),
        (1, 30, Track.USUAL, True),
    ],
    ids=[
        "before both",
        "the date alone lifts nothing",
        "the phase alone lifts nothing",
        "date and phase lift it",
        "the delayed track lifts it later",
        "and then lifts it",
        "going back a phase brings it back",
    ],
)
def test_a_restriction_ends_by_date_and_phase(phase: int, week: int, track: Track, holds: bool) -> None:
    """The small content lifts 'no-stretch' with phase 2, from week 6 (delayed 8)."""
    assert ("no-stretch" in held(phase, week, track)) is holds


@given(st.integers(1, 2), WEEKS, st.sampled_from(list(Track)))
def test_no_date_lifts_what_a_person_must_release(phase: int, week: int, track: Track) -> None:
    """'no-jumping' ends when the surgeon says so, in no week and no phase by itself."""
    assert "no-jumping" in held(phase, week, track)


@given(st.integers(1, 2), WEEKS, WEEKS, st.sampled_from(list(Track)))
def test_time_never_adds_a_restriction(phase: int, week: int, later: int, track: Track) -> None:
    """Within a phase, restrictions only ever end."""
    first, last = sorted((week, week + later))
    assert set(held(phase, last, track)) <= set(held(phase, first, track))


def rows(files: dict[str, str] | None = None) -> dict[str, RestrictionRow]:
    """Return the rows of "what is allowed when" by id."""
    return {row.id: row for row in restriction_table(programme_of(catalogue_of(files or FILES)))}


def test_what_is_allowed_when() -> None:
    """A limit in degrees is a limit, a kind without one is forbidden; days count from the operation."""
    stretch, jumping = rows()["no-stretch"], rows()["no-jumping"]
    assert (stretch.kind, stretch.end_day, stretch.delayed_end_day, stretch.by_release) == (
        "movement",
        42,
        56,
        False,
    )
    assert [cell.hold for cell in stretch.cells] == [Hold.LIMITED, Hold.LIFTED]
    assert (jumping.kind, jumping.end_day, jumping.by_release) == ("impact", 112, True)
    assert [cell.hold for cell in jumping.cells] == [Hold.FORBIDDEN, Hold.FORBIDDEN]


def test_a_restriction_that_ends_within_a_phase_says_in_which_week() -> None:
    """Until week 9 (delayed 12), phase 2 starting in week 6 (delayed 8)."""
    end = "until: {week: 6, delayed-week: 8, phase: 2}"
    changed = with_change(FILES, REPAIR, end, "until: {week: 9, delayed-week: 12, phase: 2}")
    first, second = rows(changed)["no-stretch"].cells
    assert (first.until, first.delayed_until) == (None, None)
    assert (second.hold, second.until, second.delayed_until) == (Hold.LIMITED, 9, 12)
    changed = with_change(FILES, REPAIR, end, "until: {week: 6, delayed-week: 12, phase: 2}")
    second = rows(changed)["no-stretch"].cells[1]
    assert (second.hold, second.until, second.delayed_until) == (Hold.LIMITED, 6, 12)


def withheld(files: dict[str, str]) -> frozenset[str]:
    """Return what phase 2 of the small programme withholds."""
    catalogue = catalogue_of(files)
    return withheld_variations(catalogue, programme_of(catalogue))[2]


def test_a_variation_that_the_phase_allows_is_offered() -> None:
    """Sitting asks for less than standing."""
    assert withheld(dict(FILES)) == frozenset()


@pytest.mark.parametrize(
    "variation",
    [
        "    demand: standing on one leg\nactivity:",
        SEATED.replace(
            "activity:",
            "    activity:\n      - {muscle: calf, mean: 60, study: invented-2001, at-place: x, load: x,\n"
            "         read: []}\n"
            "activity:",
        ),
        SEATED.replace("activity:", "    positions: [low seat]\nactivity:"),
    ],
    ids=["asks for more", "works harder", "is forbidden"],
)
def test_a_variation_that_the_phase_forbids_is_withheld(variation: str) -> None:
    """Demand, activity and restrictions are held for each variation by itself."""
    files = with_change(FILES, RAISE, SEATED, variation)
    forbids = "  - kind: impact\n    id: no-jumping\n"
    seat = "  - kind: position\n    id: no-low-seat\n    leg: both\n    words: No.\n    why: So.\n" + (
        "    until: {week: 9, delayed-week: 9, phase: 2}\n"
        "    source: {text: Invented for tests, status: invented}\n    position: low seat\n"
    )
    assert withheld(with_change(files, REPAIR, forbids, seat + forbids)) == {"heel-raise/seated"}


def test_a_harder_variation_without_a_number_is_no_easier_than_its_exercise() -> None:
    """The exercise lies 1 point above the band, within the margin; its harder form is not offered."""
    files = with_change(FILES, RAISE, "is: easier", "is: harder")
    assert withheld(files) == frozenset()
    assert withheld(with_change(files, RAISE, "mean: 34.5", "mean: 51")) == {"heel-raise/seated"}


def back(step: int, files: dict[str, str] | None = None, withheld: frozenset[str] = frozenset()) -> StepBack:
    """Return the step back from a dose step of the heel raise."""
    catalogue = catalogue_of(files or FILES)
    programme = programme_of(catalogue)
    phase = programme.phase(2)
    use = next(use for use in phase.uses if use.use == "heel-raise")
    return step_back(catalogue, programme, phase, use, step, withheld)


def test_one_step_back_is_the_previous_dose_and_the_easier_form() -> None:
    """From the third step to the second; sitting is the easier form."""
    found = back(2)
    assert found.previous is not None
    assert (found.previous.sets, found.previous.count) == (3, 8)
    assert (found.easier, found.pause) == (("heel-raise/seated",), ())


def test_from_the_first_step_only_the_easier_form_is_left() -> None:
    """Where that is withheld as well, the exercise itself is paused."""
    found = back(0)
    assert (found.previous, found.easier, found.pause) == (None, ("heel-raise/seated",), ())
    found = back(0, withheld=frozenset({"heel-raise/seated"}))
    assert (found.previous, found.easier, found.pause) == (None, (), ("heel-raise",))


def test_from_a_harder_form_one_goes_back_to_the_exercise() -> None:
    """The exercise itself is the easier form of its harder variation; of two easier forms none is known."""
    files = with_change(FILES, REPAIR, RAISE_USE, RAISE_USE + "        variation: seated\n")
    assert back(1, files).easier == ()
    assert back(1, with_change(files, RAISE, "is: easier", "is: harder")).easier == ("heel-raise",)


def test_what_builds_on_the_exercise_is_paused() -> None:
    """An exercise that needs this one first waits until it goes well again, and so do those behind it."""
    start = FILES[REPAIR].index(RAISE_USE)
    use = FILES[REPAIR][start:]
    files = {
        **FILES,
        REPAIR: FILES[REPAIR] + use.replace("heel-raise", "one-leg") + use.replace("heel-raise", "hop"),
    }
    files["exercises/one-leg.yml"] = FILES[RAISE].replace("[ankle-pump]", "[heel-raise]")
    files["exercises/hop.yml"] = FILES[RAISE].replace("[ankle-pump]", "[one-leg]")
    assert back(1, files).pause == ("one-leg", "hop")


def test_every_dose_step_has_a_way_back() -> None:
    """A page needs one for each use and step; a step that is not there has none."""
    catalogue = catalogue_of()
    programme = programme_of(catalogue)
    found = steps_back(catalogue, programme, programme.phase(2), frozenset())
    assert sorted(found) == [("heel-raise", step) for step in range(4)]
    with pytest.raises(IndexError):
        back(4)


def test_things_of_a_phase() -> None:
    """A thing says for which exercises it is; one that only a variation on offer needs is optional."""
    files = with_change(
        FILES, RAISE, SEATED, SEATED.replace("activity:", "    equipment: [chair]\nactivity:")
    )
    files["equipment.yml"] += "chair:\n  name: A firm chair\n"
    catalogue = catalogue_of(files)
    phase = programme_of(catalogue).phase(2)
    found = things_of_phase(catalogue, phase, frozenset())
    assert [(thing.id, thing.exercises, thing.optional) for thing in found] == [
        ("worktop", ("heel-raise",), False),
        ("chair", ("heel-raise",), True),
    ]
    found = things_of_phase(catalogue, phase, frozenset({"heel-raise/seated"}))
    assert [thing.id for thing in found] == ["worktop"]
