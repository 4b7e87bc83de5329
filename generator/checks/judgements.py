"""Holds that a judgement leads to something that was measured: no unknown names and no circles."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.judgement import Judgement
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, Severity, did_you_mean
from generator.progression.activity import activity_of, forms
from generator.progression.judged import circles

UNKNOWN = Rule(
    "judgement-of-unknown",
    "A judgement refers to an exercise or a variation that is not there.",
    "Its name is misspelt, or it was renamed or deleted.",
    "write the id of an exercise, or exercise/variation",
)
CIRCLE = Rule(
    "judgement-circle",
    "Judgements refer to each other in a circle, so none of them leads to a number.",
    "Two exercises were judged by each other.",
    "let one of them refer to an exercise that was measured",
    safety=True,
)
OPEN = Rule(
    "judgement-without-number",
    "A judgement refers to an exercise of which nothing is known for that muscle.",
    "The other exercise was neither measured nor judged for it.",
    "refer to an exercise measured for this muscle, or leave the muscle out: it is then 'not measured'",
    severity=Severity.WARNING,
)
NEEDLESS = Rule(
    "judgement-not-needed",
    "An exercise is judged for a muscle that was measured; the measurement counts.",
    "The measurement was added later.",
    "take the muscle out of the judgement",
    severity=Severity.NOTE,
)
RULES = (UNKNOWN, CIRCLE, OPEN, NEEDLESS)

Judged = tuple[str, Judgement]


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each judgement that leads nowhere or is not needed."""
    known = {form for form, _, _ in forms(catalogue)}
    judged = {form: judgements for form, _, judgements in forms(catalogue) if judgements}
    every = [(form, judgement) for form, judgements in judged.items() for judgement in judgements]
    yield from _unknown(every, known)
    circular: set[tuple[str, str]] = set()
    for muscle, circle in circles(judged):
        circular |= {(form, muscle) for form in circle}
        first = next(item for form, item in every if form == circle[0] and muscle in item.muscles)
        message = f"for {muscle} these judgements refer to each other: " + " -> ".join(circle)
        yield CIRCLE.at(first.at("others"), message)
    yield from _numbers(catalogue, every, known, circular)


def _unknown(every: list[Judged], known: set[str]) -> Iterator[Problem]:
    for _, judgement in every:
        for position, other in enumerate(judgement.others):
            if other not in known:
                place = judgement.at("others", position)
                message = f"there is no exercise or variation '{other}'"
                yield UNKNOWN.at(place, message, did_you_mean(other, known))


def _numbers(
    catalogue: Catalogue, every: list[Judged], known: set[str], circular: set[tuple[str, str]]
) -> Iterator[Problem]:
    activity = activity_of(catalogue)
    for form, judgement in every:
        for position, muscle in enumerate(judgement.muscles):
            found = activity.of(form, muscle)
            place = judgement.at("muscles", position)
            if found is not None and found.judgement is None:
                message = f"'{form}' was measured for {muscle}: {found.mean:.1f} %MVIC"
                yield NEEDLESS.at(place, message)
            elif found is None and (form, muscle) not in circular and set(judgement.others) <= known:
                others = ", ".join(f"'{other}'" for other in judgement.others)
                yield OPEN.at(place, f"nothing is known of {muscle} in {others}")
