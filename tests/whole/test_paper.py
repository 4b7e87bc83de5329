"""Paper from recording to the answer on its code: published, current, then out of date, and handed back."""

from __future__ import annotations

import hashlib
from pathlib import Path
from typing import Any

import pytest
from bs4 import BeautifulSoup

from tests.browsing import served
from tests.content import FILES, with_change, write_content
from tests.whole.command import phasebook

REPAIR = "programmes/tendon-repair.yml"
FIRST, MORE = "[5 times an hour, 10 times an hour]", "[10 times an hour]"
GOAL, OTHER_GOAL = "[Keep the blood moving.]", "[Keep your ankle supple.]"
NEWER = "There is a newer booklet. Something changed"


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


def walked(browser: Any, site: Path, *codes: str, script: bool = True) -> list[list[str]]:
    """Return for each code, opened from the address on paper, the lines of the answer that can be read."""
    context = browser.new_context(java_script_enabled=script, viewport={"width": 390, "height": 800})
    found = []
    with served(site) as address:
        for code in codes:
            tab = context.new_page()
            tab.goto(f"{address}en/check.html#{code}")
            tab.wait_for_load_state("networkidle")
            parts = tab.locator("#answer, .pb-told").all()
            lines = [line for part in parts if part.is_visible() for line in part.inner_text().splitlines()]
            found.append([line.strip() for line in lines if line.strip()])
            tab.close()
    context.close()
    return found


def asked_of_an_older_booklet(browser: Any, site: Path, code: str) -> None:
    """Ask for an older booklet, for one that nobody recorded and mistyped; then without a script."""
    mistyped = code[:-1] + ("0" if code[-1] != "0" else "1")
    older, unknown, wrong = walked(browser, site, code, "8000-0008", mistyped)
    told = [older.index(line) for line in (NEWER, "For your safety", "What else changed")]
    assert told == sorted(told)
    assert unknown[:2] == ["This code is not in our list.", "If a code is not here"]
    assert {"This code has a typing mistake.", f"Did you mean this one? {code}"} <= {*wrong}
    (plain,) = walked(browser, site, code, script=False)
    said_of = [plain.index(line) for line in (NEWER, "For your safety", "This booklet is current")]
    assert said_of == sorted(said_of)
    assert "If a code is not here" in plain


@pytest.mark.slow
def test_a_booklet_is_current_until_its_dose_changes_and_can_always_be_had_again(
    tmp_path: Path, browser: Any
) -> None:
    """Record, build, change a dose, build: the code answers each time, and the recorded file comes back.

    In the browser, with a script and without, safety comes first. The build after recording prints nothing:
    it publishes the very files that were kept.
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
    assert "This booklet is current" in walked(browser, site, code)[0]
    printed = (site / "en" / "booklets" / "tendon-repair-phase-1.pdf").read_bytes()

    changed = with_change(with_change(FILES, REPAIR, FIRST, MORE), REPAIR, GOAL, OTHER_GOAL)
    write_content(content, changed)
    assert "tendon-repair-phase-1.pdf" in said("build", *where, "--explain")
    now = answer(site, code)
    assert "This booklet is current" not in now
    assert "Ankle pump" in now
    asked_of_an_older_booklet(browser, site, code)

    back = tmp_path / "back.pdf"
    kept = ("--content", content, "--archive", archive, "--output", back)
    said("editions", "show", code, *kept)
    assert hashlib.sha256(back.read_bytes()).digest() == hashlib.sha256(printed).digest()
