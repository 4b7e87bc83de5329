"""An exercise bike goes with the person: its pedals are under both feet in every pose."""

from __future__ import annotations

import numpy as np
import pytest

from generator.body.motion import move
from generator.body.pose import BodyPart, Ground, Pose, Rest, Side
from generator.body.skeleton import limb
from generator.catalogue.terms import Posture
from generator.figures.bike import Bike
from generator.figures.camera import View, seen_from
from generator.figures.extent import extent
from generator.figures.furniture import Room
from tests.body.movements import hip, knee
from tests.figures.palettes import PALETTE

RIDING = (
    Pose(
        name="start",
        posture=Posture.SITTING,
        angles=hip(flexion=80) | knee(100) | hip(Side.OTHER, flexion=40) | knee(40, Side.OTHER),
        rests_on=(Rest(BodyPart.PELVIS, on=Ground.SEAT),),
    ),
    Pose(
        name="finish",
        like="start",
        angles=hip(flexion=40) | knee(40) | hip(Side.OTHER, flexion=80) | knee(100, Side.OTHER),
    ),
)


@pytest.mark.parametrize("number", [0, 1])
def test_a_pedal_is_under_each_foot(number: int) -> None:
    """Crank and pedal of each leg reach to that foot, wherever it is in the round."""
    motion = move(RIDING)
    lens, body = seen_from(View.SIDE, motion), motion.keys[number]
    layers = Bike(Room(motion, lens, PALETTE), lens, PALETTE).layers(body)
    for side, layer in zip((Side.OPERATED, Side.OTHER), layers[-2:], strict=True):
        foot = np.array([limb(side, "foot")])
        ball = lens.flat(body.placed.points(foot, np.array([[0.062, -0.045, 0.0]])))[0]
        left, top, right, bottom = extent(mark.data for mark in layer.marks)
        assert left - 1 < ball[0] < right + 1
        assert top - 1 < ball[1] < bottom + 1


def test_the_hub_stays_where_it_is() -> None:
    """The crank turns about one hub: a bike does not move."""
    motion = move(RIDING)
    lens = seen_from(View.SIDE, motion)
    bike = Bike(Room(motion, lens, PALETTE), lens, PALETTE)
    frames = [bike.layers(body)[0].marks for body in motion.keys]
    assert frames[0] == frames[1]
