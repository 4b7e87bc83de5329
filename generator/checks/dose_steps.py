"""Holds that each dose step goes up: harder than the one before it in at least one respect."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from generator.catalogue.dose import is_harder
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, Severity

RULE = Rule(
    "step-not-harder",
    "A dose step is in no respect harder than the one before it.",
    "The steps were typed in the wrong order, or one of them twice.",
    "put the steps in rising order: more sets, more repetitions, a longer hold or more load",
    severity=Severity.WARNING,
)
RULES = (RULE,)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each dose step that does not go up."""
    for programme in catalogue.programmes.values():
        for phase in programme.phases:
            for use in phase.uses:
                for position, (before, step) in enumerate(pairwise(use.dose_steps), 1):
                    if before.kind is step.kind and not is_harder(step, before):
                        message = f"'{use.use}' in phase {phase.number}: step {position + 1} is not harder"
                        yield RULE.at(use.at("dose-steps", position), message)
