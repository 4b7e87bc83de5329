"""Draws the person: limbs, trunk, clothes, in layers from far to near, the working limb hatched."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from generator.body.motion import Body, Motion
from generator.body.pose import SIDES, Side
from generator.body.skeleton import PELVIS, limb
from generator.figures.camera import UNITS, Camera
from generator.figures.face import head_layers
from generator.figures.ink import Layer, Mark
from generator.figures.outlines import (
    ARMS,
    LEG_SHORTS,
    LEGS,
    NECK,
    SLEEVES,
    TRUNK,
    TRUNK_SHORTS,
    Ellipses,
    Index,
)
from generator.figures.palette import Palette
from generator.figures.shapes import area_path, line_path, straight

LINE = 1.5
FAR_LINE = 1.1
WORK_LINE = 2.1
_HATCH = 5.5
_TURNED = 0.3  # seen from straight before or behind, no limb is far

Shapes = NDArray[np.object_]
_JOINTS = np.array([limb(side, name) for name in ("thigh", "upper arm") for side in SIDES])
_ROOTS = np.array([0.085, 0.085, 0.052, 0.052])  # how far a limb reaches into the trunk, fraction of stature


class Limb:
    """Names of what can work: limbs, and the buttocks of both sides together."""

    LEG = "leg"
    ARM = "arm"
    BUTTOCKS = "buttocks"


@dataclass(frozen=True)
class Look:
    """How the person is coloured: limbs that work, and limbs away from the viewer, such as (side, "leg").

    coarse: fewer points and wider hatching, for pictures that must be small.
    """

    palette: Palette
    working: frozenset[tuple[Side, str]] = field(default_factory=frozenset)
    far: frozenset[tuple[Side, str]] = field(default_factory=frozenset)
    coarse: bool = False

    @property
    def tolerance(self) -> float:
        """Return how far an outline may be off, in drawing units."""
        return 0.7 if self.coarse else 0.3


def hatching(shape: BaseGeometry, colour: str, apart: float = _HATCH) -> Mark:
    """Return slanting lines over a shape (its core, so that no line ends on the outline)."""
    if shape.is_empty:
        return Mark(straight(shape))
    left, top, right, bottom = shape.bounds
    tall = bottom - top
    starts = np.arange(np.floor((left - tall) / apart) * apart, right, apart)
    ends = np.array([(0.0, bottom), (tall, top)]) + np.stack([starts, 0 * starts], axis=1)[:, None]
    slants = shapely.multilinestrings(shapely.linestrings(ends))
    return Mark(straight(shapely.intersection(shape, slants)), stroke=colour, width=0.8)


@dataclass(frozen=True)
class _Coat:
    """Colours of one limb: skin, cloth, line and its width."""

    skin: str
    cloth: str
    line: str
    width: float
    works: bool


@dataclass(frozen=True)
class _Limb:
    """One arm or leg: its chains from the trunk outwards, the rings that cloth covers, its colours."""

    chains: list[Index]
    cloth: list[Index]
    coat: _Coat


class Person:
    """One pose seen through one camera."""

    def __init__(self, body: Body, lens: Camera, look: Look) -> None:
        """Project `body`; nothing is drawn yet."""
        self.placed = body.placed
        self.lens, self.look = lens, look
        self.rings = Ellipses(body.skin, lens)
        self.trunk = self.rings.outline([TRUNK])
        self.core = shapely.buffer(self.trunk, -0.5, quad_segs=2)
        limbs = [*LEGS.values(), *ARMS.values()]
        self.whole: Shapes = np.array([self.rings.outline(chains) for chains in limbs])
        joints = lens.flat(self.placed.origins[_JOINTS])
        # Where a limb begins inside the trunk.
        self.roots: Shapes = shapely.buffer(shapely.points(joints), _ROOTS * UNITS, quad_segs=5)

    def _depth(self, chains: list[Index]) -> float:
        return float(self.rings.depths[np.concatenate(chains)].mean())

    def _coat(self, side: Side, kind: str, cloth: tuple[str, str]) -> _Coat:
        colours, far = self.look.palette, (side, kind) in self.look.far
        if (side, kind) in self.look.working:
            both = len([limb_ for limb_ in self.look.working if limb_[1] == kind]) > 1
            fill = colours.work_far if far and both else colours.work
            return _Coat(fill, fill, colours.line, WORK_LINE, True)
        if far:
            return _Coat(colours.skin_far, cloth[1], colours.far_line, FAR_LINE, False)
        return _Coat(colours.skin, cloth[0], colours.line, LINE, False)

    def _limbs(self) -> list[_Limb]:
        """Return arms and legs with their colours; a leg away from the viewer is lighter."""
        palette = self.look.palette
        legs, arms = (palette.shorts, palette.shorts_far), (palette.shirt, palette.shirt_far)
        return [
            *(_Limb(LEGS[side], LEG_SHORTS[side], self._coat(side, Limb.LEG, legs)) for side in SIDES),
            *(_Limb(ARMS[side], SLEEVES[side], self._coat(side, Limb.ARM, arms)) for side in SIDES),
        ]

    def limbs(self) -> list[Layer]:
        """Return legs and arms: skin, cloth, hatching, outline, and the creases where a limb folds."""
        limbs, tolerance = self._limbs(), self.look.tolerance
        hard = [self.rings.outline(one.chains[1:], soft=False) for one in limbs]
        cloth = [self.rings.outline(one.cloth, soft=False) for one in limbs]
        # All limbs at once: asking the geometry library costs as much as its answer.
        dressed = shapely.intersection(cloth, self.whole)
        core = shapely.buffer(self.whole, -0.7, quad_segs=2)
        inside = shapely.intersection(self.core, self.roots)
        edges = shapely.difference(shapely.boundary(self.whole), inside)
        hems = shapely.intersection(shapely.boundary(dressed), core)
        hems = shapely.difference(hems, self.roots)
        folds = self._folds(limbs, np.array(hard), core)
        layers = []
        for number, limb_ in enumerate(limbs):
            coat = limb_.coat
            marks = [
                Mark(area_path(self.whole[number], tolerance), fill=coat.skin),
                Mark(area_path(dressed[number], tolerance), fill=coat.cloth),
            ]
            if coat.works:
                apart = _HATCH * (2 if self.look.coarse else 1)
                marks.append(hatching(core[number], self.look.palette.work_shade, apart))
            marks += [
                Mark(line_path(hems[number], tolerance), stroke=coat.line, width=1.0),
                Mark(line_path(edges[number], tolerance), stroke=coat.line, width=coat.width),
                Mark(line_path(folds[number], tolerance), stroke=coat.line, width=1.0),
            ]
            layers.append(Layer(self._depth(limb_.chains), tuple(marks), self.rings.cross(limb_.chains)))
        return layers

    def _folds(self, limbs: list[_Limb], lower: Shapes, core: Shapes) -> Shapes:
        """Return the creases where shank or forearm lies on the limb above, without knee and elbow."""
        upper = [self.rings.outline(one.chains[:1], soft=False) for one in limbs]
        folds = shapely.intersection(shapely.boundary(lower), core)
        knuckles = shapely.minimum_bounding_circle(shapely.intersection(lower, upper))
        bent = shapely.area(knuckles) < 0.45 * shapely.area(lower)
        folds[bent] = shapely.difference(folds[bent], knuckles[bent])
        return np.asarray(folds)

    def trunk_layer(self) -> Layer:
        """Return the trunk: shirt and shorts."""
        palette = self.look.palette
        shorts = self.rings.outline([TRUNK_SHORTS], soft=False).intersection(self.trunk)
        # The first two limbs are the legs.
        near = shapely.intersection(self.whole[:2], self.roots[:2])
        hips = shapely.buffer(shapely.union(*near), -0.5, quad_segs=2)
        hem = shorts.boundary.intersection(self.core)
        works = (Side.MIDDLE, Limb.BUTTOCKS) in self.look.working
        marks = (
            Mark(area_path(self.trunk), fill=palette.shirt),
            Mark(area_path(shorts, self.look.tolerance), fill=palette.work if works else palette.shorts),
            hatching(shorts.buffer(-0.7, quad_segs=2) if works else Polygon(), palette.work_shade),
            Mark(line_path(hem, self.look.tolerance), stroke=palette.line, width=1.0),
            Mark(
                line_path(self.trunk.boundary.difference(hips), self.look.tolerance),
                stroke=palette.line,
                width=LINE,
            ),
        )
        return Layer(self._depth([TRUNK]), marks, self.rings.cross([TRUNK]))

    def neck(self) -> Layer:
        """Return the neck, behind the shirt's collar."""
        shape = self.rings.outline([NECK])
        palette = self.look.palette
        marks = (
            Mark(area_path(shape, self.look.tolerance), fill=palette.skin),
            Mark(line_path(shape.boundary, self.look.tolerance), stroke=palette.line, width=LINE),
        )
        return Layer(self._depth([TRUNK]) - 0.001, marks, self.rings.cross([NECK]))

    def layers(self) -> list[Layer]:
        """Return all layers of the person."""
        trunk = self.trunk_layer()
        head = head_layers(self.placed, self.rings, self.lens, self.look.palette, self.look.tolerance)
        above = max(trunk.depth, head.depth) if head.depth > trunk.depth - 0.05 else head.depth
        return [*self.limbs(), self.neck(), trunk, Layer(above + 0.0005, head.marks, head.at)]


def far_limbs(motion: Motion, lens: Camera) -> frozenset[tuple[Side, str]]:
    """Return the limbs that are clearly away from the viewer, taken over the whole movement."""
    sideways = motion.keys[0].placed.rotations[PELVIS][:, 2]
    if abs(float(sideways @ lens.towards)) < _TURNED:
        return frozenset()
    found = set()
    for kind, segments, gap in (
        (Limb.LEG, ("thigh", "shank", "foot"), 0.03),
        (Limb.ARM, ("forearm", "hand"), 0.05),
    ):
        depths = {
            side: np.mean(
                [
                    lens.depth(key.placed.origins[[limb(side, name) for name in segments]])
                    for key in motion.keys
                ]
            )
            for side in SIDES
        }
        far = min(SIDES, key=lambda side: depths[side])
        if depths[far] < max(depths.values()) - gap:
            found.add((far, kind))
    return frozenset(found)
