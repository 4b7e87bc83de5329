"""Holds that restrictions are complete: one name each, an end on both tracks, a phase that exists."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.programme import Programme, WeightRestriction
from generator.catalogue.terms import WeightBearing
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule

TWICE = Rule(
    "restriction-twice",
    "Two restrictions of a programme have the same id.",
    "A restriction was copied and not renamed.",
    "give one of them an id of its own",
)
NO_END = Rule(
    "restriction-without-end",
    "A restriction has a week but neither a phase nor a person who lifts it.",
    "Time alone ends no restriction.",
    "add 'phase' (the phase that must have been entered) or 'release' (who lifts it)",
    safety=True,
)
NO_PHASE = Rule(
    "restriction-phase",
    "A restriction ends with a phase that the programme does not have.",
    "A phase was removed, or the number is wrong.",
    "name one of the programme's phases by its number",
    safety=True,
)
TRACK = Rule(
    "restriction-delay",
    "A restriction would end earlier when recovery is delayed.",
    "The delayed week was not changed with the usual one.",
    "make the delayed week at least as late as the usual one",
    safety=True,
)
NO_AMOUNT = Rule(
    "restriction-without-amount",
    "A restriction allows part of the weight and does not say how much.",
    "Neither kilograms nor percent of the body weight were typed.",
    "add 'kilograms' or 'percent'",
    safety=True,
)
RULES = (TWICE, NO_END, NO_PHASE, TRACK, NO_AMOUNT)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each restriction that is not complete."""
    for programme in catalogue.programmes.values():
        yield from _of_programme(programme)


def _of_programme(programme: Programme) -> Iterator[Problem]:
    seen: set[str] = set()
    for restriction in programme.restrictions:
        end = restriction.until
        if restriction.id in seen:
            yield TWICE.at(restriction.at("id"), f"'{restriction.id}' stands twice in '{programme.id}'")
        seen.add(restriction.id)
        if isinstance(restriction, WeightRestriction) and _lacks_amount(restriction):
            message = f"'{restriction.id}' allows part of the weight, but not how much"
            yield NO_AMOUNT.at(restriction.at("allows"), message)
        if end.phase is None and end.release is None:
            yield NO_END.at(end.place, f"'{restriction.id}' would end by time alone")
        if end.phase is not None and end.phase > len(programme.phases):
            yield NO_PHASE.at(end.at("phase"), f"there is no phase {end.phase} in '{programme.id}'")
        if end.delayed_week < end.week:
            message = f"'{restriction.id}' would end in week {end.delayed_week} instead of {end.week}"
            yield TRACK.at(end.at("delayed-week"), message)


def _lacks_amount(restriction: WeightRestriction) -> bool:
    partial = restriction.allows is WeightBearing.PARTIAL
    return partial and restriction.kilograms is None and restriction.percent is None
