"""Two states of the content are compared: what changed for whom, and which paper must come back."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Mapping
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from generator.cli.changes import changes
from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS
from generator.editing import add_editions
from generator.steps.editions import checked_ledger
from tests.content import FILES, with_change, write_content
from tests.review.paper import code, edition, facts_of_files

PROGRAMME = "programmes/tendon-repair.yml"
STEPS = "[2 x 8, 3 x 8, 3 x 10, 3 x 10 with light band]"
LESS = with_change(FILES, PROGRAMME, STEPS, "[2 x 8, 3 x 8, 3 x 10]")
# A third exercise, measured below the heel raise, in the same phase.
TOE_RAISE = (
    FILES["exercises/heel-raise.yml"]
    .replace("name: Heel raise with both legs", "name: Toe raise")
    .replace("mean: 34.5", "mean: 25.0")
)
TWO = with_change(
    {**FILES, "exercises/toe-raise.yml": TOE_RAISE},
    PROGRAMME,
    "      - use: heel-raise\n",
    "      - use: toe-raise\n        dose-steps: [2 x 8]\n        times-a-day: 1\n        days-a-week: 3\n"
    "        rest-days: 1\n        then: goes on\n      - use: heel-raise\n",
)


def run(*arguments: str | Path) -> Result:
    """Return what ``changes`` prints, and its exit code."""
    told = [str(one) for one in arguments]
    return CliRunner().invoke(changes, told, catch_exceptions=False, standalone_mode=False)


def compared(folder: Path, old: Mapping[str, str], new: Mapping[str, str], *options: str) -> Result:
    """Write two states and compare them."""
    return run(write_content(folder / "old", old), write_content(folder / "new", new), *options)


def as_data(
    folder: Path, old: Mapping[str, str], new: Mapping[str, str]
) -> dict[str, list[dict[str, object]]]:
    """Return the comparison as a program reads it."""
    found: dict[str, list[dict[str, object]]] = json.loads(
        compared(folder, old, new, "--format", "json").output
    )
    return found


def git(folder: Path, *arguments: str) -> None:
    """Run git in a folder, as somebody who has set no name."""
    names = ["-c", "user.name=Editor", "-c", "user.email=editor@clinic.example"]
    subprocess.run(["git", "-C", str(folder), *names, *arguments], check=True, capture_output=True)


def test_equal_states_have_no_changes(tmp_path: Path) -> None:
    """A comment more is no change."""
    same = with_change(FILES, "clinic.yml", "# Invented for tests.", "# Invented, for tests.")
    found = as_data(tmp_path, FILES, same)
    assert [found[part] for part in ("changes", "evidence", "sentences", "booklets")] == [[], [], [], []]


def test_a_lower_dose_is_told_to_patients_and_reviewers(tmp_path: Path) -> None:
    """Patients read a sentence, reviewers the figures before and after."""
    patients = compared(tmp_path, FILES, LESS, "--for", "patients")
    assert patients.return_value == DONE
    assert "[call back now] The dose is lower in part or in whole: Heel raise" in patients.output
    assert "2 x 8" not in patients.output
    reviewers = compared(tmp_path, FILES, LESS).output
    assert "[dose; call back now]" in reviewers
    assert "2 x 8, 3 x 8, 3 x 10, 3 x 10 with light band; 1 a day" in reviewers
    assert "-> 2 x 8, 3 x 8, 3 x 10; 1 a day" in reviewers


def test_translators_get_the_sentences_that_came_and_went(tmp_path: Path) -> None:
    """A reworded step stands with its old words; what nobody translates does not stand there."""
    new = with_change(LESS, "exercises/heel-raise.yml", "- Lower slowly.", "- Lower very slowly.")
    new = with_change(new, "clinic.yml", "languages: [en]", "languages: [en, de]")
    found = compared(tmp_path, FILES, new, "--for", "translators").output
    assert "To translate into: de" in found
    assert "exercise/heel-raise/steps" in found
    assert "was: Lower slowly." in found
    assert "now: Lower very slowly." in found
    assert "2 x 8" not in found


def test_changed_evidence_is_listed_with_its_study(tmp_path: Path) -> None:
    """Reviewers see each measurement, judgement and study that changed."""
    new = with_change(FILES, "exercises/heel-raise.yml", "mean: 34.5", "mean: 40.5")
    new = with_change(new, "studies.yml", "year: 2001", "year: 2002")
    found = as_data(tmp_path, FILES, new)["evidence"]
    assert found == [
        {
            "item": "heel-raise",
            "words": "invented-2001, calf (Table 1, body weight on both legs): 34.5 ± 11 %, now 40.5 ± 11 %",
        },
        {"item": "invented-2001", "words": "the study changed"},
    ]


def test_an_order_that_changed_is_explained_by_the_measurement(tmp_path: Path) -> None:
    """The exercise whose number moved is named with the study, not the one that was only overtaken."""
    new = with_change(TWO, "exercises/heel-raise.yml", "mean: 34.5", "mean: 20.5")
    (order,) = [one for one in as_data(tmp_path, TWO, new)["changes"] if one["kind"] == "order"]
    assert (order["before"], order["after"]) == ("toe-raise, heel-raise", "heel-raise, toe-raise")
    assert order["urgency"] == "no need"
    assert order["because"] == [
        "heel-raise: its activity went from 34.5 to 20.5 %MVIC, because "
        "invented-2001, calf (Table 1, body weight on both legs): 34.5 ± 11 %, now 20.5 ± 11 %"
    ]


def test_an_order_that_changed_is_explained_by_the_prerequisite(tmp_path: Path) -> None:
    """A prerequisite that was added outranks activity, and is named."""
    new = with_change(
        TWO, "exercises/toe-raise.yml", "requires: [ankle-pump]", "requires: [ankle-pump, heel-raise]"
    )
    (order,) = [one for one in as_data(tmp_path, TWO, new)["changes"] if one["kind"] == "order"]
    assert order["because"] == ["toe-raise: heel-raise must be mastered first now"]


def test_recorded_booklets_are_sorted_by_urgency(tmp_path: Path) -> None:
    """Every recorded booklet is judged against the newer state, also one older than both."""
    new = write_content(tmp_path / "new", LESS)
    more = with_change(FILES, PROGRAMME, STEPS, "[2 x 8]")
    for facts, one in ((FILES, 1), (LESS, 2), (more, 3)):
        assert add_editions(new, checked_ledger(new), (edition(facts_of_files(facts), code(one)),)) == ()
    old = write_content(tmp_path / "old", FILES)
    found = json.loads(run(old, new, "--format", "json").output)["booklets"]
    assert [(one["code"], one["urgency"]) for one in found] == [
        (code(1), "call back now"),
        (code(3), "at the next visit"),
        (code(2), "no need"),
    ]
    words = run(old, new, "--for", "patients").output
    assert f"call back now: {code(1)} tendon-repair phase 2, en, recorded 2024-11-20: 1 change" in words


def test_markdown_is_not_broken_by_what_editors_type(tmp_path: Path) -> None:
    """Signs that mean something in Markdown are escaped (CommonMark 0.31.2, backslash escapes)."""
    new = with_change(FILES, "exercises/heel-raise.yml", "- Lower slowly.", '- "Lower *slowly* [now]."')
    found = compared(tmp_path, FILES, new, "--format", "markdown").output
    assert "## tendon-repair, phase 2" in found
    assert r"Lower \*slowly\* \[now\]." in found


def test_revisions_are_compared_like_folders(tmp_path: Path) -> None:
    """A revision is brought back beside the work, which stays as it is."""
    content = write_content(tmp_path / "content")
    git(tmp_path, "init", "-q")
    git(tmp_path, "add", "content")
    git(tmp_path, "commit", "-q", "-m", "first")
    write_content(content, LESS)
    git(tmp_path, "commit", "-q", "-a", "-m", "lower dose")
    before = {path: path.read_bytes() for path in content.rglob("*.yml")}
    found = run("HEAD~1", "HEAD", "--content", str(content), "--for", "patients")
    assert found.return_value == DONE
    assert "The dose is lower" in found.output
    mixed = run("HEAD~1", content, "--content", str(content), "--for", "patients").output
    assert "The dose is lower" in mixed
    write_content(content)
    assert "The dose changed" in run("--content", str(content), "--for", "patients").output
    write_content(content, LESS)
    assert {path: path.read_bytes() for path in content.rglob("*.yml")} == before


@pytest.mark.parametrize("named", ["no-such-name", "--output=x", "HEAD; rm", "HEAD:content"])
def test_a_revision_that_does_not_exist_is_told(tmp_path: Path, named: str) -> None:
    """A misspelt revision is told with a remedy; nothing in its name is taken for an option."""
    content = write_content(tmp_path / "content")
    git(tmp_path, "init", "-q")
    git(tmp_path, "add", "content")
    git(tmp_path, "commit", "-q", "-m", "first")
    found = run("--content", str(content), "--", named, str(content))
    assert found.return_value == NOT_STARTED
    assert "revision-unknown" in found.output
    assert "git log" in found.output


def test_a_folder_without_content_is_told(tmp_path: Path) -> None:
    """A folder that holds something else is no content, and no revision either."""
    (tmp_path / "empty").mkdir()
    found = run(tmp_path / "empty", write_content(tmp_path / "content"))
    assert found.return_value == NOT_STARTED
    assert "state-without-content" in found.output


def test_a_revision_without_content_is_told(tmp_path: Path) -> None:
    """A revision from before the content was there is no content."""
    (tmp_path / "notes.txt").write_text("Nothing yet.\n", "utf-8")
    git(tmp_path, "init", "-q")
    git(tmp_path, "add", "notes.txt")
    git(tmp_path, "commit", "-q", "-m", "first")
    content = write_content(tmp_path / "content")
    found = run("HEAD", content, "--content", str(content))
    assert found.return_value == NOT_STARTED
    assert "state-without-content" in found.output


def test_a_content_without_history_is_told(tmp_path: Path) -> None:
    """A copy without version control compares folders only, and says so."""
    content = write_content(tmp_path / "content")
    found = run("HEAD~1", content, "--content", str(content))
    assert found.return_value == NOT_STARTED
    assert "no-version-control" in found.output
    assert "name two folders" in found.output


def test_a_state_with_errors_is_not_compared(tmp_path: Path) -> None:
    """What cannot be read cannot be compared: its errors are shown with their places."""
    wrong = with_change(FILES, PROGRAMME, "use: heel-raise", "use: heel-rise")
    found = compared(tmp_path, wrong, FILES)
    assert found.return_value == PROBLEMS
    assert "unknown-exercise" in found.output
    assert "tendon-repair.yml:" in found.output
