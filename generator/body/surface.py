"""Gives the body its skin: elliptical rings along each segment, by which it rests on things and is drawn.

Ring sizes are our own drawing of an average adult, within the published lengths and widths (sole, heel,
toes, vertex, chin, hip and shoulder width are the printed ones).
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from functools import cache

import numpy as np
from numpy.typing import NDArray

from generator.body.pose import SIDES, BodyPart, Side
from generator.body.skeleton import (
    HEAD,
    LUMBAR,
    LUMBAR_LOW,
    NECK,
    PELVIS,
    THORAX,
    THORAX_LOW,
    Array,
    Placed,
    limb,
)


class Wear(Enum):
    """What covers a stretch of skin."""

    SKIN = "skin"
    SHIRT = "shirt"
    SHORTS = "shorts"


class Chain(Enum):
    """A body part that is drawn as one piece; paired ones exist on both sides."""

    TRUNK = "trunk"
    NECK = "neck"
    HEAD = "head"
    THIGH = "thigh"
    SHANK = "shank"
    FOOT = "foot"
    UPPER_ARM = "upper arm"
    FOREARM = "forearm"
    HAND = "hand"
    THUMB = "thumb"


@dataclass(frozen=True)
class Ring:
    """An ellipse in a segment's frame: centre, half-axes, the part it belongs to, what it wears."""

    chain: Chain
    side: Side
    segment: int
    centre: tuple[float, float, float]
    first: tuple[float, float, float]
    second: tuple[float, float, float]
    part: BodyPart | None
    wear: Wear


# height along the segment, forward offset, half depth (X), half width (Z), part, wear
_Row = tuple[int, float, float, float, float, "BodyPart | None", Wear]
_TRUNK: tuple[_Row, ...] = (
    (PELVIS, -0.058, -0.012, 0.034, 0.040, BodyPart.PELVIS, Wear.SHORTS),
    (PELVIS, -0.035, -0.012, 0.056, 0.074, BodyPart.PELVIS, Wear.SHORTS),
    (PELVIS, -0.008, -0.012, 0.066, 0.0925, BodyPart.PELVIS, Wear.SHORTS),
    (PELVIS, 0.022, -0.008, 0.065, 0.0935, BodyPart.PELVIS, Wear.SHORTS),
    (LUMBAR_LOW, -0.004, -0.001, 0.059, 0.086, BodyPart.PELVIS, Wear.SHORTS),
    (LUMBAR_LOW, 0.026, 0.003, 0.054, 0.079, None, Wear.SHIRT),
    (LUMBAR, 0.000, 0.004, 0.053, 0.077, None, Wear.SHIRT),
    (LUMBAR, 0.030, 0.004, 0.056, 0.080, None, Wear.SHIRT),
    (THORAX_LOW, 0.010, 0.003, 0.060, 0.085, BodyPart.CHEST, Wear.SHIRT),
    (THORAX_LOW, 0.040, 0.002, 0.063, 0.087, BodyPart.CHEST, Wear.SHIRT),
    (THORAX, 0.005, 0.000, 0.063, 0.090, BodyPart.CHEST, Wear.SHIRT),
    (THORAX, 0.035, -0.003, 0.057, 0.096, BodyPart.CHEST, Wear.SHIRT),
    (THORAX, 0.064, -0.006, 0.045, 0.106, None, Wear.SHIRT),
    (THORAX, 0.080, -0.007, 0.037, 0.088, None, Wear.SHIRT),
    (THORAX, 0.092, -0.006, 0.033, 0.052, None, Wear.SHIRT),
)
_NECK: tuple[_Row, ...] = (
    (THORAX, 0.070, -0.004, 0.034, 0.040, None, Wear.SKIN),
    (THORAX, 0.088, -0.003, 0.032, 0.036, None, Wear.SKIN),
    (NECK, 0.020, 0.002, 0.031, 0.031, None, Wear.SKIN),
    (NECK, 0.050, 0.005, 0.032, 0.031, None, Wear.SKIN),
    (HEAD, 0.010, -0.004, 0.035, 0.034, None, Wear.SKIN),
)
_HEAD: tuple[_Row, ...] = (
    (HEAD, -0.024, 0.036, 0.013, 0.016, BodyPart.HEAD, Wear.SKIN),
    (HEAD, -0.016, 0.030, 0.025, 0.027, BodyPart.HEAD, Wear.SKIN),
    (HEAD, 0.000, 0.017, 0.042, 0.036, BodyPart.HEAD, Wear.SKIN),
    (HEAD, 0.020, 0.003, 0.056, 0.042, BodyPart.HEAD, Wear.SKIN),
    (HEAD, 0.042, -0.002, 0.061, 0.045, BodyPart.HEAD, Wear.SKIN),
    (HEAD, 0.062, -0.004, 0.061, 0.0455, BodyPart.HEAD, Wear.SKIN),
    (HEAD, 0.080, -0.006, 0.055, 0.042, BodyPart.HEAD, Wear.SKIN),
    (HEAD, 0.095, -0.008, 0.041, 0.033, BodyPart.HEAD, Wear.SKIN),
    (HEAD, 0.1035, -0.009, 0.022, 0.019, BodyPart.HEAD, Wear.SKIN),
    (HEAD, 0.106, -0.009, 0.006, 0.006, BodyPart.HEAD, Wear.SKIN),
)

