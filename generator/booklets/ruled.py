"""Says how many lines to write on a sheet has room for: what is left of it becomes place for own words."""

from __future__ import annotations

from dataclasses import dataclass, replace

from generator.booklets.values import Fit

LINE_MM = 9.0
"""Height of one ruled line to write on, in millimetres."""

NOTE_LINE_MM = 10.0
"""Height of one line for notes, in millimetres."""

MOST_LINES = 8
"""So many lines are enough for notes."""

MOST_LINE_MM = 13.0
"""A line to write on is never higher than this."""

# Left free below what grew, in millimetres: borders and rounding add up over rows and lines.
_AIR_MM = 4.0


@dataclass(frozen=True)
class Ruled:
    """Lines to write on: how many, and the height of each in millimetres."""

    count: int
    height: float

    def first(self, count: int) -> Ruled:
        """Return the first lines, at most so many."""
        return replace(self, count=min(count, self.count))

    def after(self, count: int) -> Ruled:
        """Return the lines that follow the first `count`."""
        return replace(self, count=max(0, self.count - count))


def note_lines(fit: Fit) -> Ruled:
    """Return the lines for notes that end a section: as many as found room, at first as many as may be."""
    return Ruled(MOST_LINES if fit.lines is None else fit.lines, NOTE_LINE_MM)


def growing_lines(fit: Fit, least: int) -> Ruled:
    """Return the lines that fit into the space left in a section, `least` of which are always there."""
    room = fit.spare - _AIR_MM + least * LINE_MM
    count = max(least, min(MOST_LINES, int(room / LINE_MM)))
    return Ruled(count, round(max(LINE_MM, min(MOST_LINE_MM, room / max(1, count))), 2))


def growth(fit: Fit, rows: int, most: float) -> float:
    """Return by how many millimetres each of `rows` rows may grow into the space left, at most by `most`.

    A session with nothing but what is done through the day has no rows.
    """
    return round(max(0.0, min(most, (fit.spare - _AIR_MM) / max(1, rows))), 2)
