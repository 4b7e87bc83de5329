"""Says when a phase runs: the one place where full weeks after an operation become days and windows."""

from __future__ import annotations

from generator.catalogue.arranged import Window
from generator.catalogue.programme import Phase, Programme, Use
from generator.catalogue.restricted import Track, entry

DAYS_IN_A_WEEK = 7


def first_day(week: int) -> int:
    """Return the first day "from week `week`": that many full weeks are over; the operation is day 0."""
    return DAYS_IN_A_WEEK * week


def windows(programme: Programme) -> tuple[Window, ...]:
    """Return each phase's window on both tracks, in full weeks; it ends where the next begins."""
    phases = programme.phases
    return tuple(
        Window(
            phase=phase.number,
            start=phase.week,
            end=following.week if following else None,
            delayed_start=phase.delayed_week,
            delayed_end=following.delayed_week if following else None,
        )
        for phase, following in zip(phases, (*phases[1:], None), strict=True)
    )


def entry_week(phase: Phase, use: Use) -> int:
    """Return the week from which the use is allowed on the usual track."""
    return entry(phase, use, Track.USUAL)


def active_together(phase: Phase) -> tuple[tuple[Use, ...], ...]:
    """Return the uses that are active at once, for each week of the usual track in which one enters.

    A use that is replaced by another of the same phase stops on the day the other enters.
    """
    entries = {use.use: entry_week(phase, use) for use in phase.uses}
    return tuple(
        tuple(
            use
            for use in phase.uses
            if entries[use.use] <= week and entries.get(use.replaced_by or "", week + 1) > week
        )
        for week in sorted(set(entries.values()))
    )


def delayed_entry_week(phase: Phase, use: Use) -> int:
    """Return the week from which the use is allowed on the delayed track."""
    return entry(phase, use, Track.DELAYED)
