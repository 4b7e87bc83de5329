"""Lets the workers of one run of tests share what takes long to make: the first that asks for it makes it."""

from __future__ import annotations

import fcntl
import os
import pickle
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar, cast

import pytest

T = TypeVar("T")


def once(factory: pytest.TempPathFactory, name: str, make: Callable[[Path], T]) -> T:
    """Return what `make` returns for an empty folder of this name; it is called once in a run of tests.

    What it returns is handed to other workers as a copy; the files in the folder are those of all, and nobody
    changes them.
    """
    base = factory.getbasetemp()
    # Beside the workers' own folders, so that a test's folder lies as deep as those that are shared.
    shared = base.parent / "of-all" if "PYTEST_XDIST_WORKER" in os.environ else base
    shared.mkdir(exist_ok=True)
    made = shared / f"{name}.made"
    with (shared / f"{name}.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if made.exists():
            return cast(T, pickle.loads(made.read_bytes()))
        folder = shared / f"{name}-shared"
        folder.mkdir()
        found = make(folder)
        made.write_bytes(pickle.dumps(found))
        return found
