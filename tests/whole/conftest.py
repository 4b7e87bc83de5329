"""Builds the demonstration once for all tests that look at it, also when tests share the cores."""

from __future__ import annotations

import fcntl
import os
from pathlib import Path

import pytest

from tests.whole.command import phasebook


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the folder of the built demonstration; the first worker that asks builds it."""
    shared = tmp_path_factory.getbasetemp().parent if _has_workers() else tmp_path_factory.getbasetemp()
    site = shared / "demo" / "site"
    site.parent.mkdir(exist_ok=True)
    with (shared / "demo.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not site.exists():
            done = phasebook("build", "--anew", "--output", site)
            assert done.returncode in (0, 3), done.stdout + done.stderr
    return site


def _has_workers() -> bool:
    return "PYTEST_XDIST_WORKER" in os.environ
