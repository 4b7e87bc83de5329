"""Turns typed poses into a movement: poses inherit, settle on their supports, and pass into one another.

Between key poses the joints move in joint space; planted parts stay where the pose before left them.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache, cached_property
from itertools import pairwise

import numpy as np

from generator.body import segments as size
from generator.body.contact import CONTACT, TYPED, Pin, Task, settle
from generator.body.grounds import tracked
from generator.body.pose import AngleKey, BodyPart, Ground, Pose, Rest, Setting, Side
from generator.body.postures import Base, base, reaching
from generator.body.ranges import OPPOSITE, signed
from generator.body.skeleton import SKELETON, Array, Placed, place
from generator.body.surface import Skin, skin
from generator.catalogue.terms import Joint, Movement, Posture

J, M = Joint, Movement
FRAMES = 8

# How strongly a joint that nobody typed keeps its usual angle: the trunk is stiff, arms are loose.
_STIFF = {J.LOWER_BACK: 16.0, J.UPPER_BACK: 18.0, J.NECK: 4.0, J.HIP: 4.0, J.KNEE: 2.0, J.ANKLE: 1.5}
_LOOSE = 2.0
# A leg that bends does not wander sideways unless somebody says so.
_ASIDE = {M.ABDUCTION: 2.5}
_HEEL_ROLL = 2.5
_UPRIGHT = 4.0
_DRIFT = 0.4
_HIP_ON_GROUND = 0.077


@dataclass(frozen=True)
class Body:
    """One settled pose: what was asked, the parameters found, the body in space."""

    pose: Pose
    rests: tuple[Rest, ...]
    parameters: Array
    base: Array

    @cached_property
    def placed(self) -> Placed:
        """Return the segments in space."""
        return place(self.parameters, self.base)

    @cached_property
    def skin(self) -> Skin:
        """Return the skin's rings in space."""
        return skin(self.placed)

    def angle(self, side: Side, joint: Joint, movement: Movement) -> float:
        """Return an angle in degrees as settled; extension is minus flexion, and so on."""
        row, sign = _parameter_of(side, joint, movement)
        return sign * math.degrees(self.parameters[row])


@dataclass(frozen=True)
class Motion:
    """A movement: its settled key poses and, between each two, the frames that lead from one to the next."""

    keys: tuple[Body, ...]
    frames: tuple[Body, ...]
    setting: Setting


def inherit(poses: Sequence[Pose]) -> tuple[Pose, ...]:
    """Return the poses with what they take from those they are `like`; unknown or circular ones stay."""
    by_name = {pose.name: pose for pose in poses}

    def full(pose: Pose, seen: tuple[str, ...]) -> Pose:
        if pose.like is None or pose.like in seen or pose.like not in by_name:
            return pose
        model = full(by_name[pose.like], (*seen, pose.name))
        own = {_axis_key(key): value for key, value in pose.angles.items()}
        kept = {key: value for key, value in model.angles.items() if _axis_key(key) not in own}
        return replace(
            pose,
            posture=pose.posture or model.posture,
            angles={**kept, **pose.angles},
            rests_on=model.rests_on if pose.rests_on is None else pose.rests_on,
            on_side=model.on_side,
            slides=pose.slides or model.slides,
        )

    return tuple(full(pose, ()) for pose in poses)


def _axis_key(key: AngleKey) -> AngleKey:
    """Return the key of the axis an angle turns about, so that extension replaces flexion."""
    side, joint, movement = key
    middle = Side.MIDDLE if joint in (J.LOWER_BACK, J.UPPER_BACK, J.NECK) else side
    return middle, joint, signed(movement, 0.0)[0]


def _fill(parameters: Array, angles: Mapping[AngleKey, float]) -> list[int]:
    """Write angles into parameters; return which ones."""
    filled = []
    for (side, joint, movement), degrees in angles.items():
        axis, value = signed(movement, degrees)
        middle, _, _ = _axis_key((side, joint, movement))
        if middle is Side.MIDDLE and side is Side.OTHER:
            value = -value
        index = SKELETON.axes[middle, joint, axis]
        parameters[index] = np.radians(value)
        filled.append(index)
    return filled


