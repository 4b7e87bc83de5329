"""Prints booklets so that all languages stand on the same sheets, and folds those that are folded."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from generator.booklets.imposition import impose
from generator.booklets.page_lock import locked, most_sheets, unlike, with_sheets
from generator.booklets.print_run import Job, make_all
from generator.booklets.values import BookletJob, BookletResult
from generator.shelf import Shelf


def make_alike(jobs: Sequence[Job], workers: int, shelf: Shelf | None = None) -> tuple[BookletResult, ...]:
    """Return the results in the order of their jobs.

    Each is printed once; only what takes fewer sheets than another language is printed again. What still
    differs is an error of that booklet. shelf: keeps booklets between builds.
    """
    results, groups = list(make_all(jobs, workers, shelf)), _together(jobs)
    again: dict[int, BookletJob] = {}
    for members in groups:
        most = most_sheets([results[at] for at in members])
        again |= {at: with_sheets(job, most) for at, job in members.items() if locked(results[at]) != most}
    for at, result in zip(again, make_all(again.values(), workers, shelf), strict=True):
        results[at] = result
    for members in groups:
        wrong = {id(result): problem for result, problem in unlike([results[at] for at in members])}
        for at in members:
            if (found := wrong.get(id(results[at]))) is not None:
                results[at] = replace(results[at], problems=(*results[at].problems, found))
    return tuple(results)


def _together(jobs: Sequence[Job]) -> Sequence[Mapping[int, BookletJob]]:
    """Return the booklets that are one phase and kind in different languages, by their places in `jobs`.

    Protocols are laid out in each language by itself.
    """
    groups: dict[tuple[str, int, str], dict[int, BookletJob]] = {}
    for at, job in enumerate(jobs):
        if isinstance(job, BookletJob):
            groups.setdefault((job.programme, job.phase, job.kind), {})[at] = job
    return tuple(groups.values())


def folded(job: BookletJob, result: BookletResult, fold: BookletJob) -> BookletResult:
    """Write the print file of a pocket booklet where `fold` says; its pages are sides of sheets."""
    pdf = impose(result.path.read_bytes(), right_to_left=job.voice.direction == "rtl")
    fold.output.write_bytes(pdf)
    return replace(result, path=fold.output, pages=result.pages // 2, problems=(), taken={})
