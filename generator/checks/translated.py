"""Finds prohibitions lost on the way into another language; a reader's signature settles a doubt."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from generator.catalogue.values import Catalogue
from generator.problems import NOWHERE, Problem
from generator.wording.localise import Translations
from generator.wording.messages import guards_patients, translatable
from generator.wording.negations import negation_problems

# Whether a reader has signed a text of this context in this language.
Signed = Callable[[str], bool]


def nothing_signed(context: str) -> bool:
    """Return that no text was signed."""
    del context
    return False


def check(
    catalogue: Catalogue, language: str, translations: Translations, signed: Signed = nothing_signed
) -> Iterator[Problem]:
    """Yield a finding for each unsigned text whose translation no longer denies what its source denies."""
    for message in translatable(catalogue):
        words = translations.current.get(message.key)
        if words and guards_patients(message.context) and not signed(message.context):
            place = translations.places.get(message.key, NOWHERE)
            yield from negation_problems(message.source, catalogue.source_language, words, language, place)
