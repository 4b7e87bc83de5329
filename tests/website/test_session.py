"""The session is worked through in a real browser: ticks, doses, pain and diary, with and without a memory.

Sources: WCAG 2.2 success criterion 2.5.5 (targets of 44 px); HTML Living Standard, Web storage (reading may
throw SecurityError, writing QuotaExceededError). The clinical rules are common practice, no source.
"""

from __future__ import annotations

import json
from typing import Any

import pytest

from tests.website.small_site import PHASE_1, PHASE_2

pytestmark = pytest.mark.slow
axe_module = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe is not installed")

KEY = "phasebook/tendon-repair/2"
CARD = '[data-pb-do="heel-raise"]'
REFUSED = "throw new DOMException('no', 'SecurityError')"
BLOCKED = f"Object.defineProperty(window, 'localStorage', {{get() {{ {REFUSED} }}}})"
FULL = "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError') }"
# It counts as full only where something lies there already.
FULL_LATER = f"localStorage.setItem('other', 'x'); {FULL}"


def kept(tab: Any) -> Any:
    """Return what the device keeps of the phase."""
    return json.loads(tab.evaluate("(key) => localStorage.getItem(key)", KEY) or "null")


def unfold(tab: Any) -> None:
    """Say that one was told to add the heel raise; what was used before stands open."""
    if not tab.locator(f"{CARD} > .pb-fold[open]").count():
        tab.locator(f"{CARD} > .pb-fold > summary").click()


@pytest.fixture
def begun(visit: Any) -> Any:
    """Give a function that opens phase 2 as somebody does who was told to add the heel raise."""

    def open_session(**options: Any) -> Any:
        tab = visit(f"en/{PHASE_2}", **options)
        unfold(tab)
        return tab

    return open_session


def tick(tab: Any, place: int = 0) -> None:
    """Tick one box of the heel raise."""
    tab.locator(f"{CARD} .pb-tick input").nth(place).check()


def rate(tab: Any, time: str, level: int) -> None:
    """Say how much it hurt."""
    tab.locator(f'[data-pb-pain="{time}"] input[value="{level}"]').check()


def test_two_taps_lead_from_home_to_the_session(visit: Any) -> None:
    """One for the operation, one for the booklet; with a single operation its booklets stand open."""
    tab = visit("en/index.html", width=390)
    if not tab.locator(".pb-booklets").is_visible():
        tab.locator(".pb-choice summary").click()
    tab.locator(".pb-booklets a").nth(1).click()
    tab.wait_for_url(f"**/{PHASE_2}#session")
    tab.wait_for_timeout(300)
    assert tab.locator("#session h2").bounding_box()["y"] < 500


def test_ticks_and_pain_are_there_again_after_a_reload(begun: Any) -> None:
    """And the diary has a row for the day; yesterday's row takes this morning's pain."""
    tab = begun(width=390)
    assert tab.get_by_text("Nothing is written down yet.").is_visible()
    tick(tab)
    rate(tab, "during", 2)
    rate(tab, "morning", 0)
    tab.reload()
    assert tab.locator(f"{CARD} .pb-tick input").first.is_checked()
    assert tab.locator('[data-pb-pain="during"] input[value="2"]').is_checked()
    rows = [row.split() for row in tab.locator(".pb-table--diary tbody tr").all_inner_texts()]
    assert len(rows) == 2
    assert "1/2" in rows[0]
    assert "2" in rows[0]
    assert rows[1][-1] == "0"
    assert axe_module.Axe().run(tab).response["violations"] == []


def test_what_is_ticked_goes_nowhere_else(begun: Any) -> None:
    """No cookie, no address, no session store: one entry of this device, without name or operation date."""
    tab = begun()
    tick(tab)
    assert tab.context.cookies() == []
    assert tab.evaluate("[location.hash, sessionStorage.length, Object.keys(localStorage)]") == ["", 0, [KEY]]
    assert set(kept(tab)) == {"days", "steps"}


