"""Recording and signing that are killed at any moment leave whole ledgers and whole files."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.steps.kills_of_ledgers import kill_ledgers
from tests.content import FILES

PROJECT = Path(__file__).parents[2]
SMALL = {name: text.encode() for name, text in FILES.items()}


@pytest.mark.slow
def test_five_kills_of_recording_and_of_signing(tmp_path: Path) -> None:
    """Each ledger is as it was or as it was to be, and every file that was kept is whole."""
    found = kill_ledgers(SMALL, 5, PROJECT, tmp_path, lambda _: None)
    assert found.faults == ()
    assert found.kills == 10
