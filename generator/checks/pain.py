"""Holds that a phase's pain limits agree with each other: pain must settle, not grow.

Pain-monitoring model (Thomeé 1997, Phys Ther 77(12):1690-1703; Silbernagel 2007, Am J Sports Med
35(6):897-906), recalled: up to 5 of 10 is acceptable during and after, and it settles by the next morning.
"""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, Severity

ORDER = Rule(
    "pain-limits",
    "A pain limit is higher after the exercise than during it, or higher still on the next morning.",
    "Two of the three numbers were swapped.",
    "let the limits fall or stay: during, after, next morning",
    safety=True,
)
HIGH = Rule(
    "pain-limit-high",
    "A phase allows more pain than the pain-monitoring model calls acceptable.",
    "A limit above 5 of 10 was set.",
    "lower the limit, or let the person who set it confirm it",
    severity=Severity.WARNING,
)
RULES = (ORDER, HIGH)
ACCEPTABLE = 5


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each phase whose pain limits do not agree or are high."""
    for programme in catalogue.programmes.values():
        for phase in programme.phases:
            pain = phase.pain
            where = f"phase {phase.number}"
            if pain.after > pain.during:
                message = f"{where} allows {pain.after} after, but only {pain.during} during the exercise"
                yield ORDER.at(pain.at("after"), message)
            if pain.next_morning > pain.after:
                message = (
                    f"{where} allows {pain.next_morning} on the next morning, but only {pain.after} after"
                )
                yield ORDER.at(pain.at("next-morning"), message)
            if pain.during > ACCEPTABLE:
                message = f"{where} allows a pain of {pain.during} of 10"
                yield HIGH.at(pain.at("during"), message)
