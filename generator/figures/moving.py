"""Plays a movement as one small SVG without script or style: frames in turn, three rounds, then rest.

The animation is SMIL inside the file, so that it runs as a plain image under a strict content policy. A page
pauses it by showing the still picture instead. What does not move is written once.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from generator.body.skeleton import Array
from generator.figures.camera import seen_from
from generator.figures.details import detailed
from generator.figures.furniture import Room
from generator.figures.ink import Layer, small
from generator.figures.palette import Palette
from generator.figures.paths import work_out
from generator.figures.person import Look, far_limbs
from generator.figures.scene import Picture, Scene, draw, frame_of, layers_of, ring, svg, view_of

ROUNDS = 3
_SECONDS = 4.4
_WAY, _REST = 0.34, 0.16  # shares of a round: there or back, and standing still at either end
_FINE = 2  # whole numbers at twice the size: half a drawing unit
MOST_BYTES = 25_000
# Frames of a way, and by how many drawing units a part may be off when its drawing is used again: the
# first that makes the file small enough is taken.
_CHOICES = ((9, 1.3), (9, 2.0), (7, 2.0), (7, 2.8), (5, 2.8), (4, 3.5), (3, 4.0))


def _times(number: int, count: int) -> str:
    """Return SMIL attributes that show frame `number` of `count` on the way there and on the way back."""
    step, back = _WAY / (count - 1), _WAY + _REST
    if number == count - 1:
        spans = [(_WAY, _WAY + _REST)]
    elif number == 0:
        spans = [(0.0, step), (back + (count - 2) * step, 1.0)]
    else:
        again = back + (count - 2 - number) * step
        spans = [(number * step, (number + 1) * step), (again, again + step)]
    edges = sorted({0.0, *(edge for span in spans for edge in span if edge < 1.0)})
    shown = [any(start <= edge + 1e-9 and edge < end - 1e-9 for start, end in spans) for edge in edges]
    values = ";".join("visible" if one else "hidden" for one in shown)
    return f'values="{values}" keyTimes="{";".join(f"{edge:.4g}" for edge in edges)}"'


def _stacks(scene: Scene, palette: Palette) -> list[list[Layer]]:
    """Return the layers of each frame, all frames in the same order from far to near."""
    lens = seen_from(view_of(scene), scene.motion)
    room = Room(scene.motion, lens, palette)
    look = Look(palette, scene.working, far_limbs(scene.motion, lens), coarse=True)
    drawn: list[list[Layer]] = []
    for body in scene.motion.frames:
        layers = layers_of(scene, body, lens, room, look)
        besides = [*ring(lens, body, scene, palette), *detailed(scene.detail, body, lens, palette)]
        drawn.append([*layers, Layer(100.0, tuple(besides))])
    work_out([mark.data for layers in drawn for layer in layers for mark in layer.marks])
    order = np.argsort(
        np.mean([[layer.depth for layer in layers] for layers in drawn], axis=0), kind="stable"
    )
    return [[layers[place] for place in order] for layers in drawn]


@dataclass
class _Drawing:
    """One drawing of a layer, and how often it is used; later frames may show it moved and turned."""

    markup: str
    at: Array | None
    uses: int = 0


def _laid_over(model: Array, now: Array) -> tuple[str, float]:
    """Return the shift and turn that lays one drawing's points over another's, and how far that is off."""
    middle, target = model.mean(axis=0), now.mean(axis=0)
    one, two = model - middle, now - target
    turn = np.arctan2((one[:, 0] * two[:, 1] - one[:, 1] * two[:, 0]).sum(), (one * two).sum())
    cos, sin = np.cos(turn), np.sin(turn)
    turned = one @ np.array([[cos, sin], [-sin, cos]])
    off = float(np.linalg.norm(turned - two, axis=1).max())
    shift = (
        target - np.array([cos * middle[0] - sin * middle[1], sin * middle[0] + cos * middle[1]])
    ) * _FINE
    if abs(turn) < 0.003 and np.abs(target - middle).max() < 0.3:
        return "", off
    turned_by = f"rotate({np.degrees(turn):.1f})" if abs(turn) > 0.0015 else ""
    return f' transform="translate({shift[0]:.0f} {shift[1]:.0f}){turned_by}"', off


class _Store:
    """Keeps drawings, so that a part that only moves or turns is written once."""

    def __init__(self, same: float) -> None:
        self.drawings: list[_Drawing] = []
        self._same = same

    def use(self, layer: Layer, place: int, known: dict[int, list[int]]) -> tuple[int, str]:
        """Return which drawing shows the layer, and the transform that puts it there."""
        markup_ = ""
        for number in known.setdefault(place, []):
            drawing = self.drawings[number]
            if layer.at is not None and drawing.at is not None:
                transform, off = _laid_over(drawing.at, layer.at)
                if off < self._same:
                    return number, transform
            else:
                markup_ = markup_ or small(layer.marks, _FINE)
                if markup_ == drawing.markup:
                    return number, ""
        self.drawings.append(_Drawing(markup_ or small(layer.marks, _FINE), layer.at))
        known[place].append(len(self.drawings) - 1)
        return len(self.drawings) - 1, ""

    def count(self, uses: Sequence[tuple[int, str]]) -> None:
        """Count how often each drawing is really shown."""
        for number, _ in uses:
            self.drawings[number].uses += 1

    def shown(self, use: tuple[int, str]) -> str:
        """Return the markup that shows a use: the drawing itself where it is used only once."""
        number, transform = use
        drawing = self.drawings[number]
        if not drawing.markup:
            return ""
        return drawing.markup if drawing.uses == 1 else f'<use href="#d{number}"{transform}/>'

    def defined(self) -> str:
        """Return the drawings that are used more than once."""
        groups = [
            f'<g id="d{number}">{drawing.markup}</g>'
            for number, drawing in enumerate(self.drawings)
            if drawing.uses > 1 and drawing.markup
        ]
        return f"<defs>{''.join(groups)}</defs>"


def moving(scene: Scene, palette: Palette) -> str:
    """Return the movement as an animated SVG; its first frame stands when it is over or cannot play."""
    return moving_both(scene, palette, draw(scene, palette))[scene.left]


def moving_both(scene: Scene, palette: Palette, stills: tuple[Picture, ...]) -> tuple[str, str]:
    """Return the movement for a right and for a left operated side; `stills` are the scene's."""
    stacks = _stacks(scene, palette)
    frame = frame_of(stills)
    texts = ("", "")
    for count, same in _CHOICES:
        chosen = np.linspace(0, len(stacks) - 1, min(count * (len(scene.motion.keys) - 1), len(stacks)))
        content = _played([stacks[round(number)] for number in chosen], same)
        texts = (
            svg(content, frame, False, _FINE),
            svg(content, frame, True, _FINE),
        )
        if max(map(len, texts)) < MOST_BYTES:
            break
    return texts


def _played(stacks: list[list[Layer]], same: float) -> str:
    """Return all frames as markup: what stands still behind, the frames in turn, what stands before."""
    store, known = _Store(same), dict[int, list[int]]()
    uses = [[store.use(layer, place, known) for place, layer in enumerate(layers)] for layers in stacks]
    places = range(len(uses[0]))
    turning = [place for place in places if any(use[place] != uses[0][place] for use in uses)] or [
        len(uses[0]) - 1
    ]
    first, last = turning[0], turning[-1]
    store.count(
        uses[0][:first] + uses[0][last + 1 :] + [use for row in uses for use in row[first : last + 1]]
    )
    parts = [store.defined(), *(store.shown(use) for use in uses[0][:first])]
    for number, use in enumerate(uses):
        inner = "".join(store.shown(use[place]) for place in range(first, last + 1))
        hidden = ' visibility="hidden"' if number else ""
        parts.append(
            f'<g{hidden}><animate attributeName="visibility" calcMode="discrete" dur="{_SECONDS}s" '
            f'repeatCount="{ROUNDS}" {_times(number, len(uses))}/>{inner}</g>'
        )
    return "".join([*parts, *(store.shown(use) for use in uses[0][last + 1 :])])