# chain, segment name, height, forward, outward, half depth, half width, part, wear
_LimbRow = tuple[Chain, str, float, float, float, float, float, "BodyPart | None", Wear]
_LEG: tuple[_LimbRow, ...] = (
    (Chain.THIGH, "thigh", 0.030, -0.004, 0.006, 0.040, 0.034, BodyPart.PELVIS, Wear.SHORTS),
    (Chain.THIGH, "thigh", 0.008, -0.006, 0.004, 0.056, 0.042, BodyPart.PELVIS, Wear.SHORTS),
    (Chain.THIGH, "thigh", -0.025, -0.004, 0.001, 0.058, 0.046, BodyPart.THIGH, Wear.SHORTS),
    (Chain.THIGH, "thigh", -0.070, 0.001, 0.001, 0.053, 0.047, BodyPart.THIGH, Wear.SHORTS),
    (Chain.THIGH, "thigh", -0.115, 0.003, 0.001, 0.049, 0.0455, BodyPart.THIGH, Wear.SHORTS),
    (Chain.THIGH, "thigh", -0.155, 0.004, 0.000, 0.0435, 0.041, BodyPart.THIGH, Wear.SKIN),
    (Chain.THIGH, "thigh", -0.200, 0.003, 0.000, 0.037, 0.035, BodyPart.THIGH, Wear.SKIN),
    (Chain.THIGH, "thigh", -0.232, 0.002, 0.000, 0.0345, 0.0325, BodyPart.KNEE, Wear.SKIN),
    (Chain.THIGH, "thigh", -0.250, 0.001, 0.000, 0.030, 0.030, BodyPart.KNEE, Wear.SKIN),
    (Chain.THIGH, "thigh", -0.266, 0.000, 0.000, 0.020, 0.021, BodyPart.KNEE, Wear.SKIN),
    (Chain.SHANK, "shank", 0.018, -0.001, 0.000, 0.024, 0.026, BodyPart.KNEE, Wear.SKIN),
    (Chain.SHANK, "shank", 0.000, 0.000, 0.000, 0.0325, 0.031, BodyPart.KNEE, Wear.SKIN),
    (Chain.SHANK, "shank", -0.030, -0.001, 0.000, 0.0325, 0.031, BodyPart.KNEE, Wear.SKIN),
    (Chain.SHANK, "shank", -0.065, -0.007, 0.001, 0.0345, 0.033, BodyPart.SHIN, Wear.SKIN),
    (Chain.SHANK, "shank", -0.100, -0.008, 0.001, 0.0325, 0.0315, BodyPart.SHIN, Wear.SKIN),
    (Chain.SHANK, "shank", -0.145, -0.006, 0.000, 0.0265, 0.0245, BodyPart.SHIN, Wear.SKIN),
    (Chain.SHANK, "shank", -0.190, -0.004, 0.000, 0.0205, 0.019, BodyPart.SHIN, Wear.SKIN),
    (Chain.SHANK, "shank", -0.225, -0.003, 0.000, 0.0185, 0.0175, BodyPart.SHIN, Wear.SKIN),
    (Chain.SHANK, "shank", -0.246, -0.003, 0.000, 0.0195, 0.019, BodyPart.SHIN, Wear.SKIN),
    (Chain.SHANK, "shank", -0.256, -0.003, 0.000, 0.015, 0.014, None, Wear.SKIN),
)
_ARM: tuple[_LimbRow, ...] = (
    (Chain.UPPER_ARM, "upper arm", 0.019, -0.003, -0.010, 0.016, 0.014, BodyPart.UPPER_ARM, Wear.SHIRT),
    (Chain.UPPER_ARM, "upper arm", 0.006, -0.002, -0.003, 0.031, 0.026, BodyPart.UPPER_ARM, Wear.SHIRT),
    (Chain.UPPER_ARM, "upper arm", -0.015, -0.002, 0.000, 0.035, 0.0295, BodyPart.UPPER_ARM, Wear.SHIRT),
    (Chain.UPPER_ARM, "upper arm", -0.055, -0.001, 0.000, 0.033, 0.029, BodyPart.UPPER_ARM, Wear.SHIRT),
    (Chain.UPPER_ARM, "upper arm", -0.095, 0.001, 0.000, 0.031, 0.0275, BodyPart.UPPER_ARM, Wear.SHIRT),
    (Chain.UPPER_ARM, "upper arm", -0.130, 0.001, 0.000, 0.0255, 0.024, BodyPart.UPPER_ARM, Wear.SKIN),
    (Chain.UPPER_ARM, "upper arm", -0.170, 0.000, 0.000, 0.0225, 0.0225, BodyPart.FOREARM, Wear.SKIN),
    (Chain.UPPER_ARM, "upper arm", -0.188, 0.000, 0.000, 0.021, 0.0215, BodyPart.FOREARM, Wear.SKIN),
    (Chain.UPPER_ARM, "upper arm", -0.201, 0.000, 0.000, 0.013, 0.014, BodyPart.FOREARM, Wear.SKIN),
    (Chain.FOREARM, "forearm", 0.014, 0.000, 0.000, 0.015, 0.016, BodyPart.FOREARM, Wear.SKIN),
    (Chain.FOREARM, "forearm", 0.000, 0.000, 0.000, 0.0225, 0.0225, BodyPart.FOREARM, Wear.SKIN),
    (Chain.FOREARM, "forearm", -0.035, 0.001, 0.000, 0.0245, 0.0235, BodyPart.FOREARM, Wear.SKIN),
    (Chain.FOREARM, "forearm", -0.075, 0.001, 0.000, 0.0215, 0.0195, BodyPart.FOREARM, Wear.SKIN),
    (Chain.FOREARM, "forearm", -0.115, 0.000, 0.000, 0.0175, 0.0145, BodyPart.FOREARM, Wear.SKIN),
    (Chain.FOREARM, "forearm", -0.146, 0.000, 0.000, 0.0165, 0.0125, BodyPart.FOREARM, Wear.SKIN),
    (Chain.HAND, "hand", 0.006, 0.000, 0.000, 0.0155, 0.0115, BodyPart.HAND, Wear.SKIN),
    (Chain.HAND, "hand", -0.018, 0.001, 0.000, 0.0225, 0.0125, BodyPart.HAND, Wear.SKIN),
    (Chain.HAND, "hand", -0.050, 0.001, -0.001, 0.0245, 0.0115, BodyPart.HAND, Wear.SKIN),
    (Chain.HAND, "hand", -0.080, -0.001, -0.003, 0.0205, 0.0090, BodyPart.HAND, Wear.SKIN),
    (Chain.HAND, "hand", -0.100, -0.002, -0.006, 0.0130, 0.0075, BodyPart.HAND, Wear.SKIN),
    (Chain.HAND, "hand", -0.108, -0.002, -0.007, 0.0060, 0.0050, BodyPart.HAND, Wear.SKIN),
    (Chain.THUMB, "hand", -0.014, 0.014, -0.002, 0.0080, 0.0085, None, Wear.SKIN),
    (Chain.THUMB, "hand", -0.034, 0.026, -0.006, 0.0080, 0.0080, None, Wear.SKIN),
    (Chain.THUMB, "hand", -0.054, 0.032, -0.010, 0.0070, 0.0070, None, Wear.SKIN),
    (Chain.THUMB, "hand", -0.063, 0.033, -0.012, 0.0030, 0.0030, None, Wear.SKIN),
)
# forward, height of the centre, outward, half height, half width
_SOLE: tuple[tuple[float, float, float, float, float], ...] = (
    (-0.0420, -0.0235, 0.000, 0.0075, 0.0100),
    (-0.0350, -0.0210, 0.000, 0.0180, 0.0170),
    (-0.0180, -0.0150, 0.000, 0.0240, 0.0195),
    (0.0080, -0.0140, 0.001, 0.0250, 0.0195),
    (0.0350, -0.0215, 0.001, 0.0175, 0.0220),
    (0.0650, -0.0265, 0.002, 0.0125, 0.0270),
    (0.0880, -0.0290, 0.003, 0.0100, 0.0275),
    (0.1020, -0.0300, 0.001, 0.0090, 0.0220),
    (0.1100, -0.0310, -0.001, 0.0050, 0.0130),
)
# The sole's fixed points: heel, ball of the little toe, ball of the big toe, tip of the toes.
SOLE_POINTS = ((-0.030, 0.0), (0.075, 0.022), (0.075, -0.022), (0.105, 0.0))


