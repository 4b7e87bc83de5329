"""Reads a finished PDF back as plain facts, with libraries that did not write it."""

from __future__ import annotations

import ctypes
import io
import math
import re
from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

import pikepdf
import pypdfium2
from pypdfium2 import raw

from generator.booklets.layout import inked

# Characters of one line lie on one baseline; rounding moves it by less than this, in points.
_BASELINE_POINTS = 1.0


# Glyph 0 among the four-digit codes of a string; a content with strings of another form is parsed instead.
_NO_GLYPH = re.compile(rb"<(?:[0-9A-Fa-f]{4})*?0000(?:[0-9A-Fa-f]{4})*>")


@dataclass(frozen=True)
class PageRead:
    """One page, as a program and as the eye read it.

    text: as a program reads it. lines: from the top, each from left to right as the eye meets it, without
    blanks. off_sheet: what is beyond its edges. smallest: the smallest type, in points (infinite for an empty
    page), and a character in it.
    """

    text: str
    lines: tuple[str, ...]
    off_sheet: str
    smallest: tuple[float, str]


@dataclass(frozen=True)
class FontRead:
    """A font: its name without the subset prefix, and whether its outlines are in the file."""

    name: str
    embedded: bool


@dataclass(frozen=True)
class TagRead:
    """An element of the structure tree: type such as ``H2``, words for a picture, scope of a header cell."""

    kind: str
    alt: str
    scope: str


@dataclass(frozen=True)
class PdfRead:
    """A whole file. missing_signs: pages (from 1) that draw the empty box."""

    pages: tuple[PageRead, ...]
    fonts: tuple[FontRead, ...]
    tags: tuple[TagRead, ...]
    title: str
    language: str
    tagged: bool
    shows_title: bool
    missing_signs: tuple[int, ...]


def read_back(pdf: bytes) -> PdfRead:
    """Return what stands in a PDF.

    Raises:
        pikepdf.PdfError, pypdfium2.PdfiumError: the bytes are no PDF.

    """
    with pikepdf.open(io.BytesIO(pdf)) as file:
        root: Any = file.Root
        marked = root.get("/MarkInfo", {}).get("/Marked", False)
        return PdfRead(
            pages=_pages(pdf),
            fonts=tuple(_fonts(file)),
            tags=tuple(_tags(root["/StructTreeRoot"])) if "/StructTreeRoot" in root else (),
            title=_title(file),
            language=str(root.get("/Lang", "")),
            tagged=bool(marked) and "/StructTreeRoot" in root,
            shows_title=bool(root.get("/ViewerPreferences", {}).get("/DisplayDocTitle", False)),
            missing_signs=tuple(number for number, page in enumerate(file.pages, 1) if _draws_no_glyph(page)),
        )


def _title(file: pikepdf.Pdf) -> str:
    with file.open_metadata() as metadata:
        return str(metadata.get("dc:title", ""))


def _pages(pdf: bytes) -> tuple[PageRead, ...]:
    document = pypdfium2.PdfDocument(pdf)
    try:
        return tuple(_page(document[index]) for index in range(len(document)))
    finally:
        document.close()


def _page(page: Any) -> PageRead:
    text = page.get_textpage()
    try:
        lines, smallest = _signs(text)
        seen = ("".join(char for _, char in sorted(lines[key])) for key in sorted(lines, reverse=True))
        return PageRead(text.get_text_range(), tuple(seen), _off_sheet(text, page.get_size()), smallest)
    finally:
        text.close()


