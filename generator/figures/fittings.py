"""Draws what belongs to a room of its own: a toilet with a raised seat and rails, and bathroom scales."""

from __future__ import annotations

import numpy as np
import shapely

from generator.body.motion import Body
from generator.body.pose import BodyPart, Ground, Rest
from generator.body.skeleton import PELVIS
from generator.figures.furniture import BEHIND, Room
from generator.figures.ink import Layer, Mark
from generator.figures.props import Prop, Scales, Toilet
from generator.figures.shapes import area_path
from generator.figures.solids import EDGE, box, cushion_of

_RAISED = 0.05  # how thick a raised seat is
_PLATE = 0.012


def fitted(prop: Prop, room: Room, body: Body) -> list[Layer]:
    """Return the layers of a toilet or of scales; nothing for any other thing."""
    if isinstance(prop, Toilet):
        return [*_toilet(room), *room.armrests(body)]
    if isinstance(prop, Scales):
        return [Layer(BEHIND, tuple(_scales(room)))]
    return []


def _toilet(room: Room) -> list[Layer]:
    """Return bowl, raised seat and cistern under the pelvis of whichever pose sits."""
    seat = Rest(BodyPart.PELVIS, on=Ground.SEAT)
    sitting = next((key for key in room.motion.keys if seat in key.rests), room.motion.keys[0])
    x, _, z = sitting.placed.origins[PELVIS]
    height, palette = room.motion.setting.seat, room.palette
    rim = height - _RAISED
    marks = box(room.lens, (x - 0.215, rim - 0.02, z - 0.115), (x - 0.135, height + 0.17, z + 0.115), palette)
    corners = [(x + dx, 0.0, z + dz) for dx in (-0.10, 0.045) for dz in (-0.055, 0.055)]
    corners += [(x + dx, rim - 0.09, z + dz) for dx in (-0.14, 0.05) for dz in (-0.06, 0.06)]
    corners += [(x + dx, rim, z + dz) for dx in (-0.14, 0.125) for dz in (-0.10, 0.10)]
    bowl = shapely.MultiPoint(room.lens.flat(np.array(corners))).convex_hull
    marks.append(Mark(area_path(bowl), palette.prop_side, palette.prop_line, EDGE))
    ring = [(x + dx, y, z + dz) for dx in (-0.125, 0.135) for y in (rim, height) for dz in (-0.105, 0.105)]
    return [Layer(BEHIND + 1, tuple(marks + cushion_of(room.lens, np.array(ring), palette)))]


def _scales(room: Room) -> list[Mark]:
    """Return a plate under each foot."""
    marks: list[Mark] = []
    feet, palette = room.feet[0], room.palette
    for x, _, z in feet[np.argsort(room.lens.depth(feet))].tolist():
        low, high = (x - 0.065, 0.0, z - 0.058), (x + 0.145, _PLATE, z + 0.058)
        marks += box(room.lens, low, high, palette, palette.ground)
    return marks
