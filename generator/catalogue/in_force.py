"""Decides which restrictions hold in a phase and what they forbid, so that page and paper never differ."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.catalogue.exercise import Exercise, JointWork, LegWork, Variation
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
from generator.catalogue.terms import Carries, Demand, How, Leg, Position, Posture, WeightBearing

_CARRIED = list(Carries)
_MOST_CARRIED = {
    WeightBearing.NONE: Carries.NONE,
    WeightBearing.TOUCH: Carries.TOUCH,
    WeightBearing.PARTIAL: Carries.SHARED,
    WeightBearing.AS_TOLERATED: Carries.ONE_LEG,
}
_POSTURES = {
    Position.KNEELING: frozenset({Posture.HANDS_AND_KNEES, Posture.HALF_KNEELING}),
    Position.ON_FRONT: frozenset({Posture.ON_FRONT}),
}


def in_force(programme: Programme, phase: Phase) -> tuple[Restriction, ...]:
    """Return the restrictions that may still hold on the phase's first day on either track, in their order.

    A restriction ends only when its week AND its phase are reached; where it names a person who ends it,
    no date and no phase ends it alone.
    """
    return tuple(
        rule for rule in programme.restrictions if _holds(rule, phase, phase.week, phase.delayed_week)
    )


def outlasts(restriction: Restriction, programme: Programme, phase: Phase) -> bool:
    """Return whether the restriction may hold to the end of the phase: on its last day it is still there."""
    following = programme.phases[phase.number : phase.number + 1]
    until = restriction.until
    if not following:
        return until.release is not None and until.week <= phase.week
    late = until.week >= following[0].week and until.delayed_week >= following[0].delayed_week
    return late or (until.phase is not None and until.phase > phase.number)


def withheld_variations(
    exercises: Mapping[str, Exercise], programme: Programme, phase: Phase
) -> frozenset[str]:
    """Return the ids (``exercise/variation``) of all variations of the phase's exercises that it forbids.

    A variation is forbidden where it asks more than the phase's highest demand, or does what a restriction
    forbids on the first day of its exercise in the phase. What is not stated counts as forbidden.
    """
    return frozenset(
        f"{use.use}/{variation.id}"
        for use in phase.uses
        if use.use in exercises
        for variation in exercises[use.use].variations.values()
        if variation.id != use.variation and _forbidden(exercises[use.use], variation, programme, phase, use)
    )


def _forbidden(
    exercise: Exercise, variation: Variation, programme: Programme, phase: Phase, use: Use
) -> bool:
    demand = variation.demand or exercise.demand
    if demand.rank > phase.demand.rank:
        return True
    week = phase.week if use.week is None else use.week
    delayed = phase.delayed_week + week - phase.week if use.delayed_week is None else use.delayed_week
    return any(
        _breaks(exercise, variation, demand, rule)
        for rule in programme.restrictions
        if _holds(rule, phase, week, delayed)
    )


def _holds(restriction: Restriction, phase: Phase, week: int, delayed_week: int) -> bool:
    until = restriction.until
    early = week < until.week or delayed_week < until.delayed_week
    return early or until.release is not None or (until.phase is not None and phase.number < until.phase)


def _breaks(exercise: Exercise, variation: Variation, demand: Demand, rule: Restriction) -> bool:
    legs = tuple(_legs(exercise, variation, rule.leg))
    if isinstance(rule, MovementRestriction):
        return any(_moves(work, rule) for leg in legs for work in (*leg.moves, *leg.holds))
    if isinstance(rule, WeightRestriction):
        most = _CARRIED.index(_MOST_CARRIED[rule.allows])
        return any(_CARRIED.index(leg.carries) > most for leg in legs)
    if isinstance(rule, PositionRestriction):
        if rule.position is Position.ON_OPERATED_SIDE:
            return any(leg.lain_on for leg in _legs(exercise, variation, Leg.OPERATED))
        return exercise.posture in _POSTURES.get(rule.position, frozenset())
    if isinstance(rule, LoadRestriction):
        return any(work.how is How.RESISTED for leg in legs for work in (*leg.moves, *leg.holds))
    return isinstance(rule, ImpactRestriction) and demand is Demand.JUMPING


def _legs(exercise: Exercise, variation: Variation, leg: Leg) -> Iterator[LegWork]:
    if leg is not Leg.OTHER:
        yield variation.operated_leg or exercise.operated_leg
    if leg is not Leg.OPERATED:
        yield variation.other_leg or exercise.other_leg


def _moves(work: JointWork, rule: MovementRestriction) -> bool:
    if (work.joint, work.movement) != (rule.joint, rule.movement) or work.how not in rule.how:
        return False
    if rule.against is not None and work.against is not rule.against:
        return False
    return rule.limit is None or work.to is None or work.to > rule.limit
