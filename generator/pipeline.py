"""Tells the whole story on one screen: read, check, work out, word, draw, render, examine, publish.

Nothing here knows how a step is done, only in which order and what may stop it. A build that finds an error
publishes nothing and leaves the old site as it was.
"""

from __future__ import annotations

import datetime
import shutil
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from generator import checks, editing, publish, reading, wording
from generator.body.shown import with_angles
from generator.booklets import rules as booklets
from generator.catalogue.arranged import Orders
from generator.catalogue.editions import NO_EDITIONS, EditionLedger
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, has_errors, in_order
from generator.progression import arrange, one_patient
from generator.publish import NotPublishedError, Stage, audit_tree, open_stage
from generator.reading import read_content
from generator.review import editions as review_editions
from generator.steps import (
    editions,
    figures,
    gaps,
    languages,
    pages,
    paper,
    protocols,
    reviewing,
    states,
    translating,
    unreviewed,
    weights,
)
from generator.steps.drawn import gallery_of
from generator.steps.editions import Recording, Workshop, record
from generator.steps.expectations import audit_of
from generator.steps.gaps import withheld_paper
from generator.steps.handing_on import hand_on
from generator.steps.kinds import Kinds
from generator.steps.languages import Spoken, speak
from generator.steps.weights import settled, weight_problems
from generator.steps.worked import Worked, work_out
from generator.website import engine

Say = Callable[[str], None]

ALL_RULES: tuple[Rule, ...] = tuple(
    sorted(
        {
            *reading.RULES,
            *checks.RULES,
            *wording.RULES,
            *engine.RULES,
            *booklets.RULES,
            *publish.RULES,
            *editing.RULES,
            *languages.RULES,
            *translating.RULES,
            *reviewing.RULES,
            *unreviewed.RULES,
            *weights.RULES,
            *figures.RULES,
            *gaps.RULES,
            *one_patient.RULES,
            *review_editions.RULES,
            *states.RULES,
        },
        key=lambda rule: rule.code,
    )
)


@dataclass(frozen=True)
class Request:
    """What a build is to do.

    content, output: folders. root: the project (templates, theme, styles). work: for files that may be
    thrown away. workers: processes at a time. kinds: of booklets.
    """

    content: Path
    output: Path
    root: Path
    work: Path
    workers: int = 1
    kinds: Kinds = Kinds.USUAL


@dataclass(frozen=True)
class Checked:
    """A catalogue that was read and checked, with the angles that its poses show.

    orders: empty where errors forbid working them out.
    """

    catalogue: Catalogue | None
    orders: Orders
    problems: tuple[Problem, ...]
    sources: Mapping[str, Sequence[str]]
    ledger: EditionLedger = NO_EDITIONS


@dataclass(frozen=True)
class Outcome:
    """What came of a build. refused: it was not even started. withheld: languages, booklets left out."""

    problems: tuple[Problem, ...]
    sources: Mapping[str, Sequence[str]] = field(default_factory=dict)
    published: bool = False
    refused: bool = False
    withheld: tuple[str, ...] = ()
    page_count: int = 0
    booklet_count: int = 0
    sheet_count: int = 0


def check_catalogue(content: Path) -> Checked:
    """Read the content and check it by the rules of the trade, before any language is chosen."""
    read = read_content(content)
    recorded = editions.checked_ledger(content)
    sources = {**read.sources, **editions.sources_of(content, recorded)}
    if read.catalogue is None:
        return Checked(None, {}, in_order((*read.problems, *recorded.problems)), sources)
    found = (*checks.check_content(read.catalogue), *figures.thing_problems(read.catalogue))
    wrong = weight_problems(read.catalogue, ALL_RULES)
    problems = settled(read.catalogue, (*read.problems, *recorded.problems, *found, *wrong))
    catalogue = with_angles(read.catalogue)
    orders = {} if has_errors(problems) else arrange(catalogue)
    return Checked(catalogue, orders, problems, sources, recorded.ledger or NO_EDITIONS)


def check_languages(content: Path) -> Checked:
    """Check the content, and then its translations into the clinic's languages."""
    checked = check_catalogue(content)
    if checked.catalogue is None:
        return checked
    _, found = speak(checked.catalogue, content)
    return replace(checked, problems=settled(checked.catalogue, (*checked.problems, *found)))


def build_site(request: Request, say: Say) -> Outcome:
    """Make everything beside the old site, examine all of it, and swap it in; or say why not."""
    say("Reading and checking the catalogue ...")
    checked = check_catalogue(request.content)
    if checked.catalogue is None or has_errors(checked.problems):
        return Outcome(checked.problems, checked.sources)
    spoken, found = speak(checked.catalogue, request.content)
    left_out = tuple(problem for _, problem in withheld_paper(spoken))
    problems = settled(checked.catalogue, (*checked.problems, *found, *left_out))
    if has_errors(problems) or not spoken:
        return Outcome(problems, checked.sources)
    try:
        with open_stage(request.output, request.content) as stage:
            return _fill(request, checked, spoken, problems, stage, say)
    except NotPublishedError as error:
        return Outcome(in_order((*problems, error.problem)), checked.sources, refused=True)


