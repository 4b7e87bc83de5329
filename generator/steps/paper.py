"""Makes the booklets of all languages: their edition codes, their jobs, and what came of them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from generator.booklets.make import make_booklets
from generator.booklets.values import BookletJob, BookletResult
from generator.catalogue.arranged import Orders
from generator.catalogue.fingerprints import edition_code, fingerprint
from generator.problems import Place, Problem
from generator.steps.languages import Spoken
from generator.steps.worked import Worked

FOLDER = "booklets"


@dataclass(frozen=True)
class Sheets:
    """One finished booklet with the language it is in, its path from the site's root, and its job."""

    language: str
    path: str
    job: BookletJob
    result: BookletResult

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Return what was found in it, placed where a reader of the site would look for it."""
        return tuple(replace(problem, place=Place(self.path)) for problem in self.result.problems)


def make_paper(
    spoken: Sequence[Spoken], worked: Worked, folder: Path, assets: Path, workers: int
) -> tuple[Sheets, ...]:
    """Write every phase's booklet in every language under `folder`, with the site's own paths."""
    jobs = booklet_jobs(spoken, worked, folder, assets)
    results = make_booklets([job for _, _, job in jobs], workers)
    return tuple(
        Sheets(language, path, job, result)
        for (language, path, job), result in zip(jobs, results, strict=True)
    )


def move_paper(sheets: Sequence[Sheets], site: Path) -> None:
    """Move the booklets to where they belong in the site; MkDocs empties a language's folder before."""
    for booklet in sheets:
        target = site / booklet.path
        target.parent.mkdir(parents=True, exist_ok=True)
        booklet.result.path.rename(target)


def booklet_jobs(
    spoken: Sequence[Spoken], worked: Worked, folder: Path, assets: Path
) -> tuple[tuple[str, str, BookletJob], ...]:
    """Return language, path from `folder` and job of every booklet."""
    return tuple(
        (one.voice.code, path, job) for one in spoken for path, job in _jobs_in(one, worked, folder, assets)
    )


def _jobs_in(spoken: Spoken, worked: Worked, folder: Path, assets: Path) -> Iterator[tuple[str, BookletJob]]:
    in_use = spoken.in_use()
    for programme in spoken.catalogue.programmes.values():
        for phase in programme.phases:
            used = {use.use: in_use[programme.id, phase.number, use.use] for use in phase.uses}
            path = f"{spoken.voice.code}/{FOLDER}/{programme.id}-phase-{phase.number}.pdf"
            yield (
                path,
                BookletJob(
                    catalogue=replace(spoken.catalogue, exercises={**spoken.catalogue.exercises, **used}),
                    voice=spoken.voice,
                    programme=programme.id,
                    phase=phase.number,
                    order=worked.orders[programme.id],
                    edition=edition(spoken, programme.id, phase.number, worked.orders),
                    minutes_a_day=worked.days[programme.id, phase.number].minutes or None,
                    output=folder / path,
                    assets=assets,
                ),
            )


def edition(spoken: Spoken, programme: str, phase: int, orders: Orders) -> str:
    """Return the code of a booklet: it changes with every word, dose, place or rule the booklet holds."""
    catalogue = spoken.catalogue
    stages = catalogue.programmes[programme]
    exercises = [catalogue.exercises[use.use] for use in stages.phase(phase).uses]
    places = orders[programme].of_phase(phase)
    held = (stages, phase, exercises, places, catalogue.safety, catalogue.clinic, catalogue.glossary)
    return edition_code(fingerprint(spoken.voice.code, *held))
