"""Reads every page and sheet of the finished tree, and reports each safety text, dose or link not there."""

from __future__ import annotations

import gc
import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from generator.pool import pool
from generator.problems import NOWHERE, Place, Problem, in_order
from generator.publish import doses, links, manifest, notes, outside, pages, seen, sheets
from generator.publish.expected import Audit
from generator.shelf import Shelf

_PAGE = (".html", ".htm")
_READ = (*_PAGE, ".svg", ".css", ".pdf")
_WORTH_A_PROCESS = 60


@dataclass(frozen=True)
class _Task:
    """One file to be read, with all that is expected of it: small, because it travels between processes."""

    root: Path
    path: str
    audit: Audit


def audit_tree(
    root: Path, expected: Audit, workers: int | None = None, shelf: Shelf | None = None
) -> tuple[Problem, ...]:
    """Return everything that is wrong with the finished tree below `root`, in order of place.

    `workers` is the number of processes; by default one for a small tree and one a processor for a large one.
    shelf: remembers sound files between builds; the same bytes of which the same is expected stay sound.
    """
    found = frozenset(path for path, _ in manifest.entries(root))
    problems = [*expected.shortcomings(), *_absent(found, expected)]
    tasks = [
        _Task(root, path, _narrowed(expected, path)) for path in sorted(found) if path.lower().endswith(_READ)
    ]
    facts: dict[str, pages.PageFacts] = {}
    for result, fact in _examined(tasks, workers, shelf):
        problems.extend(result)
        if fact is not None:
            facts[fact.path] = fact
    problems.extend(links.check(facts, found, expected.choice_pages, expected.base_path))
    return in_order(problems)


def _absent(found: frozenset[str], expected: Audit) -> Iterator[Problem]:
    """Yield every announced file that is not in the tree, and every language without a page."""
    for path in expected.pdfs.keys() - found:
        yield sheets.NO_PDF.at(Place(path), "this file was announced and is not there")
    for path in (expected.required.keys() | expected.doses.keys() | expected.shared_pages) - found:
        if path not in expected.pdfs:
            yield notes.NO_PAGE.at(Place(path), "this page was announced and is not there")
    for one in expected.languages:
        for name in ("index.html", expected.warning_page):
            if f"{one.language}/{name}" not in found:
                yield notes.NO_PAGE.at(Place(f"{one.language}/{name}"), "every language needs this page")
    if not any(path.endswith(_PAGE) for path in found):
        yield notes.NO_PAGE.at(NOWHERE, "the tree holds no page at all")


def _narrowed(audit: Audit, path: str) -> Audit:
    """Return the expectations as far as they concern one file."""
    return Audit(
        languages=audit.languages,
        pdfs={path: audit.pdfs[path]} if path in audit.pdfs else {},
        required={path: audit.required[path]} if path in audit.required else {},
        doses={path: audit.doses[path]} if path in audit.doses else {},
        exempt=audit.exempt & {path},
        warning_page=audit.warning_page,
        shared_pages=audit.shared_pages,
        base_path=audit.base_path,
    )


_Result = tuple[tuple[Problem, ...], pages.PageFacts | None]


def _examined(tasks: Sequence[_Task], workers: int | None, shelf: Shelf | None) -> Iterator[_Result]:
    """Yield the results of all tasks; those of files that were found sound before come first."""
    if shelf is None:
        yield from _examine_all(tasks, workers)
        return
    missing: list[_Task] = []
    names: list[str] = []
    for task in tasks:
        name = seen.name_of(shelf, task.path, (task.root / task.path).read_bytes(), task.audit)
        if (known := seen.remembered(shelf, name, task.path)) is not None:
            yield (), known[0]
        else:
            missing.append(task)
            names.append(name)
    for name, (problems, facts) in zip(names, _examine_all(missing, workers), strict=True):
        if not problems:
            seen.remember(shelf, name, facts)
        yield problems, facts


def _examine_all(tasks: Sequence[_Task], workers: int | None) -> Iterator[_Result]:
    """Yield the results of all tasks, in order, from as many processes as are worth it."""
    if workers is None:
        workers = (os.cpu_count() or 1) if len(tasks) >= _WORTH_A_PROCESS else 1
    if workers == 1:
        yield from map(_examine, tasks)
        return
    # A forked copy of a process with threads can hang; a fresh one starts in a third of a second.
    with pool(workers, fresh=True) as processes:
        yield from processes.map(_examine, tasks, chunksize=max(1, len(tasks) // (workers * 8)))


def _examine(task: _Task) -> _Result:
    """Return the problems of one file, and the facts that the link check needs of all files together."""
    kind = task.path.rsplit(".", 1)[-1].lower()
    try:
        if kind == "pdf":
            return tuple(_examine_pdf(task)), None
        text = (task.root / task.path).read_text(encoding="utf-8")
    except (OSError, ValueError) as error:
        return (notes.UNREADABLE.at(Place(task.path), f"cannot be read: {error}"),), None
    if kind == "css":
        facts = links.style_links(task.path, outside.style_addresses(text))
        return tuple(outside.in_stylesheet(text, task.path)), facts
    # A parsed page is full of cycles; collecting while it grows doubles the time.
    collecting = gc.isenabled()
    gc.disable()
    try:
        soup = pages.parse(text)
        facts = pages.gather(soup, task.path)
        problems = list(outside.in_markup(soup, task.path))
        soup.decompose()
    finally:
        if collecting:
            gc.enable()
    if kind != "svg":
        problems.extend(_examine_page(facts, task))
    # The texts have been judged and are the bulk of the facts.
    return tuple(problems), pages.PageFacts(task.path, links=facts.links, ids=facts.ids)


def _examine_page(facts: pages.PageFacts, task: _Task) -> Iterator[Problem]:
    """Yield what a page lacks of its safety texts and doses."""
    if task.path not in task.audit.exempt:
        yield from notes.check(facts, task.audit)
    text = facts.reachable
    required = task.audit.required.get(task.path, ())
    yield from doses.check(task.path, text, text, required, task.audit.doses.get(task.path))


def _examine_pdf(task: _Task) -> Iterator[Problem]:
    """Yield what is wrong with one PDF file; ValueError when it cannot be read."""
    expected = task.audit.pdfs.get(task.path)
    language = next(
        (one for one in task.audit.languages if expected and one.language == expected.language), None
    )
    if expected is None or language is None:
        yield sheets.UNKNOWN_PDF.at(Place(task.path), "nobody announced this file to the audit")
        return
    facts = sheets.read(task.root / task.path, task.path, visual=language.direction == "rtl")
    yield from sheets.check(facts, expected, language)
    required = task.audit.required.get(task.path, ())
    figures = task.audit.doses.get(task.path)
    yield from doses.check(task.path, facts.reading, facts.visual, required, figures, loose=expected.loose)
