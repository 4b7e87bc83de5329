"""One build at a time holds an output folder, however fast builds follow each other."""

import threading
import time
from pathlib import Path

import pytest

from generator.publish import Busy
from generator.publish.lock import locked


@pytest.mark.slow
def test_two_never_hold_the_lock_although_its_file_is_removed_each_time(tmp_path: Path) -> None:
    """A lock on a file that its holder has just removed is no lock: whoever gets it tries again."""
    inside = threading.Semaphore(1)
    overlaps: list[str] = []
    held: list[int] = []

    def build(number: int) -> None:
        while len(held) < 400 and not overlaps:
            try:
                with locked(tmp_path / "site"):
                    if not inside.acquire(blocking=False):
                        overlaps.append("two builds at once")
                        continue
                    time.sleep(0.0002)
                    held.append(number)
                    inside.release()
            except Busy:
                continue

    threads = [threading.Thread(target=build, args=(number,)) for number in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert overlaps == []
    assert list(tmp_path.iterdir()) == []
