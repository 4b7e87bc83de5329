"""Chooses from where a movement is seen: the view that shows most of it, unless the editor overrules it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from functools import cached_property

import numpy as np

from generator.body.motion import Motion
from generator.body.pose import SIDES
from generator.body.skeleton import HEAD, PELVIS, Array, limb

UNITS = 200.0  # drawing units for one stature


class View(Enum):
    """Where the viewer stands. Front and side are a person's own, standing or lying on the side."""

    FRONT = "front"
    BACK = "back"
    BACK_QUARTER = "back three-quarter"
    SIDE = "side"
    THREE_QUARTER = "three-quarter"
    ABOVE = "above"


@dataclass(frozen=True)
class Camera:
    """A parallel projection: unit vectors to the right, up, and towards the viewer."""

    right: Array
    up: Array
    towards: Array

    @cached_property
    def _plane(self) -> Array:
        return np.stack([self.right, -self.up], axis=1) * UNITS

    def flat(self, points: Array) -> Array:
        """Return points (n, 3) on the picture (n, 2), Y downwards, in drawing units."""
        result: Array = points @ self._plane
        return result

    def vectors(self, vectors: Array) -> Array:
        """Return directions on the picture, in drawing units."""
        return self.flat(vectors)

    def depth(self, points: Array) -> Array:
        """Return how near points are: larger is nearer."""
        result: Array = points @ self.towards
        return result


def camera(azimuth: float, elevation: float) -> Camera:
    """Return the camera at an azimuth (0 at +X, 90 at +Z) and elevation, degrees."""
    turn, rise = np.radians((azimuth, elevation))
    towards = np.array([np.cos(turn) * np.cos(rise), np.sin(rise), np.sin(turn) * np.cos(rise)])
    right = np.array([np.sin(turn), 0.0, -np.cos(turn)])
    return Camera(right, np.cross(towards, right), towards)


_LOW, _LYING = 9.0, 14.0


def seen_from(view: View, motion: Motion) -> Camera:
    """Return the camera of a view for the way the body lies or stands at the start."""
    axes = motion.keys[0].placed.rotations[PELVIS]
    front, out = axes[:, 0], axes[:, 2]
    if abs(out[1]) > 0.7:
        azimuth = float(np.degrees(np.arctan2(front[2], front[0])))
        table = {View.FRONT: (azimuth + 12, 22), View.BACK: (azimuth + 180, _LYING)}
        table |= {
            View.SIDE: (azimuth, _LYING),
            View.THREE_QUARTER: (azimuth + 32, 30),
            View.ABOVE: (azimuth, 70),
        }
    elif abs(front[1]) > 0.7:
        table = {View.SIDE: (82, _LYING), View.THREE_QUARTER: (58, 24), View.ABOVE: (90, 72)}
        table |= {View.FRONT: (16, 42), View.BACK: (180, 20)}
    else:
        table = {View.FRONT: (10, _LOW), View.BACK: (190, _LOW), View.SIDE: (76, _LOW)}
        table |= {View.THREE_QUARTER: (42, 12), View.ABOVE: (90, 70), View.BACK_QUARTER: (140, 12)}
    # Whoever lies shows no more from there than from straight behind.
    return camera(*table.get(view, table[View.BACK]))


def _shown(motion: Motion, view: View, paths: Array) -> float:
    """Return how much of the movement a view shows, less where the limbs cover one another.

    paths: the places of points of the body in each frame, shape (frames, points, 3).
    """
    lens = seen_from(view, motion)
    flat = lens.flat(paths)
    travel = float(np.linalg.norm(np.diff(flat, axis=0), axis=2).sum(axis=0).max())
    last = flat[-1]
    apart = np.linalg.norm(last[:, None] - last[None], axis=2) + np.eye(len(last)) * UNITS
    covered = float(np.clip(1.0 - apart / (0.06 * UNITS), 0.0, None).sum() / 2)
    return travel - 0.005 * UNITS * covered


def _paths(motion: Motion) -> Array:
    """Return where pelvis, head, limb joints and toes are in each frame."""
    joints = np.array([PELVIS, HEAD, *range(7, len(motion.keys[0].placed.origins))])
    feet = np.array([limb(side, "foot") for side in SIDES])
    toes = np.array([[0.1, -0.03, 0.0]] * len(feet))
    return np.array(
        [
            np.concatenate([frame.placed.origins[joints], frame.placed.points(feet, toes)])
            for frame in motion.frames
        ]
    )


# Plain views first: a slanting or high one must show clearly more to be chosen.
_UPRIGHT = {View.SIDE: 1.0, View.FRONT: 1.0, View.BACK: 0.99, View.THREE_QUARTER: 0.75}
_FACE_UP_OR_DOWN = {View.SIDE: 1.0, View.ABOVE: 0.6}
_ON_SIDE = {View.FRONT: 1.0, View.ABOVE: 0.6}


def choose(motion: Motion, hidden: frozenset[View] = frozenset()) -> View:
    """Return the view that shows most of the movement; in `hidden` ones something stands in the way."""
    paths = _paths(motion)
    axes = motion.keys[0].placed.rotations[PELVIS]
    lying = _ON_SIDE if abs(axes[1, 2]) > 0.7 else _FACE_UP_OR_DOWN
    table = lying if max(abs(axes[1, 2]), abs(axes[1, 0])) > 0.7 else _UPRIGHT
    open_views = [view for view in table if view not in hidden]
    if len(motion.keys) == 1:
        return open_views[0]
    return max(open_views, key=lambda view: table[view] * _shown(motion, view, paths))
