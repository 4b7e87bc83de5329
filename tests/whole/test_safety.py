"""Safety texts are read back from the finished files: a template that loses one stops publishing."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tests.content import write_content
from tests.whole.command import PROJECT, phasebook

pytestmark = pytest.mark.slow


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """Return a copy of the program whose templates a test may spoil."""
    copy = tmp_path / "project"
    for name in ("generator", "overrides", "site_assets"):
        shutil.copytree(PROJECT / name, copy / name, ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(PROJECT / "mkdocs.yml", copy)
    write_content(copy / "content")
    return copy


def spoil(path: Path, words: str) -> None:
    """Take words out of a template that holds them."""
    text = path.read_text(encoding="utf-8")
    assert words in text
    path.write_text(text.replace(words, ""), encoding="utf-8")


def test_pages_without_the_deferral_note_are_never_published(project: Path) -> None:
    """A frame that leaves out the note to the treating clinician is found on every page; nothing appears."""
    for name in ("page-footer.html", "page-safety.html"):
        spoil(project / "overrides" / "partials" / name, "{{ frame.deferral | e }}")
    done = phasebook("build", "--kinds", "standard", project=project)
    assert done.returncode == 1, done.stdout + done.stderr
    assert "en/warning-signs.html: page-without-note" in done.stdout
    assert not (project / "site").exists()


def test_sheets_without_the_deferral_note_are_never_published(project: Path) -> None:
    """A margin that leaves out the note is found on every sheet of every booklet; nothing appears."""
    spoil(project / "generator" / "booklets" / "templates" / "margin.html", "{{ safety.deferral }}")
    done = phasebook("build", "--kinds", "standard", project=project)
    assert done.returncode == 1, done.stdout + done.stderr
    assert "en/booklets/tendon-repair-phase-1.pdf: booklet-margin-line" in done.stdout
    assert not (project / "site").exists()
