"""Makes bodies of what an editor typed: poses, sizes of the things around, the settled movement.

Movements are settled once for the same typed poses; an exercise may be asked for many times in a build.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

from generator.body.motion import FRAMES, Motion, move
from generator.body.pose import BodyPart, Ground, Pose, Rest, Setting, Side
from generator.body.postures import base
from generator.body.rules import typed
from generator.catalogue.daily_life import DailyLife
from generator.catalogue.exercise import Exercise, LegWork, Variation
from generator.catalogue.pose import FigureSpec, PoseSpec, RestSpec, Thing
from generator.catalogue.terms import Posture
from generator.catalogue.values import Catalogue
from generator.problems import Place

STATURE_CM = 170.0
_SIZES = {
    Thing.CHAIR: "seat",
    Thing.BIKE: "seat",
    Thing.CAR_SEAT: "seat",
    Thing.BED: "seat",
    Thing.TOILET: "seat",
    Thing.STEP: "step",
    Thing.WORKTOP: "worktop",
    Thing.PILLOW: "pillow",
    Thing.TOWEL_ROLL: "towel",
    Thing.STICK: "grip",
    Thing.CRUTCHES: "grip",
    Thing.WALKING_FRAME: "grip",
    Thing.BANISTER: "banister",
}


@dataclass(frozen=True)
class Posed:
    """Something that has key poses: an exercise, a variation (``exercise/variation``) or a daily-life item.

    place: of its poses. lain_on: the side lain on where a pose does not say.
    """

    id: str
    owner: Exercise | Variation | DailyLife
    posture: Posture
    operated_leg: LegWork
    other_leg: LegWork
    place: Place

    @property
    def specs(self) -> tuple[PoseSpec, ...]:
        """Return the key poses as typed."""
        return self.owner.poses

    @property
    def figure(self) -> FigureSpec:
        """Return what its picture shows beside the poses."""
        return self.owner.figure or FigureSpec()

    @property
    def lain_on(self) -> Side:
        """Return the side lain on where a pose does not say: the operated leg is on top by default."""
        only_operated = self.operated_leg.lain_on and not self.other_leg.lain_on
        return Side.OPERATED if only_operated else Side.OTHER


def posed_items(catalogue: Catalogue) -> Iterator[Posed]:
    """Yield everything that has poses of its own, in the order of the catalogue."""
    for exercise in catalogue.exercises.values():
        legs = (exercise.operated_leg, exercise.other_leg)
        yield Posed(exercise.id, exercise, exercise.posture, *legs, exercise.at("poses"))
        for variation in exercise.variations.values():
            own = (
                variation.operated_leg or exercise.operated_leg,
                variation.other_leg or exercise.other_leg,
            )
            name = f"{exercise.id}/{variation.id}"
            yield Posed(name, variation, exercise.posture, *own, variation.at("poses"))
    for item in catalogue.daily_life.values():
        legs = (item.operated_leg, item.other_leg)
        yield Posed(item.id, item, item.posture, *legs, item.at("poses"))


def poses_of(item: Posed) -> tuple[Pose, ...]:
    """Return the key poses as a body takes them: postures filled in, both sides written out."""
    return tuple(_pose(spec, item) for spec in item.specs)


def _pose(spec: PoseSpec, item: Posed) -> Pose:
    posture = spec.posture or (None if spec.like else item.posture)
    on_side = spec.on_side or item.lain_on
    usual = base(posture or item.posture, on_side).rests
    rests = None
    if spec.rests_on is not None:
        rests = tuple(rest for typed in spec.rests_on for rest in _rests(typed, usual))
    return Pose(
        name=spec.id,
        posture=posture,
        angles={(angle.side, angle.joint, angle.movement): angle.degrees for angle in spec.angles},
        rests_on=rests,
        slides=tuple((typed.part, side) for typed in spec.slides for side in typed.sides),
        like=spec.like,
        on_side=on_side,
        place=spec.place,
        places={(angle.side, angle.joint, angle.movement): angle.place for angle in spec.angles},
    )


def _rests(typed: RestSpec, usual: tuple[Rest, ...]) -> Iterator[Rest]:
    """Yield the rests meant; a part whose ground is not typed rests where it does in the posture.

    A head that is said to rest and on no pillow lies on the ground.
    """
    for side in typed.sides:
        known = (rest.on for rest in usual if (rest.part, rest.side) == (typed.part, side))
        ground = Ground.FLOOR if typed.part is BodyPart.HEAD else next(known, Ground.FLOOR)
        yield Rest(typed.part, side, typed.on or ground)


def setting_of(figure: FigureSpec) -> Setting:
    """Return the sizes of the things around, in statures; usual ones where no height is typed."""
    sizes = {
        _SIZES[thing.thing]: thing.height / STATURE_CM
        for thing in figure.things
        if thing.height is not None and thing.thing in _SIZES
    }
    return replace(Setting(), **sizes)


def can_be_settled(item: Posed) -> bool:
    """Return whether there are poses, and nothing wrong with them that forbids to settle them."""
    return bool(item.specs) and not typed(poses_of(item))


def motion_of(item: Posed) -> Motion:
    """Return the settled movement; the poses must be free of errors (`can_be_settled`)."""
    poses = poses_of(item)
    motion = _settled(_poses_key(poses), setting_of(item.figure))
    # Equal poses share one settled movement, whose places are those of the first; these are this item's.
    keys = tuple(
        replace(key, pose=replace(key.pose, place=own.place, places=own.places))
        for key, own in zip(motion.keys, poses, strict=True)
    )
    return replace(motion, keys=keys)


@dataclass(frozen=True)
class _Key:
    """Poses that can be looked up: angles as pairs instead of a mapping."""

    poses: tuple[tuple[object, ...], ...]
    typed: tuple[Pose, ...]

    def __hash__(self) -> int:
        """Return a number that equal poses share."""
        return hash(self.poses)

    def __eq__(self, other: object) -> bool:
        """Return whether two movements are typed alike."""
        return isinstance(other, _Key) and self.poses == other.poses


def _poses_key(poses: tuple[Pose, ...]) -> _Key:
    """Return what tells one movement from another."""
    parts = tuple(
        (
            pose.name,
            pose.posture,
            tuple(pose.angles.items()),
            pose.rests_on,
            pose.slides,
            pose.like,
            pose.on_side,
        )
        for pose in poses
    )
    return _Key(parts, poses)


@lru_cache(maxsize=1024)
def _settled(key: _Key, setting: Setting) -> Motion:
    return move(key.typed, setting, FRAMES)
