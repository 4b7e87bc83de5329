"""Holds that every dose step lies within what its exercise permits."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.dose import not_permitted
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule

RULE = Rule(
    "dose-not-permitted",
    "A dose step is more, less or of another kind than the exercise permits.",
    "The step was typed for another exercise, or the permitted range was narrowed.",
    "choose a dose within the exercise's range, or change the range in the exercise",
    safety=True,
)
RULES = (RULE,)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each step outside the permitted dose."""
    for programme in catalogue.programmes.values():
        for phase in programme.phases:
            for use in phase.uses:
                exercise = catalogue.exercises.get(use.use)
                for position, step in enumerate(use.dose_steps if exercise else ()):
                    for reason in not_permitted(step, exercise.dose) if exercise else ():
                        place = use.at("dose-steps", position)
                        yield RULE.at(place, f"'{use.use}' in phase {phase.number}: {reason}")
