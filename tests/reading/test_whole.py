"""Reading as a whole: all mistakes in one run, nothing guessed, and never a traceback."""

from __future__ import annotations

import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.catalogue.dose import DoseKind, DoseStep, Load, Span
from generator.catalogue.terms import BandStrength
from generator.problems import Place
from generator.reading import nodes, read_files
from tests.content import FILES, catalogue_of, problems_of, read, with_change


def test_valid_content_is_silent() -> None:
    """The small content has nothing wrong with it, not even a note."""
    assert problems_of(FILES) == []


def test_one_run_reports_everything() -> None:
    """Mistakes in several files and several in one file come out of one run, sorted by place."""
    files = with_change(FILES, "exercises/heel-raise.yml", "role: strength", "role: strenght")
    files = with_change(files, "exercises/heel-raise.yml", "hold: 3 s", "hold: 3")
    files = with_change(files, "exercises/heel-raise.yml", "mistakes:", "mistaks:")
    files = with_change(files, "clinic.yml", "paper: A4", "paper: A5")
    files = with_change(files, "programmes/tendon-repair.yml", "during: 2", "during: two")
    found = problems_of(files)
    assert found == [
        "unknown-choice clinic.yml:10:8",
        "unknown-choice exercises/heel-raise.yml:3:7",
        "unknown-key exercises/heel-raise.yml:33:1",
        "wrong-kind exercises/heel-raise.yml:45:9",
        "wrong-kind programmes/tendon-repair.yml:42:15",
    ]


def test_unreadable_exercise_accuses_nobody() -> None:
    """An exercise with a mistake in it still exists: its uses are not reported as unknown."""
    files = with_change(FILES, "exercises/ankle-pump.yml", "role: circulation", "role: circles")
    assert [found.split()[0] for found in problems_of(files)] == ["unknown-choice"]


def test_yaml_never_guesses() -> None:
    """Numbers that look like others, and words that YAML takes for true or false, stay what was typed.

    YAML 1.1 (https://yaml.org/type/) reads 0123 as 83, 1.10 as 1.1 and no as false.
    """
    catalogue = catalogue_of(with_change(FILES, "clinic.yml", "languages: [en]", "languages: [en, no]"))
    assert catalogue.clinic.languages == ("en", "no")
    assert catalogue.clinic.telephone.clinic == "0555 010 200"
    study = catalogue.studies["invented-2001"]
    assert (study.volume, study.pages) == ("1.10", "0123")
    guessed = yaml.safe_load(FILES["studies.yml"])["invented-2001"]
    assert (guessed["volume"], guessed["pages"]) == (1.1, 83)


def test_values_are_what_was_typed() -> None:
    """Doses, ranges and loads become values with their units."""
    catalogue = catalogue_of()
    dose = catalogue.exercises["heel-raise"].dose
    assert (dose.sets, dose.count, dose.hold, dose.rest) == (
        Span(3, 1, 3),
        Span(10, 6, 12),
        Span(3, 3, 3),
        60,
    )
    (use,) = catalogue.programmes["tendon-repair"].phase(2).uses
    assert use.dose_steps[2] == DoseStep(DoseKind.REPETITIONS, 3, 10)
    assert use.dose_steps[3] == DoseStep(DoseKind.REPETITIONS, 3, 10, load=Load(band=BandStrength.LIGHT))


def test_values_know_their_place() -> None:
    """A value remembers the line and column of its file, and an item of a list its own."""
    exercise = catalogue_of().exercises["heel-raise"]
    assert exercise.steps[1].place == Place("exercises/heel-raise.yml", 29, 5)
    assert exercise.at("requires", 0) == Place("exercises/heel-raise.yml", 11, 12)
    assert exercise.at("no-such-key") == exercise.place == Place("exercises/heel-raise.yml", 1, 1)


def test_place_takes_no_part_in_equality() -> None:
    """A comment that moves every line changes no meaning."""
    moved = {path: f"# a comment\n\n{text}" for path, text in FILES.items()}
    assert catalogue_of(moved) == catalogue_of()


