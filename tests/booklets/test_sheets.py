"""What a booklet says beside its exercises: a session, one step back, pictures, daily life, the helper."""

from __future__ import annotations

import base64
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from pdfua.validator import Validator

from generator.booklets.columns import halves
from generator.booklets.html import sections_html
from generator.booklets.layout import lay_out, squeezed
from generator.booklets.make import fitted, make_booklet
from generator.booklets.pictures import FINISH_MM, series
from generator.booklets.values import NO_FITS, BookletJob, Fit
from generator.catalogue.arranged import AnchorHeights, StepBack
from generator.catalogue.clinic import HelperPage
from generator.catalogue.daily_life import DailyLife
from generator.catalogue.dose import DoseKind, DoseStep
from generator.catalogue.exercise import HelperRole
from generator.catalogue.terms import Demand, Helper, Landmark, Posture, Support
from generator.wording.one_patient import PatientWords
from tests.booklets.builders import (
    abduction,
    bridge,
    catalogue,
    in_words,
    job,
    programme,
    safety,
    squeeze,
    t,
    use,
)
from tests.booklets.test_html import page, read, sheet

_SVG = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {across} {down}" width="{across}" height="{down}"/>'
)


def _drawn(across: float, down: float) -> str:
    return _SVG.format(across=across, down=down)


def _with_uses(*uses: Any) -> BookletJob:
    """Return the job of phase 2 with these uses."""
    base = programme()
    phases = tuple(replace(one, uses=uses) if one.number == 2 else one for one in base.phases)
    return job(catalogue=in_words(catalogue(programmes={base.id: replace(base, phases=phases)}), "en"))


def _life(**changes: Any) -> DailyLife:
    made = DailyLife(
        id="stairs",
        name=t("Stairs"),
        purpose=t("Gets you up and down."),
        demand=Demand.STEPPING,
        posture=Posture.STANDING,
        helper=Helper.NEARBY,
        helper_role=HelperRole(does=t("Stands one step below you."), must_not=t("Must not pull you.")),
        support=Support.BOTH_HANDS,
        operated_leg=bridge().operated_leg,
        other_leg=bridge().other_leg,
        steps=(t("Hold the banister."), t("Your other leg goes up first.")),
        avoid=(t("Do not hurry."),),
        cautions=abduction().cautions,
    )
    return replace(made, **changes)


def _at_home(**changes: Any) -> BookletJob:
    """Return the job of phase 2 with stairs in its daily life and advice for a helper."""
    base = programme()
    phases = tuple(replace(one, daily_life=("stairs",)) for one in base.phases)
    advice = HelperPage(does=(t("Ask before you touch the leg."),), must_not=(t("Never pull the leg."),))
    known = catalogue(
        programmes={base.id: replace(base, phases=phases)},
        daily_life={"stairs": _life()},
        safety=safety(helper=advice),
        **changes,
    )
    return job(catalogue=in_words(known, "en"))


def test_each_dose_step_says_the_step_back() -> None:
    """Beside every dose stands what to do instead after it got worse: the dose before, or the easier form."""
    rows = sheet(page(job()), "exercise-bridge-both-legs").select(".ladder tbody tr")
    assert [read(row) for row in rows] == [
        "1 2 × 8 The easier form: Half height",
        "2 3 × 8 2 × 8",
        "3 3 × 10 3 × 8",
        "4 3 × 12 3 × 10",
    ]


def test_where_nothing_easier_is_left_the_exercise_is_left_out() -> None:
    """A first dose without an easier form is left out, with all that builds on it, until it is calm again."""
    made = job()
    alone = StepBack("bridge-both-legs", 0, None, (), ("bridge-both-legs", "standing-hip-abduction"))
    changed = replace(made, back={**made.back, ("bridge-both-legs", 0): alone})
    part = read(sheet(page(changed), "exercise-bridge-both-legs"))
    assert "1 2 × 8 Leave it out, and ask your physiotherapist" in part
    assert "Until it is calm again, leave out: Lift your leg to the side, standing." in part


