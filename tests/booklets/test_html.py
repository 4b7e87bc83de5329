"""What a booklet says, read from its HTML; what it looks like is tested on the PDF."""

from __future__ import annotations

import re
from dataclasses import replace
from html import unescape
from itertools import pairwise
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag

from generator.booklets.exercise_sheet import training_days
from generator.booklets.html import TEMPLATES, render_html
from generator.booklets.values import BookletJob
from generator.catalogue.dose import DoseKind, DoseStep
from generator.catalogue.exercise import Caution, Exercise
from generator.catalogue.terms import Harm, Signal
from tests.booklets.builders import (
    abduction,
    bridge,
    catalogue,
    clinic,
    in_words,
    job,
    programme,
    reps,
    safety,
    squeeze,
    t,
    use,
)


def page(made: BookletJob) -> BeautifulSoup:
    """Return a booklet as a parsed page."""
    return BeautifulSoup(render_html(made), "html.parser")


def sheet(soup: BeautifulSoup, key: str) -> Tag:
    """Return one section."""
    found = soup.select_one(f'[data-sheet="{key}"]')
    assert found is not None
    return found


def read(tag: Tag) -> str:
    """Return the words of a part, blanks made one."""
    return " ".join(tag.get_text(" ").replace("\u00a0", " ").split())


def with_exercise(exercise: Exercise) -> BookletJob:
    """Return the job with one exercise exchanged."""
    others = {one.id: one for one in (abduction(), bridge(), squeeze())}
    return job(catalogue=in_words(catalogue(exercises={**others, exercise.id: exercise}), "en"))


@pytest.mark.parametrize("path", sorted(TEMPLATES.glob("*.html")), ids=lambda path: path.name)
def test_no_template_says_a_word_that_is_no_message(path: Path) -> None:
    """Every word of a template is a message, so that a translator gets it: no letter stands outside."""
    text = path.read_text(encoding="utf-8")
    without = re.sub(r"\{[{%#].*?[}%#]\}", "", text, flags=re.DOTALL)
    spoken = re.sub(r"<style>.*?</style>|<[^>]*>", "", without, flags=re.DOTALL)
    attributes = re.findall(r'(?:alt|title|aria-label)="([^"]*)"', without)
    assert not [char for char in unescape(spoken) + "".join(attributes) if char.isalpha()]


def test_no_expression_says_a_word_that_is_no_message() -> None:
    """A text in quotes inside an expression is a message or a key, never words: keys hold no blank."""
    expressions = re.findall(r"\{\{.*?\}\}", "".join(p.read_text() for p in TEMPLATES.glob("*.html")))
    bare = [re.sub(r'_\("[^"]*"', "", expression) for expression in expressions]
    assert not [found for text in bare for found in re.findall(r'"([^"]* [^"]+)"', text)]


@pytest.mark.parametrize(
    ("phase", "expected"),
    [(1, False), (2, True)],
)
def test_from_phase_2_on_the_cover_says_start_only_when_told(phase: int, expected: bool) -> None:
    """Every booklet from phase 2 on opens with the rule that a physiotherapist must have said so."""
    cover = read(sheet(page(job(phase=phase)), "cover"))
    assert (str(safety().start_only) in cover) is expected
    assert str(safety().stay) in cover


def test_the_cover_leaves_room_for_what_counts_for_this_patient() -> None:
    """The cover has fields for name, operation, side, physiotherapist, telephone, and a box to write in."""
    cover = sheet(page(job()), "cover")
    for field in (
        "Your name:",
        "Date of operation:",
        "Operated side:",
        "Your physiotherapist:",
        "Telephone:",
    ):
        assert field in read(cover)
    assert "Your surgeon's and physiotherapist's instructions for you" in read(cover)
    assert len(cover.select(".line")) >= 2


def test_a_warning_stands_before_the_steps_with_its_signal_word() -> None:
    """Hazard, consequence and remedy stand under a signal word, before the step (EN/IEC 82079-1)."""
    words = read(sheet(page(job()), "exercise-standing-hip-abduction"))
    warning = "Warning Letting go of the worktop can make you fall and tear the repair."
    assert words.index(warning) < words.index("Keep your fingertips") < words.index("How to do it")


