"""Works out how long a session and a day take, and puts the exercises of a session in order.

The time of one exercise is sets × repetitions × (lift + hold + lower) + (sets - 1) × rest: the last rest is
not counted. Where each side does the dose in turn it counts twice, the rests too: what could be saved by
resting one side while the other works is not relied on. Set-up, changes of position and getting down to the
floor and up again come on top. Plain arithmetic; the seconds below are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType

from generator.catalogue.arranged import Day, Order, Session, SessionPlace
from generator.catalogue.dose import Dose, DoseKind, DoseStep
from generator.catalogue.exercise import Exercise
from generator.catalogue.programme import Phase, Use
from generator.catalogue.terms import Sides, Surface
from generator.catalogue.values import Catalogue
from generator.progression.session_order import items_of, reasons, stops
from generator.progression.weeks import active_together

SET_UP = 30
CHANGE_OF_POSITION = 60
FLOOR_AND_UP = 120
BETWEEN_HOLDS = 5
SECONDS_A_STEP = 1
ROUNDED_TO_MINUTES = 5


def exercise_seconds(step: DoseStep, dose: Dose, sides: Sides = Sides.ONE) -> int:
    """Return how long one dose step takes, without set-up; 0 for what is done a few times each hour.

    A hold that the step does not state is the exercise's usual one.
    """
    hold = step.hold if step.hold is not None else dose.hold.usual if dose.hold else 0
    rests = (step.sets - 1) * dose.rest
    if step.kind is DoseKind.REPETITIONS:
        seconds = step.sets * step.count * (dose.tempo.lift + hold + dose.tempo.lower) + rests
    elif step.kind is DoseKind.HOLDS:
        seconds = step.sets * step.count * (hold + BETWEEN_HOLDS) + rests
    elif step.kind is DoseKind.MINUTES:
        seconds = step.count * 60
    elif step.kind is DoseKind.STEPS:
        seconds = step.count * SECONDS_A_STEP
    else:
        return 0
    return seconds * (2 if sides is Sides.BOTH else 1)


def rounded_minutes(seconds: int) -> int:
    """Return whole minutes, rounded up to the next 5."""
    return -(-seconds // (60 * ROUNDED_TO_MINUTES)) * ROUNDED_TO_MINUTES


def days(catalogue: Catalogue, orders: Mapping[str, Order]) -> Mapping[tuple[str, int], Day]:
    """Return the fullest day of every phase by programme and number of the phase."""
    return MappingProxyType(
        {
            (programme.id, phase.number): day(
                catalogue, phase, [place.exercise for place in orders[programme.id].of_phase(phase.number)]
            )
            for programme in catalogue.programmes.values()
            for phase in programme.phases
            if programme.id in orders
        }
    )


def day(catalogue: Catalogue, phase: Phase, introduced: Iterable[str]) -> Day:
    """Return the fullest day of a phase; `introduced` are its exercises in the order of introduction.

    Exercises that replace each other within the phase are never counted on the same day.
    """
    order = tuple(introduced)
    found = (_day(catalogue, phase.number, order, uses) for uses in active_together(phase))
    return max(found, key=lambda one: (sum(part.seconds for part in one.sessions), len(one.in_passing)))


def _day(catalogue: Catalogue, phase: int, introduced: Sequence[str], active: Iterable[Use]) -> Day:
    uses = {use.use: use for use in active}
    order = [id_ for id_ in introduced if id_ in uses and id_ in catalogue.exercises]
    passing = [id_ for id_ in order if catalogue.exercises[id_].dose.kind is DoseKind.HOURLY]
    order = [id_ for id_ in order if id_ not in passing]
    times = max((uses[id_].times_a_day for id_ in order), default=0)
    sessions = tuple(
        _session(catalogue, [uses[id_] for id_ in order if uses[id_].times_a_day > number])
        for number in range(times)
    )
    total = sum(session.seconds for session in sessions)
    return Day(phase, sessions, tuple(passing), rounded_minutes(total))


def session(catalogue: Catalogue, order: Order, phase: Phase) -> Session | None:
    """Return the fullest session of a phase; None where everything is done in passing."""
    found = day(catalogue, phase, [place.exercise for place in order.of_phase(phase.number)])
    return found.sessions[0] if found.sessions else None


def whole_session(catalogue: Catalogue, order: Order, phase: Phase) -> Session:
    """Return all exercises of a phase as one session, those too that make way for one another.

    It gives the order of a list; nobody does all of them on one day, so its time means nothing.
    """
    uses = {use.use: use for use in phase.uses}
    listed = [place.exercise for place in order.of_phase(phase.number)]
    known = [id_ for id_ in listed if id_ in catalogue.exercises]
    timed = [id_ for id_ in known if catalogue.exercises[id_].dose.kind is not DoseKind.HOURLY]
    return _session(catalogue, [uses[id_] for id_ in timed])


def minutes(catalogue: Catalogue, phase: Phase) -> int:
    """Return the minutes of the fullest day of a phase, rounded up to 5."""
    return day(catalogue, phase, [use.use for use in phase.uses]).minutes


def _session(catalogue: Catalogue, uses: Sequence[Use]) -> Session:
    by_id = {use.use: use for use in uses}
    items = items_of((catalogue.exercises[use.use], use.variation) for use in uses)
    walked = stops(items)
    balance = [item for stop in walked for item in stop.items if item.wants_fresh]
    places: list[SessionPlace] = []
    for stop in walked:
        for position, item in enumerate(stop.items):
            places.append(
                SessionPlace(
                    exercise=item.exercise,
                    place=len(places) + 1,
                    surface=stop.surface,
                    seconds=_longest(by_id[item.exercise], catalogue.exercises[item.exercise]),
                    reasons=reasons(stop, position, balance),
                )
            )
    changes = max(len(walked) - 1, 0)
    floors = sum(stop.surface is Surface.FLOOR for stop in walked)
    work = sum(place.seconds + SET_UP for place in places)
    seconds = work + changes * CHANGE_OF_POSITION + floors * FLOOR_AND_UP
    return Session(tuple(places), changes, seconds, rounded_minutes(seconds))


def _longest(use: Use, exercise: Exercise) -> int:
    return max(exercise_seconds(step, exercise.dose, exercise.sides) for step in use.dose_steps)
