"""Warns of a dose that was typed into a sentence, where it stays as it is when the dose steps change."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.values import Catalogue
from generator.problems import NOWHERE, Problem, Rule, Severity
from generator.wording.localise import Translations
from generator.wording.messages import translatable
from generator.wording.typed_doses import typed_doses

RULE = Rule(
    "dose-typed-in-text",
    "A sentence says a dose, in digits or in words, that the dose steps say too.",
    "The number was typed into the text; when the dose changes, booklet and text contradict each other.",
    "leave the number out, since the dose is printed beside the text; or let a phrase say it: {hold}, {rest}",
    severity=Severity.WARNING,
)
RULES = (RULE,)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each text of an exercise or a use that says a dose."""
    for message in translatable(catalogue):
        if _has_a_dose_beside_it(message.context):
            for typed in typed_doses(message.source, catalogue.source_language):
                yield from (RULE.at(place, f"the text says '{typed}'") for place in message.places)


def check_language(catalogue: Catalogue, language: str, translations: Translations) -> Iterator[Problem]:
    """Yield a finding for each translation that says a dose where its source says none."""
    for message in translatable(catalogue):
        words = translations.current.get(message.key)
        if not words or not _has_a_dose_beside_it(message.context):
            continue
        if not any(typed_doses(message.source, catalogue.source_language)):
            place = translations.places.get(message.key, NOWHERE)
            for typed in typed_doses(words, language):
                yield RULE.at(place, f"the translation says '{typed}', which its source does not")


def _has_a_dose_beside_it(context: str) -> bool:
    """Return whether dose steps are printed with a text; what is tested or waited for has its own numbers."""
    parts = context.split("/")
    return parts[0] == "exercise" or parts[-2:] == ["uses", "note"]
