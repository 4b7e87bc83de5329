"""Settles a body on its supports: what rests touches at the skin, what is planted stays, nothing sinks in.

One least-squares problem holds everything (Gauss-Newton with the skeleton's exact derivatives): contacts
weigh most, typed angles next, usual angles least. So typed angles stay as typed unless the supports make
them impossible, and hips, knees and ankles left open bend as two-bone inverse kinematics would bend them.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from generator.body.grounds import level, stood, tracked
from generator.body.pose import SIDES, BodyPart, Ground, Rest, Setting, Side
from generator.body.ranges import limits
from generator.body.skeleton import PELVIS, SKELETON, THORAX, Array, Placed, jacobian, limb, place, rises
from generator.body.surface import OWNERS, Skin, rings_of, skin
from generator.catalogue.terms import Joint, Movement

CONTACT = 3000.0
TYPED = 60.0
LIMIT = 150.0
FLAT = 25.0
_LEAN = 14.0
_OVER_FOOT = 45.0
_TOGETHER = 1500.0
_ERECT = 30.0
_SHIFT = 0.018  # how far a standing hip moves out over its foot, fraction of stature
_PUSHES = 6
_CALM = 0.5
_SETTLED = 5e-6
_STEPS = 40
_MOVED = SKELETON.moved_by[OWNERS]  # which turns move which ring
_WRIST_ON_HAND = -90.0  # leaning on a hand bends the wrist further than its active range


@dataclass(frozen=True)
class Pin:
    """A point of the body that must stay: owner segment, local place, where in space, weight on X, Y, Z."""

    owner: int
    local: tuple[float, float, float]
    at: tuple[float, float, float]
    weight: tuple[float, float, float] = (CONTACT, 0.0, CONTACT)


@dataclass(frozen=True)
class Task:
    """What to settle: wished parameters and their weights, base rotation, supports, pins."""

    base: Array
    wish: Array
    weight: Array
    rests: tuple[Rest, ...]
    setting: Setting
    flat_feet: bool
    balanced: bool
    pins: tuple[Pin, ...] = field(default=())


class _Rows:
    """Collects weighted residuals: what is wrong, and how each parameter changes it."""

    def __init__(self, placed: Placed) -> None:
        self.placed = placed
        self._points: list[Array] = []
        self._owners: list[int] = []
        self._wants: list[tuple[int, int, int, float, float]] = []

    def point(self, owner: int, local: tuple[float, float, float]) -> int:
        """Remember a point of a segment; return its number."""
        self._points.append(self.placed.rotations[owner] @ np.array(local) + self.placed.origins[owner])
        self._owners.append(owner)
        return len(self._points) - 1

    def want(self, point: int, axis: int, target: float, weight: float, less: int = -1) -> None:
        """Ask that a coordinate, less that of another point where one is given, takes a value."""
        self._wants.append((point, less, axis, target, weight))

    def system(self) -> tuple[Array, Array]:
        """Return weighted derivatives and residuals."""
        if not self._wants:
            return np.zeros((0, SKELETON.count)), np.zeros(0)
        points = np.array(self._points)
        moves = jacobian(self.placed, np.array(self._owners), points)
        derivatives, residuals = [], []
        for point, less, axis, target, weight in self._wants:
            move, value = moves[point, axis], points[point, axis] - target
            if less >= 0:
                move, value = move - moves[less, axis], value - points[less, axis]
            derivatives.append(weight * move)
            residuals.append(weight * value)
        return np.array(derivatives), np.array(residuals)


def _hold(rows: _Rows, rest: Rest) -> None:
    """Ask that a hand lies on the hip or thigh of its own side, or a foot on the other foot."""
    if rest.on is Ground.OTHER_FOOT:
        other = Side.OTHER if rest.side is Side.OPERATED else Side.OPERATED
        upper = rows.point(limb(rest.side, "foot"), (0.0, 0.0, 0.0))
        lower = rows.point(limb(other, "foot"), (0.0, 0.0, 0.0))
        for axis, apart in enumerate((0.0, 0.045, 0.0)):
            rows.want(upper, axis, apart, _TOGETHER, less=lower)
        return
    out = 1.0 if rest.side is Side.OPERATED else -1.0
    hand = rows.point(limb(rest.side, "hand"), (0.0, -0.045, 0.0))
    if rest.on is Ground.HIP:
        held = rows.point(PELVIS, (0.035, 0.075, out * 0.088))
    else:
        held = rows.point(limb(rest.side, "thigh"), (0.062, -0.150, 0.0))
    for axis in range(3):
        rows.want(hand, axis, 0.0, 300.0, less=held)


_ON_THE_BODY = (Ground.HIP, Ground.THIGH, Ground.OTHER_FOOT)
_GRASPED = (Ground.GRIP, Ground.ARMREST, Ground.BANISTER)
_HELD = (*_ON_THE_BODY, *_GRASPED, Ground.WALL)


class _Support:
    """What carries the body: heights that rings must not go below, and rings that must touch."""

    def __init__(self, rows: _Rows, heights: Array, task: Task) -> None:
        self.floors = np.zeros(len(heights))
        self.touching: list[int] = []
        self.lying: list[int] = []
        for rest in task.rests:
            self._add(rows, heights, rest, task)

    def _add(self, rows: _Rows, heights: Array, rest: Rest, task: Task) -> None:
        height = level(rest.on, task.setting)
        if rest.on is Ground.GRIP:
            height += stood(task.rests, task.setting)
        indices = rings_of(rest.part, rest.side)
        if rest.on in _ON_THE_BODY:
            _hold(rows, rest)
        elif rest.on in _GRASPED:
            rows.want(rows.point(*tracked(BodyPart.HAND, rest.side)[0]), 1, height, CONTACT)
        elif rest.on is Ground.WALL:
            return
        elif rest.part is BodyPart.FOOT and task.flat_feet:
            for owner, local in tracked(BodyPart.FOOT, rest.side):
                rows.want(rows.point(owner, local), 1, height, CONTACT)
        else:
            self.floors[indices] = height
            self.touching.append(int(indices[np.argmin(heights[indices])]))
            if rest.part in (BodyPart.HAND, BodyPart.SHIN, BodyPart.FOREARM):
                self.lying += [int(index) for index in indices]


def _balance(rows: _Rows, task: Task) -> None:
    """Ask that the body's middle stands over its feet, softly: a person on one leg leans over it."""
    feet = [rest.side for rest in task.rests if rest.part in (BodyPart.FOOT, BodyPart.TOES)]
    if not feet or not task.balanced:
        return
    leaning = any(rest.on is Ground.WALL for rest in task.rests)
    chest = rows.point(THORAX, (0.0, 0.0, 0.0))
    pelvis = rows.point(PELVIS, (0.0, 0.0, 0.0))
    rows.want(chest, 2, 0.0, _ERECT, less=pelvis)
    for side in feet:
        under = rows.point(limb(side, "foot"), (0.02, 0.0, 0.0))
        if len(feet) == 1:
            out = _SHIFT if side is Side.OPERATED else -_SHIFT
            rows.want(rows.point(limb(side, "thigh"), (0.0, 0.0, 0.0)), 2, out, _OVER_FOOT, less=under)
        if not leaning:
            rows.want(chest, 0, 0.0, _LEAN / len(feet), less=under)


