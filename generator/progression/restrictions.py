"""Works out "what is allowed when": each restriction of a programme through all phases, on both tracks."""

from __future__ import annotations

from generator.catalogue.arranged import Hold, RestrictionCell, RestrictionRow, Window
from generator.catalogue.programme import (
    ImpactRestriction,
    LoadRestriction,
    MovementRestriction,
    PositionRestriction,
    Programme,
    Restriction,
    WeightRestriction,
)
from generator.catalogue.restricted import Track, holds
from generator.catalogue.terms import WeightBearing
from generator.progression.weeks import first_day, windows

_KINDS = {
    MovementRestriction: "movement",
    WeightRestriction: "weight-bearing",
    PositionRestriction: "position",
    ImpactRestriction: "impact",
    LoadRestriction: "outside-load",
}


def restriction_table(programme: Programme) -> tuple[RestrictionRow, ...]:
    """Return one row for each restriction, in the order of the programme."""
    return tuple(_row(programme, rule) for rule in programme.restrictions)


def is_limit(rule: Restriction) -> bool:
    """Return whether the restriction allows something up to a limit, instead of forbidding it wholly."""
    if isinstance(rule, MovementRestriction):
        return rule.limit is not None
    if isinstance(rule, WeightRestriction):
        return rule.allows is not WeightBearing.NONE
    return isinstance(rule, LoadRestriction) and rule.kilograms > 0


def _row(programme: Programme, rule: Restriction) -> RestrictionRow:
    phase = programme.phases[(rule.until.phase or 1) - 1 : rule.until.phase or 1]
    week = max([rule.until.week, *(item.week for item in phase)])
    delayed = max([rule.until.delayed_week, *(item.delayed_week for item in phase)])
    return RestrictionRow(
        id=rule.id,
        kind=_KINDS[type(rule)],
        end_day=first_day(week),
        delayed_end_day=first_day(delayed),
        by_release=rule.until.release is not None,
        cells=tuple(_cell(rule, window, week, delayed) for window in windows(programme)),
    )


def _cell(rule: Restriction, window: Window, week: int, delayed: int) -> RestrictionCell:
    """Return how the restriction stands to a phase; what may still hold on its first day counts."""
    held = holds(rule, window.phase, window.start, Track.USUAL)
    if not held and not holds(rule, window.phase, window.delayed_start, Track.DELAYED):
        return RestrictionCell(window.phase, Hold.LIFTED)
    hold = Hold.LIMITED if is_limit(rule) else Hold.FORBIDDEN
    if rule.until.release is not None:
        return RestrictionCell(window.phase, hold)
    usual = _inside(week, window.start, window.end)
    late = _inside(delayed, window.delayed_start, window.delayed_end)
    if usual is None and late is None:
        return RestrictionCell(window.phase, hold)
    # On the track on which it ended before the phase, it is lifted from the phase's first day on.
    return RestrictionCell(
        window.phase,
        hold,
        usual if usual is not None else _before(week, window.start),
        late if late is not None else _before(delayed, window.delayed_start),
    )


def _inside(week: int, start: int, end: int | None) -> int | None:
    return week if start < week and (end is None or week < end) else None


def _before(week: int, start: int) -> int | None:
    return start if week <= start else None
