"""Serves a preview that reloads itself, and shows what is wrong with the content inside the page."""

from __future__ import annotations

import re
import threading
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from html import escape
from pathlib import Path
from typing import Any

from mkdocs.livereload import LiveReloadServer

from generator.wording.filling import PHRASE
from generator.wording.html import as_html
from generator.wording.isolation import isolate_numbers

_EMPTY = (
    '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Preview</title></head>'
    "<body></body></html>"
)
_COLOURS = "background:#FBE9D7;color:#1E2B31"
_PANEL = (
    f'<section role="alert" style="margin:0;padding:1rem 1.25rem;{_COLOURS};'
    'border-bottom:.3rem solid #7A1F1F;font:1rem/1.5 system-ui,sans-serif">'
    "<strong>{heading}</strong><pre "
    'style="white-space:pre-wrap;margin:.5rem 0 0;font:.9rem/1.5 ui-monospace,monospace">'
    "{lines}</pre></section>"
)
_MARK = (
    f'<span role="note" dir="ltr" lang="en" style="display:block;{_COLOURS};border-left:.3rem solid #7A1F1F;'
    'padding:.25rem .5rem;margin:.25rem 0;font:400 .8rem/1.4 system-ui,sans-serif">{brief}</span>'
)
OLD_PAGE = "The content has problems. The page below is as it was before them."
NEW_PAGE = "The content has warnings. The page below shows your change."
_LINK_END = "</a>"
# Seconds between two looks for files that were saved.
_LOOK = 0.2
# The text of a phrase such as {hold} differs from dose to dose.
_FILLED = "[^<]{0,80}(?:<[^>]*>[^<]{0,80}){0,8}?"


@dataclass(frozen=True)
class Remark:
    """One finding for the preview.

    lines: as ``check`` prints it. brief: what stands beside the sentence. words: the sentence or name it
    concerns; "" where there is none. page: the only page on which it stands beside it; "" for any.
    """

    lines: str
    brief: str = ""
    words: str = ""
    page: str = ""


@dataclass(frozen=True)
class Shown:
    """What a rebuild came to. fresh: whether the pages show the content as it is now."""

    remarks: tuple[Remark, ...] = ()
    fresh: bool = True


Rebuild = Callable[[], Shown]
MakePage = Callable[[str], None]


class PreviewServer(LiveReloadServer):
    """Serves one folder on this machine alone.

    rebuild: takes the content as it is now. make: makes a page, named by its path, before it is read.
    """

    def __init__(self, rebuild: Rebuild, make: MakePage, root: Path, port: int) -> None:
        self._rebuild = rebuild
        self._make = make
        self._shown = Shown()
        self._asked = threading.local()
        super().__init__(
            builder=self._build, host="127.0.0.1", port=port, root=str(root), polling_interval=_LOOK
        )
        self._build()

    def run(self) -> None:
        """Serve until stopped."""
        self.serve()  # type: ignore[no-untyped-call] # the library ships no types

    def _build(self) -> None:
        self._shown = self._rebuild()
        index = Path(self.root) / "index.html"
        if not index.exists():
            index.parent.mkdir(parents=True, exist_ok=True)
            index.write_text(_EMPTY, encoding="utf-8")

    def _serve_request(self, environ: dict[str, Any], start_response: Any) -> Iterable[bytes] | None:
        self._asked.path = environ["PATH_INFO"].lstrip("/")
        if self._asked.path.endswith(".html"):
            with self._epoch_cond:
                self._epoch_cond.wait_for(lambda: self._visible_epoch == self._wanted_epoch)
            self._make(self._asked.path)
        return super()._serve_request(environ, start_response)

    def _inject_js_into_html(self, content: bytes, epoch: int) -> bytes:
        page = with_remarks(content, self._shown, self._asked.path)
        return bytes(super()._inject_js_into_html(page, epoch))  # type: ignore[no-untyped-call]


def with_remarks(page: bytes, shown: Shown, path: str) -> bytes:
    """Return the page with all remarks at its top, and each beside its sentence where the page has that."""
    if not shown.remarks:
        return page
    html = page.decode("utf-8")
    body = html.find("<body")
    if body < 0:
        return page
    start = html.index(">", body) + 1
    rest = html[start:]
    for remark in shown.remarks:
        if remark.words and remark.page in ("", path):
            rest = _marked(rest, remark)
    lines = escape("\n".join(remark.lines for remark in shown.remarks))
    panel = _PANEL.format(heading=escape(NEW_PAGE if shown.fresh else OLD_PAGE), lines=lines)
    return (html[:start] + panel + rest).encode("utf-8")


def _marked(html: str, remark: Remark) -> str:
    """Return the page with a mark after the first place where the words stand as text."""
    for found in _pattern(remark.words).finditer(html):
        before = html[: found.start()]
        if before.rfind(">") > before.rfind("<"):  # not within a tag, such as the text of a picture
            mark = _MARK.format(brief=escape(remark.brief))
            end = found.end()
            end += len(_LINK_END) if html.startswith(_LINK_END, end) else 0
            return html[:end] + mark + html[end:]
    return html


def _pattern(words: str) -> re.Pattern[str]:
    """Return how the words stand in a page: numbers kept in order, phrases filled."""
    parts = PHRASE.split(isolate_numbers(words))
    # A split gives the names of the phrases too, at every second place.
    return re.compile(_FILLED.join(re.escape(str(as_html(part))) for part in parts[::2]))
