"""Models how strongly gravity pulls against a muscle's action: a plausibility note, never a measurement.

Only the component along the action counts, and only for a limb that is free: as soon as it rests on
something or pulls a band there is no model. Masses and centres: Winter 2009, table 4.1. A straight leg is one
piece with the tabled centre (0.447 of trochanter to ankle); a bent one is thigh, shank and foot, the foot's
mass taken at the ankle, which gives 3.6 % less for the same straight leg.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from generator.body import segments as size
from generator.body.motion import Body
from generator.body.pose import BodyPart, Side
from generator.body.ranges import signed
from generator.body.segments import Mass
from generator.body.skeleton import SKELETON, Array, limb
from generator.catalogue.terms import Joint, Movement

GRAVITY = 9.81  # m/s²
_STRAIGHT = 10.0  # degrees of knee flexion up to which a leg is one piece
_LEG_PARTS = (BodyPart.FOOT, BodyPart.HEEL, BodyPart.TOES, BodyPart.SHIN, BodyPart.KNEE, BodyPart.THIGH)


def centre(proximal: Array, distal: Array, mass: Mass) -> Array:
    """Return a segment's centre of mass between its ends, in their unit."""
    result: Array = proximal + mass.centre * (distal - proximal)
    return result


def whole_centre(parts: Sequence[tuple[float, Array]]) -> Array:
    """Return the common centre of parts given as mass (any unit) and centre."""
    total = sum(mass for mass, _ in parts)
    result: Array = np.sum([mass * at for mass, at in parts], axis=0) / total
    return result


def weight_moment(mass: float, at: Array, joint: Array, axis: Array, gravity: float = GRAVITY) -> float:
    """Return the moment (N·m) of a weight (kg) at a point about a joint's axis (unit vector), points in m."""
    return float(np.cross(at - joint, np.array([0.0, -mass * gravity, 0.0])) @ axis)


def is_free(body: Body, side: Side) -> bool:
    """Return whether a leg rests on nothing, neither on the ground nor on the other leg."""
    return not any(rest.side is side and rest.part in _LEG_PARTS for rest in body.rests)


def against_gravity(
    body: Body,
    side: Side,
    joint: Joint,
    movement: Movement,
    mass: float,
    stature: float,
    *,
    loaded: bool = False,
) -> float | None:
    """Return the moment (N·m) that gravity sets against a hip or knee movement; None where there is no model.

    mass in kg, stature in m; `loaded` says that a band or weight is added. Negative: gravity helps.
    """
    if loaded or not is_free(body, side) or joint not in (Joint.HIP, Joint.KNEE):
        return None
    name, sign = signed(movement, 1.0)
    placed, parameter = body.placed, SKELETON.axes[side, joint, name]
    row = next(row for row, turn in enumerate(SKELETON.turns) if turn.parameter == parameter)
    axis = placed.turn_axes[row] * SKELETON.turns[row].factor * sign
    hip, knee, ankle = (placed.origins[limb(side, part)] * stature for part in ("thigh", "shank", "foot"))
    if joint is Joint.KNEE:
        pieces = [
            (size.SHANK_MASS.share, centre(knee, ankle, size.SHANK_MASS)),
            (size.FOOT_MASS.share, ankle),
        ]
        return -sum(weight_moment(mass * share, at, knee, axis) for share, at in pieces)
    if abs(body.angle(side, Joint.KNEE, Movement.FLEXION)) <= _STRAIGHT:
        pieces = [(size.WHOLE_LEG_MASS.share, centre(hip, ankle, size.WHOLE_LEG_MASS))]
    else:
        pieces = [
            (size.THIGH_MASS.share, centre(hip, knee, size.THIGH_MASS)),
            (size.SHANK_MASS.share, centre(knee, ankle, size.SHANK_MASS)),
            (size.FOOT_MASS.share, ankle),
        ]
    return -sum(weight_moment(mass * share, at, hip, axis) for share, at in pieces)
