"""Gives work to processes of their own that end with the build: what is killed leaves nothing running behind.

The one place where processes are made; whoever has a cluster gives another executor here.
"""

from __future__ import annotations

import os
import threading
from collections.abc import Callable
from concurrent.futures import Executor, ProcessPoolExecutor
from multiprocessing import connection, get_context, parent_process


def pool(
    workers: int,
    *,
    fresh: bool = False,
    task_each: bool = False,
    prepare: Callable[[], None] | None = None,
) -> Executor:
    """Return an executor with at most that many processes.

    fresh: they start from nothing and not as the system usually makes them, which may be copies of this one.
    task_each: one task a process. prepare: what each does first.
    """
    return ProcessPoolExecutor(
        workers,
        get_context("spawn") if fresh else None,
        _begin,
        (prepare,),
        max_tasks_per_child=1 if task_each else None,
    )


def _begin(prepare: Callable[[], None] | None) -> None:
    threading.Thread(target=_end_with_parent, daemon=True).start()
    if prepare is not None:
        prepare()


def _end_with_parent() -> None:
    """End this process when the one that made it has ended, in whatever way.

    Left alone it would wait for work for ever, and a copy of the build would hold its lock as long.
    """
    if (parent := parent_process()) is not None:
        connection.wait([parent.sentinel])
        os._exit(1)
