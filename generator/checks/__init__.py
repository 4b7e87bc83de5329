"""Checks content by the rules of the trade: one rule, one file; every finding is a value.

`CONTENT` names the checks in the order of their names; nothing is ever appended to it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from generator.catalogue.values import Catalogue
from generator.checks import bands, demand, doses, prerequisites, restrictions, signals, uses, windows
from generator.problems import Problem, Rule

Check = Callable[[Catalogue], Iterable[Problem]]

CONTENT: tuple[Check, ...] = (
    bands.check,
    demand.check,
    doses.check,
    prerequisites.check,
    restrictions.check,
    signals.check,
    uses.check,
    windows.check,
)
RULES: tuple[Rule, ...] = (
    *bands.RULES,
    *demand.RULES,
    *doses.RULES,
    *prerequisites.RULES,
    *restrictions.RULES,
    *signals.RULES,
    *uses.RULES,
    *windows.RULES,
)


def check_content(catalogue: Catalogue, checks: Iterable[Check] = CONTENT) -> tuple[Problem, ...]:
    """Return what the checks find in the content, before any language is chosen."""
    return tuple(problem for check in checks for problem in check(catalogue))
