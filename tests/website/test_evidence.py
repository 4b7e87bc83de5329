"""A clinician can defend each place: numbers with their doubt, judgements as words, reasons as sentences."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from bs4 import Tag

from generator.catalogue.arranged import Placed, Reason, ReasonKind
from generator.catalogue.estimates import Comparison, Hanging, VariationEffect
from generator.catalogue.moments import Contradiction, Moment, NoModel
from generator.catalogue.terms import Joint, Movement
from generator.website.pages import write_pages
from generator.website.reasons import reason_sentences
from generator.website.values import SiteInput
from generator.wording.isolation import plain
from tests.content import FILES, with_change
from tests.website.small_site import CLINICIANS, EVIDENCE, HEEL_RAISE, ORDER, REPORTING, site_inputs
from tests.website.written import Written, written

RAISE_FILE = "exercises/heel-raise.yml"
JUDGED = """\
judged:
  - as: no load
    muscles: [calf]
    role: physiotherapist (invented)
    reason: The calf only rests.
activity: []
"""


@pytest.fixture(scope="module")
def one() -> SiteInput:
    """Return what the English pages of the small content are made from."""
    return site_inputs(FILES, ("en",))[0]


def pages_of(site: SiteInput, folder: Path) -> Written:
    """Return the pages written from an input that a test has changed."""
    return Written(folder, write_pages(site, folder))


def order_row(pages: Written, number: int = -1) -> Tag:
    """Return a row of the order."""
    return pages.page(ORDER).select(".pb-table--order tbody tr")[number]


def said(part: Tag) -> str:
    """Return what is read in a part of a page."""
    return plain(" ".join(part.get_text(" ").split())).replace("\u00a0", " ")


def test_an_estimate_stands_with_its_interval_and_what_it_rests_on(tmp_path: Path) -> None:
    """34.5 ± 1.96 · 11/√12 is 28.3 to 40.7 (standard error of a mean; normal interval of one study)."""
    words = said(order_row(written(FILES, tmp_path)))
    assert "34 %MVIC 28 to 41" in words
    assert "Triceps surae. Measured. 1 study, 12 people." in words
    assert "Doubt between studies not known, the interval is too narrow" in words


def test_the_picture_shows_dot_whisker_and_band_and_holds_no_letter(tmp_path: Path) -> None:
    """All on a line from 0 to 100; what is measured is a full dot."""
    picture = order_row(written(FILES, tmp_path)).select(".pb-interval")[0]
    band = picture.select(".pb-interval__band")[0]
    assert (float(str(band["x"])), float(str(band["width"]))) == (20.0, 30.0)
    assert str(picture.select(".pb-interval__mean")[0]["d"]).startswith("M34.50 ")
    whisker = re.findall(r"[MH](\d+\.\d+)", str(picture.select(".pb-interval__range")[0]["d"]))
    assert whisker == ["28.28", "40.72", "28.28", "40.72"]
    assert picture.get_text(strip=True) == ""
    assert picture.select(".pb-interval__hole") == []


def test_a_judgement_is_words_and_a_hollow_dot_never_a_percentage(tmp_path: Path) -> None:
    """Its role and reason stand beside it."""
    files = {
        **FILES,
        RAISE_FILE: FILES[RAISE_FILE].split("activity:\n")[0] + JUDGED + "alternative: ankle-pump\n",
    }
    row = order_row(written(files, tmp_path))
    words = said(row)
    assert "%MVIC" not in words
    assert "Judged, not measured: no load on this muscle." in words
    assert "physiotherapist (invented): The calf only rests." in words
    assert len(row.select(".pb-interval--judged .pb-interval__hole")) == 1


def test_every_value_says_what_became_of_it(tmp_path: Path) -> None:
    """In the estimate, or set aside with each reason; a value of a segment is no value of the muscle."""
    more = (
        "  - {muscle: inner-calf, mean: 60, sd: 9, study: invented-2001, at-place: Figure 2,\n"
        "     load: body weight on both legs, read: []}\n"
    )
    files = with_change(FILES, RAISE_FILE, "activity:\n", f"activity:\n{more}")
    rows = written(files, tmp_path).page(EVIDENCE).select("#evidence-heel-raise tbody tr")
    ends = [said(row.select("td")[-1]) for row in rows]
    assert sorted(ends) == ["In the estimate", "Set aside: a part of the muscle, not the whole"]


def test_every_kind_of_reason_is_a_sentence(one: SiteInput) -> None:
    """No reason is left without words, and none without its numbers."""
    placed = one.orders["tendon-repair"].of_phase(2)[0]
    for kind in ReasonKind:
        reason = Reason(kind, "ankle-pump", 3.0, 4, "calf")
        (sentence,) = reason_sentences(one, replace(placed, reasons=(reason,)))
        assert sentence.endswith("."), kind
        assert "{" not in sentence, kind
        assert sentence[0].isupper() or not sentence[0].isalpha(), kind


def same_people(one: SiteInput, harder: tuple[str, ...], easier: tuple[str, ...]) -> str:
    """Return what is said where studies measured both in the same people."""
    placed: Placed = one.orders["tendon-repair"].of_phase(2)[0]
    both = (*harder, *easier)
    reason = Reason(ReasonKind.SAME_PEOPLE, "ankle-pump", float(len(harder)), len(both), "calf")
    found = Comparison("ankle-pump", "calf", both, harder, easier)
    return plain(reason_sentences(one, replace(placed, reasons=(reason,), comparison=found))[0])


def test_studies_of_both_in_the_same_people_are_counted(one: SiteInput) -> None:
    """Where they speak against the order, that is said and not hidden."""
    counted = "Of 3 studies of both in the same people, 2 found this harder than Ankle pump."
    assert same_people(one, ("a", "b"), ("c",)) == counted
    against = same_people(one, (), ("a",))
    assert against == (
        "Of 1 study of both in the same people, 0 found this harder than Ankle pump. "
        "That speaks against this order."
    )


def test_what_hangs_on_one_study_is_named(one: SiteInput, tmp_path: Path) -> None:
    """With what would be left without it."""
    hangs = (
        Hanging("invented-2001", "heel-raise", 2, None, 0.0),
        Hanging("invented-2001", "heel-raise", 2, 57.5, 7.5),
    )
    pages = pages_of(replace(one, hanging={"tendon-repair": hangs}), tmp_path)
    rows = [said(row) for row in pages.page(ORDER).select("#hanging tbody tr")]
    assert rows[0].endswith("not measured Not known")
    assert rows[1].endswith("58 %MVIC Above the band by 7.5 points")


def against_abduction(form: str, value: float | None, without: NoModel | None = None) -> Moment:
    """Return a moment as the model gives it."""
    return Moment(form, Joint.HIP, Movement.ABDUCTION, value, without)


def test_what_gravity_asks_is_shown_as_modelled(one: SiteInput, tmp_path: Path) -> None:
    """With person, source and reason; where it speaks against the order that is said, and nothing moves."""
    moments = (
        against_abduction("ankle-pump", 41.2),
        against_abduction("heel-raise", None, NoModel.RESTS),
    )
    against = (Contradiction(2, "ankle-pump", "heel-raise", 41.2, 15.0),)
    told = replace(
        one,
        moments={"tendon-repair": {moment.form: moment for moment in moments}},
        contradictions={"tendon-repair": against},
    )
    page = pages_of(told, tmp_path).page(ORDER)
    block = said(page.select("#gravity")[0])
    assert "Modelled, gravity only" in block
    assert "against hip abduction" in block
    assert "for a person of 170 cm and 70 kg" in block
    assert "a measured value always counts before it" in block
    assert "Winter DA" in block
    rows = [said(row) for row in page.select("#gravity tbody tr")]
    assert rows[0].endswith("41 N⋅m")
    assert rows[1].endswith("no model: the leg rests or carries weight in every pose")
    order = said(page.select("#order")[0])
    assert "The model speaks against this order: gravity asks 41 N⋅m in Ankle pump" in order
    assert "The order stays, for activity counts before a model." in order


@pytest.mark.parametrize(
    ("points", "words", "shown"),
    [
        (-12.0, "It works the muscle at the back of your lower leg less.", "12.0 points less"),
        (3.0, "It works the muscle at the back of your lower leg about as hard.", "3.0 points more"),
        (None, "", ""),
    ],
)
def test_patients_read_in_words_what_a_form_changes_and_clinicians_in_points(
    one: SiteInput, tmp_path: Path, points: float | None, words: str, shown: str
) -> None:
    """Patients read no percentages; where the two cannot be compared, nothing is said."""
    effect = VariationEffect("heel-raise/seated", "calf", None, points, ("invented-2001",))
    pages = pages_of(replace(one, effects={"heel-raise": (effect,)}), tmp_path)
    patient = pages.words(HEEL_RAISE, ".pb-pair")
    assert (words in patient) if words else ("It works" not in patient)
    clinical = plain(pages.words(EVIDENCE, "#forms"))
    assert (shown in clinical.replace(" points", " points")) if shown else clinical == ""


def test_both_checklists_are_filled_with_what_is_said_and_what_is_open(tmp_path: Path) -> None:
    """CERT has 16 items with 19 answers (Slade 2016), PEMAT-P 24 for print (Shoemaker 2013); no score."""
    pages = written(FILES, tmp_path)
    rows = {name: pages.page(REPORTING).select(f"#{name} tbody tr") for name in ("cert", "pemat")}
    assert {name: len(found) for name, found in rows.items()} == {"cert": 19, "pemat": 24}
    last = said(rows["cert"][-1])
    assert last.endswith("open This is known only where the programme is carried out. –")
    links = {str(link["href"]) for link in pages.page(REPORTING).select("tbody a")}
    assert {"tendon-repair.html", "../warning-signs.html"} <= links
    assert pages.page(CLINICIANS).select('a[href="tendon-repair-reporting.html"]')
