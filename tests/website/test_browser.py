"""Opens the small site in a real browser: nothing forbidden, nothing from elsewhere, nothing unreadable.

Sources: W3C Content Security Policy Level 3 (the policy's words); axe-core (rules for WCAG 2.2 A and AA);
WCAG 2.2 success criteria 1.4.10 (reflow at 320 px), 2.1.4 (no bare-letter shortcuts), 2.4.11 (focus seen).
"""

from __future__ import annotations

from typing import Any

import pytest

from tests.website.looks import awry, enlarge, schemes, unfold
from tests.website.small_site import (
    CLINICIANS,
    EVIDENCE,
    HEEL_RAISE,
    HELPER,
    PATIENT_2,
    PHASE_2,
    PROGRAMME,
    REPORTING,
    STAIRS,
)

pytestmark = pytest.mark.slow

axe_module = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe is not installed")

TEMPLATES = (
    *("index.html", PROGRAMME, PHASE_2, "exercises/index.html", HEEL_RAISE, STAIRS, HELPER, REPORTING),
    *("warning-signs.html", "glossary.html", "about.html", CLINICIANS),
)
PAGES = (
    *(f"{code}/{name}" for code in ("en", "ar") for name in TEMPLATES),
    *("en/editors/codes.html", "en/editors/fields.html", "404.html"),
)


def test_the_policy_is_enforced_in_this_test(browser: Any, site: str) -> None:
    """A style set in a page's own HTML is refused, so silence elsewhere means something."""
    tab = browser.new_page()
    tab.goto(site + "en/index.html")
    tab.evaluate("document.body.insertAdjacentHTML('beforeend', '<p id=probe style=\"color: red\">x</p>')")
    assert tab.evaluate("getComputedStyle(document.getElementById('probe')).color") != "rgb(255, 0, 0)"
    tab.close()


@pytest.mark.parametrize("page", PAGES)
def test_axe_finds_nothing_and_nothing_scrolls_sideways(visit: Any, page: str) -> None:
    """Every template passes axe in light and dark, keeps the policy, and fits 320 px (WCAG 2.2, 1.4.10).

    No words lie over others at any width, and none with text at twice its size (1.4.4).
    """
    tab = visit(page)
    unfold(tab)
    for scheme in schemes(page):
        tab.emulate_media(color_scheme=scheme)
        results = axe_module.Axe().run(tab).response
        assert [(v["id"], [n["html"][:90] for n in v["nodes"]]) for v in results["violations"]] == [], scheme
    assert awry(tab) == []
    enlarge(tab)
    assert awry(tab, (1280, 640)) == []


def test_the_dose_is_the_largest_text_of_an_exercise(visit: Any) -> None:
    """A patient finds the dose at a glance: nothing on the page is set larger, on telephone or desk."""
    for width in (390, 1280):
        tab = visit(f"en/{HEEL_RAISE}", width=width)
        sizes = tab.evaluate(
            "Object.fromEntries([...document.querySelectorAll('main *, header *')].filter(e => e.innerText)"
            ".map(e => [e.className, parseFloat(getComputedStyle(e).fontSize)]))"
        )
        assert max(sizes, key=lambda name: sizes[name]) == "pb-dose__amount"


def test_digits_have_a_plain_zero(visit: Any) -> None:
    """The digits of a dose are drawn by the digit face, not by the text face with its slashed zero."""
    tab = visit(f"en/{HEEL_RAISE}")
    client = tab.context.new_cdp_session(tab)
    client.send("DOM.enable")
    client.send("CSS.enable")
    root = client.send("DOM.getDocument")["root"]["nodeId"]
    node = client.send("DOM.querySelector", {"nodeId": root, "selector": ".pb-dose__amount bdi"})["nodeId"]
    fonts = client.send("CSS.getPlatformFontsForNode", {"nodeId": node})["fonts"]
    used = {font["familyName"]: font["glyphCount"] for font in fonts}
    assert used["Phasebook Digits"] == len("2×8")


def test_figures_read_left_to_right_in_right_to_left_pages(visit: Any) -> None:
    """Doses, angles, ranges, shares and telephone numbers keep their order in the browser's own layout.

    Unicode Standard Annex #9: what is isolated from left to right stays so. No figure breaks over lines.
    """
    places = (
        "() => [...document.querySelectorAll('bdi[dir=ltr]')].filter(e => e.checkVisibility()).map(e => {"
        " const t = e.firstChild, r = new Range(), at = [];"
        " for (let i = 0; t && t.data && i < t.data.length; i++) { if (t.data[i].trim()) {"
        "  r.setStart(t, i); r.setEnd(t, i + 1); const b = r.getBoundingClientRect();"
        "  at.push([b.left, b.top]) } }"
        " return [e.textContent, at] })"
    )
    read: set[str] = set()
    clinicians = (CLINICIANS.replace(".html", f"-{part}.html") for part in ("protocol", "order", "evidence"))
    for page in (HEEL_RAISE, PHASE_2, PROGRAMME, *clinicians):
        for words, at in visit(f"ar/{page}", width=320).evaluate(places):
            lefts = [left for left, _ in at]
            assert lefts == sorted(lefts), (page, words)
            assert len({round(top) for _, top in at}) <= 1, (page, words)
            read.add(words)
    assert {sign for sign in "×°%" if any(sign in words for words in read)} == set("×°%")
    assert any(len(words) > 7 and words[0] == "0" for words in read)


