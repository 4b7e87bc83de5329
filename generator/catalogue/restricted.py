"""Judges what a restriction forbids and until when: one rule for exercises, variations, doses and daily life.

What the content leaves out counts as forbidden, since doubt never widens permission.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum

from generator.catalogue.daily_life import DailyLife
from generator.catalogue.dose import Load
from generator.catalogue.exercise import Exercise, JointWork, LegWork, ShownAngle, Variation
from generator.catalogue.programme import (
    ImpactRestriction,
    LoadRestriction,
    MovementRestriction,
    Phase,
    PositionRestriction,
    Programme,
    Restriction,
    Use,
    WeightRestriction,
)
from generator.catalogue.terms import (
    Carries,
    Demand,
    How,
    Leg,
    OutsideLoad,
    Position,
    Posture,
    WeightBearing,
)
from generator.problems import Place

# A leg that shares the body's weight with the other one carries about half of it.
SHARED_PERCENT = 50.0
# A movement of a joint up to this angle, in degrees, goes with others and need not be stated.
SMALL = 10.0
# An angle that nobody typed follows from what rests on what, and is found this well, in degrees.
SETTLING = 3.0
_RISING = tuple(Carries)
_IMPLIED = {
    Posture.HANDS_AND_KNEES: Position.KNEELING,
    Posture.HALF_KNEELING: Position.KNEELING,
    Posture.ON_FRONT: Position.ON_FRONT,
}


class Track(Enum):
    """Which of a programme's two rows of weeks a person follows."""

    USUAL = "usual"
    DELAYED = "delayed"


@dataclass(frozen=True)
class Work:
    """What a body does, as far as restrictions ask.

    positions: stated, and implied by the posture. loads: that of each dose step, in order; empty where no
    dose is stated (a variation on offer, daily life).
    """

    operated: LegWork
    other: LegWork
    positions: frozenset[Position]
    demand: Demand
    loads: tuple[Load, ...] = ()


@dataclass(frozen=True)
class Breach:
    """A way in which work does what a restriction forbids.

    why: a short English clause for editors. place: of the statement that breaks it, None where it is the work
    as a whole. step: position of the dose step, from 0. unknown: the content does not say how far or against
    what, so that it counts as forbidden.
    """

    restriction: Restriction
    why: str
    place: Place | None = None
    step: int | None = None
    unknown: bool = False


def work_of(exercise: Exercise, variation: Variation | None = None, loads: tuple[Load, ...] = ()) -> Work:
    """Return the work of an exercise or of a variation, which adds to the exercise what it states."""
    if variation is None:
        legs = (exercise.operated_leg, exercise.other_leg)
        return Work(*legs, _positions(exercise.posture, exercise.positions), exercise.demand, loads)
    return Work(
        operated=variation.operated_leg or exercise.operated_leg,
        other=variation.other_leg or exercise.other_leg,
        positions=_positions(exercise.posture, (*exercise.positions, *variation.positions)),
        demand=variation.demand or exercise.demand,
        loads=loads,
    )


def work_of_use(exercise: Exercise, use: Use) -> Work:
    """Return the work that a use asks for, dose steps included."""
    loads = tuple(step.load for step in use.dose_steps)
    return work_of(exercise, exercise.variations.get(use.variation or ""), loads)


def work_of_daily_life(item: DailyLife) -> Work:
    """Return the work of a thing of daily life."""
    return Work(item.operated_leg, item.other_leg, _positions(item.posture, item.positions), item.demand)


def _positions(posture: Posture, stated: tuple[Position, ...]) -> frozenset[Position]:
    implied = _IMPLIED.get(posture)
    return frozenset((*stated, implied) if implied else stated)


def entry(phase: Phase, use: Use, track: Track) -> int:
    """Return the week from which the use may begin, in full weeks after the operation.

    A use that states only its usual week keeps its distance to the start of the phase when delayed.
    """
    usual = phase.week if use.week is None else use.week
    if track is Track.USUAL:
        return usual
    return phase.delayed_week + usual - phase.week if use.delayed_week is None else use.delayed_week


