"""``schema``: writes a JSON Schema for each kind of content file, made from the one field table."""

from __future__ import annotations

import json
from pathlib import Path

import click

from generator.cli.shared import DONE, print_json
from generator.steps.offers import SCHEMA_FOLDER, schema_file, schemas


@click.command()
@click.option(
    "--output",
    type=click.Path(path_type=Path),
    help=f"Folder to write the schemas to; editors' programs look for them in content/{SCHEMA_FOLDER}.",
)
def schema(output: Path | None) -> int:
    """Print the JSON Schemas of all content files, or write them to a folder."""
    if output is None:
        print_json(dict(schemas()))
        return DONE
    output.mkdir(parents=True, exist_ok=True)
    for path, text in schema_texts(output):
        path.write_text(text, encoding="utf-8", newline="\n")
        click.echo(path)
    return DONE


def schema_texts(folder: Path) -> tuple[tuple[Path, str], ...]:
    """Return the file of each schema in a folder, with the text it should have."""
    return tuple(
        (
            folder / schema_file(kind),
            json.dumps(value, sort_keys=True, ensure_ascii=False, indent=2) + "\n",
        )
        for kind, value in schemas().items()
    )
