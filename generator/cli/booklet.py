"""``booklet``: prints one phase for one patient; nothing is stored, and no name is asked for."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import click

from generator.catalogue.one_patient import LeftOut
from generator.catalogue.programme import MovementRestriction, Phase, Restriction, WeightRestriction
from generator.catalogue.surgery import why_not
from generator.catalogue.values import Catalogue
from generator.cli.dates import SurgeryDate
from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS, ROOT, content_option, print_problems
from generator.pipeline import check_catalogue
from generator.problems import has_errors, offered
from generator.steps.kinds import FOLD, KINDS, SHEET, STANDARD
from generator.steps.languages import WITHHELD, speak
from generator.steps.one_patient import Made, Order, make_for_one, why_not_there
from generator.steps.wishes import Typed, read_wishes


@click.command()
@click.argument("programme")
@click.argument("phase", type=click.IntRange(1, 12))
@click.option("--language", help="Language of the booklet; else the clinic's first.")
@click.option("--side", help="Operated side: left, right, or both.")
@click.option("--surgery-date", type=SurgeryDate(), help="Day of the operation; the booklet then says days.")
@click.option("--delayed", is_flag=True, help="Days on the delayed track.")
@click.option("--only", metavar="IDS", help="Only these exercises, parted by commas.")
@click.option("--without", metavar="IDS", default="", help="Without these exercises.")
@click.option(
    "--mastered", metavar="IDS", default="", help="What the patient can do already: it may be left out."
)
@click.option(
    "--have", metavar="THINGS", help='Things at hand, such as "elastic band, chair"; no others are asked for.'
)
@click.option(
    "--avoid", metavar="WORDS", default="", help="Strains, surfaces, positions: floor,kneeling,prone."
)
@click.option(
    "--limit",
    "limits",
    metavar="JOINT.MOVEMENT=DEGREES",
    multiple=True,
    help="Tighter limit: hip.flexion=70.",
)
@click.option("--weight-bearing", help="Tighter than the programme: none, touch, partial.")
@click.option("--dose", "doses", metavar="ID=DOSE", multiple=True, help="Dose to begin with: heel-slide=2x8.")
@click.option(
    "--kind", type=click.Choice((*KINDS, FOLD)), default=STANDARD, show_default=True, help="Kind of booklet."
)
@click.option(
    "--output",
    type=click.Path(path_type=Path),
    default=Path("booklet.pdf"),
    show_default=True,
    help="The PDF.",
)
@content_option
def booklet(
    programme: str,
    phase: int,
    language: str | None,
    surgery_date: datetime.date | None,
    kind: str,
    output: Path,
    content: Path,
    **typed: Any,
) -> int:
    """Print PHASE (its number) of PROGRAMME for one patient. Wishes only narrow what the programme allows."""
    if surgery_date and (wrong := why_not(surgery_date, datetime.date.today())):
        raise click.BadParameter(wrong, param_hint="'--surgery-date'")
    if typed["delayed"] and surgery_date is None:
        raise click.BadParameter(
            "days need a day to count from; add --surgery-date", param_hint="'--delayed'"
        )
    if wrong := why_not_there(output):
        raise click.BadParameter(wrong, param_hint="'--output'")
    order = Order(programme, phase, kind, output, ROOT / "site_assets")
    return _print(order, language, Typed(surgery=surgery_date, **typed), content)


def _print(order: Order, language: str | None, typed: Typed, content: Path) -> int:
    checked = check_catalogue(content)
    if (catalogue := checked.sound) is None:
        print_problems(checked.problems, checked.sources)
        return PROBLEMS
    phase = _phase(catalogue, order)
    wishes, problems = read_wishes(catalogue, phase, typed)
    if problems:
        print_problems(problems, checked.sources)
        return NOT_STARTED
    code = language or catalogue.source_language
    chosen = next(iter(speak(catalogue, content, only=(code,))[0]), None)
    if chosen is None:
        # Only now are the other languages looked at, to name those there are.
        spoken, found = speak(catalogue, content)
        if why := [one for one in found if has_errors([one]) or one.code == WITHHELD.code]:
            print_problems(why, checked.sources)
        hint = offered(code, (one.voice.code for one in spoken))
        message = f"there is no booklet in the language '{code}'; {hint}"
        raise click.BadParameter(message, param_hint="'--language'")
    made = make_for_one(chosen, order, wishes)
    if made.problems:
        print_problems(made.problems, checked.sources)
    if made.result is None:
        return NOT_STARTED
    if has_errors(made.problems):
        click.echo(f"Not written: {order.output}; what is there is as it was.", err=True)
        return PROBLEMS
    click.echo(summary(made, order))
    return DONE


def _phase(catalogue: Catalogue, order: Order) -> Phase:
    chosen = catalogue.programmes.get(order.programme)
    if chosen is None:
        hint = offered(order.programme, catalogue.programmes)
        raise click.BadParameter(
            f"there is no programme '{order.programme}'; {hint}", param_hint="'PROGRAMME'"
        )
    if order.phase > len(chosen.phases):
        message = f"'{chosen.id}' has phases 1 to {len(chosen.phases)}"
        raise click.BadParameter(message, param_hint="'PHASE'")
    return chosen.phase(order.phase)


def summary(made: Made, order: Order) -> str:
    """Say what is in the booklet, what is not and why, where it is, and its edition."""
    catalogue = made.narrowed.catalogue
    programme = catalogue.programmes[order.programme]
    phase = programme.phase(order.phase)
    told = made.narrowed.told
    lines = [
        f"{programme.name}, phase {phase.number}: {phase.name}",
        f"In: {', '.join(use.use for use in phase.uses)}",
    ]
    if told.dates:
        track = told.dates.track.value
        lines.append(f"Not before {told.dates.phase} ({track} track); the date alone moves nobody on.")
    limits = {rule.id: _limit(rule) for rule in programme.restrictions}
    lines += [f"Out: {_out(one, limits)}" for one in told.left_out]
    lines += [f"Stays, and strains {', '.join(strains)}: {item}" for item, strains in told.strained]
    pages = made.result.pages if made.result else 0
    what = "sides to fold" if order.kind == FOLD else "sheet" if pages == 1 else "sheets"
    lines.append(f"Written: {order.output}, {pages} {what}, edition {made.edition}")
    look = "" if order.kind == SHEET else "; the last sheet says what to look at"
    lines.append(f"Read it before you hand it out{look}.")
    return "\n".join(lines)


def _limit(rule: Restriction) -> str:
    if isinstance(rule, MovementRestriction):
        name = f"{rule.joint.value} {rule.movement.value}"
        return name if rule.limit is None else f"{name} up to {rule.limit:g} degrees"
    return f"weight-bearing: {rule.allows.value}" if isinstance(rule, WeightRestriction) else rule.id


def _out(one: LeftOut, limits: Mapping[str, str]) -> str:
    what = f" ({', '.join(limits.get(word, word) for word in one.what)})" if one.what else ""
    instead = f"; instead: {one.replaced_by}" if one.replaced_by else ""
    return f"{one.item}: {one.kind.value}{what}{instead}"
