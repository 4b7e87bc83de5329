"""Each page says what its reader needs, dangers first: written from the small content, not yet built.

The clinical rules are those of the trade, common practice with no source, unless a source stands beside.
"""

from __future__ import annotations

import posixpath
from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from generator.catalogue.arranged import Order
from generator.publish.pages import gather, parse
from generator.website.pages import write_pages
from generator.website.values import BookletFact, PaperKind
from generator.wording.isolation import plain
from tests.content import FILES, with_change
from tests.website.small_site import (
    CLINICIANS,
    EVIDENCE,
    HEEL_RAISE,
    ORDER,
    PATIENT_1,
    PATIENT_2,
    PHASE_1,
    PHASE_2,
    PROGRAMME,
    PROTOCOL,
    REPORTING,
    site_inputs,
)
from tests.website.written import Written, written
from tests.wording.pseudo import pseudo

PATIENTS = ("index.html", PROGRAMME, PHASE_1, PHASE_2, "exercises/index.html", HEEL_RAISE)
PROGRAMME_FILE = "programmes/tendon-repair.yml"
RAISE_FILE = "exercises/heel-raise.yml"


@pytest.fixture(scope="module")
def english(tmp_path_factory: pytest.TempPathFactory) -> Written:
    """Write the English pages of the small content."""
    return written(FILES, tmp_path_factory.mktemp("english"))


@cache
def harder_form(demand: str) -> Mapping[str, str]:
    """Return the content with a harder form of the heel raise that is done against an added load."""
    form = f"""\
  weighted:
    is: harder
    name: Heel raise with a load
    change: Hold a band under your foot.
    operated-leg:
      moves:
        - {{joint: ankle, movement: plantarflexion, how: resisted, against: gravity, to: 30 deg}}
      holds: []
      carries: shared
      lain-on: no
    other-leg: same
    demand: {demand}
activity:
"""
    return with_change(FILES, RAISE_FILE, "activity:\n", form)


LOAD_RULE = """\
  - kind: outside-load
    id: no-loads
    leg: operated
    loads: [band, weight]
    words: Do not use bands or weights.
    why: The leg must carry itself first.
    until: {week: 30, delayed-week: 34, release: your surgeon}
    source: {text: Invented for tests, status: invented}
phases:
"""


def test_every_pinned_address_is_written(english: Written) -> None:
    """The addresses are those of the house: printed codes and bookmarks must go on working."""
    assert set(english.facts) == {
        *("index.html", "warning-signs.html", "check.html", "glossary.html", "about.html"),
        *(PROGRAMME, PHASE_1, PHASE_2, CLINICIANS, PROTOCOL, ORDER, EVIDENCE, REPORTING),
        *(PATIENT_1, PATIENT_2),
        *("exercises/index.html", "exercises/ankle-pump.html", HEEL_RAISE),
        *("editors/codes.html", "editors/fields.html"),
    }


def test_every_page_is_one_block_for_markdown_with_one_main_heading(english: Written) -> None:
    """A blank line would end the block, and what follows would be read as Markdown."""
    for path in english.facts:
        body = english.source(path).split("---\n", 2)[2].strip("\n")
        assert body.startswith('<div class="pb-page">\n'), path
        assert body.endswith("\n</div>"), path
        assert "\n\n" not in body, path
        assert len(english.page(path).find_all("h1")) == 1, path


def test_every_link_leads_to_a_page_that_is_written(english: Written) -> None:
    """Links are relative, so the site can lie in any folder; a place in a page exists there."""
    for path in english.facts:
        for link in english.page(path).select("a[href]"):
            address = str(link["href"])
            if address.startswith(("tel:", "https://doi.org/")) or address.endswith(".pdf"):
                continue
            target, _, spot = address.partition("#")
            there = posixpath.normpath(posixpath.join(posixpath.dirname(path), target)) if target else path
            assert there in english.facts, (path, address)
            assert not spot or english.page(there).find(id=spot), (path, address)


