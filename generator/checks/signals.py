"""Holds that each signal word agrees with the worst that can happen, so that warnings keep their weight.

ANSI Z535.6 and ISO 3864-2: danger and warning stand for death or serious injury, caution for minor or
moderate injury; a notice never concerns injury.
"""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.exercise import Caution
from generator.catalogue.terms import Harm, Signal
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule

RULE = Rule(
    "signal-word",
    "A signal word is stronger or weaker than the harm it warns of.",
    "The word was chosen by feeling.",
    "take warning (or danger) for serious injury, caution for minor injury, notice for no injury",
    safety=True,
)
RULES = (RULE,)
ALLOWED = {
    Harm.SERIOUS: (Signal.WARNING, Signal.DANGER),
    Harm.MINOR: (Signal.CAUTION,),
    Harm.NO_INJURY: (Signal.NOTICE,),
}


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each caution whose word does not fit."""
    for caution in _cautions(catalogue):
        allowed = ALLOWED[caution.harm]
        if caution.signal not in allowed:
            message = f"'{caution.signal.value}' does not fit '{caution.harm.value}'"
            words = " or ".join(signal.value for signal in allowed)
            yield RULE.at(caution.at("signal"), message, f"write signal: {words}")


def _cautions(catalogue: Catalogue) -> Iterator[Caution]:
    for exercise in catalogue.exercises.values():
        yield from exercise.cautions
        for variation in exercise.variations.values():
            yield from variation.cautions
    for item in catalogue.daily_life.values():
        yield from item.cautions
    for programme in catalogue.programmes.values():
        for phase in programme.phases:
            for use in phase.uses:
                yield from use.cautions
