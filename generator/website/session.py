"""Says of a day of a phase what no single exercise says: how long it takes, what comes again, what rests."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.arranged import Day, SessionReasonKind
from generator.catalogue.programme import Phase, Programme
from generator.website.values import SiteInput
from generator.wording.phrases import about_minutes, list_of, minutes_a_day, number, rest_between
from generator.wording.terms import term

# What needs saying of a single exercise; that a position is kept, and that within it the order of
# introduction holds, is said once for all.
_SAID = frozenset({SessionReasonKind.WARM_UP, SessionReasonKind.FRESH_LEG})


@dataclass(frozen=True)
class DayView:
    """The fullest day of a phase in words.

    takes: how long the first session takes. again: what each later session of the day holds.
    in_passing: what is done through the day besides. day_takes: how long all sessions take. rests: what must
    not be done on two days running.
    """

    takes: str
    again: tuple[str, ...]
    in_passing: str
    day_takes: str
    rests: tuple[str, ...]


def day_view(site: SiteInput, programme: Programme, phase: Phase) -> DayView | None:
    """Return the fullest day of a phase; None where nothing was worked out."""
    day = site.days.get((programme.id, phase.number))
    if day is None or not (day.sessions or day.in_passing):
        return None
    first = day.sessions[0] if day.sessions else None
    voice = site.voice
    return DayView(
        takes=about_minutes(voice, first.minutes) if first else "",
        again=tuple(_again(site, day, number) for number in range(1, len(day.sessions))),
        in_passing=_names(site, day.in_passing),
        day_takes=voice.opening(minutes_a_day(voice, day.minutes)) if len(day.sessions) > 1 else "",
        rests=tuple(_rests(site, phase)),
    )


def turn_words(site: SiteInput, exercise: str, day: Day | None) -> str:
    """Return why an exercise comes where it does in a session; empty where that needs no saying."""
    places = day.sessions[0].places if day and day.sessions else ()
    reasons = (one.kind for place in places if place.exercise == exercise for one in place.reasons)
    said = dict.fromkeys(term(site.voice, kind) for kind in reasons if kind in _SAID)
    return site.voice.opening(list_of(site.voice, said))


def _again(site: SiteInput, day: Day, position: int) -> str:
    """Return what a later session of the day holds."""
    held = [place.exercise for place in day.sessions[position].places]
    takes = about_minutes(site.voice, day.sessions[position].minutes)
    values = {"number": number(site.voice, position + 1), "minutes": takes}
    if len(held) == len(day.sessions[0].places):
        return site.voice.gettext("Session {number} of the day: the same again, {minutes}.").format(**values)
    words = site.voice.gettext("Session {number} of the day: only {exercises}, {minutes}.")
    return words.format(exercises=_names(site, held), **values)


def _rests(site: SiteInput, phase: Phase) -> list[str]:
    groups: dict[int, list[str]] = {}
    for use in phase.uses:
        if use.rest_days:
            groups.setdefault(use.rest_days, []).append(use.use)
    words = site.voice.gettext("{rest}: {exercises}.")
    return [
        words.format(rest=rest_between(site.voice, days), exercises=_names(site, uses))
        for days, uses in sorted(groups.items())
    ]


def _names(site: SiteInput, exercises: tuple[str, ...] | list[str]) -> str:
    return list_of(site.voice, (str(site.catalogue.exercises[one].name) for one in exercises))
