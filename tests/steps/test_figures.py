"""From what an editor types to pictures: nothing is lost on the way, and who draws makes no difference."""

from __future__ import annotations

from enum import Enum
from pathlib import Path

import pytest

from generator.body.from_catalogue import posed_items
from generator.catalogue import pose
from generator.catalogue.values import Catalogue
from generator.figures import arrows, camera, props
from generator.figures.person import Limb
from generator.figures.scene import Operated
from generator.steps.figures import draw_all, draw_anew, palette_of, props_of, scene_of, thing_problems
from tests.content import FILES, catalogue_of, with_change
from tests.figures.palettes import RING

TOKENS = (Path(__file__).resolve().parents[2] / "site_assets" / "tokens.css").read_text(encoding="utf-8")
PALETTE = palette_of(TOKENS)
PUMP = "exercises/ankle-pump.yml"
RAISE = "exercises/heel-raise.yml"
POSES = """\
finish: Your toes point away from you.
poses:
  start:
    operated: {ankle: {dorsiflexion: 0}}
  finish:
    like: start
    operated: {ankle: {plantarflexion: 20}}
"""
FIGURE = "figure:\n  with: [bed, pillow]\n"


def drawn(figure: str = FIGURE) -> Catalogue:
    """Return the small content with poses in one exercise."""
    files = with_change(FILES, PUMP, "name: Ankle pump\n", "name: Ankle pump\n" + POSES + figure)
    return catalogue_of(files)


@pytest.mark.parametrize(
    ("typed", "figures"),
    [
        (pose.View, camera.View),
        (pose.Follow, arrows.Follow),
        (pose.Towards, arrows.Towards),
        (pose.Where, props.Where),
        (pose.Limit, props.Limit),
    ],
)
def test_whatever_an_editor_can_type_can_be_drawn(typed: type[Enum], figures: type[Enum]) -> None:
    """Figures know no catalogue, so their words are their own; they are the words an editor types."""
    assert {member.value for member in typed} == {member.value for member in figures}


def test_limbs_are_called_alike() -> None:
    """A limb that can be named as working can be coloured."""
    names = {value for name, value in vars(Limb).items() if name.isupper()}
    assert {member.value for member in pose.Limb} == names


@pytest.mark.parametrize(
    ("typed", "prop"),
    [
        ("mat", props.Mat()),
        ("{chair: {back: no, height: 50 cm}}", props.Chair(back=False)),
        ("{worktop: behind}", props.Worktop(props.Where.BEHIND)),
        ("wall", props.Wall()),
        ("{step: 20 cm}", props.Step()),
        ("{band: {at: ankles}}", props.Band(props.Limit.ANKLES)),
        (
            "{band: {at: knees, anchor: {forward: 34 cm, up: 17 cm}}}",
            props.Band(props.Limit.KNEES, pose.Side.OPERATED, (0.2, 0.1, 0.0)),
        ),
        ("{pillow: knees}", props.Pillow(props.Limit.KNEES)),
        ("{towel-roll: operated}", props.TowelRoll(props.Limit.KNEES, pose.Side.OPERATED)),
        ("{stick: other}", props.Stick(pose.Side.OTHER)),
        ("{helper-hands: other}", props.HelperHands(pose.Side.OTHER)),
    ],
)
def test_a_thing_is_what_was_typed(typed: str, prop: props.Prop) -> None:
    """A thing's name alone, one word after it, or keys: all lead to the thing that is drawn."""
    item = next(posed_items(drawn(f"figure:\n  with: [bed, {typed}]\n")))
    assert props_of(item) == (props.Bed(), prop)


def test_who_is_on_no_mat_and_no_bed_is_on_the_floor() -> None:
    """The ground is never missing."""
    assert props_of(next(posed_items(drawn("")))) == (props.Floor(),)


@pytest.mark.parametrize(
    ("keys", "field", "value"),
    [
        ("view: above", "view", camera.View.ABOVE),
        ("arrow: other hip", "follow", (pose.Side.OTHER, arrows.Follow.HIP)),
        ("arrow: none", "arrow", False),
        ("working: [other arm]", "working", frozenset({(pose.Side.OTHER, "arm")})),
        (
            "press: [operated knee down]",
            "press",
            (arrows.Press(pose.Side.OPERATED, arrows.Follow.KNEE, arrows.Towards.DOWN),),
        ),
    ],
)
def test_the_editor_decides_how_it_is_shown(keys: str, field: str, value: object) -> None:
    """View, arrow and limbs that stand out are as typed."""
    item = next(posed_items(drawn(f"figure:\n  {keys}\n")))
    assert getattr(scene_of(item), field) == value


def test_sizes_are_those_of_a_person_of_170_cm() -> None:
    """A step of 17 cm is a tenth of the stature; what is not typed keeps its usual size."""
    item = next(posed_items(drawn("figure:\n  with: [{step: 17 cm}]\n")))
    setting = scene_of(item).motion.setting
    assert setting.step == pytest.approx(0.1)
    assert setting.seat == pytest.approx(0.265)


