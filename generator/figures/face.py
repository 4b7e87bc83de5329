"""Draws the head so that front, back and profile are told apart at a glance: hair, ear, nose, eyes, mouth."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from generator.body.skeleton import HEAD, Array, Placed
from generator.body.surface import RINGS
from generator.figures.camera import Camera
from generator.figures.ink import Layer, Mark
from generator.figures.outlines import SKULL, Ellipses
from generator.figures.palette import Palette
from generator.figures.shapes import area_path, curve, line_path, soften

_CENTRES = np.array([RINGS[i].centre for i in SKULL])
_DEPTHS = np.array([RINGS[i].first[0] for i in SKULL])
_WIDTHS = np.array([RINGS[i].second[2] for i in SKULL])
_AROUND = np.linspace(0, 2 * np.pi, 21)
_LINE = 1.5

# Points on the face, in the head's frame: X forward, Y up, Z to the operated side.
_NOSE = np.array(
    [
        [0.058, 0.046, 0],
        [0.0755, 0.0175, 0],
        [0.066, 0.0105, 0],
        [0.050, 0.014, 0.0],
        [0.056, 0.016, 0.010],
        [0.056, 0.016, -0.010],
    ]
)
_NOSE_WING = np.array([[0.068, 0.0150, 0.008], [0.074, 0.0115, 0.0], [0.068, 0.0150, -0.008]])
_MOUTH = np.array(
    [
        [0.051, -0.0025, 0.0135],
        [0.057, -0.0055, 0.007],
        [0.059, -0.0060, 0.0],
        [0.057, -0.0055, -0.007],
        [0.051, -0.0025, -0.0135],
    ]
)
_EYES = np.array([[0.055, 0.0400, 0.0185], [0.055, 0.0400, -0.0185]])
_BROWS = np.array(
    [[[0.051, 0.0515, z * 0.027], [0.058, 0.0540, z * 0.019], [0.061, 0.0520, z * 0.010]] for z in (1, -1)]
)
_EAR = np.array(
    [[-0.006 + 0.011 * np.cos(t), 0.027 + 0.018 * np.sin(t), 0.0] for t in np.linspace(0, 2 * np.pi, 14)]
)


def _surface() -> tuple[Array, NDArray[np.bool_]]:
    """Return points over the head's surface (rows, around, 3) and which squares between them are hair."""
    swell = 1.05
    points = np.empty((len(SKULL), len(_AROUND), 3))
    points[..., 0] = _CENTRES[:, None, 0] + swell * _DEPTHS[:, None] * np.cos(_AROUND)
    points[..., 1] = _CENTRES[:, None, 1]
    points[..., 2] = swell * _WIDTHS[:, None] * np.sin(_AROUND)
    points[-3:, :, 1] += 0.003
    middle = (points[:-1, :-1] + points[1:, :-1] + points[:-1, 1:] + points[1:, 1:]) / 4
    forehead = middle[..., 1] - 0.073 - 0.95 * (middle[..., 0] - 0.043)
    temple = (middle[..., 1] > 0.004) & (middle[..., 0] < -0.024)
    return points, ((forehead > 0) & (middle[..., 1] > 0.012)) | temple


_POINTS, _HAIRY = _surface()


def _turned(local: Array, placed: Placed) -> Array:
    result: Array = local @ placed.rotations[HEAD].T + placed.origins[HEAD]
    return result


def _hair(placed: Placed, lens: Camera) -> BaseGeometry:
    """Return the hair that faces the viewer."""
    space = _turned(_POINTS, placed)
    flat = lens.flat(space.reshape(-1, 3)).reshape(*_POINTS.shape[:2], 2)
    corners = np.stack([flat[:-1, :-1], flat[:-1, 1:], flat[1:, 1:], flat[1:, :-1]], axis=2)
    one, two = corners[:, :, 2] - corners[:, :, 0], corners[:, :, 3] - corners[:, :, 1]
    facing = one[..., 0] * two[..., 1] - one[..., 1] * two[..., 0]
    seen = _HAIRY & (facing > 0)
    if not seen.any():
        return Polygon()
    strips = np.array([Polygon(strip) for strip in _strips(flat, seen)])
    joined = shapely.union_all(shapely.make_valid(strips))
    # Gaps and inner corners are filled, then locks thinner than 2.4 units are cut off.
    return joined.buffer(2.0, quad_segs=3).buffer(-3.2, quad_segs=3).buffer(1.2, quad_segs=3)


