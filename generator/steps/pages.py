"""Makes the site of all languages: written pages, the shared files, one MkDocs run a language, root pages."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from generator.booklets.protocol_values import ProtocolJob
from generator.booklets.values import BookletJob
from generator.problems import Problem, Rule
from generator.reading.schema import reference
from generator.shelf import Shelf
from generator.steps.downloads import data_texts, write_data
from generator.steps.editions import facts_in, known_paper, printed_now
from generator.steps.kinds import STANDARD
from generator.steps.languages import Spoken
from generator.steps.paper import Sheets
from generator.steps.reports import reports_of
from generator.steps.reviewed import pages_reviewed
from generator.steps.worked import Worked
from generator.website.assets import Assets, write_assets
from generator.website.config import Language
from generator.website.engine import SiteJob, build_languages
from generator.website.figure_files import write_figures
from generator.website.fonts import prepare_fonts
from generator.website.frame import write_settings
from generator.website.pages import write_pages
from generator.website.root import write_root
from generator.website.values import BookletFact, FieldGroup, PageFact, PaperKind, PhaseKey, SiteInput

WritePages = Callable[[SiteInput, Path], Sequence[PageFact]]
# The key under which the facts of the pages above all languages are kept.
ROOT = ""


@dataclass(frozen=True)
class Site:
    """What the pages are made from.

    cache: a folder of the project for what is kept between builds. workshop: one of this build alone;
    another build of the same project writes other pages of the same names at the same time.
    """

    spoken: tuple[Spoken, ...]
    worked: Worked
    sheets: Sequence[Sheets]
    rules: tuple[Rule, ...]
    root: Path
    cache: Path
    workshop: Path

    @property
    def languages(self) -> tuple[Language, ...]:
        """Return the languages of the chooser, the source language first."""
        return tuple(Language(one.voice.code, one.voice.own_name, one.voice.direction) for one in self.spoken)


@dataclass(frozen=True)
class Pages:
    """What came of the pages. facts: what each must show, by language. anew: languages that were built."""

    facts: Mapping[str, Sequence[PageFact]]
    problems: tuple[Problem, ...]
    anew: tuple[str, ...]


def make_pages(site: Site, output: Path, workers: int, shelf: Shelf | None = None) -> Pages:
    """Write the whole site under `output`. shelf: keeps the pages of languages between builds."""
    written = write_sources(site, output)
    anew, problems = build_languages(written.jobs, workers, shelf)
    # MkDocs empties the folder of a language, not the root.
    facts = {**written.facts, ROOT: write_root(written.inputs, written.assets, output)}
    return Pages(facts, problems, anew)


@dataclass(frozen=True)
class Written:
    """What MkDocs reads, once it is written: a job for each language, and what each page must show."""

    jobs: tuple[SiteJob, ...]
    inputs: tuple[SiteInput, ...]
    facts: Mapping[str, Sequence[PageFact]]
    assets: Assets


def write_sources(site: Site, output: Path, write: WritePages = write_pages) -> Written:
    """Write pages and configuration of each language into the workshop, what they share under `output`.

    write: writes the pages of one language into a folder.
    """
    fonts = prepare_fonts(site.cache / "fonts")
    codes = [one.voice.code for one in site.spoken]
    assets = write_assets(site.root / "site_assets", fonts, codes, output)
    figures = write_figures(site.worked.gallery, output)
    texts = data_texts(site.spoken[0].catalogue, site.worked)
    now = facts_in(site.spoken, site.worked)
    paper = known_paper(site.worked.ledger, now, printed_now(site.sheets))
    facts: dict[str, Sequence[PageFact]] = {}
    jobs: list[SiteJob] = []
    inputs: list[SiteInput] = []
    for one in site.spoken:
        code = one.voice.code
        folder = site.workshop / "pages" / code
        shutil.rmtree(folder, ignore_errors=True)
        said = replace(_input(site, one), figures=figures, data=write_data(texts, folder), paper=paper)
        facts[code] = write(said, folder)
        config = site.workshop / f"{code}.yml"
        job = SiteJob(code, one.voice.direction, folder, output / code, config)
        write_settings(said, job, site.root, assets)
        jobs.append(job)
        inputs.append(said)
    return Written(tuple(jobs), tuple(inputs), facts, assets)


def _input(site: Site, spoken: Spoken) -> SiteInput:
    printed = [one for one in site.sheets if one.language == spoken.voice.code]
    return SiteInput(
        catalogue=spoken.catalogue,
        voice=spoken.voice,
        languages=site.languages,
        orders=site.worked.orders,
        withheld=site.worked.withheld,
        days=site.worked.days,
        turns=site.worked.turns,
        things=site.worked.things,
        back=site.worked.back,
        tables=site.worked.tables,
        anchors=site.worked.anchors,
        estimates=site.worked.estimates,
        set_aside=site.worked.set_aside,
        effects=site.worked.effects,
        hanging=site.worked.hanging,
        moments=site.worked.moments,
        contradictions=site.worked.contradictions,
        booklets={_phase_of(one): _download(one) for one in printed if one.kind == STANDARD},
        kinds=_other_kinds(printed),
        choices=site.worked.choices,
        protocols={one.job.programme: _download(one) for one in printed if isinstance(one.job, ProtocolJob)},
        reports=reports_of(spoken),
        in_use=spoken.in_use(),
        reviewed=pages_reviewed(spoken),
        rules=site.rules,
        fields=field_groups(),
    )


def _phase_of(sheets: Sheets) -> PhaseKey:
    assert isinstance(sheets.job, BookletJob), "a protocol is of no phase"
    return sheets.job.programme, sheets.job.phase


def _other_kinds(
    printed: Sequence[Sheets],
) -> Mapping[PhaseKey, tuple[tuple[PaperKind, BookletFact], ...]]:
    """Return what else can be loaded for a phase besides its standard booklet, in a fixed order."""
    found: dict[PhaseKey, list[tuple[PaperKind, BookletFact]]] = {}
    for kind in PaperKind:
        for one in printed:
            if one.kind == kind.value:
                found.setdefault(_phase_of(one), []).append((kind, _download(one)))
    return {key: tuple(listed) for key, listed in found.items()}


def _download(sheets: Sheets) -> BookletFact:
    return BookletFact(
        path=sheets.path.removeprefix(f"{sheets.language}/"),
        pages=sheets.result.pages,
        size=sheets.result.path.stat().st_size,
        edition=sheets.job.edition,
    )


def field_groups() -> tuple[FieldGroup, ...]:
    """Return the reference of all keys as plain values."""
    return tuple(
        (
            file,
            table.name,
            table.help,
            tuple((one.key, one.required, one.form, one.help) for one in table.fields),
        )
        for file, table in reference()
    )
