"""Finds the variations that a phase forbids, so that they are printed nowhere in it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from generator.catalogue.arranged import Estimate
from generator.catalogue.exercise import Exercise, Variation
from generator.catalogue.in_force import withheld_variations as forbidden_variations
from generator.catalogue.programme import Phase, Programme
from generator.catalogue.terms import Change, MuscleAim
from generator.catalogue.values import Catalogue
from generator.progression.activity import estimate
from generator.progression.arrange import most_active
from generator.progression.bands import position


def withheld_variations(catalogue: Catalogue, programme: Programme) -> Mapping[int, frozenset[str]]:
    """Return, by number of the phase, the ids (``exercise/variation``) of all variations it forbids.

    Forbidden is what asks more than the phase's highest demand, does what a restriction forbids on the day
    the exercise enters, or works a protected muscle above the phase's band. A harder variation that nobody
    has measured counts as no easier than its exercise.
    """
    return MappingProxyType(
        {
            phase.number: forbidden_variations(catalogue.exercises, programme, phase)
            | _above_band(catalogue, programme, phase)
            for phase in programme.phases
        }
    )


def variation_estimate(
    catalogue: Catalogue, programme: Programme, exercise: Exercise, variation: Variation
) -> Estimate | None:
    """Return the estimate of the programme's most active muscle in the variation; None where not measured."""
    found = (estimate(variation.activity, muscle, catalogue.studies) for muscle in programme.muscles)
    own = max((item for item in found if item), key=lambda item: item.mean, default=None)
    if own is None and variation.is_ is Change.HARDER:
        return most_active(catalogue, programme, exercise)
    return own


def _above_band(catalogue: Catalogue, programme: Programme, phase: Phase) -> frozenset[str]:
    if programme.aim is not MuscleAim.PROTECTS:
        return frozenset()
    found = set()
    for use in phase.uses:
        exercise = catalogue.exercises.get(use.use)
        for variation in exercise.variations.values() if exercise else ():
            guess = variation_estimate(catalogue, programme, exercise, variation) if exercise else None
            above = position(guess.mean if guess else None, phase.band)[1]
            if above > 0 and variation.id != use.variation:
                found.add(f"{use.use}/{variation.id}")
    return frozenset(found)
