"""Opens the page that checks a booklet in a real browser: typing a code, a typing error, a scanned code."""

from __future__ import annotations

from typing import Any

import pytest

from tests.website.looks import schemes
from tests.website.paper import CHANGED, CURRENT

pytestmark = pytest.mark.slow

axe_module = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe is not installed")
PAGE = "en/check.html"


def shown(tab: Any) -> list[str]:
    """Return the headings of the answers that can be seen."""
    return [found.inner_text() for found in tab.locator(".pb-told h2").all() if found.is_visible()]


def ask(tab: Any, code: str) -> None:
    """Type a code and press the button."""
    tab.locator("#code").fill(code)
    tab.get_by_role("button", name="Check", exact=True).click()


def test_a_typed_code_shows_its_answer_and_nothing_else(visit: Any) -> None:
    """Small letters and a missing hyphen are forgiven, and the address can be given to somebody else."""
    tab = visit(PAGE)
    assert shown(tab) == []
    ask(tab, CURRENT.lower().replace("-", " "))
    assert shown(tab) == ["This booklet is current"]
    assert tab.url.endswith(f"#{CURRENT}")
    ask(tab, CHANGED)
    assert shown(tab) == ["There is a newer booklet. Something changed"]
    assert tab.locator("#answer").inner_text() == "The answer stands below."


def test_the_code_is_asked_for_by_keyboard(visit: Any) -> None:
    """Enter in the field answers, in a status that is read aloud; an empty field keeps the focus."""
    tab = visit(PAGE)
    tab.locator("#code").focus()
    tab.keyboard.press("Enter")
    assert shown(tab) == []
    assert tab.evaluate("document.activeElement.id") == "code"
    tab.keyboard.type(CURRENT)
    tab.keyboard.press("Enter")
    assert shown(tab) == ["This booklet is current"]
    assert tab.locator("[role=status]#answer").count() == 1


def test_a_typing_error_is_told_and_the_nearest_code_offered(visit: Any) -> None:
    """A wrong character leads to no other booklet; one click goes to the code that was meant."""
    tab = visit(PAGE)
    ask(tab, CHANGED[:-1] + ("0" if CHANGED[-1] != "0" else "1"))
    assert tab.get_by_text("This code has a typing mistake.").is_visible()
    assert shown(tab) == ["If a code is not here"]
    tab.locator("#near a").click()
    assert shown(tab) == ["There is a newer booklet. Something changed"]
    assert not tab.get_by_text("This code has a typing mistake.").is_visible()


def test_an_unknown_code_leads_to_the_telephone(visit: Any) -> None:
    """A code without a typing error that nobody recorded is no typing error."""
    tab = visit(PAGE)
    ask(tab, "8000-0008")
    assert tab.locator("#answer").inner_text().startswith("This code is not in our list.")
    assert not tab.get_by_text("This code has a typing mistake.").is_visible()
    assert shown(tab) == ["If a code is not here"]
    assert tab.locator("#unknown").get_by_text("0555 010 200").is_visible()


def test_a_scanned_code_is_answered_at_once(visit: Any) -> None:
    """The address on paper ends with the code: nothing has to be typed."""
    tab = visit(f"{PAGE}#{CHANGED}", width=390)
    assert shown(tab) == ["There is a newer booklet. Something changed"]
    assert tab.locator("#code").input_value() == CHANGED


def test_without_scripts_the_code_of_the_address_is_framed(browser: Any, site: str) -> None:
    """Every answer is there, no field that could not work is shown, and the code stands out."""
    context = browser.new_context(java_script_enabled=False, viewport={"width": 390, "height": 900})
    tab = context.new_page()
    tab.goto(f"{site}{PAGE}#{CHANGED}")
    assert len(shown(tab)) > 4
    assert not tab.locator("#ask").is_visible()
    assert tab.locator(f'[id="{CHANGED}"]').evaluate("e => getComputedStyle(e).outlineStyle") == "solid"
    context.close()


@pytest.mark.parametrize("page", [PAGE, f"{PAGE}#{CHANGED}", f"ar/check.html#{CHANGED}"])
def test_axe_finds_nothing_and_nothing_scrolls_sideways(visit: Any, page: str) -> None:
    """The page passes axe in light and dark and fits 320 px (WCAG 2.2, 1.4.10), answered or not."""
    tab = visit(page)
    for scheme in schemes(page):
        tab.emulate_media(color_scheme=scheme)
        results = axe_module.Axe().run(tab).response
        assert [(v["id"], [n["html"][:90] for n in v["nodes"]]) for v in results["violations"]] == [], scheme
    for width in (390, 320):
        tab.set_viewport_size({"width": width, "height": 800})
        assert tab.evaluate("document.documentElement.scrollWidth") <= width
