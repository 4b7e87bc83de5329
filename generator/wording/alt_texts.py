"""Says what pictures show to those who cannot see them, in sentences that stand beside them anyway."""

from __future__ import annotations

from generator.catalogue.base import Text
from generator.catalogue.daily_life import DailyLife
from generator.catalogue.exercise import Exercise, Variation


def alt_texts(item: Exercise | DailyLife, variation: Variation | None = None) -> tuple[Text, Text]:
    """Return what the first and the last picture show, in the language of the catalogue they are in.

    The finish is the item's own ``finish``; without one, the first step (of a variation: what changes).
    """
    start = item.start if isinstance(item, Exercise) else item.name
    if variation is not None:
        return start, variation.finish or variation.change
    return start, item.finish or item.steps[0]
