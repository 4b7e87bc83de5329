"""On a black-and-white printer the working limb is still told from the rest: measured on rendered figures."""

from __future__ import annotations

import base64
from dataclasses import fields, replace
from pathlib import Path

import numpy as np
import numpy.typing as npt
import pypdfium2
import pytest
import weasyprint

from generator.body.motion import move
from generator.body.pose import Side
from generator.figures.palette import Palette
from generator.figures.scene import Scene, stills
from generator.steps.figures import palette_of
from tests.body.movements import MOVEMENTS

PALETTE = palette_of((Path(__file__).parents[2] / "site_assets" / "tokens.css").read_text(encoding="utf-8"))
LEG = frozenset({(Side.OPERATED, "leg")})
# The finish is at least 70 mm wide; office printers have 300 dots an inch or more.
WIDTH_MM, DOTS_AN_INCH = 70, 300
Grey = npt.NDArray[np.float64]


def grey(name: str, palette: Palette) -> Grey:
    """Return the finish of a movement as a printer without colour sees it: relative luminance, 0 to 1."""
    svg = stills(Scene(move(MOVEMENTS[name]), working=LEG), palette)[-1]
    address = "data:image/svg+xml;base64," + base64.b64encode(svg.encode("utf-8")).decode("ascii")
    image = f'<img alt="x" style="display: block; width: {WIDTH_MM}mm" src="{address}">'
    style = f"<style>@page {{ size: {WIDTH_MM}mm {2 * WIDTH_MM}mm; margin: 0 }} body {{ margin: 0 }}</style>"
    pdf = weasyprint.HTML(string=f"<html lang='en'><title>t</title>{style}{image}</html>").write_pdf()
    bitmap = pypdfium2.PdfDocument(pdf)[0].render(scale=DOTS_AN_INCH / 72)
    channels = np.asarray(bitmap.to_pil().convert("RGB"), dtype=float) / 255
    linear = np.where(channels <= 0.04045, channels / 12.92, ((channels + 0.055) / 1.055) ** 2.4)
    return np.asarray(linear @ (0.2126, 0.7152, 0.0722))


def where(name: str, *painted: str) -> npt.NDArray[np.bool_]:
    """Return the pixels that bear colours of the palette and nothing else, their edges left out."""
    white = Palette(**{item.name: "#ffffff" for item in fields(Palette)})
    return grey(name, replace(white, **dict.fromkeys(painted, "#000000"))) < 0.01


def contrast(one: float, other: float) -> float:
    """Return the contrast ratio of two luminances (WCAG 2.2)."""
    high, low = max(one, other), min(one, other)
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("name", MOVEMENTS)
def test_the_working_limb_is_darker_than_skin(name: str) -> None:
    """At least 3 to 1, as WCAG 2.2, 1.4.11 asks of what must be seen in a graphic."""
    seen = grey(name, PALETTE)
    limb, skin = where(name, "work", "work_shade"), where(name, "skin", "skin_far")
    assert limb.sum() > 1000
    assert contrast(float(seen[limb].mean()), float(seen[skin].mean())) >= 3


@pytest.mark.parametrize("name", MOVEMENTS)
def test_its_pattern_tells_it_from_dark_cloth(name: str) -> None:
    """Shorts are about as dark, but plain: a twentieth of the limb at least is hatched twice as light.

    How much pattern the eye needs is the project's own choice, no source.
    """
    seen = grey(name, PALETTE)
    limb, cloth = seen[where(name, "work", "work_shade")], seen[where(name, "shorts")]
    dark = float(np.median(limb))
    light = np.array([contrast(value, dark) >= 2 and value > dark for value in limb])
    assert light.mean() >= 0.05
    if cloth.size:
        plain = float(np.median(cloth))
        assert np.mean([contrast(value, plain) >= 2 and value > plain for value in cloth]) < 0.01
