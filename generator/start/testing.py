"""Runs what must hold before a change is published: lint, types and tests, each reported, none hidden."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from pathlib import Path

from generator.start.machine import run
from generator.start.summary import EARLIER

CHECKS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("ruff", ("check", "--output-format", "concise", ".")),
    ("mypy", ()),
)
# A process more than there are cores, since browsers and subprocesses are waited for; four at most, as each
# may hold a browser. A file stays in one process with its fixtures.
SPREAD = ("-n", str(min(4, (os.cpu_count() or 1) + 1)), "--dist", "loadfile")
PYTEST_USAGE_ERROR = 4


def run_tests(
    root: Path, python: Path, arguments: Sequence[str], *, quick: bool, say: Callable[[str], None]
) -> int:
    """Run ruff, mypy and pytest on the project; pytest prints last.

    arguments: passed on to pytest. quick: leave out the tests marked slow.
    Returns 0 when all three are content, 2 when pytest does not understand its arguments, else 1. A run
    without a single test is a failure.
    """
    outcomes = []
    for name, options in CHECKS:
        say(f"{name}:")
        failed = run([python, "-m", name, *options], cwd=root)
        outcomes.append((name, "failed" if failed else "passed"))
    earlier = ", ".join(f"{name} {outcome}" for name, outcome in outcomes)
    say(f"{earlier}; now the tests")
    choice = ["-m", "not slow"] if quick else []
    command: list[str | Path] = [python, "-m", "pytest", "-p", "generator.start.summary", *SPREAD]
    command += [*choice, *arguments]
    code = run(command, cwd=root, env={**os.environ, EARLIER: earlier}, to_stdout=True)
    if code == PYTEST_USAGE_ERROR:
        return 2
    return 1 if code or any(outcome == "failed" for _, outcome in outcomes) else 0