def _weights() -> Array:
    weights = np.full(SKELETON.count, _LOOSE)
    weights[:3] = (_DRIFT, 0.0, _DRIFT)
    weights[3:6] = _UPRIGHT
    for key, index in SKELETON.axes.items():
        if len(key) == 2:
            weights[index] = _HEEL_ROLL
            continue
        aside = _ASIDE.get(key[2], 1.0) if key[1] is J.HIP else 1.0
        weights[index] = _STIFF.get(key[1], _LOOSE) * (2.0 if key[2] is M.INTERNAL_ROTATION else aside)
    return weights


_WEIGHTS = _weights()


def _task(pose: Pose, start: Base, setting: Setting, pins: tuple[Pin, ...], model: Body | None) -> Task:
    wish = np.zeros(SKELETON.count)
    wish[1] = 0.53 if pose.posture in (Posture.STANDING, Posture.HALF_KNEELING) else 0.12
    if pose.posture is Posture.SITTING:
        wish[1] = setting.seat + 0.06
    elif pose.posture is Posture.HANDS_AND_KNEES:
        wish[1] = 0.3
    _fill(wish, start.angles)
    rests = start.rests if pose.rests_on is None else pose.rests_on
    _fill(wish, reaching(rests))
    if model is not None:
        wish[6:] = model.parameters[6:]
    elif pose.posture is Posture.ON_BACK:
        _fill(wish, _drawn_up(pose, rests))
    weight = _WEIGHTS.copy()
    if start.square:
        weight[[3, 5]] = 25.0
    if start.balanced:
        weight[[3, 5]] = 14.0
        weight[SKELETON.axes[Side.MIDDLE, J.LOWER_BACK, M.SIDE_BENDING]] = 3.0
    weight[[SKELETON.axes[key] for key in start.firm]] = 25.0
    weight[_fill(wish, pose.angles)] = TYPED
    return Task(start.turned, wish, weight, rests, setting, start.flat_feet, start.balanced, pins)


def _drawn_up(pose: Pose, rests: tuple[Rest, ...]) -> dict[AngleKey, float]:
    """Return knee and ankle of a leg drawn up on the back whose sole lies flat: plane trigonometry."""
    angles: dict[AngleKey, float] = {}
    for rest in rests:
        if rest.part is BodyPart.FOOT:
            hip = np.radians(pose.angles.get((rest.side, J.HIP, M.FLEXION), 45.0))
            knee_height = _HIP_ON_GROUND + size.THIGH * np.sin(hip) - size.ANKLE_HEIGHT
            shank = np.degrees(np.arcsin(np.clip(knee_height / size.SHANK, -1.0, 1.0)))
            angles[rest.side, J.HIP, M.FLEXION] = float(np.degrees(hip))
            angles[rest.side, J.KNEE, M.FLEXION] = float(np.degrees(hip) + shank)
            angles[rest.side, J.ANKLE, M.DORSIFLEXION] = float(shank - 90.0)
    return angles


_FIRM = (CONTACT, 0.0, CONTACT)
_ALL_WAYS = (CONTACT, CONTACT, CONTACT)
_SOFT = (40.0, 0.0, 40.0)
_LOOSELY = (1.5, 0.0, 1.5)  # a heel on a mat gives way


def _pin_weight(rest: Rest) -> tuple[float, float, float]:
    if rest.part is BodyPart.HEEL:
        return _LOOSELY
    if not rest.part.paired:
        return _SOFT
    return _ALL_WAYS if rest.part is BodyPart.HAND else _FIRM


def _pins(before: Body, pose: Pose, rests: tuple[Rest, ...]) -> tuple[Pin, ...]:
    """Return what stays: every part that rests in both poses on the same ground and does not slide."""
    placed = before.placed
    pins = []
    for rest in rests:
        rolled = rest.part is BodyPart.TOES and replace(rest, part=BodyPart.FOOT) in before.rests
        if not (rolled or rest in before.rests) or (rest.part, rest.side) in pose.slides:
            continue
        if rest.on in (Ground.HIP, Ground.THIGH, Ground.OTHER_FOOT):
            continue
        weight = _pin_weight(rest)
        for owner, local in tracked(rest.part, rest.side):
            at = placed.rotations[owner] @ np.array(local) + placed.origins[owner]
            pins.append(Pin(owner, local, (float(at[0]), float(at[1]), float(at[2])), weight))
    return tuple(pins)