def test_an_exercise_may_make_way_for_another_of_the_same_phase() -> None:
    """Both sheets and the list say that one is stopped when the other begins, also within a phase."""
    steps = programme().phase(2).uses[1].dose_steps
    made = _with_uses(
        use("squeeze-buttocks", steps[0], replaced_by="bridge-both-legs"),
        use("bridge-both-legs", *steps, week=8),
        use("standing-hip-abduction", *steps, week=9),
    )
    soup = page(made)
    words = "When “Bridge with both legs” begins, stop this one."
    assert words in read(sheet(soup, "exercise-squeeze-buttocks"))
    assert words in read(sheet(soup, "phase"))
    assert words in read(sheet(soup, "session"))
    assert "Then leave out: Squeeze your buttocks." in read(sheet(soup, "exercise-bridge-both-legs"))
    assert "replaced by" not in read(sheet(soup, "exercise-squeeze-buttocks"))


def test_an_exercise_that_waits_for_a_goal_is_not_for_now() -> None:
    """Where no week but a milestone lets an exercise begin, it is added when told, and the goal is named."""
    steps = programme().phase(2).uses[1].dose_steps
    uses = programme().phase(2).uses
    made = _with_uses(uses[0], use("bridge-both-legs", *steps, when=t("You walk without a limp.")), uses[2])
    soup = page(made)
    assert "Only if: You walk without a limp." in read(sheet(soup, "exercise-bridge-both-legs"))
    later = read(sheet(soup, "phase")).partition("Add when you are told")[2]
    assert "Bridge with both legs" in later


def test_the_session_sheet_holds_order_place_dose_and_time() -> None:
    """Exercises stand in the order of a session, under where they are done, with dose and minutes."""
    part = sheet(page(job()), "session")
    assert [read(row) for row in part.select("th.station")] == ["On the bed", "Standing"]
    names = [read(row) for row in part.select("tbody th .state")]
    assert names == [
        "Squeeze your buttocks",
        "Bridge with both legs",
        "Lift your leg to the side, standing",
    ]
    assert [read(dose) for dose in part.select(".large")] == ["2 × 8", "2 × 8", "2 × 8"]
    assert "about 20 minutes" in read(part)
    assert "Later · Exercise 3" in read(part)


def test_both_orders_are_explained() -> None:
    """The order of introduction is explained on the phase sheet, that of a session on the session sheet."""
    soup = page(job())
    assert "numbered in this order" in read(sheet(soup, "phase"))
    assert "keeps changes of position few" in read(sheet(soup, "session"))


def test_daily_life_says_steps_what_not_to_do_and_the_warning() -> None:
    """Each item has its steps, what to avoid, whether a helper is near, and its warnings."""
    part = read(sheet(page(_at_home()), "life"))
    for words in ("Stairs", "Hold the banister.", "Do not hurry.", "Have your helper near at first."):
        assert words in part
    assert "Warning Letting go of the worktop" in part


def test_the_helper_has_a_sheet() -> None:
    """A helper reads what to do, what never to do, and where help is wanted in this phase."""
    part = read(sheet(page(_at_home()), "helper"))
    for words in (
        "Ask before you touch the leg.",
        "Never pull the leg.",
        "Stairs Stands one step below you.",
    ):
        assert words in part
    assert page(job()).select_one('[data-sheet="helper"]') is None


@pytest.mark.slow
def test_help_in_this_phase_begins_a_sheet_where_it_does_not_fit_below_the_advice() -> None:
    """Nothing spills over alone: what is wanted in this phase stands on the back as a whole."""
    made = _at_home()
    advice = made.catalogue.safety.helper
    assert advice is not None
    long = replace(advice, does=advice.does * 34)
    known = replace(made.catalogue, safety=replace(made.catalogue.safety, helper=long))
    fits, laid = fitted(replace(made, catalogue=known))
    there = laid.sections["helper"]
    assert (there.pages, fits["helper"].split) == (2, True)
    assert laid.texts[there.first].startswith(squeezed("Where you help in this phase"))
    assert fitted(made)[1].sections["helper"].pages == 1


