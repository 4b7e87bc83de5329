"""Holds that every dose step lies within what its exercise permits."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.dose import Dose, DoseStep
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
                    for reason in why_not(step, exercise.dose) if exercise else ():
                        place = use.at("dose-steps", position)
                        yield RULE.at(place, f"'{use.use}' in phase {phase.number}: {reason}")


def why_not(step: DoseStep, dose: Dose) -> Iterator[str]:
    """Yield each reason for which the exercise does not permit the step."""
    if step.kind is not dose.kind:
        yield f"the step counts {step.kind.value}, the exercise {dose.kind.value}"
        return
    if not dose.sets.holds(step.sets):
        yield f"{step.sets} sets are not within {dose.sets.least} to {dose.sets.most}"
    if not dose.count.holds(step.count):
        yield f"{step.count} is not within {dose.count.least} to {dose.count.most}"
    if step.hold is not None and dose.hold is not None and not dose.hold.holds(step.hold):
        yield f"a hold of {step.hold} s is not within {dose.hold.least} to {dose.hold.most} s"
    if step.load.band is not None and step.load.band not in dose.bands:
        yield f"a {step.load.band.value} band is not among the bands the exercise permits"
    if step.load.kilograms is not None and step.load.kilograms > dose.kilograms:
        yield f"{step.load.kilograms:g} kg is more than the {dose.kilograms:g} kg the exercise permits"
