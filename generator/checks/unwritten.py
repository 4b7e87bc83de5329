"""Warns of texts that a new file came with and that nobody has written yet."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.unwritten import UNWRITTEN
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, Severity
from generator.wording.messages import translatable

RULE = Rule(
    "text-not-written",
    "A text still says 'Write here', and patients would read it.",
    "The file was made with 'new', and this text has not been written yet.",
    "write the text, or take its line out where it is not needed",
    severity=Severity.WARNING,
    safety=True,
)
RULES = (RULE,)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each text that is still the one a new file comes with."""
    for message in translatable(catalogue):
        if message.source.startswith(UNWRITTEN.strip()):
            for place in message.places:
                yield RULE.at(place, f"this is not written yet: {message.source}")
