"""Judgements and acceptances as an editor types them: role and reason must stand, numbers can be meant."""

from __future__ import annotations

import pytest

from generator.catalogue.judgement import JudgedAs
from tests.content import FILES, catalogue_of, problems_of, with_change

PUMP = "exercises/ankle-pump.yml"
REPAIR = "programmes/tendon-repair.yml"
LIKE = "judged:\n  - {as: like, others: [heel-raise], muscles: [calf], role: surgeon, reason: Invented.}\n"
ACCEPTS = "        accepts: {up-to: 60, role: surgeon, reason: Invented.}\n"


def judged(text: str = LIKE) -> dict[str, str]:
    """Return the small content with a judgement."""
    return with_change(FILES, PUMP, "strains: []\n", f"strains: []\n{text}")


def accepted(text: str = ACCEPTS) -> dict[str, str]:
    """Return the small content with an acceptance that is needed."""
    files = with_change(FILES, "exercises/heel-raise.yml", "mean: 34.5", "mean: 58")
    return with_change(files, REPAIR, "        then: goes on\n", f"        then: goes on\n{text}")


def test_a_judgement_is_read() -> None:
    """With kind, muscles, what it refers to, role and reason."""
    (found,) = catalogue_of(judged()).exercises["ankle-pump"].judged
    assert (found.kind, found.muscles, found.others) == (JudgedAs.LIKE, ("calf",), ("heel-raise",))
    assert (found.role, found.reason) == ("surgeon", "Invented.")


def test_an_acceptance_is_read() -> None:
    """With the number up to which it holds, role and reason."""
    use = catalogue_of(accepted()).programmes["tendon-repair"].phase(2).uses[0]
    assert use.accepts is not None
    assert (use.accepts.up_to, use.accepts.role, use.accepts.reason) == (60, "surgeon", "Invented.")


@pytest.mark.parametrize("key", ["role: surgeon, ", ", reason: Invented."])
def test_role_and_reason_must_stand(key: str) -> None:
    """A judgement or an acceptance by nobody, or for no reason, is an error at its place."""
    assert problems_of(judged(LIKE.replace(key, ""))) == ["missing-key exercises/ankle-pump.yml:11:5"]
    found = problems_of(accepted(ACCEPTS.replace(key, "")))
    assert found == ["missing-key programmes/tendon-repair.yml:89:18"]


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        (LIKE.replace("[heel-raise]", "[]"), "out-of-range exercises/ankle-pump.yml:11:24"),
        (
            LIKE.replace("[heel-raise]", "[heel-raise, ankle-pump]"),
            "out-of-range exercises/ankle-pump.yml:11:24",
        ),
        (LIKE.replace("as: like", "as: between"), "out-of-range exercises/ankle-pump.yml:11:27"),
        (LIKE.replace("as: like", "as: no load"), "unknown-key exercises/ankle-pump.yml:11:19"),
        (LIKE.replace("as: like", "as: alike"), "unknown-choice exercises/ankle-pump.yml:11:10"),
        (LIKE.replace("[calf]", "[calves]"), "unknown-muscle exercises/ankle-pump.yml:11:48"),
        (LIKE.replace("[heel-raise]", "[Heel Raise]"), "wrong-kind exercises/ankle-pump.yml:11:25"),
    ],
    ids=[
        "like nothing",
        "like two",
        "between one",
        "no load, like one",
        "a misspelt kind",
        "a muscle",
        "no id",
    ],
)
def test_a_judgement_has_one_of_three_forms(text: str, problem: str) -> None:
    """Like one exercise, between two, or no load; never a percentage."""
    assert problem in problems_of(judged(text))


@pytest.mark.parametrize(
    ("path", "old", "new", "problem"),
    [
        (
            "exercises/heel-raise.yml",
            "mean: 34.5",
            "mean: 300.1",
            "out-of-range exercises/heel-raise.yml:59:11",
        ),
        ("studies.yml", "  n: 12\n", "  n: 12\n  doi: doi.org/10.1000/1\n", "wrong-kind studies.yml:10:8"),
        ("studies.yml", "  n: 12\n", "  n: 12\n  doi: 10.1/1\n", "wrong-kind studies.yml:10:8"),
    ],
    ids=["a mean above 300", "a DOI with an address before it", "a DOI whose prefix is too short"],
)
def test_impossible_numbers_and_dois(path: str, old: str, new: str, problem: str) -> None:
    """DOI: prefix "10." and a registrant of four or more digits, a slash, a suffix (ISO 26324, recalled)."""
    assert problem in problems_of(with_change(FILES, path, old, new))
