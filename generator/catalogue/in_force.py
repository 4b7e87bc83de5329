"""Decides which restrictions hold in a phase and what they forbid, so that page and paper never differ."""

from __future__ import annotations

from collections.abc import Mapping

from generator.catalogue.exercise import Exercise, Variation
from generator.catalogue.programme import Phase, Programme, Restriction, Use, WeightRestriction
from generator.catalogue.restricted import Track, holds, in_force_at_entry, is_forbidden, work_of
from generator.catalogue.terms import Leg, WeightBearing


def in_force(programme: Programme, phase: Phase) -> tuple[Restriction, ...]:
    """Return the restrictions that may still hold on the first day of the phase on either track, in order.

    Of two limits on the weight of a leg the looser is left out while the stricter holds through the whole
    phase: side by side they would contradict each other.
    """
    rules = tuple(
        rule
        for rule in programme.restrictions
        if holds(rule, phase.number, phase.week, Track.USUAL)
        or holds(rule, phase.number, phase.delayed_week, Track.DELAYED)
    )
    lasting = tuple(rule for rule in rules if outlasts(rule, programme, phase))
    return tuple(rule for rule in rules if not any(_is_looser(rule, strict) for strict in lasting))


def _is_looser(rule: Restriction, strict: Restriction) -> bool:
    if not isinstance(rule, WeightRestriction) or not isinstance(strict, WeightRestriction):
        return False
    rising = tuple(WeightBearing)
    return strict.leg in (rule.leg, Leg.BOTH) and rising.index(rule.allows) > rising.index(strict.allows)


def outlasts(restriction: Restriction, programme: Programme, phase: Phase) -> bool:
    """Return whether the restriction holds through the whole phase; the last phase has no end to outlast."""
    following = programme.phases[phase.number : phase.number + 1]
    if not following:
        return False
    until, end = restriction.until, following[0]
    late = until.week >= end.week and until.delayed_week >= end.delayed_week
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
    work = work_of(exercise, variation)
    if work.demand.rank > phase.demand.rank:
        return True
    return is_forbidden(work, in_force_at_entry(programme, phase, use), both_sides=programme.both_sides)
