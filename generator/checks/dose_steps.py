"""Holds that each dose step goes up: harder than the one before it in at least one respect."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from generator.catalogue.dose import DoseStep
from generator.catalogue.terms import BandStrength
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
_BANDS = (None, *BandStrength)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each dose step that does not go up."""
    for programme in catalogue.programmes.values():
        for phase in programme.phases:
            for use in phase.uses:
                for position, (before, step) in enumerate(pairwise(use.dose_steps), 1):
                    if before.kind is step.kind and not is_harder(step, before):
                        message = f"'{use.use}' in phase {phase.number}: step {position + 1} is not harder"
                        yield RULE.at(use.at("dose-steps", position), message)


def is_harder(step: DoseStep, before: DoseStep) -> bool:
    """Return whether the step is more in at least one of sets, count, hold, band and weight."""
    mine, theirs = _respects(step), _respects(before)
    return any(now > then for now, then in zip(mine, theirs, strict=True))


def _respects(step: DoseStep) -> tuple[float, ...]:
    band = _BANDS.index(step.load.band)
    return (step.sets, step.count, step.hold or 0, band, step.load.kilograms or 0.0)