def test_each_page_holds_what_its_fact_promises_to_the_audit(english: Written) -> None:
    """Texts and doses promised are there to be read."""
    for path, fact in english.facts.items():
        shown = gather(parse(english.source(path)), path).reachable
        for wanted in (*fact.required, *(fact.doses or ())):
            assert " ".join(wanted.replace("\u2066", "").replace("\u2069", "").split()) in shown, path


def test_home_asks_which_booklet_was_given_and_leads_to_each_phase(english: Written) -> None:
    """Home names what was done and every phase, says to stay, and has both numbers to call."""
    words = english.words("index.html")
    assert "Which booklet were you given? Until you are told, stay with the booklet you have." in words
    assert "The torn tendon above your heel was sewn together." in words
    links = {
        str(link["href"]).removesuffix("#session") for link in english.page("index.html").select("a[href]")
    }
    assert {PROGRAMME, PHASE_1, PHASE_2, "warning-signs.html", "tel:0555010200", "tel:112"} <= links
    assert {f"{PROGRAMME}#dates", "check.html"} <= links


def test_a_programme_says_what_is_restricted_until_when_on_both_tracks(english: Written) -> None:
    """A restriction ends only when week and phase are reached, or a person lifts it."""
    words = english.words(PROGRAMME)
    until = "Until week 6 ; if your start was delayed: until week 8 . And not before phase 2 has begun."
    assert f"{until} Do not pull your toes towards you." in words
    assert "until week 20 . Who lifts it: your surgeon Do not jump or run." in words
    assert "The wound was slow to heal." in words


def test_the_picture_of_the_phases_is_drawn_to_the_weeks(english: Written) -> None:
    """A bar begins where its phase begins and is as wide as it is long, in weeks; text stands outside."""
    tracks = english.page(PROGRAMME).select(".pb-track .pb-track__span")
    assert [(bar["x"], bar["width"]) for bar in tracks] == [
        *(("0", "6"), ("0", "8")),
        *(("6", "10"), ("8", "8")),
    ]
    assert english.page(PROGRAMME).select("svg text") == []
    assert english.words(PROGRAMME, ".pb-timeline__scale") == "0 4 8 12"


def test_a_phase_from_the_second_on_starts_only_when_told(english: Written) -> None:
    """The first phase follows the operation; every other one needs the physiotherapist's word first."""
    gate = "Start only when your physiotherapist has said so."
    assert gate in english.words(PHASE_2, ".pb-gate")
    assert gate not in english.words(PHASE_1)
    for page in (PHASE_1, PHASE_2):
        assert "Until you are told, stay with the booklet you have." in english.words(page, ".pb-gate")


def test_a_phase_shows_what_still_holds_and_nothing_that_has_ended(english: Written) -> None:
    """No stretching is over when phase 2 begins in week 6; no jumping lasts until the surgeon lifts it."""
    first, second = (english.words(page, "#restrictions") for page in (PHASE_1, PHASE_2))
    assert "Do not pull your toes towards you." in first
    assert "Do not jump or run." in first
    assert "Do not pull your toes towards you." not in second
    assert "Do not jump or run." in second


def test_a_restriction_that_ends_within_a_phase_says_when(tmp_path: Path) -> None:
    """What lasts for the whole phase says so; what ends within it gives both weeks."""
    files = with_change(
        FILES, PROGRAMME_FILE, "{week: 6, delayed-week: 8, phase: 2}", "{week: 9, delayed-week: 12, phase: 2}"
    )
    pages = written(files, tmp_path)
    assert pages.words(PHASE_1, "#restrictions").count("In this whole phase") == 1
    ends = "Until week 9 ; if your start was delayed: until week 12 . Do not pull your toes towards you."
    assert ends in pages.words(PHASE_2, "#restrictions")


