"""``schema``: writes a JSON Schema for each kind of content file, made from the one field table."""

from __future__ import annotations

import json
from pathlib import Path

import click

from generator.cli.shared import DONE, print_json
from generator.steps.offers import schemas


@click.command()
@click.option("--output", type=click.Path(path_type=Path), help="Folder to write the schemas to.")
def schema(output: Path | None) -> int:
    """Print the JSON Schemas of all content files, or write them to a folder."""
    found = schemas()
    if output is None:
        print_json(dict(found))
        return DONE
    output.mkdir(parents=True, exist_ok=True)
    for name, value in found.items():
        path = output / f"{name.removesuffix('.yml')}.schema.json"
        text = json.dumps(value, sort_keys=True, ensure_ascii=False, indent=2)
        path.write_text(f"{text}\n", encoding="utf-8", newline="\n")
        click.echo(path)
    return DONE
