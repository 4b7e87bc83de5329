"""``check``: reads the catalogue and says everything that is wrong with it; nothing is built."""

from __future__ import annotations

from pathlib import Path

import click

from generator.cli.shared import DONE, PROBLEMS, content_option, format_option, print_problems
from generator.pipeline import check_languages
from generator.problems import has_errors


@click.command()
@content_option
@click.option("--notes", is_flag=True, help="Print the notes too, about which nothing need be done.")
@format_option
def check(content: Path, notes: bool, form: str) -> int:
    """Check the catalogue and its translations, and print what is wrong, where, and what to do."""
    checked = check_languages(content)
    print_problems(checked.problems, checked.sources, form, notes=notes)
    return PROBLEMS if has_errors(checked.problems) else DONE
