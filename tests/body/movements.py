"""Movements that several tests use, as an editor would type them."""

from __future__ import annotations

from generator.body.pose import AngleKey, BodyPart, Ground, Pose, Rest, Side
from generator.catalogue.terms import Joint, Movement, Posture

OPERATED, OTHER, MIDDLE = Side.OPERATED, Side.OTHER, Side.MIDDLE
BOTH_FEET = (Rest(BodyPart.FOOT, OPERATED), Rest(BodyPart.FOOT, OTHER))
BOTH_HANDS = (Rest(BodyPart.HAND, OPERATED), Rest(BodyPart.HAND, OTHER))
SHOULDERS = (Rest(BodyPart.CHEST), Rest(BodyPart.HEAD, on=Ground.PILLOW), *BOTH_HANDS)
BACK = (Rest(BodyPart.PELVIS), *SHOULDERS)
WORKTOP = (Rest(BodyPart.HAND, OPERATED, Ground.WORKTOP), Rest(BodyPart.HAND, OTHER, Ground.WORKTOP))


def hip(side: Side = OPERATED, **degrees: float) -> dict[AngleKey, float]:
    """Return hip angles by the movement's name."""
    return {(side, Joint.HIP, Movement[name.upper()]): value for name, value in degrees.items()}


def knee(flexion: float, side: Side = OPERATED) -> dict[AngleKey, float]:
    """Return a knee's flexion."""
    return {(side, Joint.KNEE, Movement.FLEXION): flexion}


BRIDGE = (
    Pose(
        name="start",
        posture=Posture.ON_BACK,
        angles=hip(flexion=48) | hip(OTHER, flexion=48),
        rests_on=(*BACK, *BOTH_FEET),
    ),
    Pose(
        name="finish",
        like="start",
        angles=hip(flexion=0) | hip(OTHER, flexion=0),
        rests_on=(*SHOULDERS, *BOTH_FEET),
    ),
)
SIDE_LYING = (
    Pose(
        name="start",
        posture=Posture.ON_SIDE,
        angles=hip(OTHER, flexion=45) | knee(80, OTHER) | knee(0) | hip(flexion=0),
    ),
    Pose(name="finish", like="start", angles=hip(abduction=35)),
)
SQUAT = (
    Pose(name="start", posture=Posture.STANDING, rests_on=(*BOTH_FEET, *WORKTOP)),
    Pose(
        name="finish",
        like="start",
        angles=knee(45) | knee(45, OTHER) | hip(flexion=42) | hip(OTHER, flexion=42),
    ),
)
SIT_TO_STAND = (
    Pose(name="start", posture=Posture.SITTING),
    Pose(name="finish", posture=Posture.STANDING),
)
STEP_UP = (
    Pose(
        name="start",
        posture=Posture.STANDING,
        angles=hip(flexion=50),
        rests_on=(Rest(BodyPart.FOOT, OPERATED, Ground.STEP), Rest(BodyPart.FOOT, OTHER)),
    ),
    Pose(
        name="finish",
        posture=Posture.STANDING,
        angles=hip(flexion=2) | knee(2),
        rests_on=(Rest(BodyPart.FOOT, OPERATED, Ground.STEP), Rest(BodyPart.FOOT, OTHER, Ground.STEP)),
    ),
)
KNEE_STRAIGHTENING = (
    Pose(name="start", posture=Posture.SITTING),
    Pose(
        name="finish",
        like="start",
        angles=knee(3),
        rests_on=(
            Rest(BodyPart.PELVIS, on=Ground.SEAT),
            Rest(BodyPart.FOOT, OTHER),
            Rest(BodyPart.HAND, OPERATED, Ground.THIGH),
            Rest(BodyPart.HAND, OTHER, Ground.THIGH),
        ),
    ),
)
MOVEMENTS = {
    "bridge": BRIDGE,
    "side-lying": SIDE_LYING,
    "squat": SQUAT,
    "sit to stand": SIT_TO_STAND,
    "step up": STEP_UP,
    "knee straightening": KNEE_STRAIGHTENING,
}
