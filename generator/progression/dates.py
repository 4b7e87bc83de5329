"""Turns an operation date into the days before which nothing may begin; it never says that it does begin."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

from generator.catalogue.arranged import NotBefore
from generator.catalogue.programme import Phase, Programme
from generator.progression.weeks import delayed_entry_week, entry_week, first_day


def not_before(surgery: datetime.date, week: int) -> datetime.date:
    """Return the first day "from week `week`" on; the operation is on day 0.

    Raises OverflowError beyond the year 9999.
    """
    return surgery + datetime.timedelta(days=first_day(week))


def calendar(programme: Programme, surgery: datetime.date, delayed_from: int = 1) -> tuple[NotBefore, ...]:
    """Return the first possible day of each phase and of each use that enters later, in order of phases.

    delayed_from: the phase with which the delay begins; it and all later phases keep to their delayed weeks
    on the delayed track, those before to the usual ones. A delay so never shortens, since a phase's delayed
    week is never before its usual one.
    """
    return tuple(
        NotBefore(number, exercise, usual, late, not_before(surgery, usual), not_before(surgery, late))
        for number, exercise, usual, late in _starts(programme, delayed_from)
    )


def _starts(programme: Programme, delayed_from: int) -> Iterator[tuple[int, str | None, int, int]]:
    for phase in programme.phases:
        delayed = phase.number >= delayed_from
        yield phase.number, None, phase.week, phase.delayed_week if delayed else phase.week
        for usual, late, exercise in sorted(_later_entries(phase)):
            yield phase.number, exercise, usual, late if delayed else usual


def _later_entries(phase: Phase) -> Iterator[tuple[int, int, str]]:
    for use in phase.uses:
        usual, late = entry_week(phase, use), delayed_entry_week(phase, use)
        if usual > phase.week or late > phase.delayed_week:
            yield usual, late, use.use
