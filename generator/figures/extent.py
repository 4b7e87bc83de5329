"""Measures how far drawn paths reach, so that every picture is cut to what it shows."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from generator.figures.paths import Path, work_out


def extent(paths: Iterable[Path]) -> tuple[float, float, float, float]:
    """Return left, top, right, bottom of all points of paths, in drawing units."""
    listed = list(paths)
    work_out(listed)
    points = np.concatenate([path.found[0] for path in listed]) / 10
    (left, top), (right, bottom) = points.min(axis=0).tolist(), points.max(axis=0).tolist()
    return left, top, right, bottom
