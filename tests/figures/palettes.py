"""A palette for tests: plain colours, each used once, so that a test can ask what was painted."""

from __future__ import annotations

from dataclasses import fields

from generator.figures.palette import Palette

TOKENS = {
    "--pb-figure-" + item.name.replace("_", "-"): f"#{number:02x}{200 - 9 * number:02x}{9 * number:02x}"
    for number, item in enumerate(fields(Palette), start=1)
}
PALETTE = Palette.from_tokens(TOKENS)

# The width of the ring at the operated joint, four times as large; nothing else in a still has it.
RING = 'stroke-width="7.6"'
