"""Guesses from the words of a booklet how its sections will sit on paper, so that few are laid out twice.

A wrong guess costs nothing but time where it asks for too little; it must never ask for smaller type in vain.
So the limits are what never fitted: measured on A4 in five languages, and beyond the most that ever did.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from generator.booklets.exercise_sheet import sheet_key
from generator.booklets.html import SESSION_SHEET, letters_in_sections, sections_html
from generator.booklets.values import NO_FITS, BookletJob, Fit, Fits
from generator.catalogue.base import Text
from generator.catalogue.exercise import Exercise

PHASE_SHEET = "phase"
HELPER_SHEET = "helper"

FEW_SHEETS = MappingProxyType({"cover": 1, PHASE_SHEET: 2, "warnings": 2, SESSION_SHEET: 1, "diary": 1})
"""How many sheets these sections may take; more words than usual stand closer together on them."""

MOST_SHEETS = 2
"""An exercise takes no more."""

# More letters than this never fit one sheet at a size that everyone can read.
_MOST_LETTERS = 480

# More than this on the front of a leaf never fit but in the smaller type.
_MOST_LETTERS_IN_LARGER_TYPE = 620

# More letters than this never fit the sheets of a section as it is usually set.
_MOST_IN_SECTION = MappingProxyType(
    {PHASE_SHEET: 2600, "warnings": 3100, SESSION_SHEET: 1000, HELPER_SHEET: 2100}
)


@dataclass(frozen=True)
class Begun:
    """A booklet before it is laid out: how its sections are thought to sit on paper, and its HTML so."""

    fits: Fits
    html: str


def begin(job: BookletJob) -> Begun:
    """Return a booklet as it will probably be; in one column nothing is gained by another size of type."""
    if job.format.narrow:
        return Begun(NO_FITS, sections_html(job, NO_FITS))
    fits = _exercises(job)
    html = sections_html(job, fits)
    letters = letters_in_sections(html)
    full = [key for key, most in _MOST_IN_SECTION.items() if letters.get(key, 0) > most]
    if not full:
        return Begun(fits, html)
    fits = {**fits, **{key: better(key, Fit(), MOST_SHEETS + 1) for key in full}}
    return Begun(fits, sections_html(job, fits))


def better(key: str, fit: Fit, pages: int, *, carried: bool = False) -> Fit:
    """Return how a section that stood on `pages` should sit: parted, in smaller type, at last uneven.

    carried: whether something of its first sheet stands on the second, above the heading there.
    The front and the diary are never parted: they flow, and the sheet of a session hangs on one door.
    """
    if key in FEW_SHEETS:
        return replace(fit, tight=fit.tight or pages > FEW_SHEETS[key])
    if pages > 1 and not fit.split:
        return replace(fit, split=True)
    full = pages > MOST_SHEETS or carried
    return replace(fit, tight=fit.tight or full, uneven=fit.uneven or (fit.tight and full))


def _exercises(job: BookletJob) -> Mapping[str, Fit]:
    """Return the exercises that take two sheets: those that do elsewhere, and those rich in words."""
    exercises = {use.use: job.catalogue.exercises[use.use] for use in job.stage.uses}
    rich = {id_ for id_, exercise in exercises.items() if _length(exercise) > _MOST_LETTERS}
    full = {
        id_ for id_, exercise in exercises.items() if _front_length(exercise) > _MOST_LETTERS_IN_LARGER_TYPE
    }
    return {
        sheet_key(exercise): Fit(split=True, tight=exercise in full) for exercise in (*job.two_sheets, *rich)
    }


def _length(exercise: Exercise) -> int:
    """Return how many letters an exercise has in the editor's language, the same for all languages."""
    back = (*exercise.mistakes, exercise.feel, exercise.not_feel)
    return sum(len(text.source) for text in (*_on_the_front(exercise), *back))


def _front_length(exercise: Exercise) -> int:
    """Return how many letters stand on the first sheet of an exercise that takes two, as printed."""
    return sum(len(str(text)) for text in _on_the_front(exercise))


def _on_the_front(exercise: Exercise) -> tuple[Text, ...]:
    cautions = [text for one in exercise.cautions for text in (one.hazard, one.consequence, one.avoid)]
    lists = (*exercise.set_up, *exercise.steps, *exercise.limits, *cautions)
    return (*lists, exercise.start, exercise.purpose)
