"""Compares what was laid out with what was written: nothing printed twice, in part, or over something else.

Where a float meets the foot of a sheet, the layout library may print a text once more, or lose its end.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from weasyprint.formatting_structure import boxes

# Rounding of the text engine, in px: less than a hair's breadth.
_SLACK = 1.0
# How far letters reach above and below the line they stand on, in ems; figures have nothing below it.
# Measured on the faces used; boxes of lines are higher, and those of neighbours may touch.
_RISE, _DROP = 0.75, 0.22


@dataclass(frozen=True)
class Collision:
    """Words or a picture printed over another: page from 1, what lies on top, what lies under it."""

    page: int
    words: str
    under: str


@dataclass(frozen=True)
class Misprint:
    """Words that do not stand as they were written: page from 1, what is printed, what was written."""

    page: int
    printed: str
    written: str


@dataclass(frozen=True)
class _Ink:
    """Where something is printed, in px from the sheet's left and top edge; its words, or those for it."""

    left: float
    top: float
    right: float
    bottom: float
    words: str


def collisions(number: int, page: Any) -> Iterator[Collision]:
    """Yield words and pictures that stand on others of their page; `number`: of the page, from 1."""
    shown = sorted(_inks(page), key=lambda ink: ink.top)
    for index, under in enumerate(shown):
        for ink in shown[index + 1 :]:
            if ink.top > under.bottom - _SLACK:
                break
            if min(under.right, ink.right) - max(under.left, ink.left) > _SLACK:
                yield Collision(number, ink.words, under.words)


def _inks(page: Any) -> Iterator[_Ink]:
    for box in page.descendants():
        if isinstance(box, boxes.TextBox) and box.text.strip():
            size, line = float(box.style["font_size"]), box.position_y + box.baseline
            drop = _DROP if any(char.isalpha() for char in box.text) else 0.0
            right = box.position_x + box.width
            yield _Ink(box.position_x, line - _RISE * size, right, line + drop * size, box.text)
        elif isinstance(box, boxes.ReplacedBox):
            left, top = box.content_box_x(), box.content_box_y()
            yield _Ink(left, top, left + box.width, top + box.height, box.element.get("alt", ""))


def misprints(pages: Sequence[Any], squeezed: Callable[[str], str]) -> Iterator[Misprint]:
    """Yield each element whose own words are printed twice, or only in part, on its pages together.

    pages: page boxes. squeezed: makes words comparable with words in lines. Heads of tables are left out, for
    they are repeated on each page, and so are margins and what a style sheet adds.
    """
    printed: dict[Any, list[str]] = {}
    first: dict[Any, int] = {}
    for number, page in enumerate(pages, 1):
        for box in _texts(page):
            printed.setdefault(box.element, []).append(box.text)
            first.setdefault(box.element, number)
    for element, parts in printed.items():
        there, wanted = squeezed("".join(parts)), squeezed(_own_words(element))
        if there != wanted:
            yield Misprint(first[element], " ".join(parts), " ".join(_own_words(element).split()))


def _texts(box: Any) -> Iterator[Any]:
    """Yield the boxes of the words that were written for this very place."""
    for child in getattr(box, "children", ()):
        if isinstance(child, boxes.MarginBox) or getattr(child, "is_header", False):
            continue
        if isinstance(child, boxes.TextBox):
            if child.element is not None and "::" not in child.element_tag:
                yield child
        else:
            yield from _texts(child)


def _own_words(element: Any) -> str:
    """Return the words of an element without those of the elements in it."""
    return (element.text or "") + "".join(child.tail or "" for child in element)
