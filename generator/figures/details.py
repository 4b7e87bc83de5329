"""Shows besides the person what is too small or too hidden to see: a level pelvis, working buttocks."""

from __future__ import annotations

from enum import Enum

import numpy as np
import shapely
from shapely.affinity import scale, translate
from shapely.geometry import Point
from shapely.geometry.base import BaseGeometry

from generator.body.motion import Body
from generator.body.pose import SIDES
from generator.body.skeleton import PELVIS, limb
from generator.figures.arrows import drawn
from generator.figures.camera import UNITS, Camera
from generator.figures.ink import Mark
from generator.figures.outlines import LEG_SHORTS, LEGS, TRUNK, TRUNK_SHORTS, Ellipses
from generator.figures.palette import Palette
from generator.figures.person import LINE, WORK_LINE, hatching
from generator.figures.shapes import area_path, curve, line_path

_CREST = np.array([0.0, 0.045, 0.10])  # above the hip, in the pelvis' frame
_BEYOND = 0.035
_RADIUS, _GROWN = 36.0, 1.25
_SEAT = (0.0, -0.05, 0.042)  # middle of a buttock


class Detail(Enum):
    """What can be shown besides."""

    PELVIS_LINE = "pelvis line"
    BUTTOCKS = "buttocks from behind"


def detailed(detail: Detail | None, body: Body, lens: Camera, palette: Palette) -> list[Mark]:
    """Return the marks of a detail; nothing where there is none."""
    if detail is Detail.PELVIS_LINE:
        return _pelvis_line(body, lens, palette)
    if detail is Detail.BUTTOCKS:
        return _buttocks(body, lens, palette)
    return []


def _pelvis_line(body: Body, lens: Camera, palette: Palette) -> list[Mark]:
    """Return a firm line along the pelvis, and a broken one that stays level, from the operated side."""
    axes, middle = body.placed.rotations[PELVIS], body.placed.origins[PELVIS]
    end = _CREST + np.array([0.0, 0.0, _BEYOND])
    ends = [middle + axes @ (end * (1.0, 1.0, out)) for out in (1.0, -1.0)]
    flat = ends[0] + np.array([ends[1][0] - ends[0][0], 0.0, ends[1][2] - ends[0][2]])
    level, line = curve(lens.flat(np.array([ends[0], flat]))), curve(lens.flat(np.array(ends)))
    return [
        Mark(level, stroke=palette.ground, width=3.6),
        Mark(level, stroke=palette.line, width=1.5, dash="5 4"),
        Mark(line, stroke=palette.ground, width=5.0),
        Mark(line, stroke=palette.line, width=2.6),
    ]


def _buttocks(body: Body, lens: Camera, palette: Palette) -> list[Mark]:
    """Return a round window above the legs: the pelvis from behind, both buttocks drawn together."""
    axes = body.placed.rotations[PELVIS]
    behind = Camera(axes[:, 2], axes[:, 1], -axes[:, 0])
    rings = Ellipses(body.skin, behind)
    middle = behind.flat((body.placed.origins[PELVIS] - 0.045 * axes[:, 1])[None])[0]
    knees = lens.flat(body.placed.origins[[limb(side, "shank") for side in SIDES]]).mean(axis=0)
    centre = knees + np.array([4.0, -_RADIUS - 26.0])
    window = Point(*centre).buffer(_RADIUS, quad_segs=12)

    def shown(shape: BaseGeometry) -> BaseGeometry:
        moved = translate(shape, *(centre - middle))
        return scale(moved, _GROWN, _GROWN, origin=Point(*centre)).intersection(window)

    legs = [rings.outline(LEGS[side]) for side in SIDES]
    trunk = rings.outline([TRUNK])
    shorts = rings.outline([TRUNK_SHORTS], soft=False).intersection(trunk)
    shorts = shapely.union_all([shorts, *(rings.outline(LEG_SHORTS[side], soft=False) for side in SIDES)])
    figure = shapely.union_all([trunk, *legs])
    halves = []
    for out in (1.0, -1.0):
        spot = behind.flat((body.placed.origins[PELVIS] + axes @ (np.array(_SEAT) * (1, 1, out)))[None])[0]
        halves.append(scale(Point(*spot).buffer(1.0, quad_segs=8), 0.043 * UNITS, 0.05 * UNITS))
    seat = shown(shapely.union_all(halves).intersection(figure))
    pelvis = lens.flat(body.placed.origins[[PELVIS]])[0]
    marks = [
        Mark(curve([pelvis, centre]), stroke=palette.prop_line, width=1.1),
        Mark(area_path(window), palette.ground),
        Mark(area_path(shown(figure)), palette.skin),
        Mark(area_path(shown(trunk.difference(shorts))), palette.shirt),
        Mark(area_path(shown(shorts)), palette.shorts),
    ]
    edge = shown(figure).boundary.difference(window.boundary.buffer(0.3))
    marks.append(Mark(line_path(edge), "", palette.line, LINE))
    marks += [Mark(area_path(seat), palette.work), hatching(seat.buffer(-0.8), palette.work_shade)]
    marks += [Mark(area_path(shown(half)), "", palette.line, WORK_LINE) for half in halves]
    for out in (1.0, -1.0):
        inwards = np.array([[out * reach, 2.0] for reach in (33.0, 28.0, 22.0, 17.0)])
        marks += drawn(centre + inwards, palette)
    return [*marks, Mark(area_path(window), "", palette.prop_line, 1.6)]
