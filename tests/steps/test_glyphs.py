"""A letter that no typeface can draw is found in the content, never as an empty box on paper."""

from __future__ import annotations

from pathlib import Path

import pytest
from babel.messages.pofile import read_po

from generator.steps.glyphs import undrawn
from generator.steps.languages import speak
from generator.wording.po import forms_of
from generator.wording.voice import LOCALES
from tests.content import FILES, catalogue_of, with_change


def test_a_letter_without_a_glyph_names_exercise_language_and_letter(tmp_path: Path) -> None:
    """A Chinese letter pasted into a step is an error at that step."""
    files = with_change(FILES, "exercises/heel-raise.yml", "Lower slowly.", "Lower 慢 slowly.")
    _, found = speak(catalogue_of(files), tmp_path)
    (problem,) = [one for one in found if one.code == "letter-without-glyph"]
    assert problem.place.path.endswith("exercises/heel-raise.yml")
    assert problem.place.line
    assert "'慢' (U+6162" in problem.message
    assert "'en'" in problem.message


@pytest.mark.parametrize(
    "words", ["Größe, naïve, łódź, ¿qué? „so“ «así»", "لا تلفّ رُكبتك؟", "Сидіть, їжак 3 × 10 −5°"]
)
def test_scripts_with_a_typeface_can_be_drawn(words: str) -> None:
    """Latin, Arabic with vowel signs and Cyrillic have one; blanks and invisible marks need none."""
    assert undrawn(words + "\u2066\u00a0\u2069\u200f") == ()


def test_signs_without_a_typeface_are_known() -> None:
    """Ticks and boxes are drawn as pictures, for no face has them; nor is there one for Chinese."""
    assert undrawn("☐ ✓ 慢慢") == ("☐", "✓", "慢")


@pytest.mark.parametrize("path", sorted(LOCALES.glob("*.po")), ids=lambda path: path.stem)
def test_the_generators_words_can_be_drawn_in_every_language(path: Path) -> None:
    """No message that the generator ships holds a letter without a glyph."""
    with path.open("rb") as file:
        for message in read_po(file):
            assert undrawn("".join(forms_of(message))) == (), message.id
