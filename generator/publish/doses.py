"""Compares the doses and other promised texts of a page or booklet with what the catalogue says."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.problems import Place, Problem, Rule
from generator.publish.text import doses_in, holds_token, holds_words, number_runs, plain

NO_TEXT = Rule(
    "text-missing",
    "A page or booklet lacks a text that it has to carry.",
    "A template leaves out a field of the catalogue, or prints it differently.",
    "print the field in the template as the wording gives it",
    safety=True,
)
OTHER_DOSE = Rule(
    "dose-not-in-catalogue",
    "A page or booklet prints a dose that the catalogue does not give there.",
    "A number was typed into a text or template, or belongs to another phase.",
    "remove the number from the text and let the dose come from the catalogue",
    safety=True,
)
NO_DOSE = Rule(
    "dose-missing",
    "A page or booklet lacks a dose that the catalogue gives there, or turns its numbers round.",
    "A template leaves the dose out, or a right-to-left line turns 3 × 10 into 10 × 3.",
    "print the dose in the template through the one function that keeps its numbers in order",
    safety=True,
)
RULES = (NO_TEXT, OTHER_DOSE, NO_DOSE)


def check(
    path: str,
    text: str,
    dose_text: str,
    required: Sequence[str],
    doses: Sequence[str] | None,
    *,
    loose: bool = False,
) -> Iterator[Problem]:
    """Yield what is missing or strange in the plain text of one file.

    `dose_text` is the text as the eye meets it, which differs from `text` in right-to-left PDF files;
    `doses` is nothing where the doses of a file are not to be judged. loose: whether the words of a required
    text may stand in any order, and its figures are looked for as the eye meets them.
    """
    place = Place(path)
    for wanted in required:
        if not (holds_token(text, wanted) or (loose and _holds_loosely(text, dose_text, wanted))):
            yield NO_TEXT.at(place, f"the text {shorten(wanted)!r} is missing")
    if doses is None:
        return
    for wanted in doses:
        if not holds_token(dose_text, wanted):
            yield NO_DOSE.at(place, f"the dose {wanted!r} is missing")
    given = tuple(plain(dose) for dose in doses)
    for printed in doses_in(dose_text):
        if not any(holds_token(dose, printed) for dose in given):
            yield OTHER_DOSE.at(place, f"the dose {printed!r} is not in the catalogue for this place")


def _holds_loosely(text: str, seen: str, wanted: str) -> bool:
    figures = all(holds_token(seen, run) for run in number_runs(wanted))
    if not any(char.isalpha() for char in wanted):
        return holds_token(seen, wanted)
    return figures and holds_words(text, wanted)


def shorten(text: str, width: int = 60) -> str:
    """Return the text, cut with an ellipsis where it is longer than `width` characters."""
    return text if len(text) <= width else text[: width - 1] + "…"
