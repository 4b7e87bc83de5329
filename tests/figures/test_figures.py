"""A figure tells operated from other, working from resting, start from finish, without a letter."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ElementTree
from dataclasses import replace

import numpy as np
import pytest

from generator.body.motion import Motion, move
from generator.body.pose import Side
from generator.figures.camera import View, choose, seen_from
from generator.figures.extent import extent
from generator.figures.moving import MOST_BYTES, ROUNDS, moving
from generator.figures.palette import Palette
from generator.figures.paths import CLOSES, as_drawn, polygon, written
from generator.figures.props import Band, Chair, Floor, Limit, Mat, Pillow, Worktop
from generator.figures.rules import around
from generator.figures.scene import Scene, draw, stills, strip
from generator.figures.shapes import circle, curve
from generator.problems import Place
from tests.body.movements import KNEE_STRAIGHTENING, MOVEMENTS, SIDE_LYING, SQUAT
from tests.figures.palettes import PALETTE, RING, TOKENS

LEG = frozenset({(Side.OPERATED, "leg")})
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


@pytest.fixture(scope="module")
def side_lying() -> Scene:
    """Return a side-lying leg lift on a mat."""
    return Scene(move(SIDE_LYING), (Mat(), Pillow()), LEG)


def _view_box(svg: str) -> list[float]:
    return [float(value) for value in ElementTree.fromstring(svg).attrib["viewBox"].split()]


@pytest.mark.parametrize("name", MOVEMENTS)
def test_no_figure_holds_a_letter(name: str) -> None:
    """Figures have no text: letters would need translating, and break in right-to-left PDFs."""
    for svg in stills(Scene(move(MOVEMENTS[name]), working=LEG), PALETTE):
        tags = {element.tag.split("}")[1] for element in ElementTree.fromstring(svg).iter()}
        assert tags <= {"svg", "g", "path"}


def test_no_figure_holds_script_or_style(side_lying: Scene) -> None:
    """The site's content policy forbids inline script and style, in the moving picture too."""
    for svg in (strip(side_lying, PALETTE), moving(side_lying, PALETTE)):
        assert not re.search(r"<script|<style|style=|\son\w+=|javascript:", svg)


def test_every_colour_comes_from_the_palette(side_lying: Scene) -> None:
    """A figure never has a colour of its own."""
    colours = set(re.findall(r'(?:fill|stroke)="(#[^"]*)"', strip(side_lying, PALETTE)))
    assert colours <= set(TOKENS.values())


def test_a_missing_token_is_told() -> None:
    """A palette without one of its tokens is a KeyError that names the token."""
    tokens = {name: value for name, value in TOKENS.items() if name != "--pb-figure-skin-far"}
    with pytest.raises(KeyError, match="--pb-figure-skin-far"):
        Palette.from_tokens(tokens)


def test_start_and_finish_have_one_scale_and_one_ground(side_lying: Scene) -> None:
    """Start and finish share their box, so that the same place on paper is the same place in the room."""
    boxes = [_view_box(svg) for svg in stills(side_lying, PALETTE)]
    assert boxes[0] == boxes[1]


def test_the_working_limb_is_hatched(side_lying: Scene) -> None:
    """The working limb has lines of its own, so that it stands out on a black-and-white copy."""
    resting = replace(side_lying, working=frozenset())
    assert PALETTE.work_shade in strip(side_lying, PALETTE)
    assert PALETTE.work_shade not in strip(resting, PALETTE)


def test_the_operated_joint_has_a_ring_and_only_the_finish_an_arrow(side_lying: Scene) -> None:
    """The ring is a circle that no other part of a figure has; the arrow leads to the finish."""
    start, finish = stills(replace(side_lying, working=frozenset()), PALETTE)
    assert RING in start
    assert RING in finish
    assert PALETTE.work not in start
    assert PALETTE.work in finish
    assert RING not in strip(replace(side_lying, operated=None), PALETTE)


def test_a_left_operated_side_is_the_mirror_image(side_lying: Scene) -> None:
    """For the left side the same picture is turned over: same box, same paths, one mirroring."""
    right, left = stills(side_lying, PALETTE)[0], stills(replace(side_lying, left=True), PALETTE)[0]
    assert _view_box(right) == _view_box(left)
    x, _, width, _ = _view_box(right)
    assert f"matrix(-1 0 0 1 {2 * x + width:g}" in left
    assert right.count("<path") == left.count("<path")


@pytest.mark.parametrize(
    ("name", "view"),
    [
        ("bridge", View.SIDE),
        ("side-lying", View.FRONT),
        ("squat", View.SIDE),
        ("sit to stand", View.SIDE),
        ("knee straightening", View.SIDE),
    ],
)
def test_the_camera_shows_the_movement(name: str, view: View) -> None:
    """Movements in the plane of walking are seen from the side, movements sideways from the front."""
    assert choose(move(MOVEMENTS[name]), frozenset({View.BACK})) is view


def test_the_editor_overrules_the_camera(side_lying: Scene) -> None:
    """A view that the editor names is taken, whatever shows most."""
    above = replace(side_lying, view=View.ABOVE)
    assert _view_box(stills(above, PALETTE)[0]) != _view_box(stills(side_lying, PALETTE)[0])


