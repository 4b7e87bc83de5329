"""Numbers and phrases read as the language writes them, and each number is isolated."""

from __future__ import annotations

import datetime
import re

import pytest

from generator.catalogue.arranged import Window
from generator.catalogue.dose import Load
from generator.catalogue.terms import BandStrength
from generator.wording import phrases, weeks
from generator.wording.isolation import CLOSE, OPEN, plain
from generator.wording.voice import voice
from tests.wording.samples import ARABIC, GERMAN, speaking

ENGLISH = voice("en")
LATER = Window(phase=2, start=6, end=10, delayed_start=9, delayed_end=13)


@pytest.mark.parametrize(
    ("language", "number", "percent", "date"),
    [
        ("en", "1,234.5", "50%", "5 November 2026"),
        ("de", "1.234,5", "50\u00a0%", "5. November 2026"),
        ("pl", "1\u00a0234,5", "50%", "5 listopada 2026"),
        ("ar", "1,234.5", "50%", "5 نوفمبر 2026"),
    ],
)
def test_numbers_and_dates_are_as_in_cldr(language: str, number: str, percent: str, date: str) -> None:
    """Signs, order and month names are those of the CLDR charts; English is British; digits are Latin."""
    speaker = voice(language)
    assert plain(phrases.number(speaker, 1234.5)) == number
    assert plain(phrases.percent(speaker, 50)) == percent
    assert plain(weeks.date(speaker, datetime.date(2026, 11, 5))) == date


def test_a_date_in_a_right_to_left_line_keeps_the_order_of_its_words() -> None:
    """Only the numbers are isolated: a date isolated whole would be read from the year backwards."""
    date = weeks.date(voice("ar"), datetime.date(2026, 11, 5))
    assert date == f"{OPEN}5{CLOSE} نوفمبر {OPEN}2026{CLOSE}"


def test_a_unit_in_the_script_of_the_line_stays_outside_the_isolate() -> None:
    """Latin units belong to their number, Arabic ones to the sentence (unit names as in CLDR)."""
    assert phrases.height(ENGLISH, 45) == f"{OPEN}45\u00a0cm{CLOSE}"
    assert phrases.height(voice("ar"), 45) == f"{OPEN}45{CLOSE}\u00a0سم"


@pytest.mark.parametrize(
    ("seconds", "words"),
    [(5, "5 seconds"), (1, "1 second"), (60, "1 minute"), (90, "1 minute 30 seconds"), (120, "2 minutes")],
)
def test_a_duration_is_said_in_minutes_and_seconds(seconds: int, words: str) -> None:
    """Nobody counts ninety seconds."""
    assert plain(phrases.duration(ENGLISH, seconds)) == words


def test_weeks_are_said_for_both_tracks() -> None:
    """A window with an end, from the operation on, and an open one each have their own words."""
    first = Window(phase=1, start=0, end=6, delayed_start=0, delayed_end=6)
    last = Window(phase=4, start=16, end=None, delayed_start=20, delayed_end=None)
    assert plain(weeks.weeks(ENGLISH, first)) == "the first 6 weeks"
    assert plain(weeks.weeks(ENGLISH, last)) == "from week 16"
    assert plain(weeks.delayed_weeks(ENGLISH, LATER)) == "weeks 9 to 13"
    assert (
        plain(weeks.both_tracks(ENGLISH, LATER)) == "weeks 6 to 10; if your start was delayed: weeks 9 to 13"
    )
    assert weeks.both_tracks(ENGLISH, first) == weeks.weeks(ENGLISH, first)


def test_weeks_of_a_language_are_one_message() -> None:
    """A translator bends the whole phrase; the numbers come isolated."""
    assert plain(weeks.weeks(speaking("de", GERMAN), LATER)) == "Woche 6 bis 10"
    arabic = weeks.weeks(speaking("ar", ARABIC), LATER)
    assert arabic == f"الأسابيع {OPEN}6{CLOSE} إلى {OPEN}10{CLOSE}"


