"""Draws the person: limbs, trunk, clothes, in layers from far to near, the working limb hatched."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import MultiLineString, Point, Polygon
from shapely.geometry.base import BaseGeometry

from generator.body.motion import Body, Motion
from generator.body.pose import SIDES, Side
from generator.body.skeleton import PELVIS, Array, limb
from generator.body.surface import RINGS, Chain, Wear
from generator.figures.camera import UNITS, Camera
from generator.figures.face import head_layers
from generator.figures.ink import Layer, Mark
from generator.figures.palette import Palette
from generator.figures.shapes import Ellipses, area_path, line_path, straight

LINE = 1.5
FAR_LINE = 1.1
WORK_LINE = 2.1
_HATCH = 5.5
_TURNED = 0.3  # seen from straight before or behind, no limb is far

Index = NDArray[np.int64]


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


def _chain(chain: Chain, side: Side, wear: Wear | None = None) -> Index:
    """Return a chain's rings; of a garment, one ring more, so that it ends where the skin begins."""
    rows = [index for index, ring in enumerate(RINGS) if ring.chain is chain and ring.side is side]
    if wear is not None:
        rows = [index for index in rows if RINGS[index].wear is wear]
    return np.array(rows, dtype=np.int64)


LEG_CHAINS = {side: [_chain(c, side) for c in (Chain.THIGH, Chain.SHANK, Chain.FOOT)] for side in SIDES}
_SHANKS = {side: [_chain(c, side) for c in (Chain.SHANK, Chain.FOOT)] for side in SIDES}
LEG_SHORTS = {side: [_chain(Chain.THIGH, side, Wear.SHORTS)] for side in SIDES}
_ARMS = {
    side: [_chain(c, side) for c in (Chain.UPPER_ARM, Chain.FOREARM, Chain.HAND, Chain.THUMB)]
    for side in SIDES
}
_LOWER_ARMS = {side: [_chain(c, side) for c in (Chain.FOREARM, Chain.HAND, Chain.THUMB)] for side in SIDES}
_SLEEVES = {side: [_chain(Chain.UPPER_ARM, side, Wear.SHIRT)] for side in SIDES}
TRUNK = _chain(Chain.TRUNK, Side.MIDDLE)
TRUNK_SHORTS = TRUNK[: len(_chain(Chain.TRUNK, Side.MIDDLE, Wear.SHORTS)) + 1]
_NECK = _chain(Chain.NECK, Side.MIDDLE)


def hatching(shape: BaseGeometry, colour: str, apart: float = _HATCH) -> Mark:
    """Return slanting lines over a shape (its core, so that no line ends on the outline)."""
    if shape.is_empty:
        return Mark("")
    left, top, right, bottom = shape.bounds
    tall = bottom - top
    starts = np.arange(np.floor((left - tall) / apart) * apart, right, apart)
    slants = MultiLineString([[(x, bottom), (x + tall, top)] for x in starts])
    return Mark(straight(shape.intersection(slants)), stroke=colour, width=0.8)


@dataclass(frozen=True)
class _Coat:
    """Colours of one limb: skin, cloth, line and its width."""

    skin: str
    cloth: str
    line: str
    width: float
    works: bool


