"""Lets a project say what a code weighs, with a reason, in the one place where all findings pass.

What guards patients cannot be lowered, nor can an error in the content: later steps rely on its absence.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace

from generator import publish
from generator.booklets import rules as booklets
from generator.catalogue.editorial import Weight
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, Severity, did_you_mean, in_order
from generator.website import engine

UNKNOWN_CODE = Rule(
    "unknown-code",
    "A weight in clinic.yml is given to a code that there is not.",
    "It is misspelt, or the code belongs to another version of the program.",
    "take the code from a message, or from: phasebook explain",
)
NOT_LOWERED = Rule(
    "code-not-lowered",
    "A code is lowered in clinic.yml that cannot be lowered.",
    "The code guards patients, or later steps rely on what it says.",
    "take the entry out of clinic.yml, and mend what the code finds",
    safety=True,
)
RULES = (UNKNOWN_CODE, NOT_LOWERED)

_HEAVINESS = {Weight.ERROR: 3, Weight.WARNING: 2, Weight.NOTE: 1, Weight.SILENT: 0}


def settled(catalogue: Catalogue, problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Return the findings as the project weighs them, sorted by place, each said once."""
    weights = {one.code: one.weight for one in catalogue.clinic.codes}
    return in_order(one for problem in problems for one in _weighed(problem, weights.get(problem.code)))


def _weighed(problem: Problem, weight: Weight | None) -> Iterator[Problem]:
    if weight is None or (problem.safety and _lighter(weight, problem.severity)):
        yield problem
    elif weight is not Weight.SILENT:
        yield replace(problem, severity=Severity(weight.value))


def weight_problems(catalogue: Catalogue, rules: Collection[Rule]) -> Iterator[Problem]:
    """Yield what is wrong with the weights that a project gives; `rules` are all there are."""
    known = {rule.code: rule for rule in rules}
    for one in catalogue.clinic.codes:
        rule = known.get(one.code)
        if rule is None:
            remedy = did_you_mean(one.code, known)
            yield UNKNOWN_CODE.at(one.at("code"), f"there is no code '{one.code}'", remedy)
        elif _lighter(one.weight, rule.severity) and not _may_be_lowered(rule):
            why = "it guards patients" if rule.safety else "later steps rely on it"
            yield NOT_LOWERED.at(one.at("weight"), f"'{one.code}' cannot be lowered: {why}")


def _lighter(weight: Weight, severity: Severity) -> bool:
    return _HEAVINESS[weight] < _HEAVINESS[Weight(severity.value)]


def _may_be_lowered(rule: Rule) -> bool:
    """Return whether nothing relies on a code; what finished pages and sheets show, nothing is made from."""
    finished = {*booklets.RULES, *publish.RULES, *engine.RULES}
    return not rule.safety and (rule.severity is not Severity.ERROR or rule in finished)