def _strips(flat: Array, seen: NDArray[np.bool_]) -> Iterator[Array]:
    """Yield the outline of each run of seen squares in a row: far fewer to join than single squares."""
    edges = np.diff(np.pad(seen, ((0, 0), (1, 1))).astype(int), axis=1)
    rows, starts = np.nonzero(edges > 0)
    for row, start, end in zip(rows, starts, np.nonzero(edges < 0)[1], strict=True):
        yield np.concatenate([flat[row, start : end + 1], flat[row + 1, start : end + 1][::-1]])


def _features(placed: Placed, lens: Camera, palette: Palette) -> list[Mark]:
    """Return eyes, brows, nose line and mouth as far as they face the viewer."""
    ahead = placed.rotations[HEAD] @ np.array([1.0, 0.0, 0.0])
    out = placed.rotations[HEAD] @ np.array([0.0, 0.0, 1.0])
    facing = float(ahead @ lens.towards)
    marks = []
    for number, side in enumerate((1.0, -1.0)):
        normal = 0.80 * ahead + 0.60 * side * out
        if float(normal @ lens.towards) > 0.22:
            x, y = lens.flat(_turned(_EYES[number][None], placed))[0]
            dot = curve([(x - 0.3, y - 0.4), (x + 0.3, y + 0.4)])
            marks.append(Mark(dot, stroke=palette.line, width=2.4))
            marks.append(
                Mark(curve(lens.flat(_turned(_BROWS[number], placed))), stroke=palette.line, width=1.0)
            )
    if facing > 0.45:
        marks.append(Mark(curve(lens.flat(_turned(_NOSE_WING, placed))), stroke=palette.line, width=1.0))
    if facing > -0.05:
        mouth = _MOUTH
        if facing < 0.5:
            mouth = _MOUTH[:3] if float(out @ lens.towards) > 0 else _MOUTH[2:]
        marks.append(Mark(curve(lens.flat(_turned(mouth, placed))), stroke=palette.line, width=1.1))
    return marks


def head_layers(placed: Placed, rings: Ellipses, lens: Camera, palette: Palette, tolerance: float) -> Layer:
    """Return the head as one layer: skull with nose, hair, features, ear."""
    skull = rings.outline([SKULL], soft=False)
    nose = shapely.MultiPoint(lens.flat(_turned(_NOSE, placed))).convex_hull.buffer(0.7, quad_segs=3)
    facing = float(placed.rotations[HEAD][:, 0] @ lens.towards)
    shape = soften(skull.union(nose), 1.0) if facing > -0.75 else skull
    hair = _hair(placed, lens)
    whole = shape.union(hair) if not hair.is_empty else shape
    out = placed.rotations[HEAD] @ np.array([0.0, 0.0, 1.0])
    ears_behind, ears_front = [], []
    for side in (1.0, -1.0):
        local = _EAR + np.array([0.0, 0.0, side * 0.0455])
        ear = Polygon(lens.flat(_turned(local, placed))).buffer(0.9, quad_segs=2)
        turned = side * float(out @ lens.towards)
        pair = [
            Mark(area_path(ear, tolerance), fill=palette.skin),
            Mark(line_path(ear.boundary, tolerance), stroke=palette.line, width=1.0),
        ]
        if turned > 0.25:
            ears_front += pair
        elif turned > -0.3:
            ears_behind += pair
    marks = [
        *ears_behind,
        Mark(area_path(shape, tolerance), fill=palette.skin),
        Mark(area_path(hair, tolerance), fill=palette.hair),
        Mark(line_path(whole.boundary, tolerance), stroke=palette.line, width=_LINE),
        *_features(placed, lens, palette),
        *ears_front,
    ]
    depth = float(lens.depth(placed.origins[HEAD][None])[0])
    return Layer(depth, tuple(marks), rings.cross([SKULL]))
