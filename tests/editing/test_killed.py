"""A writer that is killed leaves the file that was there or the new one, at whatever step it was."""

from __future__ import annotations

import itertools
import os
import signal
import sys
from pathlib import Path

from generator.editing import Draft, hash_of, replace_files

OLD, NEW = "reviews:\n" + "  - old\n" * 400, "reviews:\n" + "  - new\n" * 500


def killed_at(step: int, ledger: Path) -> bool:
    """Replace a ledger in a process that kills itself at a step; return whether it came that far.

    Every step at which Python talks to the system raises an audit event (PEP 578).
    """
    child = os.fork()
    if child == 0:
        try:
            steps = itertools.count(1)

            def watch(event: str, _: tuple[object, ...]) -> None:
                if event.startswith(("os.", "open")) and next(steps) == step:
                    os.kill(os.getpid(), signal.SIGKILL)

            sys.addaudithook(watch)
            replace_files({ledger: Draft(NEW, hash_of(ledger.read_bytes()))})
            os._exit(0)
        finally:
            os._exit(1)
    _, status = os.waitpid(child, 0)
    assert status in (0, signal.SIGKILL)
    return status != 0


def test_a_ledger_is_never_torn(tmp_path: Path) -> None:
    """Killed at every step of the writing, sign-offs and editions are as before or as they were to be."""
    ledger = tmp_path / "reviews.yml"
    seen = set()
    for step in itertools.count(1):
        ledger.write_text(OLD, encoding="utf-8")
        if not killed_at(step, ledger):
            break
        seen.add(ledger.read_text(encoding="utf-8"))
    assert step > 4
    assert ledger.read_text(encoding="utf-8") == NEW
    assert seen <= {OLD, NEW}
    assert OLD in seen
