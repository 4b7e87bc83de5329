"""Mistakes in the ledger of sign-offs: what was changed by hand into nonsense is told with its place."""

from __future__ import annotations

import pytest

from tests.cases import Case
from tests.content import FILES, problems_of

PRINT = "0123456789abcdef" * 2
ENTRY = (
    f"{{item: exercise/heel-raise, scope: content, role: surgeon, date: 2026-11-25, fingerprint: {PRINT}}}"
)
LEDGER = {"reviews.yml": f"signed:\n  - {ENTRY}\n"}


def mistake(rule: str, old: str, new: str, code: str, mark: str, says: tuple[str, ...]) -> Case:
    """Return one change of the ledger by hand."""
    return Case(rule, "reviews.yml", old, new, code, mark, says, beside=LEDGER)


CASES = (
    mistake(
        "a sign-off of an exercise that is not there names the nearest",
        "heel-raise",
        "heel-rise",
        "sign-off-of-nothing",
        "exercise/heel-rise",
        ("there is no 'exercise/heel-rise'", "the nearest is 'exercise/heel-raise'"),
    ),
    mistake(
        "evidence of a thing that has none",
        "exercise/heel-raise, scope: content",
        "exercise/ankle-pump, scope: evidence",
        "sign-off-impossible",
        "evidence",
        ("'exercise/ankle-pump' has nothing to sign as evidence", "review sign"),
    ),
    mistake(
        "a translation without its language",
        "scope: content",
        "scope: language",
        "sign-off-impossible",
        "{item",
        ("'language' is missing",),
    ),
    mistake(
        "a language beside the content",
        "role:",
        "language: de, role:",
        "sign-off-impossible",
        "{item",
        ("'language' stands beside the scope content",),
    ),
    mistake(
        "the language of the content is no translation",
        "scope: content, role:",
        "scope: language, language: en, role:",
        "sign-off-impossible",
        "{item",
        ("'en' is the language of the content itself",),
    ),
    mistake(
        "a next review before the first",
        "fingerprint:",
        "next-review: 2026-10, fingerprint:",
        "sign-off-impossible",
        "{item",
        ("the next review lies before",),
    ),
    Case(
        "invented sign-offs outside a demonstration",
        "clinic.yml",
        "demo: yes",
        "demo: no",
        "sign-off-impossible",
        "yes\n",
        ("the sign-offs are invented", "delete reviews.yml"),
        at_path="reviews.yml",
        beside={"reviews.yml": "invented: yes\nsigned: []\n"},
    ),
)
READ = (
    mistake("a role nobody has", "surgeon", "sorcerer", "unknown-choice", "sorcerer", ("surgeon",)),
    mistake("a day that no month has", "11-25", "02-30", "wrong-kind", "2026-02-30", ("a day, such as",)),
    mistake("a cut fingerprint", PRINT, PRINT[1:], "wrong-kind", PRINT[1:], ("32 hexadecimal digits",)),
    mistake("a sign-off without a date", "date: 2026-11-25, ", "", "missing-key", "{item", ("date",)),
    mistake("a line that was torn", f"{PRINT}}}", PRINT, "yaml-syntax", f"{PRINT}\n", ()),
)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.rule)
def test_mistake(case: Case) -> None:
    """A sign-off that cannot be is found once, at its place, in words that name it."""
    case.hold()


@pytest.mark.parametrize("case", READ[:-1], ids=lambda case: case.rule)
def test_mistake_of_form(case: Case) -> None:
    """What is no ledger by its form is found by the reader, at its place."""
    case.hold()


def test_a_torn_ledger_is_told() -> None:
    """A bracket that never closes is told as what it is."""
    assert [one.split(":")[0] for one in problems_of(READ[-1].files)] == ["yaml-syntax reviews.yml"]


def test_a_ledger_is_not_needed() -> None:
    """A clinic that has signed nothing yet has no ledger, or an empty one."""
    assert problems_of(FILES) == []
    assert problems_of({**FILES, "reviews.yml": "signed: []\n"}) == []
