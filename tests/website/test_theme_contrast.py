"""Holds every pair of colours that is used together to the contrast WCAG 2.2 asks for, light and dark.

Source of the formula and the thresholds: W3C, Web Content Accessibility Guidelines 2.2 (2023), definitions
"relative luminance" and "contrast ratio"; success criteria 1.4.3 (text, 4.5), 1.4.6 (text, 7) and 1.4.11
(parts and states, 3).
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

ASSETS = Path(__file__).resolve().parents[2] / "site_assets"
SCHEMES = ("light", "dark")

TEXT = 4.5
PART = 3.0
BODY_TEXT = 7.0  # ink and dose: our own aim, AAA, for eyes of 75 years

# (colour, ground, least ratio): what stands on what, in CSS and in drawings.
PAIRS = (
    ("ink", "paper", BODY_TEXT),
    ("ink", "sheet", BODY_TEXT),
    ("ink", "soft", BODY_TEXT),
    ("ink", "hazard-ground", BODY_TEXT),
    ("on-band", "band", BODY_TEXT),
    ("quiet", "paper", TEXT),
    ("quiet", "sheet", TEXT),
    ("quiet", "soft", TEXT),
    ("place", "paper", TEXT),
    ("place", "sheet", TEXT),
    ("place", "soft", TEXT),
    ("place", "hazard-ground", TEXT),
    ("on-place", "place", TEXT),
    ("hazard", "hazard-ground", TEXT),
    ("hazard", "paper", TEXT),
    ("hazard", "sheet", TEXT),
    ("on-hazard", "hazard", TEXT),
    ("work", "paper", PART),
    ("work", "sheet", PART),
    ("work", "soft", PART),
    ("line", "paper", PART),
    ("line", "sheet", PART),
    ("line", "soft", PART),
    ("place", "rule", PART),
    # Figures stand on a ground of their own, which is light in both schemes.
    ("figure-line", "figure-ground", PART),
    ("figure-line", "figure-skin", PART),
    ("figure-line", "figure-shirt", PART),
    ("figure-far-line", "figure-ground", PART),
    ("figure-shorts", "figure-ground", PART),
    ("figure-hair", "figure-ground", PART),
    ("figure-work", "figure-ground", PART),
    ("figure-work", "figure-skin", PART),
    ("figure-prop-line", "figure-ground", PART),
    ("figure-band", "figure-ground", PART),
    ("figure-band", "figure-skin", PART),
)


def tokens(scheme: str) -> dict[str, str]:
    """Return the colours of a scheme; dark replaces light where it says so, which is never in figures."""
    light = _typed("tokens.css")
    names = dict(re.findall(r"--pb-([\w-]+): var\(--pb-([\w-]+)\);", _text("tokens.css")))
    figures = {name: light[named] for name, named in names.items()}
    return light | figures | (_typed("tokens-dark.css") if scheme == "dark" else {})


def _text(name: str) -> str:
    return (ASSETS / name).read_text("utf-8")


def _typed(name: str) -> dict[str, str]:
    return dict(re.findall(r"--pb-([\w-]+): (#[0-9a-f]{6});", _text(name)))


def luminance(colour: str) -> float:
    """Return the relative luminance of ``#rrggbb`` as WCAG 2.2 defines it."""
    channels = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Return the contrast ratio of two colours as WCAG 2.2 defines it, 1 to 21."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def test_the_formula_agrees_with_the_published_ends_and_a_published_pair() -> None:
    """Black on white is 21:1, white on white 1:1, and #767676 is the lightest grey of 4.5:1 on white."""
    # 21:1 follows from WCAG's definition; #767676 on white, 4.54, is a pair widely published (from memory).
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#ffffff", "#ffffff") == 1
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)
    assert contrast("#777777", "#ffffff") < 4.5


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize(("colour", "ground", "least"), PAIRS)
def test_what_stands_on_a_ground_can_be_seen(scheme: str, colour: str, ground: str, least: float) -> None:
    """Every pair of colours used together reaches its WCAG 2.2 threshold."""
    colours = tokens(scheme)
    assert contrast(colours[colour], colours[ground]) >= least


def test_the_styles_use_no_colour_of_their_own() -> None:
    """A colour is written in the token files only, so no pair escapes this test."""
    for path in sorted((ASSETS / "css").glob("*.css")):
        found = re.findall(r"#[0-9a-fA-F]{3,8}\b|\brgba?\(|\bhsla?\(", path.read_text("utf-8"))
        assert found == [], path.name


def test_every_colour_exists_in_both_schemes_or_is_meant_for_both() -> None:
    """Dark gives every colour of light a counterpart, but those of figures, which stay as they are."""
    light = {name for name in tokens("light") if not name.startswith("figure-")}
    dark = set(re.findall(r"--pb-([\w-]+):", (ASSETS / "tokens-dark.css").read_text("utf-8")))
    assert light - dark == {"figure"}
    assert dark <= light
