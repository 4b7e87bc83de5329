"""People who did both exercises are asked first; the chance from pooled numbers only without them."""

from __future__ import annotations

from math import sqrt
from statistics import NormalDist

import pytest

from generator.catalogue.arranged import Comparison, Placed, ReasonKind
from generator.progression import arrange
from tests.content import catalogue_of, with_change
from tests.progression.measured import REPAIR, Row, content


def second(first: list[Row], other: list[Row], week: int = 0) -> Placed:
    """Return the second place of a phase with two exercises; `week`: later entry of the second."""
    files = content({"one": first, "two": other})
    if week:
        files = with_change(files, REPAIR, "use: two\n", f"use: two\n        week: {week}\n")
    return arrange(catalogue_of(files))["tendon-repair"].of_phase(2)[1]


def compared(first: list[Row], other: list[Row], week: int = 0) -> Comparison:
    """Return how the second place compares with the first."""
    found = second(first, other, week).comparison
    assert found is not None
    return found


BOTH = [(Row("study-a", 20), Row("study-a", 30)), (Row("study-b", 22), Row("study-b", 40)),
        (Row("study-c", 24), Row("study-c", 35)), (Row("study-d", 38), Row("study-d", 30))]  # fmt: skip


def test_three_of_four_found_it_harder() -> None:
    """Each study of both in the same people has one voice."""
    place = second([row for row, _ in BOTH], [row for _, row in BOTH])
    found = place.comparison
    assert found is not None
    assert (place.exercise, found.before, found.muscle) == ("two", "one", "calf")
    assert found.studies == ("study-a", "study-b", "study-c", "study-d")
    assert (found.harder, found.easier) == (("study-a", "study-b", "study-c"), ("study-d",))
    assert (found.people, found.contradicts) == (None, False)
    (said,) = [one for one in place.reasons if one.kind is ReasonKind.SAME_PEOPLE]
    assert (said.other, said.number, said.of) == ("one", 3, 4)


def test_the_same_people_outrank_the_chance() -> None:
    """Where any study measured both, the chance is not among the reasons; otherwise it is."""
    kinds = {one.kind for one in second([BOTH[0][0]], [BOTH[0][1]]).reasons}
    assert ReasonKind.CHANCE not in kinds
    apart = {one.kind for one in second([Row("study-a", 20)], [Row("study-b", 30)]).reasons}
    assert ReasonKind.CHANCE in apart
    assert ReasonKind.SAME_PEOPLE not in apart


def test_values_got_in_another_way_do_not_compare() -> None:
    """A peak and a mean of one study, or percentages of two references, say nothing about each other."""
    for change in ({"part": "peak"}, {"normalisation": "reference contraction"}):
        rows = [Row("study-a", 30), Row("study-b", 50).but(**change)]
        assert compared([Row("study-b", 20)], rows).studies == ()


def test_percent_of_another_reference_compares_within_its_study() -> None:
    """What may not be pooled still tells which of two was harder in the same people."""
    reference = {"normalisation": "reference contraction"}
    first = [Row("study-a", 20), Row("study-b", 10).but(**reference)]
    other = [Row("study-c", 40), Row("study-b", 25).but(**reference)]
    assert compared(first, other).harder == ("study-b",)


def test_the_chance_is_that_of_two_normal_numbers() -> None:
    """30 ± 3 against 20 ± 4: a difference of 10 with SE 5, two standard errors: 97.7 %."""
    found = compared([Row("study-a", 20, sd=16, n=16)], [Row("study-b", 30, sd=12, n=16)])
    assert found.chance == pytest.approx(NormalDist().cdf(2))


def test_people_that_a_next_study_needs() -> None:
    """People: (1.96 + 0.8416)² (SD₁² + SD₂²) / difference²; spread 0.5: SD 10 and 11, 2 apart."""
    found = compared([Row("study-a", 20, sd=10, n=9)], [Row("study-b", 22, sd=11, n=9)])
    # 7.8489 * (100 + 121) / 4 = 433.6
    assert found.people == 434


def test_what_is_settled_needs_no_further_study() -> None:
    """Far apart in the pools, or two studies in the same people that agree."""
    assert compared([Row("study-a", 20)], [Row("study-b", 60)]).people is None
    first, other = [BOTH[0][0], BOTH[1][0]], [BOTH[0][1], BOTH[1][1]]
    assert compared(first, other).people is None


def test_studies_against_the_order_are_named() -> None:
    """The pools put it later, the people who did both found it easier; a later week explains itself."""
    first = [Row("study-a", 30), Row("study-b", 10)]
    other = [Row("study-a", 25), Row("study-c", 45)]
    assert compared(first, other).contradicts
    assert not compared(first, other, week=9).contradicts
    assert not compared(first, other, week=9).by_activity


def test_borrowed_doubt_enters_the_chance() -> None:
    """A pool of two with tau² 175 lends 175 to each single study: 20 / √(4 + 4 + 350)."""
    pair = [Row("study-x", 40, sd=25, n=25), Row("study-y", 60, sd=25, n=25)]
    files = content(
        {"one": [Row("study-a", 10, sd=8, n=16)], "two": [Row("study-b", 30, sd=8, n=16)], "six": pair}
    )
    placed = arrange(catalogue_of(files))["tendon-repair"].of_phase(2)[1]
    assert placed.comparison is not None
    assert placed.comparison.chance == pytest.approx(NormalDist().cdf(20 / sqrt(8 + 350)))
