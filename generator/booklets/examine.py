"""Judges a finished booklet by reading it back: what must be on each sheet is there and can be read."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

import pikepdf
import pypdfium2

from generator.booklets import rules
from generator.booklets.layout import squeezed
from generator.booklets.reading_back import PageRead, PdfRead, read_back
from generator.booklets.values import Expected
from generator.problems import Place, Problem, in_order
from generator.wording.isolation import plain

LEAST_POINTS = 12.0
"""The smallest type allowed on a patient's sheet (RNIB clear print), in points."""

# Stretches an Arabic word; no letter.
_TATWEEL = "\u0640"

# An edition's code as it is printed.
_CODE = re.compile("[0-9A-Z]{4}-[0-9A-Z]{4}")

# The writer rounds sizes to a few digits.
_ROUNDING = 0.05


def examine(pdf: bytes, expected: Expected, least: float = LEAST_POINTS) -> tuple[Problem, ...]:
    """Return everything that is wrong with the finished file; `least` is the smallest type, in points."""
    place = Place(expected.path)
    try:
        read = read_back(pdf)
    except (pikepdf.PdfError, pypdfium2.PdfiumError) as error:
        return (rules.NOT_A_PDF.at(place, f"the file cannot be read: {error}"),)
    pages = _pages(read, expected, place, least)
    return in_order([*pages, *_fonts(read, expected, place), *_for_all(read, expected, place)])


def _pages(read: PdfRead, expected: Expected, place: Place, least: float) -> Iterator[Problem]:
    if len(read.pages) != len(expected.page_lines):
        message = f"{len(read.pages)} pages instead of {len(expected.page_lines)}"
        yield rules.PAGES.at(place, message)
    for number, page in enumerate(read.pages, 1):
        line = expected.page_lines[number - 1 : number]
        for words in (*expected.every_page, *line):
            if not stands(words, page):
                yield rules.MARGIN_LINE.at(place, f"page {number} lacks {words!r}")
        if page.off_sheet:
            yield rules.OFF_SHEET.at(place, f"page {number}: {page.off_sheet!r} is off the sheet")
        size, char = page.smallest
        if size < least - _ROUNDING:
            yield rules.SMALL_TEXT.at(place, f"page {number}: {char!r} has {size:.1f} points")
    for number in read.missing_signs:
        yield rules.MISSING_SIGN.at(place, f"page {number} shows an empty box")
    yield from _sheets(read, expected, place)


def _sheets(read: PdfRead, expected: Expected, place: Place) -> Iterator[Problem]:
    for sheet in expected.sheets:
        for words in sheet.required:
            if sheet.page > len(read.pages) or not stands(words, read.pages[sheet.page - 1]):
                yield rules.TEXT_MISSING.at(place, f"page {sheet.page} lacks {words!r}")


def stands(words: str, page: PageRead) -> bool:
    """Return whether words can be read on a page.

    Figures (a dose, a telephone number, an edition) are looked for as the eye meets them. A right-to-left
    sentence is looked for word by word: readers of PDF give the parts of a line in another order.
    """
    wanted = squeezed(words)
    if _is_figure(words):
        return any(wanted in squeezed(line) for line in page.lines)
    if any(unicodedata.bidirectional(char) in ("R", "AL") for char in words):
        return _words_stand(words, page.text)
    return wanted in squeezed(page.text)


def _is_figure(words: str) -> bool:
    """Return whether words are figures and capitals only; an edition's code may happen to have no figure."""
    if _CODE.fullmatch(plain(words)):
        return True
    letters = [char for char in words if char.isalpha()]
    return any(char.isdigit() for char in words) and all(
        char.isascii() and char.isupper() for char in letters
    )


def _words_stand(words: str, text: str) -> bool:
    """Return whether each word stands in a text as a word.

    Readers take a vowel sign for the end of a line: a word that bears one is read back in parts.
    """
    read = _unmarked(text)
    there, run_on = frozenset(_split(read)), squeezed(read)
    return all(
        word in there if _unmarked(word) == word else all(part in run_on for part in _parted(word))
        for word in _split(unicodedata.normalize("NFKC", words))
    )


def _unmarked(words: str) -> str:
    """Return words without vowel signs and without the sign that stretches a word, shapes as letters."""
    shapes = unicodedata.normalize("NFKC", words)
    return "".join(char for char in shapes if not unicodedata.combining(char) and char != _TATWEEL)


def _split(words: str) -> list[str]:
    """Return the words of a text with the signs on them."""
    kept = (char if char.isalpha() or unicodedata.combining(char) else " " for char in words)
    return "".join(kept).replace(_TATWEEL, "").split()


def _parted(word: str) -> list[str]:
    """Return the parts of a word between the signs on it."""
    return "".join(" " if unicodedata.combining(char) else char for char in word).split()


def _fonts(read: PdfRead, expected: Expected, place: Place) -> Iterator[Problem]:
    ours = tuple(family.replace(" ", "-") for family in expected.families)
    for font in dict.fromkeys(read.fonts):
        if not font.embedded:
            yield rules.FONT_NOT_EMBEDDED.at(place, f"font {font.name} is not inside the file")
        if not font.name.startswith(ours):
            yield rules.STRANGE_FONT.at(place, f"font {font.name} is none of {', '.join(expected.families)}")


def _for_all(read: PdfRead, expected: Expected, place: Place) -> Iterator[Problem]:
    if read.title != expected.title or not read.shows_title:
        yield rules.TITLE.at(place, f"the title is {read.title!r} instead of {expected.title!r}")
    if read.language != expected.language:
        yield rules.LANGUAGE.at(place, f"the language is {read.language!r} instead of {expected.language!r}")
    if not read.tagged:
        yield rules.TAGS.at(place, "the file has no structure for screen readers")
    yield from _headings(read, place)
    for tag in read.tags:
        if tag.kind == "Figure" and not tag.alt:
            yield rules.PICTURE_WORDS.at(place, "a picture has no words")
        if tag.kind == "TH" and not tag.scope:
            yield rules.HEADER_SCOPE.at(place, "a table header has no scope")


def _headings(read: PdfRead, place: Place) -> Iterator[Problem]:
    level = 0
    for tag in read.tags:
        if len(tag.kind) == 2 and tag.kind[0] == "H" and tag.kind[1].isdigit():
            now = int(tag.kind[1])
            if now > level + 1:
                yield rules.HEADINGS.at(place, f"heading {now} follows heading {level}")
            level = now
