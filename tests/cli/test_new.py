"""``new`` gives an editor a file to fill in, and never touches one that is there."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from generator.cli.check import check
from generator.cli.new import new
from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS
from tests.content import write_content


def run(folder: Path, *words: str) -> Result:
    """Return what the command prints and its exit code."""
    return CliRunner().invoke(
        new, [*words, "--content", str(folder)], catch_exceptions=False, standalone_mode=False
    )


@pytest.mark.parametrize(
    ("kind", "folder"),
    [("exercise", "exercises"), ("programme", "programmes"), ("daily-life", "daily-life")],
)
def test_a_new_file_passes_check(tmp_path: Path, kind: str, folder: str) -> None:
    """The file lies where it belongs, and check finds no error in it."""
    write_content(tmp_path)
    result = run(tmp_path, kind, "new-one")
    assert result.return_value == DONE
    assert f"{tmp_path}/{folder}/new-one.yml is written." in result.output
    assert ("in no booklet before a programme names it" in result.output) == (kind != "programme")
    checked = CliRunner().invoke(check, ["--content", str(tmp_path)], standalone_mode=False)
    assert checked.return_value == DONE
    assert "text-not-written" in checked.output


@pytest.mark.parametrize(
    ("id_", "code", "remedy"),
    [
        ("heel-raise", "file-exists", "choose another id"),
        ("Heel_Raise", "bad-id", "for example heel-slide"),
        ("../heel", "bad-id", "for example heel-slide"),
        ("x", "bad-id", "for example heel-slide"),
    ],
)
def test_a_taken_or_bad_id_is_refused(tmp_path: Path, id_: str, code: str, remedy: str) -> None:
    """Nothing is written, and the message says what to do."""
    write_content(tmp_path)
    before = {path: path.read_bytes() for path in tmp_path.rglob("*") if path.is_file()}
    result = run(tmp_path, "exercise", id_)
    assert result.return_value == NOT_STARTED
    assert code in result.output
    assert remedy in result.output
    assert {path: path.read_bytes() for path in tmp_path.rglob("*") if path.is_file()} == before


def test_content_that_cannot_be_read_is_reported(tmp_path: Path) -> None:
    """Without a catalogue there are no examples: its findings are printed, and nothing is written."""
    result = run(tmp_path / "nowhere", "exercise", "new-one")
    assert result.return_value == PROBLEMS
    assert "missing-file" in result.output
    assert not (tmp_path / "nowhere").exists()
