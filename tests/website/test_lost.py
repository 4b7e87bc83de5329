"""A bookmark that leads nowhere any more is answered in a real browser, under the policy for clinics.

Source of the status and of what is served with it: RFC 9110, section 15.5.5 (404), and the nginx example.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

pytestmark = pytest.mark.slow
GONE = "This exercise was taken out, or it has another name now."


@pytest.fixture
def lost(browser: Any, site: str) -> Iterator[Any]:
    """Give a function that opens an address that is not there; a script's error or a violation fails."""
    complaints: list[str] = []
    context = browser.new_context(viewport={"width": 390, "height": 800})

    def open_address(address: str) -> Any:
        tab = context.new_page()
        tab.on("pageerror", lambda error: complaints.append(str(error)))
        tab.add_init_script("addEventListener('securitypolicyviolation', e => { throw e.violatedDirective })")
        answer = tab.goto(site + address)
        assert answer.status == 404
        tab.wait_for_load_state("networkidle")
        return tab

    yield open_address
    context.close()
    assert complaints == []


def test_a_removed_exercise_is_told_and_the_nearest_offered(lost: Any) -> None:
    """The page says so, warns to keep to the own phase, and one click leads to what is named most like it."""
    tab = lost("en/exercises/old-heel-raise.html")
    part = tab.locator(".pb-greeting:lang(en)")
    assert part.get_by_text(GONE).is_visible()
    assert part.get_by_text("Do only the exercises of your own phase").is_visible()
    assert part.locator("[data-pb-near] a").all_inner_texts() == ["Heel raise with both legs"]
    part.locator("[data-pb-near] a").click()
    tab.wait_for_url("**/en/exercises/heel-raise.html")


def test_the_language_of_the_address_comes_first(lost: Any) -> None:
    """And only in it is anything said of an exercise."""
    tab = lost("de/exercises/heel-raise-seated.html")
    assert tab.locator("h1 + .pb-greeting").get_attribute("lang") == "de"
    assert tab.locator("[data-pb-gone]:visible").count() == 1


@pytest.mark.parametrize(
    ("address", "told"),
    [
        ("en/exercises/zzz.html", 1),
        ("en/exercises/%E0%A4%A.html", 1),
        ("en/exercises/%3Cimg%20src=x%20onerror=document.title=1%3E.html", 1),
        ("xx/exercises/heel-raise.html", 0),
        ("en/programmes/tendon-repair/phase-9.html", 0),
    ],
)
def test_where_nothing_is_alike_the_list_of_all_is_offered(lost: Any, address: str, told: int) -> None:
    """Hostile text in the address is compared and never shown; the way on is always there."""
    tab = lost(address)
    assert tab.locator("[data-pb-near]:visible").count() == 0
    assert tab.locator("[data-pb-gone]:visible").count() == told
    assert "1" not in tab.title()
    assert tab.locator("img").count() == 0
    tab.locator(".pb-greeting:lang(en)").get_by_role("link", name="All exercises").click()
    tab.wait_for_url("**/en/exercises/index.html")
