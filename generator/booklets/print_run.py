"""Prints many booklets and protocols at a time, in processes that know all of their jobs from the start.

A job holds a whole catalogue: sent one by one, the reading of jobs would cost as much as a sheet each.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import partial

from generator.booklets.fonts import font_rules
from generator.booklets.make import make_booklet
from generator.booklets.protocol import make_protocol
from generator.booklets.protocol_values import ProtocolJob
from generator.booklets.values import BookletJob, BookletResult
from generator.pool import pool
from generator.shelf import Shelf

Job = BookletJob | ProtocolJob

# What this process prints; filled once when it begins, in processes made for a run only.
_known: list[Job] = []


def make_all(jobs: Iterable[Job], workers: int, shelf: Shelf | None = None) -> tuple[BookletResult, ...]:
    """Return the results of many jobs, in their order; each runs in one of `workers` processes.

    shelf: where sheets that would be the same are taken from, and new ones are put.
    """
    listed = tuple(jobs)
    if workers < 2 or len(listed) < 2:
        return tuple(_made(job, shelf) for job in listed)
    font_rules()  # cut once here, where processes begin as copies of this one
    with pool(min(workers, len(listed)), prepare=partial(_know, listed)) as processes:
        return tuple(processes.map(partial(_made_at, shelf), range(len(listed))))


def _know(jobs: Sequence[Job]) -> None:
    _known[:] = jobs


def _made_at(shelf: Shelf | None, place: int) -> BookletResult:
    return _made(_known[place], shelf)


def _made(job: Job, shelf: Shelf | None) -> BookletResult:
    return make_booklet(job, shelf) if isinstance(job, BookletJob) else make_protocol(job, shelf)
