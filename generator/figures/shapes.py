"""Makes paths of shapes: edges, lines, curves and circles, and soft outlines of bodies."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from generator.body.skeleton import Array
from generator.figures.paths import Kind, Path

_EIGHTHS = np.arange(8) * np.pi / 4
_EIGHT = np.stack([np.cos(_EIGHTHS), np.sin(_EIGHTHS)], axis=1)
Shape = TypeVar("Shape", BaseGeometry, NDArray[np.object_])


def soften(shape: Shape, radius: float = 1.6) -> Shape:
    """Return the shape, or each of many, with its inner corners filled, as flesh fills them."""
    grown = shapely.buffer(shape, radius, quad_segs=3)
    filled: Shape = shapely.buffer(grown, -radius, quad_segs=3)
    return filled


def number(value: float) -> str:
    """Return a coordinate with one decimal, as short as it goes."""
    text = f"{value:.1f}"
    text = text.removesuffix(".0")
    return "0" if text == "-0" else text


def area_path(shape: BaseGeometry, tolerance: float = 0.22) -> Path:
    """Return the path of a filled shape."""
    return Path(Kind.AREA, shape, tolerance)


def line_path(shape: BaseGeometry, tolerance: float = 0.22) -> Path:
    """Return the path of a drawn line."""
    return Path(Kind.LINE, shape, tolerance)


def straight(shape: BaseGeometry) -> Path:
    """Return the path of straight lines, those shorter than a unit left out."""
    return Path(Kind.STRAIGHT, shape)


def curve(points: Sequence[Sequence[float]] | Array) -> Path:
    """Return the path of an open curve near `points`, ends exact."""
    return Path(Kind.CURVE, np.asarray(points, dtype=float))


def circle(x: float, y: float, radius: float) -> Path:
    """Return the path of a circle: eight bends, off by less than 0.4 % of the radius."""
    return Path(Kind.ROUND, np.array([x, y]) + radius / np.cos(np.pi / 8) * _EIGHT)
