"""A dose is said large, alike in every language, and in the language's own words."""

from __future__ import annotations

import pytest

from generator.catalogue.dose import Dose, DoseKind, DoseStep, Load, Span, Tempo
from generator.catalogue.terms import BandStrength
from generator.wording.doses import dose, told_apart
from generator.wording.isolation import CLOSE, OPEN, plain
from generator.wording.voice import voice
from tests.wording.samples import POLISH, speaking

STRENGTH = Dose(
    kind=DoseKind.REPETITIONS,
    sets=Span(3, 1, 3),
    count=Span(10, 6, 12),
    hold=Span(3, 3, 10),
    tempo=Tempo(lift=2, lower=3),
    rest=60,
)
STEP = DoseStep(DoseKind.REPETITIONS, 3, 10, load=Load(band=BandStrength.LIGHT))


@pytest.mark.parametrize("language", ["en", "pl", "ar"])
def test_the_large_dose_is_one_unit_in_every_language(language: str) -> None:
    """A clinician who cannot read the language can point at it; in a right-to-left line it never turns."""
    assert dose(voice(language), STEP, STRENGTH).big == f"{OPEN}3\u00a0×\u00a010{CLOSE}"


def test_the_words_say_the_same_as_the_figures() -> None:
    """Sets, repetitions, load, hold, pace and rest all stand on the sheet."""
    said = dose(voice("en"), STEP, STRENGTH)
    assert plain(said.spoken) == "3 sets of 10 repetitions"
    assert [plain(line) for line in said.lines] == [
        "With a light band",
        "Hold each one for 3 seconds",
        "Take 2 seconds to lift and 3 seconds to lower",
        "Rest for 1 minute between sets",
    ]


@pytest.mark.parametrize(
    ("step", "big", "unit", "spoken"),
    [
        (DoseStep(DoseKind.HOLDS, 2, 5, hold=10), "2\u00a0×\u00a05", "sets × holds", "2 sets of 5 holds"),
        (DoseStep(DoseKind.MINUTES, 1, 1), "1", "minute", "1 minute"),
        (DoseStep(DoseKind.MINUTES, 1, 5), "5", "minutes", "5 minutes"),
        (DoseStep(DoseKind.HOURLY, 1, 10), "10", "times an hour", "10 times every hour while you are awake"),
        (DoseStep(DoseKind.STEPS, 1, 1200), "1,200", "steps", "1,200 steps"),
        (
            DoseStep(DoseKind.REPETITIONS, 1, 1),
            "1\u00a0×\u00a01",
            "sets × repetitions",
            "1 set of 1 repetition",
        ),
    ],
)
def test_each_kind_of_dose_counts_its_own_things(step: DoseStep, big: str, unit: str, spoken: str) -> None:
    """What the figures count stands beside them, and the words repeat it."""
    said = dose(voice("en"), step, STRENGTH)
    assert (plain(said.big), said.unit, plain(said.spoken)) == (big, unit, spoken)


def test_a_step_states_its_own_hold() -> None:
    """The hold of the step comes before the exercise's usual one; walking has none."""
    held = dose(voice("en"), DoseStep(DoseKind.HOLDS, 2, 5, hold=10), STRENGTH)
    assert plain(held.hold) == "Hold each one for 10 seconds"
    assert dose(voice("en"), DoseStep(DoseKind.STEPS, 1, 200), STRENGTH).lines == ()


def test_steps_that_differ_in_the_hold_alone_are_told_apart() -> None:
    """Somebody who should go from 5 to 10 seconds must not read the same figures twice."""
    steps = [DoseStep(DoseKind.HOLDS, 1, 5, hold=seconds) for seconds in (5, 5, 10)]
    said = [plain(one).replace("\u00a0", " ") for one in told_apart(voice("en"), steps, STRENGTH)]
    assert said == [
        "1 × 5 (hold each for 5 seconds)",
        "1 × 5 (hold each for 5 seconds)",
        "1 × 5 (hold each for 10 seconds)",
    ]
    same = [plain(one).replace("\u00a0", " ") for one in told_apart(voice("en"), steps[:2], STRENGTH)]
    assert same == ["1 × 5", "1 × 5"]


def test_a_list_of_doses_in_words_tells_each_from_the_others() -> None:
    """A clinician who chooses among doses reads the hold that alone differs, and the load."""
    steps = [DoseStep(DoseKind.HOLDS, 1, 5, hold=seconds) for seconds in (5, 10)]
    said = [plain(one) for one in told_apart(voice("en"), steps, STRENGTH, in_words=True)]
    assert said == [
        "1 set of 5 holds (hold each for 5 seconds)",
        "1 set of 5 holds (hold each for 10 seconds)",
    ]
    (words,) = told_apart(voice("en"), [STEP], STRENGTH, in_words=True)
    assert plain(words) == "3 sets of 10 repetitions with a light band"


def test_one_set_has_no_rest_between_sets() -> None:
    """A line that cannot apply is left out."""
    assert dose(voice("en"), DoseStep(DoseKind.REPETITIONS, 1, 8), STRENGTH).rest == ""


def test_both_counts_of_a_dose_bend_as_the_language_wants() -> None:
    """Polish: one count follows "po" and takes other endings than the first (forms from memory)."""
    polish = speaking("pl", POLISH)
    assert (
        plain(dose(polish, DoseStep(DoseKind.REPETITIONS, 3, 10), STRENGTH).spoken)
        == "3 serie po 10 powtórzeń"
    )
    assert (
        plain(dose(polish, DoseStep(DoseKind.REPETITIONS, 1, 2), STRENGTH).spoken)
        == "1 seria po 2 powtórzenia"
    )