def test_of_two_limits_of_weight_only_the_stricter_is_shown_while_it_holds(tmp_path: Path) -> None:
    """Side by side 'do not lean on it' and 'up to half your weight' would contradict each other."""
    rule = (
        "  - {{kind: weight-bearing, id: {id}, leg: operated, allows: {allows}, words: {words},\n"
        "     why: It heals., until: {{week: {week}, delayed-week: {delayed}, phase: 2}},\n"
        "     source: {{text: Invented for tests, status: invented}}}}\n"
    )
    strict = rule.format(id="touch", allows="touch", words="Only touch the floor.", week=6, delayed=8)
    loose = rule.format(id="half", allows="partial", words="At most half your weight.", week=9, delayed=12)
    pages = written(
        with_change(FILES, PROGRAMME_FILE, "\nphases:\n", f"\n{strict}{loose}phases:\n"), tmp_path
    )
    first, second = (pages.words(page, "#restrictions") for page in (PHASE_1, PHASE_2))
    assert ("Only touch the floor." in first, "At most half your weight." in first) == (True, False)
    assert ("Only touch the floor." in second, "At most half your weight." in second) == (False, True)


def test_a_session_shows_place_first_dose_and_how_often(english: Written) -> None:
    """The dose shown large is that of the first step; the later ones follow as a ladder."""
    card = english.words(PHASE_2, ".pb-do")
    assert card.startswith("1 Heel raise with both legs")
    assert "2 × 8 2 sets of 8 repetitions" in card.replace("\u00a0", " ")
    assert "Once a day, 3 days a week. Leave at least 1 day of rest in between." in card
    shown = english.page(PHASE_2).select("[data-pb-step]:not([hidden]) .pb-do__amount")
    assert [amount.get_text() for amount in shown] == ["2\u00a0×\u00a08"]
    ladder = [step.get_text().strip() for step in english.page(PHASE_2).select(".pb-ladder__step")]
    assert ladder[:3] == ["2\u00a0×\u00a08", "3\u00a0×\u00a08", "3\u00a0×\u00a010"]
    doses = english.facts[PHASE_2].doses or ()
    assert [plain(one) for one in doses] == ["2\u00a0×\u00a08", "3\u00a0×\u00a08", "3\u00a0×\u00a010"]


def test_exercises_are_learned_in_the_computed_order(tmp_path: Path) -> None:
    """Nobody types the order: the page shows whatever was worked out, here turned round."""
    use = (
        "      - {use: ankle-pump, dose-steps: [5 times an hour],\n"
        "         times-a-day: 1, days-a-week: 7, then: ends}\n"
    )
    files = with_change(FILES, PROGRAMME_FILE, "      - use: heel-raise\n", f"{use}      - use: heel-raise\n")
    one = site_inputs(files, ("en",))[0]
    order = one.orders["tendon-repair"]
    turned = tuple(
        replace(placed, place=3 - placed.place) if placed.phase == 2 else placed
        for placed in sorted(order.places, key=lambda placed: (placed.phase, -placed.place))
    )
    for name, places in (("as-computed", order.places), ("turned", turned)):
        changed = replace(one, orders={"tendon-repair": Order(order.programme, order.windows, places)})
        pages = Written(tmp_path / name, write_pages(changed, tmp_path / name))
        shown = [link.get_text() for link in pages.page(PHASE_2).select(".pb-learn a")]
        names = {"ankle-pump": "Ankle pump", "heel-raise": "Heel raise with both legs"}
        assert shown == [names[placed.exercise] for placed in places if placed.phase == 2]


def test_an_exercise_that_begins_later_says_when_on_both_tracks(tmp_path: Path) -> None:
    """Its card says so in words, and its own page says so first."""
    files = with_change(
        FILES,
        PROGRAMME_FILE,
        "- use: heel-raise\n",
        "- use: heel-raise\n        week: 9\n        delayed-week: 12\n",
    )
    pages = written(files, tmp_path)
    later = "Not before week 9 ; if your start was delayed: not before week 12 ."
    assert f"{later} Add it only when you are told." in pages.words(PHASE_2, ".pb-do__state")
    assert later in pages.words(HEEL_RAISE, ".pb-belongs")


