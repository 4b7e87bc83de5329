"""What a protocol says, read from its HTML; what it looks like is tested on the PDF."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import pairwise

import pytest
from bs4 import BeautifulSoup, Tag

from generator.booklets.protocol import protocol_html
from generator.booklets.protocol_chart import ChartRow, Segment, chart_of
from generator.booklets.protocol_values import ProtocolJob
from generator.booklets.protocol_view import protocol_view
from generator.catalogue.programme import Programme
from generator.catalogue.restricted import Track, holds
from generator.wording.isolation import plain
from tests.booklets.protocols import DEMO, demo, job_of, small_job
from tests.content import FILES, with_change

PROGRAMME = "programmes/tendon-repair.yml"
HEEL_RAISE = "exercises/heel-raise.yml"
WIDTH_MM = 180.0


def page(job: ProtocolJob) -> BeautifulSoup:
    """Return a protocol as a parsed page."""
    return BeautifulSoup(protocol_html(job), "html.parser")


def section(job: ProtocolJob, key: str) -> Tag:
    """Return one section."""
    found = page(job).select_one(f'[data-sheet="{key}"]')
    assert found is not None
    return found


def read(tag: Tag) -> str:
    """Return the words of a part, blanks made one."""
    return " ".join(tag.get_text(" ").replace("\u00a0", " ").split())


def rows(job: ProtocolJob, key: str) -> list[list[str]]:
    """Return the words of the cells of a section's table, row by row."""
    return [[read(cell) for cell in row.select("th, td")] for row in section(job, key).select("tbody tr")]


def kind_in(row: ChartRow, week: int) -> str:
    """Return the kind of bar that the line of a week meets."""
    at = 0
    for segment in row.segments:
        at += segment.weeks
        if week < at:
            return segment.kind
    raise AssertionError(f"week {week} is not drawn")


def phase_in(programme: Programme, week: int, track: Track) -> int:
    """Return the number of the phase that the weeks of a track give."""
    starts = [one.week if track is Track.USUAL else one.delayed_week for one in programme.phases]
    return sum(start <= week for start in starts)


@pytest.mark.parametrize("name", DEMO)
def test_the_line_of_each_week_meets_a_bar_exactly_where_a_restriction_holds(name: str) -> None:
    """For every week and restriction the chart agrees with the one rule that judges restrictions."""
    job = job_of(demo(), name)
    chart, programme = chart_of(job, WIDTH_MM), demo().programmes[name]
    assert len(chart.rows) == len(programme.restrictions)
    for row in chart.rows:
        rule = next(one for one in programme.restrictions if one.id == row.rule.id)
        for week in range(chart.weeks):
            kind = kind_in(row, week)
            usual = holds(rule, phase_in(programme, week, Track.USUAL), week, Track.USUAL)
            delayed = holds(rule, phase_in(programme, week, Track.DELAYED), week, Track.DELAYED)
            assert (kind in ("forbidden", "limited"), kind != "free") == (usual, delayed), (rule.id, week)


@pytest.mark.parametrize("name", DEMO)
def test_restrictions_stand_in_the_order_in_which_they_end(name: str) -> None:
    """Weight comes first; then no bar is shorter than the one above it, so that the ends make stairs."""
    drawn = chart_of(job_of(demo(), name), WIDTH_MM).rows
    assert [row.weight for row in drawn] == sorted((row.weight for row in drawn), reverse=True)
    for one, other in pairwise(row for row in drawn if not row.weight):
        assert one.segments[0].weeks <= other.segments[0].weeks


@pytest.mark.parametrize("name", DEMO)
def test_every_row_of_the_chart_has_as_many_weeks(name: str) -> None:
    """Phases, weeks and bars span the same columns; a reader of tables is never led to a wrong week."""
    table = section(job_of(demo(), name), "allowed").select_one("table")
    assert table is not None
    widths = {
        sum(int(str(cell.get("colspan", "1"))) for cell in row.select("th, td")) for row in table.select("tr")
    }
    assert widths == {len(table.select("col"))}


