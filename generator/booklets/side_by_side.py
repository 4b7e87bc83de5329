"""Lays finished pages side by side on one larger page, to fold them or to look at many of them at once."""

from __future__ import annotations

import io
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import pikepdf
import pypdfium2

# Points of 1/72 inch between the pages that are looked at, and the grey that parts them (0 black, 1 white).
_GAP = 10.0
_GREY = 0.8
# 1.4 pixels a point: the smallest type can still be read on a screen.
_SCALE = 1.4


@dataclass(frozen=True)
class Placed:
    """A page and where its lower left corner goes, in points from the lower left of the larger page."""

    page: pikepdf.Page
    across: float
    up: float


def size_of(page: pikepdf.Page) -> tuple[float, float]:
    """Return width and height of a page in points."""
    left, low, right, high = (float(edge) for edge in page.mediabox)
    return right - left, high - low


def add_page(
    target: pikepdf.Pdf, size: tuple[float, float], placed: Iterable[Placed], before: str = ""
) -> None:
    """Add a page of `size` in points that shows others in their own size; `before` is drawn underneath."""
    sheet = target.add_blank_page(page_size=size)
    drawn, forms = [before] if before else [], pikepdf.Dictionary()
    for number, one in enumerate(placed):
        left, low = (float(edge) for edge in list(one.page.mediabox)[:2])
        # Names are fixed, so that the same pages give the same bytes.
        forms[f"/Part{number}"] = target.copy_foreign(one.page.as_form_xobject())
        drawn.append(f"q 1 0 0 1 {one.across - left:.3f} {one.up - low:.3f} cm /Part{number} Do Q")
    sheet.obj.Resources = pikepdf.Dictionary(XObject=forms)
    sheet.obj.Contents = target.make_stream("\n".join(drawn).encode("ascii"))


def proof_pngs(pdf: bytes, across: int) -> tuple[bytes, ...]:
    """Return the pages of a booklet as PNG files with `across` pages side by side, in their order."""
    with pikepdf.open(io.BytesIO(pdf)) as booklet, pikepdf.new() as rows:
        pages = list(booklet.pages)
        for first in range(0, len(pages), across):
            _add_row(rows, pages[first : first + across])
        held = io.BytesIO()
        rows.save(held)
    return tuple(_pngs(held.getvalue()))


def _add_row(rows: pikepdf.Pdf, pages: list[pikepdf.Page]) -> None:
    sizes = [size_of(page) for page in pages]
    width = sum(wide for wide, _ in sizes) + _GAP * (len(pages) + 1)
    height = max(high for _, high in sizes) + 2 * _GAP
    placed, edge = [], _GAP
    for page, (wide, high) in zip(pages, sizes, strict=True):
        placed.append(Placed(page, edge, height - _GAP - high))
        edge += wide + _GAP
    ground = f"{_GREY} g 0 0 {width:.3f} {height:.3f} re f 1 g"
    sheets = (f"{one.across:.3f} {one.up:.3f} {wide:.3f} {high:.3f} re f"
              for one, (wide, high) in zip(placed, sizes, strict=True))  # fmt: skip
    add_page(rows, (width, height), placed, "\n".join((ground, *sheets)))


def _pngs(pdf: bytes) -> Iterator[bytes]:
    for page in pypdfium2.PdfDocument(pdf):
        held = io.BytesIO()
        page.render(scale=_SCALE).to_pil().save(held, "PNG")
        yield held.getvalue()
