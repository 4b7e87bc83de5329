"""Lays a booklet out and reads the boxes: what is too wide, how full each sheet is, where a section stands.

Text that is clipped or runs off the sheet cannot be seen in the finished PDF; in the layout boxes it can.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from weasyprint.formatting_structure import boxes

from generator.booklets.engine import rendered
from generator.booklets.faithful import Collision, Misprint, collisions, misprints

# CSS fixes 96 px to the inch.
MM_PER_PX = 25.4 / 96
# Rounding of the text engine, in px: less than a hair's breadth.
_SLACK = 1.0
# Where a full line that runs from right to left ends in a blank, the layout library cuts it and sets the last
# word by its width too far left. Part of the size of type; it stays well within the margin.
_CUT_BLANK = 0.3


@dataclass(frozen=True)
class Section:
    """Where a section stands: first page from 1, number of pages, millimetres left on the last one.

    Pages that bear nothing but lines to write on do not count. lines: how many of those lines found room.
    carried: whether something of the first sheet stands on the second, above the heading that it has there.
    """

    first: int
    pages: int
    spare: float
    lines: int
    carried: bool = False


@dataclass(frozen=True)
class Overflow:
    """Text that leaves its box: page from 1, the words, millimetres too far."""

    page: int
    words: str
    by: float


@dataclass(frozen=True)
class Laid:
    """A document laid out: what the writer needs, and what is seen in its boxes, read when it is asked for.

    logged: what the library complained of.
    """

    document: Any
    sections: Mapping[str, Section]
    logged: tuple[str, ...]

    @cached_property
    def overflows(self) -> tuple[Overflow, ...]:
        """Return what leaves its box or its sheet."""
        return tuple(found for number, box in self._numbered() for found in _overflows(number, box))

    @cached_property
    def collisions(self) -> tuple[Collision, ...]:
        """Return what stands on something else."""
        return tuple(found for number, box in self._numbered() for found in collisions(number, box))

    @cached_property
    def misprints(self) -> tuple[Misprint, ...]:
        """Return the words that do not stand as they were written."""
        return tuple(misprints([box for _, box in self._numbered()], squeezed))

    @cached_property
    def texts(self) -> tuple[str, ...]:
        """Return the words of each page without blanks."""
        return tuple(squeezed("".join(parts)) for parts in self.pieces)

    @cached_property
    def pieces(self) -> tuple[tuple[str, ...], ...]:
        """Return the words of each page without blanks, each as it stands in a box of its own."""
        return tuple(tuple(map(squeezed, _pieces(box))) for _, box in self._numbered())

    def _numbered(self) -> Iterator[tuple[int, Any]]:
        return enumerate((page._page_box for page in self.document.pages), 1)

    def page_with(self, words: str, pages: range) -> int:
        """Return the first of `pages` on which words were laid out, else the first of them.

        A number is looked for as a whole in one piece first: step 1 beside 50 is no 150.
        """
        wanted = squeezed(words)
        if wanted[:1].isdigit():
            whole = re.compile(rf"(?<!\d){re.escape(wanted)}(?!\d)")
            for page in pages:
                if any(whole.search(piece) for piece in self.pieces[page - 1]):
                    return page
        return next((page for page in pages if wanted in self.texts[page - 1]), pages[0])

    @property
    def pages(self) -> int:
        """Return the number of pages."""
        return len(self.document.pages)


def lay_out(html: str) -> Laid:
    """Return the document laid out on pages."""
    document, logged = rendered(html)
    return _read(document, logged)


def joined(html: str, leaves: Sequence[Any], logged: Sequence[str]) -> Laid:
    """Return one document of pages from several, under the margins of another.

    html: a document with as many pages as there are leaves, whose margins bear the numbers of the pages.
    leaves: pages without margins, in their order. logged: what was complained of in making them.
    """
    frame, more = rendered(html)
    for leaf, page in zip(leaves, frame.pages, strict=True):
        inside = [box for box in leaf._page_box.children if not isinstance(box, boxes.MarginBox)]
        margins = [box for box in page._page_box.children if isinstance(box, boxes.MarginBox)]
        leaf._page_box.children = inside + margins
    return _read(frame.copy(leaves), tuple(dict.fromkeys((*logged, *more))))


def page_name(page: Any) -> str:
    """Return the name that CSS gives to the kind of a page; empty for the usual kind."""
    return str(page._page_box.page_type.name)


def _read(document: Any, logged: tuple[str, ...]) -> Laid:
    return Laid(document, _sections([page._page_box for page in document.pages]), logged)


class _Ink(dict[int, int | None]):
    """Says of each character, once asked, whether it leaves ink: a table for ``str.translate``."""

    def __missing__(self, code: int) -> int | None:
        char = chr(code)
        unseen = char.isspace() or unicodedata.category(char) in ("Cc", "Cf")
        self[code] = found = None if unseen else code
        return found


_INK = _Ink()
# A word that is parted at a line's end has one more hyphen than its text; pdfium gives it as U+FFFE.
_HYPHEN = re.compile(r"(?<=[^\W\d_])[-\u2010\ufffe](?=[^\W\d_])")


def inked(code: int) -> str | None:
    """Return the character of a code point where it leaves ink, else nothing."""
    return None if _INK[code] is None else chr(code)


def squeezed(words: str) -> str:
    """Return words without blanks, invisible signs and hyphens in words, to compare with text in lines."""
    return _HYPHEN.sub("", words.translate(_INK))


def _pieces(page: Any) -> Iterator[str]:
    return (box.text for box in page.descendants() if isinstance(box, boxes.TextBox))


def _sections(pages: list[Any]) -> Mapping[str, Section]:
    """Return where the sections stand, each from the page on which it begins to where the next one does."""
    found: dict[str, Section] = {}
    last = ""
    for number, page in enumerate(pages, 1):
        foot = page.content_box_y() + page.height
        begun = dict(_begun(page))
        # Columns that go on on this page hang on its root, outside their section.
        bare = all(_only_lines(box) for box in page.children if not isinstance(box, boxes.MarginBox))
        for key in (key for key in begun or (last,) if key):
            before = found.get(key)
            if before is None or not bare:
                first, lines = (before.first, before.lines) if before else (number, 0)
                spare = (foot - _bottom(page, begun.get(key))) * MM_PER_PX
                carried = (before is not None and before.carried) or _carried(page, begun.get(key))
                found[key] = Section(first, number - first + 1, spare, lines + _lines(page), carried)
            last = key
    return found


def _carried(page: Any, section: Any) -> bool:
    """Return whether the heading of a second sheet stands below something: a float that found no room."""
    parts = section.children if section is not None else ()
    heads = (box for box in parts if box.element is not None and box.element.get("class") == "again")
    return any(box.position_y - page.content_box_y() > _SLACK for box in heads)


def _tag(box: Any) -> str | None:
    return None if box.element is None else box.element_tag


def _begun(page: Any) -> Iterator[tuple[str, Any]]:
    """Yield key and box of the sections on a page."""
    for root in page.children:
        for body in getattr(root, "children", ()):
            for box in getattr(body, "children", ()):
                if isinstance(box, boxes.BlockBox) and _tag(box) == "section":
                    yield box.element.get("data-sheet", ""), box


def _spare(box: Any) -> bool:
    """Return whether a box is a place to write that may be left out where room is short."""
    return box.element is not None and box.element.get("data-spare") is not None


def _only_lines(box: Any) -> bool:
    """Return whether nothing is printed in a box but lines to write on."""
    if _spare(box):
        return True
    if isinstance(box, boxes.TextBox | boxes.ReplacedBox):
        return False
    return all(_only_lines(child) for child in getattr(box, "children", ()))


def _lines(box: Any, *, spare: bool = False) -> int:
    """Return how many lines to write on stand in the parts of a box that may be left out."""
    spare = spare or _spare(box)
    if spare and box.element is not None and box.element.get("class") == "line":
        return 1
    return sum(_lines(child, spare=spare) for child in getattr(box, "children", ()))


def _bottom(page: Any, section: Any) -> float:
    """Return where the last thing printed in a section ends, in px from the top of the page."""
    own = section.children if section is not None else ()
    hanging = (box for root in page.children for box in getattr(root, "children", ()) if _floats(box))
    ends = [float(box.position_y + box.margin_height()) for box in (*own, *hanging)]
    return max(ends, default=float(page.content_box_y()))


def _floats(box: Any) -> bool:
    return isinstance(box, boxes.Box) and box.element is not None and box.is_floated()


def _overflows(number: int, page: Any) -> Iterator[Overflow]:
    right = page.content_box_x() + page.width
    frame = (page.content_box_x(), right, page.margin_height())
    for child in page.children:
        yield from _too_wide(number, child, frame)


def _too_wide(number: int, box: Any, frame: tuple[float, float, float]) -> Iterator[Overflow]:
    if isinstance(box, boxes.TextBox):
        left, right, foot = frame
        beyond = max(
            box.position_x + box.width - right, left - box.position_x, box.position_y + box.height - foot
        )
        cut = _CUT_BLANK * box.style["font_size"] if box.style["direction"] == "rtl" else 0.0
        if beyond > _SLACK + cut:
            yield Overflow(number, box.text, beyond * MM_PER_PX)
        return
    if isinstance(box, boxes.BlockContainerBox) and box.width != "auto":
        left = box.content_box_x()
        foot = frame[2]
        if box.style["height"] != "auto":
            foot = min(foot, box.content_box_y() + box.height)
        frame = (left, left + box.width, foot)
    for child in getattr(box, "children", ()):
        yield from _too_wide(number, getattr(child, "_box", child), frame)
