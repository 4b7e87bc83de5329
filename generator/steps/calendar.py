"""Gives the command line the first possible days of a programme, by the programme's id."""

from __future__ import annotations

import datetime

from generator.catalogue.arranged import NotBefore
from generator.catalogue.programme import Programme
from generator.progression import calendar

# Nobody plans an operation further ahead; a day beyond is a slip of the year.
MOST_DAYS_AHEAD = 366
EARLIEST = datetime.date(1990, 1, 1)


def first_days(programme: Programme, surgery: datetime.date, delayed_from: int) -> tuple[NotBefore, ...]:
    """Return the day before which each phase and each late exercise may not begin, on both tracks.

    Raises ValueError, with what is wrong, where the programme has no phase `delayed_from`.
    """
    if not 1 <= delayed_from <= len(programme.phases):
        raise ValueError(f"'{programme.id}' has phases 1 to {len(programme.phases)}")
    return calendar(programme, surgery, delayed_from)


def why_not(surgery: datetime.date, today: datetime.date) -> str:
    """Return why an operation on this day cannot be meant, or an empty text."""
    if surgery < EARLIEST:
        return f"{surgery} is before {EARLIEST.year}; check the year"
    if (surgery - today).days > MOST_DAYS_AHEAD:
        return f"{surgery} is more than a year ahead; check the year"
    return ""