@pytest.mark.parametrize("view", list(View))
def test_a_camera_is_a_rotation(view: View) -> None:
    """Right, up and towards the viewer are at right angles and of length one: nothing is stretched."""
    lens = seen_from(view, move(SQUAT))
    axes = np.array([lens.right, lens.up, lens.towards])
    assert axes @ axes.T == pytest.approx(np.eye(3), abs=1e-12)


@pytest.mark.parametrize("name", MOVEMENTS)
def test_the_moving_picture_is_small_and_stops(name: str) -> None:
    """Under 25 KB, three rounds, then the first frame; every round is the same length."""
    svg = moving(Scene(move(MOVEMENTS[name]), (Floor(),), LEG), PALETTE)
    assert len(svg.encode()) < MOST_BYTES
    root = ElementTree.fromstring(svg)
    played = [element for element in root.iter() if element.tag.endswith("animate")]
    assert len(played) > 2
    assert {element.attrib["repeatCount"] for element in played} == {str(ROUNDS)} == {"3"}
    shown = [
        group for group in root.iter() if group.tag.endswith("}g") and group.find("{*}animate") is not None
    ]
    assert [group.attrib.get("visibility") for group in shown] == [None] + ["hidden"] * (len(shown) - 1)


def test_one_frame_is_seen_at_any_time() -> None:
    """At every moment of a round exactly one frame is visible: no flicker, no double image."""
    svg = moving(Scene(move(KNEE_STRAIGHTENING), (Floor(), Chair()), LEG), PALETTE)
    played = [element for element in ElementTree.fromstring(svg).iter() if element.tag.endswith("animate")]
    tracks = []
    for element in played:
        times = [float(time) for time in element.attrib["keyTimes"].split(";")]
        tracks.append((times, element.attrib["values"].split(";")))
    for moment in np.linspace(0.003, 0.997, 200):
        states = [
            values[max(i for i, time in enumerate(times) if time <= moment)] for times, values in tracks
        ]
        assert states.count("visible") == 1, moment


def test_compact_paths_lead_to_the_same_points() -> None:
    """Relative whole numbers add up to the absolute ones, without drifting, also where a command goes on."""
    line = curve([(1.1, 2.2), (10.3, -4.4), (3.0, 3.0), (12.0, 5.5), (20.2, 7.7), (1.0, -9.9), (1.0, 1.0)])
    data, (small,) = as_drawn(line), written([line], 2)
    assert small.count("q") < data.count("Q")
    x, y = 0.0, 0.0
    for command, text in re.findall(r"([Mlq])([^Mlqz]*)", small):
        values = [float(value) for value in _NUMBER.findall(text)]
        size = 4 if command == "q" else 2
        for start in range(0, len(values), size):
            step = values[start : start + size][-2:]
            x, y = step if command == "M" else (x + step[0], y + step[1])
    assert (x, y) == (2, 2)
    assert len(small) < len(data)


def test_a_polygon_is_written_with_sharp_corners_and_closed() -> None:
    """Straight lines lead from corner to corner, and back to the first."""
    assert written([polygon(np.array([(0.0, 0.0), (3.0, 0.0), (3.0, 4.0)]))], 1) == ["M0 0l3 0 0 4z"]


def test_a_circle_is_round() -> None:
    """Eight bends leave a circle by less than 0.4 % of its radius: points of the bends lie on it."""
    points, kinds = circle(10.0, -5.0, 100.0).found
    bends = (points - (100, -50)) / 10
    for end, corner, start in zip(bends[2::2], bends[1::2], bends[0::2], strict=False):
        for share in np.linspace(0.0, 1.0, 5):
            x, y = (1 - share) ** 2 * start + 2 * share * (1 - share) * corner + share**2 * end
            assert np.hypot(x, y) == pytest.approx(100.0, abs=0.5)
    assert kinds[-1] >= CLOSES


def test_the_same_movement_gives_the_same_bytes() -> None:
    """Drawing is deterministic, still and moving."""
    one, two = (Scene(move(SIDE_LYING), (Mat(), Pillow()), LEG) for _ in range(2))
    assert strip(one, PALETTE) == strip(two, PALETTE)
    assert moving(one, PALETTE) == moving(two, PALETTE)


def test_a_band_that_pulls_needs_an_anchor_and_a_worktop_needs_hands() -> None:
    """A band at one leg without an anchor, and furniture nobody uses, are named with their place."""
    place = Place("content/exercises/kick.yml", 40, 3)
    motion: Motion = move(SIDE_LYING)
    problems = around((Band(Limit.ANKLES, Side.OPERATED), Worktop()), motion, place)
    assert [problem.code for problem in problems] == ["figure-band-anchor", "figure-prop-unused"]
    assert {problem.place for problem in problems} == {place}
    assert around((Band(Limit.THIGHS), Mat()), motion, place) == ()


def test_each_picture_lies_inside_its_frame(side_lying: Scene) -> None:
    """Nothing is cut off: every point of every mark is inside the picture's box."""
    for picture in draw(side_lying, PALETTE):
        left, top, right, bottom = extent(mark.data for mark in picture.marks)
        assert picture.box[0] < left
        assert picture.box[1] < top
        assert picture.box[2] > right
        assert picture.box[3] > bottom
