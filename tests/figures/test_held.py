"""What is held or worn is where hand, ankle or knee is; a bed and a wheel are where the person is."""

from __future__ import annotations

import numpy as np
import pytest

from generator.body.motion import Body, Motion, move
from generator.body.pose import SIDES, BodyPart, Ground, Pose, Rest, Setting, Side
from generator.body.skeleton import PELVIS, limb
from generator.catalogue.terms import Joint, Movement, Posture
from generator.figures.camera import UNITS, View, seen_from
from generator.figures.extent import extent
from generator.figures.fittings import fitted
from generator.figures.furniture import Room
from generator.figures.held import Held
from generator.figures.legs import HALF, on_leg
from generator.figures.props import (
    AnkleWeight,
    Bed,
    ColdPack,
    Crutches,
    HelperHands,
    Limit,
    Prop,
    SteeringWheel,
    WalkingFrame,
)
from generator.figures.scene import Scene
from tests.body.movements import BOTH_FEET
from tests.figures.palettes import PALETTE

WITH_AID = move(
    [
        Pose(
            name="start",
            posture=Posture.STANDING,
            rests_on=(*BOTH_FEET, *(Rest(BodyPart.HAND, side, Ground.GRIP) for side in SIDES)),
        )
    ]
)
ON_SEAT = Rest(BodyPart.PELVIS, on=Ground.SEAT)
EDGE = Pose(name="start", posture=Posture.SITTING, rests_on=(ON_SEAT, *BOTH_FEET))
LEGS_UP = Pose(name="start", posture=Posture.LONG_SITTING, rests_on=(ON_SEAT,))
Box = tuple[float, float, float, float]


def boxes(motion: Motion, prop: Prop, view: View = View.SIDE) -> list[Box]:
    """Return the box of each layer of a thing in the first pose: left, top, right, bottom."""
    lens = seen_from(view, motion)
    body = motion.keys[0]
    room = Room(motion, lens, PALETTE)
    layers = [*Held(body, room, lens, PALETTE).layers(prop), *fitted(prop, room, body)]
    return [extent([mark.data for mark in layer.marks]) for layer in layers]


def flat(motion: Motion, name: str, side: Side, view: View = View.SIDE) -> tuple[float, float]:
    """Return where a joint is on the picture."""
    point = motion.keys[0].placed.origins[[limb(side, name)]]
    x, y = seen_from(view, motion).flat(point)[0]
    return float(x), float(y)


def ground(motion: Motion, body: Body, view: View = View.FRONT) -> float:
    """Return how low on the picture the ground under the feet is."""
    feet = body.placed.origins[[limb(side, "foot") for side in SIDES]].copy()
    feet[:, 1] = 0.0
    return float(seen_from(view, motion).flat(feet)[:, 1].max())


def test_a_crutch_reaches_from_the_forearm_through_the_hand_to_the_floor_on_each_side() -> None:
    """Elbow crutches: the cuff is above the hand, the tip on the floor, one on either side of the body."""
    found = boxes(WITH_AID, Crutches(), View.FRONT)
    assert len(found) == 2
    for (left, top, right, bottom), side in zip(found, SIDES, strict=True):
        x, y = flat(WITH_AID, "hand", side, View.FRONT)
        assert left - 4 < x < right + 4
        assert top < y < bottom
        assert bottom == pytest.approx(ground(WITH_AID, WITH_AID.keys[0]), abs=0.04 * UNITS)


def test_a_walking_frame_stands_before_the_feet_and_both_hands_are_on_it() -> None:
    """Its rails are at the height of the hands, its front legs ahead of the toes' side of the ankle."""
    found = boxes(WITH_AID, WalkingFrame())
    top = min(box[1] for box in found)
    ahead = max(box[2] for box in found)
    for side in SIDES:
        x, y = flat(WITH_AID, "hand", side)
        assert top == pytest.approx(y, abs=0.08 * UNITS)
        assert x < ahead
    assert flat(WITH_AID, "foot", Side.OPERATED)[0] < ahead


