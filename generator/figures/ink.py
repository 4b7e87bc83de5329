"""Holds what a picture is made of: filled areas and drawn lines in painting order, and their SVG text."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace

from generator.body.skeleton import Array


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
        """Return the SVG attributes of the paint; the document itself says that nothing is filled."""
        text = f' fill="{self.fill}"' if self.fill else ""
        if self.stroke:
            text += f' stroke="{self.stroke}" stroke-width="{self.width:g}"'
        if self.dash:
            text += f' stroke-dasharray="{self.dash}"'
        return text


@dataclass(frozen=True)
class Layer:
    """Marks painted together, and how near they are to the viewer.

    at: points on the picture that the marks follow, in the same order in every pose of a movement; None where
        nothing is known but the marks themselves.
    """

    depth: float
    marks: tuple[Mark, ...]
    at: Array | None = field(default=None, compare=False)


def paint(layers: Iterable[Layer]) -> tuple[Mark, ...]:
    """Return all marks, the farthest layer first."""
    return tuple(mark for layer in sorted(layers, key=lambda layer: layer.depth) for mark in layer.marks)


def markup(marks: Sequence[Mark]) -> str:
    """Return SVG paths; an outline joins the fill it follows, and lines painted alike share one path."""
    joined: list[Mark] = []
    for mark in marks:
        if not mark.data:
            continue
        last = joined[-1] if joined else None
        if (
            last
            and not mark.fill
            and last.data == mark.data
            and last.fill
            and not last.stroke
            and not mark.dash
        ):
            joined[-1] = replace(last, stroke=mark.stroke, width=mark.width)
        elif last and not mark.fill and mark.style == last.style:
            joined[-1] = replace(last, data=last.data + mark.data)
        else:
            joined.append(mark)
    return "".join(f'<path d="{mark.data}"{mark.style}/>' for mark in joined)
