"""Mistakes in typed poses are named with their place and remedy."""

from __future__ import annotations

import pytest

from generator.body.motion import move
from generator.body.pose import Pose
from generator.body.ranges import LARGEST, excess
from generator.body.rules import settled, typed
from generator.catalogue.terms import Joint, Movement, Posture
from generator.problems import Place
from tests.body.movements import BACK, BOTH_FEET, MIDDLE, MOVEMENTS, OPERATED, hip, knee

J, M = Joint, Movement
PLACE = Place("content/exercises/clam.yml", 12, 3)


def _pose(**changes: object) -> Pose:
    given = {"name": "start", "posture": Posture.STANDING, "place": PLACE, **changes}
    return Pose(**given)  # type: ignore[arg-type]


@pytest.mark.parametrize("name", MOVEMENTS)
def test_sound_movements_have_no_findings(name: str) -> None:
    """A movement as an editor would type it passes in silence."""
    assert typed(MOVEMENTS[name]) == ()
    assert settled(move(MOVEMENTS[name])) == ()


@pytest.mark.parametrize(
    ("poses", "code"),
    [
        ([_pose(angles=hip(flexion=170))], "pose-angle-range"),
        ([_pose(angles=hip(abduction=-31))], "pose-angle-range"),
        ([_pose(angles=knee(-20))], "pose-knee-backwards"),
        ([_pose(angles={(OPERATED, J.KNEE, M.ABDUCTION): 10})], "pose-joint-movement"),
        ([_pose(angles={(MIDDLE, J.HIP, M.FLEXION): 10})], "pose-joint-movement"),
        ([_pose(angles=hip(flexion=1.57) | knee(0.79))], "pose-radians"),
        ([_pose(like="finish")], "pose-like-unknown"),
        ([_pose(like="b"), _pose(name="b", like="start")], "pose-like-circle"),
        ([_pose(like="start")], "pose-like-circle"),
        ([_pose(angles=hip(flexion=90) | knee(0.8))], "pose-radians"),
        ([_pose(angles=hip(flexion=1.5) | knee(1))], "pose-radians"),
        ([_pose(rests_on=())], "pose-not-carried"),
    ],
)
def test_a_mistake_is_named_with_its_place(poses: list[Pose], code: str) -> None:
    """Each mistake has its own code, the place of the pose, and says what to do."""
    problems = typed(poses)
    assert code in {problem.code for problem in problems}
    assert all(problem.place == PLACE and problem.remedy for problem in problems)


def test_an_angle_that_the_ground_forbids_is_named() -> None:
    """A sole cannot lie flat beside the buttock with the knee held straight."""
    pose = _pose(posture=Posture.ON_BACK, angles=hip(flexion=60) | knee(10), rests_on=(*BACK, *BOTH_FEET))
    assert "pose-not-reached" in {problem.code for problem in settled(move([pose]))}


@pytest.mark.parametrize(
    ("joint", "movement", "largest"),
    [
        # Boone & Azen 1979 and AAOS as tabled by F. A. Davis; Soucie et al. 2011; 38 CFR 4.71 plate II
        (J.SHOULDER, M.FLEXION, 180),
        (J.SHOULDER, M.ABDUCTION, 184),
        (J.SHOULDER, M.EXTERNAL_ROTATION, 104),
        (J.ELBOW, M.FLEXION, 150),
        (J.HIP, M.FLEXION, 140.8),
        (J.HIP, M.EXTERNAL_ROTATION, 60),
        (J.KNEE, M.FLEXION, 152.6),
        (J.ANKLE, M.DORSIFLEXION, 24.8),
    ],
)
def test_the_guard_is_the_largest_published_angle(joint: Joint, movement: Movement, largest: float) -> None:
    """Exactly the largest published normal angle passes; a tenth of a degree more does not."""
    assert excess(joint, movement, largest) is None
    assert excess(joint, movement, largest + 0.1) == largest


def test_every_normal_range_of_one_study_passes() -> None:
    """Mean active ranges of 109 men (Boone & Azen 1979) are all within the guard."""
    ranges = {
        (J.SHOULDER, M.FLEXION): 167,
        (J.SHOULDER, M.EXTENSION): 62,
        (J.SHOULDER, M.INTERNAL_ROTATION): 69,
        (J.ELBOW, M.FLEXION): 143,
        (J.HIP, M.FLEXION): 122,
        (J.HIP, M.ABDUCTION): 46,
        (J.HIP, M.ADDUCTION): 27,
        (J.KNEE, M.FLEXION): 143,
        (J.ANKLE, M.PLANTARFLEXION): 56,
    }
    assert [key for key, degrees in ranges.items() if excess(*key, degrees) is not None] == []
    assert set(ranges) <= set(LARGEST)
