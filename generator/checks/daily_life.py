"""Holds that a programme speaks of the whole day, not of exercises alone."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, Severity

RULE = Rule(
    "daily-life-incomplete",
    "A programme that speaks of daily life leaves out a part of it.",
    "No phase lists an item for it; an item is known by its id, such as stairs-with-crutches.",
    "list an item in a phase under 'daily-life' whose id holds the missing word",
    severity=Severity.WARNING,
)
RULES = (RULE,)
# The order of a day.
WANTED = ("sleeping", "bed", "toilet", "wound", "dressing", "chair", "stairs", "car")


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each programme whose phases together leave out a part of the day."""
    for programme in catalogue.programmes.values():
        listed = {id_ for phase in programme.phases for id_ in phase.daily_life}
        words = {word for id_ in listed for word in id_.split("-")}
        missing = [wanted for wanted in WANTED if wanted not in words]
        if listed and missing:
            message = f"'{programme.id}' says nothing about: {', '.join(missing)}"
            yield RULE.at(programme.at("phases"), message)