def test_bomb_of_aliases_is_stopped_by_its_first_alias() -> None:
    """A bomb that would unfold into billions of values is refused before anything is unfolded."""
    rungs = [f"l{step}: &l{step} [{', '.join([f'*l{step - 1}'] * 10)}]" for step in range(1, 11)]
    bomb = "\n".join(["l0: &l0 [lol]", *rungs])
    root, problems = nodes.parse("x.yml", bomb)
    assert root is None
    assert [(found.code, str(found.place)) for found in problems] == [("alias", "x.yml:2:10")]


@settings(max_examples=20)
@given(st.integers(0, 60_000))
def test_nodes_are_counted(items: int) -> None:
    """However long a list, no more values are made than the reader allows."""
    root, problems = nodes.parse("x.yml", "- a\n" * items)
    if items >= nodes.MOST_NODES:
        assert root is None
        assert [found.code for found in problems] == ["too-much"]
    else:
        assert problems == ()
        assert root is None if items == 0 else isinstance(root, nodes.Items) and len(root.items) == items


@given(st.integers(0, 300), st.sampled_from(["[", "{a: ", "- ", "? "]))
def test_depth_is_counted(depth: int, opening: str) -> None:
    """Nesting beyond the limit is refused, whether brackets, braces, dashes or keys open it."""
    _, problems = nodes.parse("x.yml", opening * depth)
    if depth > nodes.MOST_DEPTH + 1:
        assert [found.code for found in problems] == ["too-much"]


# Letters that YAML, or a hurried editor, gives a meaning of their own.
_PIECES = st.sampled_from(
    [
        *"\t\n\r :-?[]{}&*!|>'\"%@`#,0\\<\u202e\x00\ufeff\u2028\x85é字",
        "---\n",
        "!!python/name:os ",
        "<<: ",
        "&a ",
        "*a ",
    ]
)
_EDITS = st.lists(
    st.tuples(
        st.sampled_from(sorted(FILES)),
        st.sampled_from(
            ["insert", "delete", "replace", "double line", "delete line", "swap lines", "indent"]
        ),
        st.floats(0, 1, exclude_max=True),
        _PIECES,
    ),
    min_size=1,
    max_size=4,
)


def _edited(text: str, kind: str, where: float, piece: str) -> str:
    """Return the text after one slip of the hand."""
    lines = text.split("\n")
    row, spot = int(where * len(lines)), int(where * len(text))
    match kind:
        case "insert":
            return text[:spot] + piece + text[spot:]
        case "delete":
            return text[:spot] + text[spot + 1 :]
        case "replace":
            return text[:spot] + piece + text[spot + 1 :]
        case "double line":
            lines.insert(row, lines[row])
        case "delete line":
            del lines[row]
        case "swap lines":
            lines[row], lines[row - 1] = lines[row - 1], lines[row]
        case _:
            lines[row] = "  " + lines[row]
    return "\n".join(lines)


@given(_EDITS)
def test_slips_of_the_hand_never_raise(edits: list[tuple[str, str, float, str]]) -> None:
    """Whatever an editor mistypes, each finding has a place in a file, a message and a remedy."""
    files = dict(FILES)
    for path, kind, where, piece in edits:
        files[path] = _edited(files[path], kind, where, piece)
    reading = read(files)
    assert list(reading.problems) == sorted(reading.problems, key=lambda found: found.sort_key)
    for found in reading.problems:
        assert found.place.path in files
        assert found.message
        assert found.remedy
        assert (
            found.place.line <= files[found.place.path].count("\n") + files[found.place.path].count("\r") + 2
        )
    problems_of(files)


@given(st.sampled_from(sorted(FILES)), st.binary(max_size=200))
def test_any_bytes_never_raise(path: str, data: bytes) -> None:
    """A file of anything at all is reported, never raised."""
    files = {name: text.encode() for name, text in FILES.items()}
    assert read_files({**files, path: data}).problems