def test_every_bar_says_in_words_or_by_a_number_what_it_means() -> None:
    """No bar means something by its colour alone (WCAG 2.2, 1.4.1): it holds words, or the week it ends."""
    bars = section(job_of(demo(), "hip-abductor-repair"), "allowed").select(".bar div")
    assert {str(bar["class"][0]) for bar in bars} == {"forbidden", "limited", "later", "free"}
    assert [bar for bar in bars if bar["class"] != ["free"] and not read(bar)] == []


def test_a_release_is_a_bar_without_an_end_that_names_who_gives_it() -> None:
    """What a person must lift is not lifted by a week, so its bar goes to the edge and says so."""
    (row,) = (one for one in chart_of(small_job(), WIDTH_MM).rows if one.rule.id == "no-jumping")
    assert [segment.kind for segment in row.segments] == ["forbidden"]
    words = "not allowed until this has happened, and not before week 16 (delayed: 20): your surgeon"
    assert plain(row.segments[0].words) == words


def test_a_limit_stands_in_its_bar() -> None:
    """A movement that is allowed up to an angle is hatched and says the angle and the week it ends."""
    (row,) = (one for one in chart_of(small_job(), WIDTH_MM).rows if one.rule.id == "no-stretch")
    first, later, free = row.segments
    assert (first.kind, plain(first.words), plain(first.end)) == ("limited", "only up to 0°", "6")
    assert (later.kind, later.weeks, plain(later.end)) == ("later", 2, "8")
    assert (free.kind, free.words) == ("free", "lifted")


def test_lifted_is_never_said_where_another_row_still_holds() -> None:
    """Weight or a movement under two restrictions is not called free when only the first has ended."""
    drawn = {row.rule.id: row for row in chart_of(job_of(demo(), "hip-abductor-repair"), WIDTH_MM).rows}
    numbers = {name: plain(row.number) for name, row in drawn.items()}
    after = {name: plain(row.segments[-1].words) for name, row in drawn.items()}
    gravity, load = numbers["no-lift-against-gravity"], numbers["no-abduction-against-load"]
    assert after["touch-weight"] == f"then see {numbers['half-weight']}"
    assert after["no-active-abduction"] == f"then see {gravity} and {load}"
    assert after["no-lift-against-gravity"] == f"then see {load}"
    assert after["half-weight"] == after["no-pressing-out"] == after["no-turning-out-stretch"] == "lifted"


def test_a_bar_too_short_for_words_leaves_its_limit_beside_the_name() -> None:
    """However short a restriction is, its limit is not lost."""
    files = with_change(
        FILES, PROGRAMME, "until: {week: 6, delayed-week: 8, phase: 2}", "until: {week: 1, delayed-week: 1}"
    )
    (row,) = (one for one in chart_of(small_job(files), WIDTH_MM).rows if one.rule.id == "no-stretch")
    assert plain(row.what).endswith("; only up to 0°")
    assert row.segments[0] == Segment("limited", 1, "", row.segments[0].end)


def test_tracks_that_agree_are_drawn_once() -> None:
    """A programme whose delayed start is the usual one has one row of phases."""
    files = with_change(
        FILES, PROGRAMME, "    week: 6\n    delayed-week: 8\n", "    week: 6\n    delayed-week: 6\n"
    )
    usual, demands = chart_of(small_job(files), WIDTH_MM).lanes
    assert (usual.name, demands.name) == ("Usual start", "Highest demand (usual start)")
    assert [lane.name for lane in chart_of(small_job(), WIDTH_MM).lanes][:2] == [
        "Usual start",
        "Delayed start",
    ]