def _key(pose: Pose, before: Body | None, model: Body | None, setting: Setting) -> Body:
    start = base(pose.posture or Posture.STANDING, pose.on_side)
    rests = start.rests if pose.rests_on is None else pose.rests_on
    pins = () if before is None else _pins(before, pose, rests)
    task = _task(pose, start, setting, pins, model)
    first = task.wish.copy()
    if before is not None:
        task.wish[[0, 2]] = before.parameters[[0, 2]]
        first[:3] = before.parameters[:3]
    if model is not None:
        first[3:6] = model.parameters[3:6]
    return Body(pose, rests, settle(task, first), start.turned)


def _between(one: Body, two: Body, share: float, setting: Setting) -> Body:
    """Return the frame at `share` of the way, planted where both poses are planted."""
    start = base(two.pose.posture or Posture.STANDING, two.pose.on_side)
    wish = one.parameters + share * (two.parameters - one.parameters)
    rests = tuple(rest for rest in two.rests if rest in one.rests)
    weight = np.full(SKELETON.count, 12.0)
    weight[1] = 0.5
    task = Task(two.base, wish, weight, rests, setting, start.flat_feet, False, _pins(one, two.pose, rests))
    return Body(two.pose, rests, settle(task, wish, 12), two.base)


def move(poses: Sequence[Pose], setting: Setting | None = None, frames: int = FRAMES) -> Motion:
    """Return the movement through `poses` (as typed, in order); `frames` per way between two of them."""
    setting = setting or Setting()
    keys: list[Body] = []
    for pose in inherit(poses):
        model = next((key for key in keys if key.pose.name == pose.like), None)
        keys.append(_key(pose, keys[-1] if keys else None, model, setting))
    steps = [keys[0]]
    for one, two in pairwise(keys):
        steps += [_between(one, two, number / frames, setting) for number in range(1, frames)]
        steps.append(two)
    return Motion(tuple(keys), tuple(steps), setting)


def largest(motion: Motion) -> dict[AngleKey, float]:
    """Return the largest angle of each movement of each joint over all poses and between them, degrees.

    A movement that never happens is left out; limits are held against this, start pose included.
    """
    keys, rows, signs = _read_from()
    turned = np.degrees(np.array([frame.parameters for frame in motion.frames]))
    reached = (turned[:, rows] * signs).max(axis=0).tolist()
    return {key: value for key, value in zip(keys, reached, strict=True) if value > 0.5}


@cache
def _read_from() -> tuple[tuple[AngleKey, ...], list[int], Array]:
    """Return each movement with the parameter that holds its angle, and the sign there."""
    keys = tuple(dict.fromkeys(_both_ways()))
    found = [_parameter_of(*key) for key in keys]
    return keys, [row for row, _ in found], np.array([sign for _, sign in found])


@cache
def _parameter_of(side: Side, joint: Joint, movement: Movement) -> tuple[int, float]:
    """Return where an angle is among the parameters, and the sign that makes it this movement's."""
    axis, sign = signed(movement, 1.0)
    if joint in (J.LOWER_BACK, J.UPPER_BACK, J.NECK):
        towards = -1.0 if side is Side.OTHER else 1.0
        return SKELETON.axes[Side.MIDDLE, joint, axis], sign * towards
    return SKELETON.axes[side, joint, axis], sign


def _both_ways() -> tuple[AngleKey, ...]:
    """Return every movement that a joint angle can be, in both directions of each axis."""
    back = {there: other for other, there in OPPOSITE.items()}
    keys: list[AngleKey] = []
    for key in SKELETON.axes:
        if len(key) == 3:
            keys.append(key)
            if key[2] in back:
                keys.append((key[0], key[1], back[key[2]]))
            else:
                keys += [(Side.OPERATED, *key[1:]), (Side.OTHER, *key[1:])]
    return tuple(keys)
