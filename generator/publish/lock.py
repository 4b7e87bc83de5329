"""Lets one build at a time write to an output folder, and tells the second one so at once."""

from __future__ import annotations

import fcntl
import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from generator.problems import Place
from generator.publish.refusals import BUSY, Busy, from_system


@contextmanager
def locked(output: Path) -> Iterator[None]:
    """Hold ``.<name>.lock`` beside `output`; Busy when another process holds it.

    The system frees the lock of a killed process, so a lock file left behind is harmless.
    """
    path = output.with_name(f".{output.name}.lock")
    descriptor = _acquire(path, output)
    try:
        os.ftruncate(descriptor, 0)
        os.pwrite(descriptor, f"{os.getpid()}\n".encode(), 0)
        yield
    finally:
        # Removed while still held: whoever opened the old file sees in `_acquire` that it is gone.
        with suppress(OSError):
            path.unlink()
        os.close(descriptor)


def _acquire(path: Path, output: Path) -> int:
    """Return an open, locked descriptor of the lock file that lies at `path` at this moment."""
    while True:
        try:
            descriptor = os.open(path, os.O_RDWR | os.O_CREAT | os.O_NOFOLLOW | os.O_CLOEXEC, 0o644)
        except OSError as error:
            raise from_system(error, path) from error
        try:
            fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
            if _is_at(path, descriptor):
                return descriptor
        except BlockingIOError:
            holder = os.pread(descriptor, 20, 0).decode("ascii", "replace").strip()
            os.close(descriptor)
            who = f" (process {holder})" if holder else ""
            raise Busy(BUSY.at(Place(str(output)), f"another build{who} is writing here")) from None
        except OSError as error:
            os.close(descriptor)
            raise from_system(error, path) from error
        os.close(descriptor)


def _is_at(path: Path, descriptor: int) -> bool:
    """Return whether the open file is still the one that `path` names."""
    try:
        return os.path.samestat(path.stat(), os.fstat(descriptor))
    except FileNotFoundError:
        return False
