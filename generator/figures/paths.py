"""Holds what is to be drawn as shapes and writes all paths of a picture at once: one by one is slow.

A path is a shape until somebody asks for its points; those who draw ask for all of them together.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import GeometryType
from shapely.geometry.base import BaseGeometry

from generator.body.skeleton import Array

ROUNDING = 1.3
_CURVE = 100.0
_NEAR = 0.12  # drawing units: a straight piece this short between two bends is left out
_SMALLEST = 1.0  # length of a line, area of a surface: what is smaller nobody sees

Whole = NDArray[np.int64]
# What a point is: where a pen is set down, the end of a straight line, a bend's corner, a bend's end.
MOVE, LINE, CORNER, BEND = range(4)
CLOSES = 4  # added at the last point of a closed piece


class Kind(Enum):
    """How a shape becomes a path."""

    AREA = "edges of surfaces"
    LINE = "lines, joined where they meet"
    STRAIGHT = "straight lines as they are"
    CURVE = "points with a curve near them"
    ROUND = "corners round a closed curve"


class Path:
    """One path: a shape until its points are asked for, then points in whole tenths of a drawing unit."""

    __slots__ = ("_found", "kind", "shape", "tolerance")

    def __init__(self, kind: Kind, shape: BaseGeometry | Array, tolerance: float = 0.0) -> None:
        """Remember the shape; tolerance: by how many drawing units the path may leave it."""
        self.kind, self.shape, self.tolerance = kind, shape, tolerance
        self._found: tuple[Whole, Whole] | None = None

    def __eq__(self, other: object) -> bool:
        """Return whether two paths lead through the same points in the same way."""
        return isinstance(other, Path) and all(map(np.array_equal, self.found, other.found))

    def __hash__(self) -> int:
        """Return a number that equal paths share."""
        return hash(self.found[0].tobytes())

    @property
    def known(self) -> bool:
        """Return whether the points are worked out."""
        return self._found is not None

    @property
    def found(self) -> tuple[Whole, Whole]:
        """Return all points, shape (n, 2), in tenths, and what each of them is."""
        if self._found is None:
            work_out([self])
        return self._found or (_NONE, _NONE[:, 0])

    def take(self, points: Whole, kinds: Whole) -> None:
        """Take the points that were worked out."""
        self._found = points, kinds


_NONE: Whole = np.zeros((0, 2), dtype=np.int64)


def polygon(corners: Array) -> Path:
    """Return a surface with sharp corners, shape (n, 2)."""
    path = Path(Kind.CURVE, corners)
    kinds = np.full(len(corners), LINE)
    kinds[0], kinds[-1] = MOVE, LINE + CLOSES
    path.take(np.rint(corners * 10).astype(np.int64), kinds)
    return path


@dataclass(frozen=True)
class _Pieces:
    """Rings and lines: points of all, and for each piece its path's number, its length, whether it closes."""

    points: Array
    owners: Whole
    counts: Whole
    closed: NDArray[np.bool_]
    reach: float


def work_out(paths: Sequence[Path]) -> None:
    """Find the points of all paths that have none yet."""
    fresh = list({id(path): path for path in paths if not path.known}.values())
    for group, pieces in (
        ((Kind.AREA,), _rings),
        ((Kind.LINE, Kind.STRAIGHT), _lines),
        ((Kind.CURVE, Kind.ROUND), _curves),
    ):
        wanted = [path for path in fresh if path.kind in group]
        if wanted:
            _fill(wanted, pieces(wanted))


def _fill(paths: Sequence[Path], pieces: _Pieces) -> None:
    """Round the corners of all pieces and hand each path its own."""
    points, kinds, many = _bends(pieces)
    each = np.bincount(pieces.owners, weights=many, minlength=len(paths))
    start = 0
    for path, end in zip(paths, np.cumsum(each).astype(np.int64).tolist(), strict=True):
        path.take(points[start:end], kinds[start:end])
        start = end


