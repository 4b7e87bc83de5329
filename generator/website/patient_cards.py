"""Makes the exercises of a sheet for one patient, each with what decides whether this patient keeps it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from enum import Enum

from generator.catalogue.base import Text
from generator.catalogue.choices import PhaseChoices, UseChoice
from generator.catalogue.dose import DoseStep, Load
from generator.catalogue.edition_values import step_text
from generator.catalogue.exercise import Exercise, HelperRole, Variation
from generator.catalogue.programme import Phase, Programme, Use
from generator.catalogue.terms import Helper
from generator.website.figure_view import FigureView, figure_of
from generator.website.phase_items import often, stop_words
from generator.website.shared import Warned, entry_words, warned
from generator.website.values import SiteInput
from generator.wording.doses import DosePhrase, dose, told_apart
from generator.wording.terms import term
from generator.wording.voice import Voice


@dataclass(frozen=True)
class DoseOption:
    """A dose to begin with, and which of the phase's steps comes next.

    value: as the command reads it. name: in words that tell it from the others of the exercise.
    """

    value: str
    name: str
    words: DosePhrase
    onwards: int


@dataclass(frozen=True)
class SheetCard:
    """An exercise of the sheet.

    id: of the exercise. brought: whether it only comes in place of another one. facts: what decides whether
    it stays, as data of the element. first: dose that the phase begins with. steps, ladder: all dose
    steps, as figures and with their load. heir: exercise that takes its place in this phase.
    """

    id: str
    brought: bool
    facts: Mapping[str, str]
    exercise: Exercise
    variation: Variation | None
    figure: FigureView | None
    first: str
    doses: tuple[DoseOption, ...]
    steps: tuple[str, ...]
    ladder: tuple[str, ...]
    often: str
    later: str
    condition: Text | None
    stop: str
    heir: str
    note: Text | None
    cautions: tuple[Warned, ...]
    where: tuple[tuple[str, str], ...]
    things: str
    helper: HelperRole | None


def word(member: Enum) -> str:
    """Return a member as the command line writes it: small letters, hyphens for blanks."""
    return str(member.value).replace(" ", "-")


def cards_of(
    site: SiteInput, programme: Programme, phase: Phase, choices: PhaseChoices
) -> tuple[SheetCard, ...]:
    """Return the exercises in the order of introduction, an alternative right after what it may replace."""
    own = {one.use.use: one for one in choices.uses}
    brought = {one.use.use: one for one in choices.brought}
    order = [placed.exercise for placed in site.orders[programme.id].of_phase(phase.number)]
    return tuple(_in_turn(site, programme, phase, [own[id_] for id_ in order], brought))


def _in_turn(
    site: SiteInput,
    programme: Programme,
    phase: Phase,
    own: Iterable[UseChoice],
    brought: Mapping[str, UseChoice],
) -> Iterator[SheetCard]:
    waiting = dict(brought)
    for choice in own:
        yield _card(site, programme, phase, choice, brought=False)
        instead = waiting.pop(choice.instead or "", None)
        if instead is not None:
            yield _card(site, programme, phase, instead, brought=True)


def _card(
    site: SiteInput, programme: Programme, phase: Phase, choice: UseChoice, *, brought: bool
) -> SheetCard:
    voice, use = site.voice, _in_words(programme, choice)
    exercise = site.exercise_in(programme.id, choice.phase, use.use)
    variation = exercise.variations[use.variation] if use.variation else None
    own = variation.cautions if variation else ()
    things = (*exercise.equipment, *(variation.equipment if variation else ()))
    stop = stop_words(site, phase, use)
    phrases = tuple(dose(voice, step, exercise.dose) for step in use.dose_steps)
    return SheetCard(
        id=use.use,
        brought=brought,
        facts=dict(_facts(choice)),
        exercise=exercise,
        variation=variation,
        figure=figure_of(site, exercise, variation) or figure_of(site, exercise),
        first=_typed(use.dose_steps[0]),
        doses=tuple(_doses(voice, exercise, choice)),
        steps=tuple(phrase.big for phrase in phrases),
        ladder=told_apart(voice, use.dose_steps, exercise.dose),
        often=often(voice, use),
        later=voice.opening(entry_words(voice, phase, use)),
        condition=use.when,
        stop=stop,
        heir=(use.replaced_by or "") if stop else "",
        note=use.note,
        cautions=warned(voice, (*exercise.cautions, *own, *use.cautions)),
        where=tuple((word(one), voice.opening(term(voice, one))) for one in exercise.surface),
        # Names begin with a capital, so that "and" between two of them reads like one thing.
        things=" · ".join(str(site.catalogue.equipment[thing].name) for thing in dict.fromkeys(things)),
        helper=exercise.helper_role if exercise.helper is not Helper.NONE else None,
    )


def _doses(voice: Voice, exercise: Exercise, choice: UseChoice) -> Iterator[DoseOption]:
    doses = sorted(choice.doses, key=lambda one: _size(one.step))
    names = told_apart(voice, [one.step for one in doses], exercise.dose, in_words=True)
    for one, name in zip(doses, names, strict=True):
        yield DoseOption(_typed(one.step), name, dose(voice, one.step, exercise.dose), one.onwards)


def _size(step: DoseStep) -> tuple[bool, int, int, int]:
    """Return what a list of doses is sorted by: without load first, then sets, count and hold."""
    return (step.load != Load(), step.sets, step.count, step.hold or 0)


def _in_words(programme: Programme, choice: UseChoice) -> Use:
    """Return the use that a choice is about, its texts in the language of the programme.

    Choices are worked out once for all languages.
    """
    use = choice.use
    told = next(one for one in programme.phase(choice.phase).uses if one.use == use.use)
    return replace(use, note=told.note, cautions=told.cautions, when=told.when)


def _typed(step: DoseStep) -> str:
    """Return a dose step as one word where the command line reads one: ``2x8``."""
    return step_text(step).replace(" x ", "x")


def _facts(choice: UseChoice) -> Iterator[tuple[str, str]]:
    """Yield what decides whether the exercise stays, as names and values of attributes, none empty."""
    limits = (f"{name}:{degrees:g}" for name, degrees in choice.limits.items())
    facts: tuple[tuple[str, Iterable[str]], ...] = (
        ("things", choice.things),
        ("strains", choice.strains),
        ("positions", map(word, choice.positions)),
        ("surfaces", map(word, choice.surfaces)),
        ("weights", map(word, choice.weights)),
        ("limits", limits),
        ("needs", choice.needs),
        ("one-of", choice.one_of),
        ("instead", (choice.instead,) if choice.instead else ()),
    )
    for name, values in facts:
        if listed := " ".join(values):
            yield name, listed
