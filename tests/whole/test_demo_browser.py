"""Opens the demonstration in a real browser: its weight, and languages that the small site lacks.

The budgets of 350 KB compressed and 60 KB of HTML are the project's own.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest

from tests.browsing import served
from tests.nu import complaints
from tests.website.test_served import FIRST_VISIT, PAGE, weight

pytestmark = pytest.mark.slow
PROGRAMME = "hip-abductor-repair"
# One page of each template.
TEMPLATES = (
    *("index", "check", "warning-signs", "glossary", "about", "helper", "exercises/index"),
    *("exercises/single-leg-stand", "daily-life/bed-in-and-out", f"programmes/{PROGRAMME}/index"),
    *(f"programmes/{PROGRAMME}/phase-3", f"clinicians/{PROGRAMME}"),
    *(f"clinicians/{PROGRAMME}-{part}" for part in ("order", "evidence", "protocol", "reporting")),
    f"clinicians/{PROGRAMME}-patient-3",
)


@pytest.fixture(scope="module")
def site(demo: Path) -> Iterator[str]:
    """Serve the demonstration under the policy for clinics and give its address."""
    with served(demo) as address:
        yield address


@pytest.fixture
def tab(browser: Any) -> Iterator[Any]:
    """Give an empty page of a telephone; an error in a script fails the test."""
    context = browser.new_context(viewport={"width": 390, "height": 800})
    opened, errors = context.new_page(), []
    opened.on("pageerror", lambda error: errors.append(str(error)))
    yield opened
    context.close()
    assert errors == []


def loaded(tab: Any, address: str) -> list[str]:
    """Return the paths of all that a browser loads for a page, read to its end, with nothing kept before."""
    asked: list[str] = []
    tab.on("requestfinished", lambda request: asked.append(urlsplit(request.url).path.lstrip("/")))
    tab.goto(address)
    tab.evaluate("scrollTo(0, document.documentElement.scrollHeight)")
    tab.wait_for_load_state("networkidle")
    return list(dict.fromkeys(asked))


@pytest.mark.parametrize("language", ["en", "de", "es", "ar", "pl"])
def test_the_heaviest_exercise_is_light(demo: Path, site: str, tab: Any, language: str) -> None:
    """Under 350 KB compressed for the page, its pictures, fonts, scripts and search; its HTML under 60 KB."""
    pages = [one for one in (demo / language / "exercises").glob("*.html") if one.name != "index.html"]
    heaviest = max(pages, key=lambda one: one.stat().st_size)
    assert heaviest.stat().st_size < PAGE, heaviest
    files = loaded(tab, site + heaviest.relative_to(demo).as_posix())
    assert {Path(name).suffix for name in files} >= {".html", ".css", ".js", ".svg", ".woff2", ".json"}
    assert sum(weight(demo / name) for name in files) < FIRST_VISIT, heaviest


@pytest.mark.parametrize(
    ("language", "words"),
    [("es", ("después", "TALÓN", "rodillas", "flexi")), ("pl", ("łóżku", "kolanem", "PIĘTY", "ścian"))],
)
def test_words_with_accents_and_endings_are_found(
    demo: Path, site: str, tab: Any, language: str, words: tuple[str, ...]
) -> None:
    """Also in capitals and from their beginning; what is found holds the word."""
    tab.goto(f"{site}{language}/index.html")
    tab.locator(".pb-menu-button").click()
    for word in words:
        tab.locator("#__query").fill(word)
        tab.keyboard.press("Shift")  # text put in at once sends no key; the search listens for one
        link = tab.locator(".pb-search__list a").filter(has_text=word).first
        link.wait_for(timeout=5000)
        page = demo / urlsplit(link.evaluate("one => one.href")).path.lstrip("/")
        assert word.lower() in page.read_text("utf-8").lower()


def reach(tab: Any, selector: str) -> None:
    """Press the Tab key until the focus stands on what the selector names."""
    for _ in range(120):
        tab.keyboard.press("Tab")
        if tab.evaluate("wanted => document.activeElement.matches(wanted)", selector):
            return
    raise AssertionError(f"the Tab key never comes to {selector}")


@pytest.mark.parametrize("language", ["es", "pl"])
def test_the_way_to_a_ticked_exercise_is_walked_by_keyboard(site: str, tab: Any, language: str) -> None:
    """From the first page by Tab, Enter and Space alone: operation, phase, session, a tick that is kept."""
    tab.goto(f"{site}{language}/index.html")
    reach(tab, ".pb-choice summary")
    tab.keyboard.press("Enter")
    reach(tab, ".pb-choice[open] a[href*='phase-2.html']")
    tab.keyboard.press("Enter")
    tab.wait_for_url("**/phase-2.html#session")
    reach(tab, ".pb-tick input")
    tab.keyboard.press("Space")
    assert tab.evaluate("document.activeElement.checked")
    tab.reload()
    assert tab.locator(".pb-tick input:checked").count() == 1


def test_the_pages_of_the_other_languages_are_valid_html(demo: Path) -> None:
    """The Nu HTML checker finds no error in any template in Spanish and Polish."""
    assert complaints(demo, [f"{code}/{name}.html" for code in ("es", "pl") for name in TEMPLATES]) == []
