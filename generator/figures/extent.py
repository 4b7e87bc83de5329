"""Measures how far drawn paths reach, so that every picture is cut to what it shows."""

from __future__ import annotations

import re
from collections.abc import Iterable

_COMMAND = re.compile(r"([MLQaZ])([^MLQaZ]*)")
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


def extent(paths: Iterable[str]) -> tuple[float, float, float, float]:
    """Return left, top, right, bottom of all points in path data written by this room."""
    xs: list[float] = []
    ys: list[float] = []
    for data in paths:
        for command, text in _COMMAND.findall(data):
            if command in "aZ":
                continue
            values = [float(value) for value in _NUMBER.findall(text)]
            xs += values[::2]
            ys += values[1::2]
    return min(xs), min(ys), max(xs), max(ys)
