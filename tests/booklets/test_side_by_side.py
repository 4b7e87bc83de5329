"""Sheets are shown side by side in their order, in rows, without the program that laid them out."""

from __future__ import annotations

import io

import pypdfium2
import weasyprint
from PIL import Image

from generator.booklets.side_by_side import proof_pngs


def coloured(*colours: str) -> bytes:
    """Return a booklet of A5 pages, each of one colour."""
    style = "@page { size: A5; margin: 0 } div { break-after: page; height: 210mm } body { margin: 0 }"
    pages = "".join(f'<div style="background: {one}"></div>' for one in colours)
    return bytes(weasyprint.HTML(string=f"<title>t</title><style>{style}</style>{pages}").write_pdf())


def middles(png: bytes, count: int) -> list[object]:
    """Return the colour in the middle of each of `count` equal parts of a picture."""
    picture = Image.open(io.BytesIO(png)).convert("RGB")
    return [
        picture.getpixel((picture.width * (2 * part + 1) // (2 * count), picture.height // 2))
        for part in range(count)
    ]


def test_rows_keep_the_order_of_the_pages() -> None:
    """Five pages in rows of three: red, green, blue; then black and white, on grey."""
    pdf = coloured("#ff0000", "#00ff00", "#0000ff", "#000000", "#ffffff")
    assert len(pypdfium2.PdfDocument(pdf)) == 5
    first, second = proof_pngs(pdf, 3)
    assert middles(first, 3) == [(255, 0, 0), (0, 255, 0), (0, 0, 255)]
    assert middles(second, 2) == [(0, 0, 0), (255, 255, 255)]
    edge = Image.open(io.BytesIO(second)).convert("RGB").getpixel((2, 2))
    assert edge == (204, 204, 204)


def test_small_type_can_be_read() -> None:
    """A sheet of A5 is at least 580 pixels wide: 1.4 pixels for each point."""
    (row,) = proof_pngs(coloured("#ff0000", "#00ff00"), 4)
    assert Image.open(io.BytesIO(row)).width >= 2 * 580
