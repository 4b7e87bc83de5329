"""``changes``: says what differs between two states of the content, and which paper must come back."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

import click

from generator.catalogue.editions import KnownPaper, Standing, Urgency
from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS, content_option, print_json, print_problems
from generator.pipeline import check_catalogue
from generator.problems import Problem, has_errors
from generator.steps.changes import Report, Row, State, compare, state_of
from generator.steps.states import state_folder

AUDIENCES = ("patients", "translators", "reviewers")
Part = tuple[str, tuple[str, ...]]
"""A heading with its lines."""


@click.command()
@click.argument("old", default="HEAD")
@click.argument("new", default="")
@click.option("--for", "audience", type=click.Choice(AUDIENCES), default="reviewers", show_default=True)
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "markdown", "json"]),
    default="text",
    show_default=True,
)
@content_option
def changes(old: str, new: str, audience: str, form: str, content: Path) -> int:
    """Compare OLD with NEW, each a folder with content or a revision of the content's history.

    Left out, they are what was last committed (HEAD) and the content as it lies there now. How urgently
    paper is called back is common practice without a source; a clinician decides.
    """
    new = new or str(content)
    with tempfile.TemporaryDirectory() as folder:
        states: list[State] = []
        for number, named in enumerate((old, new)):
            fresh = Path(folder) / str(number)
            fresh.mkdir()
            found = state_folder(named, content, fresh)
            if isinstance(found, Problem):
                print_problems((found,), {})
                return NOT_STARTED
            checked = check_catalogue(found)
            if (catalogue := checked.sound) is None:
                errors = [one for one in checked.problems if has_errors([one])]
                print_problems(errors, checked.sources)
                click.echo(f"'{named}' cannot be compared before this is mended.", err=True)
                return PROBLEMS
            states.append(state_of(catalogue, checked.orders, checked.ledger, found))
        report = compare(*states)
    if form == "json":
        print_json(as_json(report, old, new))
        return DONE
    parts = tuple(_parts(report, audience))
    title = f"Changes from {old} to {new}, for {audience}"
    click.echo(_markdown(title, parts) if form == "markdown" else _text(title, parts))
    return DONE


def _parts(report: Report, audience: str) -> Iterator[Part]:
    if audience == "translators":
        yield from _for_translators(report)
        return
    phases = dict.fromkeys((row.programme, row.phase) for row in report.rows)
    for programme, phase in phases:
        rows = [row for row in report.rows if (row.programme, row.phase) == (programme, phase)]
        lines = [_patient_line(row) for row in rows] if audience == "patients" else list(_lines(rows))
        yield f"{programme}, phase {phase}", tuple(lines)
    if audience == "reviewers":
        yield "Evidence", tuple(f"{item}: {words}" for item, words in report.evidence)
        yield "Sentences", tuple(_sentences(report))
    yield "Booklets on paper", tuple(_paper(report.booklets))


def _patient_line(row: Row) -> str:
    return f"[{row.change.urgency.value}] {row.words}"


def _lines(rows: Sequence[Row]) -> Iterator[str]:
    for row in rows:
        before, after = row.change.before or "nothing", row.change.after or "nothing"
        states = f": {before} -> {after}" if row.change.before or row.change.after else ""
        yield f"[{row.kind}; {row.change.urgency.value}] {row.words}{states}"
        yield from (f"  because {cause}" for cause in row.because)


def _for_translators(report: Report) -> Iterator[Part]:
    languages = ", ".join(report.languages) or "none"
    lines = tuple(_sentences(report))
    yield f"To translate into: {languages}", lines


def _sentences(report: Report) -> Iterator[str]:
    for one in report.sentences:
        yield one.context
        yield from (f"  was: {words}" for words in one.before)
        yield from (f"  now: {words}" for words in one.after)


def _paper(booklets: Sequence[KnownPaper]) -> Iterator[str]:
    for urgency in Urgency:
        for one in booklets:
            if one.urgency is urgency:
                yield f"{urgency.value}: {_booklet(one)}"
    if not booklets:
        yield "no booklet was recorded, so nobody knows what is out; record with: editions record"


def _booklet(one: KnownPaper) -> str:
    phase = "protocol" if one.phase is None else f"phase {one.phase}"
    count = len(one.changes)
    differs = {
        Standing.CURRENT: "says the same",
        Standing.SAME_TO_DO: "says the same",
        Standing.GONE: "is no longer in use",
        Standing.CHANGED: f"{count} change{'' if count == 1 else 's'}"
        if one.phase
        else "a protocol; compare it",
    }[one.standing]
    return f"{one.code} {one.programme} {phase}, {one.language}, recorded {one.recorded}: {differs}"


def _text(title: str, parts: Sequence[Part]) -> str:
    lines = [title]
    for heading, found in parts:
        lines += ["", heading, *(f"  {line}" for line in found or ("nothing changed",))]
    return "\n".join(lines if parts else [*lines, "", "Nothing changed."])


def _markdown(title: str, parts: Sequence[Part]) -> str:
    lines = [f"# {_escaped(title)}"]
    for heading, found in parts:
        lines += ["", f"## {_escaped(heading)}", ""]
        for line in found or ("nothing changed",):
            lines.append(f"{'  ' if line.startswith(' ') else ''}- {_escaped(line.strip())}")
    return "\n".join(lines)


def _escaped(words: str) -> str:
    """Return words in which nothing can be taken for Markdown (CommonMark's backslash escapes)."""
    return "".join(f"\\{char}" if char in "\\`*_[]<>#" else char for char in words)


def as_json(report: Report, old: str, new: str) -> dict[str, Any]:
    """Return the report as it is pinned: ``"format": 1``."""
    return {
        "format": 1,
        "old": old,
        "new": new,
        "changes": [_row_json(row) for row in report.rows],
        "evidence": [{"item": item, "words": words} for item, words in report.evidence],
        "sentences": [
            {"context": one.context, "before": list(one.before), "after": list(one.after)}
            for one in report.sentences
        ],
        "languages": list(report.languages),
        "booklets": [_booklet_json(one) for one in report.booklets],
    }


def _row_json(row: Row) -> dict[str, Any]:
    return {
        "programme": row.programme,
        "phase": row.phase,
        "kind": row.kind,
        "what": row.change.kind.value,
        "item": row.change.item,
        "form": row.change.form,
        "words": row.words,
        "before": row.change.before,
        "after": row.change.after,
        "urgency": row.change.urgency.value,
        "because": list(row.because),
    }


def _booklet_json(one: KnownPaper) -> dict[str, Any]:
    return {
        "code": one.code,
        "programme": one.programme,
        "phase": one.phase,
        "language": one.language,
        "recorded": one.recorded.isoformat() if one.recorded else None,
        "standing": one.standing.value,
        "urgency": one.urgency.value,
        "changes": [change.kind.value for change in one.changes],
    }
