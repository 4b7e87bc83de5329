"""Says how high each thing stands that can carry a body, and which points stay while a part rests on it."""

from __future__ import annotations

from functools import cache

from generator.body import segments as size
from generator.body.pose import BodyPart, Ground, Rest, Setting, Side
from generator.body.skeleton import HEAD, PELVIS, THORAX, limb
from generator.body.surface import SOLE_POINTS


def level(ground: Ground, setting: Setting) -> float:
    """Return the height of a ground above the floor (or bed) that the pose is on."""
    heights = {
        Ground.SEAT: setting.seat,
        Ground.STEP: setting.step,
        Ground.SECOND_STEP: 2 * setting.step,
        Ground.WORKTOP: setting.worktop,
        Ground.PILLOW: setting.pillow,
        Ground.TOWEL: setting.towel,
        Ground.GRIP: setting.grip,
        Ground.ARMREST: setting.seat + setting.armrest,
        Ground.BANISTER: setting.banister,
    }
    return heights.get(ground, 0.0)


_SOLES = (BodyPart.FOOT, BodyPart.HEEL, BodyPart.TOES)


def stood(rests: tuple[Rest, ...], setting: Setting) -> float:
    """Return the height that the lower foot stands on; a walking aid stands there too."""
    return min((level(rest.on, setting) for rest in rests if rest.part in _SOLES), default=0.0)


@cache
def tracked(part: BodyPart, side: Side) -> tuple[tuple[int, tuple[float, float, float]], ...]:
    """Return the points that stay where they are while a part is planted."""
    foot, shank = limb(side, "foot"), limb(side, "shank")
    sole = tuple((foot, (x, -size.ANKLE_HEIGHT, z)) for x, z in SOLE_POINTS)
    return {
        BodyPart.FOOT: sole[:3],
        BodyPart.HEEL: sole[:1],
        BodyPart.TOES: sole[1:3],
        BodyPart.SHIN: ((shank, (0.0, 0.0, 0.0)), (shank, (0.0, -size.SHANK, 0.0))),
        BodyPart.KNEE: ((shank, (0.0, 0.0, 0.0)),),
        BodyPart.HAND: ((limb(side, "hand"), (0.0, -0.05, 0.0)),),
        BodyPart.FOREARM: ((limb(side, "forearm"), (0.0, 0.0, 0.0)),),
        BodyPart.CHEST: ((THORAX, (-0.05, 0.03, 0.0)),),
        BodyPart.PELVIS: ((PELVIS, (0.0, 0.0, 0.0)),),
        BodyPart.HEAD: ((HEAD, (0.0, 0.05, 0.0)),),
    }.get(part, ())
