"""Holds that exercises can be done where and with whom people live: helper, support, floor."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.daily_life import DailyLife
from generator.catalogue.exercise import Exercise
from generator.catalogue.terms import Demand, Helper, Posture, Support, Surface
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule

HELPER = Rule(
    "helper-role-missing",
    "A helper is needed, but what the helper does and must not do is not said.",
    "'helper' was set without 'helper-role'.",
    "add 'helper-role' with 'does' and 'must-not'",
    safety=True,
)
SUPPORT = Rule(
    "support-missing",
    "Standing work is done with nothing to hold within reach.",
    "'support' says none.",
    "write 'within reach', 'fingertips' or 'both hands', and name the fixed support under 'equipment'",
    safety=True,
)
FLOOR = Rule(
    "floor-only",
    "An exercise can only be done on the floor before the last phase.",
    "Getting down to the floor and up again is harder than most early exercises.",
    "add another surface to the exercise, or use it in the last phase only",
    safety=True,
)
RULES = (HELPER, SUPPORT, FLOOR)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each helper, support or surface that people at home could not do with."""
    for exercise in catalogue.exercises.values():
        yield from _of_body(exercise)
        for variation in exercise.variations.values():
            # Where the exercise itself is standing work, it has been reported once.
            gets_up = variation.demand and _stands(variation.demand) and not _stands(exercise.demand)
            if gets_up and exercise.support is Support.NONE:
                message = f"'{exercise.id}/{variation.id}' is standing work without support"
                yield SUPPORT.at(variation.at("demand"), message)
    for item in catalogue.daily_life.values():
        yield from _of_body(item)
    for programme in catalogue.programmes.values():
        for phase in programme.phases[:-1]:
            for use in phase.uses:
                used = catalogue.exercises.get(use.use)
                if used is not None and set(used.surface) == {Surface.FLOOR}:
                    message = f"'{use.use}' in phase {phase.number} can only be done on the floor"
                    yield FLOOR.at(use.at("use"), message)


def _of_body(body: Exercise | DailyLife) -> Iterator[Problem]:
    if body.helper is Helper.NEEDED and body.helper_role is None:
        yield HELPER.at(body.at("helper"), f"'{body.id}' needs a helper, whose part is not said")
    standing = body.posture is Posture.STANDING or _stands(body.demand)
    if standing and body.support is Support.NONE:
        yield SUPPORT.at(body.at("support"), f"'{body.id}' is standing work without support")


def _stands(demand: Demand) -> bool:
    return demand is not Demand.LYING_OR_SITTING
