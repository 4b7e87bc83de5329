"""Doses that a translator typed into a sentence."""

from __future__ import annotations

import pytest

from generator.checks.typed_doses import check_language
from generator.problems import Place
from generator.wording.localise import Translations
from tests.content import catalogue_of

PLACE = Place("translations/de.po", 12, 1)
STEP = ("exercise/heel-raise/steps", "Lower slowly.")
PASSED = ("programme/tendon-repair/phases/milestones/passed", "Ten times without pain.")


@pytest.mark.parametrize(
    ("key", "words", "said"),
    [
        (STEP, "Langsam senken, zehnmal.", ["the translation says 'zehnmal', which its source does not"]),
        (STEP, "Langsam senken.", []),
        (PASSED, "Zehnmal ohne Schmerz.", []),
    ],
    ids=["a dose that the source does not say", "none", "what is tested has a number of its own"],
)
def test_a_dose_that_only_the_translation_says(key: tuple[str, str], words: str, said: list[str]) -> None:
    """It is named at its line of the translation."""
    translations = Translations({key: words}, places={key: PLACE})
    found = list(check_language(catalogue_of(), "de", translations))
    assert [one.message for one in found] == said
    assert {one.place for one in found} <= {PLACE}