def _bounds() -> tuple[Array, Array]:
    low, high = np.full(SKELETON.count, -np.inf), np.full(SKELETON.count, np.inf)
    for key, index in SKELETON.axes.items():
        if len(key) == 3:
            low[index], high[index] = np.radians(limits(key[1], key[2]))
        else:
            low[index], high[index] = np.radians((-35.0, 35.0))
    for side in SIDES:
        low[SKELETON.axes[side, Joint.WRIST, Movement.FLEXION]] = np.radians(_WRIST_ON_HAND)
    return low, high


LOW, HIGH = _bounds()


def _step(parameters: Array, task: Task, damping: float) -> Array:
    """Return one Gauss-Newton correction that lets nothing sink in; `damping` keeps it short."""
    placed = place(parameters, task.base)
    lowest = skin(placed).lowest()
    rows = _Rows(placed)
    support = _Support(rows, lowest[:, 1], task)
    for pin in task.pins:
        point = rows.point(pin.owner, pin.local)
        for axis in range(3):
            if pin.weight[axis]:
                rows.want(point, axis, pin.at[axis], pin.weight[axis])
    _balance(rows, task)
    derivatives, residuals = rows.system()
    above = lowest[:, 1] - support.floors
    rising = rises(placed, _MOVED, lowest)
    over = np.where(parameters > HIGH, parameters - HIGH, np.where(parameters < LOW, parameters - LOW, 0.0))
    limit = np.where(over != 0, LIMIT**2, 0.0)
    left = derivatives.T @ derivatives + np.diag(task.weight**2 + limit + damping**2)
    right = derivatives.T @ residuals + task.weight**2 * (parameters - task.wish) + limit * over
    for indices, weight in ((support.touching, CONTACT), (support.lying, FLAT)):
        risen = rising[indices]
        left += weight**2 * risen.T @ risen
        right += weight**2 * risen.T @ above[indices]
    return _kept_above(left, right, above, rising, support.touching)


def _kept_above(left: Array, right: Array, above: Array, rising: Array, touching: list[int]) -> Array:
    """Return the correction with as many rings pushed up as would otherwise sink, and none held down."""
    pushed = np.zeros(len(above), dtype=bool)
    free = np.ones(len(above), dtype=bool)
    free[touching] = False
    correction: Array = np.zeros(len(right))
    for _ in range(_PUSHES):
        rows = rising[pushed]
        system = left + CONTACT**2 * rows.T @ rows
        correction[:] = -np.linalg.solve(system, right + CONTACT**2 * rows.T @ above[pushed])
        after = above + rising @ correction
        change = (pushed & (after > 1e-6)) | (free & ~pushed & (after < -1e-6))
        if not change.any():
            break
        pushed ^= change
    return correction


def settle(task: Task, start: Array, steps: int = _STEPS) -> Array:
    """Return the parameters at which the body rests as asked; `start` is where to look first."""
    parameters = start.copy()
    for number in range(steps):
        # Two rings of one hand can take turns at being the lowest; damping that grows ends their quarrel.
        damping = _CALM * max(0, number - steps // 3) ** 2 + 1e-3
        correction = _step(parameters, task, damping)
        longest = float(np.max(np.abs(correction)))
        parameters += correction * min(1.0, 0.35 / longest) if longest > 0 else correction
        if longest < _SETTLED:
            break
    return parameters


def sunk(body: Skin, rests: tuple[Rest, ...], setting: Setting) -> float:
    """Return how deep the body lies below its supports, as a fraction of stature (0: nowhere)."""
    lowest = body.lowest()[:, 1]
    deepest = max(0.0, -float(np.min(lowest)))
    for rest in rests:
        if rest.on not in _HELD:
            under = level(rest.on, setting) - float(np.min(lowest[rings_of(rest.part, rest.side)]))
            deepest = max(deepest, under)
    return deepest
