"""Draws where the movement goes: an arrow along the real path of whatever travels furthest."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum

import numpy as np
from shapely.geometry import LineString, MultiLineString, Point
from shapely.geometry.base import BaseGeometry

from generator.body.motion import Body, Motion
from generator.body.pose import Side
from generator.body.skeleton import HEAD, PELVIS, THORAX, Array, limb
from generator.figures.camera import UNITS, Camera
from generator.figures.ink import Mark
from generator.figures.palette import Palette
from generator.figures.paths import polygon
from generator.figures.shapes import curve

_NOTHING = 0.008 * UNITS
_SHORTEST = 0.1 * UNITS
_WIDTH = 3.6
_PRESS_GAP, _BELLY, _PRESS = 0.045, 0.09, 0.13  # fractions of stature
_UP = np.array([0.0, 1.0, 0.0])
_ASIDE = (-90, -45, -135, 0, 180, 45, 135, 90)  # above first, below last
_HEAD_LENGTH, _HEAD_HALF = 9.5, 6.0


class Follow(Enum):
    """What an arrow can follow, where the editor overrules the choice."""

    FOOT = "foot"
    KNEE = "knee"
    TOES = "toes"
    PELVIS = "pelvis"
    HIP = "hip"
    CHEST = "chest"
    HEAD = "head"
    HAND = "hand"


class Towards(Enum):
    """Which way a part presses although nothing moves."""

    DOWN = "down"
    OUTWARDS = "outwards"
    INWARDS = "inwards"


@dataclass(frozen=True)
class Press:
    """Work without movement: which part of which side presses which way."""

    side: Side
    what: Follow
    towards: Towards


@dataclass(frozen=True)
class _Trail:
    """One point's path on the picture, the shift that takes the arrow beside it, and how much it counts.

    low: it runs along the ground, so an arrow below it is best.
    """

    path: Array
    away: Array
    weight: float
    low: bool = False

    @property
    def length(self) -> float:
        """Return how far it travels, weighted."""
        return self.weight * float(np.linalg.norm(np.diff(self.path, axis=0), axis=1).sum())


def _spots(bodies: Sequence[Body], side: Side) -> dict[Follow, tuple[Array, Array, float, float]]:
    """Return for each thing to follow: points in all poses, where outward starts, gap outwards, weight."""
    origins = np.stack([body.placed.origins for body in bodies], axis=1)
    turned = np.stack([body.placed.rotations for body in bodies], axis=1)
    foot, shank, thigh, hand = (limb(side, name) for name in ("foot", "shank", "thigh", "hand"))
    crest = 0.09 if side is Side.OPERATED else -0.09

    def spot(segment: int, *local: float) -> Array:
        return np.asarray(origins[segment] + turned[segment] @ np.array(local))

    return {
        Follow.FOOT: (spot(foot, 0.02, -0.045, 0.0), origins[shank], 9.0, 1.0),
        Follow.TOES: (spot(foot, 0.108, -0.03, 0.0), origins[foot], 8.0, 0.8),
        Follow.KNEE: (origins[shank], origins[thigh], 13.0, 0.93),
        Follow.PELVIS: (spot(PELVIS, -0.075, 0.0, 0.0), origins[PELVIS], 5.0, 0.9),
        Follow.HIP: (spot(PELVIS, 0.0, 0.05, crest), origins[PELVIS], 14.0, 0.89),
        Follow.CHEST: (spot(THORAX, -0.06, 0.02, 0.0), origins[THORAX], 8.0, 0.45),
        Follow.HEAD: (spot(HEAD, 0.0, 0.106, 0.0), origins[THORAX], 8.0, 0.3),
        Follow.HAND: (spot(hand, 0.0, -0.1, 0.0), origins[hand], 8.0, 0.4),
    }


def _trails(
    motion: Motion, lens: Camera, step: int, follow: tuple[Side, Follow] | None
) -> dict[tuple[Side, Follow], _Trail]:
    """Return the paths from key pose `step` to the next: of what is to be followed, else of everything."""
    count = (len(motion.frames) - 1) // max(len(motion.keys) - 1, 1)
    frames = motion.frames[step * count : (step + 1) * count + 1]
    found: dict[tuple[Side, Follow], _Trail] = {}
    for side in (Side.OPERATED, Side.OTHER) if follow is None else (follow[0],):
        spots = _spots(frames, side)
        for what in Follow if follow is None else (follow[1],):
            points, starts, gap, weight = spots[what]
            path, origin = lens.flat(points), lens.flat(starts)
            rise, run = np.abs(path[-1] - path[0])[::-1]
            if what is Follow.FOOT and rise > run:
                # An arrow under a heel that rises would begin below the floor: it stands behind the heel.
                origin = lens.flat(spots[Follow.TOES][0])
            out = _beside((path - origin).mean(axis=0), path[-1] - path[0])
            out = out / max(float(np.linalg.norm(out)), 1.0)
            low = what in (Follow.FOOT, Follow.TOES) and 3 * rise < run
            weight *= 1.0 if side is Side.OPERATED else 0.97
            found[side, what] = _Trail(path, out * gap, weight, bool(low))
    return found


def _beside(out: Array, way: Array) -> Array:
    """Return a direction without its part along the way, so that an arrow runs beside what it follows."""
    length = float(np.linalg.norm(way))
    if length < _NOTHING:
        return out
    along = way / length
    across = out - (out @ along) * along
    slanting = np.linalg.norm(across) > 0.25 * np.linalg.norm(out)
    return np.asarray(across if slanting else out)


def arrow(
    motion: Motion, lens: Camera, palette: Palette, follow: tuple[Side, Follow] | None, step: int
) -> list[Mark]:
    """Return the arrow of the way to key pose `step + 1`; nothing where nothing travels."""
    trail = max(_trails(motion, lens, step, follow).values(), key=lambda one: one.length)
    path = _clear(trail.path + trail.away, _flesh(motion.keys[step + 1], lens), trail.low)
    length = float(np.linalg.norm(np.diff(path, axis=0), axis=1).sum())
    if length < _NOTHING:
        return []
    if length < _SHORTEST:
        # A small movement keeps its direction but gets a straight arrow long enough to be seen.
        middle, way = (path[0] + path[-1]) / 2, path[-1] - path[0]
        way = way / max(float(np.linalg.norm(way)), 1e-6) * _SHORTEST
        path = middle + np.linspace(-0.5, 0.5, 5)[:, None] * way
        length = _SHORTEST
    return drawn(_thinned(path, length), palette)


def presses(body: Body, lens: Camera, palette: Palette, wanted: tuple[Press, ...]) -> list[Mark]:
    """Return a short straight arrow for each press: down or inwards onto the part, or outwards from it."""
    marks: list[Mark] = []
    for press in wanted:
        point = _spots([body], press.side)[press.what][0][0]
        out = body.placed.rotations[PELVIS][:, 2] * (1.0 if press.side is Side.OPERATED else -1.0)
        if press.towards is Towards.DOWN:
            end = point + _UP * (_BELLY if press.what is Follow.HIP else _PRESS_GAP)
            start = end + _UP * _PRESS
        else:
            start, end = point + out * _PRESS_GAP, point + out * (_PRESS_GAP + _PRESS)
            if press.towards is Towards.INWARDS:
                start, end = end, start
        marks += drawn(lens.flat(np.linspace(start, end, 5)), palette)
    return marks


def _flesh(body: Body, lens: Camera) -> BaseGeometry:
    """Return roughly where the person is on the picture."""
    at = lens.flat(body.placed.origins)
    limbs = [at[row : row + 3] for start in (7, 13) for row in (start, start + 3)]
    bones = MultiLineString([LineString(limb_) for limb_ in limbs])
    trunk = LineString(at[[PELVIS, THORAX]])
    flesh: BaseGeometry = (
        bones.buffer(8.5, quad_segs=3)
        .union(trunk.buffer(17.0, quad_segs=3))
        .union(Point(at[HEAD]).buffer(16.0, quad_segs=3))
    )
    return flesh


def _clear(path: Array, flesh: BaseGeometry, low: bool) -> Array:
    """Return the path moved aside as little as needed to stand beside the person, not on the person."""
    best, least = path, _covered(path, flesh)
    if least < 0.2:
        return path
    # Above or beside the person first; below where something moves along the ground or there is no room.
    rounds = (_ASIDE[:5], _ASIDE[5:])
    for turns in rounds[::-1] if low else rounds:
        for reach in range(6, 66, 6):
            for turn in np.radians(turns):
                moved = path + reach * np.array([np.cos(turn), np.sin(turn)])
                covered = _covered(moved, flesh)
                if covered < 0.02:
                    return np.asarray(moved)
                if covered < least - 0.1:
                    best, least = moved, covered
    return best


def _covered(path: Array, flesh: BaseGeometry) -> float:
    """Return which share of an arrow along the path would lie on the person."""
    shaft = LineString(path).buffer(4.5, quad_segs=2)
    return float(shaft.intersection(flesh).area / max(shaft.area, 1e-9))


def _thinned(path: Array, length: float) -> Array:
    """Return the path with even spacing."""
    walked = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(path, axis=0), axis=1))])
    at = np.linspace(0.0, walked[-1], max(4, int(length / 6)))
    return np.stack([np.interp(at, walked, path[:, axis]) for axis in range(2)], axis=1)


def drawn(path: Array, palette: Palette) -> list[Mark]:
    """Return shaft and head with a light rim, so that the arrow shows over everything."""
    back = min(len(path) - 1, 2)
    way = path[-1] - path[-1 - back]
    way = way / max(float(np.linalg.norm(way)), 1e-6)
    across = np.array([-way[1], way[0]])
    base = path[-1] - way * _HEAD_LENGTH
    kept = [point for point in path if float((point - base) @ way) < 0.0 or np.linalg.norm(point - base) > 14]
    shaft = curve([*(kept or [path[0]]), base + way * 1.0])
    head = polygon(np.array([path[-1], base + across * _HEAD_HALF, base - across * _HEAD_HALF]))
    rim = palette.ground
    return [
        Mark(shaft, stroke=rim, width=_WIDTH + 3.0),
        Mark(head, rim, rim, 3.4),
        Mark(shaft, stroke=palette.work, width=_WIDTH),
        Mark(head, palette.work, palette.work, 0.8),
    ]