class Person:
    """One pose seen through one camera."""

    def __init__(self, body: Body, lens: Camera, look: Look) -> None:
        """Project `body`; nothing is drawn yet."""
        self.placed = body.placed
        self.lens, self.look = lens, look
        self.rings = Ellipses(body.skin, lens)
        self.trunk = self.rings.outline([TRUNK])
        self.core = self.trunk.buffer(-0.5, quad_segs=2)

    def joint(self, segment: int) -> tuple[float, float]:
        """Return where a segment's upper end is on the picture."""
        x, y = self.lens.flat(self.placed.origins[segment][None])[0]
        return float(x), float(y)

    def _at(self, chains: list[Index]) -> Array:
        """Return points that the drawing of these chains follows: a cross on each ring."""
        return self.rings.points[np.concatenate(chains)][:, ::5].reshape(-1, 2)

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

    def _limb(
        self, chains: list[list[Index]], cloth: list[Index], coat: _Coat, root: BaseGeometry
    ) -> tuple[Mark, ...]:
        """Return a limb: skin, cloth, hatching, outline, and the creases where it folds over itself."""
        whole, lower = self.rings.outline(chains[0]), self.rings.outline(chains[1], soft=False)
        upper = self.rings.outline([chains[0][0]], soft=False)
        dressed = self.rings.outline(cloth, soft=False).intersection(whole)
        core = whole.buffer(-0.7, quad_segs=2)
        inside = self.core.intersection(root)
        edge = whole.boundary.difference(inside)
        hem = dressed.boundary.intersection(core).difference(root)
        marks = [
            Mark(area_path(whole, self.look.tolerance), fill=coat.skin),
            Mark(area_path(dressed, self.look.tolerance), fill=coat.cloth),
        ]
        if coat.works:
            marks.append(
                hatching(core, self.look.palette.work_shade, _HATCH * (2 if self.look.coarse else 1))
            )
        fold = lower.boundary.intersection(core)
        knuckle = shapely.minimum_bounding_circle(lower.intersection(upper))
        fold = fold.difference(knuckle) if knuckle.area < 0.45 * lower.area else fold
        marks.append(Mark(line_path(hem, self.look.tolerance), stroke=coat.line, width=1.0))
        marks.append(Mark(line_path(edge, self.look.tolerance), stroke=coat.line, width=coat.width))
        marks.append(Mark(line_path(fold, self.look.tolerance), stroke=coat.line, width=1.0))
        return tuple(marks)

    def legs(self) -> list[Layer]:
        """Return both legs; the one away from the viewer is lighter."""
        depths = {side: self._depth(LEG_CHAINS[side]) for side in SIDES}
        palette = self.look.palette
        layers = []
        for side in SIDES:
            coat = self._coat(side, Limb.LEG, (palette.shorts, palette.shorts_far))
            hip = Point(self.joint(limb(side, "thigh"))).buffer(0.085 * UNITS, quad_segs=5)
            chains = [LEG_CHAINS[side], _SHANKS[side]]
            marks = self._limb(chains, LEG_SHORTS[side], coat, hip)
            layers.append(Layer(depths[side], marks, self._at(LEG_CHAINS[side])))
        return layers

    def arms(self) -> list[Layer]:
        """Return both arms."""
        depths = {side: self._depth(_ARMS[side]) for side in SIDES}
        palette = self.look.palette
        layers = []
        for side in SIDES:
            coat = self._coat(side, Limb.ARM, (palette.shirt, palette.shirt_far))
            shoulder = Point(self.joint(limb(side, "upper arm"))).buffer(0.052 * UNITS, quad_segs=5)
            chains = [_ARMS[side], _LOWER_ARMS[side]]
            marks = self._limb(chains, _SLEEVES[side], coat, shoulder)
            layers.append(Layer(depths[side], marks, self._at(_ARMS[side])))
        return layers

    def trunk_layer(self) -> Layer:
        """Return the trunk: shirt and shorts."""
        palette = self.look.palette
        shorts = self.rings.outline([TRUNK_SHORTS], soft=False).intersection(self.trunk)
        hips: BaseGeometry = Polygon()
        for side in SIDES:
            near = Point(self.joint(limb(side, "thigh"))).buffer(0.085 * UNITS, quad_segs=5)
            hips = hips.union(self.rings.outline(LEG_CHAINS[side]).intersection(near))
        hips = hips.buffer(-0.5, quad_segs=2)
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
        return Layer(self._depth([TRUNK]), marks, self._at([TRUNK]))

    def neck(self) -> Layer:
        """Return the neck, behind the shirt's collar."""
        shape = self.rings.outline([_NECK])
        palette = self.look.palette
        marks = (
            Mark(area_path(shape, self.look.tolerance), fill=palette.skin),
            Mark(line_path(shape.boundary, self.look.tolerance), stroke=palette.line, width=LINE),
        )
        return Layer(self._depth([TRUNK]) - 0.001, marks, self._at([_NECK]))

    def layers(self) -> list[Layer]:
        """Return all layers of the person."""
        trunk = self.trunk_layer()
        head = head_layers(self.placed, self.rings, self.lens, self.look.palette, self.look.tolerance)
        above = max(trunk.depth, head.depth) if head.depth > trunk.depth - 0.05 else head.depth
        return [*self.legs(), *self.arms(), self.neck(), trunk, Layer(above + 0.0005, head.marks, head.at)]


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
