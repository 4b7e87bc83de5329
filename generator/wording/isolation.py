"""Keeps numbers in their order inside right-to-left lines, which would print ``3 × 10`` as ``10 × 3``.

An isolate is U+2066 (left-to-right isolate) ... U+2069 (pop directional isolate), Unicode Standard
Annex #9. Isolates made here never nest. `html` turns them into ``<bdi dir="ltr">``.
"""

from __future__ import annotations

import re

OPEN = "\u2066"
CLOSE = "\u2069"
NO_BREAK = "\u00a0"

ISOLATED = re.compile(f"{OPEN}([^{OPEN}{CLOSE}]*){CLOSE}")
# Marks that some locales put beside signs; inside an isolate they do nothing but confuse searching.
_MARKS = dict.fromkeys(map(ord, "\u200e\u200f"))
_ISOLATES = re.compile(f"({OPEN}[^{OPEN}{CLOSE}]*{CLOSE})")
_DIGIT = re.compile(r"\d")
_STRAY = dict.fromkeys(map(ord, OPEN + CLOSE))

# What is read as one number: 1,234.5 · 3 × 10 · 20–50 % · −5° · 2 kg · 2/10 · +44 20 7946 0000.
# A unit in Latin letters belongs to the number; a unit in the script of the line stays outside.
# Groups of digits with a blank between are one number only as thousands or as a telephone number.
_GAP = "[ \u00a0\u202f]"
_PHONE = rf"(?:\+\d|0\d|\(0\d+\))(?:[/\-]?{_GAP}?\d+)+(?!\w)"
_JOINT = rf"{_GAP}?[×xX*/:–−\-]{_GAP}?|[.,'’]|{_GAP}(?=\d{{3}}(?!\d))"
_UNIT = rf"{_GAP}?(?:%|°C?|(?:kg|km|cm|mm|min|ml|N[⋅·]?m|g|m|s|h|l|N)(?!\w))"
_NUMBER = re.compile(
    rf"(?<![\w.,/])(?:{_PHONE}|(?:[±≤≥<>]{_GAP}?)?[+\-−–]?\d+(?:(?:{_JOINT})[+\-−]?\d+)*(?:{_UNIT})?)"
)


def plain(words: str) -> str:
    """Return the words without isolates, as a person would type them; no-break spaces stay."""
    return words.translate(_STRAY)


def isolate(text: str) -> str:
    """Return `text` as one left-to-right unit that no line breaks; isolates and direction marks are dropped.

    A telephone number or a thousand parted at a line's end would turn round in a right-to-left text.
    """
    return f"{OPEN}{plain(text).translate(_MARKS).replace(' ', NO_BREAK)}{CLOSE}"


def isolate_numbers(text: str) -> str:
    """Return `text` with each bare number isolated, together with its signs and Latin units."""
    if not _DIGIT.search(text):
        return text
    parts = _ISOLATES.split(text)
    return "".join(
        part if position % 2 else _NUMBER.sub(lambda found: isolate(found.group()), part)
        for position, part in enumerate(parts)
    )
