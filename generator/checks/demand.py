"""Holds that no exercise asks more of the body than its phase allows, whatever its measured activity."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule

RULE = Rule(
    "demand-too-high",
    "An exercise asks more of the body than the phase allows.",
    "Its measured activity is low, but low activity is not permission.",
    "use it in a later phase, or choose an exercise that asks less",
    safety=True,
)
RULES = (RULE,)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each use whose demand is above the phase's highest."""
    for programme in catalogue.programmes.values():
        for phase in programme.phases:
            for use in phase.uses:
                exercise = catalogue.exercises.get(use.use)
                if exercise is None:
                    continue
                variation = exercise.variations.get(use.variation or "")
                demand = (variation.demand if variation else None) or exercise.demand
                if demand.rank > phase.demand.rank:
                    message = (
                        f"'{use.use}' asks for '{demand.value}', phase {phase.number} allows up to "
                        f"'{phase.demand.value}'"
                    )
                    yield RULE.at(use.at("use"), message)
