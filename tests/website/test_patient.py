"""A clinician narrows a phase to one patient in a real browser; the page shows what the command would do.

The rules (nothing widens, prerequisites kept or told, warnings on each sheet) are common practice, no source.
Source of the fragment's form: URL Standard (WHATWG), application/x-www-form-urlencoded parsing.
"""

from __future__ import annotations

import random
import re
import shlex
from pathlib import Path
from typing import Any

import pytest

from generator.body.shown import with_angles
from generator.catalogue.values import Catalogue
from generator.progression import arrange
from generator.progression.one_patient import narrow, phase_choices
from generator.reading import read_content
from generator.steps.wishes import Typed, read_wishes
from generator.website.environment import environment
from generator.website.page import write_page
from generator.website.patient import patient_pages
from generator.website.values import SiteInput
from generator.wording.localise import NO_TRANSLATIONS, localise
from generator.wording.voice import voice
from tests.website.looks import awry, schemes, unfold
from tests.website.small_site import EVIDENCE, ORDER, PATIENT_1, PATIENT_2, PROGRAMME, PROJECT, PROTOCOL

pytestmark = pytest.mark.slow
axe_module = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe is not installed")
TRIES = 12


def kept(tab: Any) -> list[str]:
    """Return the exercises on the sheet, by id."""
    cards = tab.locator("[data-pb-card]:not([hidden])")
    return [str(one.get_attribute("data-pb-card")) for one in cards.all()]


def command(tab: Any) -> str:
    """Return the command that is shown for copying."""
    return str(tab.locator("[data-pb-typed]").inner_text())


def said(tab: Any) -> str:
    """Return what the page says came of the choice."""
    return " ".join(tab.locator("[data-pb-out]").inner_text().split())


@pytest.mark.parametrize(
    "page",
    [f"{code}/{name}" for code in ("en", "ar") for name in (ORDER, EVIDENCE, PROTOCOL, PATIENT_2)],
)
def test_pages_for_clinicians_pass_axe_and_fit_a_narrow_screen(visit: Any, page: str) -> None:
    """Light and dark, in both directions, at every width, all folds open (axe-core; WCAG 2.2, 1.4.10)."""
    tab = visit(page)
    unfold(tab)
    for scheme in schemes(page):
        tab.emulate_media(color_scheme=scheme)
        results = axe_module.Axe().run(tab).response
        assert [(v["id"], [n["html"][:90] for n in v["nodes"]]) for v in results["violations"]] == [], scheme
    assert awry(tab) == []


def test_a_table_is_sorted_by_keyboard_and_says_how(visit: Any) -> None:
    """A heading is a button; the first press sorts upwards, the second downwards, and each is told."""
    tab = visit(f"en/{ORDER}")
    tab.locator("#order .pb-fold > summary").nth(1).click()
    head = tab.locator("#order table").nth(1).locator("thead th").nth(1)
    head.locator("button").focus()
    tab.keyboard.press("Enter")
    assert head.get_attribute("aria-sort") == "ascending"
    rows = tab.locator("#order table").nth(1).locator("tbody tr")
    first = rows.first.inner_text()
    tab.keyboard.press("Enter")
    assert head.get_attribute("aria-sort") == "descending"
    # An exercise that nobody measured stands last both ways.
    assert (rows.last.inner_text() != first) or "not measured" in rows.last.inner_text()
    assert "34" in rows.first.inner_text()


def test_an_address_that_leads_into_a_fold_opens_it(visit: Any) -> None:
    """A study, an exercise or a part of a page is seen at once, also when the address changes later."""
    tab = visit(f"en/{EVIDENCE}#study-invented-2001")
    assert tab.locator("#study-invented-2001").is_visible()
    table = tab.locator("#evidence section.pb-block").first
    assert not table.is_visible()
    tab.evaluate("id => { location.hash = id }", table.get_attribute("id"))
    table.wait_for(state="visible")
    tab = visit(f"en/{PROGRAMME}")
    assert not tab.locator("#allowed table").is_visible()
    tab.locator('.pb-jump a[href="#allowed"]').click()
    tab.locator("#allowed table").wait_for(state="visible")


