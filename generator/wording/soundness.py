"""Compares a translation with its source: what must not differ is the same phrases, numbers and no markup.

Meaning is for readers; these are the slips that a program can see. Lost negations are in `negations`.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from generator.problems import Place, Problem, Rule
from generator.wording.filling import PHRASE, translation_problems

NUMBERS_DIFFER = Rule(
    "numbers-differ",
    "A translation does not hold the same numbers as its source.",
    "A number was left out, added or mistyped, or written as a word.",
    "write the numbers in digits as the source has them; the decimal mark may differ",
    safety=True,
)
MARKUP = Rule(
    "markup-in-translation",
    "A translation holds markup.",
    "Tags such as <b> were typed or pasted; texts are plain sentences.",
    "take the tags out; emphasis is the generator's business",
)

# Runs of digits: 2.5 and 2,5 are alike, as are 1,000 and 1.000; every script's digits count.
_DIGITS = re.compile(r"\d+")
_TAG = re.compile(r"</?[a-zA-Z][^<>]*>|&(?:[a-zA-Z]+|#\d+);")
_SHOWN = 60


def soundness_problems(source: str, translation: str, place: Place) -> Iterator[Problem]:
    """Yield where a translation cannot be right, whatever its words mean."""
    if "{" in source or "{" in translation or "}" in translation:
        yield from translation_problems(source, translation, place)
    wanted, found = _numbers(source), _numbers(translation)
    if wanted != found:
        lost = ", ".join(sorted((wanted - found).elements())) or "none"
        more = ", ".join(sorted((found - wanted).elements())) or "none"
        message = f"in {_short(translation)}: numbers of the source that are missing: {lost}; added: {more}"
        yield NUMBERS_DIFFER.at(place, message)
    tag = _TAG.search(translation)
    if tag and tag.group() not in source:
        yield MARKUP.at(place, f"{tag.group()} in {_short(translation)}")


def _numbers(words: str) -> Counter[str]:
    """Return the runs of digits outside phrases, as numbers: Arabic-Indic digits are the same numbers."""
    return Counter(str(int(run)) for run in _DIGITS.findall(PHRASE.sub("", words)))


def _short(words: str) -> str:
    return repr(words if len(words) <= _SHOWN else f"{words[: _SHOWN - 1]}…")


RULES = (NUMBERS_DIFFER, MARKUP)
