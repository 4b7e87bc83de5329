"""A project may let a code weigh more or less, with a reason; what guards patients keeps its weight."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.pipeline import check_catalogue
from generator.problems import NOWHERE, Rule, Severity
from generator.steps.weights import settled
from tests.content import CLINIC, FILES, catalogue_of, with_change, write_content

RAISE = "exercises/heel-raise.yml"
# With it the small content has one note: late-in-phase.
LATE = with_change(FILES, RAISE, "mean: 34.5", "mean: 54.9")


def weighing(code: str, weight: str) -> dict[str, str]:
    """Return the small content with a note, and one entry for a code in clinic.yml."""
    entry = f"codes:\n  - {{code: {code}, weight: {weight}, reason: Invented for tests.}}\n"
    return {**LATE, "clinic.yml": CLINIC + entry}


def found(folder: Path, files: dict[str, str]) -> dict[str, str]:
    """Return the codes that the check of a content finds, with their weight."""
    problems = check_catalogue(write_content(folder / "content", files)).problems
    return {one.code: one.severity.value for one in problems}


def test_a_code_weighs_what_its_rule_says(tmp_path: Path) -> None:
    """Without an entry nothing changes."""
    assert found(tmp_path, LATE) == {"late-in-phase": "note"}


@pytest.mark.parametrize("weight", ["error", "warning", "note"])
def test_a_note_can_be_raised(tmp_path: Path, weight: str) -> None:
    """What one clinic takes for a note another takes for an error."""
    assert found(tmp_path, weighing("late-in-phase", weight)) == {"late-in-phase": weight}


def test_a_note_can_be_silenced(tmp_path: Path) -> None:
    """A silent finding is not shown."""
    assert found(tmp_path, weighing("late-in-phase", "silent")) == {}


@pytest.mark.parametrize("weight", ["warning", "note", "silent"])
@pytest.mark.parametrize("code", ["above-band", "booklet-withheld", "unknown-exercise", "use-twice"])
def test_safety_and_errors_of_content_cannot_be_lowered(tmp_path: Path, code: str, weight: str) -> None:
    """An entry that would do so is an error itself, at the weight that was typed."""
    files = weighing(code, weight)
    problems = check_catalogue(write_content(tmp_path / "content", files)).problems
    wanted = "code-not-lowered"
    if (code, weight) == ("booklet-withheld", "warning"):
        wanted = "late-in-phase"
    assert wanted in [one.code for one in problems]
    if wanted == "code-not-lowered":
        (problem,) = [one for one in problems if one.code == wanted]
        line = files["clinic.yml"].splitlines()[problem.place.line - 1]
        assert line[problem.place.column - 1 :].startswith(weight)


def test_an_unknown_code_is_refused_with_the_nearest(tmp_path: Path) -> None:
    """A misspelt code would silence nothing and say so to nobody."""
    files = weighing("late-in-fase", "silent")
    problems = check_catalogue(write_content(tmp_path / "content", files)).problems
    (problem,) = [one for one in problems if one.code == "unknown-code"]
    assert problem.remedy == "did you mean 'late-in-phase'?"


def test_a_reason_must_stand(tmp_path: Path) -> None:
    """Nobody changes a weight without saying why."""
    files = with_change(weighing("late-in-phase", "error"), "clinic.yml", ", reason: Invented for tests.", "")
    assert "missing-key" in found(tmp_path, files)


def test_a_finding_that_guards_patients_keeps_its_weight_whatever_is_typed() -> None:
    """Even if the entry got past its own check, such a finding stays an error."""
    files = {**FILES, "clinic.yml": weighing("above-band", "silent")["clinic.yml"]}
    rule = Rule("above-band", "Seen.", "Cause.", "mend it", safety=True)
    (problem,) = settled(catalogue_of(files), [rule.at(NOWHERE, "too hard")])
    assert problem.severity is Severity.ERROR
