"""Draws an exercise bike round whoever sits on it: saddle, handlebar, wheel, and pedals under both feet."""

from __future__ import annotations

import numpy as np

from generator.body.motion import Body
from generator.body.pose import SIDES, Side
from generator.body.skeleton import PELVIS, Array, limb
from generator.figures.camera import Camera
from generator.figures.furniture import Room
from generator.figures.ink import Layer, Mark
from generator.figures.palette import Palette
from generator.figures.shapes import area_path
from generator.figures.solids import EDGE, bar, box, disc

_WHEEL = 0.115  # fraction of stature
_BALL = (0.062, -0.045, 0.0)  # where a sole stands on its pedal, in the foot's frame


def _balls(body: Body) -> dict[Side, Array]:
    feet = {side: limb(side, "foot") for side in SIDES}
    placed = body.placed
    return {
        side: placed.origins[foot] + placed.rotations[foot] @ np.array(_BALL) for side, foot in feet.items()
    }


class Bike:
    """One bike for a movement; only its pedals turn."""

    def __init__(self, room: Room, lens: Camera, palette: Palette) -> None:
        """Measure the bike: its crank lies midway between the feet."""
        self.lens, self.palette = lens, palette
        first = room.motion.keys[0]
        balls = _balls(first)
        self.crank: Array = (balls[Side.OPERATED] + balls[Side.OTHER]) / 2
        self.saddle = first.placed.origins[PELVIS]
        self.seat = room.motion.setting.seat
        hands = first.placed.origins[[limb(side, "hand") for side in SIDES]]
        self.hands = hands.mean(axis=0)

    def _bar(self, points: list[tuple[float, float, float]], width: float) -> list[Mark]:
        return bar(self.lens, points, width, self.palette.prop_side, self.palette.prop_line)

    def _frame(self) -> list[Mark]:
        x, z = float(self.saddle[0]), float(self.crank[2])
        front = float(self.hands[0]) + 0.06
        middle, hub = float(self.crank[1]), float(self.crank[0])
        marks = []
        for foot in (x - 0.05, front + 0.03):
            marks += self._bar([(foot, 0.008, z - 0.09), (foot, 0.008, z + 0.09)], 4.0)
        marks += self._bar([(x - 0.05, 0.01, z), (front + 0.03, 0.01, z)], 4.2)
        marks += self._bar([(x - 0.01, self.seat - 0.02, z), (x + 0.03, 0.01, z)], 4.6)
        marks += self._bar([(hub, middle, z), (x + 0.02, 0.09, z)], 4.2)
        wheel = disc(self.lens, (front - 0.01, _WHEEL + 0.03, z), _WHEEL)
        marks.append(Mark(area_path(wheel), self.palette.prop, self.palette.prop_line, EDGE))
        marks.append(Mark(area_path(wheel.buffer(-4.0)), "", self.palette.prop_line, 0.8))
        marks += self._bar([(hub, middle, z), (front - 0.01, _WHEEL + 0.03, z)], 3.6)
        top = float(self.hands[1])
        marks += self._bar([(front - 0.01, _WHEEL + 0.03, z), (front - 0.03, top + 0.01, z)], 4.6)
        return marks

    def _handlebar(self) -> list[Mark]:
        x, y, z = (float(value) for value in self.hands)
        half = 0.125
        return self._bar([(x + 0.03, y - 0.012, z - half), (x + 0.03, y - 0.012, z + half)], 3.6)

    def _saddle(self) -> list[Mark]:
        x, _, z = (float(value) for value in self.saddle)
        low, high = (x - 0.09, self.seat - 0.03, z - 0.055), (x + 0.09, self.seat, z + 0.055)
        return box(self.lens, low, high, self.palette)

    def layers(self, body: Body) -> list[Layer]:
        """Return the bike's layers: the frame between the legs, a pedal with its arm beside each foot."""
        found = [Layer(float(self.lens.depth(self.crank[None])[0]), tuple(self._frame()))]
        hands = body.placed.origins[[limb(side, "hand") for side in SIDES]]
        found.append(Layer(float(self.lens.depth(hands).min()) - 0.02, tuple(self._handlebar())))
        found.append(Layer(float(self.lens.depth(self.saddle[None])[0]) - 0.12, tuple(self._saddle())))
        for side, ball in _balls(body).items():
            hub = np.array([self.crank[0], self.crank[1], ball[2] * 0.6])
            pedal = [ball + np.array([reach, 0.0, 0.0]) for reach in (-0.025, 0.025)]
            marks = bar(
                self.lens, [hub, (ball[0], ball[1], hub[2])], 3.2, self.palette.prop, self.palette.prop_line
            )
            marks += bar(self.lens, pedal, 3.4, self.palette.prop_side, self.palette.prop_line)
            leg = body.placed.origins[[limb(side, part) for part in ("thigh", "shank", "foot")]]
            found.append(Layer(float(self.lens.depth(leg).mean()) - 0.02, tuple(marks)))
        return found
