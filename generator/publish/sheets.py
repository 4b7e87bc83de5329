"""Reads every page of every PDF back and looks for the texts that keep a patient safe on paper."""

from __future__ import annotations

import ctypes
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

import pikepdf
import pypdfium2

from generator.problems import Place, Problem, Rule
from generator.publish.doses import shorten
from generator.publish.expected import Expected, ExpectedPdf
from generator.publish.text import (
    as_one_word,
    holds_nearby,
    holds_token,
    holds_words,
    number_runs,
    plain,
    squeezed,
)

NO_NOTE = Rule(
    "sheet-without-note",
    "A sheet lacks a safety text.",
    "The page template of the booklet leaves the text out, it does not fit its margin, or the font "
    "gives it back as other letters.",
    "print the text in the margin box of every page, in a font whose text reads back unchanged",
    safety=True,
)
NO_CLINIC_LINE = Rule(
    "sheet-without-telephone",
    "A sheet lacks the telephone line of the clinic.",
    "The page template of the booklet leaves it out, or it does not fit its margin.",
    "print the line in the margin box of every page",
    safety=True,
)
NO_PAGE_NUMBER = Rule(
    "sheet-without-number",
    "A sheet lacks its page number, or bears a wrong one.",
    "The page template leaves it out or counts otherwise; a lost or doubled sheet is then not noticed.",
    "print the number of the page and of all pages in the margin box",
    safety=True,
)
NO_EDITION = Rule(
    "sheet-without-edition",
    "A sheet lacks the edition code.",
    "The page template leaves it out; nobody can then tell whether the sheet is still valid.",
    "print the edition code in the margin box of every page",
    safety=True,
)
NO_METADATA = Rule(
    "pdf-without-title",
    "A PDF file does not say its title or its language.",
    "The document is written without title or lang; a screen reader then names a file or speaks wrongly.",
    "give the document a title element and set lang on its html element",
)
EMPTY_PAGE = Rule(
    "sheet-empty",
    "A PDF file has an empty page.",
    "A forced page break too many, or a font that leaves nothing to read.",
    "remove the break, or look at the page and its fonts",
    safety=True,
)
UNKNOWN_PDF = Rule(
    "pdf-unannounced",
    "A PDF file is in the site that nobody announced.",
    "It was written by an earlier step or copied by hand; its texts cannot be checked.",
    "announce the file to the audit with its language and edition, or remove it",
    safety=True,
)
NO_PDF = Rule(
    "pdf-missing",
    "A PDF file that has to exist is not in the site.",
    "It was not written, or under another name.",
    "build again; if it stays so, look at the booklet writer",
    safety=True,
)
RULES = (
    NO_NOTE,
    NO_CLINIC_LINE,
    NO_PAGE_NUMBER,
    NO_EDITION,
    NO_METADATA,
    EMPTY_PAGE,
    UNKNOWN_PDF,
    NO_PDF,
)


@dataclass(frozen=True)
class SheetText:
    """The text of one printed page."""

    reading: str
    """In the order in which it is read aloud, as far as the file tells."""
    visual: str
    """Line by line as the eye meets it, from left to right; empty where nobody asked for it."""


@dataclass(frozen=True)
class PdfFacts:
    """What the audit knows of one PDF file."""

    path: str
    title: str
    language: str
    sheets: tuple[SheetText, ...]

    @property
    def reading(self) -> str:
        """Return the plain text of all pages in reading order."""
        return as_one_word(plain("\n".join(sheet.reading for sheet in self.sheets)))

    @property
    def visual(self) -> str:
        """Return the plain text of all pages as the eye meets it, or as read where that was not asked for."""
        return plain("\n".join(sheet.visual or sheet.reading for sheet in self.sheets))


def read(file: Path, path: str, *, visual: bool) -> PdfFacts:
    """Return the facts of a PDF file; ValueError when it cannot be read.

    Text outside the edges of a page is left out: nobody can read it on paper.
    """
    try:
        with pikepdf.open(file) as pdf:
            title = str(pdf.docinfo.get("/Title", ""))
            language = str(pdf.Root.get("/Lang", ""))
        document = pypdfium2.PdfDocument(file)
    except (pikepdf.PdfError, pypdfium2.PdfiumError) as error:
        raise ValueError(str(error)) from error
    try:
        sheets = tuple(_sheet(document[number], visual) for number in range(len(document)))
    except pypdfium2.PdfiumError as error:
        raise ValueError(str(error)) from error
    finally:
        document.close()
    return PdfFacts(path, title.strip(), language.strip(), sheets)


def _sheet(page: pypdfium2.PdfPage, visual: bool) -> SheetText:
    """Return the text of one page and free what it held."""
    text = page.get_textpage()
    try:
        return SheetText(text.get_text_bounded(), _as_seen(text) if visual else "")
    finally:
        text.close()
        page.close()


