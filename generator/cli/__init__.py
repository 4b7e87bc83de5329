"""The command line: one module a command; the only place that prints."""

from __future__ import annotations

import sys

import click

from generator.cli.booklet import booklet
from generator.cli.build import build
from generator.cli.changes import changes
from generator.cli.check import check
from generator.cli.dates import dates
from generator.cli.docs import docs
from generator.cli.editions import editions
from generator.cli.explain import explain
from generator.cli.export import export
from generator.cli.figures import figures
from generator.cli.import_ import import_
from generator.cli.measure import measure
from generator.cli.new import new
from generator.cli.order import order
from generator.cli.preview import preview
from generator.cli.proof import proof
from generator.cli.readability import readability
from generator.cli.review import review
from generator.cli.schema import schema
from generator.cli.shared import NOT_STARTED
from generator.cli.translate import translate
from generator.cli.verify import verify


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
def commands() -> None:
    """Turn one catalogue of exercises into a translated site and printed booklets, phase by phase."""


COMMANDS = (
    booklet,
    build,
    changes,
    check,
    dates,
    docs,
    editions,
    explain,
    export,
    figures,
    import_,
    measure,
    new,
    order,
    preview,
    proof,
    readability,
    review,
    schema,
    translate,
    verify,
)
for command in COMMANDS:
    commands.add_command(command)


def main() -> None:
    """Run the command line and leave with its exit code."""
    try:
        code = commands(standalone_mode=False)
    except click.ClickException as error:
        error.show()
        code = NOT_STARTED
    except click.exceptions.Abort:
        click.echo("Stopped; nothing was published.", err=True)
        code = NOT_STARTED
    sys.exit(code or 0)
