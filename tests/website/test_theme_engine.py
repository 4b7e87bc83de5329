"""Holds the build of one sample site to silence, sameness, and whole links."""

from __future__ import annotations

import json
import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from generator.website.assets import write_assets
from generator.website.engine import SiteJob, build_languages
from generator.website.links import check_links
from tests.website.theme_sample import LANGUAGES, PROJECT, Sample, build, prepare


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """One folder of prepared fonts for all tests of this file."""
    return tmp_path_factory.mktemp("fonts")


@pytest.fixture(scope="module")
def sample(tmp_path_factory: pytest.TempPathFactory, cache: Path) -> Sample:
    """Build the sample once, without a finding."""
    prepared = prepare(tmp_path_factory.mktemp("sample"), cache)
    assert build(prepared) == ()
    return prepared


def contents(site: Path) -> dict[str, bytes]:
    """Return every file of a site by its path."""
    return {p.relative_to(site).as_posix(): p.read_bytes() for p in sorted(site.rglob("*")) if p.is_file()}


def one_language(work: Path, cache: Path) -> tuple[Sample, SiteJob]:
    """Return a sample of English alone, not built yet."""
    prepared = prepare(work, cache, LANGUAGES[:1])
    return prepared, prepared.jobs[0]


@pytest.mark.slow
def test_all_links_of_the_finished_site_lead_somewhere(sample: Sample) -> None:
    """No link of a sound sample is broken, across languages too."""
    assert check_links(sample.site) == ()


@pytest.mark.slow
def test_two_builds_in_two_folders_are_the_same_byte_for_byte(sample: Sample, tmp_path: Path) -> None:
    """The same pages give the same bytes wherever they are built, fonts made anew included."""
    again = prepare(tmp_path / "elsewhere", tmp_path / "fonts-made-anew")
    assert build(again) == ()
    assert contents(again.site) == contents(sample.site)


@pytest.mark.slow
def test_languages_share_one_assets_folder(sample: Sample) -> None:
    """No language carries assets of its own, nor a sitemap, nor a not-found page, nor a source map."""
    names = set(contents(sample.site))
    assert {name.split("/")[0] for name in names} == {"assets", "en", "de", "ar"}
    assert not [n for n in names if "/assets/" in n or "sitemap" in n or n.endswith(("404.html", ".map"))]


@pytest.mark.slow
def test_only_search_rules_that_a_built_language_needs_are_kept(sample: Sample, tmp_path: Path) -> None:
    """English, German and Arabic need no rules; Japanese, which has no blanks between words, does."""
    assert [n for n in contents(sample.site) if "/lunr/" in n] == []
    write_assets(PROJECT / "site_assets", (), ["ja"], tmp_path)
    rules = {Path(n).name for n in contents(tmp_path) if "/lunr/" in n}
    assert rules == {"lunr.ja.min.js", "lunr.stemmer.support.min.js", "tinyseg.js"}


@pytest.mark.slow
@pytest.mark.parametrize(("code", "direction"), [("en", "ltr"), ("de", "ltr"), ("ar", "rtl")])
def test_each_page_says_its_language_and_direction(sample: Sample, code: str, direction: str) -> None:
    """The root element names the language by its code and the direction of its script."""
    for path in (sample.site / code).rglob("*.html"):
        assert f'<html lang="{code}" dir="{direction}"' in path.read_text("utf-8"), path


@pytest.mark.slow
def test_the_chooser_stays_on_the_page(sample: Sample) -> None:
    """From an exercise in English the chooser leads to the same exercise in Arabic."""
    page = (sample.site / "en/exercises/bridge.html").read_text("utf-8")
    assert 'href="../../ar/exercises/bridge.html" lang="ar"' in page


@pytest.mark.slow
def test_every_page_carries_note_warning_signs_and_telephone(sample: Sample) -> None:
    """The deferral note, the warning signs within one click and the clinic line stand on every page."""
    for path in (sample.site / "en").rglob("*.html"):
        page = path.read_text("utf-8")
        assert 'data-pb-note="deferral">This does not replace' in page, path
        assert 'warning-signs.html"' in page, path
        assert 'href="tel:+441632960100"' in page, path
        assert "Demonstration, not for treatment" in page, path