def _signs(text: Any) -> tuple[Mapping[int, list[tuple[float, str]]], tuple[float, str]]:
    """Return the printed characters by baseline, each with its left edge, and the smallest of them.

    Each of the thousands of characters costs a few calls, so the places for the answers are made only once,
    and the size is asked for again only where the line or the size of the face changes.
    """
    x, y, matrix = ctypes.c_double(), ctypes.c_double(), raw.FS_MATRIX()
    to_x, to_y, to_matrix, handle = ctypes.byref(x), ctypes.byref(y), ctypes.byref(matrix), text.raw
    lines: dict[int, list[tuple[float, str]]] = defaultdict(list)
    smallest, before = (math.inf, ""), (-1, 0.0)
    for index in range(text.count_chars()):
        char = inked(raw.FPDFText_GetUnicode(handle, index))
        if char is None:
            continue
        raw.FPDFText_GetCharOrigin(handle, index, to_x, to_y)
        line, nominal = round(y.value / _BASELINE_POINTS), raw.FPDFText_GetFontSize(handle, index)
        lines[line].append((x.value, char))
        if (line, nominal) != before:
            before = (line, nominal)
            raw.FPDFText_GetMatrix(handle, index, to_matrix)
            smallest = min(smallest, (nominal * abs(matrix.d), char))
    return lines, smallest


def _off_sheet(text: Any, size: tuple[float, float]) -> str:
    """Return the words of the pieces of lines that reach beyond the edges of a sheet."""
    width, height = size
    pieces = (text.get_rect(index) for index in range(text.count_rects()))
    beyond = (
        text.get_text_bounded(left, bottom, right, top)
        for left, bottom, right, top in pieces
        if left < 0 or bottom < 0 or right > width or top > height
    )
    return "".join(beyond).strip()


def _fonts(file: pikepdf.Pdf) -> Iterator[FontRead]:
    things: Any = file.objects
    for thing in things:
        if not isinstance(thing, pikepdf.Dictionary) or thing.get("/Type") != "/Font":
            continue
        if "/DescendantFonts" in thing:
            continue
        descriptor: Any = thing.get("/FontDescriptor", {})
        embedded = any(key in descriptor for key in ("/FontFile", "/FontFile2", "/FontFile3"))
        name = str(thing.get("/BaseFont", "")).lstrip("/")
        yield FontRead(name.partition("+")[2] or name, embedded)


def _tags(node: Any) -> Iterator[TagRead]:
    if isinstance(node, pikepdf.Array):
        for child in node:
            yield from _tags(child)
    elif isinstance(node, pikepdf.Dictionary):
        if "/S" in node:
            attributes: Any = node.get("/A", {})
            scope = str(attributes.get("/Scope", ""))
            yield TagRead(str(node["/S"]).lstrip("/"), str(node.get("/Alt", "")), scope.lstrip("/"))
        if "/K" in node:
            yield from _tags(node["/K"])


def _draws_no_glyph(page: pikepdf.Page) -> bool:
    """Return whether glyph 0, the empty box, is shown; text is written as two-byte codes."""
    resources: Any = page.obj.get("/Resources", {})
    empty = {str(name): _empty_codes(font) for name, font in resources.get("/Font", {}).items()}
    if not any(empty.values()):
        contents: Any = page.obj.get("/Contents")
        written = contents.read_bytes() if isinstance(contents, pikepdf.Stream) else b"("
        if b"(" not in written:
            return _NO_GLYPH.search(written) is not None
    return _shows_one_of(page, empty)


def _shows_one_of(page: pikepdf.Page, empty: Mapping[str, frozenset[bytes]]) -> bool:
    """Return whether text shows a code that its font sends to glyph 0, operator by operator."""
    codes = frozenset((b"\0\0",))
    instructions: Any = pikepdf.parse_content_stream(page)
    for operands, operator in instructions:
        if str(operator) == "Tf":
            codes = empty.get(str(operands[0]), frozenset()) | {b"\0\0"}
        elif str(operator) in ("Tj", "TJ"):
            parts = operands[0] if str(operator) == "TJ" else operands
            shown = b"".join(bytes(part) for part in parts if isinstance(part, pikepdf.String))
            if any(shown[at : at + 2] in codes for at in range(0, len(shown), 2)):
                return True
    return False


def _empty_codes(font: Any) -> frozenset[bytes]:
    """Return the codes that a font's own character map sends to glyph 0."""
    encoding = font.get("/Encoding")
    if not isinstance(encoding, pikepdf.Stream):
        return frozenset()
    found = re.findall(rb"<([0-9A-Fa-f]{4})>\s+0\s", encoding.read_bytes())
    return frozenset(bytes.fromhex(code.decode()) for code in found)