def test_warning_signs_are_one_click_away_wherever_one_has_scrolled(visit: Any) -> None:
    """The link to the warning signs stays on the screen at the end of a long page, on telephone and desk."""
    for width, height in ((390, 700), (1280, 700)):
        tab = visit(f"en/{PHASE_2}", width=width, height=height)
        tab.keyboard.press("End")
        tab.wait_for_timeout(600)
        box = tab.locator(".pb-safety__warning").bounding_box()
        assert 0 <= box["y"] <= height - box["height"]
        tab.locator(".pb-safety__warning").click()
        tab.wait_for_url("**/en/warning-signs.html")


def test_keyboard_focus_is_never_under_the_fixed_links(visit: Any) -> None:
    """Every stop of the Tab key can be seen whole or in part (WCAG 2.2, 2.4.11)."""
    tab = visit(f"en/{PHASE_2}", width=390, height=700)
    hidden = """() => { const e = document.activeElement, b = e.getBoundingClientRect();
        const bar = document.querySelector('.pb-safety__links');
        if (e === document.body || bar.contains(e)) return null;
        const edge = bar.getBoundingClientRect().top;
        return b.top >= edge || b.bottom <= 0 ? e.outerHTML.slice(0, 90) : null }"""
    found = []
    for _ in range(30):
        tab.keyboard.press("Tab")
        tab.wait_for_timeout(30)
        found.append(tab.evaluate(hidden))
    assert [entry for entry in found if entry] == []


def test_the_skip_link_comes_first_and_leads_to_the_text(visit: Any) -> None:
    """The first stop of the Tab key passes over the frame."""
    tab = visit(f"en/{PHASE_2}")
    tab.keyboard.press("Tab")
    assert tab.evaluate("document.activeElement.classList[0]") == "pb-skip"
    tab.keyboard.press("Enter")
    assert tab.evaluate("document.activeElement.id") == "main"


def test_the_menu_opens_and_closes_by_keyboard(visit: Any) -> None:
    """On a telephone the menu is closed, opens by Enter, closes by Escape and gives the focus back."""
    tab = visit(f"en/{PHASE_2}", width=390)
    assert not tab.locator(".pb-nav").is_visible()
    tab.locator(".pb-menu-button").focus()
    tab.keyboard.press("Enter")
    assert tab.locator(".pb-nav").is_visible()
    tab.keyboard.press("Escape")
    assert not tab.locator(".pb-nav").is_visible()
    assert tab.evaluate("document.activeElement.classList[0]") == "pb-menu-button"


def test_the_search_finds_an_exercise(visit: Any) -> None:
    """The beginning of a word leads to the page it stands on, and the list of results passes axe."""
    tab = visit("en/index.html")
    tab.locator("#__query").press_sequentially("rais")
    link = tab.locator(".pb-search__list a").first
    link.wait_for()
    assert axe_module.Axe().run(tab).response["violations"] == []
    link.click()
    tab.wait_for_url("**/en/exercises/heel-raise.html*")


@pytest.mark.parametrize(
    ("language", "word"),
    [
        ("de", "langsam"),
        ("de", "senk"),
        ("ar", "قدميك"),
        ("ar", "أصاب"),
        ("ar", "الأصابع"),
        ("ar", "وقفة"),
        ("ar", "بالوقفة"),
        ("en", "not"),
    ],
)
def test_words_of_any_script_and_small_words_are_found(visit: Any, language: str, word: str) -> None:
    """An Arabic word before a full stop, its beginning, a word with or without "the", and "not" are found."""
    tab = visit(f"{language}/index.html")
    tab.locator("#__query").fill(word)
    tab.keyboard.press("Shift")  # text put in at once sends no key; the search listens for one
    tab.locator(".pb-search__list a").first.wait_for(timeout=5000)


@pytest.mark.parametrize(
    "page",
    [
        *("index.html", PROGRAMME, PHASE_2, "exercises/index.html", HEEL_RAISE, "check.html", CLINICIANS),
        *(PATIENT_2, EVIDENCE, "warning-signs.html"),
    ],
)
def test_hostile_text_in_the_address_is_neither_shown_nor_executed(visit: Any, page: str) -> None:
    """Broken escapes, markup and script in query and fragment leave every page as it is, without an error."""
    evil = "%3Cimg%20src%3Dx%20onerror%3Ddocument.title%3D1%3E"
    title = visit(f"en/{page}").title()
    for address in (f"?q={evil}&{evil}=1#{evil}", "?%zz#%zz", "#__proto__", "?q=#code=%E0%A4%A&=&#"):
        tab = visit(f"en/{page}{address}")
        assert tab.title() == title
        assert tab.locator("h1").is_visible()
        assert tab.locator("[onerror]").count() == 0


