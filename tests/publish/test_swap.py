"""A reader never meets half a site while one takes the place of another."""

from __future__ import annotations

import os
import sys
import threading
from pathlib import Path

import pytest

from generator.publish.swap import JOURNAL, OLD, SITE, exchange, repair, swap

PAGES = ("a.html", "b.html", "c.html")


def site(folder: Path, words: str) -> Path:
    """Write a site whose every page holds the same words."""
    folder.mkdir(parents=True)
    for name in PAGES:
        (folder / name).write_text(words)
    return folder


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="renameat2 is a call of Linux")
def test_readers_meet_a_whole_site_during_hundreds_of_swaps(tmp_path: Path) -> None:
    """The address always leads to a folder, and what is read from that folder is of one build."""
    output, workshop = site(tmp_path / "site", "old"), tmp_path / "workshop"
    site(workshop / SITE, "new")
    done = threading.Event()
    seen: set[tuple[str, ...]] = set()
    failures: list[Exception] = []

    def read() -> None:
        while not done.is_set():
            try:
                folder = os.open(output, os.O_RDONLY | os.O_DIRECTORY)
                words = []
                for name in PAGES:
                    with os.fdopen(os.open(name, os.O_RDONLY, dir_fd=folder)) as stream:
                        words.append(stream.read())
                os.close(folder)
                seen.add(tuple(words))
            except OSError as error:
                failures.append(error)

    reader = threading.Thread(target=read)
    reader.start()
    for _ in range(600):
        swap(workshop, output)
    done.set()
    reader.join()
    assert failures == []
    assert seen == {("old",) * 3, ("new",) * 3}


def test_two_renames_put_the_old_site_aside(tmp_path: Path) -> None:
    """Where the exchange is impossible the result is the same, and a journal says what was under way."""
    output, workshop = site(tmp_path / "site", "old"), tmp_path / "workshop"
    site(workshop / SITE, "new")
    swap(workshop, output, at_once=False)
    assert (output / "a.html").read_text() == "new"
    assert (workshop / OLD / "a.html").read_text() == "old"
    assert (workshop / JOURNAL).is_file()
    repair(workshop, output)
    assert (output / "a.html").read_text() == "new"


def test_a_swap_stopped_between_two_renames_is_repaired(tmp_path: Path) -> None:
    """With the old site moved aside and no new one there, the old one comes back."""
    output, workshop = site(tmp_path / "site", "old"), tmp_path / "workshop"
    site(workshop / SITE, "new")
    (workshop / JOURNAL).write_text("{}")
    output.rename(workshop / OLD)
    repair(workshop, output)
    assert (output / "a.html").read_text() == "old"


def test_a_failing_second_rename_is_undone(tmp_path: Path) -> None:
    """When the new site cannot be moved in, the old one is back before the error is told."""
    output, workshop = site(tmp_path / "site", "old"), tmp_path / "workshop"
    workshop.mkdir()
    with pytest.raises(OSError, match="No such file"):
        swap(workshop, output, at_once=False)
    assert (output / "a.html").read_text() == "old"


def test_an_exchange_with_nothing_is_an_error_and_no_fallback(tmp_path: Path) -> None:
    """Only a system that lacks the call leads to two renames; a missing folder is told as such."""
    with pytest.raises(OSError, match="No such file"):
        exchange(tmp_path / "absent", site(tmp_path / "site", "old"))
