"""``proof``: shows the sheets of freshly printed booklets side by side, for a person to look at."""

from __future__ import annotations

from pathlib import Path

import click

from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS, ROOT, content_option, print_problems
from generator.pipeline import check_catalogue
from generator.problems import has_errors, offered
from generator.steps.kinds import FOLD, KINDS
from generator.steps.languages import speak
from generator.steps.proof import Wanted, proof_sheets


@click.command()
@click.argument("programme", required=False)
@click.option("--language", help="Only this language; else all of the clinic's.")
@click.option("--phase", type=click.IntRange(1, 12), help="Only this phase.")
@click.option("--kind", type=click.Choice((*KINDS, FOLD)), help="Only this kind of booklet.")
@click.option(
    "--output",
    type=click.Path(path_type=Path, file_okay=False),
    default=Path(".phasebook/proof"),
    show_default=True,
    help="Folder for the pictures.",
)
@click.option("--workers", type=click.IntRange(1, 64), default=2, show_default=True, help="Processes.")
@content_option
def proof(
    programme: str | None,
    language: str | None,
    phase: int | None,
    kind: str | None,
    output: Path,
    workers: int,
    content: Path,
) -> int:
    """Print the booklets (of PROGRAMME) as pictures, sheets side by side, as a build would publish them."""
    checked = check_catalogue(content)
    if (catalogue := checked.sound) is None:
        print_problems(checked.problems, checked.sources)
        return PROBLEMS
    known = catalogue.programmes
    if programme is not None and programme not in known:
        click.echo(f"There is no programme '{programme}'; {offered(programme, known)}", err=True)
        return NOT_STARTED
    spoken, found = speak(catalogue, content, unsigned=True)
    if not spoken:
        print_problems(found, checked.sources)
        return PROBLEMS
    if language is not None and language not in {one.voice.code for one in spoken}:
        hint = offered(language, (one.voice.code for one in spoken))
        click.echo(f"There is no language '{language}' to look at; {hint}", err=True)
        return NOT_STARTED
    wanted = Wanted(phase, kind, programme, language, workers)
    made = proof_sheets(spoken, checked.orders, wanted, ROOT / "site_assets", output)
    if not made.pictures:
        click.echo("No booklet is of this phase and kind; leave one of them out.", err=True)
        return NOT_STARTED
    print_problems(made.problems, checked.sources)
    click.echo(f"{len(made.pictures)} pictures; look at {output}")
    return PROBLEMS if has_errors(made.problems) else DONE
