"""A build that is killed at any moment leaves a whole site, no process, and a clean start for the next."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from generator.steps.kills import kill_builds, second_state
from tests.content import FILES

PROJECT = Path(__file__).parents[2]
SMALL = {name: text.encode() for name, text in FILES.items()}


@pytest.mark.slow
def test_five_kills_at_random_moments(tmp_path: Path) -> None:
    """What a reader gets meanwhile is whole, the old or the new; the last build comes out as the first."""
    told: list[str] = []
    found = kill_builds((SMALL, second_state(SMALL)), 5, PROJECT, tmp_path, told.append)
    assert found.faults == ()
    assert found.kills == 5
    assert found.reads > 100


PARENT = """
import os, sys, time
from generator.pool import pool
if __name__ == "__main__":
    with pool(2, fresh=sys.argv[1] == "fresh") as processes:
        for work in [(os.write, 1, b"."), (time.sleep, 60), (time.sleep, 60)]:
            at_work = processes.submit(*work)
        at_work.result()
"""


@pytest.mark.parametrize("how", ["fresh", "as usual"])
def test_processes_of_a_killed_build_end_with_it(tmp_path: Path, how: str) -> None:
    """A process at work ends at once: it would hold memory, and a copy of the build its lock, for ever."""
    script = tmp_path / "parent.py"
    script.write_text(PARENT, encoding="utf-8")
    # Output that is shared with the children says when the last of them has ended.
    parent = subprocess.Popen(
        [sys.executable, str(script), how],
        env={**os.environ, "PYTHONPATH": str(PROJECT)},
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
    )
    assert parent.stdout is not None
    assert parent.stdout.read(1) == b"."
    parent.send_signal(signal.SIGKILL)
    started = time.monotonic()
    assert parent.stdout.read() == b""
    parent.wait()
    parent.stdout.close()
    assert time.monotonic() - started < 30
