"""Says what is wrong with typed poses before anything is drawn, and with settled ones afterwards."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from generator.body.contact import sunk
from generator.body.motion import Motion, inherit
from generator.body.pose import AngleKey, Pose, Side
from generator.body.ranges import excess, exists
from generator.catalogue.terms import Joint, Movement
from generator.problems import Problem, Rule

_MIDDLE = (Joint.LOWER_BACK, Joint.UPPER_BACK, Joint.NECK)
DEEPEST = 0.001 / 1.70  # 1 mm at 170 cm
REACHED = 3.0  # degrees by which a settled angle may differ from the typed one

RANGE = Rule(
    "pose-angle-range",
    "A joint is asked to go further than any published normal range.",
    "A typing error, or the movement's two directions were swapped.",
    "type the angle in degrees, from the neutral position",
)
BACKWARDS = Rule(
    "pose-knee-backwards",
    "A knee bends the wrong way.",
    "Knee flexion is counted positive; a negative angle overstretches the knee.",
    "type the knee's flexion as a positive number",
)
IMPOSSIBLE = Rule(
    "pose-joint-movement",
    "A joint cannot move in the direction typed.",
    "The joint has no such axis, or the side does not fit (spine and neck have no operated half).",
    "use a movement that the joint has, such as hip abduction or knee flexion",
)
RADIANS = Rule(
    "pose-radians",
    "An angle looks like radians.",
    "An angle is small and no whole or half number; joint angles are typed in degrees.",
    "type degrees: a right angle is 90, not 1.57",
)
LIKE_UNKNOWN = Rule(
    "pose-like-unknown",
    "A pose is like one that does not exist.",
    "The name after 'like' is no other pose of the same movement.",
    "name one of the other poses",
)
LIKE_CIRCLE = Rule(
    "pose-like-circle",
    "Poses are like one another in a circle.",
    "Following 'like' leads back to the same pose, so none of them has angles of its own.",
    "give one of them a posture and angles instead of 'like'",
)
NOT_CARRIED = Rule(
    "pose-not-carried",
    "Nothing carries the person.",
    "The list of what rests on something is empty.",
    "say what rests on the ground, or leave the list out to keep the posture's own",
)
NOT_REACHED = Rule(
    "pose-not-reached",
    "A typed angle cannot be held.",
    "What rests or is planted does not fit this angle.",
    "change the angle, leave a neighbouring joint's angle out, or let the part slide",
)
SINKS = Rule(
    "pose-sinks",
    "The body lies below what carries it.",
    "The angles and what rests on the ground contradict each other.",
    "leave out angles of joints that the ground decides, such as knee and ankle of a planted foot",
)
RULES = (
    RANGE,
    BACKWARDS,
    IMPOSSIBLE,
    RADIANS,
    LIKE_UNKNOWN,
    LIKE_CIRCLE,
    NOT_CARRIED,
    NOT_REACHED,
    SINKS,
)


def as_words(key: AngleKey) -> str:
    """Return an angle's name as an editor types it: ``operated hip abduction``."""
    side, joint, movement = key
    return " ".join(part for part in (side.value, joint.value, movement.value) if part != "middle")


def typed(poses: Sequence[Pose]) -> tuple[Problem, ...]:
    """Return what is wrong with the poses as typed; a movement with errors here must not be settled."""
    found = [*_likes(poses)]
    for pose in poses:
        found += _angles(pose)
    if not found:
        found += _whole(inherit(poses))
    return tuple(found)


def _likes(poses: Sequence[Pose]) -> Iterable[Problem]:
    by_name = {pose.name: pose for pose in poses}
    for pose in poses:
        if pose.like is None:
            continue
        if pose.like not in by_name:
            yield LIKE_UNKNOWN.at(pose.place, f"'{pose.name}' is like '{pose.like}', which does not exist")
            continue
        path, at = [pose.name], by_name[pose.like]
        while at.name not in path and at.like in by_name:
            path.append(at.name)
            at = by_name[at.like]
        if at.name in path:
            yield LIKE_CIRCLE.at(
                pose.place, f"'{pose.name}' leads back to itself: {' → '.join([*path, at.name])}"
            )


def _angles(pose: Pose) -> Iterable[Problem]:
    for key, degrees in pose.angles.items():
        side, joint, movement = key
        if not exists(joint, movement) or ((side is Side.MIDDLE) and joint not in _MIDDLE):
            yield IMPOSSIBLE.at(pose.at(key), f"{as_words(key)} does not exist")
            continue
        limit = excess(joint, movement, degrees)
        backwards = joint is Joint.KNEE and (degrees < 0) == (movement is Movement.FLEXION)
        if limit is not None:
            rule = BACKWARDS if backwards else RANGE
            yield rule.at(
                pose.at(key), f"{as_words(key)} is {degrees:g}°, published normal is up to {limit:g}°"
            )
        elif _is_like_radians(degrees):
            yield RADIANS.at(pose.at(key), f"{as_words(key)} is {degrees:g}")
    values = [degrees for degrees in pose.angles.values() if degrees]
    small = bool(values) and all(abs(value) <= math.pi for value in values)
    if small and any(value % 1 for value in values) and not any(map(_is_like_radians, values)):
        yield RADIANS.at(pose.place, f"no angle of '{pose.name}' is larger than {max(map(abs, values)):g}")


def _is_like_radians(degrees: float) -> bool:
    """Return whether an angle is as small as radians are, and finer than anybody types degrees."""
    return 0 < abs(degrees) <= math.pi and degrees % 0.5 != 0


def _whole(poses: Sequence[Pose]) -> Iterable[Problem]:
    for pose in poses:
        if pose.rests_on is not None and not pose.rests_on:
            yield NOT_CARRIED.at(pose.place, f"nothing carries '{pose.name}'")


def settled(motion: Motion) -> tuple[Problem, ...]:
    """Return what is wrong with the settled key poses: angles not reached, depth below the ground."""
    found = []
    for body in motion.keys:
        for key, degrees in body.pose.angles.items():
            value = body.angle(*key)
            if abs(value - degrees) > REACHED:
                message = f"{as_words(key)} is typed as {degrees:g}° and comes out as {value:.0f}°"
                found.append(NOT_REACHED.at(body.pose.at(key), message))
        depth = sunk(body.skin, body.rests, motion.setting)
        if depth > DEEPEST:
            message = f"'{body.pose.name}' lies {depth * 1700:.0f} mm too deep at 170 cm"
            found.append(SINKS.at(body.pose.place, message))
    return tuple(found)
