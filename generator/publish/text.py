"""Compares texts as a reader would: line breaks, hyphenation and invisible marks make no difference."""

from __future__ import annotations

import re
import unicodedata
from collections import Counter
from collections.abc import Sequence
from functools import lru_cache

from generator.catalogue.fingerprints import is_edition_code

# Soft hyphen, Arabic letter mark, zero-width signs, bidi marks, embeddings and isolates, word joiner, BOM.
_INVISIBLE = re.compile("[\u00ad\u061c\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]")
# What a line-end hyphen becomes in a PDF read back (pdfium writes U+FFFE or U+0002), and hyphens proper.
_HYPHEN = re.compile("[\u0002\ufffe\u00ad\u2010\u2011-]")
_PARTED = re.compile("[\u0002\ufffe\u00ad]\\s*")
# Vowel signs of Arabic.
_MARKS = re.compile("[\u064b-\u065f\u0670]")
_NUMBER_RUN = re.compile(r"\+?\d(?:[\d ()/.–-]*\d)?")
# What makes a number longer that seems to begin here, or to end before it.
_NUMBER_BEFORE = re.compile(r"\d[.,]?$")
_NUMBER_AFTER = re.compile(r"[.,]?\d")
# Typed by hand it is often a letter.
_DOSE = re.compile(r"(?<![\d.,])(\d+\s*)[×xX](\s*\d+)(?![.,]?\d)")
_CODE = re.compile(rf"(?<!\w)[0-9A-Z]{{4}}{_HYPHEN.pattern}[0-9A-Z]{{4}}(?!\w)")


class _Kept(dict[int, str]):
    """Keeps signs of some categories of Unicode and puts one for all others: for ``str.translate``."""

    def __init__(self, categories: str, other: str) -> None:
        super().__init__()
        self.categories, self.other = categories, other

    def __missing__(self, code: int) -> str:
        kept = unicodedata.category(chr(code))[0] in self.categories
        self[code] = found = chr(code) if kept else self.other
        return found


_WORDS = _Kept("LM", " ")
_LETTERS = _Kept("LN", "")


def plain(text: str) -> str:
    """Return the text in NFKC with single spaces and without invisible marks."""
    return " ".join(_INVISIBLE.sub("", unicodedata.normalize("NFKC", text)).split())


def as_one_word(text: str) -> str:
    """Return a text with words joined that a line's end had parted."""
    return _PARTED.sub("", text)


def squeezed(text: str) -> str:
    """Return the text without any white space or hyphen: what is left is the same in a page of a PDF."""
    return _HYPHEN.sub("", "".join(plain(text).split()))


def holds_nearby(page: str, wanted: str) -> bool:
    """Return whether the letters and digits of `wanted` stand together on the page, in whatever order.

    Text read back from right-to-left pages keeps its words but may turn the order of words and numbers, and
    has blanks around vowel signs. Signs and punctuation do not count; a word too few or too many does.
    """
    parts = _letters(wanted)
    around = _letters(page)
    # What is not yet in the window, or there too often; kept small, since a page has thousands of letters.
    apart = Counter(parts)
    apart.subtract(around[: len(parts)])
    open_ones = sum(1 for count in apart.values() if count)
    for leaving, entering in zip(around, around[len(parts) :], strict=False):
        if not open_ones:
            return True
        for letter, change in ((leaving, 1), (entering, -1)):
            open_ones += (apart[letter] == 0) - (apart[letter] + change == 0)
            apart[letter] += change
    return bool(parts) and not open_ones


def holds_words(page: str, wanted: str) -> bool:
    """Return whether the page has each word of a right-to-left text, as often as the text has it.

    A vowel sign ends a line for readers of PDF, so a word that bears one is looked for in its parts.
    """
    there, run_on = _bare_words(page)
    for word, count in Counter(_split_words(wanted)).items():
        if _bare(word) == word:
            if there[word] < count:
                return False
        elif any(part not in run_on for part in _MARKS.sub(" ", word).split()):
            return False
    return bool(wanted.strip())


@lru_cache(maxsize=16)
def _bare_words(text: str) -> tuple[Counter[str], str]:
    """Return how often a page has each word, and its words in one; many texts are looked for on one page."""
    words = Counter(_split_words(_bare(text)))
    return words, "".join(words)


def _bare(text: str) -> str:
    """Return a text without vowel signs and without the sign that stretches a word."""
    return _MARKS.sub("", plain(text)).replace("\u0640", "")


def _split_words(text: str) -> list[str]:
    """Return the words of a text with the signs on them; numbers and punctuation are none."""
    return plain(text).translate(_WORDS).replace("\u0640", "").split()


def _letters(text: str) -> str:
    """Return the letters and digits of a text without the signs on them."""
    return plain(text).translate(_LETTERS)


def number_runs(text: str) -> tuple[str, ...]:
    """Return the numbers of a text as printed, a telephone number with blanks and hyphens in one piece."""
    return tuple(_NUMBER_RUN.findall(plain(text)))


def holds_token(page: str, wanted: str) -> bool:
    """Return whether the page holds `wanted` with its numbers whole: ``3 × 10`` is not in ``13 × 100``.

    `page` is plain text; white space inside `wanted` may be there or not. A hyphen at a line's end comes back
    as another sign, or not at all.
    """
    signs = _unspaced(plain(wanted))[0]
    if _HYPHEN.search(signs):
        return _token(signs).search(page) is not None
    run_on, places = _unspaced(page)
    at = run_on.find(signs)
    while at >= 0:
        if _whole(page, places[at], places[at + len(signs) - 1] + 1):
            return True
        at = run_on.find(signs, at + 1)
    return False


@lru_cache(maxsize=64)
def _unspaced(page: str) -> tuple[str, Sequence[int]]:
    """Return a text without white space, and where each of its signs stood in the text."""
    places = [at for at, sign in enumerate(page) if not sign.isspace()]
    return "".join(page.split()), places


def _whole(page: str, start: int, end: int) -> bool:
    """Return whether no number goes on before or after a piece of a page that begins or ends with one."""
    if page[start].isdecimal() and _NUMBER_BEFORE.search(page[max(0, start - 2) : start]):
        return False
    return not (page[end - 1].isdecimal() and _NUMBER_AFTER.match(page, end))


@lru_cache(maxsize=256)
def _token(signs: str) -> re.Pattern[str]:
    """Return the pattern of signs, any white space between them, whose numbers end where they end."""
    before = r"(?<!\d)(?<!\d[.,])" if signs[:1].isdecimal() else ""
    after = _NUMBER_AFTER.pattern.join(("(?!", ")")) if signs[-1:].isdecimal() else ""
    parts = (f"(?:{_HYPHEN.pattern})?" if _HYPHEN.fullmatch(sign) else re.escape(sign) for sign in signs)
    return re.compile(before + r"\s*".join(parts) + after)


def doses_in(page: str) -> tuple[str, ...]:
    """Return every ``n × n`` of a plain text, in its order, also where an x was typed for the sign.

    An edition code is none, though its letters may read like one: 5X56-...
    """
    return tuple(f"{sets}×{count}" for sets, count in _DOSE.findall(_CODE.sub(_without_code, page)))


def _without_code(found: re.Match[str]) -> str:
    typed = found.group()
    return " " if is_edition_code(_HYPHEN.sub("", typed)) else typed
