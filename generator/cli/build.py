"""``build``: makes the site and the booklets and publishes them in one swap, or says why not."""

from __future__ import annotations

import os
from pathlib import Path

import click

from generator.cli.shared import (
    DONE,
    NOT_STARTED,
    PROBLEMS,
    ROOT,
    WITHHELD,
    content_option,
    format_option,
    print_problems,
)
from generator.pipeline import Outcome, Request, build_site
from generator.steps.kinds import Kinds


@click.command()
@content_option
@click.option(
    "--output",
    type=click.Path(path_type=Path),
    default=Path("site"),
    show_default=True,
    help="Folder that is served.",
)
@click.option("--workers", type=click.IntRange(1, 64), default=None, help="Processes at a time.")
@click.option(
    "--kinds",
    type=click.Choice([kinds.value for kinds in Kinds]),
    default=Kinds.USUAL.value,
    show_default=True,
    help="Of booklets: standard alone; usual, with session sheets, and large print and pocket in the source"
    " language; or all in every language.",
)
@click.option("--anew", is_flag=True, help="Make everything again, whatever is kept of earlier builds.")
@click.option("--explain", is_flag=True, help="List what was made anew; the rest is as it was.")
@format_option
def build(
    content: Path, output: Path, workers: int | None, kinds: str, anew: bool, explain: bool, form: str
) -> int:
    """Make the site and the booklets from the catalogue."""
    cores = workers or os.cpu_count() or 1
    request = Request(content, output, ROOT, ROOT / ".phasebook", cores, Kinds(kinds), anew)
    outcome = build_site(request, lambda words: click.echo(words, err=True))
    print_problems(outcome.problems, outcome.sources, form)
    if explain:
        click.echo(explanation(outcome), err=form == "json")
    click.echo(summary(outcome, output), err=form == "json")
    return exit_code(outcome)


def summary(outcome: Outcome, output: Path) -> str:
    """Say in a sentence what came of a build."""
    if not outcome.published:
        kept = "the site in it is as it was" if output.exists() else "nothing was written"
        return f"Not published to {output}: {kept}."
    made = f"{outcome.page_count} pages, {outcome.booklet_count} booklets with {outcome.sheet_count} sheets"
    without = f", without {', '.join(outcome.withheld)}" if outcome.withheld else ""
    return f"Published to {output}{without}: {made}."


def explanation(outcome: Outcome) -> str:
    """List what was made anew, a line each."""
    if not outcome.anew:
        return "Nothing was made anew."
    return "\n".join(("Made anew:", *(f"  {name}" for name in outcome.anew)))


def exit_code(outcome: Outcome) -> int:
    """Return the pinned exit code of an outcome."""
    if outcome.refused:
        return NOT_STARTED
    if not outcome.published:
        return PROBLEMS
    return WITHHELD if outcome.withheld else DONE
