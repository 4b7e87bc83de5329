"""The ledger of editions is read as it was written, and one that was edited into nonsense is found out."""

from __future__ import annotations

import datetime
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.catalogue.editions import EditionLedger, Standing
from generator.catalogue.fingerprints import as_printed, edition_code, is_edition_code
from generator.editing import add_editions
from generator.problems import Problem
from generator.review.editions import ledger_problems, typed_code
from generator.steps.editions import checked_ledger, kind_of, known_paper
from tests.review.paper import DAY, PROGRAMME, code, edition, facts_of_files, ledger

FACTS = facts_of_files()
LATER = datetime.date(2026, 11, 25)
KEY = (PROGRAMME, 2, "en")


def written(folder: Path) -> Path:
    """Record two editions, the second a protocol, and return the ledger's file."""
    for one in (edition(FACTS, code(1), code(2)), edition(None, code(3), day=LATER)):
        assert add_editions(folder, checked_ledger(folder), (one,)) == ()
    return folder / "editions.yml"


def found(folder: Path) -> list[str]:
    """Return every finding about the ledger as code, line and message."""
    return [f"{one.code} {one.place.line} {one.message}" for one in checked_ledger(folder).problems]


def test_a_ledger_is_read_as_it_was_written(tmp_path: Path) -> None:
    """Entries come back equal, the oldest first, and every fingerprint fits."""
    written(tmp_path)
    read = checked_ledger(tmp_path)
    assert read.problems == ()
    assert read.ledger == ledger(edition(FACTS, code(1), code(2)), edition(None, code(3), day=LATER))
    assert read.ledger is not None
    assert read.ledger.dates() == {code(1): DAY, code(2): DAY, code(3): LATER}


def test_what_was_written_before_stays_as_it_is(tmp_path: Path) -> None:
    """Recording appends: not one byte of older entries changes, so that history shows one addition."""
    path = written(tmp_path)
    before = path.read_bytes()
    assert add_editions(tmp_path, checked_ledger(tmp_path), (edition(FACTS, code(4)),)) == ()
    assert path.read_bytes().startswith(before)


def test_nothing_recorded_is_no_problem(tmp_path: Path) -> None:
    """A content without a ledger has simply recorded nothing."""
    read = checked_ledger(tmp_path)
    assert (read.ledger, read.problems) == (EditionLedger(), ())


@pytest.mark.parametrize(
    ("old", "new", "finding"),
    [
        ("language: en\n    fingerprint: 0", "language: en\n    fingerprint: x", "wrong-kind 29"),
        ("recorded: 2026-11-25", "recorded: 2026-13-25", "wrong-kind 26"),
        ("weeks: [6, 8]\n", "weeks: [6, 9]\n", "edition-changed 9"),
        ("dose: [2 x 8,", "dose: [3 x 8,", "edition-changed 9"),
        ("words: Do not jump or run.", "words: You may jump.", "edition-changed 9"),
        (f"code: {code(3)}", f"code: {code(2)}", "edition-twice 31"),
        (f"code: {code(3)}", "code: 7000-0008", "edition-code-wrong 31"),
        ("programme: tendon-repair\n    phase", "programm: tendon-repair\n    phase", "missing-key 5"),
        ("editions:\n", "editions: [\n", "yaml-syntax"),
    ],
)
def test_a_ledger_that_was_edited_is_found_out(tmp_path: Path, old: str, new: str, finding: str) -> None:
    """Each change by hand is told with its line, and nothing is taken from the ledger then."""
    path = written(tmp_path)
    text = path.read_text(encoding="utf-8")
    assert text.count(old) == 1
    path.write_text(text.replace(old, new), encoding="utf-8")
    assert any(one.startswith(finding) for one in found(tmp_path)), found(tmp_path)


def test_the_same_code_may_name_another_kind_that_says_the_same() -> None:
    """Large print that is recorded later has the code of the standard booklet, and is no contradiction."""
    first = edition(FACTS, code(1))
    large = replace(first, recorded=LATER, sheets=(replace(first.sheets[0], kind="large", pdf="f" * 64),))
    assert list(ledger_problems(ledger(first, large))) == []
    known = ledger(first, large)
    assert known.dates() == {code(1): DAY}
    _, sheets = known.of(code(1)) or (None, ())
    assert [sheet.kind for sheet in sheets] == ["standard", "large"]


def test_two_entries_with_one_code_are_refused() -> None:
    """Nobody could tell which of two booklets a code on paper means."""
    (problem,) = ledger_problems(ledger(edition(FACTS, code(1)), edition(FACTS, code(1))))
    assert problem.code == "edition-twice"
    other = replace(edition(FACTS, code(1)), language="de")
    assert [one.code for one in ledger_problems(ledger(edition(FACTS, code(1)), other))] == ["edition-twice"]