@pytest.mark.parametrize("signal", list(Signal))
def test_a_signal_word_has_its_look_and_a_notice_no_alert_sign(signal: Signal) -> None:
    """A notice never concerns injury, so no alert triangle stands beside it (ANSI Z535.6)."""
    harm = Harm.NO_INJURY if signal is Signal.NOTICE else Harm.MINOR
    caution = Caution(signal=signal, harm=harm, hazard=t("A"), consequence=t("B"), avoid=t("C"))
    soup = page(with_exercise(bridge(cautions=(caution,))))
    box = sheet(soup, "exercise-bridge-both-legs").select_one(f".hazard.{signal.value}")
    assert box is not None
    assert read(box) == f"{signal.value.capitalize()} A B C"
    style = (TEMPLATES / "booklet.css").read_text(encoding="utf-8")
    assert ".hazard.notice .sign" in style
    assert re.search(r"\.hazard\.notice \.sign[^{]*\{ background: none;", style)


def test_the_dose_is_said_large_in_words_and_in_steps() -> None:
    """The first dose stands large and in words, all dose steps as boxes to tick, with the rule to go up."""
    part = sheet(page(job()), "exercise-bridge-both-legs")
    big, ladder = part.select_one(".big"), part.select(".ladder tbody th")
    assert big is not None
    assert read(big) == "2 × 8"
    assert "2 sets of 8 repetitions" in read(part)
    assert [read(step) for step in ladder] == ["2 × 8", "3 × 8", "3 × 10", "3 × 12"]
    assert len(part.select(".ladder .box")) == len(ladder)
    assert "Take the next step when you did all sets two sessions running" in read(part)


def test_the_stop_rule_says_the_pain_limit_of_the_phase() -> None:
    """The limit on the sheet is the phase's own, not a number of the template."""
    base = programme()
    phases = tuple(replace(one, pain=replace(one.pain, during=4)) for one in base.phases)
    changed = catalogue(programmes={base.id: replace(base, phases=phases)})
    part = sheet(page(job(catalogue=in_words(changed, "en"))), "exercise-bridge-both-legs")
    assert "Stop if pain at the operated place goes above 4 of 10." in read(part)


def test_about_as_hard_is_said_only_within_a_level() -> None:
    """The eyebrow compares an exercise with the one before it where activity orders both."""
    soup = page(job())
    third = sheet(soup, "exercise-standing-hip-abduction")
    assert read(third).startswith("Exercise 3 of 3 · about as hard as exercise 2")
    assert read(sheet(soup, "exercise-bridge-both-legs")).startswith("Exercise 2 of 3 Bridge")


def test_an_exercise_for_later_says_add_when_you_are_told() -> None:
    """An exercise that enters later than its phase says so on its sheet and in the list of all exercises."""
    soup = page(job())
    words = "Add only when you are told: not before week 8 (delayed start: week 11)"
    assert words in read(sheet(soup, "exercise-standing-hip-abduction"))
    listed = read(sheet(soup, "phase"))
    assert listed.index("Now") < listed.index("Add when you are told") < listed.index("Not before week 8")


def test_a_harder_form_that_the_phase_forbids_is_not_printed() -> None:
    """A variation that the phase withholds, for whatever reason, must not reach the patient."""
    withheld = frozenset({"bridge-both-legs/arms-crossed"})
    soup = page(job(withheld=withheld))
    assert "Arms crossed" not in read(sheet(soup, "exercise-bridge-both-legs"))
    assert "Arms crossed" in read(sheet(page(job()), "exercise-bridge-both-legs"))


@pytest.mark.parametrize(
    ("days", "rest", "expected"),
    [
        (7, 0, (True,) * 7),
        (3, 1, (True, False, True, False, True, False, False)),
        (2, 2, (True, False, False, True, False, False, False)),
        (6, 1, (True, False, True, False, True, False, False)),
    ],
)
def test_rest_days_lie_between_training_days(days: int, rest: int, expected: tuple[bool, ...]) -> None:
    """The grid spreads the days evenly; where days and rest contradict each other, rest wins."""
    assert training_days(days, rest) == expected


@pytest.mark.parametrize("days", range(1, 8))
@pytest.mark.parametrize("rest", range(7))
def test_the_turn_of_the_week_keeps_the_rest_days(days: int, rest: int) -> None:
    """Over two weeks in a row no two training days are closer than the rest days ask."""
    fortnight = [day for day, trains in enumerate(training_days(days, rest) * 2) if trains]
    assert all(later - day > rest for day, later in pairwise(fortnight))


def test_every_training_day_has_a_box_for_each_time() -> None:
    """Three times a day give three boxes a day; a day of rest says so and has none."""
    soup = page(job())
    assert [
        len(cell.select(".box")) for cell in sheet(soup, "exercise-squeeze-buttocks").select(".ticks td")
    ] == [3] * 14
    rest = sheet(soup, "exercise-standing-hip-abduction").select(".ticks td.rest")
    assert len(rest) == 8
    assert all(read(cell) == "rest" and not cell.select(".box") for cell in rest)


