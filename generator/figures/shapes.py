"""Turns rings of skin into outlines on the picture, and outlines into short, smooth, rounded SVG paths."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import LineString, MultiLineString, Polygon
from shapely.geometry.base import BaseGeometry

from generator.body.skeleton import Array
from generator.body.surface import Skin
from generator.figures.camera import Camera

_AROUND = np.linspace(0.0, 2 * np.pi, 16, endpoint=False)
_CIRCLE = np.stack([np.cos(_AROUND), np.sin(_AROUND)])
ROUNDING = 1.3
_FINEST = 0.06  # drawing units: what is smaller nobody sees, and every corner costs time later


class Ellipses:
    """Every ring of a body on the picture: points around each, in drawing units."""

    def __init__(self, skin: Skin, lens: Camera) -> None:
        """Project the rings of `skin`."""
        centres, first, second = lens.flat(skin.centres), lens.vectors(skin.first), lens.vectors(skin.second)
        self.points: Array = (
            centres[:, None]
            + first[:, None] * _CIRCLE[0][None, :, None]
            + second[:, None] * _CIRCLE[1][None, :, None]
        )
        self.depths = lens.depth(skin.centres)
        self._known: dict[tuple[int, ...], BaseGeometry] = {}

    def outline(self, chains: Sequence[NDArray[np.int64]], soft: bool = True) -> BaseGeometry:
        """Return the joined outline of chains of rings, each stretched to the next; `soft` fills creases."""
        key = (int(soft), *(int(chain[0]) * 1000 + len(chain) for chain in chains))
        if key not in self._known:
            joined = self._joined(chains)
            self._known[key] = soften(joined) if soft else joined
        return self._known[key]

    def _joined(self, chains: Sequence[NDArray[np.int64]]) -> BaseGeometry:
        if len(chains) > 1:
            # Legs and arms are asked for whole and in parts: each part is joined once.
            parts = [self.outline([chain], soft=False) for chain in chains]
            whole: BaseGeometry = shapely.union_all(parts)
            return whole
        chain = chains[0]
        if len(chain) < 2:
            return Polygon()
        pairs = self.points[np.stack([chain[:-1], chain[1:]], axis=1)].reshape(-1, 2 * len(_AROUND), 2)
        # A line through the points has the same hull as the points, and is made in one go.
        joined: BaseGeometry = shapely.union_all(shapely.convex_hull(shapely.linestrings(pairs)))
        return shapely.simplify(joined, _FINEST)


def soften(shape: BaseGeometry, radius: float = 1.6) -> BaseGeometry:
    """Return the shape with its inner corners filled, as flesh fills them."""
    return shape.buffer(radius, quad_segs=3).buffer(-radius, quad_segs=3)


def number(value: float) -> str:
    """Return a coordinate with one decimal, as short as it goes."""
    text = f"{value:.1f}"
    text = text.removesuffix(".0")
    return "0" if text == "-0" else text


def smooth(points: Array, closed: bool, rounding: float = ROUNDING) -> str:
    """Return path data through `points` with every corner rounded by at most `rounding` units."""
    step = _steps(points, rounding)
    leave, entry = points + step, points - _before(step)
    if not closed:
        entry[[0, -1]] = leave[[0, -1]] = points[[0, -1]]
    far = (np.abs(entry - _before(leave)).max(axis=1) > 0.12).tolist()
    into, corner, out = _texts(entry), _texts(points), _texts(leave)
    parts = ["M" + (into[0] if closed else out[0])]
    last = len(points) - 1
    for index in range(0 if closed else 1, len(points)):
        if far[index] and (index or not closed):
            parts.append("L" + into[index])
        if closed or index < last:
            parts.append("Q" + corner[index] + " " + out[index])
    return "".join(parts) + ("Z" if closed else "")


def _texts(points: Array) -> list[str]:
    """Return each point as path text with one decimal; the same numbers as `number` writes."""
    tenths = np.rint(points * 10).astype(np.int64).tolist()
    return [_tenth(x) + (_tenth(y) if y < 0 else " " + _tenth(y)) for x, y in tenths]


@lru_cache(maxsize=16_384)
def _tenth(value: int) -> str:
    return f"{value / 10:.1f}" if value % 10 else str(value // 10)


def _before(values: Array) -> Array:
    """Return each row's forerunner, the last row's for the first."""
    return np.concatenate([values[-1:], values[:-1]])


def _steps(points: Array, reach: float) -> Array:
    """Return half the way from each point to the next, at most three times `reach`."""
    way = np.concatenate([points[1:], points[:1]]) - points
    length = np.maximum(np.hypot(way[:, 0], way[:, 1]), 1e-9)
    result: Array = way * np.minimum(0.5, reach * 3 / length)[:, None]
    return result


def polygons(shape: BaseGeometry) -> list[Polygon]:
    """Return the polygons that a shape consists of."""
    if isinstance(shape, Polygon):
        return [] if shape.is_empty else [shape]
    return [part for part in getattr(shape, "geoms", ()) if isinstance(part, Polygon) and not part.is_empty]


def lines(shape: BaseGeometry) -> list[LineString]:
    """Return the lines that a shape consists of, joined where their ends meet."""
    parts: list[BaseGeometry] = list(getattr(shape, "geoms", [shape]))
    found = [part for part in parts if isinstance(part, LineString) and not part.is_empty]
    if not found:
        return []
    joined: BaseGeometry = shapely.line_merge(MultiLineString([part.coords for part in found]))
    merged: list[BaseGeometry] = list(getattr(joined, "geoms", [joined]))
    return [part for part in merged if isinstance(part, LineString) and part.length > 1.0]


def area_path(shape: BaseGeometry, tolerance: float = 0.22) -> str:
    """Return path data of a filled shape."""
    data = []
    for polygon in polygons(shape):
        if polygon.area < 1.0:
            continue
        for ring in (polygon.exterior, *polygon.interiors):
            points = shapely.get_coordinates(ring.simplify(tolerance))[:-1]
            if len(points) > 2:
                data.append(smooth(points, closed=True))
    return "".join(data)


def line_path(shape: BaseGeometry, tolerance: float = 0.22) -> str:
    """Return path data of a drawn line."""
    data = []
    for line in lines(shape):
        points = shapely.get_coordinates(line.simplify(tolerance))
        closed = len(points) > 3 and bool(np.abs(points[0] - points[-1]).max() < 1e-6)
        data.append(smooth(points[:-1] if closed else points, closed))
    return "".join(data)


def straight(shape: BaseGeometry) -> str:
    """Return path data of straight lines, those shorter than a unit left out."""
    parts = shapely.get_parts(shape)
    parts = parts[shapely.length(parts) > 1.0]
    ends = shapely.get_coordinates(parts)
    texts = _texts(ends) if len(ends) else []
    return "".join(f"M{one}L{two}" for one, two in zip(texts[::2], texts[1::2], strict=True))


def curve(points: Sequence[Sequence[float]] | Array) -> str:
    """Return path data of an open curve near `points`, ends exact."""
    return smooth(np.asarray(points, dtype=float), closed=False, rounding=100.0)
