"""Holds the build of the small site to silence, sameness, whole pages, and texts that stay texts."""

from __future__ import annotations

import csv
import json
import os
import shutil
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from generator.catalogue.base import Text
from generator.website.assets import write_assets
from generator.website.engine import SiteJob, build_languages
from generator.website.values import SiteInput
from tests.nu import complaints
from tests.website.paper import served_inputs
from tests.website.small_site import (
    BOOKLET,
    CLINICIANS,
    CODES,
    EVIDENCE,
    HEEL_RAISE,
    HELPER,
    ORDER,
    PATIENT_2,
    PHASE_2,
    PROGRAMME,
    PROJECT,
    PROTOCOL,
    REPORTING,
    STAIRS,
    Small,
    audit,
    build,
    prepare,
    site_inputs,
)

pytestmark = pytest.mark.slow

# One page of each template, in each language.
OF_EACH_LANGUAGE = (
    *("index.html", PROGRAMME, PHASE_2, "exercises/index.html", HEEL_RAISE, STAIRS, HELPER, "check.html"),
    *("warning-signs.html", "glossary.html", "about.html", CLINICIANS, ORDER, EVIDENCE, PROTOCOL, PATIENT_2),
    REPORTING,
)
TEMPLATES = (
    *(f"{code}/{name}" for code in CODES for name in OF_EACH_LANGUAGE),
    *("en/editors/codes.html", "en/editors/fields.html", "index.html", "404.html"),
)
HOSTILE = 'A <b>bold</b> `tick` ~~~ {{ 7 * 7 }} {% x %} "it\'s" *star* [link](x) &amp; # $ \\ <script>'


def contents(site: Path) -> dict[str, bytes]:
    """Return every file of a site by its path."""
    return {p.relative_to(site).as_posix(): p.read_bytes() for p in sorted(site.rglob("*")) if p.is_file()}


@pytest.fixture(scope="module")
def english(tmp_path_factory: pytest.TempPathFactory, fonts: Path) -> Small:
    """Prepare English alone, not built; a test copies it before it changes anything."""
    return prepare(tmp_path_factory.mktemp("english"), fonts, site_inputs(codes=("en",)))


def copied(english: Small, work: Path) -> SiteJob:
    """Return the one job of a copy that may be spoilt."""
    job = english.jobs[0]
    shutil.copytree(job.pages, work / "pages")
    shutil.copytree(job.config.parent, work / "config")
    config = work / "config" / job.config.name
    settings = json.loads(config.read_text("utf-8"))
    for key, path in (("docs_dir", work / "pages"), ("site_dir", work / "site")):
        settings[key] = os.path.relpath(path, config.parent)
    settings["INHERIT"] = os.path.relpath(PROJECT / "mkdocs.yml", config.parent)
    settings["theme"]["custom_dir"] = os.path.relpath(PROJECT / "overrides", config.parent)
    config.write_text(json.dumps(settings), "utf-8")
    return SiteJob(job.language, job.direction, work / "pages", work / "site", config)


def test_the_audit_finds_nothing_missing_and_no_broken_link(small: Small) -> None:
    """Notes, doses, promised texts, links, directions, outside requests: over all pages of all languages."""
    assert audit(small) == ()


def test_two_builds_in_two_folders_are_the_same_byte_for_byte(small: Small, tmp_path: Path) -> None:
    """The same content gives the same bytes wherever it is built, fonts made anew included.

    All languages are written, and the one from right to left is built.
    """
    again = prepare(tmp_path / "elsewhere", tmp_path / "fonts-made-anew", served_inputs())
    arabic = tuple(job for job in again.jobs if job.language == "ar")
    assert build(replace(again, jobs=arabic)) == ()
    before = contents(small.site)
    assert contents(again.site) == {
        path: data for path, data in before.items() if not path.startswith(("en/", "de/"))
    }


def test_languages_share_one_assets_folder(small: Small) -> None:
    """No language carries assets of its own, nor a sitemap, nor a not-found page, nor a source map."""
    names = set(contents(small.site))
    assert {name.split("/")[0] for name in names} == {"assets", "en", "de", "ar", "index.html", "404.html"}
    assert not [n for n in names if "/assets/" in n or "sitemap" in n or n.endswith(("/404.html", ".map"))]


