"""Guards against typing errors: the largest published normal angle of each movement, in degrees.

Read in: AAOS, Boone & Azen 1979 (J Bone Joint Surg Am 61:756), US 38 CFR 4.71 plate II, Soucie et al. 2011
(Haemophilia 17:500). From memory are the AAOS values for hip, spine and wrist, the rotation of the back,
and shoulder adduction.
"""

from __future__ import annotations

from generator.catalogue.terms import Joint, Movement

J, M = Joint, Movement

LARGEST: dict[tuple[Joint, Movement], float] = {
    (J.HIP, M.FLEXION): 140.8,
    (J.HIP, M.EXTENSION): 30,
    (J.HIP, M.ABDUCTION): 46,
    (J.HIP, M.ADDUCTION): 30,
    (J.HIP, M.INTERNAL_ROTATION): 47,
    (J.HIP, M.EXTERNAL_ROTATION): 60,
    (J.KNEE, M.FLEXION): 152.6,
    (J.KNEE, M.EXTENSION): 5.4,
    (J.ANKLE, M.DORSIFLEXION): 24.8,
    (J.ANKLE, M.PLANTARFLEXION): 62.1,
    (J.LOWER_BACK, M.FLEXION): 80,
    (J.LOWER_BACK, M.EXTENSION): 30,
    (J.LOWER_BACK, M.SIDE_BENDING): 35,
    (J.LOWER_BACK, M.ROTATION): 45,
    (J.UPPER_BACK, M.FLEXION): 80,
    (J.UPPER_BACK, M.EXTENSION): 30,
    (J.UPPER_BACK, M.SIDE_BENDING): 35,
    (J.UPPER_BACK, M.ROTATION): 45,
    (J.NECK, M.FLEXION): 90,
    (J.NECK, M.EXTENSION): 55,
    (J.NECK, M.SIDE_BENDING): 45,
    (J.NECK, M.ROTATION): 70,
    (J.SHOULDER, M.FLEXION): 180,
    (J.SHOULDER, M.EXTENSION): 62,
    (J.SHOULDER, M.ABDUCTION): 184,
    (J.SHOULDER, M.ADDUCTION): 50,
    (J.SHOULDER, M.INTERNAL_ROTATION): 80,
    (J.SHOULDER, M.EXTERNAL_ROTATION): 104,
    (J.ELBOW, M.FLEXION): 150,
    (J.ELBOW, M.EXTENSION): 1,
    (J.FOREARM, M.PRONATION): 80,
    (J.FOREARM, M.SUPINATION): 82,
    (J.WRIST, M.FLEXION): 80,
    (J.WRIST, M.EXTENSION): 70,
}

OPPOSITE: dict[Movement, Movement] = {
    M.EXTENSION: M.FLEXION,
    M.ADDUCTION: M.ABDUCTION,
    M.EXTERNAL_ROTATION: M.INTERNAL_ROTATION,
    M.PLANTARFLEXION: M.DORSIFLEXION,
    M.SUPINATION: M.PRONATION,
}
_OTHER_WAY = {**OPPOSITE, **{there: back for back, there in OPPOSITE.items()}}


def signed(movement: Movement, degrees: float) -> tuple[Movement, float]:
    """Return the movement that names the axis and the angle about it: extension 10 is flexion -10."""
    return (OPPOSITE[movement], -degrees) if movement in OPPOSITE else (movement, degrees)


def limits(joint: Joint, movement: Movement) -> tuple[float, float]:
    """Return lowest and highest angle (degrees) of an axis named by `movement`: flexion, not extension."""
    there = LARGEST[joint, movement]
    back = LARGEST.get((joint, _OTHER_WAY[movement]), 0.0) if movement in _OTHER_WAY else there
    return -back, there


def exists(joint: Joint, movement: Movement) -> bool:
    """Return whether the joint can move that way at all."""
    return (joint, movement) in LARGEST


def excess(joint: Joint, movement: Movement, degrees: float) -> float | None:
    """Return the limit an angle oversteps, or None; a negative one is judged as the opposite movement."""
    if degrees < 0 and movement in _OTHER_WAY:
        movement, degrees = _OTHER_WAY[movement], -degrees
    limit = LARGEST.get((joint, movement), 0.0)
    return limit if abs(degrees) > limit else None
