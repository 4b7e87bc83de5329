"""The two pages at the root speak every language and lead on without any script."""

from __future__ import annotations

from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from generator.website.assets import write_assets
from generator.website.root import base_path, write_root
from tests.content import FILES, with_change
from tests.website.small_site import CODES, PROJECT, Small, site_inputs


def written(output: Path, codes: tuple[str, ...], address: str = "") -> dict[str, BeautifulSoup]:
    """Return both root pages for some languages, served under an address."""
    files = FILES
    if address:
        files = with_change(FILES, "clinic.yml", "paper: A4", f"base-address: {address}\npaper: A4")
    inputs = site_inputs(files, codes)
    assets = write_assets(PROJECT / "site_assets", (), codes, output)
    facts = write_root(inputs, assets, output)
    assert [fact.path for fact in facts] == ["index.html", "404.html"]
    return {
        name: BeautifulSoup((output / name).read_text("utf-8"), "html.parser")
        for name in ("index.html", "404.html")
    }


def test_each_root_page_names_every_language_by_its_own_name(tmp_path: Path) -> None:
    """With its note, its demonstration line and its warning signs, under one main heading."""
    pages = written(tmp_path, CODES)
    names = [link.get_text() for link in pages["index.html"].select("a[data-pb-door]")]
    assert names == ["English", "Deutsch", "العربية"]
    for page in pages.values():
        assert len(page.find_all("h1")) == 1
        parts = page.select(".pb-greeting")
        assert [(part["lang"], part["dir"]) for part in parts] == [
            ("en", "ltr"),
            ("de", "ltr"),
            ("ar", "rtl"),
        ]
        for part in parts:
            assert part.select(f'a[href$="{part["lang"]}/warning-signs.html"]')
            assert part.select(".pb-demo")


def test_one_language_needs_no_choice_and_no_script(tmp_path: Path) -> None:
    """A single language is gone on to at once, by the page itself; nothing is asked of the browser."""
    page = written(tmp_path, ("en",))["index.html"]
    assert page.select("script") == []
    assert page.select('meta[http-equiv="refresh"]')[0]["content"] == "0; url=en/index.html"
    assert list(tmp_path.rglob("choose*.js")) == []


def test_several_languages_have_one_script_file_and_no_redirect(tmp_path: Path) -> None:
    """The file lies in the shared assets; the page lists all languages without it."""
    page = written(tmp_path, CODES)["index.html"]
    scripts = [str(script["src"]) for script in page.select("script")]
    assert [(tmp_path / script).is_file() for script in scripts] == [True]
    assert page.select("meta[http-equiv]") == []


@pytest.mark.parametrize(
    ("address", "start"),
    [
        ("", "/"),
        ("https://clinic.example", "/"),
        ("https://clinic.example/hip/exercises/", "/hip/exercises/"),
    ],
)
def test_the_page_for_lost_readers_works_at_any_depth(tmp_path: Path, address: str, start: str) -> None:
    """A wrong address may lie in any folder, so links begin at the site's own root and nowhere else."""
    page = written(tmp_path, CODES, address)["404.html"]
    addresses = [str(tag.get("href") or tag.get("src")) for tag in page.select("[href], [src]")]
    inside = [one for one in addresses if not one.startswith("tel:")]
    assert inside
    assert [one for one in inside if not one.startswith(start)] == []
    files = (
        FILES
        if not address
        else with_change(FILES, "clinic.yml", "paper: A4", f"base-address: {address}\npaper: A4")
    )
    assert base_path(site_inputs(files, ("en",))[0].catalogue.clinic) == start


@pytest.mark.slow
def test_what_the_root_pages_name_is_in_the_site(small: Small) -> None:
    """Styles, icon, script and the first page of each language exist."""
    page = BeautifulSoup((small.site / "index.html").read_text("utf-8"), "html.parser")
    for tag in page.select("[href], [src]"):
        target = small.site / str(tag.get("href") or tag.get("src"))
        assert target.is_file(), target