@pytest.mark.parametrize(
    ("times_a_day", "days", "rest", "words"),
    [
        (1, 7, 0, "Once a day, every day"),
        (2, 3, 1, "2 times a day, 3 days a week. Leave at least 1 day of rest in between."),
        (1, 2, 2, "Once a day, 2 days a week. Leave at least 2 days of rest in between."),
    ],
)
def test_frequency_says_times_days_and_rest(times_a_day: int, days: int, rest: int, words: str) -> None:
    """Strength work says how many rest days lie between."""
    assert plain(phrases.frequency(ENGLISH, times_a_day, days, rest)) == words


def test_an_hourly_dose_is_not_also_once_a_day() -> None:
    """A dose that counts by the hour leaves only the days to say."""
    assert phrases.frequency(ENGLISH, 1, 7, hourly=True) == "Every day"


@pytest.mark.parametrize(
    ("octets", "size"),
    [(1, "1\u00a0kB"), (999_999, "1,000\u00a0kB"), (1_000_000, "1\u00a0MB"), (1_234_567, "1.3\u00a0MB")],
)
def test_a_file_is_never_larger_than_said(octets: int, size: str) -> None:
    """Sizes are rounded up, in decimal units (IEC 80000-13: 1 kB = 1000 B)."""
    assert plain(phrases.file_size(ENGLISH, octets)) == size


def test_short_phrases() -> None:
    """What stands on every sheet reads as a person would say it."""
    assert plain(phrases.place_of(ENGLISH, 3, 8)) == "Exercise 3 of 8"
    assert plain(phrases.pain(ENGLISH, 2)) == "2 of 10"
    assert plain(phrases.angle(ENGLISH, 90)) == "90°"
    assert plain(phrases.percent_range(ENGLISH, 20, 50)) == "20–50%"
    assert plain(phrases.activity(ENGLISH, 28.4)) == "28\u00a0%MVIC"
    assert plain(phrases.number(ENGLISH, 4, 1)) == "4.0"
    assert phrases.load(ENGLISH, Load(band=BandStrength.LIGHT)) == "with a light band"
    assert plain(phrases.load(ENGLISH, Load(kilograms=1.5))) == "with 1.5\u00a0kg"
    assert phrases.load(ENGLISH, Load()) == ""


def test_lists_are_joined_as_in_cldr() -> None:
    """The last item has its own word, and an empty list says nothing."""
    assert phrases.list_of(ENGLISH, ["bed", "floor"], "or") == "bed or floor"
    assert phrases.list_of(voice("de"), ["a", "b", "c"]) == "a, b und c"
    assert phrases.list_of(ENGLISH, []) == ""


def test_weekdays_begin_with_monday_in_every_language() -> None:
    """Diary columns stand in the same order on every sheet (ISO 8601), named as in CLDR."""
    assert weeks.weekdays(voice("de"))[0] == "Montag"
    assert weeks.weekdays(voice("pl"), "abbreviated")[6] == "niedz."


@pytest.mark.parametrize("language", ["en", "de", "pl", "ar", "he", "fa", "uk", "tr"])
def test_every_number_in_a_phrase_is_isolated(language: str) -> None:
    """No phrase of any language leaves a digit bare."""
    speaker = voice(language)
    said = [
        phrases.number(speaker, -1234.5),
        phrases.percent(speaker, 50),
        phrases.percent_range(speaker, 20, 50),
        phrases.angle(speaker, -5),
        phrases.kilograms(speaker, 2.5),
        phrases.duration(speaker, 90),
        phrases.frequency(speaker, 2, 3, 1),
        phrases.file_size(speaker, 1_234_567),
        phrases.pain(speaker, 2),
        phrases.place_of(speaker, 3, 8),
        weeks.both_tracks(speaker, LATER),
        weeks.date(speaker, datetime.date(2026, 11, 5)),
        weeks.days(speaker, 0, 41),
    ]
    for words in said:
        assert not re.search(r"\d", re.sub(f"{OPEN}[^{OPEN}{CLOSE}]*{CLOSE}", "", words)), words
