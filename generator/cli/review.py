"""``review``: says what was read by whom, and adds a reviewer's sign-offs to the ledger."""

from __future__ import annotations

import datetime
import re
from collections import Counter
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import click

from generator.catalogue.editorial import Scope
from generator.catalogue.review import Reviewer
from generator.cli.dates import SurgeryDate
from generator.cli.shared import DONE, PROBLEMS, content_option, format_option, print_json, print_problems
from generator.editing import sign_offs_written
from generator.pipeline import check_catalogue
from generator.problems import Problem, as_text, has_errors
from generator.steps.reviewing import (
    LEDGER,
    Recalled,
    Row,
    Signing,
    recalled_unsigned,
    review_rows,
    sign,
)

_STATES = ("signed", "due", "changed since", "never")


class Month(click.ParamType[datetime.date]):
    """A month as year-month, such as 2028-11."""

    name = "YYYY-MM"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> datetime.date:
        """Return the first day of the month, or fail with what to type."""
        if isinstance(value, datetime.date):
            return value
        if not re.fullmatch(r"[12]\d{3}-(0[1-9]|1[0-2])", value, re.ASCII):
            self.fail(f"'{value}' is no month; type year and month, such as 2028-11", param, ctx)
        return datetime.date.fromisoformat(f"{value}-01")


def _pattern(_: click.Context, param: click.Parameter, value: str | None) -> str | None:
    """Refuse what the ledger could not hold."""
    patterns = {"document": r"[A-Za-z0-9 ./_-]{1,40}", "initials": r"[^\W\d_]{1,6}"}
    if value is not None and not re.fullmatch(patterns[param.name or ""], value):
        raise click.BadParameter(f"'{value}' cannot be written into the ledger; use letters and digits")
    return value


@click.group()
def review() -> None:
    """Keep the record of who, by role, read what and when."""


@review.command("sign")
@click.argument("items", metavar="ITEM...", nargs=-1, required=True)
@click.option("--role", type=click.Choice([role.value for role in Reviewer]), required=True)
@click.option("--language", default="", help="Sign the translation into this language.")
@click.option(
    "--scope",
    type=click.Choice([scope.value for scope in Scope]),
    help="What was read; with --language it is the translation, else the content.",
)
@click.option("--document", callback=_pattern, help="Number in the clinic's own system.")
@click.option("--next", "next_review", type=Month(), help="Month of the next review, such as 2028-11.")
@click.option("--initials", callback=_pattern, help="Initials of the reader.")
@click.option("--date", "day", type=SurgeryDate(), help="Day of reading, if it was not today.")
@content_option
def sign_(
    items: tuple[str, ...],
    role: str,
    language: str,
    scope: str | None,
    document: str | None,
    next_review: datetime.date | None,
    initials: str | None,
    day: datetime.date | None,
    content: Path,
) -> int:
    """Sign each ITEM as it stands now, all or none. A pattern such as 'exercise/*' means all that fit."""
    today = datetime.date.today()
    if day is not None and day > today:
        raise click.BadParameter(f"{day} has not come yet", param_hint="'--date'")
    chosen = Scope(scope) if scope else Scope.LANGUAGE if language else Scope.CONTENT
    extra = (document, next_review, initials)
    return _signed(Signing(items, chosen, language, Reviewer(role), day or today, *extra), content)


def _signed(wanted: Signing, content: Path) -> int:
    checked = check_catalogue(content)
    catalogue = checked.catalogue
    if catalogue is None or any(one.place.path == str(content / LEDGER) for one in _errors(checked.problems)):
        print_problems(_errors(checked.problems), checked.sources)
        return PROBLEMS
    fresh, problems = sign(catalogue, content, wanted, checked.problems)
    if not problems:
        problems = sign_offs_written(content / LEDGER, catalogue.ledger, fresh, checked.sources)
    if problems:
        click.echo("\n".join(as_text(one, checked.sources) for one in problems), err=True)
        click.echo("Nothing was signed.", err=True)
        return PROBLEMS
    for one in fresh:
        click.echo(
            f"{one.item}: {one.scope.value}{f' {one.language}' if one.language else ''}, {one.role.value}"
        )
    click.echo(f"{len(fresh)} signed in {content / LEDGER}.")
    return DONE


def _errors(problems: Sequence[Problem]) -> tuple[Problem, ...]:
    return tuple(one for one in problems if has_errors([one]))


@review.command("status")
@click.option(
    "--evidence", is_flag=True, help="List what was recalled and not signed after reading its source."
)
@click.option("--open", "only_open", is_flag=True, help="Leave out what is signed and not due.")
@content_option
@format_option
def status(evidence: bool, only_open: bool, content: Path, form: str) -> int:
    """Say what is signed, changed since, never read, or due for a new review this month."""
    checked = check_catalogue(content)
    if checked.catalogue is None:
        print_problems(checked.problems, checked.sources, form)
        return PROBLEMS
    rows = review_rows(checked.catalogue, content, datetime.date.today())
    recalled = recalled_unsigned(checked.catalogue) if evidence else ()
    shown = [row for row in rows if not (only_open and row.state == "signed")]
    if evidence:
        shown = [row for row in shown if row.scope == Scope.EVIDENCE.value]
    if form == "json":
        found = {
            "items": [_as_json(row) for row in shown],
            "recalled": [_recalled_json(one) for one in recalled],
        }
        print_json({"format": 1, **found})
    else:
        click.echo("\n".join(_as_lines(shown, recalled, evidence=evidence)))
    return DONE


def _as_lines(rows: Sequence[Row], recalled: Sequence[Recalled], *, evidence: bool) -> list[str]:
    lines = []
    for row in rows:
        scope = f"{row.scope} {row.language}".strip()
        last = f"{row.last.role.value}, {row.last.date}" if row.last else ""
        plan = f", next review {row.next_review:%Y-%m}" if row.next_review else ""
        lines.append(f"{row.state:14} {row.item:52} {scope:12} {last}{plan}".rstrip())
    if evidence:
        lines += ["", "Recalled, not signed after reading the source:"]
        lines += [f"{one.place}: {one.item}: {one.words}" for one in recalled] or ["nothing"]
    counts = Counter(row.state for row in rows)
    lines += ["", ", ".join(f"{counts[state]} {state}" for state in _STATES)]
    return lines


def _as_json(row: Row) -> dict[str, object]:
    return {
        "item": row.item,
        "scope": row.scope,
        "language": row.language or None,
        "state": row.state,
        "path": row.place.path,
        "line": row.place.line,
        "roles": list(row.roles),
        "date": row.last.date.isoformat() if row.last else None,
        "document": row.last.document if row.last else None,
        "next": f"{row.next_review:%Y-%m}" if row.next_review else None,
    }


def _recalled_json(one: Recalled) -> dict[str, object]:
    return {"item": one.item, "path": one.place.path, "line": one.place.line, "what": one.words}