def _fill(
    request: Request,
    checked: Checked,
    spoken: tuple[Spoken, ...],
    problems: tuple[Problem, ...],
    stage: Stage,
    say: Say,
) -> Outcome:
    """Write pages and booklets into the stage, examine them, and publish when nothing is wrong."""
    say(f"Printing the booklets ({', '.join(one.voice.own_name for one in spoken)}) ...")
    assets = request.root / "site_assets"
    workshop = stage.workshop / "paper"
    worked = _worked(request, checked, spoken[0].catalogue)
    printed = (spoken, worked, workshop, assets, request.workers)
    sheets = (*paper.make_paper(*printed, request.kinds), *protocols.make_protocol_sheets(*printed))
    say("Writing the pages ...")
    site = pages.Site(spoken, worked, sheets, ALL_RULES, request.root, request.work, stage.workshop)
    facts, found = pages.make_pages(site, stage.root, request.workers)
    paper.move_paper(sheets, stage.root)
    catalogue = spoken[0].catalogue
    printed_badly = (problem for one in sheets for problem in one.problems)
    problems = settled(catalogue, (*problems, *found, *printed_badly))
    if not has_errors(problems):
        say("Reading every page and sheet back ...")
        read_back = audit_tree(stage.root, audit_of(spoken, facts, sheets))
        problems = settled(catalogue, (*problems, *read_back))
    outcome = Outcome(
        problems,
        checked.sources,
        withheld=_left_out(spoken),
        page_count=sum(len(listed) for listed in facts.values()),
        booklet_count=len(sheets),
        sheet_count=sum(one.result.pages for one in sheets),
    )
    if has_errors(problems):
        return outcome
    say("Publishing ...")
    stage.publish()
    return replace(outcome, published=True)


def _left_out(spoken: tuple[Spoken, ...]) -> tuple[str, ...]:
    """Return the names of what is not published: languages, then booklets of the others."""
    there = {one.voice.code for one in spoken}
    languages_out = (code for code in spoken[0].catalogue.clinic.languages if code not in there)
    return (*languages_out, *(name for name, _ in withheld_paper(spoken)))


def _worked(request: Request, checked: Checked, catalogue: Catalogue) -> Worked:
    """Work out everything, pictures included; those that did not change are kept from the last time."""
    tokens = (request.root / "site_assets" / "tokens.css").read_text(encoding="utf-8")
    gallery = gallery_of(catalogue, tokens, request.work / "figures", request.workers)
    facts = work_out(catalogue, checked.orders)
    return replace(facts, gallery=gallery, ledger=checked.ledger, recorded=checked.ledger.dates())


def record_editions(
    request: Request, archive: Path, day: datetime.date, say: Say
) -> tuple[Recording, Mapping[str, Sequence[str]]]:
    """Record every booklet as it is published from this content; return also the lines of what was read."""
    checked = check_catalogue(request.content)
    if checked.catalogue is None or has_errors(checked.problems):
        return Recording(problems=checked.problems), checked.sources
    spoken, found = speak(checked.catalogue, request.content)
    problems = settled(checked.catalogue, (*checked.problems, *found))
    if has_errors(problems) or not spoken:
        return Recording(problems=problems), checked.sources
    say("Printing the booklets with the day on which they are recorded ...")
    assets = request.root / "site_assets"
    workshop = Workshop(request.work / "record", assets, request.workers, request.kinds)
    worked = _worked(request, checked, spoken[0].catalogue)
    return record(spoken, worked, request.content, archive, day, workshop), checked.sources


def export_pages(request: Request) -> tuple[tuple[Path, ...], Outcome]:
    """Write the pages of all languages, without booklets, for another builder; return their settings."""
    checked = check_catalogue(request.content)
    if checked.catalogue is None or has_errors(checked.problems):
        return (), Outcome(checked.problems, checked.sources)
    spoken, found = speak(checked.catalogue, request.content)
    problems = settled(checked.catalogue, (*checked.problems, *found))
    if has_errors(problems) or not spoken:
        return (), Outcome(problems, checked.sources)
    worked = _worked(request, checked, spoken[0].catalogue)
    site = pages.Site(spoken, worked, (), ALL_RULES, request.root, request.work, request.output)
    return hand_on(site, request.output), Outcome(problems, checked.sources, published=True)


def preview_site(request: Request, language: str | None) -> Outcome:
    """Make the pages of one language, without booklets, and replace the folder only when nothing is wrong."""
    checked = check_catalogue(request.content)
    if checked.catalogue is None or has_errors(checked.problems):
        return Outcome(checked.problems, checked.sources)
    spoken, found = speak(checked.catalogue, request.content, unsigned=True)
    chosen = tuple(one for one in spoken if one.voice.code == (language or spoken[0].voice.code))
    problems = settled(checked.catalogue, (*checked.problems, *found))
    if not chosen or has_errors(problems):
        return Outcome(problems, checked.sources)
    fresh = request.work / "fresh"
    shutil.rmtree(fresh, ignore_errors=True)
    site = pages.Site(
        chosen,
        _worked(request, checked, spoken[0].catalogue),
        (),
        ALL_RULES,
        request.root,
        request.work,
        request.work / "written",
    )
    _, found = pages.make_pages(site, fresh, workers=1)
    problems = settled(checked.catalogue, (*problems, *found))
    if has_errors(problems):
        return Outcome(problems, checked.sources)
    shutil.rmtree(request.output, ignore_errors=True)
    fresh.rename(request.output)
    return Outcome(problems, checked.sources, published=True)
