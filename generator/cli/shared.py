"""Keeps what every command has in common: its options, how findings are printed, what the exit codes mean."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any, TypeVar

import click

from generator.problems import Problem, Severity, as_json, as_text

DONE = 0
PROBLEMS = 1
NOT_STARTED = 2
WITHHELD = 3

ROOT = Path(__file__).resolve().parents[2]
Command = TypeVar("Command", bound=Callable[..., Any])


def content_option(command: Command) -> Command:
    """Add ``--content DIR``."""
    return click.option(
        "--content",
        type=click.Path(path_type=Path),
        default=Path("content"),
        show_default=True,
        help="Folder with the catalogue.",
    )(command)


def format_option(command: Command) -> Command:
    """Add ``--format text|json``."""
    return click.option(
        "--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True
    )(command)


def print_json(value: Any) -> None:
    """Print JSON as it is pinned: sorted keys, UTF-8."""
    click.echo(json.dumps(value, sort_keys=True, ensure_ascii=False, indent=2))


def print_problems(
    problems: Iterable[Problem],
    sources: Mapping[str, Sequence[str]],
    form: str = "text",
    *,
    notes: bool = False,
) -> None:
    """Print findings, then how many there are of each weight.

    notes: whether notes, of which nobody need do anything, are printed or only counted.
    """
    found = tuple(problems)
    if form == "json":
        print_json({"format": 1, "problems": [as_json(problem) for problem in found]})
        return
    hidden = not notes and any(problem.severity is Severity.NOTE for problem in found)
    for problem in found:
        if notes or problem.severity is not Severity.NOTE:
            click.echo(as_text(problem, sources))
    click.echo(count_words(found) + (" (to read the notes: check --notes)" if hidden else ""))


def count_words(problems: Sequence[Problem]) -> str:
    """Return ``2 errors, 1 warning``, or that nothing was found."""
    parts = []
    for severity in Severity:
        count = sum(problem.severity is severity for problem in problems)
        if count:
            parts.append(f"{count} {severity.value}{'s' if count > 1 else ''}")
    return ", ".join(parts) if parts else "no problems"
