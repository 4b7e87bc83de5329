"""Says of an exercise, for each phase it belongs to: when, how much, how hard, within which rules."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.catalogue.arranged import Placed
from generator.catalogue.base import Text
from generator.catalogue.exercise import Exercise, Variation
from generator.catalogue.programme import Phase, Programme, Use
from generator.catalogue.terms import Then
from generator.website.addresses import phase_page, programme_page
from generator.website.phase_items import often, stop_words
from generator.website.shared import Forbidden, entry_words, forbidden_in
from generator.website.step_back import Back, step_back_of
from generator.website.values import SiteInput
from generator.wording.doses import DosePhrase, dose, told_apart
from generator.wording.phrases import number, pain, place_of, row_of
from generator.wording.phrases import phase as phase_words
from generator.wording.weeks import both_tracks


@dataclass(frozen=True)
class Stay:
    """What the page says about one phase that the exercise belongs to.

    where: number and name of the phase. later: when it may begin, where later than the phase. gated: whether
    the phase itself must be opened by the physiotherapist. ladder: all dose steps, large form with load.
    limit: the pain limit. after: what becomes of it later. back: what to do instead after it got worse.
    """

    programme: Programme
    programme_page: str
    phase: Phase
    page: str
    where: str
    short: str
    when: str
    later: str
    condition: Text | None
    gated: bool
    place: str
    compared: str
    forbidden: tuple[Forbidden, ...]
    exercise: Exercise
    variation: Variation | None
    dose: DosePhrase
    often: str
    ladder: tuple[str, ...]
    limit: str
    after: str
    note: Text | None
    back: Back | None


def figures_of(site: SiteInput, stay: Stay) -> Iterator[str]:
    """Yield every dose of the exercise in this phase, as it is printed."""
    use = next(one for one in stay.phase.uses if one.use == stay.exercise.id)
    for step in use.dose_steps:
        yield dose(site.voice, step, stay.exercise.dose).big


def stays_of(site: SiteInput, exercise: str) -> Iterator[Stay]:
    """Yield what to say of each phase that an exercise belongs to, in order."""
    for programme, phase, use in site.catalogue.uses_of(exercise):
        places = site.orders[programme.id].of_phase(phase.number)
        placed = next(one for one in places if one.exercise == exercise)
        yield _stay(site, programme, phase, use, placed)


def _stay(site: SiteInput, programme: Programme, phase: Phase, use: Use, placed: Placed) -> Stay:
    voice, order = site.voice, site.orders[programme.id]
    exercise = site.exercise_in(programme.id, phase.number, use.use)
    phrases = [dose(voice, step, exercise.dose) for step in use.dose_steps]
    short = phase_words(voice, phase.number)
    several = len({one.id for one, _, _ in site.catalogue.uses_of(use.use)}) > 1
    where = voice.gettext("{phase}: {name}").format(phase=short, name=phase.name)
    return Stay(
        programme=programme,
        programme_page=programme_page(programme.id),
        phase=phase,
        page=phase_page(programme.id, phase.number),
        where=where,
        short=row_of(voice, (str(programme.name), short)) if several else short,
        when=voice.opening(both_tracks(voice, order.windows[phase.number - 1])),
        later=voice.opening(entry_words(voice, phase, use)),
        condition=use.when,
        gated=phase.number > 1,
        place=place_of(voice, placed.place, len(order.of_phase(phase.number))),
        compared=_compared(site, programme, placed),
        forbidden=forbidden_in(voice, programme, phase),
        exercise=exercise,
        variation=exercise.variations[use.variation] if use.variation else None,
        dose=phrases[0],
        often=often(voice, use),
        ladder=told_apart(voice, use.dose_steps, exercise.dose),
        limit=pain(voice, phase.pain.during),
        after=_after(site, phase, use),
        note=use.note,
        back=step_back_of(site, programme, phase, use),
    )


def _compared(site: SiteInput, programme: Programme, placed: Placed) -> str:
    """Return how hard it is beside the exercise before it; empty where activity does not order them."""
    if placed.place == 1 or placed.level is None:
        return ""
    earlier = site.orders[programme.id].of_phase(placed.phase)[placed.place - 2]
    if earlier.level is None:
        return ""
    alike = site.voice.gettext("about as hard as exercise {place}")
    words = alike if earlier.level == placed.level else site.voice.gettext("harder than exercise {place}")
    return words.format(place=number(site.voice, earlier.place))


def _after(site: SiteInput, phase: Phase, use: Use) -> str:
    """Return what becomes of the exercise: within the phase, or when it is over."""
    stop = stop_words(site, phase, use)
    if stop:
        return stop
    if use.then is Then.GOES_ON:
        return site.voice.gettext("It goes on in the next phase.")
    if use.then is Then.ENDS or use.replaced_by is None:
        return site.voice.gettext("It ends with this phase.")
    words = site.voice.gettext("After this phase it is replaced by: {exercise}")
    return words.format(exercise=site.catalogue.exercises[use.replaced_by].name)
