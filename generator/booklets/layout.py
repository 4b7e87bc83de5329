"""Lays a booklet out and reads the boxes: what is too wide, how full each sheet is, where a section stands.

Text that is clipped or runs off the sheet cannot be seen in the finished PDF; in the layout boxes it can.
"""

from __future__ import annotations

import logging
import os
import re
import unicodedata
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

import weasyprint
from weasyprint.formatting_structure import boxes
from weasyprint.text.fonts import FontConfiguration
from weasyprint.urls import URLFetcher, URLFetcherResponse

from generator.booklets.fonts import font_folders

_EPOCH = "SOURCE_DATE_EPOCH"

# CSS fixes 96 px to the inch.
MM_PER_PX = 25.4 / 96
# A picture inside the document has an address of thousands of letters.
_DATA = re.compile(r"data:[^\s\"']{20,}")
# Rounding of the text engine, in px: less than a hair's breadth.
_SLACK = 1.0
# Lines are set closer than the boxes of their letters are high; this share of a box is no collision.
_TOUCH = 0.3


@dataclass(frozen=True)
class Section:
    """Where a section stands: first page from 1, number of pages, millimetres left on the last one."""

    first: int
    pages: int
    spare: float


@dataclass(frozen=True)
class Overflow:
    """Text that leaves its box: page from 1, the words, millimetres too far."""

    page: int
    words: str
    by: float


@dataclass(frozen=True)
class Laid:
    """A document laid out: what the writer needs, and what was seen.

    logged: what the library complained of. texts: the words of each page without blanks.
    """

    document: Any
    sections: Mapping[str, Section]
    overflows: tuple[Overflow, ...]
    logged: tuple[str, ...]
    texts: tuple[str, ...]

    def page_with(self, words: str, pages: range) -> int:
        """Return the first of `pages` on which words were laid out, else the first of them."""
        wanted = squeezed(words)
        return next((page for page in pages if wanted in self.texts[page - 1]), pages[0])

    @property
    def pages(self) -> int:
        """Return the number of pages."""
        return len(self.document.pages)


class OwnFiles(URLFetcher):  # type: ignore[misc] # the library ships no types
    """Fetches only pictures inside the document and our font files; everything else is refused."""

    def __init__(self, folders: tuple[Path, ...]) -> None:
        super().__init__(allowed_protocols=("file", "data"))
        self.folders = folders

    def fetch(self, url: str, headers: Mapping[str, str] | None = None) -> URLFetcherResponse:
        """Return the content of an address of our own.

        Raises:
            ValueError: the address is not ours; the library logs it, and so it becomes a finding.

        """
        if url.startswith("data:"):
            return super().fetch(url, headers)
        parts = urlsplit(url)
        path = Path(unquote(parts.path)).resolve()
        if parts.scheme != "file" or not any(path.is_relative_to(folder) for folder in self.folders):
            raise ValueError(f"not a file of ours: {url}")
        return super().fetch(url, headers)


@contextmanager
def no_clock() -> Iterator[None]:
    """Keep the time of day out of the fonts: fontTools stamps every font it cuts with it, or with this.

    SOURCE_DATE_EPOCH is the variable of the reproducible-builds.org specification.
    """
    before = os.environ.get(_EPOCH)
    os.environ[_EPOCH] = "0"
    try:
        yield
    finally:
        if before is None:
            del os.environ[_EPOCH]
        else:
            os.environ[_EPOCH] = before


@contextmanager
def complaints() -> Iterator[list[str]]:
    """Collect what the library logs as warnings or errors meanwhile, instead of letting it be printed."""
    handler = _Complaints()
    logger = logging.getLogger("weasyprint")
    logger.addHandler(handler)
    spread, logger.propagate = logger.propagate, False
    try:
        yield handler.messages
    finally:
        logger.removeHandler(handler)
        logger.propagate = spread


class _Complaints(logging.Handler):
    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.messages: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.messages.append(_DATA.sub("data:…", record.getMessage()))


def lay_out(html: str) -> Laid:
    """Return the document laid out on pages."""
    with no_clock(), complaints() as logged:
        page = weasyprint.HTML(string=html, url_fetcher=OwnFiles(font_folders()))
        document = page.render(font_config=FontConfiguration(), pdf_variant="pdf/ua-1")
    pages = [page._page_box for page in document.pages]
    return Laid(
        document,
        sections=_sections(pages),
        overflows=tuple(found for number, box in enumerate(pages, 1) for found in _overflows(number, box)),
        logged=tuple(dict.fromkeys(logged)),
        texts=tuple(_text(box) for box in pages),
    )


def squeezed(words: str) -> str:
    """Return words without blanks and invisible signs, to compare with text broken into lines."""
    kept = (char for char in words if not char.isspace() and unicodedata.category(char) not in ("Cc", "Cf"))
    return "".join(kept)


def _text(page: Any) -> str:
    return squeezed("".join(box.text for box in page.descendants() if isinstance(box, boxes.TextBox)))


def _sections(pages: list[Any]) -> Mapping[str, Section]:
    found: dict[str, Section] = {}
    for number, page in enumerate(pages, 1):
        foot = page.content_box_y() + page.height
        for box in page.descendants():
            if isinstance(box, boxes.BlockBox) and box.element is not None and box.element_tag == "section":
                key = box.element.get("data-sheet", "")
                spare = (foot - _bottom(box)) * MM_PER_PX
                first = found[key].first if key in found else number
                found[key] = Section(first, number - first + 1, spare)
    return found


def _bottom(section: Any) -> float:
    """Return where the last thing printed in a section ends, in px from the top of the page."""
    ends = (float(box.position_y + box.margin_height()) for box in section.children)
    return max(ends, default=float(section.position_y))


def _overflows(number: int, page: Any) -> Iterator[Overflow]:
    right = page.content_box_x() + page.width
    frame = (page.content_box_x(), right, page.margin_height())
    for child in page.children:
        yield from _too_wide(number, child, frame)
    yield from _on_top(number, page)


def _on_top(number: int, page: Any) -> Iterator[Overflow]:
    """Yield words that stand on other words of their page."""
    texts = [box for box in page.descendants() if isinstance(box, boxes.TextBox) and box.text.strip()]
    texts.sort(key=lambda box: box.position_y)
    for index, box in enumerate(texts):
        for other in texts[index + 1 :]:
            down = box.position_y + box.height - other.position_y
            if down <= 0:
                break
            across = min(box.position_x + box.width, other.position_x + other.width)
            across -= max(box.position_x, other.position_x)
            if across > _SLACK and down > _TOUCH * max(box.height, other.height):
                yield Overflow(number, other.text, min(down, across) * MM_PER_PX)


def _too_wide(number: int, box: Any, frame: tuple[float, float, float]) -> Iterator[Overflow]:
    if isinstance(box, boxes.TextBox):
        left, right, foot = frame
        beyond = max(
            box.position_x + box.width - right, left - box.position_x, box.position_y + box.height - foot
        )
        if beyond > _SLACK:
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
