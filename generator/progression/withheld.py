"""Finds the variations that a phase forbids, so that they are printed nowhere in it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from generator.catalogue.in_force import withheld_variations as forbidden_variations
from generator.catalogue.programme import Phase, Programme
from generator.catalogue.terms import MuscleAim
from generator.catalogue.values import Catalogue
from generator.progression.activity import Activity, activity_of
from generator.progression.bands import position
from generator.progression.worked import on_offer


def withheld_variations(catalogue: Catalogue, programme: Programme) -> Mapping[int, frozenset[str]]:
    """Return, by number of the phase, the ids (``exercise/variation``) of all variations it forbids.

    Forbidden is what asks more than the phase's highest demand, does what a restriction forbids on the day
    the exercise enters, or works a protected muscle above the phase's band. A harder variation counts as no
    easier than its exercise, measured or not.
    """
    return withheld_by(catalogue, activity_of(catalogue), programme)


def withheld_by(
    catalogue: Catalogue, activity: Activity, programme: Programme
) -> Mapping[int, frozenset[str]]:
    """Return the same from what is already known of every form."""
    return MappingProxyType(
        {
            phase.number: forbidden_variations(catalogue.exercises, programme, phase)
            | _above_band(catalogue, activity, programme, phase)
            for phase in programme.phases
        }
    )


def _above_band(
    catalogue: Catalogue, activity: Activity, programme: Programme, phase: Phase
) -> frozenset[str]:
    if programme.aim is not MuscleAim.PROTECTS:
        return frozenset()
    found = set()
    for use in phase.uses:
        exercise = catalogue.exercises.get(use.use)
        for variation in exercise.variations.values() if exercise else ():
            guess = on_offer(activity, programme, exercise, variation) if exercise else None
            above = position(guess.mean if guess else None, phase.band)[1]
            if above > 0 and variation.id != use.variation:
                found.add(f"{use.use}/{variation.id}")
    return frozenset(found)