def test_only_search_rules_that_a_built_language_needs_are_kept(small: Small, tmp_path: Path) -> None:
    """English, German and Arabic need no rules; Japanese, which has no blanks between words, does."""
    assert [n for n in contents(small.site) if "/lunr/" in n] == []
    write_assets(PROJECT / "site_assets", (), ["ja"], tmp_path)
    rules = {Path(n).name for n in contents(tmp_path) if "/lunr/" in n}
    assert rules == {"lunr.ja.min.js", "lunr.stemmer.support.min.js", "tinyseg.js"}


def test_the_chooser_stays_on_the_page(small: Small) -> None:
    """From an exercise in English the chooser leads to the same exercise in Arabic."""
    page = (small.site / "en" / HEEL_RAISE).read_text("utf-8")
    assert f'href="../../ar/{HEEL_RAISE}" lang="ar"' in page


def test_a_page_of_one_language_sends_the_chooser_home(small: Small) -> None:
    """Editors' pages exist in one language; the others are reached at their first page, never at a gap."""
    page = (small.site / "en/editors/codes.html").read_text("utf-8")
    assert 'href="../../ar/index.html" lang="ar"' in page


def test_every_page_carries_note_warning_signs_and_telephone(small: Small) -> None:
    """The deferral note, the warning signs within one click and the clinic line stand on every page."""
    for path in (small.site / "en").rglob("*.html"):
        page = path.read_text("utf-8")
        assert 'data-pb-note="deferral">Do these exercises only as your physiotherapist' in page, path
        assert 'warning-signs.html"' in page, path
        assert 'href="tel:0555010200"' in page, path
        assert "Demonstration, not for treatment" in page, path


def test_no_page_holds_a_script_or_style_of_its_own(small: Small) -> None:
    """Scripts come from files; the only other script element is data; no style stands in a page."""
    for path in small.site.rglob("*.html"):
        page = path.read_text("utf-8")
        inline = [part.split(">")[0] for part in page.split("<script")[1:] if not part.startswith(" src=")]
        assert set(inline) <= {' id="__config" type="application/json"'}, path
        assert "<style" not in page, path
        assert " style=" not in page, path


def test_the_search_knows_patients_pages_and_no_others(small: Small) -> None:
    """A patient who searches finds exercises, and neither percentages of activity nor codes of problems."""
    index = json.loads((small.site / "en/search/search_index.json").read_text("utf-8"))
    found = {entry["location"].split("#")[0] for entry in index["docs"]}
    assert {HEEL_RAISE, PHASE_2, "warning-signs.html", "index.html"} <= found
    assert not [path for path in found if path.startswith(("clinicians/", "editors/"))]


def test_pages_for_editors_are_kept_out_of_search_engines(small: Small) -> None:
    """Only those say so; patients' pages may be found where the clinic opens its site."""
    marked = [p for p in (small.site / "en").rglob("*.html") if 'content="noindex"' in p.read_text("utf-8")]
    assert {path.name for path in marked} == {"codes.html", "fields.html"}


def test_hostile_text_comes_out_as_it_was_typed(tmp_path: Path, fonts: Path) -> None:
    """Markup, Markdown, templates and quotes in a text are letters like any other, in page and head."""
    prepared = prepare(tmp_path, fonts, (hostile(site_inputs(codes=("en",))[0]),))
    assert build(prepared) == ()
    page = BeautifulSoup((prepared.site / "en" / HEEL_RAISE).read_text("utf-8"), "html.parser")
    for selector in (
        "h1",
        ".pb-lead",
        ".pb-steps li",
        ".pb-belongs__programme",
        ".pb-dose__note",
        ".pb-clinic",
    ):
        assert page.select(selector)[0].get_text() == HOSTILE, selector
    assert page.title is not None
    assert page.title.get_text() == f"{HOSTILE} · {HOSTILE}"
    assert page.select('meta[name="description"]')[0]["content"] == HOSTILE
    assert page.select("main b, main em, main del, main code, main script") == []
    assert page.select(".pb-footer__page") == [], "no address where the clinic has named none"
    assert [p for p in audit(prepared) if p.code != "dose-not-in-catalogue"] == []


def hostile(one: SiteInput) -> SiteInput:
    """Return the input with the hostile text in places that go different ways into a page."""
    bad = Text(HOSTILE, words=HOSTILE, language="en")
    catalogue = one.catalogue
    exercise = catalogue.exercises["heel-raise"]
    exercise = replace(exercise, name=bad, purpose=bad, steps=(bad, *exercise.steps[1:]))
    programme = catalogue.programmes["tendon-repair"]
    second = replace(programme.phases[1], going_up=bad, name=bad)
    programme = replace(programme, name=bad, phases=(programme.phases[0], second))
    changed = replace(
        catalogue,
        clinic=replace(catalogue.clinic, name=bad),
        exercises={**catalogue.exercises, "heel-raise": exercise},
        programmes={"tendon-repair": programme},
    )
    in_use: Mapping[tuple[str, int, str], object] = {**one.in_use}
    assert ("tendon-repair", 2, "heel-raise") in in_use
    return replace(
        one, catalogue=changed, in_use={**one.in_use, ("tendon-repair", 2, "heel-raise"): exercise}
    )


