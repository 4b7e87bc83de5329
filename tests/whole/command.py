"""Runs the command line as a user does: in a process of its own, from the project's folder."""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

import pytest

from generator.cli import main

PROJECT = Path(__file__).parents[2]


def phasebook(
    *arguments: str | Path, environment: Mapping[str, str] | None = None, project: Path = PROJECT
) -> subprocess.CompletedProcess[str]:
    """Run a command and return what it printed and its exit code."""
    return subprocess.run(
        [sys.executable, "-m", "generator.cli", *map(str, arguments)],
        cwd=project,
        env={**os.environ, **(environment or {})},
        capture_output=True,
        text=True,
        check=False,
        timeout=1200,
    )


def bytes_of(folder: Path) -> dict[str, str]:
    """Return the SHA-256 of every file under a folder."""
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def answered(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, *arguments: str | Path
) -> subprocess.CompletedProcess[str]:
    """Run a command within this process, which spares its start, and return the same as `phasebook`."""
    monkeypatch.setattr(sys, "argv", ["phasebook", *map(str, arguments)])
    capsys.readouterr()
    with pytest.raises(SystemExit) as left:
        main()
    printed = capsys.readouterr()
    code = left.value.code
    assert isinstance(code, int)
    return subprocess.CompletedProcess(sys.argv, code, printed.out, printed.err)
