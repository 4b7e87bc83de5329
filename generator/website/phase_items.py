"""Says what a phase holds of exercises: what is done now, what is added when told, and what is over."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.arranged import Placed
from generator.catalogue.base import Text
from generator.catalogue.dose import DoseKind
from generator.catalogue.exercise import Exercise, Variation
from generator.catalogue.programme import Phase, Programme, Use
from generator.website.addresses import exercise_page
from generator.website.shared import entry_words
from generator.website.values import SiteInput
from generator.wording.doses import DosePhrase, dose
from generator.wording.phrases import frequency, number
from generator.wording.voice import Voice


@dataclass(frozen=True)
class Item:
    """An exercise in the phase: place, name, page, first dose and how often.

    later: when it may begin, where that is later than the phase; condition: what must be reached besides.
    stop: what to stop on the day another exercise of the same phase takes its place.
    """

    place: str
    exercise: Exercise
    variation: Variation | None
    page: str
    dose: DosePhrase
    often: str
    later: str
    condition: Text | None
    stop: str
    note: Text | None

    @property
    def waits(self) -> bool:
        """Return whether it is not done from the phase's first day on."""
        return bool(self.later or self.condition)


@dataclass(frozen=True)
class Gone:
    """An exercise of the phase before that is over now, and what took its place (empty: nothing)."""

    name: Text
    page: str
    instead: Text | None
    instead_page: str


def items_of(site: SiteInput, programme: Programme, phase: Phase) -> tuple[Item, ...]:
    """Return the exercises of a phase in the order of introduction."""
    uses = {use.use: use for use in phase.uses}
    order = site.orders[programme.id].of_phase(phase.number)
    return tuple(_item(site, programme, phase, uses[placed.exercise], placed) for placed in order)


def _item(site: SiteInput, programme: Programme, phase: Phase, use: Use, placed: Placed) -> Item:
    voice = site.voice
    exercise = site.exercise_in(programme.id, phase.number, use.use)
    return Item(
        place=number(voice, placed.place),
        exercise=exercise,
        variation=exercise.variations[use.variation] if use.variation else None,
        page=exercise_page(use.use),
        dose=dose(voice, use.dose_steps[0], exercise.dose),
        often=often(voice, use),
        later=voice.opening(entry_words(voice, phase, use)),
        condition=use.when,
        stop=stop_words(site, phase, use),
        note=use.note,
    )


def stop_words(site: SiteInput, phase: Phase, use: Use) -> str:
    """Return when to stop an exercise that another one of the same phase replaces; else an empty text."""
    if use.replaced_by is None or use.replaced_by not in {one.use for one in phase.uses}:
        return ""
    words = site.voice.gettext("When “{exercise}” begins, stop this one.")
    return words.format(exercise=site.catalogue.exercises[use.replaced_by].name)


def gone_in(site: SiteInput, programme: Programme, phase: Phase) -> tuple[Gone, ...]:
    """Return the exercises of the phase before that this phase has no longer."""
    if phase.number == 1:
        return ()
    still = {use.use for use in phase.uses}
    known = site.catalogue.exercises
    return tuple(
        Gone(
            name=known[use.use].name,
            page=exercise_page(use.use),
            instead=known[use.replaced_by].name if use.replaced_by else None,
            instead_page=exercise_page(use.replaced_by) if use.replaced_by else "",
        )
        for use in programme.phase(phase.number - 1).uses
        if use.use not in still
    )


def often(voice: Voice, use: Use) -> str:
    """Return how often an exercise is done, with the days of rest."""
    hourly = use.dose_steps[0].kind is DoseKind.HOURLY
    return frequency(voice, use.times_a_day, use.days_a_week, use.rest_days, hourly=hourly)