@pytest.mark.slow
def test_whose_word_counts_is_printed_once_wherever_the_sheet_ends() -> None:
    """At the foot of a sheet both texts go on to the next one together; no word stands on another."""
    made = _at_home()
    said = made.catalogue.safety
    seen = set()
    for more in range(0, 60, 5):
        longer = replace(said, signs=(*said.signs, *said.signs[:1] * more))
        known = replace(made.catalogue, safety=longer)
        laid = lay_out(sections_html(replace(made, catalogue=known), NO_FITS, frozenset({"warnings"})))
        assert laid.overflows == ()
        words = squeezed(str(said.deferral_full))
        assert sum(text.count(words) for text in laid.texts) == 1
        (there,) = (number for number, text in enumerate(laid.texts) if words in text)
        assert squeezed(str(said.working_area)) in laid.texts[there]
        seen.add(there)
    assert len(seen) > 1


def test_a_tied_band_says_how_high() -> None:
    """The landmark comes first, centimetres after it; without a tied band no table is printed."""
    others = {one.id: one for one in (abduction(anchor=Landmark.KNEE), bridge(), squeeze())}
    tied = job(
        catalogue=in_words(catalogue(exercises=others), "en"),
        anchors=(AnchorHeights(160, {Landmark.KNEE: 45.6}), AnchorHeights(170, {Landmark.KNEE: 48.45})),
    )
    part = read(sheet(page(tied), "words"))
    assert "Lift your leg to the side, standing: At the height of your knee." in part
    assert "Your height in cm 160 170 At the height of your knee 46 48" in part
    assert "How high you tie the band" not in read(page(job()))


@pytest.mark.parametrize(("across", "down"), [(120, 230), (170, 190), (210, 124), (260, 107), (520, 100)])
@pytest.mark.parametrize("count", [1, 2, 3])
@pytest.mark.parametrize("tight", [False, True])
def test_the_finish_is_at_least_70_mm_wide(across: float, down: float, count: int, tight: bool) -> None:
    """The finish is seen with ease whatever its shape, and what comes before stays within its row."""
    stills = (_drawn(across, down),) * count
    made = series(job(stills={"bridge-both-legs": stills}), "bridge-both-legs", "A", t("B"), tight=tight)
    assert made is not None
    finish, earlier = made.finish(tight=tight), made.earlier(tight=tight)
    assert 70 <= finish.width <= 118
    assert len(earlier) == count - 1
    assert all(one.width <= finish.width for one in earlier)
    if made.side_by_side:
        assert max((one.width for one in earlier), default=0) + finish.width <= 118
    assert finish.width / made.last.shape <= FINISH_MM / 0.85 + 0.1


def test_pictures_have_words_and_a_width() -> None:
    """Start and finish stand on the sheet as images with words, each with a width of its own in the style."""
    changed = bridge(finish=t("Your hips are lifted."))
    others = {one.id: one for one in (abduction(), changed, squeeze())}
    stills = {"bridge-both-legs": (_drawn(213, 124), _drawn(213, 124))}
    soup = page(job(catalogue=in_words(catalogue(exercises=others), "en"), stills=stills))
    images = sheet(soup, "exercise-bridge-both-legs").select("img")
    assert [image["alt"] for image in images] == [str(bridge().start), "Your hips are lifted."]
    assert all(re.match(r"width: [\d.]+mm$", str(image["style"])) for image in images)
    assert str(images[0]["src"]).startswith("data:image/svg+xml;base64,")
    assert sheet(soup, "session").select_one("img") is not None
    assert "a ring marks the operated hip. Your side may be the other one." in read(sheet(soup, "phase"))
    assert "a ring marks" not in read(page(job()))


def test_a_tall_drawing_gets_room_at_both_sides() -> None:
    """One who stands is not blown up to the height of the sheet: the box is widened, the drawing centred."""
    made = series(job(stills={"x": (_drawn(100, 200),)}), "x", "A", None)
    assert made is not None
    svg = base64.b64decode(made.last.address.partition(",")[2]).decode()
    assert 'viewBox="-35 0 170 200" width="170"' in svg
    assert made.last.shape == pytest.approx(0.85)


