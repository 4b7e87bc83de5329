"""Says for each exercise what to do instead after it got worse: one step back, within the phase's rules."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from generator.catalogue.arranged import StepBack
from generator.catalogue.base import Text
from generator.catalogue.dose import DoseKind, DoseStep
from generator.catalogue.exercise import Exercise
from generator.catalogue.programme import Phase, Programme, Use
from generator.website.addresses import exercise_page
from generator.website.values import SiteInput
from generator.wording.doses import dose, each_held
from generator.wording.phrases import list_of, load


@dataclass(frozen=True)
class Back:
    """One step back for an exercise.

    steps: sentences, from the highest dose step down; at: the positions of these dose steps, from 0.
    easier: easier forms to do instead; changes: what is done otherwise in them. pause: other exercises to
    leave out meanwhile.
    """

    name: Text
    page: str
    steps: tuple[str, ...]
    at: tuple[int, ...]
    easier: str
    changes: tuple[Text, ...]
    pause: str


def step_back_of(site: SiteInput, programme: Programme, phase: Phase, use: Use) -> Back | None:
    """Return the step back for a use; None where nothing was worked out."""
    key = (programme.id, phase.number)
    known, withheld = site.back.get(key, {}), site.withheld.get(key, frozenset())
    found = [
        # What the phase withholds is offered nowhere, whoever worked it out.
        replace(back, easier=tuple(form for form in back.easier if form not in withheld))
        for step in range(len(use.dose_steps))
        if (back := known.get((use.use, step))) is not None
    ]
    if not found:
        return None
    exercise = site.exercise_in(programme.id, phase.number, use.use)
    others = dict.fromkeys(one for back in found for one in back.pause if one != use.use)
    return Back(
        name=exercise.name,
        page=exercise_page(use.use),
        steps=tuple(_sentence(site, use.dose_steps[one.step], exercise, one) for one in reversed(found)),
        at=tuple(one.step for one in reversed(found)),
        easier=_easier(site, exercise, found[0].easier),
        changes=tuple(
            exercise.variations[form.partition("/")[2]].change for form in found[0].easier if "/" in form
        ),
        pause=list_of(site.voice, (str(site.catalogue.exercises[one].name) for one in others)),
    )


def doses_of(site: SiteInput, use: Use, exercise: Exercise) -> tuple[str, ...]:
    """Return every dose that a use can have, as it is printed."""
    return tuple(dose(site.voice, step, exercise.dose).big for step in use.dose_steps)


def _sentence(site: SiteInput, today: DoseStep, exercise: Exercise, back: StepBack) -> str:
    voice = site.voice
    did = _amount(site, today, exercise)
    if back.previous is not None:
        words = voice.gettext("After {today}: do {back}.")
        return words.format(today=did, back=_amount(site, back.previous, exercise))
    if back.easier:
        return voice.gettext("After {today}: do the easier form.").format(today=did)
    return voice.gettext("After {today}: leave it out for now.").format(today=did)


def _amount(site: SiteInput, step: DoseStep, exercise: Exercise) -> str:
    """Return a dose step in few words: figures where sets are counted, else the count with its unit."""
    voice = site.voice
    phrase = dose(voice, step, exercise.dose)
    in_sets = step.kind in (DoseKind.REPETITIONS, DoseKind.HOLDS)
    words = " ".join(
        part for part in (phrase.big if in_sets else phrase.spoken, load(voice, step.load)) if part
    )
    return words if step.hold is None else each_held(voice, words, step.hold)


def _easier(site: SiteInput, exercise: Exercise, forms: Sequence[str]) -> str:
    names = (
        str(exercise.variations[form.partition("/")[2]].name if "/" in form else exercise.name)
        for form in forms
    )
    return list_of(site.voice, names, "or")