def _middle(chain: Chain, rows: tuple[_Row, ...]) -> list[Ring]:
    return [
        Ring(chain, Side.MIDDLE, seg, (x, y, 0.0), (depth, 0.0, 0.0), (0.0, 0.0, width), part, wear)
        for seg, y, x, depth, width, part, wear in rows
    ]


def _limb_rings(side: Side) -> list[Ring]:
    out = 1.0 if side is Side.OPERATED else -1.0
    rings = [
        Ring(chain, side, limb(side, name), (x, y, out * z), (depth, 0.0, 0.0), (0.0, 0.0, width), part, wear)
        for chain, name, y, x, z, depth, width, part, wear in (*_LEG, *_ARM)
    ]
    rings += [
        Ring(
            Chain.FOOT,
            side,
            limb(side, "foot"),
            (x, y, out * z),
            (0.0, high, 0.0),
            (0.0, 0.0, width),
            BodyPart.HEEL if x < 0 else BodyPart.TOES if x > 0.06 else BodyPart.FOOT,
            Wear.SKIN,
        )
        for x, y, z, high, width in _SOLE
    ]
    return rings


def _all_rings() -> tuple[Ring, ...]:
    rings = _middle(Chain.TRUNK, _TRUNK) + _middle(Chain.NECK, _NECK) + _middle(Chain.HEAD, _HEAD)
    for side in SIDES:
        rings += _limb_rings(side)
    return tuple(rings)


