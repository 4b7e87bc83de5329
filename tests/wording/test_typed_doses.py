"""Doses typed into sentences are found in digits and in words; counts of other things are not doses."""

from __future__ import annotations

import pytest

from generator.wording.typed_doses import typed_doses

# Number words as num2words 0.5.14 writes them, looked up by hand.
SAID = [
    ("en", "Do two sets of ten.", ["two sets"]),
    ("en", "Do 3 x 10, then rest.", ["3 x 10"]),
    ("en", "Hold it for forty-five seconds.", ["forty-five seconds"]),
    ("en", "Push Ten times, twice a day.", ["Ten times", "twice a day"]),
    ("en-GB", "Hold for 5 seconds.", ["5 seconds"]),
    ("de", "Machen Sie zwei Sätze, dreimal täglich.", ["zwei Sätze", "dreimal"]),
    ("de", "Halten Sie fünfundvierzig Sekunden.", ["fünfundvierzig Sekunden"]),
    ("es", "Haga diez repeticiones.", ["diez repeticiones"]),
    ("es", "Aguante treinta y cinco segundos.", ["treinta y cinco segundos"]),
    ("pl", "Powtórz dwadzieścia pięć razy.", ["dwadzieścia pięć razy"]),
    ("ar", "كرر خمسة عشر مرة.", ["خمسة عشر مرة"]),
    ("ar", "اثبت لخمس ثوان مرتين.", ["لخمس ثوان", "مرتين"]),
    ("tr", "3 x 10 yapın.", ["3 x 10"]),
]
UNSAID = [
    ("en", "Stand on two legs, one foot in front."),
    ("en", "Stay up for {hold}."),
    ("en", "Sometimes it helps to count the seconds."),
    ("en", "Bend it to 90 degrees."),
    ("de", "Stellen Sie beide Füße auf. Nicht noch einmal."),
    ("es", "Apoye las dos manos."),
    ("pl", "Stań na dwóch nogach. Jeszcze raz."),
    ("ar", "قف على ساقين."),
    ("tr", "İki ayak üzerinde durun."),
]


@pytest.mark.parametrize(("language", "words", "expected"), SAID)
def test_a_dose_is_found_as_it_was_typed(language: str, words: str, expected: list[str]) -> None:
    """Sets, repetitions, times and spans of time, with digits or number words before them."""
    assert list(typed_doses(words, language)) == expected


@pytest.mark.parametrize(("language", "words"), UNSAID)
def test_what_is_no_dose_is_let_be(language: str, words: str) -> None:
    """Legs, hands and degrees are counted too."""
    assert list(typed_doses(words, language)) == []