def test_a_dose_step_changes_the_dose_the_boxes_and_the_step_back(begun: Any) -> None:
    """2 × 8 has two boxes, 3 × 8 three; the way back from 3 × 8 is 2 × 8."""
    tab = begun(width=390)
    card = tab.locator(CARD)
    assert card.locator(".pb-tick:visible").count() == 2
    card.locator(".pb-ladder input").nth(1).check()
    assert card.locator(".pb-do__amount:visible").inner_text().replace("\u00a0", " ") == "3 × 8"
    assert card.locator(".pb-tick:visible").count() == 3
    card.locator(".pb-hard summary").click()
    steps = [text.replace("\u00a0", " ") for text in card.locator("[data-pb-back]:visible").all_inner_texts()]
    assert steps == ["After 3 × 8: do 2 × 8."]
    tab.reload()
    assert card.locator(".pb-do__amount:visible").inner_text().replace("\u00a0", " ") == "3 × 8"


@pytest.mark.parametrize(("time", "limit"), [("during", 3), ("after", 3), ("morning", 0)])
def test_more_pain_than_allowed_says_what_to_do(begun: Any, time: str, limit: int) -> None:
    """At the limit nothing is said, above it the day's instructions stand there at once."""
    tab = begun(width=390)
    assert int(tab.locator(f'[data-pb-pain="{time}"]').get_attribute("data-pb-limit")) == limit
    rate(tab, time, limit)
    assert not tab.locator("#over").is_visible()
    rate(tab, time, limit + 1)
    assert "Stop for today." in tab.locator("#over").inner_text()


def test_the_diary_can_be_deleted(begun: Any) -> None:
    """It asks once more, then nothing is left and the page says so."""
    tab = begun()
    tick(tab)
    tab.locator("#diary summary").click()
    tab.locator("[data-pb-delete]").click()
    assert tab.evaluate("localStorage.length") == 0
    assert not tab.locator(f"{CARD} .pb-tick input").first.is_checked()
    assert tab.get_by_text("The diary of this phase is deleted from this device.").is_visible()
    assert tab.evaluate("document.activeElement.tagName") == "SUMMARY"


@pytest.mark.parametrize(
    ("before", "words"),
    [(BLOCKED, "This browser keeps nothing."), (FULL_LATER, "There is no room left on this device.")],
)
def test_without_a_memory_the_session_works_until_it_is_closed(begun: Any, before: str, words: str) -> None:
    """A private window or a full device costs only the memory, and a sentence says so."""
    tab = begun(before=before)
    assert tab.locator("#diary").get_by_text(words).is_visible()
    tick(tab)
    rate(tab, "during", 4)
    tick(tab, 1)
    assert tab.locator(f"{CARD} .pb-tick input:checked").count() == 2
    assert "2/2" in tab.locator(".pb-table--diary tbody tr").first.inner_text()
    assert tab.locator("#over").is_visible()


def test_a_device_that_fills_up_meanwhile_loses_nothing_on_the_page(begun: Any) -> None:
    """What was ticked before and after the store was full stands side by side."""
    tab = begun()
    tick(tab)
    tab.evaluate(f"() => {{ {FULL} }}")
    tick(tab, 1)
    assert tab.locator(f"{CARD} .pb-tick input:checked").count() == 2
    assert tab.get_by_text("There is no room left on this device.").is_visible()


@pytest.mark.parametrize(
    "text",
    ["{", "null", "[]", '"x"', '{"days": 7}', '{"days": []}'],
)
def test_a_store_that_cannot_be_read_begins_anew(begun: Any, text: str) -> None:
    """Whatever lies there, the page works and says what it did."""
    tab = begun(before=f"localStorage.setItem({KEY!r}, {text!r})")
    assert tab.get_by_text("What was kept here cannot be read any more.").is_visible()
    tick(tab)
    assert tab.locator(f"{CARD} .pb-tick input").first.is_checked()