def test_columns_are_parted_where_the_taller_is_lowest() -> None:
    """Items keep their order; the cut makes both columns about equally tall."""
    assert halves([5, 1, 1, 1, 2], float).first == (5,)
    assert halves([1, 1, 1, 5], float).first == (1, 1, 1)
    assert halves([3, 3], float, below=10).first == (3, 3)
    assert halves([3, 3], float, above=10).first == ()


@pytest.mark.slow
def test_pictures_daily_life_and_helper_print_without_a_finding(tmp_path: Path) -> None:
    """All kinds of sheets at once: no finding of ours or of pdfua 0.1.3, exercises on two sheets at most."""
    stills = {
        "squeeze-buttocks": (_drawn(260, 107),),
        "bridge-both-legs": (_drawn(260, 107), _drawn(260, 107)),
        "standing-hip-abduction": (_drawn(120, 230), _drawn(120, 230), _drawn(120, 230)),
        "stairs": (_drawn(180, 240),),
    }
    result = make_booklet(replace(_at_home(), output=tmp_path / "all.pdf", stills=stills))
    assert result.problems == ()
    report = Validator().validate(str(result.path))
    assert [outcome for outcome in report.outcomes if outcome.findings] == []
    pages = [fact.exercise for fact in result.sheets if fact.exercise]
    assert all(pages.count(exercise) <= 2 for exercise in pages)


def _held(count: int, hold: int) -> DoseStep:
    return DoseStep(DoseKind.HOLDS, 1, count, hold)


def test_what_is_held_stands_below_the_large_figures() -> None:
    """A comma at the head of that line would look as if a word before it were lost."""
    base = programme().phase(2).uses
    soup = page(_with_uses(use("squeeze-buttocks", _held(5, 5), _held(5, 10)), *base[1:]))
    first = next(cell for cell in sheet(soup, "session").select("td") if "5 seconds" in read(cell))
    assert read(first) == "1 × 5 (hold each for 5 seconds)"


def test_the_sheet_of_a_session_uses_its_room() -> None:
    """What is left of the sheet goes to the rows, and so to the pictures in them."""
    made = job()
    low, high = (sections_html(made, {"session": Fit(spare=spare)}) for spare in (0.0, 30.0))
    assert re.findall(r"--taller: ([\d.]+)mm", low[low.index('data-sheet="session"') :])[0] == "0.0"
    assert re.findall(r"--taller: ([\d.]+)mm", high[high.index('data-sheet="session"') :])[0] == "7"


def test_the_days_of_a_patient_leave_the_emergency_number_beside_the_diary() -> None:
    """Where a line more would push the last box to a sheet of its own, the sheet is set closer."""
    acts = tuple(t(f"Call the emergency number if this happens: {number}.") for number in range(14))
    worse = replace(safety().worse, emergency=acts)
    known = in_words(catalogue(safety=safety(worse=worse)), "en")
    days = " ".join(("If you are told to start on 16 November 2026, the second week begins later.",) * 2)
    patient = PatientWords("left", "", "", "", days, (), (), (), "", (), (), pictured=True)
    made = job(catalogue=known, patient=patient)
    assert lay_out(sections_html(made, NO_FITS, frozenset({"diary"}))).sections["diary"].pages == 2
    fits, laid = fitted(made)
    assert fits["diary"].tight
    assert laid.sections["diary"].pages == 1


def test_both_weeks_of_the_diary_stand_on_one_sheet_of_large_print() -> None:
    """Whoever sees little need not turn the sheet to compare two days."""
    laid = lay_out(sections_html(job(kind="large"), NO_FITS, frozenset({"diary"})))
    pages = range(1, laid.sections["diary"].pages + 1)
    assert laid.page_with("Week 1", pages) == laid.page_with("Week 2", pages) == 1


def test_the_last_phase_speaks_of_no_next_one() -> None:
    """Its milestones are the end of the programme."""
    assert "before the next phase" in read(sheet(page(job(phase=1)), "milestones"))
    last = len(programme().phases)
    assert "What must work at the end" in read(sheet(page(job(phase=last)), "milestones"))