def test_an_exercise_is_left_out_and_the_address_repeats_it(visit: Any) -> None:
    """The sheet, what is told, the command and the address agree; a bookmark brings the same choice back."""
    tab = visit(f"en/{PATIENT_2}")
    assert kept(tab) == ["ankle-pump", "heel-raise"]
    tab.locator("#choose").get_by_label("Ankle pump", exact=True).uncheck()
    assert kept(tab) == ["heel-raise"]
    assert said(tab) == "Ankle pump: Left out on request. Nothing was put in its place."
    assert tab.url.endswith("#without=ankle-pump")
    assert shlex.split(command(tab))[:5] == ["phasebook", "booklet", "tendon-repair", "2", "--language"]
    assert command(tab).endswith("--without ankle-pump")
    again = visit(f"en/{PATIENT_2}#without=ankle-pump")
    assert kept(again) == ["heel-raise"]


def test_a_strain_a_limit_and_less_weight_each_take_out_what_meets_them(visit: Any) -> None:
    """With the reason and what stands instead; limits are printed on the sheet, and the wider rule is not."""
    tab = visit(f"en/{PATIENT_2}")
    tab.locator("#choose").get_by_label("Knee", exact=False).first.check()
    assert kept(tab) == ["ankle-pump"]
    assert "Instead: Ankle pump." in said(tab)
    tab = visit(f"en/{PATIENT_2}#weight-bearing=touch&side=left&limit=ankle.plantarflexion=20")
    assert kept(tab) == ["ankle-pump"]
    assert "Goes beyond this patient's limit" in said(tab)
    assert "Weight on the leg" in said(tab)
    sheet = tab.locator("#one").inner_text()
    assert "Let your operated foot touch the floor, but do not lean on it." in sheet
    limits = tab.locator('[data-pb-for="ankle.plantarflexion"]:visible')
    assert [re.findall(r"\d+", one) for one in limits.all_inner_texts()] == [["20"]]
    assert "Operated side: left" in sheet
    shown = command(tab)
    for option in ("--side left", "--limit ankle.plantarflexion=20", "--weight-bearing touch"):
        assert option in shown


def test_what_is_not_at_hand_takes_out_what_asks_for_it(visit: Any) -> None:
    """Things are all at hand until one is taken away; sheet, words, address and command then agree."""
    tab = visit(f"en/{PATIENT_2}")
    worktop = tab.get_by_role("group", name="Things that this patient has").get_by_label("A worktop")
    assert worktop.is_checked()
    assert "--have" not in command(tab)
    worktop.focus()
    tab.keyboard.press("Space")
    assert kept(tab) == ["ankle-pump"]
    assert said(tab) == (
        "Heel raise with both legs: Not at hand: A worktop or a heavy table. Instead: Ankle pump."
    )
    named = dict(part.split("=") for part in tab.url.partition("#")[2].split("&"))
    assert "worktop" not in named["have"]
    again = visit(f"en/{PATIENT_2}#have={named['have']}")
    assert kept(again) == ["ankle-pump"]
    typed = shlex.split(command(again))
    assert typed[typed.index("--have") + 1] == named["have"].replace("%2C", ",")


def test_a_smaller_dose_is_shown_with_the_steps_after_it(visit: Any) -> None:
    """Only permitted doses at or below a step of the phase are offered, in order; the command names it."""
    tab = visit(f"en/{PATIENT_2}")
    tab.locator("#dose-heel-raise").select_option("1x6")
    card = tab.locator("#one-heel-raise")
    assert card.locator(".pb-dose__amount:visible").inner_text().replace("\u2066", "").startswith("1")
    assert [one.inner_text()[:1] for one in card.locator("[data-pb-step]:visible").all()] == [
        "2",
        "3",
        "3",
        "3",
    ]
    assert command(tab).endswith("--dose heel-raise=1x6")
    values = tab.locator("#dose-heel-raise option").evaluate_all("all => all.map(one => one.value)")
    assert not [value for value in values if value.startswith("4")]
    names = tab.locator("#dose-heel-raise option").all_inner_texts()
    told = [(" with " in name, [int(digits) for digits in re.findall("[0-9]+", name)]) for name in names]
    assert told == sorted(told)
    assert len({*names}) == len(names)


