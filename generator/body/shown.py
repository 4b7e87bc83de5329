"""Reads from the poses what the legs do, so that limits and words say the angle that the picture shows."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import TypeVar

from generator.body.from_catalogue import Posed, can_be_settled, motion_of, posed_items
from generator.body.motion import Motion, inherit, largest
from generator.body.pose import SIDES, AngleKey, Side
from generator.body.ranges import signed
from generator.body.rules import REACHED
from generator.catalogue.base import read_only
from generator.catalogue.daily_life import DailyLife
from generator.catalogue.exercise import Exercise, ShownAngle, Variation
from generator.catalogue.terms import Joint, Movement
from generator.catalogue.values import Catalogue

_LEG = (Joint.HIP, Joint.KNEE, Joint.ANKLE)
_SPINE = (Joint.LOWER_BACK, Joint.UPPER_BACK, Joint.NECK)
_LEAST = 0.5  # degrees: what is less is not said


def with_angles(catalogue: Catalogue) -> Catalogue:
    """Return the catalogue with what the poses show of each leg; done twice it changes nothing more.

    A variation without poses of its own looks like its exercise. Poses with errors show nothing.
    """
    shown = {
        item.id: {side: _shown(item, side) for side in SIDES}
        for item in posed_items(catalogue)
        if can_be_settled(item)
    }
    return replace(
        catalogue,
        exercises=read_only(
            {name: _of_exercise(exercise, shown) for name, exercise in catalogue.exercises.items()}
        ),
        daily_life=read_only(
            {name: _with_legs(item, shown.get(name)) for name, item in catalogue.daily_life.items()}
        ),
    )


Owner = TypeVar("Owner", Exercise, DailyLife)
_Shown = Mapping[Side, tuple[ShownAngle, ...]]


def _of_exercise(exercise: Exercise, shown: Mapping[str, _Shown]) -> Exercise:
    own = shown.get(exercise.id)
    variations = {
        name: _of_variation(variation, exercise, shown.get(f"{exercise.id}/{name}"), own)
        for name, variation in exercise.variations.items()
    }
    return replace(_with_legs(exercise, own), variations=read_only(variations))


def _of_variation(
    variation: Variation, exercise: Exercise, own: _Shown | None, usual: _Shown | None
) -> Variation:
    shown = own or usual
    if shown is None:
        return variation
    operated = variation.operated_leg or (exercise.operated_leg if own else None)
    other = variation.other_leg or (exercise.other_leg if own else None)
    return replace(
        variation,
        operated_leg=None if operated is None else replace(operated, shown=shown[Side.OPERATED]),
        other_leg=None if other is None else replace(other, shown=shown[Side.OTHER]),
    )


def _with_legs(owner: Owner, shown: _Shown | None) -> Owner:
    if shown is None:
        return owner
    return replace(
        owner,
        operated_leg=replace(owner.operated_leg, shown=shown[Side.OPERATED]),
        other_leg=replace(owner.other_leg, shown=shown[Side.OTHER]),
    )


def _shown(item: Posed, side: Side) -> tuple[ShownAngle, ...]:
    """Return the largest angles of one leg, over all poses and between them."""
    motion = motion_of(item)
    typed = _typed(motion)
    found = []
    for (of, joint, movement), degrees in sorted(largest(motion).items(), key=_by_name):
        if of is not side or joint not in _LEG:
            continue
        said = typed.get((of, joint, movement))
        is_typed = said is not None and abs(said - degrees) <= REACHED
        value = round(said if is_typed and said is not None else degrees)
        found.append(ShownAngle(joint, movement, value, _travel(motion, (of, joint, movement)), is_typed))
    return tuple(found)


def _by_name(entry: tuple[AngleKey, float]) -> tuple[str, str, str]:
    side, joint, movement = entry[0]
    return side.value, joint.value, movement.value


def _typed(motion: Motion) -> dict[AngleKey, float]:
    """Return the largest typed angle of each movement; an angle below 0 is one of the opposite movement."""
    found: dict[AngleKey, float] = {}
    for pose in inherit([key.pose for key in motion.keys]):
        for (side, joint, movement), degrees in pose.angles.items():
            for key, value in _both_names(side, joint, movement, degrees):
                found[key] = max(found.get(key, value), value)
    return found


def _both_names(
    side: Side, joint: Joint, movement: Movement, degrees: float
) -> Iterator[tuple[AngleKey, float]]:
    axis, value = signed(movement, degrees)
    for other in Movement:
        if signed(other, 1.0)[0] is axis:
            yield (side, joint, other), signed(other, value)[1]


def _travel(motion: Motion, key: AngleKey) -> float:
    values = [frame.angle(*key) for frame in motion.frames]
    return round(max(values) - min(values))


def angle_name(side: Side, joint: Joint, movement: Movement) -> str:
    """Return the name of an angle in texts: ``hip.abduction``, ``other.hip.internal-rotation``."""
    name = f"{joint.value}.{movement.value}".replace(" ", "-")
    return f"other.{name}" if side is Side.OTHER else name


def facts_of(catalogue: Catalogue) -> Mapping[str, Mapping[str, float]]:
    """Return for each item with poses its largest angles over all key poses, by their names in texts.

    Whole degrees; an angle as typed where it is one. A variation without poses has no facts of its own.
    """
    return read_only(
        {item.id: read_only(_facts(item)) for item in posed_items(catalogue) if can_be_settled(item)}
    )


def _facts(item: Posed) -> dict[str, float]:
    motion = motion_of(item)
    still = replace(motion, frames=motion.keys)
    typed = _typed(motion)
    found: dict[str, float] = {}
    for (side, joint, movement), degrees in largest(still).items():
        said = typed.get((side, joint, movement))
        if said is None and joint in _SPINE:
            said = typed.get((Side.MIDDLE, joint, movement))
        value = round(said if said is not None and abs(said - degrees) <= REACHED else degrees)
        if value >= _LEAST:
            found[angle_name(side, joint, movement)] = value
    return found
