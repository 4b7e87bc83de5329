"""``new``: writes a new exercise, programme or daily-life item to fill in, or takes up a language."""

from __future__ import annotations

from pathlib import Path

import click

from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS, content_option, print_problems
from generator.editing import change_files, create_file, hashes_as_read, new_file, refused_id, with_item
from generator.pipeline import Checked, check_catalogue
from generator.problems import Problem, as_text
from generator.steps.translating import export_language, file_of

FOLDERS = {"exercise": "exercises", "programme": "programmes", "daily-life": "daily-life"}
# Under which key a phase names what it uses.
_INTO_A_PHASE = {"exercise": "uses", "daily-life": "daily-life"}
LANGUAGE = "language"


@click.command()
@click.argument("kind", type=click.Choice([*FOLDERS, LANGUAGE]))
@click.argument("id_", metavar="ID")
@content_option
def new(kind: str, id_: str, content: Path) -> int:
    """Write a new file with every key, its meaning and an example; one that is there is never touched.

    For a language, ID is its code, such as tr: it joins the clinic's languages, and its texts lie ready to
    be translated.
    """
    if kind == LANGUAGE:
        return _new_language(id_, content)
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
    if kind in _INTO_A_PHASE:
        key = _INTO_A_PHASE[kind]
        click.echo(f"It stands in no booklet before a programme names it in a phase, under '{key}:'.")
    return DONE


def _new_language(code: str, content: Path) -> int:
    checked = check_catalogue(content)
    if checked.catalogue is None:
        print_problems(checked.problems, checked.sources)
        return PROBLEMS
    found = export_language(checked.catalogue, content, code)
    problems = found.problems or _taken_up(code, checked, content)
    if not problems and found.text is not None:
        path = file_of(content, code)
        problems = () if path.exists() else create_file(path, found.text)
    if problems:
        click.echo("\n".join(as_text(problem) for problem in problems), err=True)
        return NOT_STARTED
    click.echo(f"'{code}' is one of the clinic's languages now; its texts are in {file_of(content, code)}.")
    click.echo("It is left out of what is published until its safety texts are translated.")
    return DONE


def _taken_up(code: str, checked: Checked, content: Path) -> tuple[Problem, ...]:
    """Add a language to the clinic's list, once."""
    clinic = checked.catalogue.clinic if checked.catalogue else None
    if clinic is None or code in clinic.languages:
        return ()
    path = content / "clinic.yml"
    edits = {path: lambda text: with_item(text, clinic.at("languages"), code)}
    expected, problems = hashes_as_read(edits, checked.sources)
    return problems or change_files(edits, expected)