def _parts(paths: Sequence[Path]) -> tuple[NDArray[np.object_], Whole]:
    """Return the parts of all shapes, and which path each is of."""
    shapes: NDArray[np.object_] = np.array([path.shape for path in paths], dtype=object)
    parts, owners = shapely.get_parts(shapes, return_index=True)
    return parts, owners


def _rings(paths: Sequence[Path]) -> _Pieces:
    """Return the edges of all surfaces."""
    parts, owners = _parts(paths)
    seen = (shapely.get_type_id(parts) == GeometryType.POLYGON) & (shapely.area(parts) >= _SMALLEST)
    rings, of = shapely.get_rings(parts[seen], return_index=True)
    owners = owners[seen][of]
    tolerances = np.array([path.tolerance for path in paths])[owners]
    rings = shapely.simplify(rings, tolerances, preserve_topology=False)
    counts = shapely.get_num_coordinates(rings).astype(np.int64) - 1
    kept = counts > 2
    rings, owners, counts = rings[kept], owners[kept], counts[kept]
    points = shapely.get_coordinates(rings)
    # A ring ends where it began; the last point is not needed twice.
    points = np.delete(points, np.cumsum(counts + 1) - 1, axis=0)
    return _Pieces(points, owners, counts, np.ones(len(counts), dtype=bool), ROUNDING)


def _lines(paths: Sequence[Path]) -> _Pieces:
    """Return all lines, joined where their ends meet unless they are to stay as they are."""
    parts, owners = _parts(paths)
    loose = np.array([path.kind is Kind.STRAIGHT for path in paths])
    kinds = shapely.get_type_id(parts)
    seen = np.isin(kinds, (GeometryType.LINESTRING, GeometryType.LINEARRING)) & ~shapely.is_empty(parts)
    parts, owners = parts[seen], owners[seen]
    several = (np.bincount(owners, minlength=len(paths)) > 1)[owners] & ~loose[owners]
    if several.any():
        numbers, positions = np.unique(owners[several], return_inverse=True)
        merged, of = shapely.get_parts(
            shapely.line_merge(shapely.multilinestrings(parts[several], indices=positions)), return_index=True
        )
        owners = np.concatenate([owners[~several], numbers[of]])
        order = np.argsort(owners, kind="stable")
        parts, owners = np.concatenate([parts[~several], merged])[order], owners[order]
    long = shapely.length(parts) > _SMALLEST
    parts, owners = parts[long], owners[long]
    tolerances = np.array([path.tolerance for path in paths])[owners]
    parts = shapely.simplify(parts, tolerances, preserve_topology=False)
    return _open_pieces(parts, owners)


def _open_pieces(parts: NDArray[np.object_], owners: Whole) -> _Pieces:
    """Return lines as pieces; one that ends where it began is closed."""
    counts = shapely.get_num_coordinates(parts).astype(np.int64)
    points, last = shapely.get_coordinates(parts), np.cumsum(counts) - 1
    closed = (counts > 3) & (np.abs(points[last] - points[last - counts + 1]).max(axis=1, initial=0.0) < 1e-6)
    points = np.delete(points, last[closed], axis=0)
    return _Pieces(points, owners, counts - closed, closed, ROUNDING)


def _curves(paths: Sequence[Path]) -> _Pieces:
    """Return all curves: through the middles between the points as given."""
    each = [np.asarray(path.shape, dtype=float) for path in paths]
    counts = np.array([len(points) for points in each], dtype=np.int64)
    closed = np.array([path.kind is Kind.ROUND for path in paths])
    return _Pieces(np.concatenate(each), np.arange(len(paths)), counts, closed, _CURVE)


