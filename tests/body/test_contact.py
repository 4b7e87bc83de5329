"""A body rests on what carries it: it touches, does not sink in, and what is planted stays."""

from __future__ import annotations

import numpy as np
import pytest

from generator.body.contact import sunk
from generator.body.grounds import level, tracked
from generator.body.motion import move
from generator.body.pose import BodyPart, Ground, Pose, Rest, Setting
from generator.body.skeleton import limb
from generator.body.surface import rings_of
from generator.catalogue.terms import Posture
from tests.body.movements import BOTH_FEET, MOVEMENTS, OPERATED, OTHER, hip

MILLIMETRE = 0.001 / 1.70


@pytest.mark.parametrize("posture", list(Posture))
def test_each_posture_rests_without_sinking_in(posture: Posture) -> None:
    """Every posture, from its name alone, lies at most 1 mm below its supports at 170 cm."""
    body = move([Pose(name="only", posture=posture)]).keys[0]
    assert sunk(body.skin, body.rests, Setting()) < MILLIMETRE


@pytest.mark.parametrize("posture", list(Posture))
def test_each_resting_part_touches_its_ground(posture: Posture) -> None:
    """What is said to rest on floor, seat or pillow is within 2 mm of it at 170 cm: no floating feet."""
    body = move([Pose(name="only", posture=posture)]).keys[0]
    lowest = body.skin.lowest()[:, 1]
    for rest in body.rests:
        if rest.on in (Ground.FLOOR, Ground.SEAT, Ground.PILLOW):
            gap = lowest[rings_of(rest.part, rest.side)].min() - level(rest.on, Setting())
            assert abs(gap) < 2 * MILLIMETRE, rest


@pytest.mark.parametrize("name", MOVEMENTS)
def test_nothing_sinks_in_during_a_movement(name: str) -> None:
    """No frame of a movement lies more than 1 mm below its supports."""
    motion = move(MOVEMENTS[name])
    assert max(sunk(frame.skin, frame.rests, motion.setting) for frame in motion.frames) < MILLIMETRE


@pytest.mark.parametrize("name", ["bridge", "squat", "sit to stand"])
def test_planted_feet_stay(name: str) -> None:
    """Planted feet move under 0.1 mm at 170 cm through the whole movement, key poses included."""
    motion = move(MOVEMENTS[name])
    for rest in BOTH_FEET:
        for owner, local in tracked(BodyPart.FOOT, rest.side):
            path = [frame.placed.points(np.array([owner]), np.array([local]))[0] for frame in motion.frames]
            assert np.ptp(np.array(path), axis=0).max() < 0.1 * MILLIMETRE


def test_planted_feet_lie_flat() -> None:
    """In a bridge heel and ball of both feet are on the mat, though nobody typed knee or ankle."""
    for body in move(MOVEMENTS["bridge"]).keys:
        for rest in BOTH_FEET:
            for owner, local in tracked(BodyPart.FOOT, rest.side):
                height = body.placed.points(np.array([owner]), np.array([local]))[0, 1]
                assert height == pytest.approx(0.0, abs=0.1 * MILLIMETRE)


def test_a_foot_on_a_step_stands_at_its_height() -> None:
    """The leading foot stands on the step, the other on the floor."""
    motion = move(MOVEMENTS["step up"], Setting(step=0.1))
    lowest = motion.keys[0].skin.lowest()[:, 1]
    assert lowest[rings_of(BodyPart.FOOT, OPERATED)].min() == pytest.approx(0.1, abs=MILLIMETRE)
    assert lowest[rings_of(BodyPart.FOOT, OTHER)].min() == pytest.approx(0.0, abs=MILLIMETRE)


def test_the_hips_leave_the_mat_in_a_bridge() -> None:
    """Straightening the hips with planted feet lifts the pelvis: nobody types how high."""
    start, finish = move(MOVEMENTS["bridge"]).keys
    assert finish.placed.origins[0][1] - start.placed.origins[0][1] > 0.08


def test_the_middle_stays_over_the_foot_one_stands_on() -> None:
    """Lifting one leg leaves the standing hip over its foot (common practice, no source)."""
    poses = [
        Pose(name="start", posture=Posture.STANDING),
        Pose(name="finish", like="start", angles=hip(abduction=25), rests_on=(Rest(BodyPart.FOOT, OTHER),)),
    ]
    placed = move(poses).keys[1].placed
    apart = placed.origins[limb(OTHER, "thigh")][2] - placed.origins[limb(OTHER, "foot")][2]
    assert abs(apart) < 0.05
