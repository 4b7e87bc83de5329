"""Puts a picture together: person, things around, arrow, the operated joint's ring."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum
from functools import cached_property

import numpy as np

from generator.body.motion import Body, Motion
from generator.body.pose import Side
from generator.body.skeleton import SKELETON, limb
from generator.figures.arrows import Follow, Press, arrow, presses
from generator.figures.bike import Bike as TrainingBike
from generator.figures.camera import Camera, View, choose, seen_from
from generator.figures.details import Detail, detailed
from generator.figures.extent import extent
from generator.figures.fittings import fitted
from generator.figures.furniture import Room
from generator.figures.held import Held
from generator.figures.ink import Layer, Mark, markup, paint, small
from generator.figures.palette import Palette
from generator.figures.person import Look, Person, far_limbs
from generator.figures.props import Bed, Bike, CarSeat, Prop, Where, Worktop
from generator.figures.shapes import circle, number

MARGIN = 6.0
FINE = 4  # whole numbers at four times the size: a quarter of a drawing unit, 0.1 mm on paper
_GAP = 26.0
_OVER_THE_WORKTOP = frozenset({View.FRONT, View.THREE_QUARTER})


class Operated(Enum):
    """Which joint was operated on: the one that carries the ring."""

    HIP = "thigh"
    KNEE = "shank"
    ANKLE = "foot"
    SHOULDER = "upper arm"
    ELBOW = "forearm"


@dataclass(frozen=True)
class Scene:
    """All that one figure shows.

    working: limbs that work, such as (Side.OPERATED, "leg"). operated: the ringed joint; None for no ring.
    view: None lets the movement choose. follow: what the arrow follows; None lets the movement choose.
    left: the operated side is the left one, so the picture is mirrored. press: what presses in the last pose.
    detail: what is shown besides.
    """

    motion: Motion
    props: tuple[Prop, ...] = ()
    working: frozenset[tuple[Side, str]] = field(default_factory=frozenset)
    operated: Operated | None = Operated.HIP
    view: View | None = None
    follow: tuple[Side, Follow] | None = None
    arrow: bool = True
    left: bool = False
    press: tuple[Press, ...] = ()
    detail: Detail | None = None

    @property
    def plays(self) -> bool:
        """Return whether the poses are one movement; who sits on a seat's edge turns with it out of sight."""
        edge = any(isinstance(prop, CarSeat | Bed) and prop.edge for prop in self.props)
        return len(self.motion.keys) > 1 and not edge


@dataclass(frozen=True)
class Picture:
    """One drawn pose: its marks and the box they fill (left, top, right, bottom)."""

    marks: tuple[Mark, ...]
    box: tuple[float, float, float, float]

    def content(self, fine: int) -> str:
        """Return the marks as SVG, `fine` times as large; at 1 as they were drawn."""
        return self._small if fine == FINE else markup(self.marks)

    @cached_property
    def _small(self) -> str:
        return small(self.marks, FINE)


def view_of(scene: Scene) -> View:
    """Return the view the editor asked for, else the one that shows most."""
    if scene.view is not None:
        return scene.view
    before = any(isinstance(prop, Worktop) and prop.where is Where.FRONT for prop in scene.props)
    return choose(scene.motion, _OVER_THE_WORKTOP if before else frozenset({View.BACK}))


def ring(lens: Camera, body: Body, scene: Scene, palette: Palette) -> list[Mark]:
    """Return the mark of the operated joint: a ring with a point, broken where the body hides it."""
    if scene.operated is None:
        return []
    segment = limb(Side.OPERATED, scene.operated.value)
    placed = body.placed
    out = placed.rotations[SKELETON.parents[segment]] @ np.array([0.0, 0.0, 1.0])
    point = placed.origins[segment] + 0.02 * out
    x, y = (float(value) for value in lens.flat(point[None])[0])
    hidden = float(out @ lens.towards) < -0.3
    outer = circle(x, y, 7.2)
    dash = "2.6 2.2" if hidden else ""
    marks = [Mark(outer, "" if hidden else palette.ground, palette.ground, 4.6)]
    marks.append(Mark(outer, "", palette.line, 1.9, dash))
    if not hidden:
        marks.append(Mark(circle(x, y, 2.2), palette.line))
    return marks