def test_a_milestone_says_test_pass_mark_and_tester(english: Written) -> None:
    """Time alone moves nobody on."""
    words = english.words(PHASE_1, ".pb-milestones")
    assert words == (
        "The wound is closed. Test Look at the wound in good light. Passed when It is dry and closed. "
        "Who tests Your physiotherapist or surgeon"
    )


def test_the_pain_limit_is_shown_for_all_three_times(english: Written) -> None:
    """During, after and the next morning each have a limit; the drawn scale is read out as a sentence."""
    page = english.page(PHASE_2)
    assert "Up to 3 of 10 is all right" in english.words(PHASE_2, ".pb-pain__summary")
    assert "The next morning: at most 0 of 10 ." in english.words(PHASE_2, ".pb-pain")
    cells = page.select(".pb-pain__scale .pb-pain__cell")
    over = [cell.get_text() for cell in cells if "pb-pain__cell--over" in str(cell["class"])]
    assert over == ["4", "5", "6", "7", "8", "9", "10"]


def test_a_booklet_is_offered_only_where_there_is_one(english: Written) -> None:
    """With pages, size and edition, so that nobody loads a large file by surprise."""
    assert english.page(PHASE_1).select(".pb-download") == []
    link = english.page(PHASE_2).select(".pb-download a")[0]
    assert link["href"] == "../../booklets/tendon-repair-phase-2.pdf"
    assert (
        " ".join(link.get_text(" ").split())
        == "Booklet for this phase PDF, 9 pages, 413 kB, edition 7KQ2-M0XP"
    )


def test_a_sheet_for_one_patient_is_wholly_in_its_language(tmp_path: Path) -> None:
    """What decides about an exercise is worked out once for all languages; condition and notes are not."""
    said = {
        "use: ankle-pump\n": "note: Keep your knee straight.\n",
        "use: heel-raise\n": "note: Hold the worktop.\n        when: The scar is closed.\n",
    }
    files = dict(FILES)
    for use, more in said.items():
        files = with_change(files, PROGRAMME_FILE, use, f"{use}        {more}")
    words = written(files, tmp_path, "ar").words(PATIENT_2, "#one")
    for text in ("Keep your knee straight.", "Hold the worktop.", "The scar is closed."):
        assert pseudo(text) in words
        assert text not in words


def test_other_forms_of_a_booklet_stand_quietly_under_it(tmp_path: Path) -> None:
    """One large button is the booklet that most readers want; of the others name, pages and size are told."""
    one = site_inputs(FILES, ("en",))[0]
    large = (
        PaperKind.LARGE,
        BookletFact("booklets/tendon-repair-phase-2-large.pdf", 20, 551_000, "7KQ2-M0XP"),
    )
    made = Written(tmp_path, write_pages(replace(one, kinds={("tendon-repair", 2): (large,)}), tmp_path))
    page = made.page(PHASE_2)
    assert len(page.select(".pb-download")) == 1
    assert made.words(PHASE_2, ".pb-papers li") == "Large print PDF, 20 pages, 551 kB"
    assert page.select(".pb-papers a")[0]["href"] == "../../booklets/tendon-repair-phase-2-large.pdf"


def test_an_exercise_says_first_where_it_belongs_and_what_is_restricted_there(english: Written) -> None:
    """A page reached by search must not be followed in the wrong phase."""
    page = english.page(HEEL_RAISE)
    after = page.select(".pb-title ~ *")
    assert after[0]["class"] == ["pb-belongs"]
    words = english.words(HEEL_RAISE, ".pb-belongs")
    assert words.startswith("Belongs to Phase 2 : Load After a repair of the heel tendon (invented)")
    assert "Add it only when your physiotherapist has said so." in words
    assert "Do not jump or run." in words


