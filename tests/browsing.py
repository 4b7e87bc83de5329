"""Serves a folder under the policy that a clinic is told to use, for the browser that tests look through."""

from __future__ import annotations

import functools
import http.server
import re
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

CHROMIUM = Path("/usr/bin/chromium")
FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking"]
NGINX = Path(__file__).resolve().parents[1] / "site_assets" / "nginx.conf"
# The policy that a clinic is told to use is the one under which the tests run.
POLICY = re.findall(r'add_header Content-Security-Policy "([^"]+)" always;', NGINX.read_text("utf-8"))[0]


class _Handler(http.server.SimpleHTTPRequestHandler):
    def __init__(self, *arguments: Any, lost: Path, **options: Any) -> None:
        self._lost = lost
        super().__init__(*arguments, **options)

    def end_headers(self) -> None:
        self.send_header("Content-Security-Policy", POLICY)
        super().end_headers()

    def send_error(self, code: int, *_: Any) -> None:
        """Answer what is not there as the nginx example does, with the page for lost readers."""
        page = self._lost.read_bytes()
        self.send_response(code)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.send_header("Content-Length", str(len(page)))
        self.end_headers()
        self.wfile.write(page)

    def log_message(self, *_: Any) -> None:
        """Keep quiet: the test run has its own words."""


@contextmanager
def served(folder: Path, prefix: str = "") -> Iterator[str]:
    """Serve a folder with the policy, and give its address; under `prefix` lies the site."""
    handler = functools.partial(_Handler, directory=str(folder), lost=folder / prefix / "404.html")
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/"
    finally:
        server.shutdown()
        server.server_close()
        thread.join()
