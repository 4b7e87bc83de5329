"""Words one step back for each dose step: what to do instead when it got worse, and what to leave out."""

from __future__ import annotations

from dataclasses import dataclass

from generator.booklets.values import BookletJob
from generator.catalogue.arranged import StepBack
from generator.catalogue.programme import Use
from generator.wording.phrases import list_of, number


@dataclass(frozen=True)
class DoseRow:
    """A dose step with its number, and what takes its place after it got worse."""

    number: str
    dose: str
    instead: str


@dataclass(frozen=True)
class Back:
    """The way up and the way back of one exercise.

    rows: from the first dose step to the last. notes: what holds whichever step one was on.
    """

    rows: tuple[DoseRow, ...]
    notes: tuple[str, ...]


def back(job: BookletJob, use: Use, ladder: tuple[str, ...]) -> Back:
    """Return the step back from every dose step of a use; `ladder` holds the doses as they are printed.

    Raises KeyError where none was worked out: a sheet without it must not be printed.
    """
    steps = [job.back[use.use, position] for position in range(len(ladder))]
    rows = tuple(
        DoseRow(number(job.voice, position), dose, _instead(job, use, one, ladder))
        for position, (dose, one) in enumerate(zip(ladder, steps, strict=True), 1)
    )
    return Back(rows, _notes(job, use, steps))


def _instead(job: BookletJob, use: Use, one: StepBack, ladder: tuple[str, ...]) -> str:
    voice = job.voice
    if one.previous is not None:
        return ladder[use.dose_steps.index(one.previous)]
    if one.easier:
        return voice.gettext("The easier form: {forms}").format(forms=_forms(job, one.easier))
    return voice.gettext("Leave it out, and ask your physiotherapist")


def _notes(job: BookletJob, use: Use, steps: list[StepBack]) -> tuple[str, ...]:
    voice, said = job.voice, []
    paused = dict.fromkeys(other for one in steps for other in one.pause if other != use.use)
    if paused:
        names = list_of(voice, (str(job.catalogue.exercises[other].name) for other in paused))
        said.append(voice.gettext("Until it is calm again, leave out: {exercises}.").format(exercises=names))
    return tuple(said)


def _forms(job: BookletJob, forms: tuple[str, ...]) -> str:
    """Return the names of forms, each ``exercise/variation`` or an exercise itself."""
    names = []
    for form in forms:
        exercise, _, variation = form.partition("/")
        found = job.catalogue.exercises[exercise]
        names.append(str(found.variations[variation].name if variation else found.name))
    return list_of(job.voice, names, "or")
