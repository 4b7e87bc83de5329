"""Finds letters that no typeface of ours can draw, before a booklet prints an empty box for one of them."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator
from functools import lru_cache

from generator.booklets.fonts import drawn
from generator.catalogue.base import Text
from generator.problems import Place, Problem, Rule
from generator.wording.own_words import Words
from generator.wording.po import forms_of

UNDRAWN = Rule(
    "letter-without-glyph",
    "A text has a letter or sign that no typeface of the booklets can draw.",
    "It was pasted from elsewhere, or the language is written in a script without a typeface here.",
    "write it otherwise; for a new script, a typeface has to be added to the program",
    safety=True,
)
RULES = (UNDRAWN,)
_SHOWN = 60


@lru_cache(maxsize=32_768)
def undrawn(words: str) -> tuple[str, ...]:
    """Return the characters of a text that leave ink and have no glyph, each once."""
    return tuple(char for char in dict.fromkeys(words) if _inked(char) and ord(char) not in drawn())


def undrawn_letters(texts: Iterable[Text], language: str) -> Iterator[Problem]:
    """Yield a finding for each such character of the content's texts, at the text's source."""
    for text in texts:
        yield from _found(str(text), language, text.place)


def undrawn_own_letters(words: Words | None, language: str, place: Place) -> Iterator[Problem]:
    """Yield the same for the generator's words where the content brings them."""
    for message in words or ():
        for form in forms_of(message):
            yield from _found(form, language, place)


def _found(words: str, language: str, place: Place) -> Iterator[Problem]:
    for char in undrawn(words):
        named = f"{char!r} (U+{ord(char):04X}, {unicodedata.name(char, 'without a name').lower()})"
        shown = words if len(words) <= _SHOWN else f"{words[: _SHOWN - 1]}…"
        yield UNDRAWN.at(place, f"{named} cannot be printed; it stands in '{language}' in {shown!r}")


def _inked(char: str) -> bool:
    return not char.isspace() and unicodedata.category(char) not in ("Cc", "Cf")
