"""Writes the laid-out booklet as a tagged PDF, with what the library leaves out for screen readers."""

from __future__ import annotations

import re
from typing import Any

from generator.booklets.engine import VARIANT, complaints, no_clock
from generator.booklets.layout import Laid, lay_out
from generator.booklets.letters import JOINED, letters_of

# A line of the map from glyphs to letters.
_GLYPH = re.compile(rb"<([0-9a-f]{4})> <[0-9a-f]*>")


def to_pdf(html: str) -> bytes:
    """Return a document as a tagged PDF: the same bytes for the same text, on any day."""
    return write(lay_out(html))[0]


def write(laid: Laid, zoom: float = 1.0) -> tuple[bytes, tuple[str, ...]]:
    """Return a laid-out document as a tagged PDF, and what the library complained of meanwhile.

    zoom: by how much all of it is enlarged, its pages too.
    """
    with no_clock(), complaints() as logged:
        made = laid.document.write_pdf(zoom=zoom, finisher=_finish, pdf_variant=VARIANT)
    return bytes(made), tuple(dict.fromkeys(logged))


def _finish(document: Any, pdf: Any) -> None:
    """Write what the library leaves out: scopes of headers, letters of joined glyphs, and the bound side.

    Without a scope no reader can say which column a cell is in. Headers in the head of a table stand for
    their column, all others for their row. A right-to-left booklet is bound on the right.
    """
    for element in pdf.objects:
        if isinstance(element, dict) and element.get("S") == "/TH":
            part = _parent(pdf, _parent(pdf, element))
            element["A"]["Scope"] = "/Column" if part["S"] == "/THead" else "/Row"
        elif isinstance(element, dict) and "ToUnicode" in element:
            _name_letters(pdf, element)
    root = document.pages[0]._page_box.children[0].element
    if root.get("dir") == "rtl":
        pdf.catalog["ViewerPreferences"]["Direction"] = "/R2L"


def _name_letters(pdf: Any, font: Any) -> None:
    """Mend the map from the glyphs of a joined script to letters (see `letters`)."""
    name = font["BaseFont"].decode()
    family = next((one for one in JOINED if one in name), None)
    if family is None:
        return
    letters = letters_of(family, 700 if "Bold" in name else 400)
    lines = _referred(pdf, font["ToUnicode"]).stream
    for place, line in enumerate(lines):
        found = _GLYPH.fullmatch(line)
        if found and (text := letters.get(int(found[1], 16))):
            lines[place] = b"<%s> <%s>" % (found[1], text.encode("utf-16-be").hex().encode())


def _parent(pdf: Any, element: Any) -> Any:
    """Return what holds an element of the structure tree."""
    return _referred(pdf, element["P"])


def _referred(pdf: Any, reference: Any) -> Any:
    """Return the object that a reference names; it reads ``12 0 R``."""
    text = reference.decode() if isinstance(reference, bytes) else reference
    return pdf.objects[int(text.split()[0])]
