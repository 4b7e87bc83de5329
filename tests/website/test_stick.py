"""Opens the site from a folder, as from a stick: search in two scripts, filters, pictures; and no server."""

from __future__ import annotations

import zipfile
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from generator.cli.export import export
from generator.publish.manifest import describe, to_text, verify
from generator.steps.stick import write_stick
from generator.website.stick import with_script
from tests.website.small_site import HEEL_RAISE, PROJECT, Small

ASSETS = PROJECT / "site_assets"


def site_of(folder: Path, files: dict[str, str]) -> Path:
    """Return a folder that counts as a finished site."""
    for name, text in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, "utf-8")
    (folder / "manifest.json").write_text(to_text(describe(folder)), "utf-8")
    return folder


FILES = {
    "index.html": "<p>No script</p>",
    "404.html": '<a href="/en/">lost</a>',
    "en/index.html": '<head><script src="../assets/js/frame.1.js"></script></head>'
    '<footer><p class="pb-footer__page"><bdi dir="ltr">https://clinic.example/en/index.html</bdi></p></footer>',
    "en/search/search_index.json": '{"docs": []}',
}


def test_pages_with_a_script_load_the_stand_in_first_from_their_own_depth() -> None:
    """The search's script must find the stand-in already there; pages without scripts stay as they are."""
    page = b'<head>\n<script src="../../assets/a.js"></script></head>'
    found = with_script(page, "en/exercises/clam.html", "assets/js/stick.1.js")
    assert found.index(b'src="../../assets/js/stick.1.js"') < found.index(b"assets/a.js")
    assert with_script(b"<p>plain</p>", "index.html", "assets/js/stick.1.js") == b"<p>plain</p>"


def test_folder_and_file_hold_the_same_and_are_the_same_each_time(tmp_path: Path) -> None:
    """Made twice they are alike byte for byte; what only a server needs, and its address, is left out."""
    site, output = site_of(tmp_path / "site", FILES), tmp_path / "stick"
    archives = []
    for _ in range(2):
        assert write_stick(site, output, ASSETS).problems == ()
        archives.append((tmp_path / "stick.zip").read_bytes())
    assert archives[0] == archives[1]
    with zipfile.ZipFile(tmp_path / "stick.zip") as packed:
        inside = {name: packed.read(name) for name in packed.namelist()}
    folder = {
        f"stick/{f.relative_to(output).as_posix()}": f.read_bytes() for f in output.rglob("*") if f.is_file()
    }
    assert inside == folder
    assert "stick/404.html" not in inside
    assert inside["stick/en/index.html"].endswith(b"</head><footer></footer>")
    assert inside["stick/en/search/search_index.js"] == b'var __index = {"docs": []};\n'
    assert verify(output) == ()


def test_a_site_that_is_not_whole_is_not_handed_on(tmp_path: Path) -> None:
    """A page that was changed after the build is named, and nothing is written."""
    site = site_of(tmp_path / "site", FILES)
    (site / "en/index.html").write_text("3 x 100", "utf-8")
    done = CliRunner().invoke(
        export, ["stick", "--site", str(site), "--output", str(tmp_path / "out")], standalone_mode=False
    )
    assert done.return_value == 1
    assert "file-changed" in done.output
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize(
    ("site", "output", "said"),
    [
        ("nothing", "out", "there is no finished site"),
        ("site", "site", "lies in the site itself"),
        ("site", "site/stick", "lies in the site itself"),
        ("site", ".", "holds the site itself"),
        ("site", "mine", "was not made by this command"),
        ("site", "no/out", "make it first"),
    ],
)
def test_a_folder_that_is_not_ours_is_never_replaced(
    tmp_path: Path, site: str, output: str, said: str
) -> None:
    """Each refusal says why, and nothing is written or removed."""
    site_of(tmp_path / "site", FILES)
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine/letter.txt").write_text("mine", "utf-8")
    before = sorted(tmp_path.rglob("*"))
    done = CliRunner().invoke(
        export,
        ["stick", "--site", str(tmp_path / site), "--output", str(tmp_path / output)],
        standalone_mode=False,
    )
    assert done.return_value == 2
    assert said in done.output
    assert sorted(tmp_path.rglob("*")) == before


@pytest.fixture(scope="module")
def stick(small: Small, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give the built small site as it lies on a stick."""
    work = tmp_path_factory.mktemp("stick")
    site = work / "site"
    site.mkdir()
    for file in small.site.rglob("*"):
        if file.is_file():
            (site / file.relative_to(small.site)).parent.mkdir(parents=True, exist_ok=True)
            (site / file.relative_to(small.site)).write_bytes(file.read_bytes())
    (site / "manifest.json").write_text(to_text(describe(site)), "utf-8")
    assert write_stick(site, work / "mein stick ü", ASSETS).problems == ()
    return work / "mein stick ü"


def opened(browser: Any, page: Path) -> tuple[Any, list[str]]:
    """Return a page opened from its file, and what it complains about or asks of anything but files."""
    context = browser.new_context()
    tab = context.new_page()
    complaints: list[str] = []
    tab.on("console", lambda message: complaints.append(message.text))
    tab.on("pageerror", lambda error: complaints.append(str(error)))
    tab.on("request", lambda asked: None if asked.url.startswith("file:") else complaints.append(asked.url))
    tab.on("requestfailed", lambda failed: None if _left(failed) else complaints.append(failed.url))
    tab.goto(page.as_uri())
    return tab, complaints


def _left(failed: Any) -> bool:
    """Return whether a file was no longer wanted, because the reader went on to another page."""
    return bool(failed.failure == "net::ERR_ABORTED")


@pytest.mark.slow
@pytest.mark.parametrize(("language", "word"), [("en", "rais"), ("ar", "قدميك")])
def test_the_search_finds_an_exercise_from_a_file(
    browser: Any, stick: Path, language: str, word: str
) -> None:
    """From a path with blanks and umlauts; the link leads to the page, and nothing but files is asked for."""
    tab, complaints = opened(browser, stick / language / "index.html")
    tab.locator("#__query").fill(word)
    tab.keyboard.press("Shift")
    link = tab.locator(".pb-search__list a").first
    link.wait_for(timeout=10_000)
    link.click()
    tab.wait_for_url("**/heel-raise.html*")
    assert complaints == []
    tab.context.close()


@pytest.mark.slow
def test_filters_and_pictures_work_from_a_file(browser: Any, stick: Path) -> None:
    """The list narrows, its choice stands in the address, and pictures and fonts are there."""
    tab, complaints = opened(browser, stick / "en/exercises/index.html")
    field = tab.locator("#find select").first
    values = field.locator("option").evaluate_all("all => all.map(one => one.value).filter(Boolean)")
    field.select_option(values[0])
    assert values[0] in tab.url
    tab.goto((stick / "en" / HEEL_RAISE).as_uri())
    loaded = "[...document.images].every(one => one.complete && one.naturalWidth > 0)"
    tab.wait_for_function(loaded)
    tab.evaluate("document.fonts.ready")
    assert tab.evaluate("[...document.fonts].some(one => one.status === 'loaded')")
    assert tab.evaluate("[...document.fonts].filter(one => one.status === 'error').length") == 0
    assert complaints == []
    tab.context.close()


@pytest.mark.slow
def test_the_first_page_goes_on_to_a_language_from_a_file(browser: Any, stick: Path) -> None:
    """As from a server."""
    tab, _ = opened(browser, stick / "index.html")
    tab.wait_for_url("**/en/index.html")
    tab.context.close()
