"""Builds the small site once for all tests that look at it, serves it, and opens it in a browser."""

from __future__ import annotations

import functools
import http.server
import re
import shutil
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest

from tests.website.small_site import PREFIX, PROJECT, SERVED, Small, build, prepare, site_inputs

CHROMIUM = Path("/usr/bin/chromium")
FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking"]
NGINX = PROJECT / "site_assets" / "nginx.conf"
# The policy that a clinic is told to use is the one under which the tests run.
POLICY = re.findall(r'add_header Content-Security-Policy "([^"]+)" always;', NGINX.read_text("utf-8"))[0]


@pytest.fixture(scope="session")
def fonts(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give one folder for prepared fonts."""
    return tmp_path_factory.mktemp("fonts")


@pytest.fixture(scope="session")
def small(tmp_path_factory: pytest.TempPathFactory, fonts: Path) -> Small:
    """Build the small site in three languages without a finding; nobody changes it."""
    prepared = prepare(tmp_path_factory.mktemp("small"), fonts, site_inputs(SERVED))
    assert build(prepared) == ()
    return prepared


class _Handler(http.server.SimpleHTTPRequestHandler):
    def end_headers(self) -> None:
        self.send_header("Content-Security-Policy", POLICY)
        super().end_headers()

    def send_error(self, code: int, *_: Any) -> None:
        """Answer what is not there as the nginx example does, with the page for lost readers."""
        page = (Path(self.directory) / PREFIX / "404.html").read_bytes()
        self.send_response(code)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.send_header("Content-Length", str(len(page)))
        self.end_headers()
        self.wfile.write(page)

    def log_message(self, *_: Any) -> None:
        """Keep quiet: the test run has its own words."""


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """Serve a folder with the policy, and give its address."""
    handler = functools.partial(_Handler, directory=str(folder))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/"
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


@pytest.fixture(scope="module")
def site(small: Small, tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Serve the built site under a path prefix with the policy, and give its address."""
    root = tmp_path_factory.mktemp("served")
    shutil.copytree(small.site, root / "web" / PREFIX)
    with served(root / "web") as address:
        yield f"{address}{PREFIX}/"


@pytest.fixture(scope="module")
def browser() -> Iterator[Any]:
    """Start one Chromium for all tests of a file."""
    sync_api = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
    if not CHROMIUM.exists():
        pytest.skip("Chromium is not installed")
    with sync_api.sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=str(CHROMIUM), args=FLAGS)
        yield chromium
        chromium.close()


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