@pytest.mark.parametrize(
    "fragment",
    [
        "without=nobody",
        "have=helicopter",
        "have=helicopter,worktop",
        "side=both",
        "dose=heel-raise=9x99",
        "limit=hip.flexion=500",
        "weight-bearing=everything",
        "name=Jane",
        "side=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E",
        "avoid=%22%5D%3B%2F%2F",
        "constructor=1&__proto__=2",
    ],
)
def test_what_is_not_offered_is_said_plainly_and_changes_nothing(visit: Any, fragment: str) -> None:
    """Unknown ids, wider wishes and hostile text in the address: told, never executed, never on the sheet."""
    tab = visit(f"en/{PATIENT_2}#{fragment}")
    assert tab.get_by_text("A part of the address is not known here and was left out.").is_visible()
    assert kept(tab) == ["ankle-pump", "heel-raise"]
    assert command(tab) == "phasebook booklet tendon-repair 2 --language en"


def test_every_choice_off_leaves_a_word_and_no_sheet(visit: Any) -> None:
    """A sheet without exercises is not shown, nor can it be printed."""
    tab = visit(f"en/{PATIENT_2}#without=ankle-pump,heel-raise")
    assert tab.get_by_text("No exercise is left. Take one choice back.").is_visible()
    assert not tab.locator("#one").is_visible()
    assert tab.locator("[data-pb-print]").is_disabled()
    tab.get_by_role("button", name="Begin again").click()
    assert kept(tab) == ["ankle-pump", "heel-raise"]
    assert "#" not in tab.url


def test_another_language_shows_the_same_choice(visit: Any) -> None:
    """A clinician who cannot read the patient's language chooses in the own one, and prints the other."""
    tab = visit(f"en/{PATIENT_2}#without=ankle-pump&side=left")
    tab.locator("#language").select_option(label="العربية")
    tab.wait_for_url(f"**/ar/{PATIENT_2}#without=ankle-pump&side=left")
    assert kept(tab) == ["heel-raise"]
    assert "--language ar" in command(tab)


def test_the_printed_sheet_has_the_warnings_and_no_form(visit: Any) -> None:
    """Gate, pain limit, warning signs, deferral and telephone are on paper; what was chosen from is not."""
    tab = visit(f"en/{PATIENT_2}")
    tab.emulate_media(media="print")
    assert not tab.locator("#choose").is_visible()
    assert not tab.locator("[data-pb-typed]").is_visible()
    sheet = tab.locator("#one").inner_text()
    for words in ("Start only when you are told", "The pain is sharp or sudden.", "Do not jump or run."):
        assert words in sheet
    for selector in (
        "#one .pb-signs",
        "#one .pb-pain",
        "#one .pb-worse",
        ".pb-footer__note",
        ".pb-safety__phone",
    ):
        assert tab.locator(selector).first.is_visible(), selector


def test_without_scripts_the_whole_phase_and_the_command_stand_there(browser: Any, site: str) -> None:
    """Nothing is offered that does nothing, and the sentence says what to do instead."""
    context = browser.new_context(java_script_enabled=False)
    tab = context.new_page()
    tab.goto(site + f"en/{PATIENT_1}")
    assert not tab.locator("#choose").is_visible()
    assert tab.get_by_text("Without scripts nothing can be chosen here").is_visible()
    assert command(tab) == "phasebook booklet tendon-repair 1 --help"
    assert tab.locator("#one-ankle-pump").is_visible()
    context.close()


@pytest.fixture(scope="module")
def demo() -> Catalogue:
    """Read the demonstration, with the angles of its poses."""
    read = read_content(PROJECT / "content").catalogue
    assert read is not None
    return with_angles(read)


