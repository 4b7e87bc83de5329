"""Measures how far drawn paths reach, so that every picture is cut to what it shows."""

from __future__ import annotations

import re
from collections.abc import Iterable

import numpy as np

_ARC = re.compile(r"a[^MLQaZ]*")
_LETTERS = str.maketrans("MLQZ", "    ")


def extent(paths: Iterable[str]) -> tuple[float, float, float, float]:
    """Return left, top, right, bottom of all points in path data written by this room."""
    # Circles end where they began; every other number is one of a pair.
    text = _ARC.sub("", " ".join(paths)).translate(_LETTERS).replace("-", " -")
    points = np.array(text.split(), dtype=float).reshape(-1, 2)
    (left, top), (right, bottom) = points.min(axis=0).tolist(), points.max(axis=0).tolist()
    return left, top, right, bottom
