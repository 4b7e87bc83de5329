"""Places every segment of the body in space from its joint angles, and says how each angle moves each point.

A joint turns about its axes in the order flexion, abduction, rotation (Grood & Suntay 1983, the sequence of
Wu et al. 2002 for hip, knee and ankle). The shoulder keeps this order too, where Wu et al. 2005 give plane of
elevation first: clinicians type flexion and abduction. Back and neck share their angle over two levels each,
so that they bend as a curve.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from generator.body import segments as size
from generator.body.pose import SIDES, Side
from generator.catalogue.terms import Joint, Movement

Array = NDArray[np.float64]
J, M = Joint, Movement
Axis = tuple[Side, Joint, Movement]

# The subtalar joint lets a sole lie flat when the leg slants; it is solved, never typed.
ROLL = "roll of the heel"

PELVIS, LUMBAR_LOW, LUMBAR, THORAX_LOW, THORAX, NECK, HEAD = range(7)
_LIMB = ("upper arm", "forearm", "hand", "thigh", "shank", "foot")


def limb(side: Side, name: str) -> int:
    """Return the index of a limb's segment: upper arm, forearm, hand, thigh, shank or foot."""
    return 7 + _LIMB.index(name) + (len(_LIMB) if side is Side.OTHER else 0)


@dataclass(frozen=True)
class _Turn:
    """One elementary rotation: of a segment, about an axis (0 X, 1 Y, 2 Z), driven by a parameter."""

    segment: int
    axis: int
    parameter: int
    factor: float


def _spine() -> tuple[list[tuple[int, tuple[float, float, float]]], list[tuple[int, Joint, float]]]:
    """Return parent and offset of each middle segment, and which joint turns it by which share."""
    tree = [
        (-1, (0.0, 0.0, 0.0)),
        (PELVIS, (0.0, 0.055, 0.0)),
        (LUMBAR_LOW, (0.0, 0.050, 0.0)),
        (LUMBAR, (0.0, 0.055, 0.0)),
        (THORAX_LOW, (0.0, 0.060, 0.0)),
        (THORAX, (0.0, 0.082, 0.0)),
        (NECK, (0.010, 0.062, 0.0)),
    ]
    joints = [J.LOWER_BACK, J.LOWER_BACK, J.UPPER_BACK, J.UPPER_BACK, J.NECK, J.NECK]
    return tree, [(segment, joint, 0.5) for segment, joint in enumerate(joints, start=1)]


def _limb_tree(side: Side) -> list[tuple[int, tuple[float, float, float]]]:
    """Return parent and offset of a side's limb segments; Z points to the operated side."""
    out = 1.0 if side is Side.OPERATED else -1.0
    shoulder = size.TRUNK - (0.055 + 0.050 + 0.055 + 0.060)
    return [
        (THORAX, (0.0, shoulder, out * size.SHOULDER_JOINT)),
        (limb(side, "upper arm"), (0.0, -size.UPPER_ARM, 0.0)),
        (limb(side, "forearm"), (0.0, -size.FOREARM, 0.0)),
        (PELVIS, (0.0, 0.0, out * size.HIP_JOINT)),
        (limb(side, "thigh"), (0.0, -size.THIGH, 0.0)),
        (limb(side, "shank"), (0.0, -size.SHANK, 0.0)),
    ]


_SPINE_TURNS = ((M.FLEXION, 2, -1.0), (M.SIDE_BENDING, 0, 1.0), (M.ROTATION, 1, -1.0))
_LIMB_TURNS: tuple[tuple[str, Joint, Movement | None, int, float, bool], ...] = (
    # segment, joint, movement, axis, sign on the operated side, mirrored on the other
    ("upper arm", J.SHOULDER, M.FLEXION, 2, 1, False),
    ("upper arm", J.SHOULDER, M.ABDUCTION, 0, -1, True),
    ("upper arm", J.SHOULDER, M.INTERNAL_ROTATION, 1, 1, True),
    ("forearm", J.ELBOW, M.FLEXION, 2, 1, False),
    ("forearm", J.FOREARM, M.PRONATION, 1, 1, True),
    ("hand", J.WRIST, M.FLEXION, 0, 1, True),
    ("thigh", J.HIP, M.FLEXION, 2, 1, False),
    ("thigh", J.HIP, M.ABDUCTION, 0, -1, True),
    ("thigh", J.HIP, M.INTERNAL_ROTATION, 1, 1, True),
    ("shank", J.KNEE, M.FLEXION, 2, -1, False),
    ("foot", J.ANKLE, M.DORSIFLEXION, 2, 1, False),
    ("foot", J.ANKLE, None, 0, -1, True),
)