def test_the_ring_is_at_the_joint_of_the_programme() -> None:
    """The operated joint of the only programme that uses an exercise is ringed without being named."""
    gallery = draw_all(drawn(), PALETTE, lefts=(False,), with_moving=False)
    assert gallery.default_joint["ankle-pump"] == "ankle"
    assert scene_of(next(posed_items(drawn())), "ankle").operated is Operated.ANKLE
    assert RING in gallery.of("ankle-pump").strip  # type: ignore[union-attr]
    assert gallery.of("ankle-pump") == gallery.of("ankle-pump", "ankle")


def test_an_exercise_of_two_joints_has_a_ring_only_where_the_joint_is_named() -> None:
    """Two programmes that operate on different joints each have their own ring; without one there is none."""
    files = with_change(FILES, PUMP, "name: Ankle pump\n", "name: Ankle pump\n" + POSES)
    path = "programmes/tendon-repair.yml"
    files["programmes/knee-repair.yml"] = files[path].replace("joint: ankle\naim", "joint: knee\naim")
    gallery = draw_all(catalogue_of(files), PALETTE, lefts=(False,), with_moving=False)
    pictures = {joint: gallery.of("ankle-pump", joint) for joint in (None, "ankle", "knee")}
    assert all(pictures.values())
    assert RING not in pictures[None].strip  # type: ignore[union-attr]
    assert len({one.strip for one in pictures.values() if one}) == 3


def test_what_has_no_poses_is_named() -> None:
    """An exercise without poses is published as text, so that nobody believes its picture is lost."""
    gallery = draw_all(drawn(), PALETTE, lefts=(False,), with_moving=False)
    assert gallery.without == ("heel-raise", "heel-raise/seated")
    assert gallery.of("heel-raise") is None


def test_a_variation_without_poses_looks_like_its_exercise() -> None:
    """A variation that changes only the pace has the picture of its exercise."""
    standing = "poses:\n  start: {posture: standing}\n"
    files = with_change(FILES, RAISE, "purpose: Makes", standing + "purpose: Makes")
    gallery = draw_all(catalogue_of(files), PALETTE, lefts=(False,), with_moving=False)
    assert gallery.of("heel-raise/seated") is gallery.of("heel-raise")
    assert gallery.without == ("ankle-pump",)


def test_left_is_right_mirrored_and_moves_too() -> None:
    """Both operated sides have all pictures; a single pose has nothing to play."""
    gallery = draw_all(drawn(), PALETTE)
    right, left = (gallery.of("ankle-pump", left=side) for side in (False, True))
    assert right is not None
    assert left is not None
    assert len(right.stills) == len(left.stills) == 2
    assert right.moving
    assert left.moving
    assert "matrix(-1 0 0 1" in left.stills[0]
    assert "matrix(-1 0 0 1" not in right.stills[0]


@pytest.mark.slow
def test_processes_draw_the_same_bytes() -> None:
    """One process or two: the same pictures, byte for byte."""
    files = with_change(FILES, PUMP, "name: Ankle pump\n", "name: Ankle pump\n" + POSES)
    standing = "poses:\n  start: {posture: standing}\n"
    catalogue = catalogue_of(with_change(files, RAISE, "purpose: Makes", standing + "purpose: Makes"))
    assert draw_all(catalogue, PALETTE) == draw_all(catalogue, PALETTE, workers=2)


def test_poses_with_errors_are_not_drawn() -> None:
    """What the checks refuse is not settled: no picture, no traceback."""
    files = with_change(
        FILES, PUMP, "name: Ankle pump\n", "name: Ankle pump\n" + POSES.replace("20}", "200}")
    )
    gallery = draw_all(catalogue_of(files), PALETTE)
    assert gallery.pictures == {}
    assert "ankle-pump" in gallery.without


@pytest.mark.parametrize(
    ("thing", "code"),
    [("{band: {at: ankles, side: operated}}", "figure-band-anchor"), ("chair", "figure-prop-unused")],
)
def test_a_thing_that_nobody_can_place_is_named(thing: str, code: str) -> None:
    """A band fixed to nothing and a chair that nobody sits on are found, with their place."""
    found = list(thing_problems(drawn(f"figure:\n  with: [bed, {thing}]\n")))
    assert [problem.code for problem in found] == [code]
    assert found[0].place.path == PUMP
    assert found[0].place.line > 1


def test_drawing_anew_counts_stills() -> None:
    """The measurement draws as many stills as it says, and nothing where there is nothing to draw."""
    assert draw_anew(drawn(), PALETTE, 5, workers=1) == 6
    assert draw_anew(catalogue_of(), PALETTE, 5, workers=1) == 0


def test_the_colours_of_figures_are_tokens_of_the_look() -> None:
    """A token that names another has its colour; nothing in a figure is coloured by hand."""
    assert PALETTE.work == "#b5460f"
    assert PALETTE.line == "#1e2b31"
