"""Names the easier and harder forms of an exercise, each only where a phase permits it."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.exercise import Exercise, Variation
from generator.catalogue.in_force import withheld_variations
from generator.catalogue.terms import Change
from generator.website.forms import effect_words
from generator.website.shared import Warned, warned
from generator.website.stays import Stay
from generator.website.values import SiteInput
from generator.wording.phrases import list_of


@dataclass(frozen=True)
class Form:
    """An easier or harder form, with the phases that permit it and its own dangers.

    effects: what it does to the muscles of the programmes, in words.
    """

    variation: Variation
    phases: str
    things: str
    effects: tuple[str, ...]
    cautions: tuple[Warned, ...]


def forms_of(
    site: SiteInput, exercise: Exercise, stays: tuple[Stay, ...], change: Change
) -> tuple[Form, ...]:
    """Return the easier or harder forms that a phase permits; a form that none permits is not named."""
    found = []
    for variation in exercise.variations.values():
        permitting = [stay for stay in stays if _permits(site, stay, variation)]
        if variation.is_ is not change or not permitting:
            continue
        everywhere = len(permitting) == len(stays)
        phases = "" if everywhere else list_of(site.voice, (stay.short for stay in permitting))
        things = list_of(site.voice, (str(site.catalogue.equipment[one].name) for one in variation.equipment))
        muscles = frozenset(muscle for stay in permitting for muscle in stay.programme.muscles)
        effects = effect_words(site, f"{exercise.id}/{variation.id}", muscles)
        found.append(Form(variation, phases, things, effects, warned(site.voice, variation.cautions)))
    return tuple(found)


def _permits(site: SiteInput, stay: Stay, variation: Variation) -> bool:
    if stay.variation is not None and stay.variation.id == variation.id:
        return False
    withheld = site.withheld.get((stay.programme.id, stay.phase.number))
    if withheld is None:
        withheld = withheld_variations(site.catalogue.exercises, stay.programme, stay.phase)
    return f"{stay.exercise.id}/{variation.id}" not in withheld
