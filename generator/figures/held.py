"""Draws what moves with the person: bands, pillows, sticks, crutches, frame, weight, a helper's hands."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from generator.body.grounds import stood
from generator.body.motion import Body
from generator.body.pose import SIDES, BodyPart, Side
from generator.body.skeleton import Array, limb
from generator.figures.camera import UNITS, Camera
from generator.figures.furniture import BEFORE, BEHIND, Room, side_sign
from generator.figures.ink import Layer, Mark
from generator.figures.legs import AT, HALF, on_leg
from generator.figures.palette import Palette
from generator.figures.pillows import Pillows
from generator.figures.props import (
    AnkleWeight,
    Band,
    ColdPack,
    Crutches,
    HelperHands,
    Limit,
    Pillow,
    Prop,
    Reacher,
    SteeringWheel,
    Stick,
    Strap,
    TowelRoll,
    WalkingFrame,
)
from generator.figures.shapes import curve
from generator.figures.solids import bar, cushion_of, roll, strap

_POST = np.array([0.0, 0.06, 0.0])  # half an anchor's height


class Held:
    """Things that go with one pose."""

    def __init__(self, body: Body, room: Room, lens: Camera, palette: Palette) -> None:
        """Remember the pose."""
        self.placed, self.skin, self.room = body.placed, body.skin, room
        self.rests = body.rests
        self.ground = stood(body.rests, room.motion.setting)
        self.lens, self.palette = lens, palette

    def _edges(self, side: Side, at: Limit) -> tuple[Array, Array]:
        """Return the two points where a leg's outline is, across the leg on the picture."""
        point, along = on_leg(self.placed, side, at)
        across = np.cross(along, self.lens.towards)
        across = across / max(float(np.linalg.norm(across)), 1e-6) * HALF[at]
        return point + across, point - across

    def band(self, prop: Band) -> list[Layer]:
        """Return a band: round both legs, or round one and on to its anchor."""
        palette = self.palette
        if prop.anchor is None:
            return self._loop(prop.at)
        anchor = self._anchor(prop.anchor)
        first, last = self._edges(prop.side, prop.at)
        middle = (first + last) / 2
        pull = strap(self.lens, [middle, anchor], 3.2, palette.band, palette.line)
        cuff = strap(self.lens, [first, last], 4.6, palette.band, palette.line)
        post = bar(
            self.lens,
            [anchor - _POST, anchor + _POST],
            5.0,
            palette.prop_side,
            palette.prop_line,
        )
        depth = float(self.lens.depth(((middle + anchor) / 2)[None])[0])
        return [Layer(depth, tuple(pull + post)), Layer(BEFORE - 1, tuple(cuff))]

    def _loop(self, at: Limit) -> list[Layer]:
        """Return a loop round both legs: one strand before them, the other behind, seen between them."""
        ends = [edge for side in SIDES for edge in self._edges(side, at)]
        flat = self.lens.flat(np.array(ends))
        apart = np.linalg.norm(flat[:, None] - flat[None], axis=2)
        one, two = (ends[row] for row in np.unravel_index(int(np.argmax(apart)), apart.shape))
        name = AT[at][0]
        legs = self.lens.depth(self.placed.origins[[limb(side, name) for side in SIDES]])
        layers = []
        for depth, way in ((float(legs.min()) - 0.12, -1.0), (BEFORE - 1, 1.0)):
            out = way * HALF[at] * self.lens.towards
            course = [one, one + 0.2 * (two - one) + out, two + 0.2 * (one - two) + out, two]
            marks = strap(self.lens, course, 4.6, self.palette.band, self.palette.line)
            layers.append(Layer(depth, tuple(marks)))
        return layers

    def _anchor(self, offset: Sequence[float]) -> Array:
        middle = self.room.feet[0].mean(axis=0)
        result: Array = np.array([middle[0] + offset[0], offset[1], middle[2] + offset[2]])
        return result

    def strap(self, side: Side) -> list[Layer]:
        """Return a strap from one hand round the sole to the other hand."""
        foot = limb(side, "foot")
        ball = self.placed.origins[foot] + self.placed.rotations[foot] @ np.array([0.062, -0.042, 0.0])
        layers = []
        for hand in SIDES:
            grip = self._grip(hand)
            marks = strap(self.lens, [grip, ball], 2.6, self.palette.band, self.palette.line)
            depth = float(self.lens.depth(((grip + ball) / 2)[None])[0])
            layers.append(Layer(depth + 0.03 * (hand is side), tuple(marks)))
        return layers

    def reacher(self, side: Side) -> list[Layer]:
        """Return a long tool from the hand down to just above the toes."""
        grip, palette = self._grip(side), self.palette
        foot = self.placed.origins[limb(side, "foot")] + np.array([0.06, 0.01, 0.0])
        marks = bar(self.lens, [grip + 0.08 * (grip - foot), foot], 2.4, palette.prop, palette.prop_line)
        depth = float(self.lens.depth(self.placed.origins[[limb(side, "hand")]]).mean())
        return [Layer(depth - 0.01, tuple(marks))]

    def towel(self, prop: TowelRoll) -> list[Layer]:
        """Return a rolled towel between the ground and the leg."""
        point, _ = on_leg(self.placed, prop.side, prop.under)
        radius = max((point[1] - HALF[prop.under]) / 2, 0.015)
        marks = roll(self.lens, (point[0], radius, point[2]), radius, 0.07, self.palette)
        return [Layer(BEHIND + 2, tuple(marks))]

    def _grip(self, side: Side) -> Array:
        segment = limb(side, "hand")
        point: Array = self.placed.origins[segment] - 0.045 * self.placed.rotations[segment][:, 1]
        return point

    def stick(self, side: Side, cuff: bool = False) -> list[Layer]:
        """Return a stick from the hand to the floor, with a cuff at the forearm for a crutch."""
        grip, palette = self._grip(side), self.palette
        fill, line = palette.prop, palette.prop_line
        out = 0.03 * side_sign(side)
        foot = np.array([grip[0] + 0.02, self.ground + 0.006, grip[2] + out])
        fore = np.array([0.045, 0.0, 0.0])
        marks = []
        if cuff:
            elbow = self.placed.origins[limb(side, "forearm")]
            wrist = self.placed.origins[limb(side, "hand")]
            top = elbow + 0.25 * (wrist - elbow)
            behind = top + np.array([-0.025, 0.0, 0.0])
            marks += bar(self.lens, [behind, grip + np.array([-0.012, 0, 0]), foot], 2.8, fill, line)
            marks += bar(self.lens, [behind, top + np.array([0.03, 0.004, 0])], 3.4, palette.prop_side, line)
        else:
            marks += bar(self.lens, [grip, foot], 3.0, fill, line)
        marks += bar(self.lens, [grip - 0.5 * fore, grip + fore], 3.6, palette.prop_side, line)
        marks += bar(self.lens, [foot, foot + np.array([0, 0.012, 0])], 4.4, line, line)
        hand = self.lens.depth(self.placed.origins[[limb(side, "hand"), limb(side, "forearm")]])
        return [Layer(float(hand.min()) - 0.02, tuple(marks))]

    def frame(self) -> list[Layer]:
        """Return a walking frame: two side frames joined in front."""
        grips = [self._grip(side) for side in SIDES]
        palette = self.palette
        fill, line = palette.prop, palette.prop_line
        height = float(np.mean([grip[1] for grip in grips]))
        x = float(np.mean([grip[0] for grip in grips]))
        layers = []
        sides = []
        for grip in grips:
            rear, front = (x - 0.09, 0.006, grip[2] * 1.05), (x + 0.20, 0.006, grip[2] * 1.05)
            shape = [rear, (x - 0.05, height, grip[2]), (x + 0.13, height, grip[2]), front]
            marks = bar(self.lens, shape, 3.0, fill, line)
            marks += bar(
                self.lens,
                [(x - 0.07, height / 2, grip[2]), (x + 0.165, height / 2, grip[2])],
                2.4,
                fill,
                line,
            )
            sides.append(marks)
            depth = float(self.lens.depth(np.array([[x, 0.3, grip[2]]]))[0])
            layers.append(Layer(depth, tuple(marks)))
        across = []
        for share in (0.95, 0.62):
            ends = [(x + 0.13 + 0.07 * (1 - share), height * share, grip[2]) for grip in grips]
            across += bar(self.lens, ends, 2.6, fill, line)
        depth = float(self.lens.depth(np.array([[x + 0.15, 0.3, 0.0]]))[0])
        return [*layers, Layer(depth, tuple(across))]

    def weight(self, prop: AnkleWeight) -> list[Layer]:
        """Return a weight cuff round the ankle."""
        first, last = self._edges(prop.side, Limit.ANKLES)
        marks = strap(self.lens, [first, last], 9.0, self.palette.prop_side, self.palette.line)
        return [Layer(BEFORE - 1, tuple(marks))]

    def cold_pack(self, side: Side) -> list[Layer]:
        """Return a soft pack that lies over the top of the knee, as long as a forearm."""
        point, along = on_leg(self.placed, side, Limit.KNEES)
        along = along if along[0] > 0 else -along
        across, up = np.array([0.0, 0.0, 1.0]), np.array([0.0, 1.0, 0.0])
        half = HALF[Limit.KNEES]
        corners = [
            point + length * along + height * half * up + out * half * across
            for length in (-0.10, 0.11)
            for height, out in ((0.0, 1.2), (1.7, 0.75), (1.7, -0.75), (0.0, -1.2))
        ]
        marks = cushion_of(self.lens, np.array(corners), self.palette)
        seam = [point + s * along + 1.7 * half * up for s in (-0.085, 0.095)]
        marks += strap(self.lens, seam, 1.0, self.palette.prop_side, self.palette.prop_line)
        return [Layer(BEFORE - 2, tuple(marks))]

    def wheel(self) -> list[Layer]:
        """Return a car's wheel between both hands, with its column."""
        grips = [self._grip(hand) for hand in SIDES]
        middle, palette = np.mean(grips, axis=0), self.palette
        radius = float(np.linalg.norm(grips[0] - grips[1])) / 2
        out, up = np.array([0.0, 0.0, 1.0]), np.array([-0.42, 0.91, 0.0])
        turn = np.linspace(0.0, 2.0 * np.pi, 33)[:, None]
        rim = middle + radius * (np.cos(turn) * out + np.sin(turn) * up)
        hub = middle + np.array([0.03, -0.015, 0.0])
        fill, line = palette.prop_side, palette.prop_line
        marks = bar(self.lens, [hub, hub + np.array([0.16, -0.07, 0.0])], 5.0, fill, line)
        for end in (*grips, middle - radius * up):
            marks += bar(self.lens, [hub, end], 2.4, fill, line)
        marks += bar(self.lens, rim, 3.6, fill, line)
        depth = self.lens.depth(self.placed.origins[[limb(hand, "hand") for hand in SIDES]])
        return [Layer(float(depth.min()) - 0.02, tuple(marks))]

    def hands(self, prop: HelperHands) -> list[Layer]:
        """Return two hands with cuffs that carry the leg from below."""
        if any(rest.part is BodyPart.FOOT and rest.side is prop.side for rest in self.rests):
            return []
        layers = []
        for at in (Limit.KNEES, Limit.ANKLES):
            point, _ = on_leg(self.placed, prop.side, at)
            layers += _helping_hand(self.lens, point, HALF[at], self.palette)
        return layers

    def layers(self, prop: Prop) -> list[Layer]:
        """Return the layers of a prop that moves along; nothing for one that stands still."""
        if isinstance(prop, Band):
            return self.band(prop)
        if isinstance(prop, Pillow):
            return Pillows(self.placed, self.skin, self.lens, self.palette).layers(prop)
        if isinstance(prop, TowelRoll):
            return self.towel(prop)
        if isinstance(prop, Stick):
            return self.stick(prop.side)
        if isinstance(prop, Crutches):
            return [layer for side in SIDES for layer in self.stick(side, cuff=True)]
        if isinstance(prop, WalkingFrame):
            return self.frame()
        if isinstance(prop, Strap):
            return self.strap(prop.side)
        if isinstance(prop, Reacher):
            return self.reacher(prop.side)
        if isinstance(prop, AnkleWeight):
            return self.weight(prop)
        if isinstance(prop, HelperHands):
            return self.hands(prop)
        if isinstance(prop, ColdPack):
            return self.cold_pack(prop.side)
        if isinstance(prop, SteeringWheel):
            return self.wheel()
        return []


def _helping_hand(lens: Camera, point: Array, half: float, palette: Palette) -> list[Layer]:
    """Return a forearm that comes from below and a hand cupped round the limb."""
    x, y = lens.flat(point[None])[0]
    reach = half * UNITS
    arm = [(x + 26, y + reach + 30), (x + 12, y + reach + 12), (x + 1, y + reach + 2)]
    data = curve(arm)
    cuff = curve([arm[0], (x + 20, y + reach + 22)])
    fingers = [
        curve([(x - 1 + n * 3.4, y + reach + 2.5), (x - 3 + n * 3.4, y - reach * 0.1)]) for n in range(3)
    ]
    behind = [
        Mark(data, stroke=palette.line, width=10.4),
        Mark(data, stroke=palette.skin, width=8.0),
        Mark(cuff, stroke=palette.line, width=12.4),
        Mark(cuff, stroke=palette.ground, width=10.0),
    ]
    before = []
    for finger in fingers:
        before += [Mark(finger, stroke=palette.line, width=5.0), Mark(finger, stroke=palette.skin, width=2.9)]
    return [Layer(BEFORE - 3, tuple(behind)), Layer(BEFORE - 2, tuple(before))]
