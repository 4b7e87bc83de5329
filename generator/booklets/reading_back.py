"""Reads a finished PDF back as plain facts, with libraries that did not write it."""

from __future__ import annotations

import ctypes
import io
import re
import unicodedata
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import pikepdf
import pypdfium2
from pypdfium2 import raw

# Characters of one line lie on one baseline; rounding moves it by less than this, in points.
_BASELINE_POINTS = 1.0


@dataclass(frozen=True)
class Sign:
    """One printed character: left edge, baseline and size in points, and whether it is on the sheet."""

    char: str
    left: float
    baseline: float
    size: float
    on_sheet: bool


@dataclass(frozen=True)
class PageRead:
    """One page: its text as a program reads it, and its printed characters."""

    text: str
    signs: tuple[Sign, ...]

    def lines_as_seen(self) -> tuple[str, ...]:
        """Return the lines from the top, each from left to right as the eye meets it, without blanks."""
        lines: dict[int, list[Sign]] = defaultdict(list)
        for sign in self.signs:
            lines[round(sign.baseline / _BASELINE_POINTS)].append(sign)
        ordered = (sorted(lines[key], key=lambda sign: sign.left) for key in sorted(lines, reverse=True))
        return tuple("".join(sign.char for sign in line) for line in ordered)


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
    width, height = page.get_size()
    count = text.count_chars()
    signs = tuple(sign for index in range(count) if (sign := _sign(text, index, width, height)))
    return PageRead(text.get_text_range(), signs)


def _sign(text: Any, index: int, width: float, height: float) -> Sign | None:
    char = chr(raw.FPDFText_GetUnicode(text, index))
    if char.isspace() or unicodedata.category(char) in ("Cc", "Cf"):
        return None
    x, y = ctypes.c_double(), ctypes.c_double()
    raw.FPDFText_GetCharOrigin(text, index, x, y)
    edges = [ctypes.c_double() for _ in range(4)]
    raw.FPDFText_GetCharBox(text, index, *edges)
    left, right, bottom, top = (edge.value for edge in edges)
    inside = left >= 0 and right <= width and bottom >= 0 and top <= height
    matrix = raw.FS_MATRIX()
    raw.FPDFText_GetMatrix(text, index, matrix)
    size = raw.FPDFText_GetFontSize(text, index) * abs(matrix.d)
    return Sign(char, left, y.value, size, inside)


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
    fonts = resources.get("/Font", {})
    empty = {str(name): _empty_codes(font) for name, font in fonts.items()}
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