def test_a_code_is_read_as_people_type_it() -> None:
    """Small letters, blanks, a missing hyphen and O for 0 are forgiven."""
    known = ledger(edition(FACTS, "7KQ2-M0XP"))
    assert typed_code("7kq2 moxp", known) == "7KQ2-M0XP"


def test_a_typing_error_is_refused_and_the_nearest_offered() -> None:
    """One wrong character never leads to another booklet: the check character does not fit."""
    known = ledger(edition(FACTS, code(1), code(123456)))
    wrong = code(123456)[:-1] + ("0" if code(123456)[-1] != "0" else "1")
    problem = typed_code(wrong, known)
    assert isinstance(problem, Problem)
    assert "check character" in problem.message
    assert problem.remedy == f"did you mean '{code(123456)}'?"


def test_a_right_code_that_nobody_recorded_is_told() -> None:
    """A code without a typing error that is not in the ledger is no typing error."""
    problem = typed_code(code(99), ledger(edition(FACTS, code(1))))
    assert isinstance(problem, Problem)
    assert problem.message == f"no edition '{code(99)}' was recorded"


@given(st.integers(0, 2**34), st.integers(0, 7), st.integers(1, 30))
def test_one_wrong_character_is_always_noticed(number: int, place: int, by: int) -> None:
    """A weighted sum modulo a prime misses no single error, as the pure systems of ISO 7064 (from memory)."""
    alphabet = "0123456789ABCDEFGHJKMNPQRSTVWXY"
    typed = list(edition_code(f"{number:016x}" + "0" * 48).replace("-", ""))
    typed[place] = alphabet[(alphabet.index(typed[place]) + by) % 31]
    assert not is_edition_code("".join(typed))


@given(st.integers(0, 2**34), st.integers(0, 5))
def test_one_swap_of_neighbours_is_always_noticed(number: int, place: int) -> None:
    """Two neighbours that change places are noticed, unless they are alike (ISO 7064, from memory)."""
    right = edition_code(f"{number:016x}" + "0" * 48)
    typed = list(right.replace("-", ""))
    typed[place], typed[place + 1] = typed[place + 1], typed[place]
    wrong = as_printed("".join(typed))
    assert wrong == right or not is_edition_code(wrong)


def test_paper_stands_to_what_is_printed_now() -> None:
    """A booklet is current by its code, else judged by what it says, else no longer in use."""
    printed = {code(5): KEY}
    other = replace(FACTS, rules=())
    known = ledger(edition(FACTS, code(1)), edition(other, code(2)), edition(FACTS, code(3), phase=7))
    stands = {one.code: one.standing for one in known_paper(known, {KEY: FACTS}, printed)}
    assert stands == {
        code(5): Standing.CURRENT,
        code(1): Standing.SAME_TO_DO,
        code(2): Standing.CHANGED,
        code(3): Standing.GONE,
    }


def test_a_recorded_code_that_is_printed_again_is_current() -> None:
    """Content that goes back to an older state makes the older paper current again."""
    (one,) = known_paper(ledger(edition(FACTS, code(1))), {KEY: FACTS}, {code(1): KEY})
    assert (one.standing, one.recorded, one.changes) == (Standing.CURRENT, DAY, ())


@pytest.mark.parametrize(
    ("path", "kind"),
    [
        ("en/booklets/hip-phase-2.pdf", "standard"),
        ("en/booklets/hip-phase-2-large.pdf", "large"),
        ("en/booklets/a-phase-x-phase-12-pocket-fold.pdf", "pocket-fold"),
        ("en/booklets/hip-protocol.pdf", "protocol"),
    ],
)
def test_the_kind_stands_in_the_address(path: str, kind: str) -> None:
    """Addresses of booklets are pinned, and tell which kind of booklet it is."""
    assert kind_of(path) == kind


def test_a_ledger_changed_meanwhile_is_not_overwritten(tmp_path: Path) -> None:
    """Two people who record at once: the second is told, and no entry is lost."""
    path = written(tmp_path)
    read = checked_ledger(tmp_path)
    path.write_bytes(path.read_bytes() + b"# A remark.\n")
    kept = path.read_bytes()
    (problem,) = add_editions(tmp_path, read, (edition(FACTS, code(4)),))
    assert problem.code == "content-changed-meanwhile"
    assert path.read_bytes() == kept
    assert [one.name for one in tmp_path.iterdir()] == ["editions.yml"]
