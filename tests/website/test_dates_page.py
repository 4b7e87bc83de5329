"""The days before which nothing may begin: worked out in the browser as `progression` works them out.

Sources: the day of the operation is day 0, "from week n" is day 7n (the project's one rule, common practice);
leap years of the Gregorian calendar; time zones and changes of the clock from the IANA data of the browser.
"""

from __future__ import annotations

import datetime
from typing import Any

import pytest
from babel.dates import format_date

from generator.catalogue.surgery import why_not
from generator.progression import calendar
from tests.website.small_site import PROGRAMME, Small

pytestmark = pytest.mark.slow
axe_module = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe is not installed")

TODAY = datetime.date(2028, 2, 29)
CLOCK = "2028-02-29T12:00:00Z"
# Leap days, ends of years, both changes of the clock in Europe and America, Samoa's day that never was.
DAYS = (
    *("1990-01-01", "1996-02-29", "1999-12-31", "2000-02-29", "2011-12-30", "2024-02-29", "2025-02-28"),
    *("2026-03-08", "2026-03-29", "2026-10-25", "2026-11-01", "2027-12-31", "2028-02-29", "2029-02-28"),
    *(str(datetime.date(1991, 1, 3) + datetime.timedelta(days=397 * step)) for step in range(34)),
)
ZONES = ("Europe/Warsaw", "America/St_Johns", "Pacific/Apia", "Asia/Kathmandu", "Pacific/Pago_Pago")
TELL = """(days) => days.map((day) => {
    const form = document.querySelector('#dates form');
    const [year, month, date] = day.split('-').map(Number);
    form.elements.day.value = date; form.elements.month.value = month; form.elements.year.value = year;
    form.requestSubmit();
    return document.querySelector('#dates [data-pb-told]').hidden
        ? [] : [...document.querySelectorAll('#dates time')].map((one) => one.dateTime) })"""


def ask(tab: Any, day: str, month: str, year: str) -> None:
    """Type a date and ask."""
    tab.locator("#dates-day").fill(day)
    tab.locator("#dates-month").select_option(month)
    tab.locator("#dates-year").fill(year)
    tab.locator("#dates button").click()


def at_noon(visit: Any, page: str = f"en/{PROGRAMME}", **options: Any) -> Any:
    """Open the page on a leap day."""
    tab = visit(page, **options)
    tab.clock.set_fixed_time(CLOCK)
    return tab


@pytest.mark.parametrize("zone", ZONES)
def test_browser_and_command_line_name_the_same_days(visit: Any, small: Small, zone: str) -> None:
    """Whatever the time zone, each phase and late exercise has the days that `dates` prints."""
    tab = at_noon(visit, timezone_id=zone)
    programme = small.inputs[0].catalogue.programmes["tendon-repair"]
    told = tab.evaluate(TELL, list(DAYS))
    for day, shown in zip(DAYS, told, strict=True):
        found = calendar(programme, datetime.date.fromisoformat(day))
        assert shown == [str(one) for item in found for one in (item.usual, item.delayed)], day


# What is typed as day, month and year, and how the answer begins.
REFUSED = (
    (("", "", ""), "This is no date."),
    (("31", "2", "2027"), "This is no date."),
    (("29", "2", "2027"), "This is no date."),
    (("0", "1", "2027"), "This is no date."),
    (("-1", "1", "2027"), "This is no date."),
    (("1.5", "1", "2027"), "This is no date."),
    (("x", "1", "2027"), "This is no date."),
    (("1", "", "2027"), "This is no date."),
    (("31", "12", "1989"), "This is before the year 1990."),
    (("1", "3", "27"), "This is before the year 1990."),
    (("2", "3", "2029"), "This is more than a year ahead."),
)


def test_a_day_that_cannot_be_meant_is_refused(visit: Any) -> None:
    """No days are named, the sentence says what to do, and the field is in focus; the next try is heard."""
    tab = at_noon(visit)
    for typed, words in REFUSED:
        ask(tab, *typed)
        assert tab.locator("#dates-wrong").inner_text().startswith(words), typed
        assert not tab.locator(".pb-table--dates").is_visible(), typed
        assert tab.evaluate("document.activeElement.id") == "dates-day", typed
        assert tab.locator("#dates-day").get_attribute("aria-invalid") == "true", typed
    ask(tab, "1", "3", "2029")
    assert tab.locator(".pb-table--dates").is_visible()
    assert tab.locator("#dates-wrong").inner_text() == ""