def test_each_phase_says_weight_aid_brace_and_pain_with_who_set_it() -> None:
    """The table of phases holds what a surgeon asks first; where no brace is stated it says so."""
    told = {row[0]: row[1:] for row in rows(small_job(), "phases")}
    assert told["Weeks"] == [
        "The first 6 weeks; delayed: the first 8 weeks",
        "From week 6; delayed: from week 8",
    ]
    assert told["Weight-bearing"][0] == "Put no weight on your operated leg."
    assert told["Walking aid"][1] == "Give up one crutch when you walk without a limp."
    assert told["Brace"] == ["Wear the boot day and night.", "not stated"]
    assert told["Pain limit, operated site"] == [
        "During 2 of 10, after 2 of 10, next morning 0 of 10. Set by: surgeon.",
        "During 3 of 10, after 3 of 10, next morning 0 of 10. Set by: physiotherapist.",
    ]


def test_neighbours_that_say_the_same_share_a_cell() -> None:
    """What holds in two phases running is read once, over both."""
    cells = protocol_view(small_job(), WIDTH_MM).facts[-1].cells
    assert [(cell.words, cell.span) for cell in cells] == [("Go up when two sessions in a row were easy.", 2)]


def test_a_milestone_has_its_test_pass_mark_and_tester() -> None:
    """Time alone moves nobody on: goal, test, pass mark and who tests stand together, phase by phase."""
    last = rows(small_job(), "phases")[-1]
    assert last[1:] == [
        "The wound is closed. Test: Look at the wound in good light."
        " Passed when: It is dry and closed. Tested by: clinician only",
        "You can stand on your toes. Test: Stand on your toes at the worktop."
        " Passed when: Ten times without pain. Tested by: patient at home",
    ]


def test_reasons_for_a_delay_are_listed() -> None:
    """A delay has a listed reason."""
    assert "Delayed start, when: The wound was slow to heal." in read(section(small_job(), "allowed"))


@pytest.mark.parametrize("name", DEMO)
def test_exercises_stand_in_the_computed_order(name: str) -> None:
    """The protocol shows the order of introduction, phase by phase, and no exercise twice in one."""
    job = job_of(demo(), name)
    for phase, group in enumerate(protocol_view(job, WIDTH_MM).exercises, 1):
        wanted = [demo().exercises[placed.exercise].name.source for placed in job.order.of_phase(phase)]
        assert [plain(str(row.name)) for row in group.rows] == wanted


def test_an_exercise_says_role_demand_dose_and_estimate() -> None:
    """One row holds all that defends a choice; a load stands before the first step that has it."""
    row = rows(small_job(), "exercises")[-1]
    assert row[:8] == [
        "1",
        "Heel raise with both legs",
        "Strengthening",
        "two legs, supported",
        "6 (8)",
        "2 × 8 3 × 8 3 × 10 with a light band: 3 × 10",
        "3",
        "1 / 3 / 1",
    ]
    # 34.5 ± 1.96 × 11 / √12 is 28.3 to 40.7: one study of 12 people with a standard deviation of 11.
    assert row[8:] == ["34 (28–41)", "1 / 12", "measured; within"]


def test_an_exercise_without_a_value_is_not_measured_and_never_0() -> None:
    """A muscle that nobody measured is not at rest."""
    row = rows(small_job(), "exercises")[1]
    assert row[1] == "Ankle pump"
    assert row[5:] == ["5 10 times an hour", "", "1 / 7 / 0", "not measured"]


def test_a_judgement_is_never_a_percentage() -> None:
    """What a person judged stands in words; a number would look measured."""
    job = job_of(demo(), DEMO[0])
    judged = {
        demo().exercises[placed.exercise].name.source
        for placed in job.order.places
        if placed.estimate and placed.estimate.judgement
    }
    shown = [row for row in rows(job, "exercises") if len(row) > 1 and row[1] in judged]
    assert {row[1] for row in shown} >= {"Thigh squeeze", "Gentle buttock squeeze"}
    assert [row[-1] for row in shown if not row[-1].startswith("judged")] == []
    assert {len(row) for row in shown} == {9}


