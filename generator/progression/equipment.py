"""Lists the things that a phase needs, so that nobody starts a session without them."""

from __future__ import annotations

from collections.abc import Set

from generator.catalogue.arranged import Thing
from generator.catalogue.programme import Phase
from generator.catalogue.values import Catalogue


def things_of_phase(catalogue: Catalogue, phase: Phase, withheld: Set[str]) -> tuple[Thing, ...]:
    """Return the things in the order of equipment.yml, with the exercises that need them.

    A thing that only a variation on offer needs is optional; `withheld` variations (``exercise/variation``)
    are not on offer.
    """
    needed: dict[str, list[str]] = {}
    offered: dict[str, list[str]] = {}
    for use in phase.uses:
        exercise = catalogue.exercises.get(use.use)
        if exercise is None:
            continue
        chosen = exercise.variations.get(use.variation or "")
        for thing in (*exercise.equipment, *(chosen.equipment if chosen else ())):
            needed.setdefault(thing, []).append(use.use)
        for variation in exercise.variations.values():
            if f"{use.use}/{variation.id}" not in withheld and variation is not chosen:
                for thing in variation.equipment:
                    offered.setdefault(thing, []).append(use.use)
    return tuple(
        Thing(thing, tuple(dict.fromkeys(needed.get(thing) or offered[thing])), thing not in needed)
        for thing in catalogue.equipment
        if thing in needed or thing in offered
    )
