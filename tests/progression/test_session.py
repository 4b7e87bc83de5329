"""Session time is plain arithmetic, held to worked examples; session order, to the rules of the trade."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.catalogue.arranged import Day, SessionReasonKind
from generator.catalogue.dose import Dose, DoseKind, Span, Tempo
from generator.catalogue.terms import Sides, Surface
from generator.progression import arrange, days, minutes, session
from generator.progression.session import (
    BETWEEN_HOLDS,
    CHANGE_OF_POSITION,
    FLOOR_AND_UP,
    SET_UP,
    exercise_seconds,
    rounded_minutes,
)
from generator.progression.session_order import Item, stops
from generator.progression.weeks import active_together
from generator.reading.doses import parse_step
from tests.content import FILES, catalogue_of, with_change

RAISE = "exercises/heel-raise.yml"
REPAIR = "programmes/tendon-repair.yml"
ANY = Span(1, 1, 20_000)


def seconds(
    step: str, *, hold: int = 0, lift: int = 2, lower: int = 2, rest: int = 60, sides: Sides = Sides.ONE
) -> int:
    """Return the time of a dose step as an editor types it."""
    parsed = parse_step(step)
    assert parsed is not None
    held = Span(hold, hold, hold) if hold else None
    dose = Dose(
        kind=parsed.kind, sets=ANY, count=ANY, hold=held, tempo=Tempo(lift=lift, lower=lower), rest=rest
    )
    return exercise_seconds(parsed, dose, sides)


def test_three_sets_of_ten() -> None:
    """3 × 10 × (2 + 1 + 2) = 150 s of work and 2 rests of 60 s: 270 s (reference arithmetic, no constant)."""
    assert seconds("3 x 10", hold=1) == 270


def test_each_side_in_turn_takes_twice_the_time() -> None:
    """540 s for both sides: rest that one side could take while the other works is not relied on."""
    assert seconds("3 x 10", hold=1, sides=Sides.BOTH) == 540


def test_isometric_holds() -> None:
    """5 × (10 s hold + 5 s) = 75 s a set; two sets with a rest of 30 s take 180 s."""
    assert BETWEEN_HOLDS == 5
    assert seconds("5 holds of 10 s") == 75
    assert seconds("2 x 5 holds of 10 s", rest=30) == 180


def test_minutes_and_steps_walked() -> None:
    """Minutes are minutes; a careful walker takes a step a second (common practice, no source)."""
    assert seconds("10 min") == 600
    assert seconds("200 steps") == 200


@pytest.mark.parametrize(("given_seconds", "expected"), [(0, 0), (1, 5), (300, 5), (301, 10), (1500, 25)])
def test_minutes_are_rounded_up_to_five(given_seconds: int, expected: int) -> None:
    """Nobody is promised less time than it takes."""
    assert rounded_minutes(given_seconds) == expected


@given(st.integers(0, 100_000))
def test_rounding_never_takes_time_away(given_seconds: int) -> None:
    """The rounded minutes hold the seconds, by less than 5 minutes more."""
    assert 0 <= rounded_minutes(given_seconds) * 60 - given_seconds < 300


def small_day(files: dict[str, str] | None = None, phase: int = 2) -> Day:
    """Return the fullest day of a phase of the small programme."""
    catalogue = catalogue_of(files or FILES)
    return days(catalogue, arrange(catalogue))[("tendon-repair", phase)]


def test_a_day_of_one_exercise() -> None:
    """The longest step counts: 3 × 10 × (2 + 3 + 3) + 2 × 60 = 360 s, and 30 s to set up: 10 minutes."""
    found = small_day()
    assert [place.seconds for place in found.sessions[0].places] == [360]
    assert found.sessions[0].seconds == 360 + SET_UP
    assert (found.sessions[0].minutes, found.minutes) == (10, 10)


def test_times_a_day_count() -> None:
    """Three times a day takes three sessions, each with its set-up: 3 × 390 s are 20 minutes."""
    files = with_change(
        FILES,
        REPAIR,
        "        times-a-day: 1\n        days-a-week: 3",
        "        times-a-day: 3\n        days-a-week: 3",
    )
    assert len(small_day(files).sessions) == 3
    assert small_day(files).minutes == 20


def test_what_is_done_each_hour_is_done_in_passing() -> None:
    """Ten times an hour while awake belongs to no session and takes no minutes of it."""
    found = small_day(phase=1)
    assert (found.in_passing, found.sessions, found.minutes) == (("ankle-pump",), (), 0)
    catalogue = catalogue_of()
    assert (
        session(
            catalogue, arrange(catalogue)["tendon-repair"], catalogue.programmes["tendon-repair"].phase(1)
        )
        is None
    )


def test_getting_to_the_floor_and_up_counts() -> None:
    """An exercise that is done on the floor takes the time to get there and back."""
    files = with_change(FILES, RAISE, "surface: [standing]", "surface: [floor]")
    assert small_day(files).sessions[0].seconds == 360 + SET_UP + FLOOR_AND_UP


def test_checks_and_pages_count_the_same_minutes() -> None:
    """The limit of a day is checked on the number that is printed."""
    catalogue = catalogue_of()
    assert minutes(catalogue, catalogue.programmes["tendon-repair"].phase(2)) == small_day().minutes


def item(
    name: str, *surfaces: Surface, warm_up: bool = False, fresh: bool = False, tires: bool = False
) -> Item:
    """Return an exercise as the order of a session sees it."""
    return Item(name, frozenset(surfaces), warm_up, fresh, tires)


def walked(*items: Item) -> list[tuple[Surface, str]]:
    """Return where each exercise is done, in order."""
    return [(stop.surface, each.exercise) for stop in stops(items) for each in stop.items]


BED, CHAIR, FLOOR, STAND = Surface.BED, Surface.CHAIR, Surface.FLOOR, Surface.STANDING


def test_one_position_after_the_other() -> None:
    """Nobody gets up and lies down again where once is enough; in a position the order of introduction."""
    found = walked(item("a", BED), item("b", STAND), item("c", BED, FLOOR), item("d", STAND))
    assert found == [(BED, "a"), (BED, "c"), (STAND, "b"), (STAND, "d")]


def test_warm_up_comes_first() -> None:
    """What warms up stands before all else, even where that costs a change of position."""
    found = walked(item("lift", BED), item("swing", CHAIR, warm_up=True))
    assert [name for _, name in found] == ["swing", "lift"]


def test_free_balance_comes_before_the_stance_leg_tires() -> None:
    """Balance work without support stands before strength work of the leg that one stands on."""
    found = walked(item("squat", STAND, tires=True), item("balance", STAND, fresh=True))
    assert [name for _, name in found] == ["balance", "squat"]
    found = walked(
        item("bridge", BED, tires=True), item("tilt", BED, warm_up=True), item("balance", STAND, fresh=True)
    )
    assert [name for _, name in found] == ["tilt", "balance", "bridge"]


def test_the_floor_is_avoided_where_a_bed_will_do() -> None:
    """With as many changes of position, nobody gets down to the floor."""
    assert {surface for surface, _ in walked(item("a", FLOOR, BED), item("b", FLOOR, BED))} == {BED}


SURFACES = st.sets(st.sampled_from(list(Surface)), min_size=1)
ITEMS = st.lists(
    st.tuples(SURFACES, st.sampled_from(["warm_up", "fresh", "tires", ""])), min_size=1, max_size=9
).map(
    lambda drawn: [
        item(f"e{index}", *surfaces, **({kind: True} if kind else {}))
        for index, (surfaces, kind) in enumerate(drawn)
    ]
)


@given(ITEMS)
def test_every_session_keeps_the_rules(items: list[Item]) -> None:
    """Each exercise once, where it can be done; warm-up first; balance before what tires; no empty change."""
    found = stops(items)
    done = [each for stop in found for each in stop.items]
    assert sorted(each.exercise for each in done) == sorted(each.exercise for each in items)
    assert all(stop.surface in each.surfaces for stop in found for each in stop.items)
    flags = [each.warm_up for each in done]
    assert flags == sorted(flags, reverse=True)
    assert all(
        not (first.tires and later.wants_fresh) for place, first in enumerate(done) for later in done[place:]
    )
    assert all(first.surface is not later.surface for first, later in pairwise(found))


@given(ITEMS)
def test_no_session_has_fewer_changes(items: list[Item]) -> None:
    """Outside check: where nothing warms up or tires, the stops are a smallest cover of the surfaces."""
    plain = [item(each.exercise, *each.surfaces) for each in items]
    covers = [
        chosen.bit_count()
        for chosen in range(1, 1 << len(Surface))
        if all(
            any(chosen >> place & 1 and surface in each.surfaces for place, surface in enumerate(Surface))
            for each in plain
        )
    ]
    assert len(stops(plain)) == min(covers)


def test_a_change_of_position_takes_time_and_both_orders_are_explained() -> None:
    """Each place says why: the position stays, or the exercise was introduced in this order."""
    start = FILES[REPAIR].index("      - use: heel-raise\n")
    more = (
        FILES[REPAIR][start:]
        .replace("heel-raise", "heel-raise-seated")
        .replace("3 x 10 with light band", "3 x 12")
    )
    seated = FILES[RAISE].replace("surface: [standing]", "surface: [chair]")
    files = {
        **FILES,
        REPAIR: FILES[REPAIR] + more,
        "exercises/heel-raise-seated.yml": seated,
    }
    found = small_day(files).sessions[0]
    assert found.changes == 1
    assert found.seconds == sum(place.seconds + SET_UP for place in found.places) + CHANGE_OF_POSITION
    assert [place.reasons[0].kind for place in found.places] == [SessionReasonKind.INTRODUCED] * 2


def test_dose_kinds_are_all_timed() -> None:
    """A kind of dose that is added needs a time of its own."""
    typed = {
        DoseKind.REPETITIONS: "1 x 1",
        DoseKind.HOLDS: "1 hold of 1 s",
        DoseKind.MINUTES: "1 min",
        DoseKind.STEPS: "1 steps",
    }
    assert {kind for kind, step in typed.items() if seconds(step) > 0} == set(DoseKind) - {DoseKind.HOURLY}


def test_exercises_that_replace_each_other_are_never_counted_together() -> None:
    """A use replaced within its phase stops when the other enters, so they share no day and no limit."""
    later = (
        "      - use: ankle-pump\n        week: 8\n        delayed-week: 10\n"
        "        dose-steps: [10 times an hour]\n        times-a-day: 1\n        days-a-week: 7\n"
        "        then: ends\n"
    )
    files = with_change(
        FILES, REPAIR, "        then: goes on\n", "        then: replaced\n        replaced-by: ankle-pump\n"
    )
    files = {**files, REPAIR: files[REPAIR] + later}
    phase = catalogue_of(files).programmes["tendon-repair"].phases[1]
    assert [[use.use for use in uses] for uses in active_together(phase)] == [["heel-raise"], ["ankle-pump"]]