def test_bare_letters_start_nothing(visit: Any) -> None:
    """Typing a letter outside a field moves nothing (WCAG 2.2, 2.1.4)."""
    tab = visit("en/index.html")
    for key in ("s", "f", "/", "n", "p", ".", ","):
        tab.keyboard.press(key)
    tab.wait_for_timeout(200)
    assert tab.evaluate("document.activeElement.tagName") == "BODY"
    assert tab.url.endswith("/en/index.html")


def test_without_scripts_everything_is_there(browser: Any, site: str) -> None:
    """With scripts off the menu is open and the languages can be chosen."""
    context = browser.new_context(java_script_enabled=False, viewport={"width": 390, "height": 800})
    tab = context.new_page()
    tab.goto(site + f"en/{PHASE_2}")
    assert tab.locator(".pb-nav").is_visible()
    tab.locator(".pb-languages summary").click()
    tab.locator(".pb-languages a[lang=de]").click()
    tab.wait_for_url(f"**/de/{PHASE_2}")
    context.close()


def test_a_printed_page_carries_note_telephone_and_address(visit: Any) -> None:
    """On paper the frame falls away, but not the note, the lines to call, the address or "demonstration"."""
    tab = visit(f"en/{HEEL_RAISE}")
    tab.emulate_media(media="print")
    for selector in (".pb-footer__note", ".pb-safety__phone", ".pb-safety__warning", ".pb-demo"):
        assert tab.locator(selector).is_visible(), selector
    assert not tab.locator(".pb-nav").is_visible()


@pytest.mark.parametrize(("wish", "page"), [("de-AT", "de"), ("ar", "ar"), ("en-GB", "en")])
def test_the_first_page_goes_on_to_the_language_asked_for(
    browser: Any, site: str, wish: str, page: str
) -> None:
    """The nearest language is taken; a region that is not offered does not matter."""
    # Going on breaks off what the first page was still loading, so `visit` would complain.
    context = browser.new_context(locale=wish)
    tab = context.new_page()
    tab.goto(site + "index.html")
    tab.wait_for_url(f"**/{page}/index.html")
    context.close()


def test_a_language_that_is_not_offered_leaves_the_choice_to_the_reader(visit: Any) -> None:
    """The first page stays and lists all languages."""
    tab = visit("index.html", locale="fi")
    assert tab.locator("a[data-pb-door]").count() == 3
    assert axe_module.Axe().run(tab).response["violations"] == []


def test_what_is_restricted_can_be_opened_by_keyboard(visit: Any) -> None:
    """The list stands folded above an exercise, so that the dose is near; no mouse is needed."""
    tab = visit(f"en/{HEEL_RAISE}")
    assert not tab.get_by_text("Do not jump or run.").is_visible()
    tab.locator(".pb-more summary").focus()
    tab.keyboard.press("Enter")
    assert tab.get_by_text("Do not jump or run.").is_visible()


def test_a_movement_plays_only_when_asked_for_and_stops_when_asked_again(visit: Any) -> None:
    """The button says what it will do; the still pictures remain (WCAG 2.2, 2.2.2)."""
    tab = visit(f"en/{HEEL_RAISE}")
    assert tab.locator(".pb-moving img").count() == 0
    button = tab.locator(".pb-moving button")
    assert button.inner_text() == "Play the movement"
    button.focus()
    tab.keyboard.press("Enter")
    tab.locator(".pb-moving img").wait_for()
    assert button.inner_text() == "Stop the movement"
    assert axe_module.Axe().run(tab).response["violations"] == []
    tab.keyboard.press("Enter")
    assert tab.locator(".pb-moving img").count() == 0
    assert tab.locator(".pb-sheet__figures figure img").count() == 2


def test_who_asks_for_less_motion_and_paper_get_the_still_pictures(visit: Any) -> None:
    """Neither offers to play anything."""
    tab = visit(f"en/{HEEL_RAISE}")
    tab.emulate_media(reduced_motion="reduce")
    assert not tab.locator(".pb-moving").is_visible()
    tab.emulate_media(reduced_motion="no-preference", media="print")
    assert not tab.locator(".pb-moving").is_visible()
    assert tab.locator(".pb-sheet__figures figure img").first.is_visible()


def test_without_scripts_the_movement_can_be_opened(browser: Any, site: str) -> None:
    """Then a link leads to the file."""
    context = browser.new_context(java_script_enabled=False)
    tab = context.new_page()
    tab.goto(site + f"en/{HEEL_RAISE}")
    tab.locator(".pb-moving a").click()
    tab.wait_for_url("**/assets/figures/heel-raise-moving.*.svg")
    context.close()


def test_the_languages_open_and_close_by_keyboard(visit: Any) -> None:
    """Escape closes what is open and gives the focus back."""
    tab = visit(f"en/{PHASE_2}")
    tab.locator(".pb-languages summary").focus()
    tab.keyboard.press("Enter")
    assert tab.locator(".pb-languages nav").is_visible()
    tab.keyboard.press("Escape")
    assert not tab.locator(".pb-languages nav").is_visible()
    assert tab.evaluate("document.activeElement.tagName") == "SUMMARY"
