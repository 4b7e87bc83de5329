"""Holds that what is asked of a week fits into it, and that strength work says how much rest it needs.

ACSM position stand 2009 (Ratamess et al., Med Sci Sports Exerc 41(3):687-708): beginners train on 2 to 3 days
a week; days of rest in between are common practice.
"""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.programme import Phase, Use
from generator.catalogue.terms import Role
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule
from generator.progression.weeks import DAYS_IN_A_WEEK

SHORT = Rule(
    "week-too-short",
    "An exercise is to be done on more days than a week has, with its rest days in between.",
    "Days a week and rest days were changed apart from each other.",
    "lower 'days-a-week' or 'rest-days'",
)
REST = Rule(
    "rest-days-missing",
    "Strength work does not say how many rest days lie in between.",
    "The line was left out; muscles that get no rest do not become stronger.",
    "add 'rest-days' (write 0 where it is meant to be done every day)",
    safety=True,
)
RULES = (SHORT, REST)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each use whose week does not fit or is not said."""
    for programme in catalogue.programmes.values():
        for phase in programme.phases:
            for use in phase.uses:
                yield from _of_use(catalogue, phase, use)


def fits(days_a_week: int, rest_days: int) -> bool:
    """Return whether the days fit in a week with the rest between them; after the last one none is needed."""
    return days_a_week * (rest_days + 1) <= DAYS_IN_A_WEEK + rest_days


def _of_use(catalogue: Catalogue, phase: Phase, use: Use) -> Iterator[Problem]:
    where = f"'{use.use}' in phase {phase.number}"
    if not fits(use.days_a_week, use.rest_days):
        message = f"{where}: {use.days_a_week} days with {use.rest_days} rest days in between"
        yield SHORT.at(use.at("days-a-week"), f"{message} are more than a week")
    exercise = catalogue.exercises.get(use.use)
    # A rest of 0 days may be meant; that it was thought about shows only in the line having been typed.
    if exercise is not None and exercise.role is Role.STRENGTH and "rest-days" not in use.places:
        yield REST.at(use.at("use"), f"{where} is strength work and does not say its rest days")
