"""Holds one language: its direction, its own name, and the generator's own words in it.

The generator's words are English in the code and translated in ``locales/<language>.po``. Directions,
names and number forms are CLDR's (Unicode Common Locale Data Repository), through Babel.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cache
from gettext import GNUTranslations, NullTranslations
from io import BytesIO
from pathlib import Path
from typing import Literal

from babel import Locale, UnknownLocaleError
from babel.messages import Catalog
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po

from generator.problems import Place, Problem, Rule

OWN_LANGUAGE = "en"
LOCALES = Path(__file__).parent / "locales"

UNKNOWN_LANGUAGE = Rule(
    "unknown-language",
    "A language code is not known.",
    "The code is misspelt, or is not a BCP 47 code that CLDR has data for.",
    "write a code such as de, pl, pt-BR or zh-Hans",
)

Direction = Literal["ltr", "rtl"]


@dataclass(frozen=True)
class Voice:
    """One language for one run.

    code: BCP 47. locale: CLDR's data for it. words: the generator's own messages. own_words: whether
    these exist in this language; where they do not, they come out in English.
    """

    code: str
    locale: Locale = field(repr=False)
    words: NullTranslations = field(compare=False, repr=False)
    own_words: bool = True

    @property
    def direction(self) -> Direction:
        """Return ``ltr`` or ``rtl``."""
        return direction_of(self.code)

    @property
    def own_name(self) -> str:
        """Return the language's name in itself, with a capital: ``Deutsch``, ``Polski``."""
        name = Locale.parse(self.code, sep="-").get_display_name() or self.code
        return self.opening(name)

    def opening(self, words: str) -> str:
        """Return `words` as at the start of a sentence; words that open with a number stay."""
        for position, char in enumerate(words):
            if char.isdigit():
                break
            if char.isalpha():
                # Turkish and Azerbaijani: the capital of i keeps its dot.
                dotted = char == "i" and self.locale.language in ("tr", "az")
                return words[:position] + ("İ" if dotted else char.upper()) + words[position + 1 :]
        return words

    def gettext(self, message: str) -> str:
        """Return one of the generator's own messages in this language."""
        return self.words.gettext(message)

    def ngettext(self, singular: str, plural: str, number: int) -> str:
        """Return the form of a message that goes with `number`."""
        return self.words.ngettext(singular, plural, number)

    def pgettext(self, context: str, message: str) -> str:
        """Return a message whose place of use decides its words."""
        return self.words.pgettext(context, message)

    def npgettext(self, context: str, singular: str, plural: str, number: int) -> str:
        """Return the form of a message with context that goes with `number`."""
        return self.words.npgettext(context, singular, plural, number)


def voice(language: str, words: Catalog | None = None) -> Voice:
    """Return the voice of a BCP 47 language code.

    `words` stands in for the messages that ship with the generator.

    Raises:
        LookupError: CLDR does not know the language; `unknown_languages` says so as a finding.

    """
    locale = locale_of(language)
    if words is not None:
        return Voice(language, locale, _compiled(words))
    own = _own_words(language)
    english = locale.language == OWN_LANGUAGE
    return Voice(language, locale, own or NullTranslations(), english or own is not None)


@cache
def locale_of(language: str) -> Locale:
    """Return CLDR's data for a BCP 47 code; plain ``en`` writes dates as in Britain.

    Raises:
        LookupError: CLDR does not know the language.

    """
    try:
        locale = Locale.parse(language, sep="-")
    except (UnknownLocaleError, ValueError) as error:
        raise LookupError(f"language {language!r} is not known") from error
    return Locale("en", "GB") if str(locale) == "en" else locale


def direction_of(language: str) -> Direction:
    """Return the direction in which a language is written (CLDR: characterOrder)."""
    return "rtl" if locale_of(language).character_order == "right-to-left" else "ltr"


def unknown_languages(languages: Iterable[str], place: Place) -> Iterable[Problem]:
    """Yield a finding for every code that `voice` would refuse."""
    for language in languages:
        try:
            locale_of(language)
        except LookupError as error:
            yield UNKNOWN_LANGUAGE.at(place, str(error))


def own_catalogue(language: str) -> Catalog | None:
    """Return the generator's own words as shipped for `language`, or for the language it is a form of."""
    for code in (language, language.partition("-")[0]):
        path = LOCALES / f"{code}.po"
        if path.is_file():
            with path.open("rb") as file:
                return read_po(file, locale=code.replace("-", "_"), abort_invalid=True)
    return None


def is_shipped(language: str) -> bool:
    """Return whether the generator brings its own words in a language, complete or not."""
    return language.partition("-")[0] == OWN_LANGUAGE or own_catalogue(language) is not None


def words_of(language: str, own: Mapping[tuple[str, tuple[str, ...]], tuple[str, ...]]) -> Catalog:
    """Return the generator's words as a catalogue, from forms by context ("" for none) and message."""
    words = Catalog(locale=language.replace("-", "_"))
    for (context, ids), forms in own.items():
        if len(ids) == 1:
            words.add(ids[0], forms[0], context=context or None)
        else:
            words.add(ids, forms, context=context or None)
    return words


@cache
def _own_words(language: str) -> GNUTranslations | None:
    catalogue = own_catalogue(language)
    return None if catalogue is None else _compiled(catalogue)


class _Compiled(GNUTranslations):
    """Messages that can travel to a worker process: the library's own hold a function that cannot."""

    def __init__(self, data: bytes) -> None:
        super().__init__(BytesIO(data))
        self.data = data

    def __reduce__(self) -> tuple[type[_Compiled], tuple[bytes]]:
        return _Compiled, (self.data,)


def _compiled(catalogue: Catalog) -> GNUTranslations:
    buffer = BytesIO()
    write_mo(buffer, catalogue)
    return _Compiled(buffer.getvalue())


RULES = (UNKNOWN_LANGUAGE,)
