"""Pages say what surrounds an exercise: the session, the rest of the day, the helper, the step back.

The clinical rules are those of the trade, common practice with no source, unless a source stands beside.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content import FILES, with_change
from tests.website.small_site import (
    CLINICIANS,
    HELPER,
    PHASE_1,
    PHASE_2,
    PROGRAMME,
    PROTOCOL,
    STAIRS,
    real_life,
)
from tests.website.written import Written, written

LIVED = real_life(FILES)


@pytest.fixture(scope="module")
def lived(tmp_path_factory: pytest.TempPathFactory) -> Written:
    """Write the pages of a content with daily life, a helper, a band and a replacement."""
    return written(LIVED, tmp_path_factory.mktemp("lived"))


def test_a_card_says_what_is_added_when_told_and_what_stops_then(lived: Written) -> None:
    """An exercise that enters later is marked, and the one it replaces says when to stop."""
    cards = {str(card["data-pb-do"]): card for card in lived.page(PHASE_2).select(".pb-do")}
    stop = "When “Heel raise with both legs” begins, stop this one."
    assert stop in cards["ankle-pump"].get_text()
    assert not cards["ankle-pump"].has_attr("data-pb-state")
    assert "stop this one" not in cards["heel-raise"].get_text()
    assert cards["heel-raise"]["data-pb-state"] == "later"
    assert "Add it only when you are told." in cards["heel-raise"].get_text()


def test_a_phase_names_what_is_no_longer_done(tmp_path: Path) -> None:
    """What ended with the phase before is named, so that nobody goes on with it."""
    pages = written(FILES, tmp_path)
    assert pages.words(PHASE_2, ".pb-gone") == "No longer in this phase Ankle pump has ended."
    assert pages.page(PHASE_1).select(".pb-gone") == []


def test_both_orders_are_shown_and_explained(lived: Written) -> None:
    """What is learned first need not come first in a session; time and rest days stand beside."""
    words = lived.words(PHASE_2, "#day")
    assert "You learn the exercises in another order, from easy to hard." in words
    assert "Standing 1 Heel raise with both legs" in lived.words(PHASE_2, "#session")
    assert "A session takes about 10 minutes." in lived.words(PHASE_2, "#session")
    assert "Leave at least 1 day of rest in between: Heel raise with both legs." in words


def test_what_is_done_in_passing_has_no_place_in_a_session(lived: Written) -> None:
    """A few times each hour is no session."""
    words = lived.words(PHASE_1, "#day")
    assert "Beside the sessions, all through the day: Ankle pump." in words
    stations = [head.get_text() for head in lived.page(PHASE_1).select(".pb-station h3")]
    assert stations == ["All through the day"]
    assert lived.page(PHASE_1).select(".pb-do__place") == []


def test_one_step_back_is_said_for_each_dose_step(lived: Written) -> None:
    """From the highest step down; the first step goes back to the easier form."""
    row = lived.words(PHASE_2, "#worse tbody").replace("\u00a0", " ")
    back = (
        "After 3 × 10 with a light band: do 3 × 10 . After 3 × 10 : do 3 × 8 . After 3 × 8 : do 2 × 8 . "
        "After 2 × 8 : do the easier form. Heel raise sitting Nothing"
    )
    assert back in row
    assert "Stop for today." in lived.words(PHASE_2, "#worse")


def test_too_hard_today_says_what_the_easier_form_changes(lived: Written) -> None:
    """Its name alone would send somebody in pain to another page."""
    words = lived.words(PHASE_2, '[data-pb-do="heel-raise"] .pb-hard')
    assert "The easier form: Heel raise sitting. Sit on a chair and raise both heels." in words


def test_where_nothing_easier_is_left_it_is_left_out(lived: Written) -> None:
    """And with it what must not be done before it goes well."""
    row = lived.words(PHASE_2, "#worse tbody")
    assert "Ankle pump After 5 times every hour while you are awake: leave it out for now." in row
    assert "None Heel raise with both legs" in row


def test_a_band_is_tied_by_a_place_on_the_body_and_the_table_is_folded(lived: Written) -> None:
    """Landmarks first; knee height 0.285 of stature (Drillis & Contini 1966, in Winter 2009, figure 4.1)."""
    words = lived.words(PHASE_2, ".pb-sheet__side").replace("\u00a0", " ")
    assert "Heel raise with both legs : at the height of your knee" in words
    rows = lived.page(PHASE_2).select("details .pb-table--heights tbody tr")
    assert len(rows) == len(range(145, 201, 5))
    knee = round(200 * 0.285)
    assert rows[-1].get_text(" ").replace("\u00a0", " ").split() == ["200", "cm", str(knee), "cm"]
    assert lived.page(PHASE_1).select(".pb-table--heights") == []


def test_things_say_for_which_exercise_they_are(lived: Written) -> None:
    """And what to look at before use."""
    words = lived.words(PHASE_2, ".pb-things")
    assert words == (
        "A worktop or a heavy table It must not move when you lean on it. For: Heel raise with both legs"
    )


def test_a_page_of_daily_life_says_first_to_which_phase_it_belongs(lived: Written) -> None:
    """A page reached by search must not be followed in the wrong phase."""
    page = lived.page(STAIRS)
    assert page.select(".pb-title ~ *")[0]["class"] == ["pb-belongs"]
    words = lived.words(STAIRS, ".pb-belongs")
    assert words.startswith("Belongs to Phase 2 : Load After a repair of the heel tendon (invented)")
    assert "Do it only when your physiotherapist has opened this phase for you." in words
    assert "Do not jump or run." in words


def test_on_a_page_of_daily_life_the_hazard_stands_before_the_steps(lived: Written) -> None:
    """Hazard, consequence and what to do under their signal word (ANSI Z535.6), then the steps."""
    words = lived.words(STAIRS, ".pb-sheet__main")
    assert words == (
        "Warning A missed step can make you fall Hold on. How to do it Hold the banister. "
        "Step up with your other leg. What to avoid Do not hurry."
    )
    assert (
        lived.words(STAIRS, ".pb-sheet__side .pb-feel") == "Stands one step below you. Must not pull you up."
    )


def test_daily_life_of_no_programme_says_that_it_is_nobodys(tmp_path: Path) -> None:
    """It stays readable, and nobody is told to do it."""
    spare = {**LIVED, "daily-life/garden.yml": LIVED["daily-life/stairs.yml"].replace("Stairs one", "Garden")}
    assert "belongs to no programme at present" in written(spare, tmp_path).words("daily-life/garden.html")


def test_phase_and_programme_lead_to_daily_life(lived: Written) -> None:
    """A phase shows its own, a programme all of them with their phases."""
    assert lived.words(PROGRAMME, "#daily-life li").startswith("Stairs one at a time Phase 2")
    assert [link["href"] for link in lived.page(PHASE_2).select("#daily-life li a")] == [
        "../../daily-life/stairs.html"
    ]
    assert lived.page(PHASE_1).select("#daily-life") == []


def test_the_helper_reads_first_what_never_to_do_then_where_help_is_wanted(lived: Written) -> None:
    """With what to do in each, and what to do when the person falls."""
    words = lived.words(HELPER)
    assert words.index("Never pull the leg.") < words.index("Keep crutches near.")
    assert "Stairs one at a time Phase 2 Somebody nearby. Stands one step below you. Must not" in words
    assert "Call for help before you get up." in lived.words(HELPER, "#fall")
    for path in ("index.html", PROGRAMME, PHASE_2):
        assert lived.page(path).select('a[href$="helper.html"]'), path


def test_without_anything_to_say_there_is_no_page_for_the_helper(tmp_path: Path) -> None:
    """And no page leads to one."""
    pages = written(FILES, tmp_path)
    assert HELPER not in pages.facts
    assert not [path for path in pages.facts if pages.page(path).select('a[href$="helper.html"]')]


def test_patients_see_phase_by_phase_which_rule_holds(lived: Written) -> None:
    """On both tracks; a rule that a person lifts holds until then, whatever the week."""
    rows = lived.page(PROGRAMME).select("#allowed tbody tr")
    words = [" ".join(row.get_text(" ").split()) for row in rows]
    assert words == [
        "Do not pull your toes towards you. Holds No longer holds",
        "Do not jump or run. Who lifts it: your surgeon Holds Holds",
    ]


def test_a_rule_that_ends_within_a_phase_says_in_which_week_on_both_tracks(tmp_path: Path) -> None:
    """The week is said where it can end, and the delayed one beside it."""
    files = with_change(
        FILES,
        "programmes/tendon-repair.yml",
        "until: {week: 6, delayed-week: 8, phase: 2}",
        "until: {week: 9, delayed-week: 12, phase: 2}",
    )
    row = written(files, tmp_path).page(PROGRAMME).select("#allowed tbody tr")[0]
    assert " ".join(row.get_text(" ").split()).endswith(
        "Holds Holds until week 9 ; if your start was delayed: holds until week 12"
    )


def test_clinicians_see_weeks_by_restrictions_on_both_tracks(lived: Written) -> None:
    """Columns are computed: each begins where a phase begins or something can end."""
    usual, delayed = lived.page(CLINICIANS).select(".pb-table--weeks")
    heads = [[" ".join(h.get_text(" ").split()) for h in t.select("thead th")[1:]] for t in (usual, delayed)]
    assert heads == [["0 to 6", "6 to 16", "from 16"], ["0 to 8", "8 to 20", "from 20"]]
    rows = [[cell.get_text(strip=True) for cell in row.select("td")] for row in usual.select("tbody tr")]
    assert rows == [["holds", "ended", "ended"], ["holds", "holds", "until released"]]


def test_clinicians_read_the_protocol_phase_by_phase(lived: Written) -> None:
    """Weight, aid, brace, pain limit, and each milestone with test, pass mark and tester."""
    words = lived.words(PROTOCOL, "#protocol")
    for told in (
        "Put no weight on your operated leg.",
        "Walk with two crutches.",
        "Wear the boot day and night.",
        "The wound is closed. Look at the wound in good light. It is dry and closed.",
    ):
        assert told in words
