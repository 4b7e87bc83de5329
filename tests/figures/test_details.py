"""What is too small or too hidden is shown besides; fittings stand under whoever uses them."""

from __future__ import annotations

import numpy as np
import pytest

from generator.body.motion import move
from generator.body.pose import SIDES, BodyPart, Ground, Pose, Rest, Side
from generator.body.skeleton import limb
from generator.catalogue.terms import Joint, Movement, Posture
from generator.figures.arrows import Follow
from generator.figures.camera import UNITS, View, seen_from
from generator.figures.details import Detail, detailed
from generator.figures.extent import extent
from generator.figures.fittings import fitted
from generator.figures.furniture import Room
from generator.figures.legs import HALF, on_leg
from generator.figures.pillows import Pillows
from generator.figures.props import CarSeat, Limit, Pillow, Scales, Toilet
from generator.figures.rules import UNUSED, around
from generator.figures.scene import Scene, draw
from generator.problems import Place
from tests.body.movements import BOTH_FEET
from tests.figures.palettes import PALETTE

STANDING = Pose(name="start", posture=Posture.STANDING)
ON_BACK = Pose(name="start", posture=Posture.ON_BACK)
SEATED = Pose(
    name="start",
    posture=Posture.SITTING,
    rests_on=(Rest(BodyPart.PELVIS, on=Ground.SEAT), *BOTH_FEET),
)


def _dropped(degrees: float) -> Pose:
    """Return a stand on the operated leg with the other side of the pelvis sunk by `degrees`."""
    angles = {
        (Side.OPERATED, Joint.HIP, Movement.ADDUCTION): degrees,
        (Side.OTHER, Joint.HIP, Movement.ABDUCTION): degrees,
        (Side.OTHER, Joint.KNEE, Movement.FLEXION): 40.0,
    }
    return Pose(
        name="start",
        posture=Posture.STANDING,
        angles=angles,
        rests_on=(Rest(BodyPart.FOOT, Side.OPERATED),),
    )


def _slant(pose: Pose) -> float:
    """Return how far from level the line along the pelvis is, as a share of its length."""
    motion = move([pose])
    lens = seen_from(View.BACK, motion)
    line = detailed(Detail.PELVIS_LINE, motion.keys[0], lens, PALETTE)[-1]
    level = detailed(Detail.PELVIS_LINE, motion.keys[0], lens, PALETTE)[1]
    left, top, right, bottom = extent([line.data])
    _, above, _, below = extent([level.data])
    return ((bottom - top) - (below - above)) / (right - left)


def test_the_line_along_the_pelvis_tilts_as_the_pelvis_does() -> None:
    """A level pelvis lies on the broken line; one that sinks 10 degrees leaves it by the tangent of 10."""
    assert _slant(STANDING) == pytest.approx(0.0, abs=0.01)
    assert _slant(_dropped(10.0)) == pytest.approx(np.tan(np.radians(10)), abs=0.05)


def test_squeezed_buttocks_are_shown_in_a_window_above_the_legs() -> None:
    """The window adds the colour of work and two arrows to a picture that has neither, above the person."""
    plain = Scene(move([ON_BACK]), view=View.SIDE)
    shown = Scene(move([ON_BACK]), view=View.SIDE, detail=Detail.BUTTOCKS)
    (without,), (with_window,) = draw(plain, PALETTE), draw(shown, PALETTE)
    assert PALETTE.work not in {mark.fill for mark in without.marks}
    assert PALETTE.work in {mark.fill for mark in with_window.marks}
    assert with_window.box[1] < without.box[1] - 30
    assert with_window.box[3] == without.box[3]


def test_a_scale_lies_under_each_foot() -> None:
    """Each foot stands between the edges of a plate."""
    motion = move([STANDING])
    lens = seen_from(View.FRONT, motion)
    (layer,) = fitted(Scales(), Room(motion, lens, PALETTE), motion.keys[0])
    left, _, right, _ = extent([mark.data for mark in layer.marks])
    feet = lens.flat(motion.keys[0].placed.origins[[limb(side, "foot") for side in SIDES]])
    assert left < feet[:, 0].min() < feet[:, 0].max() < right


def test_a_toilet_is_under_the_pelvis_and_needs_one_who_sits() -> None:
    """Bowl and seat are where the pelvis is; nobody sitting is told."""
    sitting, standing = move([SEATED]), move([STANDING])
    lens = seen_from(View.SIDE, sitting)
    layers = fitted(Toilet(), Room(sitting, lens, PALETTE), sitting.keys[0])
    left, _, right, bottom = extent([mark.data for mark in layers[0].marks])
    x, y = lens.flat(sitting.keys[0].placed.origins[[0]])[0]
    assert left < x < right
    assert y < bottom
    assert not around([Toilet()], sitting, Place("x.yml", 1))
    assert [problem.code for problem in around([Toilet()], standing, Place("x.yml", 1))] == [UNUSED.code]


def test_a_pillow_between_legs_on_the_side_lies_on_the_lower_leg_and_is_no_thicker_than_the_gap() -> None:
    """The pillow reaches from the lower leg up to the upper one, and not over it."""
    body = move([Pose(name="start", posture=Posture.ON_SIDE)]).keys[0]
    lens = seen_from(View.FRONT, move([Pose(name="start", posture=Posture.ON_SIDE)]))
    (layer,) = Pillows(body.placed, body.skin, lens, PALETTE).layers(Pillow(between=Limit.KNEES))
    knees = [on_leg(body.placed, side, Limit.KNEES)[0] for side in SIDES]
    heights = sorted(float(lens.flat(knee[None])[0, 1]) for knee in knees)
    _, top, _, bottom = extent([mark.data for mark in layer.marks])
    half = HALF[Limit.KNEES] * UNITS
    assert heights[0] - half < top < bottom < heights[1] + 2 * half


def test_a_rising_heel_has_its_arrow_behind_it() -> None:
    """The arrow of a heel raise does not begin under the floor: its head is behind the ankle."""
    angles = {(side, Joint.ANKLE, Movement.PLANTARFLEXION): 28.0 for side in SIDES}
    toes = tuple(Rest(BodyPart.TOES, side) for side in SIDES)
    raised = Pose(name="finish", like="start", angles=angles, rests_on=toes)
    scene = Scene(
        move([STANDING, raised]), view=View.SIDE, follow=(Side.OPERATED, Follow.FOOT), operated=None
    )
    _, finish = draw(scene, PALETTE)
    head = [mark for mark in finish.marks if mark.fill == PALETTE.work][-1]
    left, _, right, _ = extent([head.data])
    lens = seen_from(View.SIDE, scene.motion)
    toe = scene.motion.keys[1].placed.origins[limb(Side.OPERATED, "foot")]
    assert (left + right) / 2 < lens.flat(toe[None])[0, 0]


def test_a_car_seat_is_shown_from_its_edge_first_and_that_is_no_movement() -> None:
    """Sitting across, the back is beside the person; turned in, it is behind. Nothing plays between them."""
    motion = move([SEATED, Pose(name="finish", like="start")])
    lens = seen_from(View.SIDE, motion)
    room = Room(motion, lens, PALETTE)
    pelvis = lens.flat(motion.keys[0].placed.origins[[0]])[0, 0]
    backs = [fitted(CarSeat(edge=True), room, key)[0] for key in motion.keys]
    first, second = (extent([mark.data for mark in back.marks]) for back in backs)
    assert first[0] < pelvis < first[2]
    assert second[2] < pelvis
    assert Scene(motion, (CarSeat(),)).plays
    assert not Scene(motion, (CarSeat(edge=True),)).plays
