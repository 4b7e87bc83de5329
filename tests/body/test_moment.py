"""Gravity's moment agrees with the worked cases of the textbooks."""

from __future__ import annotations

import math

import numpy as np
import pytest

from generator.body import segments as size
from generator.body.moment import against_gravity, centre, weight_moment, whole_centre
from generator.body.motion import Body, move
from generator.body.pose import BodyPart, Pose, Rest
from generator.body.skeleton import limb
from generator.catalogue.terms import Joint, Movement, Posture
from tests.body.movements import OPERATED, OTHER, SIDE_LYING, hip, knee

J, M = Joint, Movement


def _lifted(degrees: float) -> Body:
    """Return side-lying with the upper leg straight, `degrees` above the horizontal."""
    poses = [
        Pose(
            name="only",
            posture=Posture.ON_SIDE,
            angles=hip(OTHER, flexion=45) | knee(80, OTHER) | knee(0) | hip(abduction=degrees),
        ),
    ]
    return move(poses).keys[0]


def test_the_masses_of_the_body_add_up() -> None:
    """Head, arms, trunk and two legs make one body; thigh, shank, foot one leg (Winter 2009, table 4.1)."""
    assert size.HEAD_ARMS_TRUNK_MASS.share + 2 * size.WHOLE_LEG_MASS.share == pytest.approx(1.0)
    leg = size.THIGH_MASS.share + size.SHANK_MASS.share + size.FOOT_MASS.share
    assert leg == pytest.approx(size.WHOLE_LEG_MASS.share)


def test_centre_of_mass_of_a_leg_as_in_winter() -> None:
    """Winter's exercise (inputs as in the BMClab notebook): foot, leg, thigh and whole limb, in cm."""
    toes, ankle, knee_, hip_ = (
        np.array(at) for at in ((101.1, 1.3), (84.9, 11.0), (86.4, 54.9), (72.1, 92.8))
    )
    foot = centre(ankle, toes, size.FOOT_MASS)
    shank = centre(knee_, ankle, size.SHANK_MASS)
    thigh = centre(hip_, knee_, size.THIGH_MASS)
    assert foot == pytest.approx([93.0, 6.15], abs=1e-9)
    assert shank == pytest.approx([85.7505, 35.8913], abs=1e-4)
    assert thigh == pytest.approx([78.2919, 76.3893], abs=1e-4)
    parts = [(size.FOOT_MASS.share, foot), (size.SHANK_MASS.share, shank), (size.THIGH_MASS.share, thigh)]
    assert whole_centre(parts) == pytest.approx([81.7707, 58.3668], abs=1e-4)


def test_the_outstretched_arm_of_the_physics_textbook() -> None:
    """4.0 kg at 0.38 m from the shoulder give 14.896 N·m with g = 9.8 (physics textbook problem)."""
    moment = weight_moment(
        4.0, np.array([0.38, 0.0, 0.0]), np.zeros(3), np.array([0.0, 0.0, -1.0]), gravity=9.8
    )
    assert moment == pytest.approx(14.896)


def test_a_horizontal_leg_weighs_most_on_the_abductors() -> None:
    """70 kg, 1.70 m, leg horizontal: 0.161·70·9.81·0.447·0.491·1.70 = 41.25 N·m (Winter 2009, whole leg)."""
    body = _lifted(0)
    tilt = math.asin(float(body.placed.rotations[0][1, 1]))
    moment = against_gravity(body, OPERATED, J.HIP, M.ABDUCTION, 70, 1.70)
    assert moment == pytest.approx(41.2507 * math.cos(tilt), abs=0.1)


@pytest.mark.parametrize("degrees", [15, 30, 45])
def test_the_moment_falls_with_the_cosine(degrees: float) -> None:
    """Raised by θ, the leg's moment is that of the horizontal leg times cos θ (statics)."""
    body = _lifted(degrees)
    placed = body.placed
    leg = placed.origins[limb(OPERATED, "foot")] - placed.origins[limb(OPERATED, "thigh")]
    rise = math.asin(float(leg[1] / np.linalg.norm(leg)))
    moment = against_gravity(body, OPERATED, J.HIP, M.ABDUCTION, 70, 1.70)
    assert moment == pytest.approx(41.2507 * math.cos(rise), rel=0.005)


def test_a_hanging_leg_weighs_nothing_on_the_abductors() -> None:
    """With the leg vertical gravity has no moment about the hip."""
    poses = [
        Pose(
            name="only",
            posture=Posture.STANDING,
            angles=hip(abduction=0) | knee(0),
            rests_on=(Rest(BodyPart.FOOT, OTHER),),
        )
    ]
    moment = against_gravity(move(poses).keys[0], OPERATED, J.HIP, M.ABDUCTION, 70, 1.70)
    assert moment == pytest.approx(0.0, abs=4.5)


def test_the_moment_is_in_proportion_to_mass_and_stature() -> None:
    """Twice the mass or twice the stature doubles the moment."""
    body = move(SIDE_LYING).keys[1]
    once = against_gravity(body, OPERATED, J.HIP, M.ABDUCTION, 60, 1.6)
    assert once is not None
    assert against_gravity(body, OPERATED, J.HIP, M.ABDUCTION, 120, 1.6) == pytest.approx(2 * once)
    assert against_gravity(body, OPERATED, J.HIP, M.ABDUCTION, 60, 3.2) == pytest.approx(2 * once)


def test_gravity_helps_the_opposite_movement() -> None:
    """What gravity sets against abduction it gives to adduction."""
    body = move(SIDE_LYING).keys[1]
    away = against_gravity(body, OPERATED, J.HIP, M.ABDUCTION, 70, 1.7)
    back = against_gravity(body, OPERATED, J.HIP, M.ADDUCTION, 70, 1.7)
    assert away is not None
    assert back == pytest.approx(-away)


def test_no_model_for_a_leg_that_rests_or_is_loaded() -> None:
    """A leg on the mat or with a band has no model: better none than a wrong number."""
    body = move(SIDE_LYING).keys[1]
    assert against_gravity(body, OTHER, J.HIP, M.ABDUCTION, 70, 1.7) is None
    assert against_gravity(body, OPERATED, J.HIP, M.ABDUCTION, 70, 1.7, loaded=True) is None
