"""``dates``: says before which calendar days nothing may begin, on both tracks; never that it does begin."""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterable
from pathlib import Path
from typing import Any

import click

from generator.catalogue.arranged import NotBefore
from generator.catalogue.programme import Programme
from generator.catalogue.surgery import why_not
from generator.catalogue.values import Catalogue
from generator.cli.shared import (
    DONE,
    NOT_STARTED,
    PROBLEMS,
    content_option,
    format_option,
    print_json,
    print_problems,
)
from generator.pipeline import check_catalogue
from generator.problems import offered
from generator.steps.calendar import first_days


class SurgeryDate(click.ParamType[datetime.date]):
    """A calendar date as year-month-day and in no other notation: 03/04/2028 is two days in two countries."""

    name = "YYYY-MM-DD"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> datetime.date:
        """Return the date, or fail with what to type."""
        if isinstance(value, datetime.date):
            return value
        if not re.fullmatch(r"\d{4}-\d{2}-\d{2}", value, re.ASCII):
            self.fail(f"'{value}' is no date; type year, month and day, such as 2028-02-29", param, ctx)
        try:
            return datetime.date.fromisoformat(value)
        except ValueError:
            return self.fail(f"there is no day {value}; check month and day", param, ctx)


@click.command()
@click.argument("programme")
@click.option("--surgery-date", type=SurgeryDate(), required=True, help="Day of the operation: day 0.")
@click.option(
    "--delayed-from",
    type=click.IntRange(1, 12),
    metavar="PHASE",
    default=1,
    show_default=True,
    help="Phase with which the delay begins.",
)
@content_option
@format_option
def dates(programme: str, surgery_date: datetime.date, delayed_from: int, content: Path, form: str) -> int:
    """Print the days before which no phase of PROGRAMME, and no late exercise, may begin."""
    if wrong := why_not(surgery_date, datetime.date.today()):
        raise click.BadParameter(wrong, param_hint="'--surgery-date'")
    checked = check_catalogue(content)
    if (catalogue := checked.sound) is None:
        print_problems(checked.problems, checked.sources, form)
        return PROBLEMS
    chosen = catalogue.programmes.get(programme)
    if chosen is None:
        hint = offered(programme, catalogue.programmes)
        click.echo(f"There is no programme '{programme}'; {hint}", err=True)
        return NOT_STARTED
    try:
        found = first_days(chosen, surgery_date, delayed_from)
    except ValueError as error:
        raise click.BadParameter(str(error), param_hint="'--delayed-from'") from error
    if form == "json":
        print_json(_as_json(catalogue, chosen, surgery_date, delayed_from, found))
    else:
        click.echo(_as_text(catalogue, chosen, surgery_date, delayed_from, found))
    return DONE


def _as_text(
    catalogue: Catalogue,
    programme: Programme,
    surgery: datetime.date,
    delayed_from: int,
    found: Iterable[NotBefore],
) -> str:
    lines = [
        f"{programme.name}; operation on {surgery} (day 0); delay counted from phase {delayed_from} on.",
        "Not before these days; the date alone moves nobody on.",
        "",
        f"{'not before':12}{'if delayed':12}",
    ]
    for item in found:
        name = str(programme.phase(item.phase).name)
        what = f"  {item.exercise}" if item.exercise else f"phase {item.phase}: {name}"
        lines.append(f"{item.usual!s:12}{item.delayed!s:12}{what}")
    return "\n".join((*lines, "", str(catalogue.safety.stay)))


def _as_json(
    catalogue: Catalogue,
    programme: Programme,
    surgery: datetime.date,
    delayed_from: int,
    found: Iterable[NotBefore],
) -> dict[str, Any]:
    return {
        "format": 1,
        "programme": programme.id,
        "surgery_date": surgery.isoformat(),
        "delayed_from": delayed_from,
        "stay": str(catalogue.safety.stay),
        "not_before": [
            {
                "phase": item.phase,
                "exercise": item.exercise,
                "week": item.week,
                "delayed_week": item.delayed_week,
                "usual": item.usual.isoformat(),
                "delayed": item.delayed.isoformat(),
            }
            for item in found
        ],
    }
