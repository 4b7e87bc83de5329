"""The list of all exercises is narrowed in a real browser, also by a bookmark and by hostile text.

Sources: URL Standard (WHATWG), application/x-www-form-urlencoded parsing of the fragment; WCAG 2.2 success
criterion 4.1.3 (status messages). 50 ms for 1,000 exercises is the project's own aim.
"""

from __future__ import annotations

import re
from typing import Any

import pytest

pytestmark = pytest.mark.slow
axe_module = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe is not installed")

LIST = "en/exercises/index.html"
MANY = 1000
LIMIT_MS = 50


def shown(tab: Any) -> list[str]:
    """Return the exercises that can be seen, each once, by id."""
    return sorted(
        {one.get_attribute("data-pb-exercise") for one in tab.locator("[data-pb-exercise]:visible").all()}
    )


def count(tab: Any) -> str:
    """Return what the status line says."""
    return " ".join(tab.locator(".pb-find__told [role=status]").inner_text().split())


def test_everything_is_shown_before_anything_is_chosen(visit: Any) -> None:
    """The count says how many there are; the form passes axe."""
    tab = visit(LIST, width=390)
    assert shown(tab) == ["ankle-pump", "heel-raise"]
    assert count(tab) == "Exercises shown: 2 / 2"
    assert axe_module.Axe().run(tab).response["violations"] == []


@pytest.mark.parametrize(
    ("field", "value", "found"),
    [
        ("posture", "standing", ["heel-raise"]),
        ("surface", "bed", ["ankle-pump"]),
        ("equipment", "worktop", ["heel-raise"]),
        ("equipment", "-", ["ankle-pump"]),
        ("strain", "knee", ["ankle-pump"]),
        ("phase", "1", ["ankle-pump"]),
    ],
)
def test_each_choice_narrows_the_list(visit: Any, field: str, value: str, found: list[str]) -> None:
    """A strain is left out, all else is looked for; empty lists vanish; the address repeats the choice."""
    tab = visit(LIST)
    tab.locator(f"#find-{field}").select_option(value)
    assert shown(tab) == found
    assert count(tab) == f"Exercises shown: {len(found)} / 2"
    assert tab.evaluate("location.hash") == f"#{field}={value}"
    for one in tab.locator("[data-pb-list]:visible").all():
        assert one.locator("[data-pb-exercise]:visible").count() > 0


def test_a_bookmark_brings_the_choice_back(visit: Any) -> None:
    """Also when the address changes while the page is open."""
    tab = visit(f"{LIST}#posture=standing&surface=standing")
    assert shown(tab) == ["heel-raise"]
    assert tab.locator("#find-posture").input_value() == "standing"
    tab.evaluate("location.hash = '#surface=bed'")
    tab.wait_for_timeout(100)
    assert shown(tab) == ["ankle-pump"]
    assert tab.locator("#find-posture").input_value() == ""


@pytest.mark.parametrize(
    "fragment",
    [
        "posture=flying",
        "colour=red",
        "posture=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E",
        "__proto__=x&constructor=y",
        "posture=%E0%A4%A",
        "javascript:alert(1)",
        "&&==&",
        "posture=" + "x" * 5000,
        "posture='];alert(1);//",
    ],
)
def test_what_is_unknown_is_left_out_and_said(visit: Any, fragment: str) -> None:
    """The list stands whole, a plain sentence says so, and nothing of the text reaches the page."""
    tab = visit(f"{LIST}#{fragment}")
    assert shown(tab) == ["ankle-pump", "heel-raise"]
    if fragment != "&&==&":
        assert tab.get_by_text("A part of the address is not known here and was left out.").is_visible()
    assert "onerror" not in tab.locator("main").inner_html()


def test_known_parts_of_a_half_known_address_hold(visit: Any) -> None:
    """An exercise's position stays chosen when a thing no longer exists."""
    tab = visit(f"{LIST}#posture=standing&equipment=trapeze")
    assert shown(tab) == ["heel-raise"]
    assert tab.get_by_text("A part of the address is not known here and was left out.").is_visible()
    tab.locator("#find-surface").select_option("standing")
    assert not tab.get_by_text("A part of the address is not known here").is_visible()


def test_where_nothing_fits_it_says_how_to_go_on(visit: Any) -> None:
    """And one button shows all again."""
    tab = visit(f"{LIST}#posture=standing&surface=bed")
    assert shown(tab) == []
    assert tab.get_by_text("No exercise has all of this. Take one choice back.").is_visible()
    tab.locator("[data-pb-all]").click()
    assert shown(tab) == ["ankle-pump", "heel-raise"]
    assert "#" not in tab.url


def test_the_choices_work_by_keyboard_and_the_count_is_told(visit: Any) -> None:
    """Letters choose in a list; the count is a status that is read aloud; the way past the frame stays."""
    tab = visit(LIST)
    tab.locator("#find-posture").focus()
    tab.keyboard.type("Stan")
    assert shown(tab) == ["heel-raise"]
    assert count(tab) == "Exercises shown: 1 / 2"
    tab.evaluate("location.hash = '#main'")
    tab.wait_for_timeout(100)
    assert shown(tab) == ["heel-raise"]


def test_without_scripts_the_whole_list_stands(browser: Any, site: str) -> None:
    """And no form that would do nothing."""
    context = browser.new_context(java_script_enabled=False)
    tab = context.new_page()
    tab.goto(f"{site}{LIST}#posture=standing")
    assert shown(tab) == ["ankle-pump", "heel-raise"]
    assert not tab.locator("#find").is_visible()
    context.close()


def test_a_thousand_exercises_are_narrowed_in_50_ms(browser: Any, site: str) -> None:
    """Measured with the new layout; of five tries the least disturbed counts, on a machine in use."""
    context = browser.new_context()
    tab = context.new_page()

    def multiplied(route: Any) -> None:
        answer = route.fetch()
        entry = re.search(r'<li data-pb-exercise="heel-raise".*?</li>', answer.text(), re.DOTALL)
        assert entry is not None
        postures = ("standing", "sitting", "on-back", "on-side")
        many = "".join(
            entry[0]
            .replace('"heel-raise"', f'"made-up-{one}"')
            .replace('data-posture="standing"', f'data-posture="{postures[one % 4]}"')
            for one in range(MANY)
        )
        route.fulfill(response=answer, body=answer.text().replace(entry[0], many, 1))

    tab.route("**/exercises/index.html", multiplied)
    tab.goto(site + LIST)
    assert tab.locator("[data-pb-exercise]").count() >= MANY
    times = tab.evaluate("""() => {
        const field = document.getElementById('find-posture'), times = [];
        for (const value of ['standing', '', 'standing', '', 'standing']) {
            field.value = value;
            const start = performance.now();
            field.dispatchEvent(new Event('change', {bubbles: true}));
            document.body.offsetHeight;
            times.push(performance.now() - start);
        }
        return times }""")
    assert tab.locator("[data-pb-exercise]:visible").count() >= MANY // 4
    print(f"1,000 exercises narrowed in {min(times):.1f} ms")  # noqa: T201
    assert min(times) < LIMIT_MS
    context.close()
