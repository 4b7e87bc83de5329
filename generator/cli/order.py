"""``order``: says why this exercise before that one, and why in this phase, with every number's doubt."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

import click

from generator.catalogue.arranged import Estimate, Hanging, Order, Placed, Reason, ReasonKind
from generator.catalogue.programme import Programme
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
from generator.steps.ordered import basis_words, hanging_of, order_json, order_of

LIMITS = (
    "Numbers are percent of the greatest voluntary effort (%MVIC), from healthy people.\n"
    "A weak repaired muscle works harder at the same task; muscle activity is not tendon load;\n"
    "low activity is not permission."
)


@click.command()
@click.argument("programme")
@click.option("--phase", type=click.IntRange(1, 12), help="Only this phase.")
@click.option(
    "--without", metavar="STUDY", multiple=True, help="As if this study did not exist; can be repeated."
)
@content_option
@format_option
def order(programme: str, phase: int | None, without: tuple[str, ...], content: Path, form: str) -> int:
    """Print the order of PROGRAMME's exercises with estimates, bands, reasons, and what they hang on."""
    checked = check_catalogue(content)
    if (catalogue := checked.sound) is None:
        print_problems(checked.problems, checked.sources, form)
        return PROBLEMS
    if programme not in catalogue.programmes:
        hint = offered(programme, catalogue.programmes)
        click.echo(f"There is no programme '{programme}'; {hint}", err=True)
        return NOT_STARTED
    if missing := [study for study in without if study not in catalogue.studies]:
        click.echo(f"There is no study '{missing[0]}'; {offered(missing[0], catalogue.studies)}", err=True)
        return NOT_STARTED
    chosen = catalogue.programmes[programme]
    if phase is not None and phase > len(chosen.phases):
        click.echo(f"'{programme}' has phases 1 to {len(chosen.phases)}", err=True)
        return NOT_STARTED
    found = order_of(catalogue, programme, without)
    hangs = () if without else hanging_of(catalogue, programme)
    if form == "json":
        print_json(order_json(catalogue, found, phase, without, hangs))
    else:
        click.echo("\n".join(_as_text(catalogue, chosen, found, phase, without, hangs)))
    return DONE


def _as_text(
    catalogue: Catalogue,
    programme: Programme,
    found: Order,
    phase: int | None,
    without: Sequence[str],
    hangs: Sequence[Hanging],
) -> Iterator[str]:
    yield f"{programme.name}: order of introduction"
    if without:
        yield f"As if these studies did not exist: {', '.join(without)}"
    yield LIMITS
    for stage in programme.phases:
        if phase not in (None, stage.number):
            continue
        yield ""
        band = f"band above {stage.band.above:g}, up to and including {stage.band.up_to:g} %MVIC"
        yield f"Phase {stage.number}: {stage.name}; {band}"
        for placed in found.of_phase(stage.number):
            yield from _of_place(catalogue, placed)
    shown = [one for one in hangs if phase in (None, one.phase)]
    if shown:
        yield ""
        yield "These places hang on one study:"
        yield from (f"  {_hanging(one)}" for one in shown)


def _of_place(catalogue: Catalogue, placed: Placed) -> Iterator[str]:
    level = f", level {placed.level}" if placed.level is not None else ""
    yield f"{placed.place:3}  {placed.exercise} ({catalogue.exercises[placed.exercise].role.value}{level})"
    for estimate in (placed.estimate, *placed.others):
        if estimate is not None:
            yield f"       {_estimate(estimate)}"
    yield from (f"       {muscle}: not measured" for muscle in placed.not_measured)
    if placed.estimate is not None and placed.level is not None:
        above = f" by {placed.above_by:.1f}" if placed.above_by else ""
        yield f"       {placed.band_position.value} the band{above}"
    yield from (f"       - {_reason(catalogue, placed, one)}" for one in placed.reasons)
    for aside in placed.set_aside:
        yield f"       set aside: {aside.study} {aside.mean:g} in {aside.muscle}: {aside.reason}"


def _estimate(one: Estimate) -> str:
    if one.judgement is not None:
        span = f" ({_span(one)})" if one.judgement.others else ""
        said = f"by: {one.judgement.role}, because: {one.judgement.reason}"
        return f"{one.muscle}: {basis_words(one)}{span}, {said}"
    words = f"{one.muscle}: {_span(one)}"
    if one.i_squared is not None and one.k > 1:
        words += f", I² {one.i_squared:.0%}"
    if one.k:
        words += f", {one.k} {'study' if one.k == 1 else 'studies'}, {one.n} people"
    return f"{words}; {basis_words(one)}"


def _span(one: Estimate) -> str:
    """Return the number with its interval; a lower limit below nothing is shown as 0."""
    if one.low is None or one.high is None:
        return f"{one.mean:.1f}"
    return f"{one.mean:.1f}, 95 % interval {max(one.low, 0.0):.1f} to {one.high:.1f}"


def _reason(catalogue: Catalogue, placed: Placed, one: Reason) -> str:
    exercise, number = catalogue.exercises[placed.exercise], one.number or 0.0
    if one.kind is ReasonKind.SAME_PEOPLE:
        both = f"{number:.0f} of {one.of} {'study' if one.of == 1 else 'studies'} of both in the same people"
        against = "; this speaks against the order" if _contradicts(placed) else ""
        return f"{both} found it harder than {one.other}, which outranks the pooled numbers{against}"
    if one.kind is ReasonKind.ACCEPTED and placed.accepted is not None:
        leave = placed.accepted
        return f"above the band, accepted up to {number:g} by: {leave.role}, because: {leave.reason}"
    second = f"by {one.muscle}, {number:.1f}" if one.muscle else "by its name"
    words = {
        ReasonKind.ROLE: f"by its role: {exercise.role.value}",
        ReasonKind.DEMAND: f"by its demand: {exercise.demand.value}",
        ReasonKind.ACTIVITY: f"by activity: {number:.1f} in {one.muscle}",
        ReasonKind.PREREQUISITE: f"after {one.other}, which must be mastered first",
        ReasonKind.NOT_MEASURED: "neither measured nor judged, so after what is known",
        ReasonKind.ENTRY: f"not before week {number:.0f}",
        ReasonKind.TIE: f"equal to {one.other}; told apart {second}",
        ReasonKind.JUDGED: f"by judgement, beside {one.other}"
        if one.other
        else "judged to put no load on it",
        ReasonKind.ABOUT_AS_HARD: f"about as hard as {one.other}",
        ReasonKind.CHANCE: f"{number:.0%} chance that it is harder than {one.other}, from the pooled numbers",
        ReasonKind.NEXT_STUDY: f"a study of both in {number:.0f} people would settle it against {one.other}",
        ReasonKind.LATE: f"above the band by {number:.1f}, within the margin: late in the phase",
        ReasonKind.UPPER_LIMIT: f"the upper limit of its interval, {number:.1f}, is above the band",
    }
    return words[one.kind]


def _contradicts(placed: Placed) -> bool:
    return placed.comparison is not None and placed.comparison.contradicts


def _hanging(one: Hanging) -> str:
    left = "nothing would be known" if one.mean is None else f"it would have {one.mean:.1f}"
    above = f", above the band by {one.above_by:.1f}" if one.above_by else ""
    return f"{one.exercise} (phase {one.phase}): without {one.study} {left}{above}"
