"""A code on paper leads to a page that says whether the booklet is current, and what changed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import pytest

from generator.catalogue.editions import ChangeKind, KnownPaper, Standing
from generator.steps.editions import known_paper
from generator.website.pages import write_pages
from generator.wording.edition_words import change_words
from generator.wording.isolation import OPEN
from generator.wording.voice import voice
from tests.content import FILES, catalogue_of, with_change
from tests.review.paper import PROGRAMME, changed, code, edition, ledger
from tests.website.paper import CHANGED, CURRENT, FILE, GERMAN, GONE, NOW, PAPER, SAME
from tests.website.small_site import site_inputs
from tests.website.written import Written

CHECK = "check.html"
PATIENTS = with_change(FILES, "clinic.yml", "reach: intranet only", "reach: patients")


def page(folder: Path, files: dict[str, str] | None = None, paper: Sequence[KnownPaper] = PAPER) -> Written:
    """Return the English pages of a site of which this paper is out."""
    (site,) = site_inputs(files or FILES, ("en",))
    return Written(folder, write_pages(replace(site, paper=tuple(paper)), folder))


def section(written: Written, code_: str) -> str:
    """Return what is read in the part of the page that holds a code."""
    (found,) = written.page(CHECK).select(f'[id="{code_}"]')
    part = found.find_parent("section")
    assert part is not None
    return " ".join(part.get_text(" ").split())


def test_every_code_is_an_anchor_without_a_script(tmp_path: Path) -> None:
    """``check.html#CODE`` leads to its answer in a browser that runs no script, for every known code."""
    written = page(tmp_path)
    ids = [found["id"] for found in written.page(CHECK).select(".pb-told__codes > [id]")]
    assert sorted(ids) == sorted(one.code for one in PAPER)
    assert len(set(ids)) == len(ids)
    assert written.page(CHECK).select("#told [hidden], #unknown[hidden], #told[hidden]") == []
    assert written.facts[CHECK].required == tuple(one.code for one in PAPER)


def test_a_current_booklet_is_told_so(tmp_path: Path) -> None:
    """Booklets of all languages that are printed now stand together under the good news."""
    words = section(page(tmp_path), CURRENT)
    assert words.startswith("This booklet is current")
    assert GERMAN in words
    assert "Go on as it says" in words


def test_what_changed_is_told_safety_first(tmp_path: Path) -> None:
    """First what can hurt, then what to do with the telephone, then the rest; both its codes stand there."""
    words = section(page(tmp_path), CHANGED)
    told = [
        "There is a newer booklet. Something changed",
        "For your safety",
        "New rule: Do not jump or run.",
        "The dose is lower in part or in whole: Heel raise with both legs",
        "Call the clinic line before you exercise again",
        "0555 010 200",
        "What else changed",
        "How it is done is said in other words: Heel raise with both legs",
    ]
    places = [words.index(one) for one in told]
    assert places == sorted(places)
    assert code(16) in words
    assert "recorded on 20 November 2024" in words


def test_a_newer_booklet_with_the_same_to_do_alarms_nobody(tmp_path: Path) -> None:
    """Who holds a booklet that says the same may go on with it."""
    words = section(page(tmp_path), SAME)
    assert "What you do is the same" in words
    assert "For your safety" not in words
    assert "Call the clinic line before" not in words


def test_a_booklet_of_a_phase_that_is_gone_is_stopped(tmp_path: Path) -> None:
    """A booklet that is no longer in use says to stop, with the telephone."""
    words = section(page(tmp_path), GONE)
    assert "This booklet is no longer in use" in words
    assert "Stop the exercises in it." in words
    assert "0555 010 200" in words


def test_the_most_urgent_stands_first(tmp_path: Path) -> None:
    """On the list without a script nobody reads past a current booklet to find a dangerous one."""
    levels = [found["class"][1] for found in page(tmp_path).page(CHECK).select("#told > section")]
    assert levels == ["pb-told--now", "pb-told--now", "pb-told--same", "pb-told--current"]


def test_an_unknown_code_is_told_with_the_telephone(tmp_path: Path) -> None:
    """Who finds no code reads that the clinic must be called, and where."""
    (unknown,) = page(tmp_path).page(CHECK).select("#unknown")
    words = " ".join(unknown.get_text(" ").split())
    assert "Call the clinic line and read the code out before you go on." in words
    assert "0555 010 200" in words


def test_on_an_intranet_it_speaks_to_the_staff(tmp_path: Path) -> None:
    """A site that patients cannot reach is read by those who answer the telephone; else by the patient."""
    staff = page(tmp_path / "one").words(CHECK)
    patients = page(tmp_path / "two", PATIENTS).words(CHECK)
    assert "A patient reads the code out on the telephone." in staff
    assert "A patient reads the code out" not in patients
    assert "See whether your booklet is current" in patients


def test_nothing_recorded_and_nothing_printed_still_has_the_page(tmp_path: Path) -> None:
    """A first preview has no codes; the page is there and says whom to call."""
    assert "If a code is not here" in page(tmp_path, paper=()).words(CHECK)


def test_the_protocol_is_told_apart(tmp_path: Path) -> None:
    """A clinician with an old protocol is sent to the new one, and no patient advice stands there."""
    paper = known_paper(ledger(edition(None, CHANGED)), {(PROGRAMME, 2, "en"): NOW}, {})
    words = section(page(tmp_path, paper=paper), CHANGED)
    assert "Protocol for clinicians" in words
    assert "Use the protocol that the clinic publishes now." in words
    assert "exercise again" not in words


@pytest.mark.parametrize("kind", ChangeKind)
def test_each_kind_of_change_has_its_words(kind: ChangeKind) -> None:
    """No change reaches a patient as a code: each is a sentence with a capital and its names filled in."""
    (change,) = changed(FILE, "[2 x 8, 3 x 8, 3 x 10, 3 x 10 with light band]", "[2 x 8, 3 x 8, 3 x 10]")
    words = change_words(voice("en"), replace(change, kind=kind, form="seated"), catalogue_of(), PROGRAMME)
    assert words[0].isupper()
    assert "{" not in words


def test_a_name_that_is_gone_is_said_as_the_old_paper_did() -> None:
    """An exercise that left the catalogue is named as it was printed, its numbers kept in order."""
    (change,) = changed(FILE, "[2 x 8, 3 x 8, 3 x 10, 3 x 10 with light band]", "[2 x 8, 3 x 8, 3 x 10]")
    gone = replace(change, kind=ChangeKind.REMOVED, item="old-one", name="Raise 10 times")
    words = change_words(voice("en"), gone, catalogue_of(), PROGRAMME)
    assert words == f"Must no longer be done: Raise {OPEN}10\u2069 times"


def test_a_standing_is_never_only_a_colour(tmp_path: Path) -> None:
    """Each state has a heading of its own (WCAG 2.2, 1.4.1)."""
    stands = {one.code: one.standing for one in PAPER}
    written = page(tmp_path)
    headings = {stands[one]: section(written, one).split(" After a repair")[0] for one in stands}
    assert len(headings) == len(set(headings.values())) == len(Standing)
