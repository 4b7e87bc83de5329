"""Tells the whole story on one screen: read, check, work out, word, draw, render, examine, publish.

Nothing here knows how a step is done, only in which order and what may stop it. A build that finds an error
publishes nothing and leaves the old site as it was.
"""

from __future__ import annotations

import datetime
import tempfile
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field, replace
from pathlib import Path

from generator import checks
from generator.body.shown import with_angles
from generator.catalogue.arranged import Orders
from generator.catalogue.editions import NO_EDITIONS, EditionLedger
from generator.catalogue.values import Catalogue
from generator.problems import Problem, has_errors, in_order
from generator.progression import arrange
from generator.publish import NotPublishedError, Stage, audit_tree, claim, open_stage
from generator.reading import Reading, read_content
from generator.reading.editions import ReadLedger
from generator.shelf import Shelf
from generator.steps import editions, figures, pages, paper, unchanged
from generator.steps.all_rules import ALL_RULES
from generator.steps.drawn import gallery_of
from generator.steps.editions import Recording, Workshop, record
from generator.steps.expectations import audit_of
from generator.steps.gaps import withheld_paper
from generator.steps.handing_on import hand_on
from generator.steps.kinds import Kinds
from generator.steps.languages import Spoken, speak
from generator.steps.previewing import Preview, not_spoken
from generator.steps.program import program_digest
from generator.steps.unchanged import Counted
from generator.steps.weights import settled, weight_problems
from generator.steps.worked import Worked, work_out

Say = Callable[[str], None]


@dataclass(frozen=True)
class Request:
    """What a build is to do.

    content, output: folders. root: the project (templates, theme, styles). work: for files that may be
    thrown away. workers: processes at a time. kinds: of booklets. anew: nothing of earlier builds is used.
    """

    content: Path
    output: Path
    root: Path
    work: Path
    workers: int = 1
    kinds: Kinds = Kinds.USUAL
    anew: bool = False

    @property
    def cache(self) -> Path:
        """Return the folder of what is kept between builds."""
        return self.work / "cache"


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

    @property
    def sound(self) -> Catalogue | None:
        """Return the catalogue where nothing is wrong with it: every id that it names can be found in it."""
        return None if has_errors(self.problems) else self.catalogue


@dataclass(frozen=True)
class Outcome:
    """What came of a build. refused: it was not even started. withheld: languages, booklets left out.

    anew: what was made in this build and not taken from an earlier one.
    """

    problems: tuple[Problem, ...]
    sources: Mapping[str, Sequence[str]] = field(default_factory=dict)
    published: bool = False
    refused: bool = False
    withheld: tuple[str, ...] = ()
    page_count: int = 0
    booklet_count: int = 0
    sheet_count: int = 0
    anew: tuple[str, ...] = ()


def check_catalogue(content: Path) -> Checked:
    """Read the content and check it by the rules of the trade, before any language is chosen."""
    recorded = editions.checked_ledger(content)
    return check_reading(read_content(content), recorded, editions.sources_of(content, recorded))


def check_reading(read: Reading, recorded: ReadLedger, ledger: Mapping[str, Sequence[str]]) -> Checked:
    """Check what was read; ledger: the lines of the ledger of editions, by its path."""
    sources = {**read.sources, **ledger}
    if read.catalogue is None:
        return Checked(None, {}, in_order((*read.problems, *recorded.problems)), sources)
    whole = not has_errors(read.problems)
    found = (*checks.check_content(read.catalogue, whole), *figures.thing_problems(read.catalogue))
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
    spoken, found = speak(checked.catalogue, content)
    # A phase may name an exercise that could not be read: no paper is made then, so none is left out.
    left_out = () if checked.sound is None else (problem for _, problem in withheld_paper(spoken))
    return replace(checked, problems=settled(checked.catalogue, (*checked.problems, *found, *left_out)))


