"""A build of what is published already changes nothing, and says so only where every file is as it was."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.publish.manifest import NAME, describe, to_text
from generator.shelf import Shelf
from generator.steps.unchanged import Counted, remember, state_of, still_there
from tests.content import write_content

COUNTED = Counted(pages=3, booklets=2, sheets=40)


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """Return a project's folder with content, look and a published site."""
    for path in ("overrides/main.html", "site_assets/tokens.css", "mkdocs.yml", "site/en/index.html"):
        (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / path).write_text(path, encoding="utf-8")
    write_content(tmp_path / "content")
    (tmp_path / "site" / NAME).write_text(to_text(describe(tmp_path / "site")), encoding="utf-8")
    return tmp_path


def known(project: Path, wanted: str = "usual", program: str = "one") -> Counted | None:
    """Return whether the site counts as unchanged; at first asking it is remembered."""
    shelf = Shelf(project / "shelf", program)
    state = state_of(project / "content", project, wanted)
    if not (project / "shelf").exists():
        remember(shelf, state, project / "site", COUNTED)
    return still_there(shelf, state, project / "site")


def test_the_same_again_is_known(project: Path) -> None:
    """What was counted at publishing is told again."""
    assert known(project) == known(project) == COUNTED


@pytest.mark.parametrize(
    "path",
    ["content/exercises/ankle-pump.yml", "overrides/main.html", "site_assets/tokens.css", "mkdocs.yml"],
)
def test_one_letter_of_content_or_look_makes_it_unknown(project: Path, path: str) -> None:
    """Each file that a build reads counts, whichever it is."""
    assert known(project) == COUNTED
    with (project / path).open("a", encoding="utf-8") as file:
        file.write("#")
    assert known(project) is None


def test_other_kinds_and_another_program_make_it_unknown(project: Path) -> None:
    """The same content gives another site for another wish or another program."""
    assert known(project) == COUNTED
    assert known(project, wanted="all") is None
    assert known(project, program="two") is None


@pytest.mark.parametrize("harm", ["changed", "removed", "added", "manifest"])
def test_a_site_that_somebody_touched_is_built_again(project: Path, harm: str) -> None:
    """The served folder is compared file by file with its manifest, and that with what was published."""
    assert known(project) == COUNTED
    page = project / "site" / "en" / "index.html"
    if harm == "removed":
        page.unlink()
    elif harm == "manifest":
        page.write_text("other", encoding="utf-8")
        (project / "site" / NAME).write_text(to_text(describe(project / "site")), encoding="utf-8")
    else:
        (page if harm == "changed" else page.with_name("more.html")).write_text("x", encoding="utf-8")
    assert known(project) is None
