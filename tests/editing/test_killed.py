"""A writer that is killed leaves the file that was there or the new one, at whatever step it was."""

from __future__ import annotations

import itertools
from pathlib import Path

from generator.editing import Draft, hash_of, replace_files
from tests.killing import killed_at

OLD, NEW = "reviews:\n" + "  - old\n" * 400, "reviews:\n" + "  - new\n" * 500


def write(ledger: Path) -> None:
    """Replace a ledger as the program does."""
    replace_files({ledger: Draft(NEW, hash_of(ledger.read_bytes()))})


def test_a_ledger_is_never_torn(tmp_path: Path) -> None:
    """Killed at every step of the writing, sign-offs and editions are as before or as they were to be."""
    ledger = tmp_path / "reviews.yml"
    seen = set()
    for step in itertools.count(1):
        ledger.write_text(OLD, encoding="utf-8")
        if not killed_at(step, ("os.", "open"), lambda: write(ledger)):
            break
        seen.add(ledger.read_text(encoding="utf-8"))
    assert step > 4
    assert ledger.read_text(encoding="utf-8") == NEW
    assert seen <= {OLD, NEW}
    assert OLD in seen
