"""What ``check`` prints leads an editor to what has to be done, and to nothing else."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from generator.cli.check import check
from generator.cli.shared import DONE, PROBLEMS
from generator.cli.translate import translate
from tests.content import FILES, with_change, write_content

# A measurement without a number of people is set aside, which is a note.
NOTED = with_change(FILES, "studies.yml", "  n: 12\n", "")


def run(content: Path, *options: str) -> Result:
    """Return what the command prints and its exit code."""
    arguments = ["--content", str(content), *options]
    return CliRunner().invoke(check, arguments, catch_exceptions=False, standalone_mode=False)


def test_notes_are_counted_and_printed_when_asked_for(tmp_path: Path) -> None:
    """Notes hide no warning: they are counted, since nothing need be done; ``--notes`` prints them."""
    content = write_content(tmp_path / "content", NOTED)
    first, second = run(content), run(content, "--notes")
    assert (first.return_value, second.return_value) == (DONE, DONE)
    assert "(note)" not in first.output
    assert "check --notes" in first.output.splitlines()[-1]
    assert "(note)" in second.output
    assert "check --notes" not in second.output


def test_another_program_gets_the_notes_too(tmp_path: Path) -> None:
    """The JSON form leaves nothing out."""
    content = write_content(tmp_path / "content", NOTED)
    assert '"severity": "note"' in run(content, "--format", "json").output


@pytest.mark.parametrize(
    "command",
    [(check,), (translate, "status"), (translate, "export", "de"), (translate, "import", "de", "de.po")],
)
def test_an_exercise_that_cannot_be_read_is_what_the_editor_hears_of(
    tmp_path: Path, command: tuple[Any, ...]
) -> None:
    """A mistyped key in an exercise that a phase uses is named with its place; no file is touched for it."""
    mistyped = with_change(FILES, "exercises/ankle-pump.yml", "\nsteps:", "\nstepz:")
    content = write_content(tmp_path / "content", with_change(mistyped, "clinic.yml", "[en]", "[en, de]"))
    arguments = [*command[1:], "--content", str(content)]
    done = CliRunner().invoke(command[0], arguments, catch_exceptions=False, standalone_mode=False)
    assert done.return_value == PROBLEMS
    assert "did you mean 'steps'?" in done.output
    assert "ankle-pump.yml:" in done.output
    assert not (content / "translations").exists()
