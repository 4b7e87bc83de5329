"""Writes every number, duration, angle, load and list as a whole phrase of one language.

A phrase is one message with the plural forms of its language; a message that joins two counts joins
finished parts, each with a context of its own, so that a translator can bend each to its place. Every
number is isolated. Number and list forms are CLDR's. Weeks and dates are in `weeks`, doses in `doses`.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import Literal

from babel import Locale
from babel.lists import format_list
from babel.numbers import format_decimal, format_percent
from babel.units import format_unit

from generator.catalogue.dose import Load
from generator.catalogue.terms import BandStrength
from generator.wording.isolation import NO_BREAK, isolate, isolate_numbers
from generator.wording.voice import Voice


def number(voice: Voice, value: float, decimals: int | None = None) -> str:
    """Return a number; `decimals` fixes the places after the point, else up to three as needed."""
    return isolate(bare_number(voice, value, decimals))


def bare_number(voice: Voice, value: float, decimals: int | None = None) -> str:
    """Return a number without its isolate, to be part of a larger unit that is isolated as a whole."""
    return _decimal(voice.locale, value, decimals)


@lru_cache(maxsize=4096)
def _decimal(locale: Locale, value: float, decimals: int | None) -> str:
    # The same few numbers fill the phrases of every exercise; writing them anew was half of the work.
    pattern = None if decimals is None else "#,##0" + ("." + "0" * decimals if decimals else "")
    return str(format_decimal(value, format=pattern, locale=locale))


def times(voice: Voice, *numbers: int) -> str:
    """Return counts as one unit that never breaks or turns round: ``3 × 10``."""
    sign = f"{NO_BREAK}×{NO_BREAK}"
    return isolate(sign.join(bare_number(voice, value) for value in numbers))


def percent(voice: Voice, value: float) -> str:
    """Return a percentage without decimals; 50 means 50 %."""
    return isolate(format_percent(value / 100, locale=voice.locale))


def percent_range(voice: Voice, low: float, high: float) -> str:
    """Return ``20–50%`` as one unit."""
    return isolate(f"{bare_number(voice, low, 0)}–{format_percent(high / 100, locale=voice.locale)}")


def activity(voice: Voice, mean: float) -> str:
    """Return a muscle's activity for clinicians: ``28 %MVIC``."""
    return isolate(f"{bare_number(voice, mean, 0)}{NO_BREAK}%MVIC")


def angle(voice: Voice, degrees: float) -> str:
    """Return whole degrees: ``90°``."""
    return isolate(f"{bare_number(voice, degrees, 0)}°")


def height(voice: Voice, centimetres: float) -> str:
    """Return a height or length in whole centimetres."""
    return _measure(voice, round(centimetres), "length-centimeter")


def kilograms(voice: Voice, weight: float) -> str:
    """Return a weight."""
    return _measure(voice, weight, "mass-kilogram")


def newton_metres(voice: Voice, moment: float) -> str:
    """Return a moment about a joint, to whole newton metres: a model is no more exact."""
    return _measure(voice, round(moment), "torque-newton-meter")


