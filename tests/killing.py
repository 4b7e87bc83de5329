"""Kills work at a chosen step, as the power switch would, to see what is left of its files."""

from __future__ import annotations

import itertools
import os
import signal
import sys
from collections.abc import Callable


def killed_at(step: int, watched: tuple[str, ...], work: Callable[[], object]) -> bool:
    """Do some work in a process that kills itself at a step; return whether it came that far.

    Every step at which Python talks to the system raises an audit event (PEP 578); those count whose names
    begin with one of `watched`.
    """
    child = os.fork()
    if child == 0:
        try:
            steps = itertools.count(1)

            def watch(event: str, _: tuple[object, ...]) -> None:
                if event.startswith(watched) and next(steps) == step:
                    os.kill(os.getpid(), signal.SIGKILL)

            sys.addaudithook(watch)
            work()
            os._exit(0)
        finally:
            os._exit(1)
    _, status = os.waitpid(child, 0)
    assert status in (0, signal.SIGKILL)
    return status != 0
