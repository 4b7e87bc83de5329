"""Holds every use and every thing of daily life to the restrictions of its programme, on both tracks.

Each use is judged on the day it enters (the phase's first day where it states no week): both legs, the pose
and the supporting leg included, the chosen variation, every dose step. A held joint is isometric work; with
a load every active movement is one against a load. Of the weight, 'touch' allows touch; 'partial' allows a
part, and sharing from half the body weight on. What the content leaves out counts as forbidden.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from generator.catalogue.programme import Phase, Programme, Restriction, Use
from generator.catalogue.restricted import (
    Breach,
    Track,
    breaches,
    dated,
    entry,
    holds,
    work_of_daily_life,
    work_of_use,
)
from generator.catalogue.values import Catalogue
from generator.problems import Place, Problem, Rule

FORBIDDEN = Rule(
    "forbidden",
    "A use asks for what a restriction forbids on the day it enters.",
    "The restriction ends later, on one of the tracks or with a later phase.",
    "let it enter later, use it in a later phase, or choose another exercise or variation",
    safety=True,
)
RELEASE = Rule(
    "forbidden-until-released",
    "A use asks for what only a person can allow, and does not say that it waits for that.",
    "The restriction ends by release, on no date.",
    "say under 'when' what must be reached before it begins, or choose another exercise",
    safety=True,
)
UNKNOWN = Rule(
    "cannot-be-judged",
    "A movement does not say how far it goes, or what loads it, where a restriction sets a limit.",
    "Its 'to' or the load of a dose step was left out; what is not known counts as forbidden.",
    "add 'to' with the largest angle, or the load of the dose step",
    safety=True,
)
DAILY_LIFE = Rule(
    "daily-life-forbidden",
    "A phase lists a thing of daily life that does what a restriction forbids then.",
    "The item was written for a later phase.",
    "list another item in this phase, or change what the item does",
    safety=True,
)
RULES = (FORBIDDEN, RELEASE, UNKNOWN, DAILY_LIFE)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each restriction that a use or a thing of daily life breaks."""
    for programme in catalogue.programmes.values():
        for phase in programme.phases:
            for use in phase.uses:
                for rule in programme.restrictions if use.use in catalogue.exercises else ():
                    yield from _of_use(catalogue, programme, phase, use, rule)
            yield from _of_daily_life(catalogue, programme, phase)


def _of_use(
    catalogue: Catalogue, programme: Programme, phase: Phase, use: Use, rule: Restriction
) -> Iterator[Problem]:
    tracks = [track for track in Track if dated(rule, phase.number, entry(phase, use, track), track)]
    if not tracks and (rule.until.release is None or use.when is not None):
        return
    work = work_of_use(catalogue.exercises[use.use], use)
    found = tuple(breaches(work, rule, both_sides=programme.both_sides))
    yield from _unknown(use.use, found, use)
    known = [breach for breach in found if not breach.unknown]
    if not known:
        return
    name = f"{use.use}/{use.variation}" if use.variation else use.use
    what = f"'{name}' in phase {phase.number} breaks '{rule.id}': {_why(known)}"
    if not tracks:
        yield RELEASE.at(_place(use, known), what)
        return
    weeks = " and ".join(f"in week {entry(phase, use, track)} ({track.value})" for track in tracks)
    yield FORBIDDEN.at(_place(use, known), f"{what}, {weeks}", _remedy(phase, rule))


def _unknown(name: str, found: Iterable[Breach], use: Use | None) -> Iterator[Problem]:
    for breach in found:
        if not breach.unknown:
            continue
        place = breach.place
        if use is not None and breach.step is not None:
            place = use.at("dose-steps", breach.step)
        message = f"'{name}': {breach.why}, so '{breach.restriction.id}' forbids it"
        yield UNKNOWN.at(place or breach.restriction.place, message)


def _place(use: Use, found: Iterable[Breach]) -> Place:
    """Return the dose step where only a load breaks the rule, else the line that names the exercise."""
    steps = [breach.step for breach in found]
    first = steps[0]
    if first is not None and None not in steps:
        return use.at("dose-steps", first)
    return use.at("variation" if use.variation else "use")


def _why(found: Iterable[Breach]) -> str:
    return "; ".join(dict.fromkeys(breach.why for breach in found))


def _remedy(phase: Phase, rule: Restriction) -> str:
    until = rule.until
    if until.phase is not None and phase.number < until.phase:
        later = f"use it in phase {until.phase} or later, not before week {until.week}"
    else:
        later = f"let it enter with 'week: {until.week}' at the earliest"
    return f"{later} (delayed: {until.delayed_week}), or choose another exercise or variation"


def _of_daily_life(catalogue: Catalogue, programme: Programme, phase: Phase) -> Iterator[Problem]:
    starts = {Track.USUAL: phase.week, Track.DELAYED: phase.delayed_week}
    for position, id_ in enumerate(phase.daily_life):
        item = catalogue.daily_life.get(id_)
        if item is None:
            continue
        for rule in programme.restrictions:
            if not any(holds(rule, phase.number, week, track) for track, week in starts.items()):
                continue
            found = tuple(breaches(work_of_daily_life(item), rule, both_sides=programme.both_sides))
            yield from _unknown(id_, found, None)
            known = [breach for breach in found if not breach.unknown]
            if known:
                message = f"'{id_}' in phase {phase.number} breaks '{rule.id}': {_why(known)}"
                yield DAILY_LIFE.at(phase.at("daily-life", position), message)
