"""Says a recorded edition in plain values: what the ledger writes, and what its fingerprint covers.

What is empty is left out, so that a fact that is added one day leaves the fingerprints of old entries alone.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, TypeAlias

from generator.catalogue.dose import DoseKind, DoseStep
from generator.catalogue.editions import Edition, ExerciseFact, Facts, ItemFact, RuleFact
from generator.catalogue.fingerprints import fingerprint

Plain: TypeAlias = "str | list[Any] | dict[str, Any]"

# Digits of a fingerprint that the ledger keeps: 160 bits.
LONG = 40


def edition_value(edition: Edition) -> dict[str, Plain]:
    """Return all that the ledger says of an edition, in the order in which it says it."""
    head: dict[str, Plain] = {
        "recorded": edition.recorded.isoformat(),
        "programme": edition.programme,
        "phase": "" if edition.phase is None else str(edition.phase),
        "language": edition.language,
        "fingerprint": edition.fingerprint,
        "sheets": [{"code": one.code, "kind": one.kind, "pdf": one.pdf} for one in edition.sheets],
    }
    facts: dict[str, Plain] = {} if edition.facts is None else {"facts": facts_value(edition.facts)}
    return _filled({**head, **facts})


def facts_value(facts: Facts) -> dict[str, Plain]:
    """Return the facts of a booklet."""
    return _filled(
        {
            "weeks": _numbers(facts.weeks),
            "pain": _numbers(facts.pain),
            "support": facts.support,
            "avoid": facts.avoid,
            "help": facts.help,
            "telephone": facts.telephone,
            "phase": facts.phase,
            "rest": facts.rest,
            "exercises": [_exercise(one) for one in facts.exercises],
            "rules": [_rule(one) for one in facts.rules],
            "daily-life": [_item(one) for one in facts.daily_life],
        }
    )


def facts_fingerprint(facts: Facts) -> str:
    """Return the fingerprint of facts, by which a ledger that was edited is found out."""
    return fingerprint(facts_value(facts))[:LONG]


def _exercise(fact: ExerciseFact) -> dict[str, Plain]:
    return _filled(
        {
            "id": fact.id,
            "name": fact.name,
            "variation": fact.variation,
            "position": str(fact.position),
            "weeks": _numbers(fact.weeks),
            "dose": [step_text(step) for step in fact.dose],
            "often": _numbers(fact.often),
            "pace": _numbers(fact.pace),
            "forms": list(fact.forms),
            "when": fact.when,
            "words": fact.words,
            "safety": fact.safety,
            "pictures": fact.pictures,
        }
    )


def _rule(fact: RuleFact) -> dict[str, Plain]:
    return {"id": fact.id, "words": fact.words, "weeks": _numbers(fact.weeks), "limit": fact.limit}


def _item(fact: ItemFact) -> dict[str, Plain]:
    return {
        "id": fact.id,
        "name": fact.name,
        "words": fact.words,
        "safety": fact.safety,
        "pictures": fact.pictures,
    }


def _numbers(values: Sequence[int]) -> list[Any]:
    return [str(value) for value in values]


def _filled(values: Mapping[str, Plain]) -> dict[str, Plain]:
    return {key: value for key, value in values.items() if value}


def step_text(step: DoseStep) -> str:
    """Return a dose step as an editor types it: ``3 x 10 with light band``."""
    sets = f"{step.sets} x " if step.sets > 1 or step.kind is DoseKind.REPETITIONS else ""
    counted = {
        DoseKind.REPETITIONS: f"{step.count}",
        DoseKind.HOLDS: f"{step.count} holds of {step.hold} s",
        DoseKind.MINUTES: f"{step.count} min",
        DoseKind.HOURLY: f"{step.count} times an hour",
        DoseKind.STEPS: f"{step.count} steps",
    }[step.kind]
    load = ""
    if step.load.band is not None:
        load = f" with {step.load.band.value} band"
    elif step.load.kilograms:
        load = f" with {step.load.kilograms:g} kg"
    return sets + counted + load
