"""Makes the booklets and protocols of all languages: codes and jobs of booklets, and what came of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from types import MappingProxyType

from generator.booklets.print_run import Job
from generator.booklets.values import BookletJob, BookletResult
from generator.catalogue.arranged import Orders
from generator.catalogue.fingerprints import edition_code, fingerprint
from generator.catalogue.programme import Phase, Programme
from generator.figures.pictures import Gallery
from generator.problems import Place, Problem
from generator.shelf import Shelf
from generator.steps.gaps import first_hole
from generator.steps.kinds import FOLD, POCKET, STANDARD, Kinds, paper_path
from generator.steps.languages import Spoken
from generator.steps.locking import folded, make_alike
from generator.steps.protocols import protocol_jobs
from generator.steps.reviewed import booklet_state
from generator.steps.worked import Worked
from generator.wording.review_words import draft_mark, review_words


@dataclass(frozen=True)
class Sheets:
    """One finished booklet with the language it is in, its path from the site's root, and its job."""

    language: str
    path: str
    job: Job
    result: BookletResult

    @property
    def folded(self) -> bool:
        """Return whether it is a print file whose sides bear two pages."""
        return self.kind == FOLD

    @property
    def kind(self) -> str:
        """Return the kind of booklet; empty for a protocol."""
        return self.job.kind if isinstance(self.job, BookletJob) else ""

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Return what was found in it, placed where a reader of the site would look for it."""
        return tuple(replace(problem, place=Place(self.path)) for problem in self.result.problems)


def make_paper(
    spoken: Sequence[Spoken],
    worked: Worked,
    folder: Path,
    assets: Path,
    workers: int,
    kinds: Kinds = Kinds.USUAL,
    shelf: Shelf | None = None,
) -> tuple[Sheets, ...]:
    """Write all booklets and protocols of every language under `folder`, with the site's own paths.

    shelf: keeps booklets between builds; what would be the same is taken from there.
    """
    where = (spoken, worked, folder, assets)
    return print_jobs((*booklet_jobs(*where, kinds), *protocol_jobs(*where)), folder, workers, shelf)


def print_jobs(
    jobs: Sequence[tuple[str, str, Job]], folder: Path, workers: int, shelf: Shelf | None = None
) -> tuple[Sheets, ...]:
    """Write sheets under `folder`, booklets in all languages on the same ones, and the print files to fold.

    jobs: language, path from `folder` and job of each; phases and kinds with all their languages.
    """
    results = make_alike([job for _, _, job in jobs], workers, shelf)
    made = [
        Sheets(language, path, job, result)
        for (language, path, job), result in zip(jobs, results, strict=True)
    ]
    return (*made, *(_folded(one, folder) for one in made if one.kind == POCKET))


def _folded(pocket: Sheets, folder: Path) -> Sheets:
    """Return the print file of a pocket booklet."""
    job = pocket.job
    assert isinstance(job, BookletJob), "only booklets are folded"
    path = paper_path(pocket.language, job.programme, job.phase, FOLD)
    fold = replace(job, kind=FOLD, output=folder / path)
    return Sheets(pocket.language, path, fold, folded(job, pocket.result, fold))


def move_paper(sheets: Sequence[Sheets], site: Path) -> None:
    """Move the booklets to where they belong in the site; MkDocs empties a language's folder before."""
    for booklet in sheets:
        target = site / booklet.path
        target.parent.mkdir(parents=True, exist_ok=True)
        booklet.result.path.rename(target)


def booklet_jobs(
    spoken: Sequence[Spoken],
    worked: Worked,
    folder: Path,
    assets: Path,
    kinds: Kinds = Kinds.STANDARD,
) -> tuple[tuple[str, str, BookletJob], ...]:
    """Return language, path from `folder` and job of every booklet, the print files to fold left out."""
    return tuple(
        (one.voice.code, path, job)
        for one in spoken
        for path, job in _jobs_in(one, worked, folder, assets, kinds)
    )


def _jobs_in(
    spoken: Spoken, worked: Worked, folder: Path, assets: Path, kinds: Kinds
) -> Iterator[tuple[str, BookletJob]]:
    language = spoken.voice.code
    for programme in spoken.catalogue.programmes.values():
        for phase in programme.phases:
            if first_hole(spoken, programme, phase) is not None:
                continue
            path = paper_path(language, programme.id, phase.number, STANDARD)
            job = _job(spoken, worked, programme, phase, folder / path, assets)
            for kind in kinds.of(language, spoken.catalogue.source_language):
                path = paper_path(language, programme.id, phase.number, kind)
                yield path, replace(job, kind=kind, output=folder / path)


def _job(
    spoken: Spoken, worked: Worked, programme: Programme, phase: Phase, output: Path, assets: Path
) -> BookletJob:
    in_use, key = spoken.in_use(), (programme.id, phase.number)
    used = {use.use: in_use[programme.id, phase.number, use.use] for use in phase.uses}
    stills = _stills(worked.gallery, programme, phase)
    state = booklet_state(spoken, programme, phase)
    code = edition(spoken, programme.id, phase.number, worked.orders, stills)
    return BookletJob(
        catalogue=replace(spoken.catalogue, exercises={**spoken.catalogue.exercises, **used}),
        voice=spoken.voice,
        programme=programme.id,
        phase=phase.number,
        order=worked.orders[programme.id],
        edition=code,
        recorded=worked.recorded.get(code),
        withheld=worked.withheld[key],
        day=worked.days[key],
        turns=worked.turns[key],
        back=worked.back[key],
        things=worked.things[key],
        anchors=worked.anchors,
        stills=stills,
        draft=draft_mark(spoken.voice, state),
        reviewed=review_words(spoken.voice, state),
        output=output,
        assets=assets,
    )


def _stills(gallery: Gallery, programme: Programme, phase: Phase) -> Mapping[str, tuple[str, ...]]:
    """Return the pictures of all that the phase prints: exercises, forms in use, daily life."""
    forms = (f"{use.use}/{use.variation}" for use in phase.uses if use.variation)
    items = (*(use.use for use in phase.uses), *forms, *phase.daily_life)
    found = {item: gallery.of(item, programme.joint.value) or gallery.of(item) for item in items}
    return {item: pictures.stills for item, pictures in found.items() if pictures is not None}


def edition(
    spoken: Spoken,
    programme: str,
    phase: int,
    orders: Orders,
    stills: Mapping[str, tuple[str, ...]] = MappingProxyType({}),
) -> str:
    """Return the code of a booklet: it changes with every word, dose, place, rule or picture it holds."""
    catalogue = spoken.catalogue
    stages = catalogue.programmes[programme]
    exercises = [catalogue.exercises[use.use] for use in stages.phase(phase).uses]
    life = [catalogue.daily_life[item] for item in stages.phase(phase).daily_life]
    places = orders[programme].of_phase(phase)
    said = (catalogue.safety, catalogue.clinic, catalogue.glossary, catalogue.equipment)
    reviewed = review_words(spoken.voice, booklet_state(spoken, stages, stages.phase(phase)))
    held = (stages, phase, exercises, life, places, *said, stills, reviewed)
    return edition_code(fingerprint(spoken.voice.code, *held))
