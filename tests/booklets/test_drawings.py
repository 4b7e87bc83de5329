"""A picture that is worked out once looks as the layout library draws it, and stands in a file once."""

from __future__ import annotations

import base64
import io

import pikepdf
import pypdfium2
import pytest
import weasyprint

from generator.booklets.drawings import Drawings
from generator.booklets.engine import OwnFiles
from generator.booklets.layout import lay_out
from generator.booklets.pdf import to_pdf, write

# Enough of it to be a form of its own: lines, curves, a mirrored group, strokes and fills.
SVG = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="-20 -10 200 100" width="200" height="100">'
    + "".join(
        f'<path d="M{x} 5q13.337 7.123 {x / 3:.3f} 44" fill="none" stroke="#0f5a56" stroke-width="1.9"/>'
        for x in range(0, 150, 6)
    )
    + '<g transform="matrix(-1 0 0 1 150 0)"><circle cx="40" cy="40" r="33.3333" fill="#e3efeb"/></g></svg>'
)
ADDRESS = "data:image/svg+xml;base64," + base64.b64encode(SVG.encode()).decode()


def page(*widths: int, style: str = "") -> str:
    """Return a document that shows the picture in each of the widths, in millimetres."""
    shown = "".join(f'<img alt="x" style="width: {width}mm" src="{ADDRESS}">' for width in widths)
    return f"<html lang='en'><title>t</title><style>img {{ display: block; {style} }}</style>{shown}</html>"


def ink(pdf: bytes) -> bytes:
    """Return the first page as grey pixels."""
    image = pypdfium2.PdfDocument(pdf)[0].render(scale=2, grayscale=True).to_pil()
    return bytes(image.tobytes())


def test_it_looks_as_the_library_draws_it() -> None:
    """Pixel by pixel the same as plain WeasyPrint, but for shades at the edges of lines."""
    plain = weasyprint.HTML(string=page(120, 40)).write_pdf()
    ours, theirs = ink(to_pdf(page(120, 40))), ink(plain)
    assert len(set(ours)) > 2
    apart = [abs(one - other) for one, other in zip(ours, theirs, strict=True)]
    assert max(apart) < 48
    assert sum(apart) / len(apart) < 0.05


def test_a_file_holds_a_picture_once() -> None:
    """The thumbnail on one sheet and the large picture on another are one form, shown twice."""
    with pikepdf.open(io.BytesIO(to_pdf(page(120, 40, style="break-after: page")))) as file:
        forms = [
            thing
            for thing in file.objects
            if isinstance(thing, pikepdf.Stream) and thing.get("/Subtype") == "/Form"
        ]
        assert len(file.pages) == 2
    assert len(forms) == 1


def test_it_is_the_same_in_a_file_made_first_or_later() -> None:
    """What is kept between files changes none: the second one has the bytes of the first."""
    first = to_pdf(page(100))
    to_pdf(page(30))
    assert to_pdf(page(100)) == first


def test_a_picture_out_of_shape_is_drawn_as_the_library_does() -> None:
    """A picture pressed into another shape is not stretched: it keeps its shape inside."""
    html = page(120, style="height: 20mm")
    apart = [
        abs(one - other)
        for one, other in zip(ink(to_pdf(html)), ink(weasyprint.HTML(string=html).write_pdf()), strict=True)
    ]
    assert max(apart) < 48


def test_a_lost_picture_is_complained_of_each_time() -> None:
    """A picture that cannot be read is a finding in every document that shows it, not only in the first."""
    broken = page(50).replace(ADDRESS, "data:image/svg+xml,%3Csvg")
    assert lay_out(broken).logged
    assert lay_out(broken).logged


def test_unread_pictures_are_not_kept() -> None:
    """Only SVG inside the document is kept; every other address is left to the library and its fetcher."""
    known = Drawings(OwnFiles(()))
    assert "file:///etc/hostname" not in known
    assert ADDRESS in known


@pytest.mark.parametrize("style", ["opacity: 0.5", "transform: rotate(10deg)"])
def test_more_than_lines_and_colours_is_left_to_the_library(style: str) -> None:
    """A picture with a transparent group is drawn as the library draws it, and nothing is complained of."""
    svg = SVG.replace("<circle", '<circle opacity="0.5"')
    address = "data:image/svg+xml;base64," + base64.b64encode(svg.encode()).decode()
    html = page(100, style=style).replace(ADDRESS, address)
    laid = lay_out(html)
    pdf, logged = write(laid)
    assert (laid.logged, logged) == ((), ())
    theirs = ink(weasyprint.HTML(string=html).write_pdf())
    assert max(abs(one - other) for one, other in zip(ink(pdf), theirs, strict=True)) < 48
