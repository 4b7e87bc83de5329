"""Estimates how tall the two columns of an exercise sheet become, so that each block finds room."""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil

STEPS_LETTERS = 48
"""Letters that fit one line of the column of steps, at the smaller type."""

DOSE_LETTERS = 34
"""Letters that fit one line of the column of the dose."""

HALF_LETTERS = 42
"""Letters that fit one line of half a sheet."""

FIXED_DOSE_LINES = 5.0
"""Lines that the large figures of the dose and its heading take."""


def lines(texts: Iterable[object], letters: int) -> int:
    """Return how many lines texts take, each beginning on a new one; no text takes less than one."""
    return sum(max(1, ceil(len(str(text)) / letters)) for text in texts)


def block(texts: Iterable[object], letters: int) -> int:
    """Return how many lines texts take under a heading of their own; none without texts."""
    listed = tuple(texts)
    return 1 + lines(listed, letters) if listed else 0