def test_the_pages_are_valid_html(small: Small) -> None:
    """The Nu HTML checker (validator.github.io, npm vnu-jar) finds no error in any template and language."""
    assert complaints(small.site, TEMPLATES) == []


def test_a_broken_markdown_link_is_a_finding_at_its_page(english: Small, tmp_path: Path) -> None:
    """A Markdown link to a page that was not written stops the build and names the page."""
    job = copied(english, tmp_path)
    page = job.pages / PHASE_2.replace(".html", ".md")
    page.write_text(page.read_text("utf-8") + "\n[gone](exercises/gone.md)\n", "utf-8")
    _, found = build_languages([job], 1)
    assert [(p.code, p.place.path) for p in found] == [
        ("site-page-link", f"en/{PHASE_2.replace('.html', '.md')}")
    ]
    assert "exercises/gone.md" in found[0].message


def test_a_page_missing_from_the_menu_is_a_finding(english: Small, tmp_path: Path) -> None:
    """A page that neither the menu nor the list of pages outside it names breaks the silence."""
    job = copied(english, tmp_path)
    shutil.copy(job.pages / "glossary.md", job.pages / "stray.md")
    _, found = build_languages([job], 1)
    assert [p.code for p in found] == ["site-engine-warning"]
    assert "stray.md" in found[0].message


def test_a_build_that_cannot_start_is_a_finding_and_no_traceback(english: Small, tmp_path: Path) -> None:
    """A configuration that is not there yields a finding for its language."""
    _, found = build_languages([replace(english.jobs[0], config=tmp_path / "none.yml")], 1)
    assert [(p.code, p.place.path) for p in found] == [("site-engine-failed", "en")]


def test_configuration_texts_stay_texts(english: Small, tmp_path: Path) -> None:
    """A clinic that calls itself "no: 0123" is still called that when MkDocs reads the configuration."""
    from mkdocs.config import load_config

    job = copied(english, tmp_path)
    settings = json.loads(job.config.read_text("utf-8"))
    settings["extra"]["frame"]["clinic"] = "no: 0123 # !ENV [X] & ü\u00a0\U0001f9b4"
    job.config.write_text(json.dumps(settings, ensure_ascii=False), "utf-8")
    with job.config.open("rb") as stream:
        read = load_config(stream)
    assert read.extra["frame"]["clinic"] == settings["extra"]["frame"]["clinic"]


def test_a_booklet_is_reached_from_its_phase(small: Small) -> None:
    """The address in the page leads to the file beside the pages of its language."""
    page = BeautifulSoup((small.site / "en" / PHASE_2).read_text("utf-8"), "html.parser")
    target = small.site / "en" / Path(PHASE_2).parent / str(page.select(".pb-download a")[0]["href"])
    assert target.resolve() == (small.site / "en" / BOOKLET.path).resolve()
    assert target.is_file()


def test_the_numbers_lie_beside_the_page_for_clinicians(small: Small) -> None:
    """Page, JSON and CSV agree on the estimate, and every file that the page offers is there."""
    folder = small.site / "en" / Path(CLINICIANS).parent
    page = BeautifulSoup((small.site / "en" / CLINICIANS).read_text("utf-8"), "html.parser")
    offered = [str(link["href"]) for link in page.select("#data a[download]")]
    assert offered == ["tendon-repair.csv", "tendon-repair.json", "tendon-repair-studies.json"]
    told = json.loads((folder / "tendon-repair.json").read_text("utf-8"))
    raise_ = next(use for use in told["uses"] if use["exercise"] == "heel-raise")
    table = (folder / "tendon-repair.csv").read_text("utf-8")
    row = next(row for row in csv.DictReader(table.splitlines()) if row["exercise"] == "heel-raise")
    assert (raise_["estimate"]["mean"], float(row["mean"])) == (34.5, 34.5)
    studies = json.loads((folder / "tendon-repair-studies.json").read_text("utf-8"))
    assert [study["id"] for study in studies] == ["invented-2001"]
