"""Compares texts as a reader would: line breaks, hyphenation and invisible marks make no difference."""

from __future__ import annotations

import re
import unicodedata
from collections import Counter
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
# Typed by hand it is often a letter.
_DOSE = re.compile(r"(?<![\d.,])(\d+\s*)[×xX](\s*\d+)(?![.,]?\d)")
_CODE = re.compile(rf"(?<!\w)[0-9A-Z]{{4}}{_HYPHEN.pattern}[0-9A-Z]{{4}}(?!\w)")


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
    there = Counter(_bare_words(page))
    run_on = "".join(there)
    for word, count in Counter(_split_words(wanted)).items():
        if _bare(word) == word:
            if there[word] < count:
                return False
        elif any(part not in run_on for part in _MARKS.sub(" ", word).split()):
            return False
    return bool(wanted.strip())


def _bare_words(text: str) -> list[str]:
    return _split_words(_bare(text))


def _bare(text: str) -> str:
    """Return a text without vowel signs and without the sign that stretches a word."""
    return _MARKS.sub("", plain(text)).replace("\u0640", "")


def _split_words(text: str) -> list[str]:
    """Return the words of a text with the signs on them; numbers and punctuation are none."""
    kept = (char if unicodedata.category(char)[0] in "LM" else " " for char in plain(text))
    return "".join(kept).replace("\u0640", "").split()


def _letters(text: str) -> str:
    """Return the letters and digits of a text without the signs on them."""
    return "".join(char for char in plain(text) if unicodedata.category(char)[0] in "LN")


def number_runs(text: str) -> tuple[str, ...]:
    """Return the numbers of a text as printed, a telephone number with blanks and hyphens in one piece."""
    return tuple(_NUMBER_RUN.findall(plain(text)))


def holds_token(page: str, wanted: str) -> bool:
    """Return whether the page holds `wanted` with its numbers whole: ``3 × 10`` is not in ``13 × 100``.

    `page` is plain text; white space inside `wanted` may be there or not.
    """
    return _token(wanted).search(page) is not None


@lru_cache(maxsize=4096)
def _token(wanted: str) -> re.Pattern[str]:
    """Return the pattern of a text whose white space does not count and whose numbers end where it ends."""
    signs = "".join(plain(wanted).split())
    # A hyphen at a line's end comes back as another sign, or not at all.
    before = r"(?<!\d)(?<!\d[.,])" if signs[:1].isdecimal() else ""
    after = r"(?![.,]?\d)" if signs[-1:].isdecimal() else ""
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
