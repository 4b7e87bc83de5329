"""What hands hold, pillows, straps, and work without movement are in the picture where they belong."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from generator.body.motion import Motion, move
from generator.body.pose import BodyPart, Ground, Pose, Rest, Setting, Side
from generator.body.segments import FOOT_BREADTH
from generator.body.skeleton import limb
from generator.catalogue.terms import Posture
from generator.figures.arrows import Follow, Press, Towards
from generator.figures.camera import UNITS, View, choose, seen_from
from generator.figures.extent import extent
from generator.figures.furniture import Room
from generator.figures.person import far_limbs
from generator.figures.props import (
    Banister,
    Bed,
    Bike,
    CarSeat,
    Chair,
    Floor,
    Limit,
    Pillow,
    Reacher,
    Step,
    Strap,
)
from generator.figures.scene import Scene, draw, strip, view_of
from tests.body.movements import BOTH_FEET, SIT_TO_STAND, STEP_UP
from tests.figures.palettes import PALETTE

HANDS_ON = {
    ground: (Rest(BodyPart.HAND, Side.OPERATED, ground), Rest(BodyPart.HAND, Side.OTHER, ground))
    for ground in (Ground.ARMREST, Ground.BANISTER)
}
SEATED = (Rest(BodyPart.PELVIS, on=Ground.SEAT), *BOTH_FEET, *HANDS_ON[Ground.ARMREST])
LYING = Pose(name="start", posture=Posture.ON_BACK)


def _height(motion: Motion, side: Side) -> float:
    hand = np.array([limb(side, "hand")])
    return float(motion.keys[0].placed.points(hand, np.array([[0.0, -0.05, 0.0]]))[0, 1])


def _still(*props: object, pose: Pose = LYING) -> Scene:
    return Scene(move([pose]), tuple(props))  # type: ignore[arg-type]


def test_hands_lie_on_armrests_and_banister() -> None:
    """Hands that hold an armrest or a banister are at its height."""
    setting = Setting()
    seated = move([Pose(name="start", posture=Posture.SITTING, rests_on=SEATED)])
    held = (*BOTH_FEET, *HANDS_ON[Ground.BANISTER])
    standing = move([Pose(name="start", posture=Posture.STANDING, rests_on=held)])
    for side in (Side.OPERATED, Side.OTHER):
        assert _height(seated, side) == pytest.approx(setting.seat + setting.armrest, abs=1e-3)
        assert _height(standing, side) == pytest.approx(setting.banister, abs=1e-3)


@pytest.mark.parametrize("side", [Side.OPERATED, Side.OTHER])
def test_a_second_step_is_twice_as_high(side: Side) -> None:
    """A foot on the second step stands two steps above the floor."""
    rests = tuple(Rest(BodyPart.FOOT, one, Ground.STEP) for one in (Side.OPERATED, Side.OTHER))
    high = tuple(replace(rest, on=Ground.SECOND_STEP) if rest.side is side else rest for rest in rests)
    keys = move([Pose(name="start", posture=Posture.STANDING, rests_on=high)]).keys
    feet = keys[0].placed.origins[[limb(side, "foot"), limb(Side.OTHER, "foot")], 1]
    low = keys[0].placed.origins[[limb(rest.side, "foot") for rest in rests], 1].min()
    assert feet[0] - low == pytest.approx(Setting().step, abs=1e-3)


@pytest.mark.parametrize(
    ("plain", "more"),
    [
        (Chair(), Chair(arms=True)),
        (Floor(), Bike()),
        (Floor(), CarSeat()),
        (Step(), Step(flight=True)),
        (Floor(), Banister()),
        (Floor(), Strap(Side.OPERATED)),
        (Floor(), Reacher(Side.OPERATED)),
        (Bed(), Pillow(under=Limit.ANKLES)),
        (Bed(), Pillow(under=Limit.FEET)),
        (Bed(), Pillow(between=Limit.KNEES)),
    ],
)
def test_a_thing_is_drawn(plain: object, more: object) -> None:
    """Armrests, more steps, banister, strap, reacher and pillows at the legs add to the picture."""
    marks = [len(draw(_still(thing), PALETTE)[0].marks) for thing in (plain, more)]
    extra = len(draw(_still(plain, more), PALETTE)[0].marks)
    assert extra > marks[0]
    assert marks[1] != marks[0] or extra > marks[0] + 1


@pytest.mark.parametrize("towards", list(Towards))
def test_a_press_is_an_arrow_where_nothing_moves(towards: Towards) -> None:
    """Work without movement has an arrow too: two paths with their rims, in the colour of work."""
    still = _still(Bed())
    pressed = replace(still, press=(Press(Side.OPERATED, Follow.KNEE, towards),))
    assert PALETTE.work not in strip(still, PALETTE)
    assert PALETTE.work in strip(pressed, PALETTE)


def test_buttocks_can_work() -> None:
    """The buttocks stand out by colour and hatching, like a limb."""
    works = replace(_still(Bed()), working=frozenset({(Side.MIDDLE, "buttocks")}))
    assert PALETTE.work_shade in strip(works, PALETTE)


def test_where_nothing_moves_the_plain_view_is_taken() -> None:
    """A single pose shows no movement, so it is seen from the side and not from above."""
    assert view_of(_still(Bed())) is View.SIDE
    assert choose(move([Pose(name="start", posture=Posture.STANDING)])) is View.SIDE


@pytest.mark.parametrize(("view", "any_far"), [(View.FRONT, False), (View.BACK, False), (View.SIDE, True)])
def test_no_limb_is_far_from_straight_before_or_behind(view: View, any_far: bool) -> None:
    """From the front both legs are equally near; from the side one is clearly away."""
    motion = move(SIT_TO_STAND)
    assert bool(far_limbs(motion, seen_from(view, motion))) is any_far


def test_a_stair_goes_on_beside_a_single_foot() -> None:
    """A step under one foot is far wider than the foot, so that it looks like a stair, not like a block."""
    motion = move([STEP_UP[0]])
    room = Room(motion, seen_from(View.FRONT, motion), PALETTE)
    left, _, right, _ = extent(mark.data for mark in room.step(motion.keys[0]).marks)
    assert right - left > 4 * FOOT_BREADTH * UNITS


def test_a_crutch_stands_where_the_lower_foot_stands() -> None:
    """On a step the crutch stands on the step too, so the hand is higher by one step."""
    grip = Rest(BodyPart.HAND, Side.OPERATED, Ground.GRIP)
    on_step = tuple(replace(rest, on=Ground.STEP) for rest in BOTH_FEET)
    heights = [
        _height(move([Pose(name="start", posture=Posture.STANDING, rests_on=(*feet, grip))]), Side.OPERATED)
        for feet in (BOTH_FEET, on_step)
    ]
    assert heights[1] - heights[0] == pytest.approx(Setting().step, abs=1e-3)
