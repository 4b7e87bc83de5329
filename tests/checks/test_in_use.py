"""What was written and reaches nobody: exercises and daily life in no phase, studies without values."""

from __future__ import annotations

import pytest

from tests.cases import Case
from tests.checks.test_trade import STAIRS, STAIRS_ITEM
from tests.content import ANKLE_PUMP, FILES, STUDIES, problems_of, with_change

PRESS = "exercises/calf-press.yml"
RAISE = "exercises/heel-raise.yml"
REPAIR = "programmes/tendon-repair.yml"
WRITTEN = {PRESS: ANKLE_PUMP}
STATUS = "  status: {text: Invented for tests, status: invented}\n"
SECOND = STATUS + STUDIES.replace("invented-2001", "invented-2002").replace("Nobody A", "Someone C")

CASES = (
    Case(
        "an exercise that no phase has",
        PRESS,
        "Ankle pump",
        "Calf press",
        "in-no-phase",
        "Calf press",
        ("no phase has the exercise 'calf-press'", "name it in a phase"),
        beside=WRITTEN,
    ),
    Case(
        "an item of daily life that no phase speaks of",
        STAIRS,
        "Stairs",
        "Steps",
        "in-no-phase",
        "Steps",
        ("no phase has the item of daily life 'stairs'",),
        beside={STAIRS: STAIRS_ITEM},
    ),
    Case(
        "a study of which no value is carried",
        "studies.yml",
        STATUS,
        SECOND,
        "study-not-cited",
        "authors: Someone C",
        ("nothing carries a value of 'invented-2002'", "'not-used'"),
    ),
)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.rule)
def test_mistake(case: Case) -> None:
    """What leads nowhere is named at its own place."""
    case.hold()


@pytest.mark.parametrize(
    ("path", "old", "new"),
    [
        (REPAIR, "use: ankle-pump\n", "use: calf-press\n"),
        (RAISE, "alternative: ankle-pump", "alternative: calf-press"),
    ],
    ids=["a use", "an alternative"],
)
def test_what_a_patient_can_come_to_is_in_use(path: str, old: str, new: str) -> None:
    """A phase has it, or it stands in for an exercise that a phase has."""
    found = problems_of(with_change({**FILES, **WRITTEN}, path, old, new))
    assert f"in-no-phase {PRESS}:1:7" not in found


def test_an_alternative_of_what_nobody_does_is_not_in_use() -> None:
    """Two exercises that only name each other reach nobody."""
    both = {PRESS: ANKLE_PUMP + "alternative: calf-lift\n", "exercises/calf-lift.yml": ANKLE_PUMP}
    found = problems_of({**FILES, **both})
    assert [one.split()[0] for one in found] == ["in-no-phase", "in-no-phase"]


def test_a_value_that_is_not_used_cites_its_study() -> None:
    """A study whose values all lie outside these programmes is accounted for."""
    not_used = "  not-used: [{exercise: Hop, muscle: calf, mean: 60, reason: Jumping is beyond.}]\n"
    assert problems_of(with_change(FILES, "studies.yml", STATUS, SECOND + not_used)) == []


def test_what_could_not_be_read_may_be_what_leads_there() -> None:
    """A use with a mistake in it is no reason to call its exercise unused."""
    found = problems_of(with_change(FILES, REPAIR, "[5 times an hour, 10 times an hour]", "[often]"))
    assert [one.split()[0] for one in found] == ["wrong-kind"]