@pytest.mark.parametrize("side", SIDES)
def test_an_ankle_weight_is_round_the_ankle_of_its_side_and_as_broad_as_the_leg(side: Side) -> None:
    """The cuff's middle is where a loop at the ankles would be; it covers the leg's breadth."""
    motion = move([Pose(name="start", posture=Posture.STANDING)])
    ((left, top, right, bottom),) = boxes(motion, AnkleWeight(side), View.FRONT)
    point, _ = on_leg(motion.keys[0].placed, side, Limit.ANKLES)
    x, y = seen_from(View.FRONT, motion).flat(point[None])[0]
    assert (left + right) / 2 == pytest.approx(x, abs=2)
    assert (top + bottom) / 2 == pytest.approx(y, abs=4)
    assert right - left > 1.8 * HALF[Limit.ANKLES] * UNITS


def test_a_cold_pack_lies_over_the_knee_of_its_side_only() -> None:
    """It covers the knee of somebody lying, above the leg's middle line and not under it."""
    motion = move([Pose(name="start", posture=Posture.ON_BACK)])
    ((left, top, right, bottom),) = boxes(motion, ColdPack(Side.OPERATED))
    x, y = flat(motion, "shank", Side.OPERATED)
    assert left < x < right
    assert top < y
    assert bottom < y + HALF[Limit.KNEES] * UNITS


def test_a_helper_lets_go_of_a_leg_whose_foot_stands() -> None:
    """Hands carry a leg that hangs free; where its foot rests on the ground there is nothing to carry."""
    free = Pose(
        name="start",
        posture=Posture.SITTING,
        angles={(Side.OPERATED, Joint.KNEE, Movement.FLEXION): 40.0},
        rests_on=(ON_SEAT, Rest(BodyPart.FOOT, Side.OTHER)),
    )
    assert len(boxes(move([free]), HelperHands(Side.OPERATED))) == 4
    assert boxes(move([EDGE]), HelperHands(Side.OPERATED)) == []


def test_a_steering_wheel_is_in_both_hands() -> None:
    """The rim's box holds both hands, and the column leads away from the driver."""
    reach = {
        (side, joint, Movement.FLEXION): degrees
        for side in SIDES
        for joint, degrees in ((Joint.SHOULDER, 52.0), (Joint.ELBOW, 38.0))
    }
    motion = move([Pose(name="start", posture=Posture.SITTING, angles=reach, rests_on=EDGE.rests_on)])
    ((left, top, right, bottom),) = boxes(motion, SteeringWheel())
    for side in SIDES:
        x, y = flat(motion, "hand", side)
        # The point is the wrist; the palm that grips is a little further on.
        assert left - 0.05 * UNITS < x < right
        assert top < y < bottom
    assert right > max(flat(motion, "hand", side)[0] for side in SIDES) + 0.1 * UNITS


def test_a_bed_lies_along_the_legs_and_then_across_the_person_who_sits_on_its_edge() -> None:
    """Legs up: the mattress reaches beyond the feet. On the edge: it ends under the thighs; feet are down.

    Its top is at the height that the editor states, and nothing plays between the two pictures.
    """
    finish = Pose(name="finish", posture=Posture.SITTING, rests_on=EDGE.rests_on)
    motion = move([LEGS_UP, finish], Setting(seat=0.3))
    lens = seen_from(View.SIDE, motion)
    room = Room(motion, lens, PALETTE)
    along, across = (fitted(Bed(edge=True), room, key)[0] for key in motion.keys)
    reach = []
    for layer, key in ((along, motion.keys[0]), (across, motion.keys[1])):
        toes = lens.flat(key.placed.origins[[limb(side, "foot") for side in SIDES]])[:, 0].max()
        reach.append(extent([mark.data for mark in layer.marks])[2] - float(toes))
    assert reach[0] > 0 > reach[1]
    for key in motion.keys:
        assert key.placed.origins[PELVIS, 1] > 0.3
    assert np.all(motion.keys[1].placed.origins[[limb(side, "foot") for side in SIDES], 1] < 0.1)
    assert Scene(motion, (Bed(),)).plays
    assert not Scene(motion, (Bed(edge=True),)).plays
