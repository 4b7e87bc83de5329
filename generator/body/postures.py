"""Gives each posture its starting point: how the pelvis lies in space, usual angles, what rests on what.

Usual angles are common practice, no source. They only fill in what an editor leaves out.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.body.pose import SIDES, AngleKey, BodyPart, Ground, Rest, Side
from generator.body.skeleton import Array
from generator.catalogue.terms import Joint, Movement, Posture

J, M, P = Joint, Movement, Posture
Angles = dict[AngleKey, float]


@dataclass(frozen=True)
class Base:
    """A posture's defaults: pelvis axes in space (columns X, Y, Z), angles in degrees, rests, flat feet.

    balanced: the body's middle stays over the feet. square: the pelvis does not roll forwards or backwards.
    firm: usual angles that give way last.
    """

    turned: Array
    angles: Angles
    rests: tuple[Rest, ...]
    flat_feet: bool = True
    balanced: bool = False
    square: bool = False
    firm: tuple[AngleKey, ...] = ()


def _both(joint: Joint, movement: Movement, degrees: float) -> Angles:
    return {(side, joint, movement): degrees for side in SIDES}


def _one(side: Side, joint: Joint, **degrees: float) -> Angles:
    return {(side, joint, M[name.upper()]): value for name, value in degrees.items()}


def _pair(part: BodyPart, on: Ground = Ground.FLOOR) -> tuple[Rest, ...]:
    return tuple(Rest(part, side, on) for side in SIDES)


def _columns(x: tuple[int, int, int], y: tuple[int, int, int], z: tuple[int, int, int]) -> Array:
    return np.array([x, y, z], dtype=float).T


_UPRIGHT = _columns((1, 0, 0), (0, 1, 0), (0, 0, 1))
_FACE_UP = _columns((0, 1, 0), (-1, 0, 0), (0, 0, 1))
_FACE_DOWN = _columns((0, -1, 0), (1, 0, 0), (0, 0, 1))
_OPERATED_UP = _columns((0, 0, -1), (-1, 0, 0), (0, 1, 0))
_OPERATED_DOWN = _columns((0, 0, 1), (-1, 0, 0), (0, -1, 0))

_HANGING = _both(J.SHOULDER, M.ABDUCTION, 9) | _both(J.SHOULDER, M.FLEXION, 4) | _both(J.ELBOW, M.FLEXION, 14)
_BESIDE = (
    _both(J.SHOULDER, M.ABDUCTION, 20)
    | _both(J.SHOULDER, M.FLEXION, -6)
    | _both(J.ELBOW, M.FLEXION, 12)
    | _both(J.FOREARM, M.PRONATION, 75)
)
_BACK_RESTS = (
    Rest(BodyPart.PELVIS),
    Rest(BodyPart.CHEST),
    Rest(BodyPart.HEAD, on=Ground.PILLOW),
    *_pair(BodyPart.HAND),
)


def _standing() -> Base:
    return Base(_UPRIGHT, _HANGING, _pair(BodyPart.FOOT), balanced=True)


def _sitting() -> Base:
    angles = _both(J.HIP, M.FLEXION, 84) | _both(J.KNEE, M.FLEXION, 84) | _both(J.HIP, M.ABDUCTION, 6)
    arms = (
        _both(J.SHOULDER, M.FLEXION, 14) | _both(J.ELBOW, M.FLEXION, 50) | _both(J.SHOULDER, M.ABDUCTION, 8)
    )
    arms |= _both(J.FOREARM, M.PRONATION, 60) | _both(J.SHOULDER, M.INTERNAL_ROTATION, 12)
    rests = (
        Rest(BodyPart.PELVIS, on=Ground.SEAT),
        *_pair(BodyPart.FOOT),
        *_pair(BodyPart.HAND, Ground.THIGH),
    )
    return Base(_UPRIGHT, angles | arms, rests)


def _long_sitting() -> Base:
    angles = (
        _both(J.HIP, M.FLEXION, 78) | _both(J.SHOULDER, M.FLEXION, -32) | _both(J.SHOULDER, M.ABDUCTION, 10)
    )
    angles |= _both(J.FOREARM, M.PRONATION, 60) | _both(J.WRIST, M.FLEXION, -60)
    rests = (Rest(BodyPart.PELVIS), *_pair(BodyPart.HEEL), *_pair(BodyPart.HAND))
    return Base(_UPRIGHT, angles, rests, flat_feet=False)


def _on_back() -> Base:
    # A straight leg lies level: its hip does not stretch because the buttock is thicker than the heel.
    angles = _BESIDE | _both(J.HIP, M.ABDUCTION, 5) | _both(J.HIP, M.FLEXION, 0)
    firm = tuple((side, J.HIP, M.FLEXION) for side in SIDES)
    return Base(_FACE_UP, angles, (*_BACK_RESTS, *_pair(BodyPart.HEEL)), firm=firm)


def _on_front() -> Base:
    arms = (
        _both(J.SHOULDER, M.FLEXION, 150) | _both(J.SHOULDER, M.ABDUCTION, 25) | _both(J.ELBOW, M.FLEXION, 85)
    )
    arms |= _both(J.SHOULDER, M.INTERNAL_ROTATION, 60)
    angles = arms | _both(J.ANKLE, M.DORSIFLEXION, -50) | _both(J.HIP, M.ABDUCTION, 4)
    rests = (
        Rest(BodyPart.PELVIS),
        Rest(BodyPart.CHEST),
        Rest(BodyPart.HEAD, on=Ground.PILLOW),
        *_pair(BodyPart.KNEE),
        *_pair(BodyPart.TOES),
    )
    return Base(_FACE_DOWN, angles, rests, flat_feet=False)


def _on_side(down: Side) -> Base:
    up = Side.OPERATED if down is Side.OTHER else Side.OTHER
    arms = _one(down, J.SHOULDER, flexion=125, abduction=0) | _one(down, J.ELBOW, flexion=125)
    arms |= _one(up, J.SHOULDER, flexion=42, abduction=-12) | _one(up, J.ELBOW, flexion=75)
    arms |= _one(up, J.SHOULDER, internal_rotation=40) | _one(up, J.FOREARM, pronation=70)
    rests = (
        Rest(BodyPart.PELVIS),
        Rest(BodyPart.HEAD, on=Ground.PILLOW),
        Rest(BodyPart.UPPER_ARM, down),
        Rest(BodyPart.SHIN, down),
        Rest(BodyPart.HAND, up),
    )
    turned = _OPERATED_UP if down is Side.OTHER else _OPERATED_DOWN
    return Base(turned, arms, rests, flat_feet=False, square=True)


def _hands_and_knees() -> Base:
    angles = _both(J.HIP, M.FLEXION, 90) | _both(J.KNEE, M.FLEXION, 90) | _both(J.ANKLE, M.DORSIFLEXION, -50)
    angles |= (
        _both(J.SHOULDER, M.FLEXION, 88) | _both(J.FOREARM, M.PRONATION, 75) | _both(J.WRIST, M.FLEXION, -80)
    )
    angles |= {(Side.MIDDLE, J.NECK, M.FLEXION): -22, **_both(J.SHOULDER, M.INTERNAL_ROTATION, 12)}
    return Base(
        _FACE_DOWN,
        angles,
        (*_pair(BodyPart.HAND), *_pair(BodyPart.KNEE), *_pair(BodyPart.TOES)),
        flat_feet=False,
    )


def _half_kneeling() -> Base:
    angles = _one(Side.OPERATED, J.HIP, flexion=88) | _one(Side.OPERATED, J.KNEE, flexion=90)
    angles |= _one(Side.OTHER, J.KNEE, flexion=90) | _one(Side.OTHER, J.ANKLE, dorsiflexion=-45)
    rests = (
        Rest(BodyPart.FOOT, Side.OPERATED),
        Rest(BodyPart.KNEE, Side.OTHER),
        Rest(BodyPart.TOES, Side.OTHER),
    )
    return Base(_UPRIGHT, _HANGING | angles, rests)


def _side_support(down: Side) -> Base:
    up = Side.OPERATED if down is Side.OTHER else Side.OTHER
    arms = _one(down, J.SHOULDER, abduction=72) | _one(down, J.ELBOW, flexion=90)
    arms |= _one(up, J.SHOULDER, abduction=10) | _one(up, J.ELBOW, flexion=20)
    rests = (Rest(BodyPart.FOREARM, down), Rest(BodyPart.FOOT, down), Rest(BodyPart.HAND, up, Ground.HIP))
    turned = _OPERATED_UP if down is Side.OTHER else _OPERATED_DOWN
    out = 1.0 if down is Side.OTHER else -1.0
    tilt = np.radians(18.0) * out
    lean = np.array([[1, 0, 0], [0, np.cos(tilt), -np.sin(tilt)], [0, np.sin(tilt), np.cos(tilt)]])
    firm = ((down, J.SHOULDER, M.ABDUCTION), (down, J.SHOULDER, M.FLEXION), (down, J.ELBOW, M.FLEXION))
    return Base(turned @ lean, arms, rests, flat_feet=False, square=True, firm=firm)


def base(posture: Posture, on_side: Side = Side.OTHER) -> Base:
    """Return a posture's defaults; `on_side` is the side lain on where the posture lies on a side."""
    if posture is P.ON_SIDE:
        return _on_side(on_side)
    if posture is P.SIDE_SUPPORT:
        return _side_support(on_side)
    return {
        P.STANDING: _standing,
        P.SITTING: _sitting,
        P.LONG_SITTING: _long_sitting,
        P.ON_BACK: _on_back,
        P.ON_FRONT: _on_front,
        P.HANDS_AND_KNEES: _hands_and_knees,
        P.HALF_KNEELING: _half_kneeling,
    }[posture]()


# Usual angles of an arm whose hand holds something: shoulder flexion and abduction, elbow flexion, pronation.
_REACHES = {
    Ground.WORKTOP: (16, 10, 48, 72),
    Ground.GRIP: (18, 12, 26, 0),
    Ground.ARMREST: (-14, 16, 68, 60),
    Ground.BANISTER: (28, 14, 52, 40),
}


def reaching(rests: tuple[Rest, ...]) -> Angles:
    """Return the usual angles of arms whose hands hold a worktop, armrest, banister or walking aid."""
    angles: Angles = {}
    for rest in rests:
        if rest.part is BodyPart.HAND and rest.on in _REACHES:
            flexion, abduction, elbow, pronation = _REACHES[rest.on]
            angles |= _one(rest.side, J.SHOULDER, flexion=flexion, abduction=abduction)
            angles |= _one(rest.side, J.ELBOW, flexion=elbow)
            if pronation:
                angles |= _one(rest.side, J.FOREARM, pronation=pronation)
    return angles
