"""Values that no exercise carries: each stands under its study with its muscle and a reason."""

from __future__ import annotations

from generator.catalogue.clinic import NotUsed
from tests.content import FILES, catalogue_of, problems_of, with_change

LISTED = """\
  not-used:
    - {exercise: calf hop, muscle: inner-calf, mean: 62.5, reason: Too early for everyone.}
"""
GIVEN = with_change(FILES, "studies.yml", "  part: mean\n", f"  part: mean\n{LISTED}")


def test_value_keeps_muscle_and_reason() -> None:
    """A listed value keeps its exercise, muscle, number and reason."""
    found = catalogue_of(GIVEN).studies["invented-2001"].not_used
    assert found == (
        NotUsed(exercise="calf hop", muscle="inner-calf", mean=62.5, reason="Too early for everyone."),
    )


def test_unknown_muscle_is_an_error() -> None:
    """A listed value of a muscle that nobody described is an error at the muscle."""
    files = with_change(GIVEN, "studies.yml", "muscle: inner-calf", "muscle: outer-calf")
    assert problems_of(files) == ["unknown-muscle studies.yml:14:36"]


def test_reason_must_stand() -> None:
    """A value without a reason is an error: nothing is left out in silence."""
    files = with_change(GIVEN, "studies.yml", ", reason: Too early for everyone.", "")
    assert problems_of(files) == ["missing-key studies.yml:14:7"]