def test_restrictions_that_have_ended_are_not_printed() -> None:
    """The sheet of a phase lists what holds on its first day, on either track, and nothing else."""
    second = read(sheet(page(job()), "phase"))
    last = read(sheet(page(job(phase=4)), "phase"))
    assert "Do not lie on your operated side." in second
    assert "Do not lie on your operated side." not in last


def test_the_diary_and_what_to_do_when_worse_stand_together() -> None:
    """Beside the diary stand the three levels, each with its number to call (trade rule on pain)."""
    part = read(sheet(page(job()), "diary"))
    assert "If it got worse" in part
    assert "Call 01632 960 100" in part
    assert "Call 112" in part
    assert len(sheet(page(job()), "diary").select("tbody tr")) == 14


def test_headings_never_jump_a_level() -> None:
    """One first-level heading; below it no level is left out (WCAG 2.2, technique H42)."""
    levels = [int(tag.name[1]) for tag in page(job()).find_all(re.compile("^h[1-6]$"))]
    assert levels.count(1) == 1
    assert all(now <= before + 1 for before, now in pairwise(levels))


def test_the_demonstration_line_stands_only_in_the_demonstration() -> None:
    """A real clinic's sheets do not say that they are a demonstration."""
    real = job(catalogue=in_words(catalogue(clinic=clinic(demo=False)), "en"))
    assert str(safety().demonstration) in render_html(job())
    assert str(safety().demonstration) not in render_html(real)


def test_only_the_words_that_occur_are_explained() -> None:
    """The glossary of a booklet explains its own words, not all words of the clinic."""
    part = read(sheet(page(job()), "words"))
    assert "tendon:" in part
    assert "plaster cast" not in part


def test_sources_say_what_was_invented() -> None:
    """A rule that was made up for the demonstration says so beside it."""
    part = read(sheet(page(job()), "words"))
    assert "Example Clinic, working rule (invented for the demonstration)" in part
    assert "Ekstrom RA, Donatelli RA, Carp KC 2007." in part


def test_what_an_editor_types_is_never_markup() -> None:
    """Whatever an editor types is text, never markup."""
    changed = with_exercise(bridge(start=t("Knees < 90° & <b>heels</b>")))
    assert "Knees &lt; 90° &amp; &lt;b&gt;heels&lt;/b&gt;" in render_html(changed)


def test_minutes_and_hourly_doses_have_no_sets() -> None:
    """A walk of ten minutes is printed as 10 minutes, not as sets."""
    base = programme()
    walk = use("squeeze-buttocks", DoseStep(DoseKind.MINUTES, 1, 10), times_a_day=2)
    phases = (replace(base.phases[0], uses=(walk,)), *base.phases[1:])
    changed = catalogue(programmes={base.id: replace(base, phases=phases)})
    part = sheet(page(job(catalogue=in_words(changed, "en"), phase=1)), "exercise-squeeze-buttocks")
    big = part.select_one(".big")
    assert big is not None
    assert read(big) == "10"
    assert "10 minutes" in read(part)
    assert [read(step) for step in part.select(".ladder tbody th")] == ["10 minutes"]


def test_the_use_of_a_variation_says_which_form() -> None:
    """Where a phase uses an easier form of an exercise, the sheet says how that form differs."""
    base = programme()
    uses = (use("bridge-both-legs", reps(2, 8), variation="half-height"),)
    phases = (replace(base.phases[0], uses=(replace(uses[0]),)), *base.phases[1:])
    changed = catalogue(programmes={base.id: replace(base, phases=phases)})
    order = replace(job().order, places=(replace(job().order.places[2], phase=1, place=1),))
    part = read(
        sheet(page(job(catalogue=in_words(changed, "en"), phase=1, order=order)), "exercise-bridge-both-legs")
    )
    assert "Half height: Lift half as high." in part
    assert part.count("Half height:") == 1


def test_dose_steps_that_differ_in_their_hold_say_so() -> None:
    """Three steps of 1 × 5 that are held longer each time must not look alike on the sheet."""
    base = programme()
    steps = tuple(DoseStep(DoseKind.HOLDS, 1, 5, hold=hold) for hold in (5, 10))
    phases = (replace(base.phases[0], uses=(use("squeeze-buttocks", *steps),)), *base.phases[1:])
    changed = catalogue(programmes={base.id: replace(base, phases=phases)})
    part = sheet(page(job(catalogue=in_words(changed, "en"), phase=1)), "exercise-squeeze-buttocks")
    said = [read(step) for step in part.select(".ladder tbody th")]
    assert said == ["1 × 5 (hold each for 5 seconds)", "1 × 5 (hold each for 10 seconds)"]