def _as_seen(text: pypdfium2.PdfTextPage) -> str:
    """Return the signs of a page in lines from top to bottom, each sorted by its left edge.

    pdfium gives a dose in a right-to-left line as ``10 × 3`` although ``3 × 10`` is printed; where the
    signs stand on the paper is what the patient reads. A gap wider than two signs is a new column.
    """
    signs: list[tuple[float, float, float, float, str]] = []
    for index in range(text.count_chars()):
        char = chr(pypdfium2.raw.FPDFText_GetUnicode(text.raw, index))
        # The tight box of a digit 1 or a dot says nothing about its line: take the box of its font size.
        left, bottom, right, top = _loose_box(text, index)
        if char.strip() and right > left:
            signs.append((left, bottom, right, top, char))
    signs.sort(key=lambda sign: -(sign[1] + sign[3]) / 2)
    lines: list[list[tuple[float, float, float, float, str]]] = []
    for sign in signs:
        middle, height = (sign[1] + sign[3]) / 2, sign[3] - sign[1]
        last = lines[-1][-1] if lines else None
        if last is None or (last[1] + last[3]) / 2 - middle > 0.35 * height:
            lines.append([])
        lines[-1].append(sign)
    return "\n".join(_line(sorted(line)) for line in lines)


def _line(signs: Sequence[tuple[float, float, float, float, str]]) -> str:
    """Return the signs of one line with blanks where they stand apart."""
    parts: list[str] = []
    for index, (left, bottom, _, top, char) in enumerate(signs):
        gap = left - signs[index - 1][2] if index else 0.0
        size = top - bottom
        parts.append(("\n" if gap > 1.5 * size else " " if gap > 0.1 * size else "") + char)
    return "".join(parts)


def _loose_box(text: pypdfium2.PdfTextPage, index: int) -> tuple[float, float, float, float]:
    """Return the box of one sign by its font: left, bottom, right, top in points."""
    box = pypdfium2.raw.FS_RECTF()
    pypdfium2.raw.FPDFText_GetLooseCharBox(text.raw, index, ctypes.byref(box))
    return box.left, box.bottom, box.right, box.top


def check(facts: PdfFacts, expected: ExpectedPdf, language: Expected) -> Iterator[Problem]:
    """Yield what the sheets of a PDF file lack; pages are named by number, counted from 1."""
    place = Place(facts.path)
    if not facts.title:
        yield NO_METADATA.at(place, "the file has no title")
    if facts.language.lower() != language.language.lower():
        yield NO_METADATA.at(
            place, f"the file gives its language as {facts.language!r}, not {language.language!r}"
        )
    if not facts.sheets:
        yield EMPTY_PAGE.at(place, "the file has no pages")
    for number, sheet in enumerate(facts.sheets, start=1):
        if not sheet.reading.strip():
            yield EMPTY_PAGE.at(place, f"page {number} is empty")
            continue
        yield from _check_sheet(sheet, (number, len(facts.sheets)), expected, language, place)


def _check_sheet(
    sheet: SheetText, numbers: tuple[int, int], expected: ExpectedPdf, language: Expected, place: Place
) -> Iterator[Problem]:
    """Yield what one sheet lacks."""
    text = plain(sheet.reading)
    bare = squeezed(sheet.reading)
    rtl = language.direction == "rtl"
    page, pages = numbers
    for wanted in language.everywhere:
        if squeezed(wanted) not in bare and not (expected.loose and _holds_loosely(text, wanted)):
            yield NO_NOTE.at(place, f"page {page} lacks the safety text {shorten(wanted)!r}")
    line = language.clinic_line
    if squeezed(line) not in bare and not (rtl and _holds_line(sheet, line)):
        yield NO_CLINIC_LINE.at(place, f"page {page} lacks the telephone line {shorten(line)!r}")
    if expected.page_label is not None:
        label = expected.page_label.format(page=page, pages=pages)
        if not holds_token(text, label) and not (rtl and holds_nearby(text, label)):
            yield NO_PAGE_NUMBER.at(place, f"page {page} does not bear the number {label!r}")
    if not holds_token(text, expected.edition) and not (
        rtl and holds_token(plain(sheet.visual), expected.edition)
    ):
        yield NO_EDITION.at(place, f"page {page} does not bear the edition code {expected.edition!r}")


def _holds_loosely(text: str, wanted: str) -> bool:
    return holds_nearby(text, wanted) or holds_words(text, wanted)


def _holds_line(sheet: SheetText, line: str) -> bool:
    """Return whether a right-to-left sheet holds a line: words together, numbers as the eye sees them."""
    seen = plain(sheet.visual)
    return holds_nearby(sheet.reading, line) and all(holds_token(seen, run) for run in number_runs(line))
