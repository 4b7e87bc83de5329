"""Shows what has been drawn: start and finish with words for those who cannot see them, and the movement."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.base import Text
from generator.catalogue.daily_life import DailyLife
from generator.catalogue.exercise import Exercise, Variation
from generator.website.values import SiteInput
from generator.wording.alt_texts import alt_texts


@dataclass(frozen=True)
class Picture:
    """One still picture: address from the language's folder, what it shows, and the word below it."""

    path: str
    alt: Text
    word: str


@dataclass(frozen=True)
class FigureView:
    """The pictures of one item; moving is empty where nothing moves. width, height: of each, in pixels."""

    name: Text
    pictures: tuple[Picture, ...]
    moving: str
    width: int
    height: int

    @property
    def ends(self) -> tuple[Picture, ...]:
        """Return start and finish; a position alone where nothing moves."""
        return (self.pictures[0], self.pictures[-1]) if len(self.pictures) > 1 else self.pictures


def figure_of(
    site: SiteInput, item: Exercise | DailyLife, variation: Variation | None = None
) -> FigureView | None:
    """Return the pictures of an item or of one of its variations; None where none were drawn."""
    fact = site.figures.get(f"{item.id}/{variation.id}" if variation else item.id)
    if fact is None:
        return None
    start, finish = alt_texts(item, variation)
    last = len(fact.stills) - 1
    voice = site.voice
    words = [voice.gettext("Start"), *([voice.gettext("On the way")] * (last - 1)), voice.gettext("Finish")]
    # A single picture shows a position: the exercise's own start, or what a variation changes.
    texts = {0: start, last: finish} if last or variation else {0: start}
    return FigureView(
        name=variation.name if variation else item.name,
        pictures=tuple(
            Picture(f"../{path}", texts.get(at, item.name), words[at] if last else "")
            for at, path in enumerate(fact.stills)
        ),
        moving=f"../{fact.moving}" if fact.moving else "",
        width=fact.width,
        height=fact.height,
    )