def _bends(pieces: _Pieces) -> tuple[Whole, Whole, Whole]:
    """Return points in tenths, what each is, and how many each piece has: every corner becomes a bend."""
    points, counts = pieces.points, pieces.counts
    last = np.cumsum(counts) - 1
    first = last - counts + 1
    after, before = np.arange(1, len(points) + 1), np.arange(-1, len(points) - 1)
    after[last], before[first] = first, last
    way = points[after] - points
    length = np.maximum(np.hypot(way[:, 0], way[:, 1]), 1e-9)
    step = way * np.minimum(0.5, pieces.reach * 3 / length)[:, None]
    # Each point as entry, corner and exit of its bend.
    bends = np.stack([points - step[before], points, points + step], axis=1)
    opened = ~pieces.closed
    for ends in (first[opened], last[opened]):
        bends[ends] = points[ends][:, None]
    kept = np.ones((len(points), 3), dtype=bool)
    kept[:, 0] = np.abs(bends[:, 0] - bends[before, 2]).max(axis=1) > _NEAR
    kinds = np.tile(np.array([LINE, CORNER, BEND]), (len(points), 1))
    kept[first, 0], kinds[first, 0] = True, MOVE
    kept[first[opened], 1:] = kept[last[opened], 1:] = False
    kinds[last[pieces.closed], 2] += CLOSES
    owner = np.repeat(np.arange(len(counts)), counts)
    many = np.bincount(owner, weights=kept.sum(axis=1), minlength=len(counts)).astype(np.int64)
    return np.rint(bends[kept] * 10).astype(np.int64), kinds[kept], many


_LETTERS = ("M", "L", "Q", " ")
_SHIFT, _MIDDLE = 22, 1 << 21


class _Words(dict[int, str]):
    """Writes each number once: a picture has thousands, all from the same few.

    A key holds the number and what stands before it: 0 nothing but a space where there is no sign, else one
    of the letters.
    """

    def __missing__(self, key: int) -> str:
        """Return and keep a number's text behind what stands before it."""
        before, value = key >> _SHIFT, (key & ((1 << _SHIFT) - 1)) - _MIDDLE
        text = "Mlq"[before - 1] + str(value) if before else str(value) if value < 0 else f" {value}"
        self[key] = text
        return text


_WORDS = _Words()


def written(paths: Sequence[Path], fine: int) -> list[str]:
    """Return path data `fine` times as large in whole numbers, each point relative to the one before."""
    work_out(paths)
    found = [path.found for path in paths]
    tenths = np.concatenate([points for points, _ in found] or [_NONE])
    kinds = np.concatenate([each for _, each in found] or [_NONE[:, 0]])
    closes, kinds = kinds >= CLOSES, kinds % CLOSES
    whole = np.rint(tenths * (fine / 10)).astype(np.int64)
    # A bend's end counts from where the bend began, as its corner does.
    from_ = np.arange(len(kinds)) - 1 - (kinds == BEND)
    relative = whole - whole[from_]
    relative[kinds == MOVE] = whole[kinds == MOVE]
    command = np.where(kinds == BEND, CORNER, kinds)
    same = command == command[from_]
    led = np.where((kinds == BEND) | (same & (kinds != MOVE)), 0, kinds + 1)
    keys = relative + _MIDDLE
    keys[:, 0] += led << _SHIFT
    words = list(map(_WORDS.__getitem__, keys.ravel().tolist()))
    for number in np.flatnonzero(closes).tolist():
        words[2 * number + 1] += "z"
    ends = np.cumsum([2 * len(points) for points, _ in found]).tolist()
    return ["".join(words[start:end]) for start, end in pairwise([0, *ends])]


def as_drawn(path: Path) -> str:
    """Return path data in drawing units with one decimal, every point where it is."""
    points, kinds = path.found
    parts: list[str] = []
    for (x, y), kind in zip(points.tolist(), kinds.tolist(), strict=True):
        parts.append(f"{_LETTERS[kind % CLOSES]}{x / 10:g} {y / 10:g}" + "Z" * (kind >= CLOSES))
    return "".join(parts)