def test_hostile_entries_are_dropped_and_never_executed(begun: Any) -> None:
    """Only what the page itself could have written is taken; nothing becomes markup."""
    evil = "<img src=x onerror=document.title=1>"
    told = {
        "days": {
            evil: {"ticks": {}, "pain": {"during": 3}},
            "2026-01-02": {
                "ticks": {"heel-raise": ["0-0", evil], "unknown": ["0-0"], "__proto__": ["0-0"]},
                "pain": {"during": evil, "after": 11, "morning": "length"},
            },
        },
        "steps": {"heel-raise": 99, "ankle-pump": evil},
    }
    tab = begun(before=f"localStorage.setItem({KEY!r}, {json.dumps(json.dumps(told))})")
    rows = tab.locator(".pb-table--diary tbody tr")
    assert rows.count() == 1
    assert "1/2" in rows.first.inner_text()
    assert evil not in tab.content()
    assert tab.locator(f"{CARD} .pb-do__amount:visible").count() == 1


def test_what_waits_for_the_physiotherapist_stands_folded_until_it_was_begun(visit: Any) -> None:
    """Name, week and condition can be read; dose and ticks come when asked for, and stay once used."""
    tab = visit(f"en/{PHASE_2}", width=390)
    card = tab.locator(CARD)
    assert "week 9" in card.locator(".pb-do__state").inner_text()
    assert not card.locator(".pb-do__amount").first.is_visible()
    summary = card.locator("> .pb-fold > summary")
    assert summary.inner_text().startswith("I was told to add it")
    summary.focus()
    tab.keyboard.press("Enter")
    assert card.locator(".pb-do__amount:visible").count() == 1
    for picture in card.locator("img:visible").all():
        picture.evaluate("one => one.decode()")
    tab.reload()
    assert not card.locator(".pb-tick input").first.is_visible()
    summary.click()
    tick(tab)
    tab.reload()
    assert card.locator(".pb-tick input").first.is_visible()


def test_midnight_begins_a_new_day(begun: Any) -> None:
    """A page left open overnight does not go on ticking yesterday."""
    tab = begun()
    tab.clock.install(time="2026-03-28T22:00:00")
    tab.reload()
    unfold(tab)
    tick(tab)
    tab.clock.set_system_time("2026-03-29T08:00:00")
    tab.evaluate("document.dispatchEvent(new Event('visibilitychange', {bubbles: true}))")
    assert tab.locator(f"{CARD} .pb-tick input:checked").count() == 0
    tick(tab)
    assert list(kept(tab)["days"]) == ["2026-03-28", "2026-03-29"]


def test_two_windows_do_not_undo_each_other(begun: Any) -> None:
    """What was ticked in one stands in the other, and both ticks are kept."""
    tab = begun()
    tick(tab)
    other = tab.context.new_page()
    other.goto(tab.url)
    tick(other, 1)
    tab.wait_for_timeout(300)
    assert tab.locator(f"{CARD} .pb-tick input:checked").count() == 2


def test_the_diary_is_printed_alone_with_what_every_sheet_carries(begun: Any) -> None:
    """Only title, diary, note, telephone and address are on the paper; afterwards the page is whole again."""
    tab = begun(before="window.print = () => { window.printed = true }")
    tick(tab)
    tab.locator("[data-pb-print]").click()
    assert tab.evaluate("window.printed")
    tab.emulate_media(media="print")
    for selector in (".pb-table--diary", "h1", ".pb-footer__note", ".pb-safety__phone", ".pb-footer__clinic"):
        assert tab.locator(selector).first.is_visible(), selector
    for selector in ("#session", "#restrictions", "#worse", "[data-pb-print]"):
        assert not tab.locator(selector).first.is_visible(), selector
    tab.evaluate("dispatchEvent(new Event('afterprint'))")
    assert tab.locator("#session").is_visible()
    assert not tab.locator("#diary").is_visible()