def test_warnings_stand_at_the_hazard_before_the_steps(english: Written) -> None:
    """Hazard, consequence and what to do stand under their signal word (ANSI Z535.6), then the steps."""
    page = english.page(HEEL_RAISE)
    warning = page.select('.pb-sheet__main [data-pb-signal="warning"]')[0]
    assert " ".join(warning.get_text(" ").split()) == (
        "Warning A table that moves can make you fall Hold something that is fixed."
    )
    assert warning.find_next(class_="pb-steps") is not None
    assert warning.find_previous(class_="pb-steps") is None


def test_a_hold_is_said_as_long_as_the_dose_says(tmp_path: Path) -> None:
    """Steps and dose never disagree: where a phase holds longer, its steps stand apart under its name."""
    again = """\
      - use: heel-raise
        dose-steps: [2 x 8]
        times-a-day: 1
        days-a-week: 3
        rest-days: 1
        then: goes on
  - name: Load
"""
    files = with_change(FILES, PROGRAMME_FILE, "  - name: Load\n", again)
    one = site_inputs(files, ("en",))[0]
    key = ("tendon-repair", 2, "heel-raise")
    usual = one.in_use[key]
    longer = replace(usual, steps=(*usual.steps[:1], replace(usual.steps[1], words="Stay up for 5 seconds.")))
    apart = replace(one, in_use={**one.in_use, key: longer})
    same, different = (
        Written(tmp_path / name, write_pages(site, tmp_path / name))
        for name, site in (("same", one), ("apart", apart))
    )
    assert len(same.page(HEEL_RAISE).select(".pb-steps")) == 1
    assert same.page(HEEL_RAISE).select(".pb-apart") == []
    assert [h.get_text() for h in different.page(HEEL_RAISE).select(".pb-apart")] == [
        "In Phase 1",
        "In Phase 2",
    ]
    first, second = (
        " ".join(steps.get_text(" ").split()) for steps in different.page(HEEL_RAISE).select(".pb-steps")
    )
    assert ("3 seconds" in first, "5 seconds" in second) == (True, True)


def test_phases_carry_their_programme_where_two_programmes_share_an_exercise(
    english: Written, tmp_path: Path
) -> None:
    """Two phases 2 must not be taken for one another; of one programme the name is not repeated."""
    second = FILES[PROGRAMME_FILE].replace("name: After a repair of the heel tendon", "name: After a sprain")
    shared = written({**FILES, "programmes/sprain.yml": second}, tmp_path)
    labels = [label.get_text() for label in shared.page(HEEL_RAISE).select(".pb-dose__label")]
    assert labels == [
        "After a sprain (invented), Phase 2: start with",
        "After a repair of the heel tendon (invented), Phase 2: start with",
    ]
    assert english.words(HEEL_RAISE, ".pb-kicker").startswith("Phase 2 ")


def test_the_dose_shows_the_first_step_large_and_the_next_ones_small(english: Written) -> None:
    """One step at a time; a band is named where it comes in."""
    words = english.words(HEEL_RAISE, ".pb-dose").replace("\u00a0", " ")
    assert words.startswith("Start with 2 × 8 2 sets of 8 repetitions")
    assert "3 × 8 3 × 10 3 × 10 with a light band" in words
    assert "Go up when two sessions in a row were easy." in words


def test_the_stop_rule_names_the_limit_of_the_phase(english: Written) -> None:
    """Each phase has its own pain limit; the way to 'if it got worse' stands beside it."""
    words = english.words(HEEL_RAISE, ".pb-sheet__side")
    assert "Pain at the operated place goes above 3 of 10 ." in words
    assert english.page(HEEL_RAISE).select('.pb-sheet__side a[href="../warning-signs.html#worse"]')


