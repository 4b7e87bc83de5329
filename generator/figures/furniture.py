"""Draws what stands still around a movement: floor, mat, bed, chair, worktop, wall, step."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from generator.body.motion import Body, Motion
from generator.body.pose import SIDES, BodyPart, Ground, Rest, Side
from generator.body.skeleton import PELVIS, Array, limb
from generator.figures.camera import Camera
from generator.figures.ink import Layer, Mark
from generator.figures.palette import Palette
from generator.figures.props import (
    Banister,
    Bed,
    Chair,
    Floor,
    Mat,
    Prop,
    Step,
    Wall,
    Where,
    Worktop,
)
from generator.figures.solids import bar, box

BEHIND, BEFORE = -10.0, 10.0
_TREAD = 0.165  # 28 cm at 170 cm
_SLOPE = 0.55
_BESIDE = 0.16


class Room:
    """The space a movement takes, shared by all its pictures."""

    def __init__(self, motion: Motion, lens: Camera, palette: Palette) -> None:
        """Measure the movement."""
        self.motion, self.lens, self.palette = motion, lens, palette
        skins = [key.skin for key in motion.keys]
        reach = [np.abs(skin.first) + np.abs(skin.second) for skin in skins]
        self.low: Array = np.min(
            [skin.centres - r for skin, r in zip(skins, reach, strict=True)], axis=(0, 1)
        )
        self.high: Array = np.max(
            [skin.centres + r for skin, r in zip(skins, reach, strict=True)], axis=(0, 1)
        )
        origins = [key.placed.origins for key in motion.keys]
        feet = [limb(side, "foot") for side in SIDES]
        self.feet: Array = np.array([points[feet] for points in origins])

    def slab(self, margin: float, bottom: float, top: float) -> list[Mark]:
        """Return a slab under the whole movement."""
        low = (self.low[0] - margin, bottom, self.low[2] - margin)
        high = (self.high[0] + margin, top, self.high[2] + margin)
        return box(self.lens, low, high, self.palette)

    def floor(self) -> list[Mark]:
        """Return the ground as a light plate with a firm front edge."""
        return self.slab(0.05, -0.012, 0.0)

    def bed(self) -> list[Mark]:
        """Return a mattress on short legs."""
        low, high, palette = self.low, self.high, self.palette
        marks = []
        for x in (low[0] - 0.01, high[0] + 0.01):
            for z in (low[2] - 0.03, high[2] + 0.03):
                marks += bar(
                    self.lens, [(x, -0.09, z), (x, -0.17, z)], 5.0, palette.prop_side, palette.prop_line
                )
        return marks + self.slab(0.06, -0.10, 0.0)

    def chair(self, back: bool) -> list[Layer]:
        """Return a chair under the pelvis of whichever pose sits, else under the first."""
        seat = Rest(BodyPart.PELVIS, on=Ground.SEAT)
        sitting = next((key for key in self.motion.keys if seat in key.rests), self.motion.keys[0])
        x, _, z = sitting.placed.origins[PELVIS]
        height, palette = self.motion.setting.seat, self.palette
        fill, line = palette.prop_side, palette.prop_line
        marks = []
        for dx in (-0.105, 0.115):
            for dz in (-0.11, 0.11):
                marks += bar(
                    self.lens, [(x + dx, height - 0.03, z + dz), (x + dx, 0.004, z + dz)], 3.6, fill, line
                )
        seat_box = box(
            self.lens, (x - 0.125, height - 0.028, z - 0.13), (x + 0.135, height, z + 0.13), palette
        )
        rear = []
        if back:
            for dz in (-0.11, 0.11):
                rear += bar(
                    self.lens,
                    [(x - 0.115, height, z + dz), (x - 0.135, height + 0.22, z + dz)],
                    3.6,
                    fill,
                    line,
                )
            rear += box(
                self.lens,
                (x - 0.145, height + 0.12, z - 0.125),
                (x - 0.125, height + 0.27, z + 0.125),
                palette,
            )
        seen_from_behind = self.lens.towards[0] < 0
        return [
            Layer(BEHIND + 1, tuple(marks + seat_box)),
            Layer(BEFORE if seen_from_behind else BEHIND + 0.5, tuple(rear)),
        ]

    def armrests(self, body: Body) -> list[Layer]:
        """Return the two armrests of a chair, each just behind the arm that lies on it."""
        seat = Rest(BodyPart.PELVIS, on=Ground.SEAT)
        sitting = next((key for key in self.motion.keys if seat in key.rests), self.motion.keys[0])
        x, _, middle = sitting.placed.origins[PELVIS]
        palette = self.palette
        top = self.motion.setting.seat + self.motion.setting.armrest - 0.016
        layers = []
        for side in SIDES:
            z, front = middle + 0.142 * side_sign(side), x + 0.13
            rear = x - 0.125
            shape = [(rear, 0.004, z), (rear, top, z), (front - 0.01, top, z)]
            shape += [(front, top - 0.02, z), (front, 0.004, z)]
            marks = bar(self.lens, shape, 4.2, palette.prop_side, palette.prop_line)
            arm = body.placed.origins[[limb(side, part) for part in ("hand", "forearm", "upper arm")]]
            layers.append(Layer(float(self.lens.depth(arm).mean()) - 0.03, tuple(marks)))
        return layers

    def banister(self, prop: Banister, body: Body) -> list[Layer]:
        """Return a rail through the hands that hold it, on posts."""
        held = [
            key.placed.points(np.array([limb(rest.side, "hand")]), np.array([[0.0, -0.05, 0.0]]))[0]
            for key in self.motion.keys
            for rest in key.rests
            if rest.on is Ground.BANISTER
        ]
        centre = np.mean(held, axis=0) if held else np.array([0.2, self.motion.setting.banister, 0.0])
        across = prop.where in (Where.FRONT, Where.BEHIND)
        along = np.array([0.0, 0.0, 1.0] if across else [1.0, _SLOPE if prop.rising else 0.0, 0.0])
        palette = self.palette
        marks: list[Mark] = []
        for reach in (-0.2, 0.26):
            top = centre + reach * along
            marks += bar(self.lens, [top, (top[0], 0.004, top[2])], 2.8, palette.prop, palette.prop_line)
        ends = [centre - 0.28 * along, centre + 0.34 * along]
        marks += bar(self.lens, ends, 4.2, palette.prop_side, palette.prop_line)
        hands = [limb(rest.side, "hand") for rest in body.rests if rest.on is Ground.BANISTER]
        depths = self.lens.depth(body.placed.origins[hands] if hands else centre[None])
        return [Layer(float(depths.min()) - 0.03, tuple(marks))]

    def worktop(self, where: Where) -> Layer:
        """Return a worktop under the hands that hold it."""
        hands = [
            self.motion.keys[0].placed.origins[limb(rest.side, "hand")]
            for rest in self.motion.keys[0].rests
            if rest.part is BodyPart.HAND and rest.on is Ground.WORKTOP
        ]
        top, palette = self.motion.setting.worktop, self.palette
        middle = np.mean(hands, axis=0) if hands else np.array([0.2, top, 0.0])
        if where in (Where.OPERATED, Where.OTHER):
            out = 1.0 if where is Where.OPERATED else -1.0
            z = sorted((middle[2] - out * 0.045, middle[2] + out * 0.26))
            low, high, inset = (
                (middle[0] - 0.28, top - 0.03, z[0]),
                (middle[0] + 0.32, top, z[1]),
                (0.01, 0.02),
            )
        else:
            low = (middle[0] - 0.035, top - 0.03, middle[2] - 0.24)
            high = (middle[0] + 0.18, top, middle[2] + 0.24)
            inset = (0.03, 0.02)
        under_low = (low[0] + inset[0], 0.0, low[2] + inset[1])
        under_high = (high[0] - inset[0], low[1], high[2] - inset[1])
        marks = box(self.lens, under_low, under_high, palette, palette.prop_side)
        marks += box(self.lens, low, high, palette)
        centre = (np.array(low) + np.array(high)) / 2
        body = self.motion.keys[0].placed.origins[PELVIS]
        nearer = float((centre - body) @ self.lens.towards) > 0.12
        return Layer(BEFORE if nearer else BEHIND + 1, tuple(marks))

    def wall(self, where: Where) -> Layer:
        """Return a stretch of wall."""
        low, high = self.low, self.high
        margin = 0.012
        spans = {
            Where.BEHIND: (
                (low[0] - margin - 0.02, 0.0, low[2] - 0.15),
                (low[0] - margin, 1.05, high[2] + 0.15),
            ),
            Where.FRONT: (
                (high[0] + margin, 0.0, low[2] - 0.15),
                (high[0] + margin + 0.02, 1.05, high[2] + 0.15),
            ),
            Where.OPERATED: (
                (low[0] - 0.2, 0.0, high[2] + margin),
                (high[0] + 0.2, 1.05, high[2] + margin + 0.02),
            ),
            Where.OTHER: (
                (low[0] - 0.2, 0.0, low[2] - margin - 0.02),
                (high[0] + 0.2, 1.05, low[2] - margin),
            ),
        }
        return Layer(BEHIND, tuple(box(self.lens, *spans[where], self.palette)))

    def step(self, body: Body, flight: bool = False) -> Layer:
        """Return the step under the feet that stand on it in any pose, and those above it in a flight."""
        stands = [
            key.placed.origins[limb(rest.side, "foot")]
            for key in self.motion.keys
            for rest in key.rests
            if rest.on is Ground.STEP
        ]
        sides = {rest.side for key in self.motion.keys for rest in key.rests if rest.on is Ground.STEP}
        feet = np.array(stands) if stands else self.feet[0]
        low = (feet[:, 0].min() - 0.075, 0.0, feet[:, 2].min() - 0.06)
        high = (feet[:, 0].max() + 0.135, self.motion.setting.step, feet[:, 2].max() + 0.06)
        if len(sides) == 1:
            # A stair goes on beside the only foot that stands on it.
            out = side_sign(next(iter(sides))) * _BESIDE
            low, high = (low[0], 0.0, low[2] + min(out, 0.0)), (high[0], high[1], high[2] + max(out, 0.0))
        placed = body.placed
        depth = (
            min(
                float(self.lens.depth(placed.origins[[limb(side, "shank"), limb(side, "foot")]]).mean())
                for side in sides
            )
            if sides
            else BEHIND
        )
        marks = box(self.lens, low, high, self.palette)
        if flight:
            marks = self._flight(low, high) + marks
        return Layer(depth - 0.08, tuple(marks))

    def _flight(self, low: Sequence[float], high: Sequence[float]) -> list[Mark]:
        """Return two more steps beyond one, each as high again, the farthest first."""
        height, marks = self.motion.setting.step, []
        for number in (2, 1):
            start = high[0] + (number - 1) * _TREAD
            end = (start + _TREAD, height * (number + 1), high[2])
            marks += box(self.lens, (start, 0.0, low[2]), end, self.palette)
        return marks

    def layers(self, prop: Prop, body: Body) -> list[Layer]:
        """Return the layers of a prop that stands still; nothing for one that moves along."""
        if isinstance(prop, Floor):
            return [Layer(BEHIND - 1, tuple(self.floor()))]
        if isinstance(prop, Mat):
            return [Layer(BEHIND - 1, tuple(self.slab(0.05, -0.02, 0.0)))]
        if isinstance(prop, Bed) and not prop.edge:
            return [Layer(BEHIND - 1, tuple(self.bed()))]
        if isinstance(prop, Chair):
            return self.chair(prop.back) + (self.armrests(body) if prop.arms else [])
        if isinstance(prop, Worktop):
            return [self.worktop(prop.where)]
        if isinstance(prop, Wall):
            return [self.wall(prop.where)]
        if isinstance(prop, Step):
            return [self.step(body, prop.flight)]
        if isinstance(prop, Banister):
            return self.banister(prop, body)
        return []


def side_sign(side: Side) -> float:
    """Return which way along Z a side lies."""
    return -1.0 if side is Side.OTHER else 1.0