def build_site(request: Request, say: Say) -> Outcome:
    """Make everything beside the old site, examine all of it, and swap it in; or say why not."""
    say("Reading and checking the catalogue ...")
    checked = check_catalogue(request.content)
    if (catalogue := checked.sound) is None:
        return Outcome(checked.problems, checked.sources)
    spoken, found = speak(catalogue, request.content)
    left_out = tuple(problem for _, problem in withheld_paper(spoken))
    problems = settled(catalogue, (*checked.problems, *found, *left_out))
    if has_errors(problems) or not spoken:
        return Outcome(problems, checked.sources)
    done = Outcome(problems, checked.sources, withheld=_left_out(spoken))
    try:
        return _build(request, checked, spoken, done, say)
    except NotPublishedError as error:
        return _refused(checked, problems, error)


def _build(
    request: Request, checked: Checked, spoken: tuple[Spoken, ...], done: Outcome, say: Say
) -> Outcome:
    """Make everything anew that changed since the last build, and publish it."""
    shelf = Shelf(claim(request.cache) / "shelf", program_digest(), request.anew)
    state = unchanged.state_of(request.content, request.root, request.kinds.value)
    if (there := unchanged.still_there(shelf, state, request.output)) is not None:
        say("Nothing has changed since this site was published, and it is whole.")
        return _counted(replace(done, published=True), there)
    with open_stage(request.output, request.content) as stage:
        outcome = _fill(request, checked, spoken, done, stage, shelf, say)
    if outcome.published:
        counted = Counted(outcome.page_count, outcome.booklet_count, outcome.sheet_count)
        # The site is out: where nothing more can be kept the next build only takes longer.
        with suppress(OSError):
            unchanged.remember(shelf, state, request.output, counted)
            shelf.tidy()
    return outcome


def _refused(checked: Checked, problems: Sequence[Problem], error: NotPublishedError) -> Outcome:
    return Outcome(in_order((*problems, error.problem)), checked.sources, refused=True)


def _counted(outcome: Outcome, there: Counted) -> Outcome:
    return replace(outcome, page_count=there.pages, booklet_count=there.booklets, sheet_count=there.sheets)


def _fill(
    request: Request,
    checked: Checked,
    spoken: tuple[Spoken, ...],
    done: Outcome,
    stage: Stage,
    shelf: Shelf,
    say: Say,
) -> Outcome:
    """Write pages and booklets into the stage, examine them, and publish when nothing is wrong."""
    say(f"Printing the booklets ({', '.join(one.voice.own_name for one in spoken)}) ...")
    worked = _worked(request, checked, spoken[0].catalogue)
    printed = (spoken, worked, stage.workshop / "paper", request.root / "site_assets", request.workers)
    sheets = paper.make_paper(*printed, request.kinds, shelf)
    say("Writing the pages ...")
    site = pages.Site(spoken, worked, sheets, ALL_RULES, request.root, request.cache, stage.workshop)
    made = pages.make_pages(site, stage.root, request.workers, shelf)
    paper.move_paper(sheets, stage.root)
    found = [*made.problems, *(problem for one in sheets for problem in one.problems)]
    catalogue = spoken[0].catalogue
    if not has_errors(settled(catalogue, (*done.problems, *found))):
        say("Reading every page and sheet back ...")
        found += audit_tree(stage.root, audit_of(spoken, made.facts, sheets), shelf=shelf)
    anew = (*(one.path for one in sheets if not one.result.kept), *(f"{one}/**.html" for one in made.anew))
    outcome = replace(done, problems=settled(catalogue, (*done.problems, *found)), anew=anew)
    if has_errors(outcome.problems):
        return outcome
    say("Publishing ...")
    stage.publish()
    listed = sum(len(facts) for facts in made.facts.values())
    counted = Counted(listed, len(sheets), sum(one.result.pages for one in sheets))
    return _counted(replace(outcome, published=True), counted)


