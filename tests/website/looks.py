"""Measures a page in a browser: what lies over something else, what sticks out, folded parts included."""

from __future__ import annotations

from typing import Any

WIDTHS = (1440, 820, 390, 320)

# Boxes of text in the reading part of a page that share half their height: one of them cannot be read.
LAID_OVER = """() => {
    const boxes = [];
    // Clipped away is what only a screen reader is told.
    const clipped = (one) => one && (getComputedStyle(one).clipPath !== 'none' || clipped(one.parentElement));
    const walk = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
        const holder = node.parentElement;
        if (!node.data.trim() || !holder.checkVisibility() || clipped(holder)) continue;
        const range = new Range();
        range.selectNodeContents(node);
        for (const box of range.getClientRects()) if (box.width > 2) boxes.push([box, node.data.trim()]);
    }
    boxes.sort(([a], [b]) => a.top - b.top);
    const found = [];
    boxes.forEach(([one, words], place) => {
        for (const [other, more] of boxes.slice(place + 1)) {
            if (other.top >= one.bottom) break;
            const wide = Math.min(one.right, other.right) - Math.max(one.left, other.left);
            const high = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
            if (wide > 2 && high > Math.min(one.height, other.height) / 2) found.push([words, more]);
        }
    });
    return found;
}"""


def schemes(page: str) -> tuple[str, ...]:
    """Return the colour schemes in which a page is looked at: all languages have the same colours."""
    return ("light",) if page.startswith("ar/") else ("light", "dark")


def unfold(tab: Any) -> None:
    """Open all that stands folded, so that it is looked at as well."""
    tab.evaluate("document.querySelectorAll('main details').forEach((one) => { one.open = true })")


def enlarge(tab: Any) -> None:
    """Set the browser's own text size to twice the usual 16 px, as a reader does."""
    tab.context.new_cdp_session(tab).send("Page.setFontSizes", {"fontSizes": {"standard": 32}})
    assert tab.evaluate("getComputedStyle(document.documentElement).fontSize") == "32px"


def awry(tab: Any, widths: tuple[int, ...] = WIDTHS) -> list[Any]:
    """Return at which width (px) the page scrolls sideways, and what lies over what."""
    found: list[Any] = []
    for width in widths:
        tab.set_viewport_size({"width": width, "height": 800})
        if tab.evaluate("document.documentElement.scrollWidth") > width:
            found.append(f"sideways at {width}")
        found += [(width, *pair) for pair in tab.evaluate(LAID_OVER)]
    return found
