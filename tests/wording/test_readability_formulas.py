"""The formulas give what their publications give, on counts that anyone can follow by hand."""

from __future__ import annotations

from math import isclose

import pytest

from generator.wording import formulas
from generator.wording.counting import count
from generator.wording.formulas import Counts, Formula, inflesz

COUNTS = Counts(
    words=100, sentences=8, syllables=150, polysyllables=12, one_syllable=60, long_words=20, letters=470
)


# Coefficients: verified in two or more programs (koRpus, quanteda, textstat; Ateşman: in five sources).
# The results on these counts: computed by plain arithmetic from the coefficients, away from this code.
@pytest.mark.parametrize(
    ("formula", "expected"),
    [
        (formulas.flesch_reading_ease, 67.2475),  # Flesch 1948
        (formulas.flesch_kincaid_grade, 6.985),  # Kincaid et al. 1975
        (formulas.smog, 10.125757),  # McLaughlin 1969
        (formulas.fog, 9.8),  # Gunning 1952
        (formulas.lix, 32.5),  # Björnsson 1968
        (formulas.amstad, 79.75),  # Amstad 1978
        (formulas.wiener_1, 4.1690),  # Bamberger and Vanecek 1984
        (formulas.wiener_2, 4.4779),
        (formulas.wiener_3, 4.82245),
        (formulas.wiener_4, 4.9198),
        (formulas.fernandez_huerta, 104.09),  # Fernández Huerta 1959
        (formulas.szigriszt_pazos, 100.885),  # Szigriszt 1993
        (formulas.atesman, 105.9375),  # Ateşman 1997
    ],
    ids=lambda value: getattr(value, "__name__", ""),
)
def test_formula_on_round_counts(formula: Formula, expected: float) -> None:
    """Each formula gives its known result on one hundred words in eight sentences."""
    assert isclose(formula(COUNTS), expected, abs_tol=5e-5)


# Two samples of an encyclopedia: published answers (69; 37.5, 11.3) from memory, the arithmetic computed.
@pytest.mark.parametrize(
    ("words", "spoken", "ease", "grade"), [(16, 23, 68.98, 7.6125), (13, 24, 37.455, 11.265)]
)
def test_published_samples(words: int, spoken: int, ease: float, grade: float) -> None:
    """Flesch and Flesch-Kincaid give the answers printed for two sentences of known counts."""
    counts = Counts(words=words, sentences=1, syllables=spoken)
    assert isclose(formulas.flesch_reading_ease(counts), ease, abs_tol=5e-3)
    assert isclose(formulas.flesch_kincaid_grade(counts), grade, abs_tol=5e-4)


# An office memo before and after rewriting: verified in a Polish style guide (35 and 11, rounded there).
@pytest.mark.parametrize(
    ("words", "sentences", "hard", "expected"), [(69, 1, 13, 35.136), (48, 3, 5, 10.567)]
)
def test_fog_of_a_memo(words: int, sentences: int, hard: int, expected: float) -> None:
    """FOG gives the values printed for a memo; in Polish a hard word has four syllables or more."""
    english = Counts(words=words, sentences=sentences, polysyllables=hard, four_syllables=1)
    polish = Counts(words=words, sentences=sentences, polysyllables=hard + 9, four_syllables=hard)
    assert isclose(formulas.fog(english), expected, abs_tol=5e-4)
    assert isclose(formulas.fog_polish(polish), expected, abs_tol=5e-4)


# Computed from McLaughlin's formula (1969), away from this code.
@pytest.mark.parametrize(
    ("hard", "expected"),
    [
        (0, 3.1291),
        (1, 4.1721),
        (4, 5.2151),
        (9, 6.2581),
        (16, 7.3011),
        (25, 8.3441),
        (30, 8.8418),
        (36, 9.3871),
        (49, 10.4301),
    ],
)
def test_smog_of_thirty_sentences(hard: int, expected: float) -> None:
    """SMOG of thirty sentences follows the square root of their hard words."""
    assert isclose(formulas.smog(Counts(words=300, sentences=30, polysyllables=hard)), expected, abs_tol=5e-5)


# Barrio-Cantalejo et al. 2008, An Sist Sanit Navar 31(2):135-152: verified.
@pytest.mark.parametrize(
    ("value", "words"),
    [
        (-3, "very hard"),
        (39.9, "very hard"),
        (40, "somewhat hard"),
        (55, "normal"),
        (65, "fairly easy"),
        (80, "very easy"),
        (104, "very easy"),
    ],
)
def test_inflesz_scale(value: float, words: str) -> None:
    """The Spanish scale has five steps, and values beyond its ends belong to the outer ones."""
    assert inflesz(value) == words


# Our own sentences, syllables counted by hand; the answers computed.
@pytest.mark.parametrize(
    ("text", "words", "spoken", "ease", "grade"),
    [
        ("Lift the leg and hold it up.", 7, 7, 115.13, -1.06),
        ("Slowly lower your leg to the bed again.", 8, 11, 82.39, 3.755),
    ],
)
def test_from_the_text_itself(text: str, words: int, spoken: int, ease: float, grade: float) -> None:
    """Counting and formula together give the answer known for a sentence."""
    counts = count(text, "en")
    assert (counts.words, counts.sentences, counts.syllables) == (words, 1, spoken)
    assert isclose(formulas.flesch_reading_ease(counts), ease, abs_tol=1e-2)
    assert isclose(formulas.flesch_kincaid_grade(counts), grade, abs_tol=1e-3)


def test_counts_of_two_texts_add_up() -> None:
    """The counts of a whole are the sums of its parts, whichever field."""
    one, two = "Lift your operated leg.", "Physiotherapists recommend this repetition."
    assert count(one, "en") + count(two, "en") == count(f"{one} {two}", "en")
