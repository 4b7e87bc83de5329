"""``export``: hands the site on in another form."""

from __future__ import annotations

from pathlib import Path

import click

from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS, ROOT, content_option, print_problems
from generator.pipeline import Request
from generator.pipeline import export_pages as write_all
from generator.problems import has_errors
from generator.steps import handing_on
from generator.steps.stick import archive_of, why_not, write_stick


@click.group()
def export() -> None:
    """Hand the site on in another form."""


@export.command()
@click.option(
    "--site",
    type=click.Path(path_type=Path),
    default=Path("site"),
    show_default=True,
    help="A finished site.",
)
@click.option(
    "--output",
    type=click.Path(path_type=Path),
    default=Path("stick"),
    show_default=True,
    help="Folder to write; the same is packed into a file of this name with .zip.",
)
def stick(site: Path, output: Path) -> int:
    """Write the site so that it opens from a folder or a stick, search included, without any server."""
    if wrong := why_not(site, output):
        click.echo(f"Not written: {wrong}.", err=True)
        return NOT_STARTED
    made = write_stick(site, output, ROOT / "site_assets")
    if made.problems:
        print_problems(made.problems, {})
        click.echo(f"Not written: {site} is not whole; build it again.", err=True)
        return PROBLEMS
    click.echo(
        f"Written: {output} and {archive_of(output)}, {made.files} files, {made.size / 1_000_000:.1f} MB."
        f" Open {output / 'index.html'} in a browser."
    )
    return DONE


@export.command()
@content_option
@click.argument("output", type=click.Path(path_type=Path))
def pages(content: Path, output: Path) -> int:
    """Write the pages before they are built, with settings and frame, for another builder of sites."""
    if wrong := handing_on.why_not(output):
        click.echo(f"Not written: {wrong}.", err=True)
        return NOT_STARTED
    configs, outcome = write_all(Request(content, output, ROOT, ROOT / ".phasebook"))
    if has_errors(outcome.problems):
        print_problems(outcome.problems, outcome.sources)
        return NOT_STARTED if outcome.refused else PROBLEMS
    first = configs[0].relative_to(output).as_posix()
    click.echo(
        f"Written: {output}, {len(configs)} languages. In that folder, 'mkdocs build -f {first}' builds one."
    )
    return DONE
