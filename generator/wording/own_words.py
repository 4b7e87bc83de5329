"""Finds what the generator cannot yet say in a language, so that no sheet mixes in English unnoticed."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import TypeAlias

from babel.messages import Catalog
from babel.messages.catalog import Message
from babel.messages.pofile import read_po

from generator.problems import Place, Problem, Rule
from generator.wording.localise import Translations
from generator.wording.po import forms_of
from generator.wording.voice import LOCALES, OWN_LANGUAGE, is_shipped, own_catalogue, words_of

# The generator's own words in one language, as another room holds them.
Words: TypeAlias = Catalog

TEMPLATE = LOCALES / "generator.pot"

MISSING = Rule(
    "own-words-missing",
    "The generator does not speak a language of the clinic completely.",
    "Words such as those of doses and signal words are not translated, so they would come out in English.",
    "translate the generator's words into this language, or take it out of the clinic's languages",
    safety=True,
)
DAMAGED = Rule(
    "own-words-damaged",
    "A translation of the generator's own words lost or misspelt a value.",
    "What stands in braces or after a percent sign is filled in by the generator and must stay as it is.",
    "write the values as in the English message",
    safety=True,
)

_VALUE = re.compile(r"\{[a-z_]+\}|%\([a-z_]+\)s")


def own_words_in(language: str, translations: Translations) -> Words | None:
    """Return the generator's words that the content brings; none for a language that the generator ships."""
    return None if is_shipped(language) or not translations.own else words_of(language, translations.own)


def own_word_problems(language: str, words: Catalog | None = None) -> Iterator[Problem]:
    """Yield what is missing or damaged in the generator's words in `language`; `words` as in `voice`."""
    found = words if words is not None else own_catalogue(language)
    if found is None and language.partition("-")[0] == OWN_LANGUAGE:
        return
    place = Place(
        f"content/translations/{language}.po" if words else f"generator/wording/locales/{language}.po"
    )
    missing: list[str] = []
    for message in _wanted():
        known = found.get(message.id, message.context) if found is not None else None
        forms = forms_of(known) if known is not None and not known.fuzzy else ()
        if not forms or not all(forms):
            missing.append(_first(message))
        else:
            yield from _damage(message, forms, Place(place.path, known.lineno or 0 if known else 0, 1))
    if missing:
        example = f"such as {missing[0]!r}"
        yield MISSING.at(
            place, f"{language}: {len(missing)} of the generator's messages are missing, {example}"
        )


def own_words_missing(language: str, words: Catalog | None = None) -> tuple[int, int]:
    """Return how many of the generator's messages a language lacks, and how many there are."""
    wanted = list(_wanted())
    found = words if words is not None else own_catalogue(language)
    if found is None:
        return (0 if language.partition("-")[0] == OWN_LANGUAGE else len(wanted)), len(wanted)
    known = (found.get(message.id, message.context) for message in wanted)
    missing = sum(one is None or one.fuzzy or not all(forms_of(one)) for one in known)
    return missing, len(wanted)


def wanted_words() -> Words:
    """Return the generator's messages without translations, as they ship."""
    with TEMPLATE.open("rb") as file:
        return read_po(file, abort_invalid=True)


def _wanted() -> Iterator[Message]:
    yield from (message for message in wanted_words() if message.id)


def _first(message: Message) -> str:
    return message.id if isinstance(message.id, str) else message.id[-1]


def _damage(message: Message, forms: tuple[str, ...], place: Place) -> Iterator[Problem]:
    wanted = set(_VALUE.findall(_first(message)))
    for form in forms:
        for value in sorted(set(_VALUE.findall(form)) - wanted):
            yield DAMAGED.at(place, f"{value} is not a value of {_first(message)!r}")
    # A form for one or two may need no digit (Arabic); the form for many does.
    for value in sorted(wanted - set(_VALUE.findall(forms[-1]))):
        yield DAMAGED.at(place, f"{value} is missing in the translation of {_first(message)!r}")


RULES = (MISSING, DAMAGED)
