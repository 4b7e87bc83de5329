"""``readability`` tells an editor which text to begin with."""

from __future__ import annotations

import json
from pathlib import Path

from click.testing import CliRunner, Result

from generator.cli.readability import readability
from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS
from tests.content import FILES, with_change, write_content

RAISE = "exercises/heel-raise.yml"
HARD = "Elevation necessitates considerable concentration."


def run(folder: Path, *options: str) -> Result:
    """Return what the command prints and its exit code."""
    return CliRunner().invoke(
        readability, ["--content", str(folder), *options], catch_exceptions=False, standalone_mode=False
    )


def test_the_table_names_measure_target_and_sentence(tmp_path: Path) -> None:
    """The hardest text comes first, and the hardest sentence with file, line and column."""
    files = with_change(FILES, RAISE, "Makes your calf strong enough for stairs.", HARD)
    result = run(write_content(tmp_path, files))
    assert result.return_value == DONE
    assert "Flesch-Kincaid grade in 'en', wanted is at most 6" in result.output
    rows = [line for line in result.output.splitlines() if line.strip().startswith(("!", "exercise "))]
    assert rows[0].split()[:2] == ["exercise", "heel-raise"]
    assert f"{tmp_path}/{RAISE}:2:10: {HARD}" in result.output


def test_json_holds_every_level(tmp_path: Path) -> None:
    """The JSON form has the same items with their hardest sentences, in a numbered format."""
    found = json.loads(run(write_content(tmp_path), "--format", "json").output)
    assert (found["format"], found["language"], found["target"]) == (1, "en", 6.0)
    names = {(item["kind"], item["id"]) for item in found["items"]}
    assert {("exercise", "ankle-pump"), ("booklet", "tendon-repair/2"), ("safety", "safety")} <= names
    assert all(0 < len(item["hardest"]) <= 3 for item in found["items"])


def test_a_translation_is_measured_by_its_own_formula(tmp_path: Path) -> None:
    """With a translation on file its words are measured; without one the command says that there is none."""
    folder = write_content(
        tmp_path, with_change(FILES, "clinic.yml", "languages: [en]", "languages: [en, de]")
    )
    assert "There are no texts in 'de' yet." in run(folder, "--language", "de").output
    (folder / "translations").mkdir()
    po = (
        'msgid ""\nmsgstr "Language: de\\nContent-Type: text/plain; charset=UTF-8\\n"\n\n'
        'msgctxt "exercise/heel-raise/steps"\nmsgid "Lower slowly."\nmsgstr "Lassen Sie die Fersen sinken."\n'
    )
    (folder / "translations" / "de.po").write_text(po, encoding="utf-8")
    output = run(folder, "--language", "de").output
    assert "Wiener Sachtextformel 1 in 'de'" in output
    assert "Lassen Sie die Fersen sinken." in output
    assert "Lower slowly." not in output


def test_a_language_of_nobody_is_refused(tmp_path: Path) -> None:
    """A language that the clinic does not have is not measured; the message names those it has."""
    result = run(write_content(tmp_path), "--language", "fr")
    assert result.return_value == NOT_STARTED
    assert "'fr'; name one of: en" in result.output


def test_content_that_cannot_be_read_is_reported(tmp_path: Path) -> None:
    """Where there is no catalogue the findings are printed instead of a table."""
    result = run(tmp_path / "nowhere")
    assert result.return_value == PROBLEMS
    assert "missing-file" in result.output
