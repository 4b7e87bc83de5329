"""``measure``: prints what a build costs beside plain MkDocs and plain WeasyPrint on the same pages."""

from __future__ import annotations

from pathlib import Path

import click

from generator.cli.shared import (
    PROBLEMS,
    ROOT,
    content_option,
    format_option,
    print_problems,
)
from generator.cli.trials import again_values, say, show, show_fuzz, show_growth, show_kills
from generator.pipeline import check_catalogue
from generator.steps.many import seconds_to_order
from generator.steps.measure import Cost, Measured, measure_figures
from generator.steps.measure import measure as run


class Sizes(click.ParamType[tuple[int, ...]]):
    """Whole numbers with commas between them, each greater than the one before."""

    name = "sizes"

    def convert(
        self, value: object, param: click.Parameter | None, ctx: click.Context | None
    ) -> tuple[int, ...]:
        """Return the numbers, or say what was expected."""
        parts = str(value).split(",")
        sizes = tuple(int(part) for part in parts if part.strip().isascii() and part.strip().isdigit())
        if len(sizes) != len(parts) or list(sizes) != sorted({*sizes} - {0}):
            self.fail(f"{value!r} is no list of rising numbers; write for example 1,10,50", param, ctx)
        return sizes


@click.command()
@content_option
@format_option
@click.option("--figures", "count", type=click.IntRange(1), help="Only draw this many pictures.")
@click.option("--fuzz", "spoilt", type=click.IntRange(1), help="Only spoil this many copies of the content.")
@click.option(
    "--kills",
    type=click.IntRange(1),
    is_flag=False,
    flag_value=100,
    help="Only kill this many builds (100 where no number is given), and some recordings and signings.",
)
@click.option(
    "--workers",
    type=click.IntRange(2, 64),
    default=2,
    show_default=True,
    help="Processes for figures and spoilt copies.",
)
@click.option("--again", is_flag=True, help="Only build again, unchanged and with another sentence.")
@click.option("--scale", type=Sizes(), help="Only build so many copies of a programme, such as 1,10,50.")
def measure(
    content: Path,
    form: str,
    count: int | None,
    spoilt: int | None,
    kills: int | None,
    workers: int,
    *,
    again: bool,
    scale: tuple[int, ...] | None,
) -> int:
    """Measure a build of the catalogue; ratios are comparable between machines, seconds are not."""
    checked = check_catalogue(content)
    if (catalogue := checked.sound) is None:
        print_problems(checked.problems, checked.sources, form)
        return PROBLEMS
    if spoilt is not None:
        return show_fuzz(catalogue, content, spoilt, workers, form)
    if kills is not None:
        return show_kills(catalogue, content, kills, form)
    if count is not None:
        stills, cost = measure_figures(catalogue, ROOT, count, workers)
        return show(_figure_values(stills, cost, workers), form)
    try:
        if scale is not None:
            return show_growth(catalogue, content, scale, form)
        if again:
            return show(again_values(catalogue, content), form)
        found = run(catalogue, content, ROOT, say)
        ordering = {"10,000 exercises in order, seconds of processor": seconds_to_order(catalogue)}
        return show({**_values(found), **again_values(catalogue, content), **ordering}, form)
    except RuntimeError as error:
        raise click.ClickException(f"nothing was measured: {error}") from error


def _figure_values(stills: int, cost: Cost, workers: int) -> dict[str, float]:
    return {
        "stills": stills,
        "processes": workers,
        "stills, seconds of processor": cost.cpu,
        "stills, seconds by the clock": cost.wall,
        "a still, milliseconds by the clock": 1000 * cost.wall / max(stills, 1),
    }


def _values(found: Measured) -> dict[str, float]:
    return {
        "pages": found.pages,
        "booklets": found.booklets,
        "sheets": found.sheets,
        "build, seconds of processor": found.build.cpu,
        "build, seconds by the clock": found.build.wall,
        "plain MkDocs, seconds of processor": found.mkdocs.cpu,
        "plain MkDocs, seconds by the clock": found.mkdocs.wall,
        "plain WeasyPrint, seconds of processor": found.weasyprint.cpu,
        "plain WeasyPrint, seconds by the clock": found.weasyprint.wall,
        "plain MkDocs, seconds a page": found.mkdocs.cpu / max(found.pages, 1),
        "plain WeasyPrint, seconds a sheet": found.weasyprint.cpu / max(found.sheets, 1),
        "plain WeasyPrint, seconds a booklet": found.weasyprint.cpu / max(found.booklets, 1),
        "ratio of processor time to the libraries": found.cpu_ratio,
        "ratio of clock time to the libraries": found.wall_ratio,
    }
