"""Parts texts into two columns that become about equally tall, by an estimate of lines.

The layout engine could balance columns itself, but tries out many heights: that took a third of all time.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from math import ceil
from typing import Generic, TypeVar

HALF_LETTERS = 42
"""Letters that fit one line of half a sheet."""

STEP_LETTERS = 36
"""Letters that fit one line of a numbered step in half a sheet."""

Item = TypeVar("Item")


@dataclass(frozen=True)
class Halves(Generic[Item]):
    """Two columns, to be read one after the other."""

    first: tuple[Item, ...]
    second: tuple[Item, ...]

    @property
    def all(self) -> tuple[Item, ...]:
        """Return the items of both columns in order."""
        return (*self.first, *self.second)


def lines(texts: Iterable[object], letters: int = HALF_LETTERS) -> int:
    """Return how many lines texts take, each beginning on a new one; no text takes less than one."""
    return sum(max(1, ceil(len(str(text)) / letters)) for text in texts)


def halves(
    items: Sequence[Item], tall: Callable[[Item], float], below: float = 0.0, above: float = 0.0
) -> Halves[Item]:
    """Return the items in two columns in their order, parted where the taller column is lowest.

    tall: height of an item in lines. below, above: lines that stand under the second and over the first
    column in any case.
    """
    heights = [tall(item) for item in items]
    least = min(
        range(len(items) + 1),
        key=lambda cut: (max(above + sum(heights[:cut]), sum(heights[cut:]) + below), -cut),
    )
    return Halves(tuple(items[:least]), tuple(items[least:]))
