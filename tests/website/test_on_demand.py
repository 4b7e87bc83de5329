"""A page that is made when it is asked for is the page that the whole build makes."""

from __future__ import annotations

import shutil
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

import pytest

from generator.website.engine import SiteJob
from generator.website.on_demand import OnDemand, Source
from tests.website.small_site import HEEL_RAISE, Small

pytestmark = pytest.mark.slow
SOURCE = HEEL_RAISE.replace(".html", ".md")


@pytest.fixture
def job(small: Small, tmp_path: Path) -> SiteJob:
    """Return the built English pages and their sources, as copies that a test may change."""
    built = next(one for one in small.jobs if one.language == "en")
    shutil.copytree(small.site, tmp_path / "site")
    return replace(built, output=tmp_path / "site" / "en")


def sources(job: SiteJob, more: str = "") -> Mapping[str, Source]:
    """Return what makes each page, with something added to each."""
    texts = {path: path.read_text(encoding="utf-8") + more for path in job.pages.rglob("*.md")}
    return {path.relative_to(job.pages).as_posix(): text.__str__ for path, text in texts.items()}


def test_every_page_comes_out_as_the_build_makes_it(job: SiteJob) -> None:
    """Made on demand, each page of a language is byte for byte the page that MkDocs wrote in its build."""
    built = {path: path.read_bytes() for path in job.output.rglob("*.html")}
    pages = OnDemand(job)
    for more, same in (("\nChanged.\n", 0), ("", len(built))):
        pages.renew(sources(job, more))
        for path in built:
            pages.make(path.relative_to(job.output).as_posix())
        assert sum(path.read_bytes() == page for path, page in built.items()) == same


def test_only_what_changed_is_made_anew(job: SiteJob) -> None:
    """A changed sentence shows in its page, and no other page is touched, whichever are asked for."""
    before = {path: path.stat().st_mtime_ns for path in job.output.rglob("*.html")}
    pages = OnDemand(job)
    text = (job.pages / SOURCE).read_text(encoding="utf-8") + "\nA sentence of today.\n"
    pages.renew({**sources(job), SOURCE: text.__str__})
    for path in before:
        pages.make(path.relative_to(job.output).as_posix())
    touched = [path for path, time in before.items() if path.stat().st_mtime_ns != time]
    assert touched == [job.output / HEEL_RAISE]
    assert "A sentence of today." in touched[0].read_text(encoding="utf-8")


def test_a_page_that_is_not_asked_for_is_not_made(job: SiteJob) -> None:
    """Taking a change makes no page, not even its source."""

    def never() -> str:
        raise AssertionError("nobody asked for this page")

    pages = OnDemand(job)
    pages.renew({**sources(job), SOURCE: never})
    pages.make("exercises/index.html")
    with pytest.raises(AssertionError, match="nobody asked"):
        pages.make(HEEL_RAISE)


def test_a_page_whose_source_is_gone_goes(job: SiteJob, tmp_path: Path) -> None:
    """An exercise that was deleted has no page any more, and the others can still be made."""
    # The configuration names its folders from where it lies; a sibling of that place sees them alike.
    for folder in (job.config.parent, job.pages.parent):
        shutil.copytree(folder, tmp_path / folder.name)
    own = replace(job, pages=tmp_path / "pages" / "en", config=tmp_path / "config" / job.config.name)
    pages = OnDemand(own)
    left = {name: source for name, source in sources(own).items() if name != SOURCE}
    (own.pages / SOURCE).unlink()
    text = left["exercises/index.md"]() + "\nOne less.\n"
    pages.renew({**left, "exercises/index.md": text.__str__})
    pages.make("exercises/index.html")
    pages.make(HEEL_RAISE)
    assert not (own.output / HEEL_RAISE).exists()
    assert "One less." in (own.output / "exercises/index.html").read_text(encoding="utf-8")
