"""Keeps every language on the same sheets: a clinician who cannot read the patient's language points at one.

The front of a booklet and its exercises take as many sheets in each language as in the one that needs most.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from generator.booklets import rules
from generator.booklets.exercise_sheet import sheet_key
from generator.booklets.html import SESSION_SHEET
from generator.booklets.values import BookletJob, BookletResult
from generator.problems import Place, Problem

_FRONT = ("cover", "phase", "warnings", SESSION_SHEET)


def most_sheets(results: Sequence[BookletResult]) -> Mapping[str, int]:
    """Return how many sheets each locked section takes in the language that needs most of them.

    results: one phase and kind in all languages.
    """
    most: dict[str, int] = {}
    for result in results:
        for key, count in locked(result).items():
            most[key] = max(most.get(key, 0), count)
    return most


def locked(result: BookletResult) -> Mapping[str, int]:
    """Return how many sheets the sections take that stand on the same ones in every language."""
    return {
        key: count for key, count in result.taken.items() if key in _FRONT or key.startswith(sheet_key(""))
    }


def with_sheets(job: BookletJob, most: Mapping[str, int]) -> BookletJob:
    """Return a job that takes as many sheets: exercises over two, the rest by sheets for notes."""
    exercises = (use.use for use in job.stage.uses)
    two = frozenset(one for one in exercises if most.get(sheet_key(one), 0) > 1)
    return replace(job, two_sheets=job.two_sheets | two, sheets=most)


def unlike(results: Sequence[BookletResult]) -> Iterator[tuple[BookletResult, Problem]]:
    """Yield each booklet that stands on other sheets than the rest, with the finding that says where."""
    most = most_sheets(results)
    for result in results:
        taken = locked(result)
        wrong = [key for key, count in most.items() if taken.get(key, 0) != count]
        if wrong:
            told = ", ".join(f"{key} on {taken.get(key, 0)} instead of {most[key]}" for key in wrong)
            yield result, rules.PAGE_LOCK.at(Place(result.path.as_posix()), f"sheets differ: {told}")
