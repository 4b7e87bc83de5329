"""Builds the demonstration once for all tests that look at it, also when tests share the cores."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.sharing import once
from tests.whole.command import phasebook


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the folder of the built demonstration; the first worker that asks builds it."""
    return once(tmp_path_factory, "demo", _built)


def _built(folder: Path) -> Path:
    done = phasebook("build", "--anew", "--output", folder / "site")
    assert done.returncode in (0, 3), done.stdout + done.stderr
    return folder / "site"
