"""Writes the laid-out booklet as a tagged PDF, with what the library leaves out for screen readers."""

from __future__ import annotations

from typing import Any

from generator.booklets.engine import VARIANT, complaints, no_clock
from generator.booklets.layout import Laid, lay_out


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


def _finish(_: Any, pdf: Any) -> None:
    """Give every table header its scope; without it no reader can say which column a cell is in.

    Headers in the head of a table stand for their column, all others for their row.
    """
    for element in pdf.objects:
        if isinstance(element, dict) and element.get("S") == "/TH":
            part = _parent(pdf, _parent(pdf, element))
            element["A"]["Scope"] = "/Column" if part["S"] == "/THead" else "/Row"


def _parent(pdf: Any, element: Any) -> Any:
    """Return what holds an element of the structure tree; a reference reads ``12 0 R``."""
    return pdf.objects[int(element["P"].split()[0])]
