"""``verify``: says whether a served folder is what was built, and names each file that is not."""

from __future__ import annotations

from pathlib import Path

import click

from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS, format_option, print_problems
from generator.steps.offers import verify as differences


@click.command()
@click.argument("site", type=click.Path(path_type=Path))
@format_option
def verify(site: Path, form: str) -> int:
    """Compare the folder SITE with its own list of files: changed, missing and extra ones are named."""
    if not site.is_dir():
        click.echo(f"There is no folder {site}; name the folder that the web server serves.", err=True)
        return NOT_STARTED
    problems = differences(site)
    print_problems(problems, {}, form)
    return PROBLEMS if problems else DONE
