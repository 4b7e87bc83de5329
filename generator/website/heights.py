"""Says how high a band is tied: by a place on the body first, in centimetres for those who want it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from generator.catalogue.base import Text
from generator.catalogue.exercise import Exercise
from generator.website.values import SiteInput
from generator.wording.phrases import height
from generator.wording.terms import term


@dataclass(frozen=True)
class Tied:
    """An exercise with a band and the place on the body that is as high as its anchor."""

    name: Text
    where: str


@dataclass(frozen=True)
class HeightView:
    """All bands of a phase. landmarks: the heads of the table. rows: body height, and a height for each."""

    tied: tuple[Tied, ...]
    landmarks: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]


def heights_of(site: SiteInput, exercises: Sequence[Exercise]) -> HeightView | None:
    """Return how high the bands of these exercises are tied; None where no exercise has one."""
    voice = site.voice
    anchored = [(one, one.anchor) for one in exercises if one.anchor is not None]
    if not anchored:
        return None
    used = tuple(dict.fromkeys(anchor for _, anchor in anchored))
    return HeightView(
        tied=tuple(Tied(one.name, term(voice, anchor)) for one, anchor in anchored),
        landmarks=tuple(voice.opening(term(voice, anchor)) for anchor in used),
        rows=tuple(
            (
                height(voice, row.stature),
                tuple(height(voice, row.heights[anchor]) for anchor in used),
            )
            for row in site.anchors
        ),
    )
