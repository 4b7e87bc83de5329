"""Draws what stands in a place of its own: a toilet with rails, scales, a car's seat, a bed with an edge."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely

from generator.body.motion import Body
from generator.body.pose import BodyPart, Ground, Rest
from generator.body.skeleton import PELVIS, Array
from generator.figures.furniture import BEHIND, Room
from generator.figures.ink import Layer, Mark
from generator.figures.props import Bed, CarSeat, Prop, Scales, Toilet
from generator.figures.shapes import area_path
from generator.figures.solids import EDGE, bar, box, cushion, cushion_of

_RAISED = 0.05  # how thick a raised seat is
_PLATE = 0.012


def fitted(prop: Prop, room: Room, body: Body) -> list[Layer]:
    """Return the layers of what has a place of its own; nothing for any other thing."""
    if isinstance(prop, Toilet):
        return [*_toilet(room), *room.armrests(body)]
    if isinstance(prop, Scales):
        return [Layer(BEHIND, tuple(_scales(room)))]
    if isinstance(prop, CarSeat):
        across = prop.edge and body is room.motion.keys[0]
        return _seat_across(room) if across else _car_seat(room)
    if isinstance(prop, Bed) and prop.edge:
        return _bed_across(room, body) if body is room.motion.keys[-1] else _bed_along(room, body)
    return []


def _bed_along(room: Room, body: Body) -> list[Layer]:
    """Return a bed under somebody whose legs lie on it, the pillow behind."""
    x, _, z = body.placed.origins[PELVIS]
    reach = float(body.skin.centres[:, 0].max()) + 0.05
    low, high = (x - 0.48, z - 0.20), (max(reach, x + 0.55), z + 0.20)
    return _bed(room, low, high, ((low[0] + 0.02, low[1] + 0.04), (low[0] + 0.16, high[1] - 0.04)))


def _bed_across(room: Room, body: Body) -> list[Layer]:
    """Return the same bed under somebody who sits on its long edge, the pillow at one end."""
    x, _, z = body.placed.origins[PELVIS]
    low, high = (x - 0.34, z - 0.52), (x + 0.06, z + 0.42)
    return _bed(room, low, high, ((low[0] + 0.04, low[1] + 0.02), (high[0] - 0.06, low[1] + 0.16)))


def _bed(
    room: Room,
    low: tuple[float, float],
    high: tuple[float, float],
    pillow: tuple[tuple[float, float], tuple[float, float]],
) -> list[Layer]:
    """Return mattress, legs and pillow between corners on the ground plane (forwards, outwards)."""
    height, palette = room.motion.setting.seat, room.palette
    marks: list[Mark] = []
    for x in (low[0] + 0.03, high[0] - 0.03):
        for z in (low[1] + 0.03, high[1] - 0.03):
            ends = [(x, height - 0.09, z), (x, 0.004, z)]
            marks += bar(room.lens, ends, 5.0, palette.prop_side, palette.prop_line)
    top = (high[0], height, high[1])
    marks += box(room.lens, (low[0], height - 0.10, low[1]), top, palette)
    (one, two), (three, four) = pillow
    marks += cushion(room.lens, (one, height, two), (three, height + 0.045, four), palette)
    return [Layer(BEHIND + 1, tuple(marks))]


def _car_seat(room: Room) -> list[Layer]:
    """Return a thick seat whose back follows the person's back up to a headrest."""
    sitting = room.motion.keys[-1].placed
    lean = sitting.rotations[PELVIS][:, 1]
    x, _, z = sitting.origins[PELVIS]
    height = room.motion.setting.seat
    marks = box(room.lens, (x - 0.14, 0.0, z - 0.11), (x + 0.10, height - 0.09, z + 0.11), room.palette)
    wide = np.array([0.0, 0.0, 0.11])
    marks += _upholstery(room, [(x - 0.07, height - 0.05, z), (x + 0.19, height - 0.045, z)], wide, 15.0)
    foot = np.array([x - 0.115, height, z])
    rear = _upholstery(room, [foot - 0.02 * lean, foot + 0.34 * lean], wide, 13.0)
    rear += _upholstery(room, [foot + 0.43 * lean, foot + 0.48 * lean], wide, 11.0)
    return [Layer(BEHIND + 0.5, tuple(rear)), Layer(BEHIND + 1, tuple(marks))]


def _seat_across(room: Room) -> list[Layer]:
    """Return the same seat with its back beside the person, who sits on its edge and looks out."""
    x, _, z = room.motion.keys[0].placed.origins[PELVIS]
    height = room.motion.setting.seat
    marks = box(room.lens, (x - 0.16, 0.0, z - 0.17), (x + 0.06, height - 0.09, z + 0.08), room.palette)
    wide = np.array([0.11, 0.0, 0.0])
    middle = x - 0.03
    seat = [(middle, height - 0.05, z - 0.15), (middle, height - 0.045, z + 0.10)]
    marks += _upholstery(room, seat, wide, 15.0)
    rear = _upholstery(room, [(middle, height, z - 0.17), (middle, height + 0.33, z - 0.23)], wide, 13.0)
    head = [(middle, height + 0.42, z - 0.245), (middle, height + 0.46, z - 0.25)]
    rear += _upholstery(room, head, 0.6 * wide, 11.0)
    return [Layer(BEHIND + 0.5, tuple(rear)), Layer(BEHIND + 1, tuple(marks))]


def _upholstery(room: Room, ends: Sequence[Sequence[float]], wide: Array, width: float) -> list[Mark]:
    """Return a cushion along its two ends, `wide` to either side."""
    corners = [np.array(end) + turned * wide for end in ends for turned in (1.0, -1.0)]
    shape = shapely.MultiPoint(room.lens.flat(np.array(corners))).convex_hull.buffer(width / 2, quad_segs=6)
    return [Mark(area_path(shape), room.palette.prop_side, room.palette.prop_line, EDGE)]


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