def test_a_printed_session_carries_pictures_dose_and_warning(visit: Any) -> None:
    """Start and finish, dose and caution are on the paper, and nothing that only a finger can use."""
    tab = visit(f"en/{PHASE_2}")
    tab.emulate_media(media="print")
    card = tab.locator(CARD)
    assert card.locator(".pb-do__stills img:visible").count() == 2
    assert card.locator(".pb-do__amount:visible").count() == 1
    assert tab.locator("#worse").is_visible()
    for selector in (".pb-tick", "summary", ".pb-moving"):
        assert card.locator(f"{selector}:visible").count() == 0, selector


def test_what_a_finger_uses_is_large(visit: Any) -> None:
    """Every control of the session is at least 44 px high and wide, at 320 px too."""
    tab = visit(f"en/{PHASE_2}", width=320)
    summaries = tab.locator("#session summary:visible").all()
    assert min(one.bounding_box()["height"] for one in summaries) >= 44
    tab.locator(f"{CARD} > .pb-fold > summary").click()
    for selector in (".pb-tick", ".pb-ladder__step", ".pb-scale__cell", ".pb-button", "#session summary"):
        for box in [one.bounding_box() for one in tab.locator(f"{selector}:visible").all()]:
            assert min(box["height"], box["width"]) >= 44, (selector, box)
    assert tab.evaluate("document.documentElement.scrollWidth") <= 320


def test_the_session_works_by_keyboard(begun: Any) -> None:
    """Space ticks, arrows choose dose and pain, and the focus can be seen."""
    tab = begun()
    tab.locator(f"{CARD} .pb-tick input").first.focus()
    tab.keyboard.press("Space")
    assert kept(tab)["days"]
    tab.locator(f"{CARD} .pb-ladder input").first.focus()
    tab.keyboard.press("ArrowDown")
    assert kept(tab)["steps"] == {"heel-raise": 1}
    tab.locator('[data-pb-pain="during"] input').first.focus()
    tab.keyboard.press("ArrowRight")
    assert next(iter(kept(tab)["days"].values()))["pain"] == {"during": 1}
    cell = tab.locator('[data-pb-pain="during"] .pb-scale__cell').nth(1)
    assert cell.evaluate("(one) => getComputedStyle(one).outlineStyle") == "solid"


def test_without_scripts_the_session_is_a_plain_page(browser: Any, site: str) -> None:
    """Doses, how to do it and the step back are there; nothing stands there that would do nothing."""
    context = browser.new_context(java_script_enabled=False, viewport={"width": 390, "height": 800})
    tab = context.new_page()
    tab.goto(site + f"en/{PHASE_2}")
    card = tab.locator(CARD)
    card.locator("> .pb-fold > summary").click()
    assert card.locator(".pb-do__amount:visible").count() == 1
    card.locator(".pb-hard summary").click()
    assert card.locator("[data-pb-back]:visible").count() == 4
    for selector in ("input", "button", "#diary", ".pb-scale"):
        assert tab.locator(f"main {selector}:visible").count() == 0, selector
    assert tab.get_by_text("Write your pain from 0 to 10 in the diary of your booklet.").is_visible()
    context.close()


def test_each_phase_keeps_its_own_diary(begun: Any) -> None:
    """A tick in phase 2 is none in phase 1."""
    tab = begun()
    tick(tab)
    tab.goto(tab.url.replace(PHASE_2, PHASE_1))
    assert tab.get_by_text("Nothing is written down yet.").is_visible()


def test_in_a_right_to_left_page_the_scale_still_runs_from_left_to_right(visit: Any) -> None:
    """0 is left of 1, as on the paper scale, and nothing scrolls sideways."""
    tab = visit(f"ar/{PHASE_2}", width=390)
    cell = tab.locator('[data-pb-pain="during"] .pb-scale__cell')
    cells = [cell.nth(place).bounding_box()["x"] for place in (0, 1)]
    assert cells[0] < cells[1]
    assert tab.evaluate("document.documentElement.scrollWidth") <= 390
    assert axe_module.Axe().run(tab).response["violations"] == []
