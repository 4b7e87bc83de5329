"""Holds what an editor types for a picture: key poses by joint angles, and the things around the person.

The words are the editor's; `body.from_catalogue` makes a body of them and `steps.figures` a scene.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from generator.catalogue.base import Record
from generator.catalogue.terms import Joint, Movement, Posture


class Side(Enum):
    """The body's halves; the middle is for spine and neck. Never left or right: operated and other."""

    OPERATED = "operated"
    OTHER = "other"
    MIDDLE = "middle"


class BodyPart(Enum):
    """What can rest on something."""

    FOOT = "foot"
    HEEL = "heel"
    TOES = "toes"
    SHIN = "shin"
    KNEE = "knee"
    THIGH = "thigh"
    PELVIS = "pelvis"
    CHEST = "chest"
    HEAD = "head"
    UPPER_ARM = "upper arm"
    FOREARM = "forearm"
    HAND = "hand"

    @property
    def paired(self) -> bool:
        """Return whether the body has two of it."""
        return self not in (BodyPart.PELVIS, BodyPart.CHEST, BodyPart.HEAD)


class Ground(Enum):
    """What a part rests on or holds. The floor is whatever one lies or stands on: a mat or bed too."""

    FLOOR = "floor"
    SEAT = "seat"
    STEP = "step"
    SECOND_STEP = "second step"
    WORKTOP = "worktop"
    WALL = "wall"
    PILLOW = "pillow"
    TOWEL = "towel roll"
    GRIP = "grip"
    ARMREST = "armrest"
    BANISTER = "banister"
    HIP = "hip"
    THIGH = "thigh"
    OTHER_FOOT = "other foot"


class View(Enum):
    """Where the viewer stands. Front and side are a person's own, standing or lying on the side."""

    FRONT = "front"
    BACK = "back"
    BACK_QUARTER = "back three-quarter"
    SIDE = "side"
    THREE_QUARTER = "three-quarter"
    ABOVE = "above"


class Follow(Enum):
    """What the arrow can follow."""

    FOOT = "foot"
    KNEE = "knee"
    TOES = "toes"
    PELVIS = "pelvis"
    HIP = "hip"
    CHEST = "chest"
    HEAD = "head"
    HAND = "hand"

    @property
    def paired(self) -> bool:
        """Return whether the body has two of it."""
        return self not in (Follow.PELVIS, Follow.CHEST, Follow.HEAD)


class Towards(Enum):
    """Which way a part presses although nothing moves."""

    DOWN = "down"
    OUTWARDS = "outwards"
    INWARDS = "inwards"


class Limb(Enum):
    """What can stand out as working: limbs, and the buttocks of both sides together."""

    LEG = "leg"
    ARM = "arm"
    BUTTOCKS = "buttocks"

    @property
    def paired(self) -> bool:
        """Return whether the body has two of it."""
        return self is not Limb.BUTTOCKS


class Limit(Enum):
    """Between which parts of the legs a thing lies, or to which it is fixed."""

    THIGHS = "thighs"
    KNEES = "knees"
    ANKLES = "ankles"
    FEET = "feet"


class Where(Enum):
    """On which side of the person a thing stands."""

    FRONT = "front"
    BEHIND = "behind"
    OPERATED = "operated side"
    OTHER = "other side"


class Detail(Enum):
    """What a picture shows besides, so that a small thing is seen."""

    PELVIS_LINE = "pelvis line"
    BUTTOCKS = "buttocks from behind"


class Thing(Enum):
    """What can stand, lie or be worn around a person in a picture."""

    FLOOR = "floor"
    MAT = "mat"
    BED = "bed"
    CHAIR = "chair"
    BIKE = "bike"
    CAR_SEAT = "car-seat"
    TOILET = "toilet"
    SCALES = "scales"
    WORKTOP = "worktop"
    WALL = "wall"
    STEP = "step"
    BANISTER = "banister"
    BAND = "band"
    PILLOW = "pillow"
    TOWEL_ROLL = "towel-roll"
    STICK = "stick"
    CRUTCHES = "crutches"
    WALKING_FRAME = "walking-frame"
    STRAP = "strap"
    REACHER = "reacher"
    ANKLE_WEIGHT = "ankle-weight"
    HELPER_HANDS = "helper-hands"
    COLD_PACK = "cold-pack"
    STEERING_WHEEL = "steering-wheel"


@dataclass(frozen=True, kw_only=True)
class AngleSpec(Record):
    """One joint angle, in degrees from the neutral position; may be negative."""

    side: Side
    joint: Joint
    movement: Movement
    degrees: float


@dataclass(frozen=True, kw_only=True)
class RestSpec(Record):
    """A part that is supported, of one side or both, and on what; the posture's own ground where None."""

    part: BodyPart
    sides: tuple[Side, ...]
    on: Ground | None = None


@dataclass(frozen=True, kw_only=True)
class PoseSpec(Record):
    """One key pose as typed.

    posture: None where it is the exercise's own, or that of the pose it is like. rests_on: None keeps what
    rests in the posture, or in that pose; an empty list rests nothing. on_side: the side lain on.
    """

    id: str
    posture: Posture | None = None
    like: str | None = None
    angles: tuple[AngleSpec, ...] = ()
    rests_on: tuple[RestSpec, ...] | None = None
    slides: tuple[RestSpec, ...] = ()
    on_side: Side | None = None


@dataclass(frozen=True, kw_only=True)
class ThingSpec(Record):
    """A thing in the picture, with what is stated about it.

    height: in cm, for a person of 170 cm. anchor: where a band is fixed, in cm from the middle of the feet:
    forward, up, towards the operated side. side: the leg or hand it belongs to. under: a pillow under both
    legs. back, arms: of a chair. flight: more steps lead on up. rising: a banister that rises with them.
    edge: one sits across, on the edge: of a car's seat in the first pose, of a bed in the last.
    """

    thing: Thing
    where: Where | None = None
    on_legs: Limit | None = None
    under: Limit | None = None
    side: Side | None = None
    anchor: tuple[float, ...] | None = None
    height: float | None = None
    back: bool = True
    arms: bool = False
    flight: bool = False
    rising: bool = False
    edge: bool = False


@dataclass(frozen=True, kw_only=True)
class FigureSpec(Record):
    """What a picture shows beside the poses.

    working: limbs that stand out; None for the operated leg. view: None lets the movement choose.
    arrow: what it follows; None lets the movement choose. no_arrow: whether there is none.
    press: parts that press in the last pose although nothing moves, and which way. detail: what is shown
    besides.
    """

    things: tuple[ThingSpec, ...] = ()
    working: tuple[tuple[Side, Limb], ...] | None = None
    view: View | None = None
    arrow: tuple[Side, Follow] | None = None
    no_arrow: bool = False
    press: tuple[tuple[Side, Follow, Towards], ...] = ()
    detail: Detail | None = None
