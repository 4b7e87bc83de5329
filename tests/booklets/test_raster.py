"""Pictures become PNG files of the width that was asked for, with what was drawn in them."""

from __future__ import annotations

from io import BytesIO

import pytest
from PIL import Image

from generator.booklets.raster import html_pngs, svg_pngs

RED = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20" width="40" height="20">'
    '<path d="M0 0L20 0L20 20L0 20Z" fill="#ff0000"/></svg>'
)


def test_a_picture_has_the_width_asked_for_and_its_own_shape() -> None:
    """A picture twice as wide as high stays so; its left half is what was painted, the rest is white."""
    wide, square = (
        Image.open(BytesIO(png)) for png in svg_pngs([RED, RED.replace('width="40"', 'width="20"')], 200)
    )
    assert wide.size == (200, 100)
    assert square.size == (200, 200)
    assert wide.convert("RGB").getpixel((50, 50)) == (255, 0, 0)
    assert wide.convert("RGB").getpixel((150, 50)) == (255, 255, 255)


def test_a_picture_without_size_is_refused() -> None:
    """A picture must say how large it is, or its shape would be guessed."""
    with pytest.raises(ValueError, match="width and height"):
        svg_pngs(['<svg xmlns="http://www.w3.org/2000/svg"/>'], 100)


def test_no_pictures_make_no_files() -> None:
    """An empty list is no mistake."""
    assert svg_pngs([], 100) == ()


def test_a_sheet_has_one_file_a_page() -> None:
    """A contact sheet that needs two pages becomes two pictures."""
    pages = html_pngs("<p>one</p><p style='break-before: page'>two</p>", ".")
    assert len(pages) == 2
