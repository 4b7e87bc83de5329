"""What a judgement comes to: never a percentage of its own, never in a circle, never before a measurement."""

from __future__ import annotations

import pytest

from generator.catalogue.arranged import Basis, Estimate, ReasonKind
from generator.catalogue.judgement import JudgedAs
from generator.progression import arrange
from tests.content import catalogue_of, problems_of
from tests.progression.measured import Row, activity, content

LOW, HIGH = Row("study-a", 20, sd=12, n=16), Row("study-b", 40, sd=12, n=16)
MEASURED = {"easy": [LOW], "hard": [HIGH]}


def judged(kind: str, *others: str, muscles: str = "calf") -> str:
    """Return a judgement as an editor types it."""
    named = f"others: [{', '.join(others)}], " if others else ""
    return f"judged:\n  - {{as: {kind}, {named}muscles: [{muscles}], role: surgeon, reason: Invented.}}\n"


def found(text: str, exercises: dict[str, list[Row]] | None = None) -> Estimate | None:
    """Return the estimate of an exercise that was judged so, beside an easy and a hard one."""
    return activity({**MEASURED, "new": [], **(exercises or {})}, {"new": text}).of("new", "calf")


def test_like_another() -> None:
    """Number and interval of the other; no study of its own."""
    estimate, other = found(judged("like", "hard")), activity(MEASURED).of("hard", "calf")
    assert estimate is not None
    assert other is not None
    assert (estimate.mean, estimate.low, estimate.high) == (40, other.low, other.high)
    assert (estimate.basis, estimate.k, estimate.n, estimate.studies) == (Basis.JUDGED_LIKE, 0, 0, ())
    assert estimate.judgement is not None
    assert (estimate.judgement.kind, estimate.judgement.role) == (JudgedAs.LIKE, "surgeon")


def test_between_two() -> None:
    """The middle of both, with an interval that spans both: 20 - 5.88 to 40 + 5.88 (1.96 · 12 / √16)."""
    estimate = found(judged("between", "easy", "hard"))
    assert estimate is not None
    assert (estimate.mean, estimate.basis) == (30, Basis.JUDGED_BETWEEN)
    assert estimate.low == pytest.approx(14.12, abs=0.005)
    assert estimate.high == pytest.approx(45.88, abs=0.005)


def test_no_load() -> None:
    """The one judgement that is 0, and says on what it rests."""
    estimate = found(judged("no load"))
    assert estimate is not None
    assert (estimate.mean, estimate.low, estimate.high, estimate.basis) == (0, 0, 0, Basis.JUDGED_NO_LOAD)


def test_a_judgement_may_rest_on_a_judgement() -> None:
    """In whichever order they were typed."""
    more = {"new": judged("like", "another"), "another": judged("like", "hard")}
    known = activity({**MEASURED, "new": [], "another": []}, more).of("new", "calf")
    assert known is not None
    assert known.mean == 40


def test_a_judgement_may_refer_to_a_variation() -> None:
    """As exercise/variation."""
    known = activity(
        {"hard": [HIGH], "hard/seated": [LOW], "new": []}, {"new": judged("like", "hard/seated")}
    ).of("new", "calf")
    assert known is not None
    assert known.mean == 20


def test_a_measurement_counts_before_a_judgement() -> None:
    """Also where the judgement was typed first."""
    estimate = found(judged("like", "hard"), {"new": [LOW.but(mean=25)]})
    assert estimate is not None
    assert (estimate.mean, estimate.basis) == (25, Basis.MEASURED)


@pytest.mark.parametrize(
    "text",
    ["", judged("like", "nowhere"), judged("like", "new"), judged("like", "hard", muscles="inner-calf")],
    ids=["nothing said", "an unknown exercise", "itself", "another muscle"],
)
def test_what_leads_to_no_number_stays_without_one(text: str) -> None:
    """Not measured is never 0."""
    assert found(text) is None


def test_an_unmeasured_exercise_is_ordered_by_its_judgement_and_says_so() -> None:
    """Between its two neighbours; without a judgement it stands after everything that is known."""
    files = content({**MEASURED, "new": [], "unknown": []}, {"new": judged("between", "easy", "hard")})
    # Nothing carries the value of the small content's own study here.
    assert [found.split()[0] for found in problems_of(files)] == ["study-not-cited"]
    places = arrange(catalogue_of(files))["tendon-repair"].of_phase(2)
    assert [placed.exercise for placed in places] == ["easy", "new", "hard", "unknown"]
    kinds = [(reason.kind, reason.other) for reason in places[1].reasons]
    assert kinds[:2] == [(ReasonKind.JUDGED, "easy"), (ReasonKind.JUDGED, "hard")]
    assert ReasonKind.ACTIVITY not in {kind for kind, _ in kinds}
    assert places[3].not_measured == ("calf",)
