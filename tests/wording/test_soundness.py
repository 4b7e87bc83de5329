"""A translation shares numbers, phrases and plainness with its source, and never loses a prohibition."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.problems import Place
from generator.wording.negations import denials, knows, negation_problems
from generator.wording.soundness import soundness_problems

HERE = Place("de.po", 7, 1)


def codes(source: str, translation: str) -> list[str]:
    """Return the codes of what is found."""
    return [problem.code for problem in soundness_problems(source, translation, HERE)]


@pytest.mark.parametrize(
    ("source", "translation"),
    [
        ("Lift 2.5 cm, 3 times.", "3-mal 2,5 cm heben."),
        ("Not above 38 °C.", "Nicht über 38 °C."),
        ("Hold it for {hold}.", "{hold} lang halten."),
        ("At 8.30 in the morning", "um 8:30 Uhr"),
        ("Walk 10 steps.", "امش ١٠ خطوات."),
    ],
)
def test_a_number_may_be_written_as_its_language_does(source: str, translation: str) -> None:
    """Decimal marks, the order of numbers and the script's digits are the translator's business."""
    assert codes(source, translation) == []


@pytest.mark.parametrize(
    ("source", "translation", "code"),
    [
        ("Bend to 70 degrees.", "Auf 90 Grad beugen.", "numbers-differ"),
        ("Wait 2 weeks.", "Zwei Wochen warten.", "numbers-differ"),
        ("Wait.", "2 Wochen warten.", "numbers-differ"),
        ("Hold it for {hold}.", "5 Sekunden halten.", "phrases-differ"),
        ("Do not bend.", "<b>Nicht</b> beugen.", "markup-in-translation"),
        ("Do not bend.", "Nicht&nbsp;beugen.", "markup-in-translation"),
    ],
)
def test_what_a_program_can_see_is_found(source: str, translation: str, code: str) -> None:
    """A wrong number, a phrase typed out and markup are findings with their code."""
    assert code in codes(source, translation)


@given(st.text(), st.text())
def test_any_text_is_judged_without_a_crash(source: str, translation: str) -> None:
    """Whatever was typed, findings are values; a sentence is always sound beside itself."""
    codes(source, translation)
    assert "numbers-differ" not in codes(source, source)


# The languages' own words, from memory of them; no source.
DENIED = [
    ("de", "Beugen Sie die Hüfte nicht.", "Beugen Sie die Hüfte."),
    ("de", "Ohne Schuhe nicht aufstehen.", "Mit Schuhen aufstehen."),
    ("es", "No doble la cadera.", "Doble la cadera."),
    ("pl", "Nie zginać biodra.", "Zginać biodro."),
    ("ar", "لا تثنِ وركك.", "اثنِ وركك."),
    ("ar", "قف من دون ألم ولا تنحنِ.", "قف وانحنِ."),
]


@pytest.mark.parametrize(("language", "kept", "lost"), DENIED)
def test_a_lost_prohibition_is_an_error(language: str, kept: str, lost: str) -> None:
    """The same sentence passes with its word of denial and fails without it."""
    source = "Do not bend your hip."
    assert list(negation_problems(source, "en", kept, language, HERE)) == []
    [found] = negation_problems(source, "en", lost, language, HERE)
    assert (found.code, found.safety, found.place) == ("negation-lost", True, HERE)


def test_sentences_are_compared_one_by_one() -> None:
    """One "not" too many in the first sentence does not make up for the one lost in the second."""
    source = "Do not bend. Do not twist."
    assert list(negation_problems(source, "en", "Nicht beugen. Nicht drehen.", "de", HERE)) == []
    assert list(negation_problems(source, "en", "Gar nicht beugen, nicht! Drehen.", "de", HERE))


def test_a_language_without_a_list_is_known_as_such() -> None:
    """Nothing is found in it, and the program can say that nothing was looked for."""
    assert not knows("eu")
    assert list(negation_problems("Do not bend.", "en", "Tolestu.", "eu", HERE)) == []


def test_words_that_only_begin_alike_are_no_denials() -> None:
    """Spanish "nosotros", German "niedrig", Polish "niebieski", Arabic "لاحظ" deny nothing."""
    words = {"es": "nosotros", "de": "niedrig", "pl": "niebieski", "ar": "لاحظ"}
    assert [denials(word, language) for language, word in words.items()] == [0, 0, 0, 0]