@pytest.mark.parametrize(
    ("demand", "rule", "named"),
    [
        ("standing on two legs with support", "phases:\n", True),
        ("standing on two legs with support", LOAD_RULE, False),
        ("moving or stepping", "phases:\n", False),
    ],
)
def test_a_form_that_the_phase_forbids_is_not_named(
    tmp_path: Path, demand: str, rule: str, named: bool
) -> None:
    """A harder form is shown only where neither the phase's demand nor a restriction forbids it."""
    files = with_change(harder_form(demand), PROGRAMME_FILE, "\nphases:\n", f"\n{rule}")
    assert ("Heel raise with a load" in written(files, tmp_path).words(HEEL_RAISE)) is named


def test_a_withheld_form_is_not_named(tmp_path: Path) -> None:
    """What progression withholds, for instance above the band, stays away too."""
    one = site_inputs(FILES, ("en",))[0]
    held = replace(one, withheld={("tendon-repair", 2): frozenset({"heel-raise/seated"})})
    shown, hidden = (
        Written(tmp_path / name, write_pages(site, tmp_path / name)).words(HEEL_RAISE)
        for name, site in (("shown", one), ("hidden", held))
    )
    assert ("Heel raise sitting" in shown, "Heel raise sitting" in hidden) == (True, False)


def test_next_and_previous_follow_the_order_of_introduction(english: Written) -> None:
    """The first exercise has none before it, the last none after it."""
    first, last = english.page("exercises/ankle-pump.html"), english.page(HEEL_RAISE)
    assert [link["href"] for link in first.select(".pb-onward a")] == ["heel-raise.html"]
    assert [link["href"] for link in last.select(".pb-onward a")] == ["ankle-pump.html"]


def test_an_exercise_of_no_programme_says_that_it_is_nobodys(tmp_path: Path) -> None:
    """It stays readable, tells everybody not to do it unasked, and is listed apart."""
    spare = FILES["exercises/ankle-pump.yml"].replace("name: Ankle pump", "name: Toe spreading")
    pages = written({**FILES, "exercises/toe-spreading.yml": spare}, tmp_path)
    assert "belongs to no programme at present. Do not do it" in pages.words("exercises/toe-spreading.html")
    assert "In no programme at present Toe spreading" in pages.words("exercises/index.html")


def test_patients_read_no_percentages_and_no_latin(english: Written) -> None:
    """Muscle activity and Latin names stand on the clinicians' page only."""
    for path in (*PATIENTS, "warning-signs.html", "glossary.html"):
        words = english.words(path)
        for foreign in ("MVIC", "%", "Triceps", "plantarflexion"):
            assert foreign not in words, (path, foreign)


def test_warning_signs_come_the_most_urgent_first_with_whom_to_call(english: Written) -> None:
    """Emergency, clinic, today; then 'If it got worse' from the mildest on, then falls."""
    page = english.page("warning-signs.html")
    assert [part["id"] for part in page.select(".pb-signs")] == ["danger", "warning"]
    assert "Danger Call the emergency number now Emergency number 112" in english.words("warning-signs.html")
    assert "At other times 0555 010 300" in english.words("warning-signs.html", "#warning")
    assert [part.get_text() for part in page.select(".pb-worse__when")] == [
        "Today",
        "Within a day",
        "At once",
    ]
    assert "Call for help before you get up." in english.words("warning-signs.html", "#fall")


def test_clinicians_find_number_source_and_its_limits(english: Written) -> None:
    """Mean, SD, people, study, and what the numbers cannot say (EMG is no load on a tendon)."""
    words = english.words(ORDER) + english.words(PROTOCOL)
    row = english.words(EVIDENCE, "#evidence-heel-raise tbody")
    assert "Triceps surae 34.5 11.0 12 Nobody A, Noone B 2001 , Table 1" in row
    assert row.endswith("In the estimate")
    assert "They come from healthy people." in words
    assert "Low activity is not permission" in words
    assert "Operated leg: no passive, active assisted or active ankle dorsiflexion beyond 0°" in words
    assert "Ordered by activity: 34 %MVIC ." in words.replace("\u00a0", " ")
    assert "above 20 , up to and including 50" in words


