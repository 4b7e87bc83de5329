"""Draws pillows: under the head, under the legs, or between the legs of somebody on back or side."""

from __future__ import annotations

import numpy as np

from generator.body.pose import SIDES, Side
from generator.body.skeleton import HEAD, PELVIS, Placed, limb
from generator.body.surface import RINGS, Chain, Skin
from generator.figures.camera import Camera
from generator.figures.furniture import BEHIND
from generator.figures.ink import Layer
from generator.figures.legs import HALF, on_leg
from generator.figures.palette import Palette
from generator.figures.props import Limit, Pillow
from generator.figures.solids import cushion, cushion_of

# Where a pillow between legs that lie on one another begins and ends: segment, distance below its upper
# end, half the leg's breadth there.
_LAIN = {
    Limit.THIGHS: (("thigh", 0.05, 0.045), ("thigh", 0.22, 0.036)),
    Limit.KNEES: (("thigh", 0.16, 0.038), ("shank", 0.10, 0.03)),
    Limit.ANKLES: (("shank", 0.06, 0.032), ("shank", 0.26, 0.02)),
    Limit.FEET: (("shank", 0.18, 0.025), ("shank", 0.27, 0.02)),
}
_THICK = 0.07
_LEG = (Chain.THIGH, Chain.SHANK, Chain.FOOT)
_LIFTED = 0.05


class Pillows:
    """Pillows of one pose."""

    def __init__(self, placed: Placed, skin: Skin, lens: Camera, palette: Palette) -> None:
        """Remember the pose."""
        self.placed, self.skin = placed, skin
        self.lens, self.palette = lens, palette

    def layers(self, prop: Pillow) -> list[Layer]:
        """Return a pillow: under the head down to the ground, or between the legs."""
        if prop.under is not None:
            return self.under_legs(prop.under)
        if prop.between is None:
            rows = [index for index, ring in enumerate(RINGS) if ring.chain is Chain.HEAD]
            head = self.placed.origins[HEAD] + self.placed.rotations[HEAD] @ np.array([0.0, 0.045, 0.0])
            top = max(float(self.skin.lowest()[rows, 1].min()) + 0.012, 0.025)
            low, high = (head[0] - 0.085, 0.0, head[2] - 0.12), (head[0] + 0.085, top, head[2] + 0.12)
            return [Layer(BEHIND + 2, tuple(cushion(self.lens, low, high, self.palette)))]
        return self.between_legs(prop.between)

    def between_legs(self, at: Limit) -> list[Layer]:
        """Return a pillow between the legs; of legs that lie on one another it stays on the lower one."""
        one, two = sorted(
            (on_leg(self.placed, side, at)[0] for side in SIDES), key=lambda point: float(point[1])
        )
        middle = (one + two) / 2
        half = np.array([0.10, 0.03, max(float(abs(one[2] - two[2])) / 2 - 0.8 * HALF[at], 0.025)])
        if two[1] - one[1] > abs(two[2] - one[2]):
            return self._between_stacked(at)
        marks = cushion(self.lens, middle - half, middle + half, self.palette)
        segments = [[limb(side, part) for part in ("thigh", "shank", "foot")] for side in SIDES]
        depths = [float(self.lens.depth(self.placed.origins[rows]).mean()) for rows in segments]
        return [Layer(min(depths) - 0.01, tuple(marks))]

    def _between_stacked(self, at: Limit) -> list[Layer]:
        """Return a pillow that lies along the lower leg and carries the upper one, as thick as the gap."""
        along = _LAIN[at]
        lower, upper = sorted(SIDES, key=lambda side: float(on_leg(self.placed, side, at)[0][1]))
        corners = []
        for name, distance, half in along:
            at_lower, at_upper = (
                self.placed.origins[limb(side, name)]
                - distance * self.placed.rotations[limb(side, name)][:, 1]
                for side in (lower, upper)
            )
            bottom = float(at_lower[1]) + 0.7 * half
            top = np.clip(float(at_upper[1]) - 0.8 * half, bottom + 0.03, bottom + _THICK)
            for height in (bottom, float(top)):
                for out in (-0.07, 0.035):
                    front = self.placed.rotations[PELVIS][:, 0] * out
                    corners.append(np.array([at_lower[0] + front[0], height, at_lower[2] + front[2]]))
        marks = cushion_of(self.lens, np.array(corners), self.palette)
        return [Layer(self._leg_depth(upper) - 0.001, tuple(marks))]

    def _leg_depth(self, side: Side) -> float:
        """Return how near a leg is to the viewer, as the person's own layers have it."""
        rows = [row for row, ring in enumerate(RINGS) if ring.chain in _LEG and ring.side is side]
        return float(self.lens.depth(self.skin.centres[rows]).mean())

    def under_legs(self, at: Limit) -> list[Layer]:
        """Return a pillow on the ground under both legs, up to a little beyond `at`; for feet, the heels."""
        heels = at is Limit.FEET
        at = Limit.ANKLES if heels else at
        ends = np.array([on_leg(self.placed, side, at)[0] for side in SIDES])
        # A leg that is lifted off the pillow does not make it thicker.
        ends = ends[ends[:, 1] < ends[:, 1].min() + _LIFTED]
        top = max(float(ends[:, 1].mean()) - HALF[at] + 0.012, 0.02)
        x, z = float(ends[:, 0].mean()), 0.0
        low, high = (x - 0.10, 0.0, z - 0.15), (x + (0.11 if heels else 0.03), top, z + 0.15)
        return [Layer(BEHIND + 2, tuple(cushion(self.lens, low, high, self.palette)))]
