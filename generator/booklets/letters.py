"""Says which letters each glyph of a joined script stands for, so that a PDF is read aloud as it is written.

The layout library gives all letters of a cluster to the first glyph it meets in it. An Arabic letter with a
vowel sign is such a cluster: the sign is then read as letter and sign everywhere, and the letter as nothing.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from functools import cache

from fontTools.ttLib import TTFont  # type: ignore[import-untyped]  # it ships no types

from generator.booklets.fonts import FACES, font_path

JOINED = ("Tajawal",)
"""Families whose letters change shape beside others."""

_SINGLE, _LIGATURE = 1, 4


@cache
def letters_of(family: str, weight: int) -> Mapping[int, str]:
    """Return the letters of each glyph of a face, by glyph number; a shape of a letter is that letter.

    A ligature that has a character of its own stays that character: of two letters, readers of PDF turn the
    order round, and "no" becomes "the" in Arabic.
    """
    found = (font_path(face) for face in FACES if (face.family, face.weight) == (family, weight))
    with TTFont(next(path for path in found if path)) as font:
        letters = {name: _letter(code) for code, name in sorted(font.getBestCmap().items(), reverse=True)}
        for lookup in font["GSUB"].table.LookupList.Lookup:
            if lookup.LookupType in (_SINGLE, _LIGATURE):
                for table in lookup.SubTable:
                    _follow(table, letters)
        return {font.getGlyphID(name): text for name, text in letters.items()}


def _letter(code: int) -> str:
    plain = unicodedata.normalize("NFKC", chr(code))
    return plain if len(plain) == 1 else chr(code)


def _follow(table: object, letters: dict[str, str]) -> None:
    """Add the glyphs that a table of substitutions makes of glyphs whose letters are known."""
    for name, to in getattr(table, "mapping", {}).items():
        if name in letters:
            letters.setdefault(to, letters[name])
    for first, made in getattr(table, "ligatures", {}).items():
        for ligature in made:
            parts = (first, *ligature.Component)
            if all(part in letters for part in parts):
                letters.setdefault(ligature.LigGlyph, "".join(letters[part] for part in parts))
