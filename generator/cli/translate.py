"""``translate``: takes texts out to translators, brings them back, and says how far each language is."""

from __future__ import annotations

from pathlib import Path

import click

from generator.cli.shared import (
    DONE,
    PROBLEMS,
    content_option,
    format_option,
    print_json,
    print_problems,
)
from generator.editing import write_text
from generator.pipeline import check_catalogue
from generator.problems import Problem, as_text
from generator.steps.translating import Progress, export_language, file_of, import_language, progress


@click.group()
def translate() -> None:
    """Exchange texts with translators."""


@translate.command("export")
@click.argument("language")
@content_option
def export(language: str, content: Path) -> int:
    """Write or renew the file of LANGUAGE: new texts empty, changed ones marked, nothing lost."""
    checked = check_catalogue(content)
    if (catalogue := checked.sound) is None:
        print_problems(checked.problems, checked.sources)
        return PROBLEMS
    found = export_language(catalogue, content, language)
    if found.text is None:
        return _refused(found.problems)
    path = file_of(content, language)
    if problems := write_text(path, found.text):
        return _refused(problems)
    whole = progress(catalogue, content, language)[0]
    click.echo(f"{path} is written: {_counts(whole)}. Open it with a PO editor.")
    return DONE


@translate.command("import")
@click.argument("language")
@click.argument("file", type=click.Path(path_type=Path))
@content_option
def import_(language: str, file: Path, content: Path) -> int:
    """Bring the translations in FILE into the file of LANGUAGE, all of them or none."""
    checked = check_catalogue(content)
    if (catalogue := checked.sound) is None:
        print_problems(checked.problems, checked.sources)
        return PROBLEMS
    found = import_language(catalogue, content, language, file)
    if found.text is None:
        return _refused(found.problems)
    path = file_of(content, language)
    if problems := write_text(path, found.text):
        return _refused(problems)
    whole = progress(catalogue, content, language)[0]
    entries = "1 entry" if found.changed == 1 else f"{found.changed} entries"
    click.echo(f"{entries} changed in {path}: {_counts(whole)}. Now run: check")
    return DONE


@translate.command("status")
@click.argument("language", required=False)
@content_option
@format_option
def status(language: str | None, content: Path, form: str) -> int:
    """Say what is translated, outdated and missing, for all languages of the clinic or one."""
    checked = check_catalogue(content)
    if (catalogue := checked.sound) is None:
        print_problems(checked.problems, checked.sources, form)
        return PROBLEMS
    listed = (language,) if language else catalogue.clinic.languages
    found = {code: progress(catalogue, content, code) for code in listed if code != catalogue.source_language}
    if form == "json":
        print_json({"format": 1, "languages": {code: _as_json(parts) for code, parts in found.items()}})
    else:
        click.echo("\n".join(line for code, parts in found.items() for line in _as_lines(code, parts)))
    return DONE


def _refused(problems: tuple[Problem, ...]) -> int:
    click.echo("\n".join(as_text(problem) for problem in problems), err=True)
    click.echo("Nothing was written.", err=True)
    return PROBLEMS


def _counts(part: Progress) -> str:
    return f"{part.translated} translated, {part.outdated} outdated, {part.missing} missing"


def _as_lines(code: str, parts: tuple[Progress, ...]) -> list[str]:
    lines = [f"{code:38} {'translated':>10} {'outdated':>9} {'missing':>8} {'signed':>7}"]
    for part in parts:
        mark = " " if part.complete else "!"
        signed = "-" if part.signed is None else part.signed
        counts = f"{part.translated:10} {part.outdated:9} {part.missing:8} {signed:>7}"
        lines.append(f"{mark} {part.part:36} {counts}")
    return lines


def _as_json(parts: tuple[Progress, ...]) -> list[dict[str, object]]:
    return [
        {
            "part": part.part,
            "translated": part.translated,
            "outdated": part.outdated,
            "missing": part.missing,
            "signed": part.signed,
        }
        for part in parts
    ]
