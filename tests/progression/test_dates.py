"""Calendar days are held against dateutil; what a delay may do, against the rules of the trade."""

from __future__ import annotations

import datetime

import pytest
from dateutil.relativedelta import relativedelta
from hypothesis import given
from hypothesis import strategies as st

from generator.progression.dates import calendar, not_before
from generator.progression.weeks import first_day
from tests.content import FILES, catalogue_of, with_change

REPAIR = "programmes/tendon-repair.yml"
DAYS = st.dates(datetime.date(1990, 1, 1), datetime.date(2100, 12, 31))
LATE = "      - use: heel-raise\n"


@given(DAYS, st.integers(0, 104))
def test_not_before_is_that_many_weeks_later(surgery: datetime.date, week: int) -> None:
    """Outside check: dateutil's relativedelta, over leap days and year ends."""
    assert not_before(surgery, week) == surgery + relativedelta(weeks=week)


@pytest.mark.parametrize(
    ("surgery", "week", "expected"),
    [
        ("2028-02-29", 0, "2028-02-29"),
        ("2028-02-29", 6, "2028-04-11"),
        ("2028-02-29", 52, "2029-02-27"),
        ("2027-02-22", 1, "2027-03-01"),
        ("2028-02-22", 1, "2028-02-29"),
        ("2026-12-31", 6, "2027-02-11"),
        ("2000-02-29", 1, "2000-03-07"),
    ],
)
def test_leap_days_and_year_ends(surgery: str, week: int, expected: str) -> None:
    """Counted on a wall calendar."""
    assert not_before(datetime.date.fromisoformat(surgery), week).isoformat() == expected


def test_a_week_is_over_after_seven_days() -> None:
    """The operation is on day 0, so "from week 6" is from day 42 (common practice, no source)."""
    assert (first_day(0), first_day(6)) == (0, 42)


def test_phases_and_late_entries_on_both_tracks() -> None:
    """The small programme: phase 2 from week 6, delayed 8; its late exercise from 7, delayed 10."""
    entry = "        week: 7\n        delayed-week: 10\n"
    programme = catalogue_of(with_change(FILES, REPAIR, LATE, LATE + entry)).programmes["tendon-repair"]
    found = calendar(programme, datetime.date(2028, 2, 29))
    assert [
        (item.phase, item.exercise, item.usual.isoformat(), item.delayed.isoformat()) for item in found
    ] == [
        (1, None, "2028-02-29", "2028-02-29"),
        (2, None, "2028-04-11", "2028-04-25"),
        (2, "heel-raise", "2028-04-18", "2028-05-09"),
    ]


SMALL = catalogue_of().programmes["tendon-repair"]


@given(DAYS, st.integers(1, 2))
def test_a_delay_never_shortens(surgery: datetime.date, delayed_from: int) -> None:
    """From whichever phase on recovery is delayed, nothing may begin earlier than usual."""
    for item in calendar(SMALL, surgery, delayed_from):
        assert item.usual <= item.delayed
        assert (item.usual == item.delayed) or item.phase >= delayed_from


def test_a_delay_that_begins_late_leaves_earlier_phases_alone() -> None:
    """Phases before the delay keep their usual weeks, all later ones are shifted."""
    files = with_change(FILES, REPAIR, "    week: 0\n    delayed-week: 0", "    week: 0\n    delayed-week: 1")
    programme = catalogue_of(files).programmes["tendon-repair"]
    weeks = {
        start: [item.delayed_week for item in calendar(programme, datetime.date(2028, 1, 1), start)]
        for start in (1, 2)
    }
    assert weeks == {1: [1, 8], 2: [0, 8]}
