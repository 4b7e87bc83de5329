"""Decides which restrictions of a programme hold in a phase, so that page and paper never differ."""

from __future__ import annotations

from generator.catalogue.programme import Phase, Programme, Restriction


def in_force(programme: Programme, phase: Phase) -> tuple[Restriction, ...]:
    """Return the restrictions that still hold on the first day of the phase on one of the tracks, in their order.

    A restriction ends only when its week AND its phase are reached; where it names a person who ends it,
    no date or phase ends it alone.
    """
    return tuple(rule for rule in programme.restrictions if holds_at_start(rule, phase))


def holds_at_start(restriction: Restriction, phase: Phase) -> bool:
    """Return whether the restriction may still hold on the first day of the phase, on either track."""
    until = restriction.until
    early = phase.week < until.week or phase.delayed_week < until.delayed_week
    if until.release is not None:
        return True
    return early or (until.phase is not None and phase.number < until.phase)
