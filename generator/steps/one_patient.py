"""Makes a booklet for one patient: narrow, check, word, draw, print, and put it in place only when right.

Nothing is stored but the file that was asked for, and nothing in it names anybody.
"""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path

from generator.booklets.make import make_booklet
from generator.booklets.values import BookletJob, BookletResult
from generator.catalogue.base import read_only
from generator.catalogue.fingerprints import edition_code, fingerprint
from generator.catalogue.one_patient import OperatedSide, Wishes
from generator.catalogue.programme import Programme
from generator.catalogue.values import Catalogue
from generator.checks import Check, bands, both_sides, demand, doses, forbidden, prerequisites, uses
from generator.figures.pictures import Gallery
from generator.problems import Place, Problem, Severity, in_order
from generator.progression import arrange, steps_back, things_of_phase
from generator.progression.one_patient import Narrowed, narrow
from generator.steps.figures import draw_all, palette_of
from generator.steps.kinds import FOLD, POCKET
from generator.steps.languages import Spoken
from generator.steps.locking import folded
from generator.steps.paper import booklet_jobs
from generator.steps.worked import work_out
from generator.wording.one_patient import patient_words, restriction_words


@dataclass(frozen=True)
class Order:
    """What is to be printed: programme, phase from 1, kind of booklet, and where to. workers: processes."""

    programme: str
    phase: int
    kind: str
    output: Path
    assets: Path
    workers: int = 1


@dataclass(frozen=True)
class Made:
    """What came of it. narrowed: what is in and what is not. result: None where it was refused."""

    narrowed: Narrowed
    problems: tuple[Problem, ...]
    result: BookletResult | None = None
    edition: str = ""


def why_not_there(output: Path) -> str:
    """Return why a booklet cannot be written to a path, or an empty text; nothing is left behind."""
    if output.suffix.casefold() != ".pdf":
        return f"'{output}' does not end in .pdf; name a file such as booklet.pdf"
    if output.is_dir():
        return f"'{output}' is a folder; name a file in it"
    if not output.parent.is_dir():
        return f"there is no folder '{output.parent}'; make it first, or choose another"
    try:
        with tempfile.TemporaryFile(dir=output.parent):
            pass
    except OSError as error:
        return f"nothing can be written to '{output.parent}' ({error.strerror}); choose another folder"
    return ""


def make_for_one(spoken: Spoken, order: Order, wishes: Wishes) -> Made:
    """Return what came of a booklet for one patient; a file that is there stays unless all is right."""
    words = restriction_words(spoken.voice, wishes)
    narrowed = narrow(spoken.catalogue, order.programme, order.phase, wishes, words)
    problems = narrowed.problems or tuple(phase_problems(narrowed.catalogue, order.programme, order.phase))
    if problems:
        return Made(narrowed, in_order(problems))
    job = _job(replace(spoken, catalogue=narrowed.catalogue), order, narrowed, wishes)
    with _aside(order.output) as unfinished:
        job = replace(job, output=unfinished)
        result = make_booklet(job)
        if order.kind == FOLD:
            result = replace(folded(job, result, job), problems=result.problems)
        found = tuple(replace(one, place=Place(order.output.as_posix())) for one in result.problems)
        if not any(one.severity is Severity.ERROR for one in found):
            unfinished.replace(order.output)
    return Made(narrowed, found, replace(result, path=order.output, problems=found), job.edition)


@contextmanager
def _aside(output: Path) -> Iterator[Path]:
    """Yield a path beside the output for the unfinished file; what is left there afterwards is removed."""
    handle, name = tempfile.mkstemp(prefix=f".{output.stem}-", suffix=".pdf", dir=output.parent)
    os.close(handle)
    unfinished = Path(name)
    # Made for its owner only; a finished booklet is as readable as any other new file.
    unfinished.chmod(0o666 & ~_umask())
    try:
        yield unfinished
    finally:
        unfinished.unlink(missing_ok=True)


def _umask() -> int:
    now = os.umask(0)
    os.umask(now)
    return now


def phase_problems(catalogue: Catalogue, programme: str, phase: int) -> Iterator[Problem]:
    """Yield the errors that the checks of content find in the narrowed phase.

    What is set for this patient binds in this phase alone. So the other phases are looked at only as far as
    this one leans on them: on earlier ones for what is mastered, on later ones for what goes on.
    """
    looks: tuple[tuple[Check, int, int], ...] = (
        (bands.check, phase, phase),
        (both_sides.check, phase, phase),
        (demand.check, phase, phase),
        (doses.check, phase, phase),
        (forbidden.check, phase, phase),
        (prerequisites.check, 1, phase),
        (uses.check, phase, len(catalogue.programmes[programme].phases)),
    )
    for check, first, last in looks:
        found = check(_between(catalogue, programme, first, last))
        yield from (one for one in found if one.severity is Severity.ERROR)


def _between(catalogue: Catalogue, programme: str, first: int, last: int) -> Catalogue:
    """Return the catalogue with one programme, whose phases before `first` and after `last` are empty."""
    stages = catalogue.programmes[programme]
    phases = tuple(
        one if first <= one.number <= last else replace(one, uses=(), daily_life=()) for one in stages.phases
    )
    return replace(catalogue, programmes=read_only({programme: replace(stages, phases=phases)}))


def _job(spoken: Spoken, order: Order, narrowed: Narrowed, wishes: Wishes) -> BookletJob:
    """Return the booklet's job: that of the narrowed phase, with what only this patient's booklet says."""
    catalogue = spoken.catalogue
    programme = catalogue.programmes[order.programme]
    phase = programme.phase(order.phase)
    key = (order.programme, order.phase)
    worked = work_out(catalogue, arrange(catalogue))
    worked = replace(worked, gallery=_gallery(catalogue, programme, order, wishes))
    (job,) = (
        job
        for _, _, job in booklet_jobs((spoken,), worked, order.output.parent, order.assets)
        if (job.programme, job.phase) == key
    )
    withheld = job.withheld | narrowed.withheld
    patient = patient_words(spoken.voice, catalogue, programme, narrowed.told)
    return replace(
        job,
        kind=POCKET if order.kind == FOLD else order.kind,
        edition=edition_code(fingerprint(job.edition, order.kind, sorted(withheld), patient)),
        withheld=withheld,
        back=steps_back(catalogue, programme, phase, withheld),
        things=things_of_phase(catalogue, phase, withheld),
        patient=patient,
    )


def _gallery(catalogue: Catalogue, programme: Programme, order: Order, wishes: Wishes) -> Gallery:
    """Return the pictures of the phase, the operated side as it is; both sides and unknown look right."""
    phase = programme.phase(order.phase)
    forms = (f"{use.use}/{use.variation}" for use in phase.uses if use.variation)
    items = (*(use.use for use in phase.uses), *forms, *phase.daily_life)
    left = wishes.side is OperatedSide.LEFT
    palette = palette_of((order.assets / "tokens.css").read_text(encoding="utf-8"))
    drawn = draw_all(catalogue, palette, ids=items, lefts=(left,), with_moving=False, workers=order.workers)
    # Sheets ask for the pictures of a right leg; those of this patient take their place.
    return replace(drawn, pictures={replace(one, left=False): made for one, made in drawn.pictures.items()})