RINGS = _all_rings()
OWNERS: NDArray[np.int64] = np.array([ring.segment for ring in RINGS])
CENTRES: Array = np.array([ring.centre for ring in RINGS])
FIRST: Array = np.array([ring.first for ring in RINGS])
SECOND: Array = np.array([ring.second for ring in RINGS])


@dataclass(frozen=True)
class Skin:
    """All rings in space: centres and half-axes, each of shape (rings, 3)."""

    centres: Array
    first: Array
    second: Array

    def lowest(self) -> Array:
        """Return the lowest point of each ring."""
        rise = np.sqrt(self.first[:, 1] ** 2 + self.second[:, 1] ** 2) + 1e-12
        down = (
            self.first * (self.first[:, 1] / rise)[:, None]
            + self.second * (self.second[:, 1] / rise)[:, None]
        )
        result: Array = self.centres - down
        return result


def skin(placed: Placed) -> Skin:
    """Return the rings of a placed body."""
    turned = placed.rotations[OWNERS]
    first = np.einsum("nij,nj->ni", turned, FIRST)
    second = np.einsum("nij,nj->ni", turned, SECOND)
    return Skin(placed.points(OWNERS, CENTRES), first, second)


@cache
def rings_of(part: BodyPart, side: Side) -> NDArray[np.int64]:
    """Return the indices of the rings by which a part rests; the thigh's root counts to the pelvis.

    One array serves all who ask, so nobody may change it.
    """
    found = [
        index
        for index, ring in enumerate(RINGS)
        if ring.part is part and (not part.paired or ring.side is side)
    ]
    rows = np.array(found, dtype=np.int64)
    rows.flags.writeable = False
    return rows
