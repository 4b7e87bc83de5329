"""Says what an editor can state about a pose: posture, angles, what rests where; frozen values only."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from generator.catalogue.pose import BodyPart, Ground, Side
from generator.catalogue.terms import Joint, Movement, Posture
from generator.problems import NOWHERE, Place

__all__ = ["SIDES", "AngleKey", "BodyPart", "Ground", "Pose", "Rest", "Setting", "Side"]

SIDES = (Side.OPERATED, Side.OTHER)


@dataclass(frozen=True)
class Rest:
    """A part of the body that is supported: which, of which side, on what. MIDDLE for what is not paired."""

    part: BodyPart
    side: Side = Side.MIDDLE
    on: Ground = Ground.FLOOR


AngleKey = tuple[Side, Joint, Movement]


@dataclass(frozen=True)
class Setting:
    """Sizes of what stands around, in statures: at 170 cm a seat of 45, a step of 15, a worktop of 90 cm.

    armrest: above the seat. grip: of a walking aid. banister: above the lowest floor.
    """

    seat: float = 0.265
    step: float = 0.088
    worktop: float = 0.53
    pillow: float = 0.05
    towel: float = 0.06
    grip: float = 0.50
    armrest: float = 0.13
    banister: float = 0.58


@dataclass(frozen=True, kw_only=True)
class Pose:
    """One pose as typed.

    posture: None where the pose is `like` another and keeps its posture.
    angles: degrees, clinical neutral-zero; spine side bending and rotation are towards the key's side.
    rests_on: what is supported; None keeps the posture's own, or that of the pose it is like.
    slides: resting parts that may travel on their ground between poses, such as a heel on a mat.
    like: name of another pose of the same movement whose angles and rests hold where this one is silent.
    on_side: the side lain on in side-lying and side support; the operated leg is on top by default.
    """

    name: str
    posture: Posture | None = None
    angles: Mapping[AngleKey, float] = field(default_factory=dict)
    rests_on: tuple[Rest, ...] | None = None
    slides: tuple[tuple[BodyPart, Side], ...] = ()
    like: str | None = None
    on_side: Side = Side.OTHER
    place: Place = field(default=NOWHERE, compare=False, repr=False)
    places: Mapping[AngleKey, Place] = field(default_factory=dict, compare=False, repr=False)

    def at(self, key: AngleKey) -> Place:
        """Return where an angle is typed, else where the pose is."""
        return self.places.get(key, self.place)
