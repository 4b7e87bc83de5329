"""Finds prohibitions lost on the way into another language; a reader's signature settles a doubt."""

from __future__ import annotations

from collections.abc import Container, Iterator

from generator.catalogue.values import Catalogue
from generator.problems import NOWHERE, Problem
from generator.review.items import Key
from generator.wording.localise import Translations
from generator.wording.messages import guards_patients, translatable
from generator.wording.negations import negation_problems


def check(
    catalogue: Catalogue, language: str, translations: Translations, signed: Container[Key] = ()
) -> Iterator[Problem]:
    """Yield a finding for each unsigned text whose translation no longer denies what its source denies.

    signed: texts, by context and source, whose translation a reader has signed.
    """
    for message in translatable(catalogue):
        words = translations.current.get(message.key)
        if words and guards_patients(message.context) and message.key not in signed:
            place = translations.places.get(message.key, NOWHERE)
            yield from negation_problems(message.source, catalogue.source_language, words, language, place)
