"""Draws the few signs that no face carries: alert triangle, arrow, tick, cross, a full and an open circle.

They are pictures, never typed characters, so that no reader sees an empty box. They hold no text. As
backgrounds they are ornament to a screen reader: the word beside each says the same.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from urllib.parse import quote

_TOKEN = re.compile(r"--pb-([a-z-]+):\s*([^;/]+);")

_SHAPES = {
    # Triangle with a bar and a dot: the alert symbol of ANSI Z535.6, drawn anew.
    "alert": (
        '<path d="M12 2.2 23 21.4H1Z" fill="{hazard}" stroke="{hazard}" stroke-width="1.6"'
        ' stroke-linejoin="round"/><path d="M12 8.4v6.2" stroke="{on-hazard}" stroke-width="2.6"'
        ' stroke-linecap="round"/><circle cx="12" cy="18" r="1.5" fill="{on-hazard}"/>'
    ),
    "arrow": (
        '<path d="M2 12h18M14 5.5 20.5 12 14 18.5" fill="none" stroke="{place}" stroke-width="2.6"'
        ' stroke-linecap="round" stroke-linejoin="round"/>'
    ),
    "tick": (
        '<path d="M3.5 12.5 9.5 19 20.5 5.5" fill="none" stroke="{place}" stroke-width="3.2"'
        ' stroke-linecap="round" stroke-linejoin="round"/>'
    ),
    "cross": (
        '<path d="M5 5 19 19M19 5 5 19" fill="none" stroke="{hazard}" stroke-width="3.2"'
        ' stroke-linecap="round"/>'
    ),
    "full": '<circle cx="12" cy="12" r="10" fill="{place}"/>',
    "open": '<circle cx="12" cy="12" r="8.6" fill="none" stroke="{place}" stroke-width="2.8"/>',
}


def tokens(css: str) -> Mapping[str, str]:
    """Return the values of ``tokens.css`` by name without the prefix: ``{"ink": "#1e2b31", ...}``."""
    return {name: value.strip() for name, value in _TOKEN.findall(css)}


def mark_rules(css: str, direction: str) -> str:
    """Return a rule that defines every mark as ``--mark-<name>``, in the colours of `css`.

    An arrow points the way one reads, so it is mirrored where `direction` is ``rtl``.
    """
    colours = tokens(css)
    rules = [f"--mark-{name}: url({_address(name, colours, direction)});" for name in _SHAPES]
    return ":root { " + " ".join(rules) + " }"


def _address(name: str, colours: Mapping[str, str], direction: str) -> str:
    shape = _SHAPES[name]
    for token in re.findall(r"\{([a-z-]+)\}", shape):
        shape = shape.replace("{" + token + "}", colours[token])
    if name == "arrow" and direction == "rtl":
        shape = f'<g transform="matrix(-1 0 0 1 24 0)">{shape}</g>'
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 24 24">{shape}</svg>'
    return f'"data:image/svg+xml,{quote(svg)}"'