class Skeleton:
    """The body's fixed structure; one instance serves all (`SKELETON`)."""

    def __init__(self) -> None:
        """Lay out segments, parameters and turns."""
        tree, spine = _spine()
        for side in SIDES:
            tree += _limb_tree(side)
        self.parents = [parent for parent, _ in tree]
        self.offsets = np.array([offset for _, offset in tree])
        self.axes: dict[Axis | tuple[Side, str], int] = {}
        turns = [_Turn(PELVIS, axis, 3 + number, 1.0) for number, axis in enumerate((2, 0, 1))]
        for segment, joint, share in spine:
            for movement, axis, sign in _SPINE_TURNS:
                turns.append(
                    _Turn(segment, axis, self._parameter((Side.MIDDLE, joint, movement)), sign * share)
                )
        for side in SIDES:
            for name, bends, moves, axis, sign, mirrored in _LIMB_TURNS:
                key = (side, ROLL) if moves is None else (side, bends, moves)
                turned = -sign if mirrored and side is Side.OTHER else sign
                turns.append(_Turn(limb(side, name), axis, self._parameter(key), turned))
        turns.sort(key=lambda turn: turn.segment)
        self.turns = turns
        self.count = 6 + len(self.axes)
        self._index()

    def _parameter(self, key: Axis | tuple[Side, str]) -> int:
        """Return the parameter of an axis; the first six place the pelvis."""
        return self.axes.setdefault(key, 6 + len(self.axes))

    def _index(self) -> None:
        """Prepare the arrays that `place` and `jacobian` need."""
        self.spread = np.zeros((len(self.turns), self.count))
        for row, turn in enumerate(self.turns):
            self.spread[row, turn.parameter] = turn.factor
        self._axis_of = np.array([turn.axis for turn in self.turns])
        self._by_segment = [
            [row for row, turn in enumerate(self.turns) if turn.segment == segment]
            for segment in range(len(self.parents))
        ]
        self._turn_at = (
            np.array([turn.segment for turn in self.turns]),
            np.array([self._by_segment[turn.segment].index(row) for row, turn in enumerate(self.turns)]),
        )
        self._slots = np.full((len(self.parents), 3), len(self.turns))
        for row, (segment, place_) in enumerate(zip(*self._turn_at, strict=True)):
            self._slots[segment, place_] = row
        self._ancestry, self._levels = _lineage(self.parents)
        self.moved_by = np.zeros((len(self.parents), len(self.turns)), dtype=bool)
        for segment, parent in enumerate(self.parents):
            if parent >= 0:
                self.moved_by[segment] = self.moved_by[parent]
            self.moved_by[segment, self._by_segment[segment]] = True


def _lineage(parents: list[int]) -> tuple[Array, list[tuple[NDArray[np.int64], NDArray[np.int64]]]]:
    """Return which segments lead to each, itself included, and all but the first by distance from it."""
    ancestry = np.eye(len(parents))
    for segment, parent in enumerate(parents[1:], 1):
        ancestry[segment] += ancestry[parent]
    depths = ancestry.sum(axis=1)
    levels = [np.flatnonzero(depths == depth) for depth in range(2, int(depths.max()) + 1)]
    return ancestry, [(rows, np.array(parents)[rows]) for rows in levels]


SKELETON = Skeleton()


