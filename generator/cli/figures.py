"""``figures``: draws pictures to look at them beside their words, with a contact sheet of all."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

import click

from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS, ROOT, content_option, print_problems
from generator.pipeline import check_catalogue
from generator.problems import Severity, did_you_mean
from generator.steps.contact_sheet import How, draw_figures, known_items


@click.command()
@click.argument("ids", nargs=-1)
@content_option
@click.option(
    "--output",
    type=click.Path(path_type=Path, file_okay=False),
    default=Path(".phasebook/figures"),
    show_default=True,
    help="Folder for the pictures.",
)
@click.option(
    "--side",
    type=click.Choice(["right", "left"]),
    default="right",
    show_default=True,
    help="The operated side.",
)
@click.option("--moving", is_flag=True, help="Also make the pictures that move.")
@click.option("--workers", type=click.IntRange(1, 64), default=2, show_default=True, help="Processes.")
def figures(ids: tuple[str, ...], content: Path, output: Path, side: str, moving: bool, workers: int) -> int:
    """Draw IDS (exercises with their variations, daily-life items; all if none is named): SVG and PNG."""
    checked = check_catalogue(content)
    if checked.catalogue is None:
        print_problems(checked.problems, checked.sources)
        return PROBLEMS
    known = known_items(checked.catalogue)
    for name in ids:
        if name not in known:
            click.echo(_why_not(name, known, content), err=True)
            return NOT_STARTED
    made = draw_figures(checked.catalogue, ids, output, ROOT, How(side == "left", moving, workers))
    found = [problem for problem in checked.problems if problem.code.startswith(("pose-", "figure-"))]
    print_problems(found, checked.sources)
    click.echo(f"{made.drawn} drawn, {len(made.without)} without a picture yet; look at {made.sheet}")
    return PROBLEMS if any(problem.severity is Severity.ERROR for problem in found) else DONE


def _why_not(name: str, known: Iterable[str], content: Path) -> str:
    file = f"{name.partition('/')[0]}.yml"
    if any((content / folder / file).is_file() for folder in ("exercises", "daily-life")):
        return f"'{name}' cannot be read, so it cannot be drawn; run: check"
    hint = did_you_mean(name, known) or "name an exercise or a daily-life item"
    return f"There is no '{name}' to draw; {hint}"
