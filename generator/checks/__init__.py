"""Checks content by the rules of the trade: one rule, one file; every finding is a value.

`CONTENT` names the checks in the order of their names; nothing is ever appended to it. `OF_THE_WHOLE` are
those that only a catalogue without gaps can answer.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from generator.body.shown import with_angles
from generator.catalogue.values import Catalogue
from generator.checks import (
    actions,
    bands,
    both_sides,
    daily_life,
    demand,
    dose_steps,
    doses,
    forbidden,
    full_days,
    in_use,
    judgements,
    legs,
    measured,
    pain,
    poses,
    prerequisites,
    readability,
    real_life,
    restrictions,
    sign_offs,
    signals,
    strains,
    typed_doses,
    unwritten,
    uses,
    weeks_of_use,
    windows,
)
from generator.problems import Problem, Rule

Check = Callable[[Catalogue], Iterable[Problem]]

CONTENT: tuple[Check, ...] = (
    actions.check,
    bands.check,
    both_sides.check,
    daily_life.check,
    demand.check,
    dose_steps.check,
    doses.check,
    forbidden.check,
    full_days.check,
    judgements.check,
    legs.check,
    measured.check,
    pain.check,
    poses.check,
    prerequisites.check,
    readability.check,
    real_life.check,
    restrictions.check,
    sign_offs.check,
    signals.check,
    strains.check,
    typed_doses.check,
    unwritten.check,
    uses.check,
    weeks_of_use.check,
    windows.check,
)
# These ask what nothing leads to; where something could not be read, that may be what leads there.
OF_THE_WHOLE: tuple[Check, ...] = (in_use.check,)
RULES: tuple[Rule, ...] = (
    *actions.RULES,
    *bands.RULES,
    *both_sides.RULES,
    *daily_life.RULES,
    *demand.RULES,
    *dose_steps.RULES,
    *doses.RULES,
    *forbidden.RULES,
    *full_days.RULES,
    *in_use.RULES,
    *judgements.RULES,
    *legs.RULES,
    *measured.RULES,
    *pain.RULES,
    *poses.RULES,
    *prerequisites.RULES,
    *readability.RULES,
    *real_life.RULES,
    *restrictions.RULES,
    *sign_offs.RULES,
    *signals.RULES,
    *strains.RULES,
    *typed_doses.RULES,
    *unwritten.RULES,
    *uses.RULES,
    *weeks_of_use.RULES,
    *windows.RULES,
)


def check_content(catalogue: Catalogue, whole: bool = True) -> tuple[Problem, ...]:
    """Return what the checks find in the content, before any language is chosen.

    Angles that poses show count as stated. whole: whether all of the content could be read.
    """
    shown = with_angles(catalogue)
    asked = (*CONTENT, *OF_THE_WHOLE) if whole else CONTENT
    return tuple(problem for check in asked for problem in check(shown))
