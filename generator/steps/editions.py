"""Records booklets that go out, and says of every one that went out how it stands to what is printed now."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from generator.booklets.protocol_values import ProtocolJob
from generator.booklets.values import BookletJob
from generator.catalogue.edition_values import facts_fingerprint
from generator.catalogue.editions import (
    PROTOCOL,
    Edition,
    EditionLedger,
    Facts,
    KnownPaper,
    Sheet,
    Standing,
)
from generator.editing import add_editions, keep_file
from generator.problems import Problem, has_errors, in_order
from generator.reading.editions import FILE, ReadLedger, read_editions
from generator.review.changes import differences, standing
from generator.review.editions import facts_of, ledger_problems, protocol_fingerprint, typed_code
from generator.shelf import Shelf
from generator.steps.kinds import FOLD, POCKET, STANDARD, Kinds
from generator.steps.languages import Spoken
from generator.steps.paper import Sheets, booklet_jobs, make_paper
from generator.steps.protocols import protocol_jobs
from generator.steps.worked import Worked

__all__ = [
    "Recording",
    "Workshop",
    "checked_ledger",
    "facts_in",
    "kind_of",
    "known_paper",
    "printed_now",
    "record",
    "sources_of",
    "typed_code",
]

FactsKey = tuple[str, int, str]
"""A programme's id, the number of one of its phases, and a language."""


@dataclass(frozen=True)
class Recording:
    """What came of recording: codes that are new, how many were known, what hindered it.

    same: how many of the known came out byte for byte as they were kept. kept: SHA-256 of each file by its
    path from the site's root. refused: it was not even started.
    """

    fresh: tuple[str, ...] = ()
    known: int = 0
    same: int = 0
    kept: Mapping[str, str] | None = None
    problems: tuple[Problem, ...] = ()
    refused: bool = False


@dataclass(frozen=True)
class Workshop:
    """Where booklets are made: a folder for what may be thrown away, shared styles, processes, kinds.

    shelf: keeps booklets between builds; a build after recording takes the very files from there.
    """

    folder: Path
    assets: Path
    workers: int
    kinds: Kinds = Kinds.USUAL
    shelf: Shelf | None = None


def checked_ledger(content: Path) -> ReadLedger:
    """Return the ledger of a content folder with all that is wrong with it."""
    read = read_editions(content)
    found = tuple(ledger_problems(read.ledger)) if read.ledger else ()
    return replace(read, problems=in_order((*read.problems, *found)))


def sources_of(content: Path, read: ReadLedger) -> dict[str, tuple[str, ...]]:
    """Return the ledger's lines by its path, to show beside a finding."""
    return {str(content / FILE): read.lines}


def facts_in(spoken: Iterable[Spoken], worked: Worked) -> Mapping[FactsKey, Facts]:
    """Return what every booklet says now."""
    found: dict[FactsKey, Facts] = {}
    for one in spoken:
        for programme in one.catalogue.programmes.values():
            order = worked.orders[programme.id]
            for phase in programme.phases:
                withheld = worked.withheld.get((programme.id, phase.number), frozenset())
                facts = facts_of(one.catalogue, order, phase, withheld)
                found[programme.id, phase.number, one.voice.code] = facts
    return found


def known_paper(
    ledger: EditionLedger, now: Mapping[FactsKey, Facts], printed: Mapping[str, tuple[str, int | None, str]]
) -> tuple[KnownPaper, ...]:
    """Return every booklet that was recorded or is printed now; printed: programme, phase, language by code.

    Without knowing what is printed now, a booklet counts as current where it says the same.
    """
    dates = ledger.dates()
    current = frozenset(printed)
    found = {
        code: KnownPaper(code, *where, dates.get(code), Standing.CURRENT) for code, where in printed.items()
    }
    for edition in ledger.editions:
        for sheet in edition.sheets:
            if sheet.code not in found:
                found[sheet.code] = _old(edition, sheet.code, now, current)
    return tuple(found.values())


def _old(edition: Edition, code: str, now: Mapping[FactsKey, Facts], current: frozenset[str]) -> KnownPaper:
    facts = now.get((edition.programme, edition.phase or 0, edition.language))
    stands = standing(edition, code, facts, current)
    if not current and stands is Standing.SAME_TO_DO:
        stands = Standing.CURRENT
    if edition.phase is None and all(programme != edition.programme for programme, _, _ in now):
        stands = Standing.GONE
    changes = differences(edition.facts, facts, edition.language) if edition.facts and facts else ()
    return KnownPaper(
        code, edition.programme, edition.phase, edition.language, edition.recorded, stands, changes
    )


