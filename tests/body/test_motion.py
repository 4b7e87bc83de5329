"""Poses inherit from one another, and a movement knows the largest angle of every joint."""

from __future__ import annotations

import pytest

from generator.body.motion import inherit, largest, move
from generator.body.pose import Pose
from generator.catalogue.terms import Joint, Movement, Posture
from tests.body.movements import MIDDLE, MOVEMENTS, OPERATED, OTHER, SIDE_LYING, hip, knee

J, M = Joint, Movement


def test_a_pose_like_another_keeps_what_it_does_not_say() -> None:
    """`like:` with one angle changed keeps posture, other angles and rests."""
    start, finish = inherit(SIDE_LYING)
    assert finish.posture is Posture.ON_SIDE
    assert finish.angles == {**start.angles, **hip(abduction=35)}
    assert finish.rests_on == start.rests_on


def test_the_opposite_word_replaces_an_inherited_angle() -> None:
    """Extension typed in a pose takes the place of the flexion it is like."""
    poses = [
        Pose(name="start", posture=Posture.STANDING, angles=hip(flexion=20)),
        Pose(name="finish", like="start", angles=hip(extension=10)),
    ]
    assert inherit(poses)[1].angles == hip(extension=10)


@pytest.mark.parametrize("name", MOVEMENTS)
def test_typed_angles_come_out_as_typed(name: str) -> None:
    """What an editor types is what is drawn and checked, to one degree, unless the ground forbids it."""
    for body, pose in zip(move(MOVEMENTS[name]).keys, inherit(MOVEMENTS[name]), strict=True):
        for key, degrees in pose.angles.items():
            assert body.angle(*key) == pytest.approx(degrees, abs=1.0), key


def test_the_largest_angle_counts_every_pose_and_either_leg() -> None:
    """Start pose and lower leg count: the lower knee's 80° is found though only the upper leg moves."""
    found = largest(move(SIDE_LYING))
    assert found[OPERATED, J.HIP, M.ABDUCTION] == pytest.approx(35, abs=0.5)
    assert found[OTHER, J.KNEE, M.FLEXION] == pytest.approx(80, abs=0.5)


def test_a_leg_that_sags_past_the_middle_is_found() -> None:
    """A top leg that starts in 15° of adduction is found as adduction, though the finish is abducted."""
    poses = [
        Pose(
            name="start",
            posture=Posture.ON_SIDE,
            angles=hip(adduction=15) | hip(OTHER, flexion=60) | knee(90, OTHER),
        ),
        Pose(name="finish", like="start", angles=hip(abduction=30)),
    ]
    assert largest(move(poses))[OPERATED, J.HIP, M.ADDUCTION] == pytest.approx(15, abs=1.0)


def test_a_movement_that_never_happens_is_left_out() -> None:
    """A side-lying lift without hip extension has no largest hip extension."""
    assert (MIDDLE, J.NECK, M.EXTENSION) not in largest(move(SIDE_LYING))


def test_the_same_poses_give_the_same_body() -> None:
    """Settling is deterministic, bit for bit."""
    one, two = move(SIDE_LYING), move(SIDE_LYING)
    assert [frame.parameters.tobytes() for frame in one.frames] == [
        frame.parameters.tobytes() for frame in two.frames
    ]
