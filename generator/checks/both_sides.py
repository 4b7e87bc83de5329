"""Holds that after an operation on both sides no exercise relies on a good leg."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.restricted import work_of_use
from generator.catalogue.terms import Carries
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule

RULE = Rule(
    "relies-on-good-leg",
    "A programme for both sides has an exercise in which the other leg carries the whole body.",
    "The exercise was written for one operated side.",
    "choose a variation that shares the load, or write 'both-sides: no'",
    safety=True,
)
RULES = (RULE,)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each use and each thing of daily life that needs a good leg."""
    for programme in catalogue.programmes.values():
        for phase in programme.phases if programme.both_sides else ():
            for use in phase.uses:
                exercise = catalogue.exercises.get(use.use)
                if exercise and work_of_use(exercise, use).other.carries is Carries.ONE_LEG:
                    message = f"'{use.use}' in phase {phase.number} stands on the other leg alone"
                    yield RULE.at(use.at("variation" if use.variation else "use"), message)
            for position, id_ in enumerate(phase.daily_life):
                item = catalogue.daily_life.get(id_)
                if item and item.other_leg.carries is Carries.ONE_LEG:
                    message = f"'{id_}' in phase {phase.number} relies on the other leg alone"
                    yield RULE.at(phase.at("daily-life", position), message)
