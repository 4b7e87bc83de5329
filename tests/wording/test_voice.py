"""A voice knows its direction, its name, its plural forms, and which language it cannot be."""

from __future__ import annotations

import pickle
import unicodedata

import pytest
from babel.messages import Catalog

from generator.problems import Place
from generator.wording.isolation import plain
from generator.wording.phrases import duration
from generator.wording.voice import LOCALES, direction_of, own_catalogue, unknown_languages, voice
from tests.wording.samples import ARABIC, GERMAN, POLISH, speaking


@pytest.mark.parametrize("language", ["en", "de", "pl", "uk", "tr", "hi", "zh-Hans", "ar", "he", "fa", "ur"])
def test_a_language_runs_in_the_direction_of_its_own_letters(language: str) -> None:
    """The direction agrees with the bidirectional class (Unicode Character Database) of its own name."""
    first = unicodedata.bidirectional(voice(language).own_name[0])
    assert voice(language).direction == ("rtl" if first in ("R", "AL") else "ltr")


@pytest.mark.parametrize(
    ("language", "name"),
    [("en", "English"), ("de", "Deutsch"), ("pl", "Polski"), ("tr", "Türkçe"), ("ar", "العربية")],
)
def test_a_language_is_named_in_itself_with_a_capital(language: str, name: str) -> None:
    """A reader finds a language by its own name (CLDR), written as a heading."""
    assert voice(language).own_name == name


@pytest.mark.parametrize(
    ("seconds", "words"),
    [(1, "1 sekundę"), (2, "2 sekundy"), (5, "5 sekund"), (12, "12 sekund"), (22, "22 sekundy")],
)
def test_polish_counts_in_three_forms(seconds: int, words: str) -> None:
    """Polish takes one, few and many as in the CLDR plural rules."""
    assert plain(duration(speaking("pl", POLISH), seconds)) == words


@pytest.mark.parametrize(
    ("seconds", "words"),
    [(1, "ثانية واحدة"), (2, "ثانيتين"), (3, "3 ثوانٍ"), (10, "10 ثوانٍ"), (11, "11 ثانيةً"), (59, "59 ثانيةً")],
)
def test_arabic_counts_in_its_own_forms(seconds: int, words: str) -> None:
    """Arabic takes one, two, few and many as in the CLDR plural rules; one and two need no digit."""
    assert plain(duration(speaking("ar", ARABIC), seconds)) == words


def test_german_counts_in_two_forms() -> None:
    """German takes one and other as in the CLDR plural rules."""
    german = speaking("de", GERMAN)
    assert [plain(duration(german, count)) for count in (1, 2)] == ["1 Sekunde", "2 Sekunden"]


def test_words_marked_as_outdated_are_not_spoken() -> None:
    """A fuzzy entry may say something else by now, so the English words stand in."""
    assert speaking("pl", POLISH).gettext("every day") == "every day"


def test_a_voice_says_whether_it_has_words_of_its_own() -> None:
    """Pages in a language that the generator does not speak must not pass for complete."""
    shipped = [path.stem for path in LOCALES.glob("*.po")]
    assert "eu" not in shipped
    assert [voice("en").own_words, voice("en-GB").own_words, voice("eu").own_words] == [True, True, False]
    assert all(voice(language).own_words for language in shipped)


def test_a_capital_opens_a_sentence_as_the_language_writes_it() -> None:
    """Turkish keeps the dot of i (Unicode SpecialCasing); a number at the start leaves the words alone."""
    assert voice("tr").opening("iki gün") == "İki gün"
    assert voice("en").opening("\u20662\u2069 days") == "\u20662\u2069 days"


def test_a_language_nobody_knows_is_a_finding_at_its_place() -> None:
    """A misspelt code in clinic.yml is named where it stands."""
    place = Place("content/clinic.yml", 12, 1)
    found = list(unknown_languages(["de", "qqq", "not a code"], place))
    assert [(item.code, item.place) for item in found] == [("unknown-language", place)] * 2
    with pytest.raises(LookupError):
        voice("qqq")


def test_a_regional_form_takes_the_words_of_its_language() -> None:
    """A clinic in Austria gets the German words, where German ships."""
    assert direction_of("ar-EG") == "rtl"
    assert (own_catalogue("de-AT") is None) == (own_catalogue("de") is None)


def test_a_voice_travels_to_a_worker_process() -> None:
    """Plural forms included: Polish has another one for 5 than for 2."""
    words = Catalog(locale="pl")
    words.add(("{number} page", "{number} pages"), ("{number} strona", "{number} strony", "{number} stron"))
    there = pickle.loads(pickle.dumps(voice("pl", words)))
    assert there.ngettext("{number} page", "{number} pages", 5) == "{number} stron"
