"""The finished booklet: sound, the same every time, readable, full sheets, right in Arabic and on Letter."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from bs4 import BeautifulSoup
from pdfua.validator import Validator
from weasyprint.formatting_structure import boxes

from generator.booklets import rules
from generator.booklets.exercise_sheet import sheet_key
from generator.booklets.html import render_html, sections_html
from generator.booklets.layout import Laid, lay_out, squeezed
from generator.booklets.make import fitted, make_booklet
from generator.booklets.print_run import make_all
from generator.booklets.reading_back import read_back
from generator.booklets.values import NO_FITS, BookletJob, BookletResult, Fit, Fits
from generator.catalogue.terms import Paper
from generator.wording.voice import voice
from tests.booklets.builders import bridge, catalogue, clinic, in_words, job, safety, t

pytestmark = pytest.mark.slow

ARABIC = "ارفع ساقك ببطء ولا تضغط على مكان العملية"


class _Arabic(dict[str, str]):
    """Says every sentence in the same Arabic words."""

    def __missing__(self, _: str) -> str:
        return ARABIC


def test_a_sound_booklet_has_no_finding(made: BookletResult) -> None:
    """Silence is asserted: the small catalogue prints without a complaint of ours or of the library."""
    assert made.problems == ()
    assert made.path.read_bytes().startswith(b"%PDF-1.7")


def test_every_page_is_accounted_for(made: BookletResult) -> None:
    """The facts for the audit name each page once, in order, and each exercise."""
    assert [fact.page for fact in made.sheets] == list(range(1, made.pages + 1))
    assert {fact.exercise for fact in made.sheets if fact.exercise} == {
        "squeeze-buttocks",
        "bridge-both-legs",
        "standing-hip-abduction",
    }


def test_the_facts_hold_every_dose(made: BookletResult) -> None:
    """Doses are listed as printed, for the page on which they stand."""
    doses = {words for fact in made.sheets if fact.exercise == "bridge-both-legs" for words in fact.required}
    assert {"\u20662\u00a0×\u00a08\u2069", "\u20663\u00a0×\u00a012\u2069"} <= doses


def test_two_runs_give_the_same_bytes(made: BookletResult, tmp_path: Path) -> None:
    """What was handed out can be made again byte for byte: no clock in the file, no order of chance."""
    again = make_booklet(job(tmp_path / "phase-2.pdf"))
    assert again.path.read_bytes() == made.path.read_bytes()


def test_the_file_passes_what_pdfua_checks(made: BookletResult) -> None:
    """Checked with pdfua 0.1.3, which covers a part of the Matterhorn Protocol (ISO 14289-1)."""
    report = Validator().validate(str(made.path))
    assert [outcome for outcome in report.outcomes if outcome.findings] == []


def test_no_line_is_too_long(laid: Laid) -> None:
    """Running text is set at about 70 letters a line (RNIB clear print): none beyond 76, few beyond 70."""
    lines = [line for page in laid.document.pages for line in _lines(page._page_box)]
    assert len(lines) > 100
    assert [line for line in lines if len(line) > 76] == []
    assert sum(len(line) > 70 for line in lines) <= len(lines) // 50


def _lines(box: Any) -> list[str]:
    """Return the text of every line; a block set inside a line has lines of its own."""
    if isinstance(box, boxes.LineBox):
        parts = list(_in_line(box))
        inner = [line for part in parts if not isinstance(part, boxes.TextBox) for line in _lines(part)]
        return ["".join(part.text for part in parts if isinstance(part, boxes.TextBox)), *inner]
    return [line for child in getattr(box, "children", ()) for line in _lines(getattr(child, "_box", child))]


def _in_line(box: Any) -> Iterator[Any]:
    for child in box.children:
        if isinstance(child, boxes.InlineBox):
            yield from _in_line(child)
        else:
            yield getattr(child, "_box", child)


def test_all_text_has_the_highest_contrast(laid: Laid) -> None:
    """Each colour of text on the ground behind it reaches AAA: 7, or 4.5 for large text (WCAG 2.2, 1.4.6)."""
    pairs = {pair for page in laid.document.pages for pair in _pairs(page._page_box, (1.0, 1.0, 1.0))}
    assert len(pairs) > 5
    assert [pair for pair in sorted(pairs) if contrast(pair[0], pair[1]) < (4.5 if pair[2] else 7)] == []


Colour = tuple[float, float, float]


def _pairs(box: Any, ground: Colour) -> set[tuple[Colour, Colour, bool]]:
    if isinstance(box, boxes.TextBox):
        points = round(box.style["font_size"] * 0.75, 3)
        large = points >= 18 or (points >= 14 and box.style["font_weight"] >= 700)
        return {(_rgb(box.style["color"]), ground, large)} if box.text.strip() else set()
    own = box.style["background_color"]
    if own is not None and own != "currentcolor" and own.alpha == 1:
        ground = _rgb(own)
    found: set[tuple[Colour, Colour, bool]] = set()
    for child in getattr(box, "children", ()):
        found |= _pairs(getattr(child, "_box", child), ground)
    return found


def _rgb(colour: Any) -> Colour:
    red, green, blue = colour.coordinates
    return (round(red, 4), round(green, 4), round(blue, 4))


def contrast(one: Colour, other: Colour) -> float:
    """Return the contrast ratio of WCAG 2.2 (definition of relative luminance), never rounded."""
    darker, lighter = sorted((_luminance(one), _luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(colour: Colour) -> float:
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in colour]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    # Published by W3C for black on white; #767676 is W3C's grey that just passes AA.
    [((0.0, 0.0, 0.0), (1.0, 1.0, 1.0), 21.0), ((0x76 / 255,) * 3, (1.0, 1.0, 1.0), 4.5422)],
)
def test_the_formula_of_contrast(one: Colour, other: Colour, expected: float) -> None:
    """The formula itself gives the published values."""
    assert contrast(one, other) == pytest.approx(expected, abs=5e-5)


def test_sheets_of_exercises_are_filled(laid: Laid) -> None:
    """No sheet of an exercise ends with an empty quarter: lines for notes take what is left."""
    quarter = 297 / 4
    spare = {key: one.spare for key, one in laid.sections.items() if key.startswith("exercise")}
    assert len(spare) == 3
    assert {key: left for key, left in spare.items() if left > quarter} == {}


def test_a_long_exercise_continues_on_a_second_sheet(tmp_path: Path) -> None:
    """What does not fit one sheet is parted with a heading that says so, never cut, never below 12 pt."""
    steps = tuple(t(f"Step {number}: lift your hips a little and lower them again.") for number in range(9))
    long = bridge(steps=steps)
    others = dict(catalogue().exercises)
    result = make_booklet(
        job(
            tmp_path / "long.pdf",
            catalogue=in_words(catalogue(exercises={**others, long.id: long}), "en"),
        )
    )
    pages = [fact.page for fact in result.sheets if fact.exercise == long.id]
    text = [page.text for page in read_back(result.path.read_bytes()).pages]
    assert result.problems == ()
    assert long.id in result.two_sheets
    assert len(pages) == 2
    assert "continues on the next page" in text[pages[0] - 1]
    assert "Bridge with both legs, continued" in text[pages[1] - 1]


def test_a_front_with_more_words_than_usual_stands_closer_and_keeps_its_sheets(tmp_path: Path) -> None:
    """A cover that a longer language would push on to a second sheet stays on one, still at 12 pt or more."""
    longer = " ".join(("Stay with the booklet you were given until you are told to move on.",) * 6)
    start_only = t(" ".join(("Start this phase only when your physiotherapist has told you to.",) * 3))
    wordy = catalogue(safety=safety(stay=t(longer), start_only=start_only))
    with_words = job(tmp_path / "close.pdf", catalogue=in_words(wordy, "en"))
    loose = lay_out(sections_html(with_words, NO_FITS, frozenset({"cover"})))
    assert loose.sections["cover"].pages == 2
    fits, laid = fitted(with_words)
    assert fits["cover"].tight
    assert laid.sections["cover"].pages == 1
    assert make_booklet(with_words).problems == ()


def _cautioned(output: Path, sentences: int) -> BookletJob:
    """Return a job whose exercise warns in many sentences, beside pictures that are low."""
    steps = tuple(t(f"Step {number}: lift your hips a little and lower them again.") for number in range(4))
    told = t("It pulls on the tendon that was sewn. " * sentences)
    caution = replace(bridge().cautions[0], consequence=told)
    others = dict(catalogue().exercises)
    changed = catalogue(exercises={**others, "bridge-both-legs": bridge(steps=steps, cautions=(caution,))})
    low = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 520 100" width="520" height="100"/>'
    return job(output, catalogue=in_words(changed, "en"), stills={"bridge-both-legs": (low, low)})


def test_columns_begin_where_there_is_room_before_an_exercise_takes_a_third_sheet(tmp_path: Path) -> None:
    """What fits no leaf side by side begins right under picture and dose, and nothing is printed over."""
    tall = _cautioned(tmp_path / "uneven.pdf", 14)
    fits, laid = fitted(tall)
    key = sheet_key("bridge-both-legs")
    assert fits[key].uneven
    assert laid.sections[key].pages == 2
    assert make_booklet(tall).problems == ()


def test_a_warning_stands_on_the_sheet_with_the_picture(tmp_path: Path) -> None:
    """A box that would be carried to the second sheet, above its heading, begins higher up instead."""
    made, key = _cautioned(tmp_path / "carried.pdf", 10), sheet_key("bridge-both-legs")
    beside = lay_out(sections_html(made, {key: Fit(split=True, tight=True)}, frozenset({key})))
    assert beside.sections[key].carried
    fits, laid = fitted(made)
    assert fits[key].uneven
    assert not laid.sections[key].carried


def test_an_exercise_that_needs_three_sheets_is_named(tmp_path: Path) -> None:
    """A text that is longer than two sheets is still printed whole, and the editor is told."""
    steps = tuple(t(f"Step {number}: lift your hips a little and lower them again.") for number in range(40))
    others = dict(catalogue().exercises)
    changed = catalogue(exercises={**others, "bridge-both-legs": bridge(steps=steps)})
    result = make_booklet(job(tmp_path / "longer.pdf", catalogue=in_words(changed, "en")))
    assert [problem.code for problem in result.problems] == [rules.LONG_EXERCISE.code]


def test_a_word_too_long_for_its_column_is_an_error(tmp_path: Path) -> None:
    """A sheet with an overflow is reported, whatever the PDF looks like."""
    word = "Hüftabduktorensehnenrekonstruktionsnachbehandlung" * 2
    others = dict(catalogue().exercises)
    changed = catalogue(exercises={**others, "bridge-both-legs": bridge(start=t(word))})
    result = make_booklet(job(tmp_path / "wide.pdf", catalogue=in_words(changed, "en")))
    assert rules.OVERFLOW.code in {problem.code for problem in result.problems}


def test_a_font_of_the_machine_is_an_error(tmp_path: Path) -> None:
    """A sign that our fonts lack is reported, also where this machine happens to have it."""
    others = dict(catalogue().exercises)
    changed = catalogue(exercises={**others, "bridge-both-legs": bridge(start=t("Lie down ☐"))})
    result = make_booklet(job(tmp_path / "sign.pdf", catalogue=in_words(changed, "en")))
    codes = {problem.code for problem in result.problems}
    assert codes & {rules.STRANGE_FONT.code, rules.MISSING_SIGN.code, rules.COMPLAINT.code}


def test_on_letter_paper_nothing_is_lost(tmp_path: Path) -> None:
    """Letter is 18 mm shorter than A4: sheets part sooner, everything is still there."""
    letter = catalogue(clinic=clinic(paper=Paper.LETTER))
    result = make_booklet(job(tmp_path / "letter.pdf", catalogue=in_words(letter, "en")))
    assert result.problems == ()


def test_in_arabic_doses_keep_their_order(tmp_path: Path) -> None:
    """A right-to-left sheet shows 3 × 10 from left to right as 3 × 10, in characters sorted by place."""
    arabic = in_words(catalogue(), "ar", _Arabic())
    result = make_booklet(job(tmp_path / "ar.pdf", catalogue=arabic, voice=voice("ar")))
    read = read_back(result.path.read_bytes())
    page = next(fact.page for fact in reversed(result.sheets) if fact.exercise == "bridge-both-legs")
    seen = read.pages[page - 1].lines
    assert any("3×10" in line for line in seen)
    assert not any("10×3" in line for line in seen)
    assert read.language == "ar"
    assert {font.name for font in read.fonts} <= {
        "Tajawal",
        "Tajawal-Bold",
        "Phasebook-Digits",
        "Phasebook-Digits-Bold",
        "Atkinson-Hyperlegible",
        "Atkinson-Hyperlegible-Bold",
    }


def test_all_languages_can_keep_the_same_sheets(tmp_path: Path) -> None:
    """An exercise that takes two sheets in one language takes two in the other, on request."""
    result = make_booklet(job(tmp_path / "two.pdf", two_sheets=frozenset({"squeeze-buttocks"})))
    assert "squeeze-buttocks" in result.two_sheets
    assert len([fact for fact in result.sheets if fact.exercise == "squeeze-buttocks"]) == 2


def test_many_booklets_are_made_in_the_order_of_their_jobs(tmp_path: Path) -> None:
    """Several processes give the results that one would, in the order in which they were asked for."""
    jobs = [job(tmp_path / f"{phase}.pdf", phase=phase) for phase in (2, 1)]
    results = make_all(jobs, workers=2)
    assert [result.path for result in results] == [one.output for one in jobs]
    assert [result.problems for result in results] == [(), ()]


def test_no_word_is_lost_between_the_sheets(fits_and_laid: tuple[Fits, Laid]) -> None:
    """Sheets laid out apart and put together, less those with nothing but lines, bear every word."""
    fits, laid = fits_and_laid
    printed = squeezed("".join(laid.texts))
    body = BeautifulSoup(render_html(job(), fits), "html.parser").select("body")[0]
    words = {squeezed(text) for text in body.find_all(string=True)}
    assert len(words) > 100
    assert {text for text in words if text not in printed} == set()


def test_the_lines_to_write_on_do_not_push_anything_off(laid: Laid) -> None:
    """Filling a sheet never starts another: sections take as many pages as before."""
    _, again = fitted(replace(job(), two_sheets=frozenset()))
    assert {key: one.pages for key, one in laid.sections.items()} == {
        key: one.pages for key, one in again.sections.items()
    }
    assert max(one.pages for one in laid.sections.values()) <= 2


def test_a_number_is_found_where_it_stands_whole() -> None:
    """The dose 50 beside the step 1 is not taken for the dose 150 on the next sheet."""
    table = "<table><tr><td>1</td><td>50</td></tr></table>"
    laid = lay_out(f"<style></style>{table}<p style='break-before: page'>150</p>")
    assert laid.pages == 2
    assert laid.page_with("\u2066150\u2069", range(1, 3)) == 2
    assert laid.page_with("50", range(1, 3)) == 1
