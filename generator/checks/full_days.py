"""Holds that a day stays doable: not too many exercises at once, not too many minutes."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, Severity
from generator.progression.session import minutes
from generator.progression.weeks import active_together

EXERCISES = Rule(
    "too-many-exercises",
    "More exercises are active at once than the clinic thinks reasonable.",
    "Exercises were added and none was ended or replaced.",
    "end or replace some in the phase before, or raise 'exercises-at-once' in clinic.yml",
    severity=Severity.WARNING,
)
MINUTES = Rule(
    "too-many-minutes",
    "The exercises of a full day take longer than the clinic thinks reasonable.",
    "Times a day, dose steps and changes of position add up.",
    "lower the doses or the times a day, or raise 'minutes-a-day' in clinic.yml",
    severity=Severity.WARNING,
)
RULES = (EXERCISES, MINUTES)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each phase whose fullest day is above the clinic's limits."""
    limits = catalogue.clinic.limits
    for programme in catalogue.programmes.values():
        for phase in programme.phases:
            active = max(len({use.use for use in uses}) for uses in active_together(phase))
            if active > limits.exercises_at_once:
                message = (
                    f"phase {phase.number} has {active} exercises at once, "
                    f"the limit is {limits.exercises_at_once}"
                )
                yield EXERCISES.at(phase.at("uses"), message)
            took = minutes(catalogue, phase)
            if took > limits.minutes_a_day:
                message = f"a full day of phase {phase.number} takes {took} minutes"
                yield MINUTES.at(phase.at("uses"), f"{message}, the limit is {limits.minutes_a_day}")