def _left_out(spoken: tuple[Spoken, ...]) -> tuple[str, ...]:
    """Return the names of what is not published: languages, then booklets of the others."""
    there = {one.voice.code for one in spoken}
    languages_out = (code for code in spoken[0].catalogue.clinic.languages if code not in there)
    return (*languages_out, *(name for name, _ in withheld_paper(spoken)))


def _worked(request: Request, checked: Checked, catalogue: Catalogue) -> Worked:
    """Work out everything, pictures included; those that did not change are kept from the last time."""
    tokens = (request.root / "site_assets" / "tokens.css").read_text(encoding="utf-8")
    gallery = gallery_of(catalogue, tokens, request.cache / "figures", request.workers)
    facts = work_out(catalogue, checked.orders)
    return replace(facts, gallery=gallery, ledger=checked.ledger, recorded=checked.ledger.dates())


def record_editions(
    request: Request, archive: Path, day: datetime.date, say: Say
) -> tuple[Recording, Mapping[str, Sequence[str]]]:
    """Record every booklet as it is published from this content; return also the lines of what was read."""
    checked = check_catalogue(request.content)
    if (catalogue := checked.sound) is None:
        return Recording(problems=checked.problems), checked.sources
    spoken, found = speak(catalogue, request.content)
    problems = settled(catalogue, (*checked.problems, *found))
    if has_errors(problems) or not spoken:
        return Recording(problems=problems), checked.sources
    try:
        shelf = Shelf(claim(request.cache) / "shelf", program_digest())
    except NotPublishedError as error:
        return Recording(problems=(error.problem,), refused=True), checked.sources
    say("Printing the booklets with the day on which they are recorded ...")
    assets = request.root / "site_assets"
    worked = _worked(request, checked, spoken[0].catalogue)
    # Another recording may run at the same time; what a killed one leaves, the system clears away.
    with tempfile.TemporaryDirectory(prefix="phasebook-record-") as folder:
        workshop = Workshop(Path(folder), assets, request.workers, request.kinds, shelf)
        return record(spoken, worked, request.content, archive, day, workshop), checked.sources


def export_pages(request: Request) -> tuple[tuple[Path, ...], Outcome]:
    """Write the pages of all languages, without booklets, for another builder; return their settings."""
    checked = check_catalogue(request.content)
    if (catalogue := checked.sound) is None:
        return (), Outcome(checked.problems, checked.sources)
    spoken, found = speak(catalogue, request.content)
    problems = settled(catalogue, (*checked.problems, *found))
    if has_errors(problems) or not spoken:
        return (), Outcome(problems, checked.sources)
    try:
        claim(request.cache)
    except NotPublishedError as error:
        return (), _refused(checked, problems, error)
    worked = _worked(request, checked, spoken[0].catalogue)
    site = pages.Site(spoken, worked, (), ALL_RULES, request.root, request.cache, request.output)
    return hand_on(site, request.output), Outcome(problems, checked.sources, published=True)


def preview_site(request: Request, language: str | None, preview: Preview) -> Outcome:
    """Let the preview show the pages of one language, without booklets, if nothing is wrong with them."""
    checked = check_catalogue(request.content)
    if (catalogue := checked.sound) is None:
        return Outcome(checked.problems, checked.sources)
    chosen = language or catalogue.source_language
    spoken, found = speak(catalogue, request.content, unsigned=True, only=(chosen,))
    unknown = not_spoken(catalogue, chosen, spoken)
    problems = settled(catalogue, (*checked.problems, *found, *unknown))
    if has_errors(problems):
        return Outcome(problems, checked.sources)
    try:
        claim(request.cache)
    except NotPublishedError as error:
        return _refused(checked, problems, error)
    worked = _worked(request, checked, spoken[0].catalogue)
    site = pages.Site(spoken, worked, (), ALL_RULES, request.root, request.cache, request.work / "written")
    problems = settled(catalogue, (*problems, *preview.show(site, checked.sources)))
    return Outcome(problems, checked.sources, published=not has_errors(problems))
