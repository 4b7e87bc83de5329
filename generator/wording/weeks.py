"""Says when: weeks after the operation on both tracks, days, dates and weekdays.

"From week n" means that n full weeks are over, from day 7n on; the day of the operation is day 0.
"""

from __future__ import annotations

import datetime
from typing import Literal

from babel.dates import format_date, get_day_names

from generator.catalogue.arranged import Window
from generator.wording.isolation import isolate_numbers
from generator.wording.phrases import counted, number
from generator.wording.voice import Voice


def week(voice: Voice, count: int) -> str:
    """Return ``week 6``."""
    return counted(voice, voice.gettext("week {number}"), count)


def day(voice: Voice, count: int) -> str:
    """Return ``day 42``; the day of the operation is day 0."""
    return counted(voice, voice.gettext("day {number}"), count)


def days(voice: Voice, first: int, last: int) -> str:
    """Return a range of days, both included: ``days 0 to 41``."""
    words = voice.gettext("days {first} to {last}")
    return words.format(first=number(voice, first), last=number(voice, last))


def from_week(voice: Voice, start: int) -> str:
    """Return ``from week 6``: 6 full weeks are over."""
    return counted(voice, voice.gettext("from week {number}"), start)


def until_week(voice: Voice, end: int) -> str:
    """Return ``until week 6``: up to when 6 full weeks are over."""
    return counted(voice, voice.gettext("until week {number}"), end)


def not_before_week(voice: Voice, start: int) -> str:
    """Return ``not before week 12``."""
    return counted(voice, voice.gettext("not before week {number}"), start)


def full_weeks(voice: Voice, count: int) -> str:
    """Return what a week number means: ``6 full weeks after your operation``."""
    words = voice.ngettext(
        "{number} full week after your operation", "{number} full weeks after your operation", count
    )
    return counted(voice, words, count)


def weeks(voice: Voice, window: Window) -> str:
    """Return when a phase runs on the usual track.

    ``weeks 6 to 10``, open ``from week 16``, from the operation on ``the first 6 weeks``.
    """
    return _window(voice, window.start, window.end)


def delayed_weeks(voice: Voice, window: Window) -> str:
    """Return when a phase runs on the delayed track, in the words of `weeks`."""
    return _window(voice, window.delayed_start, window.delayed_end)


def both_tracks(voice: Voice, window: Window) -> str:
    """Return the weeks, followed by those of a delayed start where they differ."""
    usual, delayed = weeks(voice, window), delayed_weeks(voice, window)
    if usual == delayed:
        return usual
    words = voice.gettext("{weeks}; if your start was delayed: {delayed}")
    return words.format(weeks=usual, delayed=delayed)


def _window(voice: Voice, start: int, end: int | None) -> str:
    if end is None:
        return from_week(voice, start)
    if start == 0:
        first = voice.ngettext("the first {number} week", "the first {number} weeks", end)
        return counted(voice, first, end)
    words = voice.gettext("weeks {start} to {end}")
    return words.format(start=number(voice, start), end=number(voice, end))


def date(voice: Voice, value: datetime.date) -> str:
    """Return a date in full, with the month in words; its numbers are isolated one by one."""
    return isolate_numbers(format_date(value, "long", locale=voice.locale))


def weekdays(
    voice: Voice, width: Literal["wide", "abbreviated", "short", "narrow"] = "wide"
) -> tuple[str, ...]:
    """Return the seven names from Monday on, as they stand alone."""
    names = get_day_names(width, "stand-alone", locale=voice.locale)
    return tuple(names[position] for position in range(7))