def printed_now(sheets: Sequence[Sheets]) -> Mapping[str, tuple[str, int | None, str]]:
    """Return programme, phase (None: the protocol) and language of each finished booklet by its code."""
    return {one.job.edition: (one.job.programme, _phase(one.job), one.language) for one in sheets}


def _phase(job: BookletJob | ProtocolJob) -> int | None:
    return job.phase if isinstance(job, BookletJob) else None


def record(
    spoken: Sequence[Spoken],
    worked: Worked,
    content: Path,
    archive: Path,
    day: datetime.date,
    workshop: Workshop,
) -> Recording:
    """Make every booklet with its date, keep those that are new in the archive, and add them to the ledger.

    Nothing is recorded where a booklet has an error. The ledger is written last, whole or not at all.
    """
    read = checked_ledger(content)
    if has_errors(read.problems) or read.ledger is None:
        return Recording(problems=read.problems)
    known = {
        (sheet.code, sheet.kind): sheet.pdf for edition in read.ledger.editions for sheet in edition.sheets
    }
    wanted = tuple(_wanted(spoken, worked, workshop))
    fresh = tuple(dict.fromkeys(code for code, kind in wanted if (code, kind) not in known))
    if not fresh:
        return Recording(known=len(wanted))
    before = read.ledger.dates()
    dated = replace(worked, recorded={code: before.get(code, day) for code, _ in wanted})
    sheets = _made(spoken, dated, workshop)
    problems = in_order(problem for one in sheets for problem in one.problems)
    if has_errors(problems):
        return Recording(problems=problems)
    kept: dict[str, str] = {}
    for one in sheets:
        digest = keep_file(archive, one.result.path.read_bytes())
        if isinstance(digest, Problem):
            return Recording(problems=(digest,))
        kept[one.path] = digest
    new = [one for one in sheets if _key(one) not in known]
    problems = add_editions(content, read, tuple(_editions(new, kept, spoken, dated)))
    if problems:
        return Recording(problems=problems)
    same = sum(known.get(_key(one)) == kept[one.path] for one in sheets)
    return Recording(fresh, len(sheets) - len(new), same, kept)


def _key(sheets: Sheets) -> tuple[str, str]:
    """Return the code and the kind of a booklet: what it says, and how it is printed."""
    return (sheets.job.edition, kind_of(sheets.path))


def _wanted(spoken: Sequence[Spoken], worked: Worked, workshop: Workshop) -> Iterator[tuple[str, str]]:
    """Yield code and kind of every file that will be made."""
    where = (spoken, worked, workshop.folder, workshop.assets)
    for _, _, job in booklet_jobs(*where, workshop.kinds):
        yield job.edition, job.kind
        if job.kind == POCKET:
            yield job.edition, FOLD
    for _, _, protocol in protocol_jobs(*where):
        yield protocol.edition, PROTOCOL


def _made(spoken: Sequence[Spoken], worked: Worked, workshop: Workshop) -> tuple[Sheets, ...]:
    printing = (spoken, worked, workshop.folder, workshop.assets, workshop.workers)
    return make_paper(*printing, workshop.kinds, workshop.shelf)


def _editions(
    sheets: Sequence[Sheets],
    kept: Mapping[str, str],
    spoken: Sequence[Spoken],
    worked: Worked,
) -> Iterator[Edition]:
    """Yield an entry for each phase and language, with the files of all kinds of booklet that say it."""
    now = facts_in(spoken, worked)
    catalogues = {one.voice.code: one.catalogue for one in spoken}
    together: dict[tuple[str, int | None, str, str], list[Sheet]] = {}
    for one in sheets:
        code, kind = _key(one)
        key = (one.job.programme, _phase(one.job), one.language, code)
        together.setdefault(key, []).append(Sheet(code=code, kind=kind, pdf=kept[one.path]))
    for (programme, phase, language, code), files in together.items():
        facts = now[programme, phase, language] if phase is not None else None
        catalogue = catalogues[language]
        said = (
            facts_fingerprint(facts)
            if facts
            else protocol_fingerprint(catalogue, catalogue.programmes[programme], worked.orders[programme])
        )
        yield Edition(
            recorded=worked.recorded[code],
            programme=programme,
            phase=phase,
            language=language,
            fingerprint=said,
            sheets=tuple(files),
            facts=facts,
        )


def kind_of(path: str) -> str:
    """Return the kind of a booklet by its pinned address: ``…-phase-2-large.pdf`` is ``large``."""
    name = path.rpartition("/")[2].removesuffix(".pdf")
    if name.endswith(f"-{PROTOCOL}"):
        return PROTOCOL
    return name.rpartition("-phase-")[2].partition("-")[2] or STANDARD