@pytest.fixture(scope="module")
def sheets(demo: Catalogue, tmp_path_factory: pytest.TempPathFactory) -> dict[Any, Path]:
    """Give a bare page with the script for each phase of the demonstration."""
    speaking = voice("en")
    one = SiteInput(
        catalogue=localise(demo, speaking, NO_TRANSLATIONS)[0],
        voice=speaking,
        languages=(),
        orders=arrange(demo),
        choices={
            (programme.id, phase.number): phase_choices(demo, programme, phase)
            for programme in demo.programmes.values()
            for phase in programme.phases
        },
    )
    folder = tmp_path_factory.mktemp("sheets")
    script = (PROJECT / "site_assets/js/patient.js").read_text("utf-8")
    found = {}
    for key, page in zip(one.choices, patient_pages(one), strict=True):
        write_page(page, environment(speaking, "en"), folder)
        body = (folder / page.path.replace(".html", ".md")).read_text("utf-8").split("---\n", 2)[2]
        found[key] = folder / f"{key[0]}-{key[1]}.html"
        found[key].write_text(
            f'<!doctype html><html lang="en"><meta charset="utf-8"><body>{body}<script>{script}</script>',
            "utf-8",
        )
    return found


def test_the_page_keeps_what_the_command_keeps(
    demo: Catalogue, sheets: dict[Any, Path], browser: Any
) -> None:
    """Any wishes, in every phase of the demonstration: the same exercises, and no sheet where it refuses."""
    chance = random.Random(20)
    tab = browser.new_page()
    refused = 0
    for (programme, number), file in sheets.items():
        tab.goto(file.as_uri())
        for _ in range(TRIES):
            typed = wishes(chance, tab)
            tab.evaluate("hash => { location.hash = hash }", fragment(typed))
            tab.wait_for_timeout(20)
            phase = demo.programmes[programme].phase(number)
            meant, unknown = read_wishes(demo, phase, typed)
            assert unknown == (), typed
            made = narrow(demo, programme, number, meant)
            refused += bool(made.problems)
            assert tab.locator("#one").is_visible() == (not made.problems), (programme, number, typed)
            if not made.problems:
                uses = made.catalogue.programmes[programme].phase(number).uses
                assert set(kept(tab)) == {use.use for use in uses}, (programme, number, typed)
    assert refused > 0
    tab.close()


def values(tab: Any, selector: str) -> list[str]:
    """Return the values of fields, or of the options of a list, none of them empty."""
    found = tab.locator(selector).evaluate_all("all => all.map(one => one.value).filter(Boolean)")
    return [str(value) for value in found]


def wishes(chance: random.Random, tab: Any) -> Typed:
    """Return wishes made of what the page offers."""

    def some(listed: list[str], most: int) -> str:
        return ",".join(chance.sample(listed, min(len(listed), chance.randint(0, most))))

    things = values(tab, '[name="have"]')
    limits = []
    for field in chance.sample(tab.locator('select[name="limit"]').all(), chance.randint(0, 2)):
        degrees = field.locator("option").evaluate_all("all => all.map(one => one.value).filter(Boolean)")
        limits.append(f"{field.get_attribute('data-pb-of')}={chance.choice(degrees)}")
    return Typed(
        without=some(values(tab, '[name="use"]'), 2),
        have=chance.choice([None, None, "", some(things, 2), ",".join(things), some(things, len(things))]),
        avoid=some(values(tab, '[name="avoid"]'), 2),
        mastered=some(values(tab, '[name="mastered"]'), 1),
        limits=tuple(limits),
        weight_bearing=chance.choice([None, None, *values(tab, "#weight option")]),
    )


def fragment(typed: Typed) -> str:
    """Return the fragment that says the same."""
    parts = [("without", typed.without), ("avoid", typed.avoid), ("mastered", typed.mastered)]
    parts += [("limit", limit) for limit in typed.limits] + [("weight-bearing", typed.weight_bearing or "")]
    told = [f"{name}={value}" for name, value in parts if value]
    return "&".join(told if typed.have is None else [*told, f"have={typed.have}"])
