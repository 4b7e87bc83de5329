"""Every link inside the site leads somewhere."""

from pathlib import Path

import pytest

from generator.publish import Audit
from tests.publish.sites import BRIDGE, ENGLISH, findings, in_bridge, page, site


@pytest.mark.parametrize(
    ("body", "code"),
    [
        ('<a href="squat.html">Squat</a>', "link-to-no-file"),
        ('<a href="Bridge.html">Bridge</a>', "link-to-no-file"),
        ('<a href="../">Start</a>', "link-to-no-file"),
        ('<a href="../../../secret.html">Up</a>', "link-to-no-file"),
        ('<img src="leg.svg" alt="">', "link-to-no-file"),
        ('<img srcset="leg.png 1x, leg-2.png 2x" src="../index.html" alt="">', "link-to-no-file"),
        ('<a href="#dose">Dose</a>', "link-to-no-place"),
        ('<a href="../index.html#dose">Dose</a>', "link-to-no-place"),
        ('<p id="dose">3</p><p id="dose">4</p>', "same-id-twice"),
        ('<a href="/en/index.html">Start</a>', "link-not-relative"),
        ('<a href="//clinic.example/en/">Start</a>', "link-not-relative"),
        ('<a href="file:///C:/site/index.html">Start</a>', "link-not-relative"),
    ],
)
def test_a_link_that_leads_nowhere_is_found(tmp_path: Path, body: str, code: str) -> None:
    """A missing file, folder, id or a link tied to one server is named."""
    assert set(in_bridge(tmp_path, body)) == {code}


@pytest.mark.parametrize(
    "body",
    [
        '<a href="bridge.html?x=1#">Here</a><a href="#top">Top</a><a href="">Here</a>',
        '<p id="dose">3</p><a href="#dose">Dose</a>',
        '<p id="größe">3</p><a href="#gr%C3%B6%C3%9Fe">Size</a>',
        '<a href="%62ridge.html">Here</a>',
        '<a href="../index.html#week=7">Week 7</a>',
        '<a href="#:~:text=dose">Dose</a>',
        '<a name="old">3</a><a href="#old">Old</a>',
        '<template><p id="dose"></p></template><p id="dose"></p>',
    ],
)
def test_links_that_lead_somewhere_are_silent(tmp_path: Path, body: str) -> None:
    """Queries, percent signs, choices in the fragment and ids are understood."""
    assert in_bridge(tmp_path, body) == []


def test_a_page_that_reads_the_fragment_itself_needs_no_id(tmp_path: Path) -> None:
    """An edition code after # is read by the page of codes and is no id."""
    files = {
        **site(),
        "en/check.html": page(warnings="warning-signs.html"),
        BRIDGE: page('<a href="../check.html#HIP-1">x</a>'),
    }
    assert findings(tmp_path, files) == [("link-to-no-place", BRIDGE)]
    audit = Audit((ENGLISH,), choice_pages=frozenset({"en/check.html"}))
    assert findings(tmp_path, files, audit) == []


def test_stylesheets_are_followed_too(tmp_path: Path) -> None:
    """A font that a stylesheet names has to be in the site."""
    files = {**site(), "assets/extra.css": "@font-face { src: url(fonts/a.woff2) }"}
    assert findings(tmp_path, files) == [("link-to-no-file", "assets/extra.css")]
    assert findings(tmp_path, {**files, "assets/fonts/a.woff2": "x"}) == []


def test_a_site_in_a_subfolder_of_its_server_checks_its_404_page(tmp_path: Path) -> None:
    """The page for unknown addresses names the site's own path, any other path leads out."""
    audit = Audit((ENGLISH,), base_path="/rehab/")
    files = {**site(), "404.html": page(warnings="/rehab/en/warning-signs.html")}
    assert findings(tmp_path, files, audit) == []
    assert set(findings(tmp_path, site(), audit)) == {
        ("page-without-warning-link", "404.html"),
        ("link-to-no-file", "404.html"),
    }