def test_an_interval_never_goes_below_nothing() -> None:
    """A lower limit that was computed below 0 is printed as 0; a muscle cannot work less than not at all."""
    job = small_job()
    places = tuple(
        replace(placed, estimate=replace(placed.estimate, low=-12.0, high=80.4))
        if placed.estimate
        else placed
        for placed in job.order.places
    )
    changed = replace(job, order=replace(job.order, places=places))
    assert rows(changed, "exercises")[-1][8] == "34 (0–80)"


def test_what_the_numbers_cannot_say_stands_before_them() -> None:
    """Healthy people, not tendon load, no permission: said on the sheet of the numbers itself."""
    words = read(section(small_job(), "exercises"))
    for said in (
        "They come from healthy people.",
        "A weak repaired muscle works harder at the same task.",
        "Muscle activity (EMG) is not the load on the tendon.",
        "Low activity is not permission",
        "All estimates: Triceps surae.",
    ):
        assert words.index(said) < words.index("Heel raise with both legs")


def test_muscles_that_nobody_measured_are_named() -> None:
    """A programme's muscle without a measurement in any of its exercises is said to have none."""
    files = with_change(FILES, PROGRAMME, "muscles: [calf]", "muscles: [calf, inner-calf]")
    words = "Measured in none of these exercises: Medial head of gastrocnemius."
    assert words in read(section(small_job(files), "exercises"))


@pytest.mark.parametrize(
    ("status", "said"),
    [
        ("read in source", "[read]"),
        ("recalled", "[recalled]"),
        ("common practice", "[common practice]"),
        ("invented", "[invented]"),
    ],
)
def test_every_source_says_how_sure_it_is(status: str, said: str) -> None:
    """Read, recalled, common practice or invented stands behind each rule, and what each means."""
    old = "    source: {text: Invented for tests, status: invented}\n    joint"
    new = f"    source: {{text: A surgeon's protocol, status: {status}}}\n    joint"
    words = read(section(small_job(with_change(FILES, PROGRAMME, old, new)), "sources"))
    assert f"Do not pull your toes towards you. (phase 2) A surgeon's protocol {said}" in words
    assert "recalled (from memory, not checked)" in words


def test_rules_have_the_numbers_of_the_chart() -> None:
    """A number in the chart leads to the rule as said to the patient, with its source."""
    job = job_of(demo(), "hip-abductor-repair")
    view = protocol_view(job, WIDTH_MM)
    numbered = [(one.mark, str(one.about)) for one in view.rules if one.mark]
    assert numbered == [(row.number, str(row.rule.words)) for row in view.chart.rows]


def test_equal_sources_of_phases_are_named_once() -> None:
    """Two phases whose weeks rest on one source share an entry."""
    words = read(section(small_job(), "sources"))
    assert words.count("Weeks of phase 1 and 2 Invented for tests [invented]") == 1


def test_headings_never_jump_a_level() -> None:
    """One first-level heading; below it no level is left out (WCAG 2.2, technique H42)."""
    levels = [int(tag.name[1]) for tag in page(small_job()).find_all(re.compile("^h[1-6]$"))]
    assert levels.count(1) == 1
    assert all(now <= before + 1 for before, now in pairwise(levels))


def test_the_demonstration_line_stands_only_in_the_demonstration() -> None:
    """A real clinic's protocol does not say that it is a demonstration."""
    job = small_job()
    clinic = replace(job.catalogue.clinic, demo=False)
    real = replace(job, catalogue=replace(job.catalogue, clinic=clinic))
    line = str(job.catalogue.safety.demonstration)
    assert line in protocol_html(job)
    assert line not in protocol_html(real)


def test_what_an_editor_types_is_never_markup() -> None:
    """Whatever an editor types is text, never markup."""
    files = with_change(
        FILES, HEEL_RAISE, "name: Heel raise with both legs", "name: Heel raise & more for two"
    )
    assert "Heel raise &amp; more for two" in protocol_html(small_job(files))
