"""Says on what paper and how large each kind of booklet is printed; all else about a kind follows from it."""

from __future__ import annotations

from dataclasses import dataclass

from generator.booklets.imposition import PAGES_A_SHEET
from generator.catalogue.terms import Paper

STANDARD, LARGE, POCKET, SHEET = "standard", "large", "pocket", "sheet"

KINDS = (STANDARD, LARGE, POCKET, SHEET)
"""Standard; large print; pocket, to fold; one session on one sheet."""

LEAST_POINTS = 12.0
"""The smallest type of any kind, in points: at least 12, RNIB clear print."""

LARGE_POINTS = 18.0
"""The smallest type of large print, in points: at least 18, American Council of the Blind and APH."""

_LARGER = LARGE_POINTS / LEAST_POINTS
# In millimetres: ISO 216 and ANSI Y14.1.
_SIZES = {Paper.A4: (210.0, 297.0), Paper.LETTER: (215.9, 279.4)}
# Half of the clinic's paper; of Letter there is no ISO name for it.
_HALVES = {Paper.A4: (148.0, 210.0), Paper.LETTER: (139.7, 215.9)}
# A sheet for notes is filled with lines; so many of NOTE_LINE_MM stand between its heading and its foot.
_WIDE_LINES, _NARROW_LINES = 21, 9


@dataclass(frozen=True)
class Format:
    """How one kind is printed.

    width, height: of a page in millimetres, before it is enlarged. zoom: by how much all of it is enlarged.
    narrow: whether everything stands in one column and pictures above each other. whole: number that divides
    the number of pages.
    """

    width: float
    height: float
    zoom: float = 1.0
    narrow: bool = False
    whole: int = 1

    @property
    def least(self) -> float:
        """Return the smallest type on the finished sheet, in points."""
        return LEAST_POINTS * self.zoom

    @property
    def size(self) -> str:
        """Return the page as the style sheet says it."""
        return f"{self.width:.3f}mm {self.height:.3f}mm"

    @property
    def note_lines(self) -> int:
        """Return how many lines to write on fill a page."""
        return _NARROW_LINES if self.narrow else _WIDE_LINES


def format_of(kind: str, paper: Paper) -> Format:
    """Return how a kind is printed in a clinic with this paper.

    Large print is the page of a pocket booklet enlarged: one column, and no line longer than can be read.
    """
    width, height = _SIZES[paper]
    if kind == LARGE:
        return Format(width / _LARGER, height / _LARGER, zoom=_LARGER, narrow=True)
    if kind == POCKET:
        return Format(*_HALVES[paper], narrow=True, whole=PAGES_A_SHEET)
    return Format(width, height)