def draw(scene: Scene, palette: Palette) -> tuple[Picture, ...]:
    """Return one picture for each key pose, all in the same coordinates and the same scale."""
    lens = seen_from(view_of(scene), scene.motion)
    room = Room(scene.motion, lens, palette)
    look = Look(palette, scene.working, far_limbs(scene.motion, lens))
    pictures = []
    for number_, body in enumerate(scene.motion.keys):
        layers = layers_of(scene, body, lens, room, look)
        marks = [*paint(layers), *ring(lens, body, scene, palette)]
        marks += detailed(scene.detail, body, lens, palette)
        if scene.arrow and number_:
            marks += arrow(scene.motion, lens, palette, scene.follow, number_ - 1)
        if number_ == len(scene.motion.keys) - 1:
            marks += presses(body, lens, palette, scene.press)
        pictures.append(Picture(tuple(marks), _box(marks)))
    return tuple(pictures)


def layers_of(scene: Scene, body: Body, lens: Camera, room: Room, look: Look) -> list[Layer]:
    """Return the layers of one pose with everything around it."""
    person = Person(body, lens, look)
    layers = person.layers()
    held = Held(body, room, lens, look.palette)
    for prop in scene.props:
        layers += room.layers(prop, body) + held.layers(prop) + fitted(prop, room, body)
        if isinstance(prop, Bike):
            layers += TrainingBike(room, lens, look.palette).layers(body)
    return layers


def _box(marks: list[Mark]) -> tuple[float, float, float, float]:
    left, top, right, bottom = extent(mark.data for mark in marks)
    return left - MARGIN, top - MARGIN, right + MARGIN, bottom + MARGIN


def frame_of(pictures: tuple[Picture, ...]) -> tuple[float, float, float, float]:
    """Return the box that holds all pictures."""
    boxes = np.array([picture.box for picture in pictures])
    low, high = boxes[:, :2].min(axis=0), boxes[:, 2:].max(axis=0)
    return float(low[0]), float(low[1]), float(high[0]), float(high[1])


def svg(content: str, box: tuple[float, float, float, float], left_side: bool, fine: int = 1) -> str:
    """Return an SVG document for marks inside a box; mirrored for a left operated side.

    fine: how many times as large as the box the content is written.
    """
    left, top, right, bottom = (edge * fine for edge in box)
    width, height = right - left, bottom - top
    if left_side:
        content = f'<g transform="matrix(-1 0 0 1 {number(left + right)} 0)">{content}</g>'
    view = " ".join(number(value) for value in (left, top, width, height))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{view}" width="{number(width)}" '
        f'height="{number(height)}" fill="none" stroke-linecap="round" stroke-linejoin="round">'
        f"{content}</svg>"
    )


def stills(scene: Scene, palette: Palette) -> tuple[str, ...]:
    """Return one SVG for each key pose: same box, same scale, same ground line."""
    return drawn_stills(draw(scene, palette), scene.left)


def drawn_stills(pictures: tuple[Picture, ...], left: bool) -> tuple[str, ...]:
    """Return the stills of pictures that are drawn already; `left` mirrors them."""
    frame = frame_of(pictures)
    return tuple(svg(picture.content(FINE), frame, left, FINE) for picture in pictures)


def strip(scene: Scene, palette: Palette) -> str:
    """Return all key poses side by side in one SVG, start first as the reader's eye goes."""
    return drawn_strip(draw(scene, palette), scene.left)


def drawn_strip(pictures: tuple[Picture, ...], left: bool, fine: int = FINE) -> str:
    """Return the strip of pictures that are drawn already; `left` mirrors each of them.

    fine: 1 for paths as they were drawn, else short ones.
    """
    _, top, _, bottom = frame_of(pictures)
    parts, at = [], 0.0
    for picture in pictures:
        inner, outer = picture.box[0], picture.box[2]
        content = picture.content(fine)
        if left:
            content = f'<g transform="matrix(-1 0 0 1 {number((at + outer) * fine)} 0)">{content}</g>'
        else:
            content = f'<g transform="translate({number((at - inner) * fine)} 0)">{content}</g>'
        parts.append(content)
        at += outer - inner + _GAP
    return svg("".join(parts), (0.0, top, at - _GAP, bottom), False, fine)