def dated(restriction: Restriction, phase: int, week: int, track: Track) -> bool:
    """Return whether week or phase still keep the restriction, whoever may release it afterwards."""
    until = restriction.until
    end = until.week if track is Track.USUAL else until.delayed_week
    return week < end or (until.phase is not None and phase < until.phase)


def holds(restriction: Restriction, phase: int, week: int, track: Track) -> bool:
    """Return whether the restriction holds in the phase with this number when `week` full weeks are over.

    It ends only when its week AND its phase are reached, so going back a phase brings it back; where it names
    a person who ends it, no date and no phase ends it alone.
    """
    return restriction.until.release is not None or dated(restriction, phase, week, track)


def in_force_on(programme: Programme, phase: int, week: int, track: Track) -> tuple[Restriction, ...]:
    """Return the restrictions that hold for a person in this phase, week and track, in their order."""
    return tuple(rule for rule in programme.restrictions if holds(rule, phase, week, track))


def in_force_at_entry(programme: Programme, phase: Phase, use: Use) -> tuple[Restriction, ...]:
    """Return the restrictions that may hold on the day on which the use begins, on either track."""
    return tuple(
        rule
        for rule in programme.restrictions
        if any(holds(rule, phase.number, entry(phase, use, track), track) for track in Track)
    )


def breaches(work: Work, rule: Restriction, *, both_sides: bool = False) -> Iterator[Breach]:
    """Yield each way in which `work` does what `rule` forbids.

    both_sides: both sides were operated, so what holds for the operated leg holds for the other one too.
    """
    if isinstance(rule, MovementRestriction):
        for leg in _legs(work, rule.leg, both_sides):
            for moved in leg.moves:
                yield from _of_joint(moved, leg, rule, {moved.how} | _loaded(moved, work))
            for held in leg.holds:
                yield from _of_joint(held, leg, rule, {How.ISOMETRIC, held.how})
            yield from _of_poses(leg, rule)
    elif isinstance(rule, WeightRestriction):
        most = most_carried(rule)
        for leg in _legs(work, rule.leg, both_sides):
            if _RISING.index(leg.carries) > _RISING.index(most):
                why = f"a leg carries '{leg.carries.value}', allowed is '{most.value}'"
                yield Breach(rule, why, leg.at("carries"))
    elif isinstance(rule, PositionRestriction):
        yield from _of_position(work, rule, both_sides)
    elif isinstance(rule, LoadRestriction):
        yield from _of_loads(work, rule, both_sides)
    elif isinstance(rule, ImpactRestriction) and work.demand is Demand.JUMPING:
        yield Breach(rule, f"it asks for '{work.demand.value}'")


def is_forbidden(work: Work, rules: tuple[Restriction, ...], *, both_sides: bool = False) -> bool:
    """Return whether any of the restrictions forbids the work."""
    return any(True for rule in rules for _ in breaches(work, rule, both_sides=both_sides))


def most_carried(rule: WeightRestriction) -> Carries:
    """Return the most that a leg may carry: 'partial' allows sharing only from half the body weight on."""
    if rule.allows is WeightBearing.PARTIAL:
        return Carries.SHARED if (rule.percent or 0.0) >= SHARED_PERCENT else Carries.PARTIAL
    return {
        WeightBearing.NONE: Carries.NONE,
        WeightBearing.TOUCH: Carries.TOUCH,
        WeightBearing.AS_TOLERATED: Carries.ONE_LEG,
    }[rule.allows]


def _legs(work: Work, leg: Leg, both_sides: bool) -> tuple[LegWork, ...]:
    if leg is Leg.BOTH or both_sides:
        return (work.operated, work.other)
    return (work.operated,) if leg is Leg.OPERATED else (work.other,)


