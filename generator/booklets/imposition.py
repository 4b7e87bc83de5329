"""Puts the pages of a small booklet two by two on large sheets, so that they fold into a book.

The order is that of saddle stitching: all sheets lie in each other and are stapled in the fold. The pages of
one side of a sheet always sum to the number of pages plus one. Print on both sides, turned over the short
edge. The imposed file has no tags; who listens to a screen reader takes the file that it was made from.
"""

from __future__ import annotations

import io
from dataclasses import dataclass

import pikepdf

from generator.booklets.side_by_side import Placed, add_page, size_of

PAGES_A_SHEET = 4
# Sheets across, in points of 1/72 inch: A4 (ISO 216) and Letter (ANSI Y14.1).
_A4 = (297 / 25.4 * 72, 210 / 25.4 * 72)
_LETTER = (11.0 * 72, 8.5 * 72)
# Half of Letter is higher than A5.
_HIGHEST = 211 / 25.4 * 72

Side = tuple[int, int]
"""Numbers of the pages on the left and the right half of one side of a sheet, from 1."""


@dataclass(frozen=True)
class FoldedSheet:
    """One sheet of paper, printed on both sides and folded in the middle."""

    front: Side
    back: Side


def padding(pages: int) -> int:
    """Return how many pages are missing to the next multiple of four."""
    return -pages % PAGES_A_SHEET


def saddle_order(pages: int, *, right_to_left: bool = False) -> tuple[FoldedSheet, ...]:
    """Return the sheets, the outermost first, for a number of pages that four divides.

    A book that is read from right to left has left and right swapped on every side. Raises ValueError for
    another number of pages.
    """
    if pages < PAGES_A_SHEET or padding(pages):
        raise ValueError(f"{pages} pages do not fill folded sheets; pad to a multiple of {PAGES_A_SHEET}")
    return tuple(
        FoldedSheet(
            front=_side(pages - outer, 1 + outer, right_to_left),
            back=_side(2 + outer, pages - 1 - outer, right_to_left),
        )
        for outer in range(0, pages // 2, 2)
    )


def _side(left: int, right: int, swapped: bool) -> Side:
    return (right, left) if swapped else (left, right)


def impose(pdf: bytes, notes: bytes = b"", *, right_to_left: bool = False) -> bytes:
    """Return an A5 booklet as A4 sheets to fold, half Letter as Letter: the same bytes for the same pages.

    notes: a PDF of pages for notes that fill up the last sheet; each carries what must stand on every page.
    Raises ValueError where it has fewer pages than are missing, and for a booklet without pages.
    """
    with (
        pikepdf.open(io.BytesIO(pdf)) as booklet,
        pikepdf.open(io.BytesIO(notes or pdf)) as fillers,
        pikepdf.new() as folded,
    ):
        missing, spare = padding(len(booklet.pages)), len(fillers.pages) if notes else 0
        if spare < missing:
            raise ValueError(
                f"{missing} pages for notes are needed to fill the last sheet, {spare} are given"
            )
        # Appended to the booklet first, so that what its pages share is copied once.
        booklet.pages.extend(list(fillers.pages)[:missing])
        for sheet in saddle_order(len(booklet.pages), right_to_left=right_to_left):
            for side in (sheet.front, sheet.back):
                _print_side(folded, booklet, side)
        if "/Title" in booklet.docinfo:
            folded.docinfo["/Title"] = str(booklet.docinfo["/Title"])
        if "/Lang" in booklet.Root:
            folded.Root.Lang = pikepdf.String(str(booklet.Root.Lang))
        held = io.BytesIO()
        folded.save(held, deterministic_id=True)
    return held.getvalue()


def _print_side(folded: pikepdf.Pdf, booklet: pikepdf.Pdf, side: Side) -> None:
    """Add one side of a sheet; each page stands in the middle of its half, in its own size."""
    placed = []
    width, height = _LETTER if size_of(booklet.pages[0])[1] > _HIGHEST else _A4
    for half, number in enumerate(side):
        page = booklet.pages[number - 1]
        wide, high = size_of(page)
        across = half * width / 2 + (width / 2 - wide) / 2
        placed.append(Placed(page, across, (height - high) / 2))
    add_page(folded, (width, height), placed)
