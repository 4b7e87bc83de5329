"""Poses and pictures are read as typed, and every word that is not known is named with the nearest one."""

from __future__ import annotations

import pytest

from generator.catalogue.pose import BodyPart, Follow, Ground, Limb, Side, Thing, Towards
from generator.catalogue.terms import Joint, Movement, Posture
from tests.content import FILES, catalogue_of, read, with_change

PUMP = "exercises/ankle-pump.yml"
NAME = "name: Ankle pump\n"
POSES = """\
poses:
  start:
    posture: sitting
    operated: {hip: {internal rotation: 10}, knee: {flexion: 80.5}}
    middle: {lower back: {flexion: 5}}
    rests-on: [pelvis on seat, feet, other hand on thigh]
  finish:
    like: start
    slides: [operated foot]
    on-side: other
figure:
  with: [floor, {chair: {height: 50 cm, arms: yes}}, {step: 15 cm}, {band: {at: ankles}}]
  working: [operated leg, other arm]
  view: three-quarter
  arrow: other hip
  press: [operated knee down]
"""


def with_poses(old: str = "", new: str = "") -> dict[str, str]:
    """Return the small content with poses in one exercise, `old` in them replaced by `new`."""
    assert old in POSES
    return with_change(FILES, PUMP, NAME, NAME + POSES.replace(old, new, 1))


def test_poses_are_read_as_typed_and_in_their_order() -> None:
    """Angles of all sides, what rests on what, and likeness: nothing is filled in while reading."""
    start, finish = catalogue_of(with_poses()).exercises["ankle-pump"].poses
    assert (start.id, finish.id) == ("start", "finish")
    assert start.posture is Posture.SITTING
    assert [(one.side, one.joint, one.movement, one.degrees) for one in start.angles] == [
        (Side.OPERATED, Joint.HIP, Movement.INTERNAL_ROTATION, 10),
        (Side.OPERATED, Joint.KNEE, Movement.FLEXION, 80.5),
        (Side.MIDDLE, Joint.LOWER_BACK, Movement.FLEXION, 5),
    ]
    assert start.rests_on is not None
    assert [(one.part, one.sides, one.on) for one in start.rests_on] == [
        (BodyPart.PELVIS, (Side.MIDDLE,), Ground.SEAT),
        (BodyPart.FOOT, (Side.OPERATED, Side.OTHER), None),
        (BodyPart.HAND, (Side.OTHER,), Ground.THIGH),
    ]
    assert (finish.like, finish.posture, finish.rests_on, finish.on_side) == ("start", None, None, Side.OTHER)
    assert [one.part for one in finish.slides] == [BodyPart.FOOT]


def test_an_angle_keeps_its_place() -> None:
    """A finding about one angle points at its number."""
    start = catalogue_of(with_poses()).exercises["ankle-pump"].poses[0]
    assert (start.angles[1].place.line, start.angles[1].place.column) == (5, 62)


def test_a_picture_is_read_as_typed() -> None:
    """Things alone, with one word or with keys; limbs, view, arrow and what presses."""
    figure = catalogue_of(with_poses()).exercises["ankle-pump"].figure
    assert figure is not None
    assert [thing.thing for thing in figure.things] == [Thing.FLOOR, Thing.CHAIR, Thing.STEP, Thing.BAND]
    assert (figure.things[1].height, figure.things[1].arms, figure.things[2].height) == (50, True, 15)
    assert figure.working == ((Side.OPERATED, Limb.LEG), (Side.OTHER, Limb.ARM))
    assert figure.arrow == (Side.OTHER, Follow.HIP)
    assert figure.press == ((Side.OPERATED, Follow.KNEE, Towards.DOWN),)
    assert not figure.no_arrow


@pytest.mark.parametrize(
    ("old", "new", "code", "says"),
    [
        ("{hip: {internal", "{hipp: {internal", "unknown-choice", "did you mean 'hip'?"),
        ("{flexion: 5}", "{flexoin: 5}", "unknown-choice", "did you mean 'flexion'?"),
        ("80.5", "eighty", "wrong-kind", "a number in digits"),
        ("80.5", "80.5 deg", "wrong-kind", "a number in digits"),
        ("80.5", "900", "out-of-range", "900"),
        ("{hip: {internal rotation: 10}, ", "{hip: 10, ", "wrong-kind", "{flexion: 45}"),
        ("{lower back: {flexion: 5}}", "bent", "wrong-kind", "joints and their angles"),
        ("posture: sitting", "posture: siting", "unknown-choice", "did you mean 'sitting'?"),
        ("feet,", "foot,", "wrong-kind", "operated foot"),
        ("feet,", "feet on the moon,", "wrong-kind", "operated foot"),
        ("pelvis on seat", "operated pelvis on seat", "wrong-kind", "operated foot"),
        ("[operated foot]", "[left foot]", "wrong-kind", "operated foot"),
        ("on-side: other", "on-side: left", "wrong-kind", "operated or other"),
        ("[floor,", "[flor,", "unknown-choice", "did you mean 'floor'?"),
        ("{step: 15 cm}", "{step: 15}", "wrong-kind", "15 cm"),
        ("{band: {at: ankles}}", "band", "missing-key", "at"),
        ("{band: {at: ankles}}", "{band: {at: toes}}", "unknown-choice", "toes"),
        ("{band: {at: ankles}}", "{band: ankles, mat: yes}", "wrong-kind", "one thing"),
        ("other arm", "other ear", "wrong-kind", "operated leg"),
        ("arrow: other hip", "arrow: hip", "wrong-kind", "arrow"),
        ("arrow: other hip", "arrow: other pelvis", "wrong-kind", "arrow"),
        ("knee down", "knee up", "wrong-kind", "operated knee down"),
    ],
)
def test_a_word_that_is_not_known_is_named(old: str, new: str, code: str, says: str) -> None:
    """Each mistake is one finding, with words that help."""
    found = read(with_poses(old, new)).problems
    assert [problem.code for problem in found] == [code]
    assert says in f"{found[0].message}\n{found[0].remedy}"
    assert found[0].place.line > 1


def test_no_arrow_is_a_choice() -> None:
    """An editor can say that there is none, which is not the same as saying nothing."""
    figure = catalogue_of(with_poses("other hip", "none")).exercises["ankle-pump"].figure
    assert figure is not None
    assert (figure.no_arrow, figure.arrow) == (True, None)


def test_nothing_but_poses_is_no_pose() -> None:
    """The key without a pose under it is a mistake, not a picture of nothing."""
    files = with_change(FILES, PUMP, NAME, NAME + "poses: {}\n")
    assert [problem.code for problem in read(files).problems] == ["out-of-range"]
