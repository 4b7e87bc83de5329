"""Draws plain solids: boxes with shaded faces, round bars, cushions; what props are built of."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from shapely.geometry import LineString, Polygon

from generator.body.skeleton import Array
from generator.figures.camera import Camera
from generator.figures.ink import Mark
from generator.figures.palette import Palette
from generator.figures.shapes import area_path, curve, line_path

EDGE = 1.1
Points = Array | Sequence[Array | Sequence[float]]
_FACES = ((0, -1), (0, 1), (2, -1), (2, 1), (1, -1), (1, 1))


def _corners(low: Array, high: Array, axis: int, end: int) -> Array:
    """Return the four corners of one face of a box."""
    one, two = (number for number in range(3) if number != axis)
    corners = np.empty((4, 3))
    corners[:, axis] = high[axis] if end > 0 else low[axis]
    for row, (first, second) in enumerate(((0, 0), (1, 0), (1, 1), (0, 1))):
        corners[row, one] = high[one] if first else low[one]
        corners[row, two] = high[two] if second else low[two]
    return corners


def box(
    lens: Camera, low: Sequence[float], high: Sequence[float], palette: Palette, top: str = ""
) -> list[Mark]:
    """Return a box between two corners: the faces that the viewer sees, the upper one lightest."""
    marks = []
    for axis, end in _FACES:
        if lens.towards[axis] * end < 0.02:
            continue
        face = Polygon(lens.flat(_corners(np.array(low), np.array(high), axis, end)))
        fill = (top or palette.prop) if axis == 1 else palette.prop_side
        marks.append(Mark(area_path(face), fill, palette.prop_line, EDGE))
    return marks


def bar(lens: Camera, points: Points, width: float, fill: str, line: str) -> list[Mark]:
    """Return a round bar along points in space, `width` in drawing units."""
    data = line_path(LineString(lens.flat(np.asarray(points, dtype=float))), tolerance=0.05)
    return [Mark(data, stroke=line, width=width + 2 * EDGE), Mark(data, stroke=fill, width=width)]


def strap(lens: Camera, points: Points, width: float, fill: str, line: str) -> list[Mark]:
    """Return a soft band that bends round its points."""
    data = curve(lens.flat(np.asarray(points, dtype=float)))
    return [Mark(data, stroke=line, width=width + 1.6), Mark(data, stroke=fill, width=width)]


def cushion(lens: Camera, low: Sequence[float], high: Sequence[float], palette: Palette) -> list[Mark]:
    """Return a cushion that fills a box: its outline with soft corners, light against bed and mat."""
    grid = np.array(
        [[x, y, z] for x in (low[0], high[0]) for y in (low[1], high[1]) for z in (low[2], high[2])]
    )
    return cushion_of(lens, grid, palette)


def cushion_of(lens: Camera, corners: Array, palette: Palette) -> list[Mark]:
    """Return a cushion round its corners, shape (n, 3)."""
    hull = shapely.MultiPoint(lens.flat(corners)).convex_hull
    soft = hull.buffer(-2.2).buffer(2.8, quad_segs=4)
    return [Mark(area_path(soft), palette.ground, palette.prop_line, EDGE)]


def disc(lens: Camera, centre: Sequence[float], radius: float) -> Polygon:
    """Return an upright disc that faces sideways, as it looks on the picture."""
    turn = np.linspace(0, 2 * np.pi, 24, endpoint=False)
    circle = np.stack([radius * np.cos(turn), radius * np.sin(turn), np.zeros(24)], axis=1) + np.array(centre)
    return Polygon(lens.flat(circle))


def roll(lens: Camera, centre: Sequence[float], radius: float, half: float, palette: Palette) -> list[Mark]:
    """Return a roll that lies across, along Z, with its round end shown."""
    turn = np.linspace(0, 2 * np.pi, 16, endpoint=False)
    circle = np.stack([radius * np.cos(turn), radius * np.sin(turn), np.zeros(16)], axis=1) + np.array(centre)
    ends = [circle + np.array([0, 0, half]), circle - np.array([0, 0, half])]
    near = ends[0] if lens.towards[2] >= 0 else ends[1]
    whole = shapely.MultiPoint(lens.flat(np.concatenate(ends))).convex_hull
    end = shapely.MultiPoint(lens.flat(near)).convex_hull
    return [
        Mark(area_path(whole), palette.prop_side, palette.prop_line, EDGE),
        Mark(area_path(end), palette.prop, palette.prop_line, EDGE),
        Mark(area_path(end.buffer(-2.0, quad_segs=2)), "", palette.prop_line, 0.8),
    ]
