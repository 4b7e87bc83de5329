"""Says which days can be meant as the day of an operation: one rule for command line, booklet and site."""

from __future__ import annotations

import datetime

EARLIEST = datetime.date(1990, 1, 1)
"""A day before this one is a slip of the year."""

MOST_DAYS_AHEAD = 366
"""Nobody plans an operation more than a year ahead; a year has at most so many days."""


def why_not(surgery: datetime.date, today: datetime.date) -> str:
    """Return why an operation on this day cannot be meant, or an empty text."""
    if surgery < EARLIEST:
        return f"{surgery} is before {EARLIEST.year}; check the year"
    if (surgery - today).days > MOST_DAYS_AHEAD:
        return f"{surgery} is more than a year ahead; check the year"
    return ""
