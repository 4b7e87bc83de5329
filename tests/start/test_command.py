"""The start takes its own options out of the command line, answers for help, and never shows a traceback."""

import fcntl
import os
import signal
from pathlib import Path

import pytest

from generator.start.command import Request, read_request
from generator.start.machine import NotStartedError
from tests.start.project import Project


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("build", Request(("build",))),
        ("build --install --only hip", Request(("build", "--only", "hip"), install=True)),
        ("--install build", Request(("build",), install=True)),
        ("test --quick tests/start -x", Request(("test", "tests/start", "-x"), quick=True)),
        ("build --quick", Request(("build", "--quick"))),
    ],
)
def test_own_options_are_taken_wherever_they_stand(line: str, expected: Request) -> None:
    """--install goes to the start from any place, --quick only with test; all else is the program's."""
    assert read_request(line.split()) == expected


@pytest.mark.parametrize("form", [["--wheels", "{}"], ["--wheels={}"]])
def test_folder_of_wheels_is_taken(form: list[str], tmp_path: Path) -> None:
    """--wheels takes a folder in both usual forms."""
    request = read_request(["build", *(word.format(tmp_path) for word in form)])
    assert request == Request(("build",), wheels=tmp_path)


@pytest.mark.parametrize("line", ["build --wheels", "build --wheels=", "build --wheels nowhere"])
def test_missing_folder_of_wheels_is_said(line: str) -> None:
    """--wheels without a folder starts nothing."""
    with pytest.raises(NotStartedError, match="--wheels needs a folder"):
        read_request(line.split())


@pytest.mark.parametrize("arguments", [[], ["--help"], ["test", "--help"]])
def test_help_needs_no_environment(project: Project, arguments: list[str]) -> None:
    """Help on starting is there on a fresh machine, and makes nothing."""
    asked = project.start(*arguments)
    assert (asked.returncode, asked.stderr, project.venv.exists()) == (0, "", False)
    assert "--wheels DIR" in asked.stdout


def test_help_goes_on_with_the_programs_own(built: Project) -> None:
    """Once the environment is there, the program's own help follows."""
    asked = built.start("--help")
    assert "--wheels DIR" in asked.stdout
    assert asked.stdout.endswith("\nprogram --help\n")


def test_folder_that_cannot_be_written_is_said(project: Project) -> None:
    """When the work folder cannot be made, the start says so, without a traceback."""
    (project.root / ".phasebook").write_text("a file where the folder should be")
    begun = project.build()
    assert begun.returncode == 2
    assert begun.stderr.startswith("Could not prepare:")
    assert "Traceback" not in begun.stderr


def test_ctrl_c_stops_quietly(project: Project) -> None:
    """Ctrl-C while preparing ends with exit code 2 and a sentence."""
    guard = project.root / ".phasebook" / "start.lock"
    guard.parent.mkdir()
    with guard.open("a") as held:
        fcntl.flock(held, fcntl.LOCK_EX)
        waiting = project.begin("build", "--wheels", str(project.wheels))
        assert waiting.stderr is not None
        assert "waiting" in waiting.stderr.readline()
        os.killpg(waiting.pid, signal.SIGINT)
        _, err = waiting.communicate(timeout=240)
    assert (waiting.returncode, err.strip()) == (2, "Stopped before anything was started.")
