"""Makes a finished site work from a stick, where a browser neither starts a worker nor reads a file."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterator
from pathlib import Path, PurePosixPath

SCRIPT = "js/stick.js"
INDEX = "search/search_index.json"
# Pages for lost readers are a server's affair, and their addresses begin at its root.
_FOR_SERVERS = frozenset({"404.html", "manifest.json"})
_FIRST_SCRIPT = b"<script src="
# A stick is a copy that may be older than the page at the address.
_ADDRESS = re.compile(rb'\s*<p class="pb-footer__page">.*?</p>', re.DOTALL)


def stick_files(site: Path, sources: Path) -> Iterator[tuple[str, bytes]]:
    """Yield path and content of every file of a stick, sorted by path.

    `site` is a finished site, `sources` the project's folder site_assets/.
    """
    script = (sources / SCRIPT).read_bytes()
    path = f"assets/{SCRIPT.removesuffix('.js')}.{hashlib.sha256(script).hexdigest()[:12]}.js"
    found: dict[str, bytes] = {path: script}
    for file in sorted(one for one in site.rglob("*") if one.is_file()):
        name = file.relative_to(site).as_posix()
        if name in _FOR_SERVERS:
            continue
        content = file.read_bytes()
        found[name] = _page(content, name, path) if name.endswith(".html") else content
        if name.endswith(INDEX):
            found[name.removesuffix(".json") + ".js"] = b"var __index = " + content.strip() + b";\n"
    yield from sorted(found.items())


def _page(content: bytes, name: str, script: str) -> bytes:
    return with_script(_ADDRESS.sub(b"", content), name, script)


def with_script(page: bytes, name: str, script: str) -> bytes:
    """Return a page that loads the script first; one without any script stays as it is.

    name, script: paths from the site's root.
    """
    place = page.find(_FIRST_SCRIPT)
    if place < 0:
        return page
    up = "../" * (len(PurePosixPath(name).parts) - 1)
    tag = f'<script src="{up}{script}"></script>\n    '.encode()
    return page[:place] + tag + page[place:]
