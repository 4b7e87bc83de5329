"""Holds the site to any server and any path, to its weight, and the nginx example to what the tests enforce.

Sources: W3C Content Security Policy Level 3 (directives); RFC 8246 (immutable responses); nginx's manual,
ngx_http_headers_module. The budgets of 350 KB and 60 KB are the project's own.
"""

from __future__ import annotations

import gzip
import json
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from tests.browsing import NGINX, POLICY
from tests.website.small_site import HEEL_RAISE, Small

FIRST_VISIT, PAGE = 350_000, 60_000


def first_visit(site: Path, page: Path) -> Iterator[Path]:
    """Yield what a browser loads for a first page: itself, styles, their fonts, scripts, pictures, search."""
    yield page
    read = BeautifulSoup(page.read_text("utf-8"), "html.parser")
    named = [tag["href"] for tag in read.select('link[rel="stylesheet"], link[rel="icon"]')]
    named += [tag["src"] for tag in read.select("script[src], img[src]")]
    config = json.loads(read.select("#__config")[0].get_text())
    named.append(config["search"])
    for address in dict.fromkeys(named):
        file = (page.parent / str(address)).resolve()
        yield file
        if file.suffix == ".css":
            # The face of another script is not loaded; counted are all, so that the budget holds for each.
            for font in set(re.findall(r'url\("?([^")]+\.woff2)', file.read_text("utf-8"))):
                yield (file.parent / font).resolve()
    yield site / page.relative_to(site).parts[0] / "search" / "search_index.json"


def weight(file: Path) -> int:
    """Return the bytes that go over the line; fonts are compressed in themselves."""
    content = file.read_bytes()
    return len(content) if file.suffix == ".woff2" else len(gzip.compress(content, 6))


@pytest.mark.slow
@pytest.mark.parametrize("language", ["en", "ar"])
def test_a_first_visit_to_an_exercise_is_light(small: Small, language: str) -> None:
    """Under 350 KB compressed with search and every font, and its HTML under 60 KB."""
    page = small.site / language / HEEL_RAISE
    files = dict.fromkeys(first_visit(small.site, page))
    assert {file.suffix for file in files} >= {".html", ".css", ".js", ".svg", ".woff2", ".json"}
    assert sum(map(weight, files)) < FIRST_VISIT
    assert page.stat().st_size < PAGE


@pytest.mark.slow
def test_every_address_is_relative(small: Small) -> None:
    """The site may lie below any path; only the page for lost readers, served at any depth, knows its own."""
    for page in small.site.rglob("*.html"):
        if page.name == "404.html":
            continue
        read = BeautifulSoup(page.read_text("utf-8"), "html.parser")
        named = [str(tag[key]) for key in ("href", "src") for tag in read.select(f"[{key}]")]
        assert not [address for address in named if address.startswith("/")], page


def test_the_policy_allows_this_site_alone() -> None:
    """Nothing is allowed but what comes from here; no inline script, no eval, no frame around it."""
    rules = dict(rule.strip().split(" ", 1) for rule in POLICY.split(";"))
    assert rules["default-src"] == "'none'"
    assert set(rules.values()) == {"'self'", "'none'"}
    assert [rules[name] for name in ("base-uri", "form-action", "frame-ancestors")] == ["'none'"] * 3


def test_the_example_has_one_place_for_its_headers() -> None:
    """In nginx a block with an ``add_header`` of its own drops all those from outside."""
    text = NGINX.read_text("utf-8")
    assert "location" not in re.sub(r"#.*", "", text)
    assert text.count("{") == text.count("}") == 2 + len(re.findall(r"\{8,\}", text))


@pytest.mark.slow
def test_only_names_with_a_fingerprint_are_kept_for_good(small: Small) -> None:
    """What is cached for a year holds its fingerprint in the name; a page is asked for each time."""
    pattern = re.findall(r'"~(\S+)" "public, max-age=31536000, immutable"', NGINX.read_text("utf-8"))[0]
    names = [
        "/" + file.relative_to(small.site).as_posix() for file in small.site.rglob("*") if file.is_file()
    ]
    kept = {name for name in names if re.search(pattern, name)}
    assert {name for name in names if "/assets/" in name} == kept