def base_turns(angles: Array, axes: NDArray[np.int64]) -> Array:
    """Return one rotation matrix for each angle (radians) about its axis (0 X, 1 Y, 2 Z)."""
    cos, sin = np.cos(angles), np.sin(angles)
    matrices = np.zeros((len(angles), 3, 3))
    rows = np.arange(len(angles))
    following, last = (axes + 1) % 3, (axes + 2) % 3
    matrices[rows, axes, axes] = 1.0
    matrices[rows, following, following] = cos
    matrices[rows, last, last] = cos
    matrices[rows, following, last] = -sin
    matrices[rows, last, following] = sin
    return matrices


@dataclass(frozen=True)
class Placed:
    """The body in space: origin and rotation of each segment, and the axes it was turned about."""

    origins: Array
    rotations: Array
    turn_axes: Array
    turn_origins: Array

    def points(self, owners: NDArray[np.int64], local: Array) -> Array:
        """Return points given in segments' own frames in space."""
        turned: Array = np.einsum("nij,nj->ni", self.rotations[owners], local)
        return turned + self.origins[owners]


def place(parameters: Array, base: Array, skeleton: Skeleton = SKELETON) -> Placed:
    """Return the body for `parameters` (pelvis position, then angles, radians) from the posture's `base`."""
    matrices = base_turns(skeleton.spread @ parameters, skeleton._axis_of)
    # Each segment's own turns, one after the other; a segment with fewer has a turn by nothing.
    slots = np.concatenate([matrices, np.eye(3)[None]])[skeleton._slots]
    one = slots[:, 0]
    two = one @ slots[:, 1]
    own = two @ slots[:, 2]
    rotations = np.empty_like(own)
    above = np.empty_like(own)
    above[0] = base
    rotations[0] = base @ own[0]
    for rows, parents in skeleton._levels:
        above[rows] = rotations[parents]
        rotations[rows] = above[rows] @ own[rows]
    steps = np.einsum("nij,nj->ni", above, skeleton.offsets)
    steps[0] = parameters[:3]
    origins: Array = skeleton._ancestry @ steps
    frames = np.stack([above, above @ one, above @ two], axis=1)
    segments, places = skeleton._turn_at
    axes = frames[segments, places, :, skeleton._axis_of]
    return Placed(origins, rotations, axes, origins[segments])


def jacobian(
    placed: Placed, owners: NDArray[np.int64], points: Array, skeleton: Skeleton = SKELETON
) -> Array:
    """Return how each point moves with each parameter: shape (points, 3, parameters)."""
    arms = points[:, None, :] - placed.turn_origins[None]
    axes = placed.turn_axes[None]
    moved = np.empty_like(arms)
    moved[..., 0] = axes[..., 1] * arms[..., 2] - axes[..., 2] * arms[..., 1]
    moved[..., 1] = axes[..., 2] * arms[..., 0] - axes[..., 0] * arms[..., 2]
    moved[..., 2] = axes[..., 0] * arms[..., 1] - axes[..., 1] * arms[..., 0]
    moved *= skeleton.moved_by[owners][:, :, None]
    result: Array = np.swapaxes(moved, 1, 2) @ skeleton.spread
    result[:, [0, 1, 2], [0, 1, 2]] += 1.0
    return result


def rises(placed: Placed, moved_by: NDArray[np.bool_], points: Array, skeleton: Skeleton = SKELETON) -> Array:
    """Return how the height of each point grows with each parameter: the middle rows of `jacobian`.

    moved_by: for each point, which turns move it; shape (points, turns).
    """
    axes, at = placed.turn_axes, placed.turn_origins
    # The vertical part of axis x (point - origin), without the other two parts and without their memory.
    moved = points[:, 0, None] * axes[None, :, 2] - points[:, 2, None] * axes[None, :, 0]
    moved += at[:, 2] * axes[:, 0] - at[:, 0] * axes[:, 2]
    moved *= moved_by
    result: Array = moved @ skeleton.spread
    result[:, 1] += 1.0
    return result
