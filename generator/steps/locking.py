"""Prints booklets so that all languages stand on the same sheets, and folds those that are folded."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from generator.booklets.imposition import impose
from generator.booklets.make import make_booklets
from generator.booklets.page_lock import locked, most_sheets, unlike, with_sheets
from generator.booklets.values import BookletJob, BookletResult
from generator.shelf import Shelf


def make_alike(
    jobs: Sequence[BookletJob], workers: int, shelf: Shelf | None = None
) -> tuple[BookletResult, ...]:
    """Return the results in the order of their jobs.

    Each is printed once; only what takes fewer sheets than another language is printed again. What still
    differs is an error of that booklet. shelf: keeps booklets between builds.
    """
    results = list(make_booklets(jobs, workers, shelf))
    again: dict[int, BookletJob] = {}
    for members in _together(jobs).values():
        most = most_sheets([results[at] for at in members])
        again |= {at: with_sheets(jobs[at], most) for at in members if locked(results[at]) != most}
    for at, result in zip(again, make_booklets(again.values(), workers, shelf), strict=True):
        results[at] = result
    for members in _together(jobs).values():
        wrong = {id(result): problem for result, problem in unlike([results[at] for at in members])}
        for at in members:
            if (found := wrong.get(id(results[at]))) is not None:
                results[at] = replace(results[at], problems=(*results[at].problems, found))
    return tuple(results)


def _together(jobs: Sequence[BookletJob]) -> Mapping[tuple[str, int, str], list[int]]:
    """Return the places of the jobs that are one phase and kind in different languages."""
    groups: dict[tuple[str, int, str], list[int]] = {}
    for at, job in enumerate(jobs):
        groups.setdefault((job.programme, job.phase, job.kind), []).append(at)
    return groups


def folded(job: BookletJob, result: BookletResult, fold: BookletJob) -> BookletResult:
    """Write the print file of a pocket booklet where `fold` says; its pages are sides of sheets."""
    pdf = impose(result.path.read_bytes(), right_to_left=job.voice.direction == "rtl")
    fold.output.write_bytes(pdf)
    return replace(result, path=fold.output, pages=result.pages // 2, problems=(), taken={})