@pytest.mark.slow
def test_no_page_holds_a_script_or_style_of_its_own(sample: Sample) -> None:
    """Scripts come from files; the only other script element is data; no style stands in a page."""
    for path in sample.site.rglob("*.html"):
        page = path.read_text("utf-8")
        inline = [part for part in page.split("<script")[1:] if not part.startswith(" src=")]
        assert [part.split(">")[0] for part in inline] == [' id="__config" type="application/json"'], path
        assert "<style" not in page, path
        assert " style=" not in page, path
        assert " onclick=" not in page, path


@pytest.mark.slow
def test_a_broken_markdown_link_is_a_finding_at_its_page(tmp_path: Path, cache: Path) -> None:
    """A Markdown link to a page that was not written stops the build and names the page."""
    _, job = one_language(tmp_path, cache)
    page = job.pages / "phase.md"
    page.write_text(page.read_text("utf-8") + "\n[gone](exercises/gone.md)\n", "utf-8")
    found = build_languages([job], 1)
    assert [(p.code, p.place.path) for p in found] == [("site-page-link", "en/phase.md")]
    assert "exercises/gone.md" in found[0].message


@pytest.mark.slow
def test_a_broken_link_in_the_html_is_a_finding_with_its_line(tmp_path: Path, cache: Path) -> None:
    """A link in a page's own HTML is followed too, and so is the spot it names."""
    prepared, job = one_language(tmp_path, cache)
    page = job.pages / "phase.md"
    planted = '<div class="pb-page"><a href="exercises/gone.html">x</a><a href="index.html#nowhere">y</a>'
    page.write_text(page.read_text("utf-8").replace('<div class="pb-page">', planted), "utf-8")
    assert build_languages([job], 1) == ()
    found = check_links(prepared.site)
    assert [(p.code, p.place.path, p.place.line > 0) for p in found] == [
        ("site-broken-link", "en/phase.html", True)
    ] * 2
    assert "en/exercises/gone.html" in found[0].message
    assert "#nowhere" in found[1].message


@pytest.mark.slow
def test_a_picture_from_another_host_is_a_safety_finding(tmp_path: Path, cache: Path) -> None:
    """A page may point to a source elsewhere but must load nothing from there."""
    prepared, job = one_language(tmp_path, cache)
    page = job.pages / "phase.md"
    planted = '<div class="pb-page"><img alt="" src="https://example.org/a.png"><a href="https://doi.org/10.1/x">s</a>'
    page.write_text(page.read_text("utf-8").replace('<div class="pb-page">', planted), "utf-8")
    assert build_languages([job], 1) == ()
    found = check_links(prepared.site)
    assert [(p.code, p.safety) for p in found] == [("site-outside-request", True)]


@pytest.mark.slow
def test_a_page_missing_from_the_menu_is_a_finding(tmp_path: Path, cache: Path) -> None:
    """A page that neither the menu nor the list of pages outside it names breaks the silence."""
    _, job = one_language(tmp_path, cache)
    shutil.copy(job.pages / "phase.md", job.pages / "stray.md")
    found = build_languages([job], 1)
    assert [p.code for p in found] == ["site-engine-warning"]
    assert "stray.md" in found[0].message


@pytest.mark.slow
def test_a_build_that_cannot_start_is_a_finding_and_no_traceback(tmp_path: Path, cache: Path) -> None:
    """A configuration that is not there yields a finding for its language."""
    _, job = one_language(tmp_path, cache)
    found = build_languages([replace(job, config=tmp_path / "none.yml")], 1)
    assert [(p.code, p.place.path) for p in found] == [("site-engine-failed", "en")]


def test_configuration_texts_stay_texts(tmp_path: Path, cache: Path) -> None:
    """A clinic that calls itself "no: 0123" is still called that when MkDocs reads the configuration."""
    from mkdocs.config import load_config

    _, job = one_language(tmp_path, cache)
    settings = json.loads(job.config.read_text("utf-8"))
    settings["extra"]["frame"]["clinic"] = "no: 0123 # !ENV [X] & ü\u00a0\U0001f9b4"
    job.config.write_text(json.dumps(settings, ensure_ascii=False), "utf-8")
    with job.config.open("rb") as stream:
        read = load_config(stream)
    assert read.extra["frame"]["clinic"] == settings["extra"]["frame"]["clinic"]
