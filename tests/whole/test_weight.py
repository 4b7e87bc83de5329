"""Holds the demonstration to its weight: what a browser really loads when it first sees an exercise.

The budgets of 350 KB compressed and 60 KB of HTML are the project's own.
"""

from __future__ import annotations

import functools
import http.server
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest

from tests.website.conftest import CHROMIUM, FLAGS
from tests.website.test_served import FIRST_VISIT, PAGE, weight

pytestmark = pytest.mark.slow
sync_api = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_: Any) -> None:
        """Keep quiet: the test run has its own words."""


@pytest.fixture(scope="module")
def served(demo: Path) -> Iterator[str]:
    """Serve the demonstration and give its address."""
    handler = functools.partial(_Quiet, directory=str(demo))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    server.server_close()
    thread.join()


def loaded(address: str, page: str) -> list[str]:
    """Return the paths of all that a browser loads for a page, read to its end, with nothing kept before."""
    asked: list[str] = []
    with sync_api.sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=str(CHROMIUM), args=FLAGS)
        tab = chromium.new_context(viewport={"width": 390, "height": 800}).new_page()
        tab.on("requestfinished", lambda request: asked.append(urlsplit(request.url).path.lstrip("/")))
        tab.goto(address + page)
        tab.evaluate("scrollTo(0, document.documentElement.scrollHeight)")
        tab.wait_for_load_state("networkidle")
        chromium.close()
    return list(dict.fromkeys(asked))


def test_the_heaviest_exercise_of_each_language_is_light(demo: Path, served: str) -> None:
    """Under 350 KB compressed for the page, its pictures, fonts, scripts and search; its HTML under 60 KB."""
    if not CHROMIUM.exists():
        pytest.skip("Chromium is not installed")
    for folder in sorted(one.parent.parent for one in demo.glob("*/exercises/index.html")):
        pages = [one for one in (folder / "exercises").glob("*.html") if one.name != "index.html"]
        heaviest = max(pages, key=lambda one: one.stat().st_size)
        assert heaviest.stat().st_size < PAGE, heaviest
        files = loaded(served, heaviest.relative_to(demo).as_posix())
        assert {Path(name).suffix for name in files} >= {".html", ".css", ".js", ".svg", ".woff2", ".json"}
        assert sum(weight(demo / name) for name in files) < FIRST_VISIT, heaviest
