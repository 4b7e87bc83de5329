"""Turns rings of skin into outlines on the picture, and outlines into short, smooth, rounded SVG paths."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import GeometryType
from shapely.geometry import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from generator.body.skeleton import Array
from generator.body.surface import RINGS, Skin
from generator.figures.camera import Camera

_AROUND = np.linspace(0.0, 2 * np.pi, 16, endpoint=False)
_CIRCLE = np.stack([np.cos(_AROUND), np.sin(_AROUND)])
ROUNDING = 1.3
# Rings that are joined to the next one: all but the last of each chain.
_JOINED = np.array([(one.chain, one.side) == (two.chain, two.side) for one, two in pairwise(RINGS)])
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
        self._begun: dict[tuple[int, int], BaseGeometry] = {}
        both = np.concatenate([self.points[:-1], self.points[1:]], axis=1)[_JOINED]
        # A line through the points has the same hull as the points, and all are made in one go.
        self._hulls = np.empty(len(RINGS), dtype=object)
        self._hulls[:-1][_JOINED] = shapely.convex_hull(shapely.linestrings(both))

    def outline(self, chains: Sequence[NDArray[np.int64]], soft: bool = True) -> BaseGeometry:
        """Return the joined outline of chains of rings, each stretched to the next; `soft` fills creases."""
        key = (int(soft), *(int(chain[0]) * 1000 + len(chain) for chain in chains))
        if key not in self._known:
            joined = self._joined(chains)
            self._known[key] = soften(joined) if soft else joined
        return self._known[key]

    def _joined(self, chains: Sequence[NDArray[np.int64]]) -> BaseGeometry:
        if len(chains) > 1:
            # Legs and arms are asked for whole and without their upper part: what they share is joined once.
            first, others = self.outline(chains[:1], soft=False), self.outline(chains[1:], soft=False)
            whole: BaseGeometry = shapely.union(first, others)
            return whole
        chain = chains[0]
        if len(chain) < 2:
            return Polygon()
        # Each hull overlaps the one before in a ring: one after the other is quicker than all at once, and
        # what is on the way is kept: shorts and sleeves begin where the limb begins.
        start, count = int(chain[0]), len(chain)
        known = max((many for many in range(2, count + 1) if (start, many) in self._begun), default=1)
        joined: BaseGeometry = self._begun.get((start, known), self._hulls[start])
        for many in range(known + 1, count + 1):
            joined = shapely.union(joined, self._hulls[chain[many - 2]]) if many > 2 else joined
            self._begun[start, many] = joined
        simple: BaseGeometry = shapely.simplify(joined, _FINEST)
        return simple


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
    texts, count = _texts(np.concatenate([entry, points, leave])), len(points)
    into, corner, out = texts[:count], texts[count : 2 * count], texts[2 * count :]
    bends = [
        f"L{entered}Q{turned} {left}" if apart else f"Q{turned} {left}"
        for entered, turned, left, apart in zip(into, corner, out, far, strict=True)
    ]
    if closed:
        return f"M{into[0]}Q{corner[0]} {out[0]}{''.join(bends[1:])}Z"
    return f"M{out[0]}{''.join(bends[1:-1])}" + (f"L{into[-1]}" if far[-1] else "")


def _texts(points: Array) -> list[str]:
    """Return each point as path text with one decimal; the same numbers as `number` writes."""
    tenths = np.rint(points * 10).astype(np.int64).tolist()
    return [f"{_TENTHS[x]}{_TENTHS[y]}" if y < 0 else f"{_TENTHS[x]} {_TENTHS[y]}" for x, y in tenths]


class _Tenths(dict[int, str]):
    """Writes each tenth once: a picture has thousands of coordinates, all from the same few."""

    def __missing__(self, value: int) -> str:
        """Return and keep the text of a number of tenths."""
        text = self[value] = f"{value / 10:.1f}" if value % 10 else str(value // 10)
        return text


_TENTHS = _Tenths()


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
    if isinstance(shape, LineString):
        return [shape] if shape.length > 1.0 else []
    parts = shapely.get_parts(shape)
    found = parts[_is_line(parts) & ~shapely.is_empty(parts)]
    if not len(found):
        return []
    merged = shapely.get_parts(shapely.line_merge(shapely.multilinestrings(found)))
    return list(merged[_is_line(merged) & (shapely.length(merged) > 1.0)])


def _is_line(parts: NDArray[np.object_]) -> NDArray[np.bool_]:
    kinds = shapely.get_type_id(parts)
    result: NDArray[np.bool_] = (kinds == GeometryType.LINESTRING) | (kinds == GeometryType.LINEARRING)
    return result


def area_path(shape: BaseGeometry, tolerance: float = 0.22) -> str:
    """Return path data of a filled shape."""
    data = []
    for polygon in polygons(shape):
        if polygon.area < 1.0:
            continue
        for ring in shapely.simplify(shapely.get_rings(polygon), tolerance, preserve_topology=False):
            points = shapely.get_coordinates(ring)[:-1]
            if len(points) > 2:
                data.append(smooth(points, closed=True))
    return "".join(data)


def line_path(shape: BaseGeometry, tolerance: float = 0.22) -> str:
    """Return path data of a drawn line."""
    data = []
    for line in lines(shape):
        points = shapely.get_coordinates(shapely.simplify(line, tolerance, preserve_topology=False))
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
