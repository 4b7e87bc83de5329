"""Sets drawings into sheets: as images with words, as wide as a patient needs and the sheet allows."""

from __future__ import annotations

import base64
import math
import re
from dataclasses import dataclass, replace

from generator.booklets.values import BookletJob
from generator.catalogue.base import Text

ROW_MM = 118.0
"""So wide is the place for drawings beside the dose."""

FINISH_MM = 71.0
"""The finish of a movement is never narrower on the sheet of its exercise (agreed: at least 70 mm)."""

EARLIER_MM = 45.0
"""So wide at most is what comes before it, beside it."""

NARROW_HIGH_MM = 62.0
"""In one column a figure is no higher than this, so that it stands on the sheet of its start position."""

LEAST_SHAPE, LEAST_SHAPE_TIGHT = 0.85, 1.0
"""A taller drawing gets room at both sides, so that one who stands is no taller than a third of a sheet."""

# Wider than this, two beside each other would be too flat to read.
_WIDE = 1.9

_LONE_MM = (100.0, 58.0)
_STACKED_MM, _STACKED_TIGHT_MM = (46.0, 30.0), (38.0, 20.0)
_CAPTION_MM = 7.0

_BOX = re.compile(r'viewBox="([-\d.]+) ([-\d.]+) ([\d.]+) ([\d.]+)" width="[\d.]+"')


@dataclass(frozen=True)
class Picture:
    """A drawing: its address inside the document, words for who cannot see it, width over height."""

    address: str
    words: Text | str
    shape: float

    def width(self, most: float, highest: float) -> float:
        """Return its width in millimetres where it may be `most` wide and `highest` high."""
        return round(min(most, highest * self.shape), 1)


@dataclass(frozen=True)
class Shown:
    """A drawing on its exercise's sheet: what stands above it (``start``, ``then``, ``finish``), width."""

    picture: Picture
    stage: str
    width: float


@dataclass(frozen=True)
class Series:
    """A movement from its start to its finish; one drawing where nothing moves. All have one scale.

    highest: what the sheet allows, in millimetres.
    """

    stills: tuple[Picture, ...]
    highest: float = math.inf

    @property
    def last(self) -> Picture:
        """Return the finish, or the only drawing."""
        return self.stills[-1]

    @property
    def side_by_side(self) -> bool:
        """Return whether what comes first stands beside the finish; wide drawings stand below each other."""
        return len(self.stills) > 1 and self.last.shape < _WIDE

    def finish(self, *, tight: bool) -> Shown:
        """Return the finish, or the only drawing, with its width; `tight`: where the sheet is full."""
        found = self._finish(tight)
        return replace(found, width=found.picture.width(found.width, self.highest))

    def _finish(self, tight: bool) -> Shown:
        last = self.last
        if len(self.stills) == 1:
            return Shown(last, "", max(FINISH_MM, last.width(*_LONE_MM)))
        if self.side_by_side:
            return Shown(last, "finish", FINISH_MM)
        tallest = _STACKED_TIGHT_MM if tight else _STACKED_MM
        return Shown(last, "finish", max(FINISH_MM, last.width(ROW_MM, tallest[0])))

    def earlier(self, *, tight: bool) -> tuple[Shown, ...]:
        """Return what comes before the finish, with widths in millimetres; beside it, no higher than it."""
        count = len(self.stills) - 1
        if not count:
            return ()
        if self.side_by_side:
            most, high = EARLIER_MM, (FINISH_MM / self.last.shape + _CAPTION_MM) / count - _CAPTION_MM
        else:
            most, high = ROW_MM, (_STACKED_TIGHT_MM if tight else _STACKED_MM)[1] / count
        return tuple(
            Shown(still, "then" if number else "start", still.width(most, high))
            for number, still in enumerate(self.stills[:-1])
        )


def series(
    job: BookletJob, item: str, start: Text | str, finish: Text | None, *, tight: bool = False
) -> Series | None:
    """Return the drawings of an exercise, a variation or a daily-life item; None where there are none.

    start, finish: words for the first and the last one. tight: on a sheet that is full.
    """
    stills = job.stills.get(item, ())
    if not stills:
        return None
    between = job.voice.gettext("On the way from start to finish")
    words = (start, *(between for _ in stills[1:-1]), finish or start)[: len(stills)]
    least = LEAST_SHAPE_TIGHT if tight else LEAST_SHAPE
    pictures = tuple(_picture(svg, said, least) for svg, said in zip(stills, words, strict=True))
    return Series(pictures, NARROW_HIGH_MM if job.format.narrow else math.inf)


def _picture(svg: str, words: Text | str, least: float) -> Picture:
    """Return an SVG document as a picture of at least this shape.

    Raises ValueError for a drawing that does not state its measures.
    """
    found = _BOX.search(svg)
    if found is None:
        raise ValueError("the picture does not state its measures")
    left, top, across, down = (float(number) for number in found.groups())
    if across / down < least:
        wanted = down * least
        box = f'viewBox="{left - (wanted - across) / 2:g} {top:g} {wanted:g} {down:g}" width="{wanted:g}"'
        svg, across = svg.replace(found[0], box, 1), wanted
    data = base64.b64encode(svg.encode("utf-8")).decode("ascii")
    return Picture(f"data:image/svg+xml;base64,{data}", words, across / down)