def test_a_value_set_aside_or_recalled_says_so(tmp_path: Path) -> None:
    """A median does not enter the mean, and what nobody has read again is marked."""
    more = (
        "  - {muscle: calf, mean: 60, study: invented-2001, at-place: Figure 2, statistic: median,\n"
        "     load: body weight on both legs, read: []}\n"
    )
    files = with_change(FILES, RAISE_FILE, "activity:\n", f"activity:\n{more}")
    rows = written(files, tmp_path).page(EVIDENCE).select("#evidence-heel-raise tbody tr")
    words = " ".join(rows[0].get_text(" ").split())
    assert words.endswith("Set aside: a median, not a mean")
    assert rows[0].select_one('td[data-label="Recalled"]').get_text() == "Median"  # type: ignore[union-attr]


def test_editors_pages_stand_in_the_language_of_the_content_only(tmp_path: Path, english: Written) -> None:
    """Every code and every key is there, linked from 'about', and kept out of search and search engines."""
    codes = english.page("editors/codes.html")
    assert [part["id"] for part in codes.select("section[id]")] == [
        "site-engine-failed",
        "site-engine-warning",
        "site-page-link",
    ]
    assert "dose-steps" in english.words("editors/fields.html")
    for path in ("editors/codes.html", "editors/fields.html"):
        head = english.source(path).split("---\n")[1]
        assert ("noindex: true" in head, '"exclude": true' in head) == (True, True)
    other = written(FILES, tmp_path, "de")
    assert not [path for path in other.facts if path.startswith("editors/")]
    assert other.page("about.html").select('a[href^="editors/"]') == []


def test_what_is_not_translated_carries_its_language_and_is_said_first(
    tmp_path: Path, english: Written
) -> None:
    """A German page marks each English sentence for a screen reader and tells the reader above them."""
    german = written(FILES, tmp_path, "de")
    page = german.page(HEEL_RAISE)
    steps = page.select(".pb-steps li")
    assert [step.span["lang"] if step.span else "de" for step in steps] == ["en", "en", "de"]
    notice = page.select('[data-pb-signal="notice"]')[0]
    assert "not translated yet" in notice.get_text()
    assert notice.find_next(class_="pb-belongs") is not None
    assert "not translated yet" not in english.words(HEEL_RAISE)


def test_in_a_right_to_left_page_every_number_is_kept_in_order(tmp_path: Path) -> None:
    """Doses, weeks, ranges and telephone numbers come as bdi with dir ltr (HTML Standard)."""
    arabic = written(FILES, tmp_path, "ar")
    for path in arabic.facts:
        page = f'<html lang="ar" dir="rtl"><body>{arabic.page(path)}</body></html>'
        assert gather(parse(page), path).fragile == (), path
    dose = arabic.page(HEEL_RAISE).select(".pb-dose__amount bdi")[0]
    assert (dose["dir"], dose.get_text()) == ("ltr", "2\u00a0×\u00a08")


def test_no_word_escapes_the_translator(tmp_path: Path) -> None:
    """In the pretend language every word of a page has accents; names, roles and sources stay as typed."""
    arabic = written(FILES, tmp_path, "ar")
    for path in arabic.facts:
        page = arabic.page(path)
        for part in page.select("[lang], bdi, code, svg"):
            part.decompose()
        words = [word for text in page.stripped_strings for word in text.split() if word.isascii()]
        plain = {word for word in words if sum(char.isalpha() for char in word) > 2}
        roles = {"surgeon"} if path == REPORTING else set()
        assert plain <= {"MVIC", "PDF", *roles}, path
