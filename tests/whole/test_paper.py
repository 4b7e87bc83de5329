"""Paper from recording to the answer on its code: published, current, then out of date, and handed back."""

from __future__ import annotations

import hashlib
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from tests.content import FILES, with_change, write_content
from tests.whole.command import phasebook

REPAIR = "programmes/tendon-repair.yml"
FIRST, MORE = "[5 times an hour, 10 times an hour]", "[10 times an hour]"


def said(*arguments: str | Path) -> str:
    """Run a command that must end well, and return what it prints."""
    done = phasebook(*arguments)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def answer(site: Path, code: str) -> str:
    """Return what the page says of a code, as someone without script reads it, with its heading."""
    page = BeautifulSoup((site / "en" / "check.html").read_text("utf-8"), "html.parser")
    entry = page.find(id=code)
    assert entry is not None, code
    return " ".join(str(entry.find_parent("section").get_text(" ", strip=True)).split())  # type: ignore[union-attr]


@pytest.mark.slow
def test_a_booklet_is_current_until_its_dose_changes_and_can_always_be_had_again(tmp_path: Path) -> None:
    """Record, build, change a dose, build: the code answers each time, and the recorded file comes back.

    The build after recording prints nothing: it publishes the very files that were kept.
    """
    content = write_content(tmp_path / "content", FILES)
    site, archive = tmp_path / "site", tmp_path / "archive"
    where = ("--content", content, "--output", site, "--kinds", "standard")
    recorded = said("editions", "record", *where, "--archive", archive, "--date", "2026-11-25")
    assert "Now run: build" in recorded
    assert ".pdf" not in said("build", *where, "--explain").partition("Made anew:")[2]
    listed = said("editions", "list", "--content", content).splitlines()
    (code,) = (line.split()[0] for line in listed if "phase 1, en, standard" in line)
    assert "This booklet is current" in answer(site, code)
    printed = (site / "en" / "booklets" / "tendon-repair-phase-1.pdf").read_bytes()

    write_content(content, with_change(FILES, REPAIR, FIRST, MORE))
    assert "tendon-repair-phase-1.pdf" in said("build", *where, "--explain")
    now = answer(site, code)
    assert "This booklet is current" not in now
    assert "Ankle pump" in now

    back = tmp_path / "back.pdf"
    kept = ("--content", content, "--archive", archive, "--output", back)
    said("editions", "show", code, *kept)
    assert hashlib.sha256(back.read_bytes()).digest() == hashlib.sha256(printed).digest()
