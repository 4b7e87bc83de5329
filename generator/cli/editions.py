"""``editions``: keeps every booklet that goes out, byte for byte, and hands it back by its code."""

from __future__ import annotations

import datetime
import hashlib
import os
from collections.abc import Mapping, Sequence
from pathlib import Path

import click

from generator.catalogue.editions import Edition, EditionLedger
from generator.cli.shared import (
    DONE,
    NOT_STARTED,
    PROBLEMS,
    ROOT,
    content_option,
    format_option,
    print_json,
    print_problems,
)
from generator.editing import kept_file, write_bytes
from generator.pipeline import Request, record_editions
from generator.problems import Problem, has_errors
from generator.steps.editions import Recording, checked_ledger, sources_of, typed_code
from generator.steps.kinds import Kinds

archive_option = click.option(
    "--archive",
    type=click.Path(path_type=Path),
    default=Path(".editions"),
    show_default=True,
    help="Folder in which the files are kept; copy it along with the content.",
)


@click.group()
def editions() -> None:
    """Keep every booklet that goes out, and hand it back by its code."""


@editions.command("record")
@click.option("--date", "day", metavar="YYYY-MM-DD", help="Day of recording; today where it is left out.")
@content_option
@click.option(
    "--output",
    type=click.Path(path_type=Path),
    default=Path("site"),
    show_default=True,
    help="The published site, to see whether it holds what was recorded.",
)
@archive_option
@click.option("--workers", type=click.IntRange(1, 64), default=None, help="Processes at a time.")
@click.option(
    "--kinds",
    type=click.Choice([kinds.value for kinds in Kinds]),
    default=Kinds.USUAL.value,
    show_default=True,
    help="Of booklets, as for build.",
)
def record(
    day: str | None, content: Path, output: Path, archive: Path, workers: int | None, kinds: str
) -> int:
    """Record every booklet that this content makes, each with its day printed on it.

    Run build afterwards: it then publishes exactly the files that were kept.
    """
    try:
        chosen = datetime.date.fromisoformat(day) if day else datetime.date.today()
    except ValueError:
        click.echo(f"'{day}' is no day; write it as 2026-11-25", err=True)
        return NOT_STARTED
    cores = workers or os.cpu_count() or 1
    request = Request(content, output, ROOT, ROOT / ".phasebook", cores, Kinds(kinds))
    found, sources = record_editions(request, archive, chosen, lambda words: click.echo(words, err=True))
    if has_errors(found.problems):
        print_problems(found.problems, sources)
        click.echo("Nothing was recorded.")
        return NOT_STARTED if found.refused else PROBLEMS
    click.echo("\n".join(_said(found, archive, output)))
    return DONE


def _said(found: Recording, archive: Path, output: Path) -> list[str]:
    if not found.fresh:
        return [f"Nothing is new: all {found.known} files were recorded before."]
    lines = [f"Recorded {len(found.fresh)} editions; their files are in {archive}: {', '.join(found.fresh)}"]
    if found.known:
        lines.append(f"{found.known} files were kept before; {found.same} came out byte for byte the same.")
    published = sum(_digest(output / path) == digest for path, digest in (found.kept or {}).items())
    total = len(found.kept or {})
    lines.append(
        f"{output} holds all of them."
        if published == total
        else f"{output} holds {published} of these {total} files as they were recorded. Now run: build"
    )
    return lines


def _digest(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest() if path.is_file() else ""


@editions.command("show")
@click.argument("code")
@click.option("--output", type=click.Path(path_type=Path), help="Where to write the file.")
@click.option("--kind", help="Which kind, where several have this code: standard, large, pocket ...")
@content_option
@archive_option
def show(code: str, output: Path | None, kind: str | None, content: Path, archive: Path) -> int:
    """Say what the edition CODE is, and write its file as it was handed out."""
    ledger, sources = _ledger(content)
    if ledger is None:
        return PROBLEMS
    typed = typed_code(code, ledger)
    if isinstance(typed, Problem):
        print_problems((typed,), sources)
        return PROBLEMS
    edition, sheets = ledger.of(typed) or (None, ())
    chosen = [one for one in sheets if kind in (None, one.kind)]
    if edition is None or not chosen:
        click.echo(
            f"'{typed}' has no kind '{kind}'; it has: {', '.join(one.kind for one in sheets)}", err=True
        )
        return NOT_STARTED
    data = kept_file(archive, chosen[0].pdf)
    problems: tuple[Problem, ...] = (data,) if isinstance(data, Problem) else ()
    if isinstance(data, bytes) and output is not None:
        problems = write_bytes(output, data)
    if problems:
        print_problems(problems, sources)
        return PROBLEMS
    said = f"{_line(edition)}, {chosen[0].kind}, recorded {edition.recorded}"
    click.echo(f"{typed}: {said}; the file is as it was recorded")
    click.echo(f"Written: {output}" if output else "Write it with: --output FILE.pdf")
    return DONE


@editions.command("list")
@content_option
@format_option
def list_(content: Path, form: str) -> int:
    """List every recorded edition, the oldest first."""
    ledger, _ = _ledger(content, form)
    if ledger is None:
        return PROBLEMS
    if form == "json":
        print_json({"format": 1, "editions": [_json(one) for one in ledger.editions]})
        return DONE
    for one in ledger.editions:
        for sheet in one.sheets:
            click.echo(f"{sheet.code}  {one.recorded}  {_line(one)}, {sheet.kind}")
    if not ledger.editions:
        click.echo("Nothing was recorded yet. Record what goes out with: editions record")
    return DONE


def _ledger(content: Path, form: str = "text") -> tuple[EditionLedger | None, Mapping[str, Sequence[str]]]:
    read = checked_ledger(content)
    sources = sources_of(content, read)
    if has_errors(read.problems):
        print_problems(read.problems, sources, form)
        return None, sources
    return read.ledger, sources


def _line(edition: Edition) -> str:
    phase = "protocol" if edition.phase is None else f"phase {edition.phase}"
    return f"{edition.programme} {phase}, {edition.language}"


def _json(edition: Edition) -> dict[str, object]:
    return {
        "recorded": edition.recorded.isoformat(),
        "programme": edition.programme,
        "phase": edition.phase,
        "language": edition.language,
        "fingerprint": edition.fingerprint,
        "sheets": [{"code": one.code, "kind": one.kind, "pdf": one.pdf} for one in edition.sheets],
    }