def _loaded(moved: JointWork, work: Work) -> set[How]:
    """Return 'resisted' where a dose step adds a load, which makes any active movement one against a load."""
    added = any(load != Load() for load in work.loads)
    return {How.RESISTED} if added and moved.how is How.ACTIVE else set()


def _of_joint(done: JointWork, leg: LegWork, rule: MovementRestriction, ways: set[How]) -> Iterator[Breach]:
    if (done.joint, done.movement) != (rule.joint, rule.movement) or not ways & set(rule.how):
        return
    if rule.against is not None and done.against is not rule.against:
        return
    listed = ", ".join(sorted(way.value for way in ways & set(rule.how)))
    what = f"{done.joint.value} {done.movement.value} ({listed})"
    if rule.limit is None:
        yield Breach(rule, what, done.place)
    elif leg.shown is not None:
        shown = leg.shown_angle(done.joint, done.movement)
        if shown is not None and _beyond(shown, rule.limit):
            yield Breach(rule, f"{what} {_drawn(shown)}, allowed up to {rule.limit:g}", done.place)
    elif done.to is None:
        yield Breach(rule, f"{what} does not say how far", done.place, unknown=True)
    elif done.to > rule.limit:
        yield Breach(rule, f"{what} to {done.to:g} degrees, allowed up to {rule.limit:g}", done.at("to"))


def _of_poses(leg: LegWork, rule: MovementRestriction) -> Iterator[Breach]:
    """Yield what the poses show and no statement names: a joint that lies or is brought too far.

    Where a restriction only forbids to work a joint, what moves unnamed cannot be judged.
    """
    shown = leg.shown_angle(rule.joint, rule.movement)
    stated = (*leg.moves, *leg.holds)
    if shown is None or any((one.joint, one.movement) == (rule.joint, rule.movement) for one in stated):
        return
    what = f"{rule.joint.value} {rule.movement.value} {_drawn(shown)}"
    if How.PASSIVE in rule.how:
        limit = SMALL if rule.limit is None else rule.limit
        if _beyond(shown, limit):
            yield Breach(rule, f"{what}, allowed up to {limit:g}", leg.place)
    elif shown.travel > SMALL and _beyond(shown, SMALL if rule.limit is None else rule.limit):
        yield Breach(rule, f"{what}; its leg does not state it under 'moves'", leg.place, unknown=True)


def _beyond(shown: ShownAngle, limit: float) -> bool:
    return shown.degrees > limit + (0.0 if shown.typed else SETTLING)


def _drawn(shown: ShownAngle) -> str:
    return f"reaches {shown.degrees:g} degrees in the poses"


def _of_position(work: Work, rule: PositionRestriction, both_sides: bool) -> Iterator[Breach]:
    if rule.position is Position.ON_OPERATED_SIDE:
        for leg in _legs(work, Leg.OPERATED, both_sides):
            if leg.lain_on:
                yield Breach(rule, rule.position.value, leg.at("lain-on"))
    if rule.position in work.positions:
        yield Breach(rule, rule.position.value)


def _of_loads(work: Work, rule: LoadRestriction, both_sides: bool) -> Iterator[Breach]:
    legs = _legs(work, rule.leg, both_sides)
    resisted = [item for leg in legs for item in (*leg.moves, *leg.holds) if item.how is How.RESISTED]
    for step, load in enumerate(work.loads):
        if load.band is not None and OutsideLoad.BAND in rule.loads:
            yield Breach(rule, f"a {load.band.value} band", step=step)
        weight = load.kilograms or 0.0
        if OutsideLoad.WEIGHT in rule.loads and weight > rule.kilograms:
            yield Breach(rule, f"{weight:g} kg, allowed up to {rule.kilograms:g} kg", step=step)
        if load == Load() and resisted:
            yield Breach(rule, "it is resisted, but the dose step names no load", step=step, unknown=True)
    if not work.loads and resisted:
        yield Breach(rule, "it is done against an added load", resisted[0].at("how"))
