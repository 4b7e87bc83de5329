"""Serves a preview that reloads itself, and shows what is wrong with the content inside the page."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from html import escape
from pathlib import Path

from mkdocs.livereload import LiveReloadServer

Rebuild = Callable[[], Iterable[str]]

_EMPTY = (
    '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Preview</title></head>'
    "<body></body></html>"
)
_PANEL = (
    '<section role="alert" style="margin:0;padding:1rem 1.25rem;background:#FBE9D7;color:#1E2B31;'
    'border-bottom:.3rem solid #7A1F1F;font:1rem/1.5 system-ui,sans-serif">'
    "<strong>{heading}</strong><pre "
    'style="white-space:pre-wrap;margin:.5rem 0 0;font:.9rem/1.5 ui-monospace,monospace">'
    "{lines}</pre></section>"
)
HEADING = "The content has problems. The page below is as it was before them."


class PreviewServer(LiveReloadServer):
    """Serves one folder on this machine alone; `rebuild` makes it again and says what is wrong, as lines."""

    def __init__(self, rebuild: Rebuild, root: Path, port: int) -> None:
        self._rebuild = rebuild
        self._lines: tuple[str, ...] = ()
        super().__init__(builder=self._build, host="127.0.0.1", port=port, root=str(root))
        self._build()

    def run(self) -> None:
        """Serve until stopped."""
        self.serve()  # type: ignore[no-untyped-call] # the library ships no types

    def _build(self) -> None:
        self._lines = tuple(self._rebuild())
        index = Path(self.root) / "index.html"
        if not index.exists():
            index.parent.mkdir(parents=True, exist_ok=True)
            index.write_text(_EMPTY, encoding="utf-8")

    def _inject_js_into_html(self, content: bytes, epoch: int) -> bytes:
        return bytes(super()._inject_js_into_html(with_panel(content, self._lines), epoch))  # type: ignore[no-untyped-call]


def with_panel(page: bytes, lines: Iterable[str]) -> bytes:
    """Return the page with the lines shown at its top; unchanged where there are none."""
    listed = tuple(lines)
    start = page.find(b"<body")
    if not listed or start < 0:
        return page
    end = page.index(b">", start) + 1
    panel = _PANEL.format(heading=escape(HEADING), lines=escape("\n".join(listed)))
    return page[:end] + panel.encode("utf-8") + page[end:]
