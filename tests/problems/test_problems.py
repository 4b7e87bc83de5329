"""The two forms of a finding: text for people, with a mark under the place, and JSON for programs."""

from __future__ import annotations

import pytest

from generator.problems import (
    Place,
    Problem,
    Rule,
    Severity,
    as_json,
    as_text,
    did_you_mean,
    has_errors,
    in_order,
    nearest,
    offered,
)

RULE = Rule("sample", "One sees this.", "It comes from that.", "do this")
NOTE = Rule("hint", "One sees this.", "It comes from that.", "do nothing", severity=Severity.NOTE)


def _shown(line: str, column: int) -> tuple[str, str]:
    """Return the shown source line and the line with the mark, without their gutters."""
    text = as_text(RULE.at(Place("a.yml", 2, column), "message"), {"a.yml": ["first", line]})
    _, source, mark = text.split("\n")
    assert source.startswith("  2 | ")
    assert mark.startswith("    | ")
    return source[6:], mark[6:]


def test_text_of_a_problem() -> None:
    """A finding reads: place, code, what is wrong, what to do; the mark stands under the place."""
    problem = RULE.at(Place("clinic.yml", 3, 8), "'A5' is not known here", "take A4")
    lines = ["name: x", "about: y", "paper: A5"]
    assert as_text(problem, {"clinic.yml": lines}) == (
        "clinic.yml:3:8: sample: 'A5' is not known here; take A4\n  3 | paper: A5\n    |        ^"
    )


def test_text_of_a_lighter_problem_says_its_weight() -> None:
    """Warnings and notes are told apart from errors; a rule's own remedy stands where no other is given."""
    assert as_text(NOTE.at(Place("x.yml"), "message")) == "x.yml: hint (note): message; do nothing"


@pytest.mark.parametrize("place", [Place("a.yml"), Place("a.yml", 9, 1), Place("b.yml", 1, 1)])
def test_no_source_no_mark(place: Place) -> None:
    """A whole file, a line beyond its end and a file whose lines are not known are named without a mark."""
    assert "\n" not in as_text(RULE.at(place, "message"), {"a.yml": ["one"]})


def test_mark_after_a_tab() -> None:
    """A tab is shown as one blank, so the mark stands under the letter after it."""
    source, mark = _shown("\tname: x", 2)
    assert source[mark.index("^")] == "n"


def test_mark_in_a_long_line() -> None:
    """Of a long line the part around the place is shown, and the mark stands under the right letter."""
    line = "x" * 400 + "Y" + "z" * 400
    source, mark = _shown(line, 401)
    assert len(source) == 100
    assert source[mark.index("^")] == "Y"


@pytest.mark.parametrize("column", [1, 79, 80, 81, 82, 100, 101, 102, 300])
def test_mark_is_always_in_what_is_shown(column: int) -> None:
    """Wherever the place, the mark stands under a shown letter."""
    line = "".join(chr(ord("a") + number % 26) for number in range(300))
    source, mark = _shown(line, column)
    assert source[mark.index("^")] == line[column - 1]


def test_mark_after_wide_letters() -> None:
    """Chinese letters take two cells of a terminal (Unicode UAX #11), so the mark moves by two for each."""
    _, mark = _shown("名前: X", 5)
    assert mark == " " * 6 + "^"


def test_mark_after_combining_letters() -> None:
    """An accent typed as a letter of its own takes no cell."""
    _, mark = _shown("e\u0301: X", 5)
    assert mark == " " * 3 + "^"


def test_mark_at_the_end_of_a_line() -> None:
    """A place just behind the last letter, where something is missing, is marked as well."""
    assert _shown("hold:", 6) == ("hold:", "     ^")


def test_invisible_letters_are_shown_as_blanks() -> None:
    """A mark that turns text around cannot turn the message around."""
    source, mark = _shown("a\u202eb", 2)
    assert source == "a b"
    assert mark == " ^"


def test_what_a_terminal_would_obey_is_written_out() -> None:
    """Colours, line ends and marks that turn a line round come as escapes, in file names and in messages."""
    problem = RULE.at(Place("a\x1b[2J\nb.yml"), "'\u202eknee \u200c' is not known here")
    assert as_text(problem) == (
        "a\\u001b[2J\\u000ab.yml: sample: '\\u202eknee \u200c' is not known here; do this"
    )


def test_json_has_the_pinned_keys() -> None:
    """The JSON form has the seven keys that other programs rely on, and plain values."""
    assert as_json(RULE.at(Place("a.yml", 3, 8), "message")) == {
        "code": "sample",
        "severity": "error",
        "path": "a.yml",
        "line": 3,
        "column": 8,
        "message": "message",
        "remedy": "do this",
    }


def test_order_of_findings() -> None:
    """Findings are sorted by path, line and column as numbers, and each is said once."""
    places = [Place("b.yml", 1, 1), Place("a.yml", 10, 1), Place("a.yml", 9, 2), Place("a.yml")]
    problems = [RULE.at(place, "message") for place in places]
    assert [str(found.place) for found in in_order([*problems, problems[0]])] == [
        "a.yml",
        "a.yml:9:2",
        "a.yml:10:1",
        "b.yml:1:1",
    ]


def test_only_errors_stop_publishing() -> None:
    """Warnings and notes alone do not stop publishing."""
    note: Problem = NOTE.at(Place("a.yml"), "message")
    assert not has_errors([note])
    assert has_errors([note, RULE.at(Place("a.yml"), "message")])


KNOWN = (
    "exercise/clam",
    "exercise/side-plank",
    "phase/hip-repair/2",
    "safety",
    "study/ekstrom-2007",
    "use/hip-repair/2/clam",
)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("exercise/clamp", "exercise/clam"),
        ("excercise/clam", "exercise/clam"),
        ("clam", "exercise/clam"),
        ("Exercise/Clam", "exercise/clam"),
        ("exercise/side", "exercise/side-plank"),
        ("study/ekstrom", "study/ekstrom-2007"),
        ("phase/hip-repair/9", "phase/hip-repair/2"),
        ("use/hip-repair/3/clam", "use/hip-repair/2/clam"),
        ("safty", "safety"),
    ],
)
def test_the_name_that_was_meant_is_offered(typed: str, meant: str) -> None:
    """A slip of the fingers, a beginning, another number or a name without its kind finds what was meant."""
    assert nearest(typed, KNOWN) == meant
    assert did_you_mean(typed, KNOWN) == f"did you mean '{meant}'?"


@pytest.mark.parametrize(
    "typed", ["exercise/nope", "exercise/", "study/nobody-2007", "phase/knee/2", "", "x"]
)
def test_nothing_is_offered_that_is_not_like_it(typed: str) -> None:
    """A kind or a year in common says nothing of what was meant."""
    assert nearest(typed, KNOWN) is None
    assert did_you_mean(typed, KNOWN) == ""


def test_what_there_is_stands_where_nothing_is_like_it() -> None:
    """In a short list a word like no other is answered with all of them."""
    assert offered("nope", ("left", "right", "both")) == "there are: both, left, right"
    assert offered("rigt", ("left", "right", "both")) == "did you mean 'right'?"
