"""Says in words what several pages show: when, until when, how much pain, and what is not translated yet."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, fields, is_dataclass
from typing import Any

from generator.catalogue.base import Text, TextState
from generator.catalogue.exercise import Caution
from generator.catalogue.in_force import in_force, outlasts
from generator.catalogue.programme import End, Phase, Programme, Restriction, Use
from generator.catalogue.restricted import Track, entry
from generator.wording.phrases import number
from generator.wording.terms import term
from generator.wording.voice import Voice
from generator.wording.weeks import not_before_week, until_week

_NOT_TRANSLATED = (TextState.MISSING, TextState.OUTDATED)


@dataclass(frozen=True)
class Warned:
    """A caution as it is shown: level for the look, signal word, hazard, consequence, what to do."""

    level: str
    word: str
    hazard: Text
    consequence: Text
    avoid: Text


@dataclass(frozen=True)
class Forbidden:
    """What must not be done until the same time: when it ends in words, and the restrictions."""

    until: str
    rules: tuple[Restriction, ...]


def warned(voice: Voice, cautions: Sequence[Caution]) -> tuple[Warned, ...]:
    """Return the cautions as they are shown."""
    return tuple(
        Warned(one.signal.value, term(voice, one.signal), one.hazard, one.consequence, one.avoid)
        for one in cautions
    )


def entry_weeks(phase: Phase, use: Use) -> tuple[int, int]:
    """Return the weeks from which a use may begin, on the usual and on the delayed track."""
    return entry(phase, use, Track.USUAL), entry(phase, use, Track.DELAYED)


def entry_words(voice: Voice, phase: Phase, use: Use) -> str:
    """Return when an exercise may begin later than its phase, on both tracks; else an empty text."""
    week, delayed = entry_weeks(phase, use)
    if (week, delayed) == (phase.week, phase.delayed_week):
        return ""
    return on_both_tracks(voice, not_before_week, week, delayed)


def on_both_tracks(voice: Voice, phrase: Callable[[Voice, int], str], week: int, delayed_week: int) -> str:
    """Return a phrase about a week, followed by the one for a delayed start where it differs."""
    if week == delayed_week:
        return phrase(voice, week)
    words = voice.gettext("{weeks}; if your start was delayed: {delayed}")
    return words.format(weeks=phrase(voice, week), delayed=phrase(voice, delayed_week))


def end_words(voice: Voice, end: End, begun: int = 0) -> str:
    """Return when a restriction ends: the week on both tracks, and the phase or person besides.

    begun: number of the phase that the reader is in, of which nobody needs to be told that it must begin.
    """
    parts = [voice.opening(on_both_tracks(voice, until_week, end.week, end.delayed_week)) + "."]
    if end.phase is not None and end.phase > begun:
        words = voice.gettext("And not before phase {number} has begun.")
        parts.append(words.format(number=number(voice, end.phase)))
    if end.release is not None:
        parts.append(voice.gettext("Who lifts it: {person}").format(person=end.release))
    return " ".join(parts)


def forbidden_in(voice: Voice, programme: Programme, phase: Phase) -> tuple[Forbidden, ...]:
    """Return what is restricted in a phase: for the whole phase first, then what ends sooner."""
    rules = in_force(programme, phase)
    lasting = tuple(rule for rule in rules if outlasts(rule, programme, phase))
    ending = [rule for rule in rules if rule not in lasting]
    ending.sort(key=lambda rule: (rule.until.week, rule.until.delayed_week))
    groups = {voice.gettext("In this whole phase"): lasting} if lasting else {}
    for rule in ending:
        until = end_words(voice, rule.until, phase.number)
        groups[until] = (*groups.get(until, ()), rule)
    return tuple(Forbidden(until, found) for until, found in groups.items())


def ends_of(voice: Voice, programme: Programme) -> tuple[Forbidden, ...]:
    """Return all restrictions of a programme in groups that end together, the soonest first."""
    groups: dict[str, tuple[Restriction, ...]] = {}
    for rule in sorted(programme.restrictions, key=lambda one: (one.until.week, one.until.delayed_week)):
        until = end_words(voice, rule.until)
        groups[until] = (*groups.get(until, ()), rule)
    return tuple(Forbidden(until, found) for until, found in groups.items())


def untranslated(*values: Any) -> bool:
    """Return whether a text somewhere in `values` is shown in the source language, untranslated."""
    return any(text.state in _NOT_TRANSLATED for value in values for text in texts(value))


def texts(value: Any) -> Iterator[Text]:
    """Yield every text inside a value of the catalogue."""
    if isinstance(value, Text):
        yield value
    elif isinstance(value, Mapping):
        for item in value.values():
            yield from texts(item)
    elif isinstance(value, tuple):
        for item in value:
            yield from texts(item)
    elif is_dataclass(value):
        for one in fields(value):
            if one.compare:
                yield from texts(getattr(value, one.name))
