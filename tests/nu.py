"""Asks the Nu HTML checker (validator.github.io, npm vnu-jar) what is wrong with pages."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
from collections.abc import Iterable
from pathlib import Path

import pytest

from generator.start.tools import html_checker

PROJECT = Path(__file__).resolve().parents[1]


def complaints(site: Path, names: Iterable[str]) -> list[tuple[str, int, str]]:
    """Return path, line and message of every error; skip the test where nothing fetched the checker."""
    checker, java = html_checker(PROJECT), shutil.which("java")
    if not (checker.exists() and java):
        if os.environ.get("CI") == "true":
            pytest.fail("the HTML checker or Java is missing")
        pytest.skip("the HTML checker or Java is not installed (phasebook test --install fetches it)")
    done = subprocess.run(
        [java, "-jar", str(checker), "--errors-only", "--format", "json", *(site / name for name in names)],
        capture_output=True,
        text=True,
        check=False,
    )
    messages = json.loads(done.stderr)["messages"]
    return [(m["url"].split("/site/")[-1], m["lastLine"], m["message"]) for m in messages]
