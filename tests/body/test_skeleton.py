"""The skeleton stands as tall as published and turns as the textbooks say."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation

from generator.body import segments as size
from generator.body.motion import move
from generator.body.pose import Pose, Side
from generator.body.skeleton import SKELETON, limb, place
from generator.body.surface import skin
from generator.catalogue.terms import Joint, Movement, Posture
from tests.body.movements import OPERATED, OTHER

J, M = Joint, Movement
UPRIGHT = np.eye(3)


def _standing(**angles: float) -> np.ndarray:
    """Return a standing body's parameters, with angles such as operated_hip_flexion=90."""
    parameters = np.zeros(SKELETON.count)
    parameters[1] = size.HIP_HEIGHT
    for name, degrees in angles.items():
        side, joint, movement = name.split("_", 2)
        parameters[SKELETON.axes[Side[side.upper()], J[joint.upper()], M[movement.upper()]]] = np.radians(
            degrees
        )
    return parameters


def test_the_heights_add_up_to_one_stature() -> None:
    """Ankle, shank, thigh, trunk, neck, head make one stature (Drillis & Contini; Winter 2009, fig. 4.1)."""
    parts = (size.ANKLE_HEIGHT, size.SHANK, size.THIGH, size.TRUNK, size.NECK, size.HEAD)
    assert sum(parts) == pytest.approx(1.000, abs=1e-12)


@pytest.mark.parametrize(
    ("segment", "height"),
    [
        # Drillis & Contini 1966 as in Winter 2009, figure 4.1
        (limb(OPERATED, "foot"), 0.039),
        (limb(OPERATED, "shank"), 0.285),
        (limb(OTHER, "thigh"), 0.530),
        (limb(OTHER, "upper arm"), 0.818),
    ],
)
def test_each_landmark_stands_at_its_published_height(segment: int, height: float) -> None:
    """A standing body's ankle, knee, hip and shoulder are at the printed fractions of stature."""
    assert place(_standing(), UPRIGHT).origins[segment][1] == pytest.approx(height, abs=1e-9)


def test_sole_and_vertex_are_one_stature_apart() -> None:
    """From sole to top of the head the skin measures one stature, and the chin is at 0.870 (Winter 2009)."""
    lowest = skin(place(_standing(), UPRIGHT))
    top = lowest.centres[:, 1].max()
    assert top == pytest.approx(1.000, abs=1e-9)
    assert lowest.lowest()[:, 1].min() == pytest.approx(0.0, abs=1e-9)


def test_hip_and_knee_at_a_right_angle() -> None:
    """Hip 90°, knee 90°: the ankle lies one thigh ahead of the hip and one shank below the knee (by hand)."""
    placed = place(_standing(operated_hip_flexion=90, operated_knee_flexion=90), UPRIGHT)
    hip, ankle = placed.origins[limb(OPERATED, "thigh")], placed.origins[limb(OPERATED, "foot")]
    assert ankle - hip == pytest.approx([size.THIGH, -size.SHANK, 0.0], abs=1e-12)


@pytest.mark.parametrize(
    ("angle", "direction"),
    [
        # Clinical neutral-zero meaning of each word, on axes X forward, Y up, Z to the operated side
        ("operated_hip_flexion", (1, 0, 0)),
        ("other_hip_flexion", (1, 0, 0)),
        ("operated_hip_abduction", (0, 0, 1)),
        ("other_hip_abduction", (0, 0, -1)),
    ],
)
def test_a_right_angle_points_the_thigh_the_way_its_name_says(
    angle: str, direction: tuple[int, int, int]
) -> None:
    """Flexion lifts the thigh forwards, abduction away from the other leg."""
    side = OPERATED if angle.startswith("operated") else OTHER
    placed = place(_standing(**{angle: 90}), UPRIGHT)
    thigh = placed.origins[limb(side, "shank")] - placed.origins[limb(side, "thigh")]
    assert thigh / size.THIGH == pytest.approx(direction, abs=1e-12)


@pytest.mark.parametrize(("side", "inwards"), [(OPERATED, -1), (OTHER, 1)])
def test_internal_rotation_turns_the_toes_inwards(side: Side, inwards: int) -> None:
    """Internal rotation of the hip turns the toes towards the other leg."""
    placed = place(_standing(**{f"{side.value}_hip_internal_rotation": 30}), UPRIGHT)
    toes = placed.rotations[limb(side, "foot")][:, 0]
    assert np.sign(toes[2]) == inwards


@settings(max_examples=60, deadline=None)
@given(st.tuples(st.floats(-30, 120), st.floats(-30, 45), st.floats(-45, 45)))
def test_the_thigh_turns_as_scipy_turns_it(angles: tuple[float, float, float]) -> None:
    """Flexion, abduction, rotation in the order of Grood & Suntay 1983 are scipy's intrinsic ZXY."""
    flexion, abduction, rotation = angles
    parameters = _standing(
        operated_hip_flexion=flexion,
        operated_hip_abduction=abduction,
        operated_hip_internal_rotation=rotation,
    )
    expected = Rotation.from_euler("ZXY", [flexion, -abduction, rotation], degrees=True).as_matrix()
    assert place(parameters, UPRIGHT).rotations[limb(OPERATED, "thigh")] == pytest.approx(expected, abs=1e-12)


def test_a_standing_body_settles_at_its_published_height() -> None:
    """Standing needs no more than the posture's name: hips at 0.530, nothing floats, nothing sinks."""
    body = move([Pose(name="only", posture=Posture.STANDING)]).keys[0]
    assert body.placed.origins[limb(OPERATED, "thigh")][1] == pytest.approx(0.530, abs=0.002)
    assert body.skin.lowest()[:, 1].min() == pytest.approx(0.0, abs=1e-5)
