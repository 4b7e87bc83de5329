"""Syllables are counted as a person would clap them, in each language that has a rule."""

from __future__ import annotations

import pytest

from generator.wording.syllables import counts_syllables, syllables

# Clapped by hand; each line is words of one count. English agrees with the CMU Pronouncing Dictionary.
ENGLISH = {
    1: "leg knee hold raised reached walked toes calves eyes breathe rolled stretched heals crutch",
    2: "muscle muscles lower slowly tendon rhythm lying going handles highest added cushions' bridges "
    "stretches something sideways milestone beyond nurse's safely middle able",
    3: "abductor easier usual repeated everything anyone serious exercise shoulder-width happily invented's",
    4: "repetition variation anterior superior information february watermelon",
    5: "physiotherapist immediately rehabilitate orientation associated",
}
GERMAN = {
    1: "Bein Knie Fuß Arzt Stuhl See quer Beet",
    2: "Hüfte Übung langsam Muskel bauen neue Treppe Schmerzen zurück",
    3: "aufstehen beenden geeignet Studie Theorie",
    4: "Familie Bewegungen",
    5: "Operation Wiederholungen",
    6: "Physiotherapie",
}
SPANISH = {
    1: "pie rey muy y",
    2: "pierna día aire guía oír quieto ciudad país leer hueso guerra mayo causa limpiáis",
    3: "cadera rodilla músculo despacio ahora héroe poeta pingüino cigüeña",
    4: "operación movimiento ejercicio aéreo",
    6: "fisioterapeuta",
}
POLISH = {
    1: "w staw",
    2: "noga mięsień auto ścięgno biodro siedzieć pani",
    3: "ćwiczenie kolano nauka Europa muzeum",
    4: "operacja powtórzenie",
    6: "fizjoterapeuta",
}
TURKISH = {2: "bacak kalça saat", 3: "egzersiz Isparta İstanbul", 4: "ameliyat"}


@pytest.mark.parametrize(
    ("language", "lists"),
    [("en", ENGLISH), ("de", GERMAN), ("es", SPANISH), ("pl", POLISH), ("tr", TURKISH)],
)
def test_words_counted_by_hand(language: str, lists: dict[int, str]) -> None:
    """Each word has as many syllables as a person hears in it."""
    wrong = {
        word: (syllables(word, language), count)
        for count, words in lists.items()
        for word in words.split()
        if syllables(word, language) != count
    }
    assert wrong == {}


def test_a_region_follows_its_language() -> None:
    """British English has the rule of English; a language without a rule says so."""
    assert syllables("repetition", "en-GB") == syllables("repetition", "en")
    assert counts_syllables("pt-BR") is False


def test_no_word_is_silent() -> None:
    """A word has at least one syllable, also where it is written without a vowel."""
    assert [syllables(word, "en") for word in ("hmm", "the", "e", "'s", "-")] == [1, 1, 1, 1, 1]
