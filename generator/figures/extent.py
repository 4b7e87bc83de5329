"""Measures how far drawn paths reach, so that every picture is cut to what it shows."""

from __future__ import annotations

import re
from collections.abc import Iterable

_ARC = re.compile(r"a[^MLQaZ]*")
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


def extent(paths: Iterable[str]) -> tuple[float, float, float, float]:
    """Return left, top, right, bottom of all points in path data written by this room."""
    # Circles end where they began; every other number is one of a pair.
    values = list(map(float, _NUMBER.findall(_ARC.sub("", " ".join(paths)))))
    return min(values[::2]), min(values[1::2]), max(values[::2]), max(values[1::2])
