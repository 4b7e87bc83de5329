"""``import measurements``: brings a table of published values into the exercises, all rows or none."""

from __future__ import annotations

from pathlib import Path

import click

from generator.cli.shared import DONE, PROBLEMS, content_option, print_problems
from generator.editing import change_files, edits_of, hashes_as_read, new_rows, rows_of
from generator.editing.measurements import MOST_BYTES
from generator.editing.rules import BAD_TABLE
from generator.pipeline import check_catalogue
from generator.problems import Place, Problem


@click.group("import")
def import_() -> None:
    """Bring values from tables into the content."""


@import_.command("measurements")
@click.argument("table", type=click.Path(path_type=Path))
@content_option
@click.option(
    "--load", default="", help="Condition of load of rows that name none, such as 'weight of the leg'."
)
def measurements(table: Path, content: Path, load: str) -> int:
    """Bring the rows of TABLE (CSV) into the exercises; where one row fits nowhere nothing is written."""
    checked = check_catalogue(content)
    text = _text_of(table)
    if (catalogue := checked.sound) is None or isinstance(text, Problem):
        found = (text,) if isinstance(text, Problem) else checked.problems
        print_problems(found, checked.sources)
        return PROBLEMS
    sources = {**checked.sources, str(table): text.splitlines()}
    rows, problems = rows_of(text, str(table), catalogue, load)
    if problems:
        print_problems(problems, sources)
        return PROBLEMS
    fresh = new_rows(rows)
    edits = edits_of(fresh)
    expected, problems = hashes_as_read(edits, checked.sources)
    problems = problems or change_files(edits, expected)
    if problems:
        print_problems(problems, sources)
        return PROBLEMS
    click.echo(f"{len(fresh)} values written, {len(rows) - len(fresh)} were there already. Now run: check")
    return DONE


def _text_of(table: Path) -> str | Problem:
    if table.exists() and not table.is_file():
        return BAD_TABLE.at(Place(str(table)), "the table is no ordinary file")
    try:
        with table.open("rb") as file:
            data = file.read(MOST_BYTES + 1)
        if len(data) > MOST_BYTES:
            message = f"the table has more than {MOST_BYTES // 1_000_000} MB"
            return BAD_TABLE.at(Place(str(table)), message)
        return data.decode("utf-8-sig")
    except OSError as error:
        return BAD_TABLE.at(Place(str(table)), f"the table cannot be opened ({error.strerror})")
    except UnicodeDecodeError:
        return BAD_TABLE.at(Place(str(table)), "the table is not in UTF-8")
