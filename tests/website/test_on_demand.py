"""A page that is made when it is asked for is the page that the whole build makes."""

from __future__ import annotations

import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from generator.website.engine import SiteJob
from generator.website.on_demand import OnDemand
from tests.website.small_site import HEEL_RAISE, Small

SOURCE = HEEL_RAISE.replace(".html", ".md")


@pytest.fixture
def job(small: Small, tmp_path: Path) -> SiteJob:
    """Return the built English pages, as a copy that a test may change."""
    built = next(one for one in small.jobs if one.language == "en")
    # The configuration names its folders from where it lies.
    shutil.copytree(small.site, tmp_path / "site")
    return replace(built, output=tmp_path / "site" / "en")


def renewed(job: SiteJob, text: str) -> None:
    """Write the source of one page, let it be taken, ask for the page, and put the source back."""
    source = job.pages / SOURCE
    before = source.read_text(encoding="utf-8")
    pages = OnDemand(job)
    try:
        source.write_text(text.format(before=before), encoding="utf-8")
        pages.renew()
        pages.make(HEEL_RAISE)
    finally:
        source.write_text(before, encoding="utf-8")


def test_every_page_comes_out_as_the_build_makes_it(job: SiteJob) -> None:
    """Made on demand, each page of a language is byte for byte the page that MkDocs wrote in its build."""
    sources = {path: path.read_text(encoding="utf-8") for path in job.pages.rglob("*.md")}
    built = {path: path.read_bytes() for path in job.output.rglob("*.html")}
    pages = OnDemand(job)
    try:
        for changed in (True, False):
            for path, text in sources.items():
                path.write_text(text + "\nChanged.\n" if changed else text, encoding="utf-8")
            pages.renew()
            for path in built:
                pages.make(path.relative_to(job.output).as_posix())
            same = [path for path, page in built.items() if path.read_bytes() == page]
            assert len(same) == (0 if changed else len(built))
    finally:
        for path, text in sources.items():
            path.write_text(text, encoding="utf-8")


def test_only_what_changed_is_made_anew(job: SiteJob) -> None:
    """A changed sentence shows in its page, and no other page is touched."""
    before = {path: path.stat().st_mtime_ns for path in job.output.rglob("*.html")}
    renewed(job, "{before}\nA sentence of today.\n")
    touched = [path for path, time in before.items() if path.stat().st_mtime_ns != time]
    assert touched == [job.output / HEEL_RAISE]
    assert "A sentence of today." in touched[0].read_text(encoding="utf-8")


def test_a_page_that_is_not_asked_for_costs_nothing(job: SiteJob) -> None:
    """Taking a change writes no page; asking twice writes it once."""
    pages = OnDemand(job)
    page = job.output / HEEL_RAISE
    before = page.stat().st_mtime_ns
    pages.make(HEEL_RAISE)
    assert page.stat().st_mtime_ns == before


def test_a_page_whose_source_is_gone_goes(job: SiteJob) -> None:
    """An exercise that was deleted has no page any more."""
    source = job.pages / SOURCE
    text = source.read_text(encoding="utf-8")
    pages = OnDemand(job)
    try:
        source.unlink()
        pages.renew()
    finally:
        source.write_text(text, encoding="utf-8")
    assert not (job.output / HEEL_RAISE).exists()