def file_size(voice: Voice, octets: int) -> str:
    """Return the size of a file, in kilobytes below one megabyte, rounded up to what is shown."""
    if octets < 1_000_000:
        return _measure(voice, -(-octets // 1000), "digital-kilobyte")
    return _measure(voice, -(-octets // 100_000) / 10, "digital-megabyte")


def _measure(voice: Voice, value: float, unit: str) -> str:
    words = format_unit(value, unit, length="short", locale=voice.locale)
    return isolate_numbers(words.replace(" ", NO_BREAK))


def duration(voice: Voice, seconds: int) -> str:
    """Return how long something is kept, to stand after "for": ``30 seconds``, ``1 minute 30 seconds``."""
    whole, rest = divmod(seconds, 60)
    minute = voice.npgettext("for how long", "{number} minute", "{number} minutes", whole)
    second = voice.npgettext("for how long", "{number} second", "{number} seconds", rest)
    parts = {
        "minutes": minute.format(number=number(voice, whole)),
        "seconds": second.format(number=number(voice, rest)),
    }
    if whole and rest:
        return voice.pgettext("for how long", "{minutes} {seconds}").format(**parts)
    return parts["minutes" if whole else "seconds"]


def minutes(voice: Voice, count: int) -> str:
    """Return a length of time in minutes, standing alone: ``25 minutes``."""
    return counted(voice, voice.ngettext("{number} minute", "{number} minutes", count), count)


def about_minutes(voice: Voice, count: int) -> str:
    """Return an estimated length of time: ``about 25 minutes``."""
    return counted(voice, voice.ngettext("about {number} minute", "about {number} minutes", count), count)


def minutes_a_day(voice: Voice, count: int) -> str:
    """Return how long a day's exercises take, as an estimate: ``about 25 minutes a day``."""
    words = voice.ngettext("about {number} minute a day", "about {number} minutes a day", count)
    return counted(voice, words, count)


def exercises(voice: Voice, count: int) -> str:
    """Return ``6 exercises``."""
    return counted(voice, voice.ngettext("{number} exercise", "{number} exercises", count), count)


def people(voice: Voice, count: int) -> str:
    """Return ``30 people``."""
    return counted(voice, voice.ngettext("{number} person", "{number} people", count), count)


def studies(voice: Voice, count: int) -> str:
    """Return ``3 studies``."""
    return counted(voice, voice.ngettext("{number} study", "{number} studies", count), count)


def pages(voice: Voice, count: int) -> str:
    """Return ``8 pages``."""
    return counted(voice, voice.ngettext("{number} page", "{number} pages", count), count)


def counted(voice: Voice, words: str, count: int) -> str:
    """Return a message with its ``{number}`` in place."""
    return words.format(number=number(voice, count))


def phase(voice: Voice, count: int) -> str:
    """Return a phase by its number: ``Phase 2``."""
    return counted(voice, voice.gettext("Phase {number}"), count)


def step_of_dose(voice: Voice, count: int) -> str:
    """Return a dose step by its number: ``Step 2``."""
    return counted(voice, voice.pgettext("dose", "Step {number}"), count)


def place_of(voice: Voice, place: int, total: int) -> str:
    """Return ``Exercise 3 of 8``."""
    words = voice.gettext("Exercise {place} of {total}")
    return words.format(place=number(voice, place), total=number(voice, total))


def page_of(voice: Voice, page: int, total: int) -> str:
    """Return ``Page 3 of 8``."""
    words = voice.gettext("Page {page} of {total}")
    return words.format(page=number(voice, page), total=number(voice, total))


def pain(voice: Voice, level: int) -> str:
    """Return a level on the pain scale from 0 to 10: ``2 of 10``."""
    words = voice.pgettext("pain scale", "{level} of {most}")
    return words.format(level=number(voice, level), most=number(voice, 10))


def frequency(
    voice: Voice, times_a_day: int, days_a_week: int, rest_days: int = 0, *, hourly: bool = False
) -> str:
    """Return how often: ``Once a day, 3 days a week``, with the days of rest as a second sentence.

    `hourly`: the dose itself says how often in a day, so only the days are said.
    """
    days = voice.gettext("every day")
    if days_a_week < 7:
        days = voice.ngettext("{number} day a week", "{number} days a week", days_a_week)
    parts = {"times": times_a_day_words(voice, times_a_day), "days": counted(voice, days, days_a_week)}
    first = parts["days"] if hourly else voice.pgettext("how often", "{times}, {days}").format(**parts)
    first = voice.opening(first)
    if not rest_days:
        return first
    rest = {"often": first, "rest": rest_between(voice, rest_days)}
    return voice.pgettext("how often", "{often}. {rest}.").format(**rest)


def times_a_day_words(voice: Voice, count: int) -> str:
    """Return ``once a day`` or ``3 times a day``."""
    if count == 1:
        return voice.gettext("once a day")
    return counted(voice, voice.ngettext("{number} time a day", "{number} times a day", count), count)


def rest_between(voice: Voice, days: int) -> str:
    """Return ``Leave at least 1 day of rest in between``."""
    words = voice.ngettext(
        "Leave at least {number} day of rest in between",
        "Leave at least {number} days of rest in between",
        days,
    )
    return counted(voice, words, days)


def load(voice: Voice, load: Load) -> str:
    """Return the outside load, ``with a light band``, ``with 2 kg``; empty for body weight alone."""
    if load.band is not None:
        return {
            BandStrength.LIGHT: voice.gettext("with a light band"),
            BandStrength.MEDIUM: voice.gettext("with a medium band"),
            BandStrength.STRONG: voice.gettext("with a strong band"),
        }[load.band]
    if load.kilograms:
        return voice.gettext("with {weight}").format(weight=kilograms(voice, load.kilograms))
    return ""


def list_of(voice: Voice, items: Iterable[str], joined: Literal["and", "or"] = "and") -> str:
    """Return items as one list in words; empty for none."""
    style: Literal["standard", "or"] = "standard" if joined == "and" else "or"
    found = tuple(items)
    return format_list(found, style=style, locale=voice.locale) if found else ""


def row_of(voice: Voice, items: Iterable[str]) -> str:
    """Return items in a row without "and", as in a table: Arabic has a comma of its own."""
    return voice.pgettext("between the items of a row", ", ").join(items)


def parts_of(voice: Voice, parts: Iterable[str]) -> str:
    """Return parts of a row that may hold commas themselves: Arabic has a semicolon of its own."""
    return voice.pgettext("between the parts of a row", "; ").join(parts)