def test_browser_and_command_line_refuse_the_same_days(visit: Any) -> None:
    """Around the first and the last day that can be meant, both agree on every single one."""
    edges = (datetime.date(1990, 1, 1), TODAY + datetime.timedelta(days=366))
    days = [edge + datetime.timedelta(days=step) for edge in edges for step in range(-5, 6)]
    shown = at_noon(visit).evaluate(TELL, [str(day) for day in days])
    refused = [str(day) for day, found in zip(days, shown, strict=True) if not found]
    assert refused == [str(day) for day in days if why_not(day, TODAY)]
    assert len(refused) == len(days) // 2 - 1


def test_arabic_digits_are_understood(visit: Any) -> None:
    """Who types with an Arabic keyboard need not change it."""
    tab = at_noon(visit, page=f"ar/{PROGRAMME}")
    ask(tab, "٩", "3", "٢٠٢٦")
    assert tab.locator(".pb-table--dates time").first.get_attribute("datetime") == "2026-03-09"


@pytest.mark.parametrize("language", ["en", "de", "ar"])
def test_days_are_written_in_the_language_with_latin_digits(visit: Any, language: str) -> None:
    """The month is CLDR's word (through Babel) and the digits are those of the booklet."""
    tab = at_noon(visit, page=f"{language}/{PROGRAMME}", locale="ar-EG")
    ask(tab, "9", "3", "2026")
    shown = tab.locator(".pb-table--dates time").first.inner_text()
    assert format_date(datetime.date(2026, 3, 9), "MMMM", locale=language) in shown
    assert "9" in shown
    assert "2026" in shown
    assert not any(char in shown for char in "٠١٢٣٤٥٦٧٨٩")


def test_the_date_is_kept_nowhere(visit: Any) -> None:
    """Not in the address, the device, a cookie or a request; going away and back finds the fields empty."""
    tab = at_noon(visit)
    seen: list[str] = []
    tab.on("request", lambda request: seen.append(request.url))
    ask(tab, "9", "3", "2026")
    assert tab.evaluate("[location.hash + location.search, localStorage.length, sessionStorage.length]") == [
        "",
        0,
        0,
    ]
    assert tab.context.cookies() == []
    assert seen == []
    tab.goto(tab.url.replace(PROGRAMME, "index.html"))
    tab.wait_for_load_state("networkidle")
    tab.go_back()
    tab.wait_for_load_state("networkidle")
    assert tab.locator("#dates-day").input_value() == ""
    assert not tab.locator(".pb-table--dates").is_visible()


def test_no_phase_is_named_as_the_readers(visit: Any) -> None:
    """It says "not before" and to stay; a phase that could have begun looks like any other."""
    tab = at_noon(visit)
    ask(tab, "9", "3", "2020")
    words = tab.locator("#dates").inner_text()
    assert "Not before" in words
    assert "Until you are told, stay with the booklet you have." in words
    rows = tab.locator(".pb-table--dates tbody tr:not(.pb-dates__within)")
    assert len({row.get_attribute("class") for row in rows.all()}) == 1
    assert axe_module.Axe().run(tab).response["violations"] == []


def test_the_dates_work_by_keyboard(visit: Any) -> None:
    """Enter in a field asks."""
    tab = at_noon(visit)
    tab.locator("#dates-day").focus()
    tab.keyboard.type("9")
    tab.keyboard.press("Tab")
    tab.keyboard.type("March")
    tab.keyboard.press("Tab")
    tab.keyboard.type("2026")
    tab.keyboard.press("Enter")
    assert tab.locator(".pb-table--dates time").first.get_attribute("datetime") == "2026-03-09"


def test_without_scripts_there_is_the_rule_and_no_form(browser: Any, site: str) -> None:
    """Weeks stand on the page anyway; the sentence says how to count."""
    context = browser.new_context(java_script_enabled=False)
    tab = context.new_page()
    tab.goto(site + f"en/{PROGRAMME}")
    assert tab.get_by_text("Count full weeks from the day of your operation").is_visible()
    assert tab.locator("#dates form").is_hidden()
    context.close()
