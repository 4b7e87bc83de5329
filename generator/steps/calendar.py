"""Gives the command line the first possible days of a programme, by the programme's id."""

from __future__ import annotations

import datetime

from generator.catalogue.arranged import NotBefore
from generator.catalogue.programme import Programme
from generator.progression import calendar


def first_days(programme: Programme, surgery: datetime.date, delayed_from: int) -> tuple[NotBefore, ...]:
    """Return the day before which each phase and each late exercise may not begin, on both tracks.

    Raises ValueError, with what is wrong, where the programme has no phase `delayed_from`.
    """
    if not 1 <= delayed_from <= len(programme.phases):
        raise ValueError(f"'{programme.id}' has phases 1 to {len(programme.phases)}")
    return calendar(programme, surgery, delayed_from)
