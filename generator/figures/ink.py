"""Holds what a picture is made of: filled areas and drawn lines in painting order, and their SVG text."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from generator.body.skeleton import Array
from generator.figures.paths import Path, as_drawn, written


@dataclass(frozen=True)
class Mark:
    """One path and how it is painted; an empty colour paints nothing."""

    data: Path
    fill: str = ""
    stroke: str = ""
    width: float = 0.0
    dash: str = ""


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
    """Return SVG paths as they were drawn, every point where it is."""
    return _joined([(as_drawn(mark.data), mark) for mark in marks], 1)


def small(marks: Sequence[Mark], fine: int) -> str:
    """Return marks as short SVG paths, `fine` times as large; the document's view box shrinks it again."""
    return _joined(list(zip(written([mark.data for mark in marks], fine), marks, strict=True)), fine)


def _joined(drawn: Sequence[tuple[str, Mark]], fine: int) -> str:
    """Return paths; an outline joins the fill it follows, and lines painted alike share one path."""
    paths: list[list[str]] = []
    for data, mark in drawn:
        if not data:
            continue
        fill, stroke = f' fill="{mark.fill}"' if mark.fill else "", _stroke(mark, fine)
        last = paths[-1] if paths else ["", "", ""]
        if not fill and last[1] and not last[2] and last[0] == data and not mark.dash:
            last[2] = stroke
        elif paths and not fill and last[1:] == ["", stroke]:
            last[0] += data
        else:
            paths.append([data, fill, stroke])
    return "".join(f'<path d="{data}"{fill}{stroke}/>' for data, fill, stroke in paths)


def _stroke(mark: Mark, fine: int) -> str:
    """Return the attributes of a line; the document itself says that nothing is filled."""
    if not mark.stroke:
        return ""
    text = f' stroke="{mark.stroke}" stroke-width="{round(mark.width * fine, 1):g}"'
    if mark.dash:
        lengths = " ".join(f"{float(part) * fine:g}" for part in mark.dash.split())
        text += f' stroke-dasharray="{lengths}"'
    return text
