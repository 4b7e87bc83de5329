"""Builds the small site once for all tests that look at it, serves it, and opens its pages in the browser."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from generator.website.fonts import prepare_fonts
from tests.browsing import served
from tests.sharing import once
from tests.website.paper import served_inputs
from tests.website.small_site import PREFIX, Small, build, prepare


@pytest.fixture(scope="session")
def fonts(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give one folder of prepared fonts."""
    return once(tmp_path_factory, "fonts", _with_fonts)


def _with_fonts(folder: Path) -> Path:
    prepare_fonts(folder)
    return folder


@pytest.fixture(scope="session")
def small(tmp_path_factory: pytest.TempPathFactory, fonts: Path) -> Small:
    """Build the small site in three languages without a finding; nobody changes it."""

    def built(folder: Path) -> Small:
        prepared = prepare(folder, fonts, served_inputs())
        assert build(prepared) == ()
        return prepared

    return once(tmp_path_factory, "small", built)


@pytest.fixture(scope="session")
def site(small: Small, tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Serve the built site under a path prefix with the policy, and give its address."""
    root = tmp_path_factory.mktemp("served")
    shutil.copytree(small.site, root / "web" / PREFIX)
    with served(root / "web", PREFIX) as address:
        yield f"{address}{PREFIX}/"


@pytest.fixture
def visit(browser: Any, site: str) -> Iterator[Any]:
    """Give a function that opens a page; any error, violation or outside request fails the test."""
    contexts = []
    complaints: list[str] = []
    requests: list[tuple[int, str]] = []

    def open_page(
        page: str, width: int = 1280, height: int = 900, *, before: str = "", **options: Any
    ) -> Any:
        """Open a page; `before` is a script that runs ahead of the page's own."""
        context = browser.new_context(viewport={"width": width, "height": height}, **options)
        contexts.append(context)
        tab = context.new_page()
        tab.on("console", lambda message: complaints.append(message.text))
        tab.on("pageerror", lambda error: complaints.append(str(error)))
        tab.on("response", lambda answer: requests.append((answer.status, answer.url)))
        tab.on("requestfailed", lambda request: requests.append((0, request.url)))
        tab.add_init_script(
            "addEventListener('securitypolicyviolation', e => console.log('refused: ' + e.violatedDirective))"
        )
        tab.add_init_script(before)
        tab.goto(site + page)
        tab.wait_for_load_state("networkidle")
        return tab

    yield open_page
    for context in contexts:
        context.close()
    assert complaints == []
    assert [
        (status, url) for status, url in requests if status not in (200, 304) or not url.startswith(site)
    ] == []
