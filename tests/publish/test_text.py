"""Texts read back from a PDF are compared as a reader would: parted words and vowel signs change nothing."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.catalogue.fingerprints import edition_code
from generator.publish.doses import check
from generator.publish.text import as_one_word, doses_in, holds_nearby, holds_token, holds_words

# "Do not turn your knee now, for 5 seconds.", from memory; it only serves to be looked for.
SENTENCE = "لا تلفّ رُكبتك الآن لمدة 5 ثوانٍ."


@pytest.mark.parametrize(
    ("page", "wanted", "there"),
    [
        ("Gymnastik\ufffeübungen", "Gymnastikübungen", True),
        ("Gymnastik\u0002 übungen", "Gymnastikübungen", True),
        ("a step\ufffeup", "a step-up", True),
        ("a step-up", "a step-up", True),
        ("3 × 100", "3 × 10", False),
    ],
)
def test_a_word_parted_at_a_lines_end_is_one_word(page: str, wanted: str, there: bool) -> None:
    """The hyphen at a line's end comes back from pdfium as U+FFFE or U+0002; it may be one of the text."""
    assert holds_token(as_one_word(page), wanted) is there


@given(st.text("12 .,x×\n", max_size=24), st.text("12 ×x", min_size=1, max_size=5).filter(str.strip))
def test_numbers_are_whole_wherever_a_text_stands(page: str, wanted: str) -> None:
    """A text is found as a regular expression finds it: blanks left out, numbers whole."""
    signs = "".join(wanted.split())
    before = r"(?<!\d)(?<!\d[.,])" if signs[0].isdecimal() else ""
    after = r"(?![.,]?\d)" if signs[-1].isdecimal() else ""
    sought = before + r"\s*".join(map(re.escape, signs)) + after
    assert holds_token(page, wanted) is (re.search(sought, page) is not None)


def test_a_right_to_left_sentence_is_found_word_by_word() -> None:
    """Words come in another order, and in parts where they bear a vowel sign."""
    read = "ٍ 5 الآن ركب ُ تك لا ر تلف ّ لمدة ثوان"
    assert holds_words(read, SENTENCE)


@pytest.mark.parametrize("lost", ["لا", "الآن", "لمدة"])
def test_a_lost_word_is_missed(lost: str) -> None:
    """A sentence without one of its words, such as "not", is not there; nor is it with the word joined on."""
    read = " ".join(word for word in SENTENCE.split() if word != lost)
    assert not holds_words(read, SENTENCE)
    assert not holds_words(read.replace("تلف", f"{lost}تلف"), SENTENCE)
    assert not holds_nearby(read, SENTENCE)


def test_figures_of_a_right_to_left_text_count_as_the_eye_meets_them() -> None:
    """A telephone number or dose that is turned round on paper is missing, whatever the file's order."""
    right = list(check("x.pdf", "لمدة 5 ثوان", "5", ["لمدة 5 ثوانٍ", "3 × 10"], None, loose=True))
    assert [problem.message for problem in right] == ["the text '3 × 10' is missing"]
    assert list(check("x.pdf", "10 × 3", "3 × 10", ["3 × 10"], None, loose=True)) == []


def test_an_edition_code_is_no_dose() -> None:
    """Of codes as they are made some read like a dose, such as 5X56-...; a dose that was typed stays one."""
    codes = [edition_code(f"{number * 2654435761:016x}") for number in range(3000)]
    alike = [code for code in codes if doses_in(code.replace("-", " "))]
    assert alike
    assert [code for code in alike if doses_in(f"Edition {code}, 3 × 10") != ("3 × 10",)] == []
