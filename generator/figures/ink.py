"""Holds what a picture is made of: filled areas and drawn lines in painting order, and their SVG text."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Mark:
    """One path: its data and how it is painted; an empty colour paints nothing."""

    data: str
    fill: str = ""
    stroke: str = ""
    width: float = 0.0
    dash: str = ""

    @property
    def style(self) -> str:
        """Return the SVG attributes of the paint."""
        text = f' fill="{self.fill}"' if self.fill else ' fill="none"'
        if self.stroke:
            text += f' stroke="{self.stroke}" stroke-width="{self.width:g}"'
        if self.dash:
            text += f' stroke-dasharray="{self.dash}"'
        return text


@dataclass(frozen=True)
class Layer:
    """Marks painted together, and how near they are to the viewer."""

    depth: float
    marks: tuple[Mark, ...]


def paint(layers: Iterable[Layer]) -> tuple[Mark, ...]:
    """Return all marks, the farthest layer first."""
    return tuple(mark for layer in sorted(layers, key=lambda layer: layer.depth) for mark in layer.marks)


def markup(marks: Sequence[Mark]) -> str:
    """Return SVG paths; neighbours painted alike, if only lines, share one path."""
    joined: list[Mark] = []
    for mark in marks:
        if not mark.data:
            continue
        last = joined[-1] if joined else None
        if last and not mark.fill and mark.style == last.style:
            joined[-1] = Mark(last.data + mark.data, last.fill, last.stroke, last.width, last.dash)
        else:
            joined.append(mark)
    return "".join(f'<path d="{mark.data}"{mark.style}/>' for mark in joined)
