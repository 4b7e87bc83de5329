"""``new``: writes a new exercise, programme or daily-life item for an editor to fill in."""

from __future__ import annotations

from pathlib import Path

import click

from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS, content_option, print_problems
from generator.editing import create_file, new_file, refused_id
from generator.pipeline import check_catalogue
from generator.problems import as_text

FOLDERS = {"exercise": "exercises", "programme": "programmes", "daily-life": "daily-life"}


@click.command()
@click.argument("kind", type=click.Choice(list(FOLDERS)))
@click.argument("id_", metavar="ID")
@content_option
def new(kind: str, id_: str, content: Path) -> int:
    """Write a new file with every key, its meaning and an example; one that is there is never touched."""
    path = content / FOLDERS[kind] / f"{id_}.yml"
    refused = refused_id(id_, path)
    if refused:
        click.echo(as_text(refused), err=True)
        return NOT_STARTED
    checked = check_catalogue(content)
    if checked.catalogue is None:
        print_problems(checked.problems, checked.sources)
        return PROBLEMS
    problems = create_file(path, new_file(FOLDERS[kind], checked.catalogue))
    if problems:
        click.echo("\n".join(as_text(problem) for problem in problems), err=True)
        return NOT_STARTED
    click.echo(f"{path} is written. Replace its examples, then run: check --content {content}")
    return DONE
