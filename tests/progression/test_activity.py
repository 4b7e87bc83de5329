"""What becomes of measurements: alike ones are pooled, the rest is set aside, doubt is kept."""

from __future__ import annotations

from math import sqrt
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.catalogue.arranged import Aside, Basis, CaveatKind
from generator.catalogue.terms import Electrode, Part
from generator.progression.activity import activity_of
from generator.progression.pooling import Effect, hartung_knapp, pool, prediction
from tests.content import catalogue_of, with_change
from tests.progression.measured import Row, activity, content, estimate

FIRST = Row("study-a", 30, sd=12, n=30)
SECOND = Row("study-b", 50, sd=15, n=20)
THIRD = Row("study-c", 44, sd=9, n=25)


def reasons(*rows: Row) -> dict[str, tuple[Aside, ...]]:
    """Return why each study is set aside in an exercise with these measurements."""
    found = activity({"raise": rows})
    return {one.study: one.kinds for one in found.set_aside["raise", "calf"]}


def test_alike_measurements_are_pooled() -> None:
    """Two studies with the same load, part and electrode: random effects with variances SD²/n."""
    found = estimate(FIRST, SECOND)
    wanted = pool([Effect(30, 12**2 / 30), Effect(50, 15**2 / 20)])
    assert (found.mean, found.se, found.q) == (wanted.mean, wanted.se, wanted.q)
    assert (found.tau_squared, found.i_squared) == (wanted.tau_squared, wanted.i_squared)
    assert (found.k, found.n, found.studies) == (2, 50, ("study-a", "study-b"))
    assert found.set_aside == ()


@pytest.mark.parametrize(
    ("other", "reason"),
    [
        (THIRD.but(load="ankle weight"), (Aside.OTHER_LOAD,)),
        (THIRD.but(electrode="fine wire"), (Aside.OTHER_ELECTRODE,)),
        (THIRD.but(part="peak"), (Aside.OTHER_PART,)),
        (THIRD.but(part="peak", electrode="fine wire"), (Aside.OTHER_ELECTRODE, Aside.OTHER_PART)),
        (THIRD.but(normalisation="reference contraction"), (Aside.REFERENCE,)),
        (THIRD.but(muscle="inner-calf"), (Aside.SEGMENT,)),
        (THIRD.but(n=None), (Aside.NO_PEOPLE,)),
        (THIRD.but(n=1), (Aside.ONE_PERSON,)),
        (THIRD.but(sd=0), (Aside.NO_SPREAD,)),
        (THIRD.but(more=", statistic: median"), (Aside.MEDIAN,)),
        (THIRD.but(more=", added-load: band"), (Aside.OTHER_LOAD,)),
    ],
    ids=lambda value: "" if isinstance(value, Row) else " and ".join(kind.name for kind in value),
)
def test_what_is_not_alike_is_set_aside(other: Row, reason: tuple[Aside, ...]) -> None:
    """One difference is enough to keep a measurement out, and it is named."""
    assert reasons(FIRST, SECOND, other) == {"study-c": reason}
    assert estimate(FIRST, SECOND, other).mean == estimate(FIRST, SECOND).mean


@pytest.mark.parametrize(
    ("part", "caveat"), [("unknown", CaveatKind.PART_UNKNOWN), ("hold", CaveatKind.HOLD)]
)
def test_unknown_part_and_hold_count_as_mean_and_are_marked(part: str, caveat: CaveatKind) -> None:
    """Both are averages over time as far as anyone knows; a clinician sees which study it was."""
    found = estimate(FIRST, SECOND.but(part=part))
    assert found.k == 2
    assert [(one.kind, one.study) for one in found.caveats if one.study] == [(caveat, "study-b")]


def test_surface_comes_before_fine_wire_and_mean_before_peak() -> None:
    """The group that stands for the exercise: surface first, then means, then most people."""
    wire = THIRD.but(electrode="fine wire", n=200)
    peak = SECOND.but(part="peak", n=100)
    found = estimate(FIRST, wire, peak)
    assert (found.studies, found.set_aside[0].study) == (("study-a",), "study-b")
    assert found.condition is not None
    assert (found.condition.electrode, found.condition.part) == (Electrode.SURFACE, Part.MEAN)
    assert estimate(wire, peak).studies == ("study-b",)
    assert estimate(FIRST, SECOND.but(load="sitting", n=31)).studies == ("study-b",)


def test_the_same_people_count_once() -> None:
    """Two values of one study under the same condition: doubt never widens permission, the higher stays."""
    found = estimate(FIRST, FIRST.but(mean=35))
    assert (found.mean, found.n, found.k) == (35, 30, 1)
    assert reasons(FIRST, FIRST.but(mean=35)) == {"study-a": (Aside.SAME_PEOPLE,)}


def test_missing_sd_is_borrowed_from_the_muscles_other_measurements() -> None:
    """The median coefficient of variation (Cochrane Handbook 6.5.2, recalled): 0.3, 0.4, 0.2 give 0.3."""
    rows = (Row("study-a", 30, sd=9), Row("study-b", 50, sd=20), Row("study-c", 40, sd=8))
    found = activity({"raise": [Row("study-d", 60, sd=None, n=36)], "other": rows}).of("raise", "calf")
    assert found is not None
    assert found.se == pytest.approx(0.3 * 60 / 6)
    assert CaveatKind.SD_IMPUTED in {caveat.kind for caveat in found.caveats}


def test_nothing_to_borrow_a_spread_from() -> None:
    """Without any SD of the muscle a mean alone cannot be weighed: set aside, and there is no estimate."""
    found = activity({"raise": [Row("study-d", 60, sd=None)]})
    assert found.of("raise", "calf") is None
    assert found.set_aside["raise", "calf"][0].kinds == (Aside.NO_SD,)


def test_median_with_its_interquartile_range_is_taken() -> None:
    """SD = width / 1.35 (Cochrane Handbook 6.5.2, recalled): 13.5 / 1.35 = 10; 10 / √25 = 2."""
    found = estimate(Row("study-a", 48, sd=None, n=25, more=", statistic: median, iqr: 13.5"))
    assert found.mean == 48
    assert found.se == pytest.approx(2)
    kinds = {caveat.kind for caveat in found.caveats}
    assert {CaveatKind.FROM_MEDIAN, CaveatKind.SD_FROM_IQR} <= kinds


def test_three_studies_have_an_interval_of_their_own() -> None:
    """Hartung-Knapp, and an interval for a further study (Higgins 2009); nothing is borrowed."""
    found = estimate(FIRST, SECOND, THIRD)
    effects = [Effect(30, 4.8), Effect(50, 11.25), Effect(44, 3.24)]
    assert (found.low, found.high) == hartung_knapp(effects, pool(effects))
    assert found.prediction == prediction(pool(effects))
    assert found.borrowed is None


def test_one_study_borrows_the_median_doubt_of_the_muscles_pools() -> None:
    """Pools of two studies, 40 ± 5 and 60 ± 5: tau² 175; 40 and 50: tau² 25; the median is 100."""
    pair = (Row("study-a", 40, sd=25, n=25), Row("study-b", 60, sd=25, n=25))
    close = (Row("study-c", 40, sd=25, n=25), Row("study-d", 50, sd=25, n=25))
    found = activity({"one": pair, "two": close, "raise": [Row("study-e", 30, sd=12, n=16)]})
    raise_ = found.of("raise", "calf")
    assert raise_ is not None
    assert found.between["calf"] == pytest.approx((175 + 25) / 2)
    assert raise_.borrowed == pytest.approx(100)
    assert raise_.high == pytest.approx(30 + 1.959964 * sqrt(9 + 100), abs=1e-5)


def test_without_any_pool_the_doubt_is_said_to_be_unknown() -> None:
    """One study in all: its interval is too narrow, and says so."""
    found = estimate(FIRST)
    assert found.borrowed is None
    assert [caveat.kind for caveat in found.caveats] == [CaveatKind.NO_BETWEEN]


@pytest.mark.parametrize(
    ("row", "basis"),
    [
        (FIRST, Basis.MEASURED),
        (FIRST.but(read="mean, sd"), Basis.PARTLY_RECALLED),
        (FIRST.but(read="mean, n"), Basis.PARTLY_RECALLED),
        (FIRST.but(read=""), Basis.PARTLY_RECALLED),
        (FIRST.but(sd=None, read="mean, n"), Basis.MEASURED),
    ],
    ids=["all read", "n recalled", "sd recalled", "all recalled", "no sd to read"],
)
def test_one_recalled_number_makes_an_estimate_partly_recalled(row: Row, basis: Basis) -> None:
    """Each number says for itself whether it was read in the source."""
    found = activity({"raise": [row], "other": [SECOND]}).of("raise", "calf")
    assert found is not None
    assert found.basis is basis


def test_a_study_can_be_left_out() -> None:
    """As if it had never been published; the reason says that this was on purpose."""
    catalogue = catalogue_of(content({"raise": [FIRST, SECOND]}))
    found = activity_of(catalogue, frozenset({"study-b"}))
    left = found.of("raise", "calf")
    assert left is not None
    assert (left.mean, left.studies) == (30, ("study-a",))
    assert [one.kinds for one in left.set_aside] == [(Aside.LEFT_OUT,)]


@pytest.mark.parametrize(("change", "mean"), [("harder", 50), ("easier", 20)])
def test_a_harder_form_counts_as_no_easier_than_its_exercise(change: str, mean: float) -> None:
    """Fewer %MVIC in other people, with other electrodes, do not make a harder form easier."""
    files = content({"raise": [SECOND], "raise/seated": [FIRST.but(mean=20, electrode="fine wire")]})
    catalogue = catalogue_of(with_change(files, "exercises/raise.yml", "is: easier", f"is: {change}"))
    raise_ = catalogue.exercises["raise"]
    found = activity_of(catalogue).in_form(raise_, raise_.variations["seated"], "calf")
    assert found is not None
    assert found.mean == mean


ROWS = st.lists(
    st.tuples(st.integers(5, 120), st.integers(1, 60), st.integers(2, 60)), min_size=1, max_size=6
)


def rows_of(drawn: list[tuple[int, int, int]]) -> list[Row]:
    """Return one study a row."""
    return [Row(f"study-{place}", mean, sd, n) for place, (mean, sd, n) in enumerate(drawn)]


@given(ROWS, st.integers(0, 100))
def test_adding_points_to_every_mean_adds_them(drawn: list[tuple[int, int, int]], points: int) -> None:
    """Where no spread is borrowed."""
    moved = [row.but(mean=row.mean + points) for row in rows_of(drawn)]
    assert estimate(*moved).mean == pytest.approx(estimate(*rows_of(drawn)).mean + points)


@given(ROWS, st.sampled_from([0.5, 2.0]))
def test_another_unit_multiplies(drawn: list[tuple[int, int, int]], factor: float) -> None:
    """Means and SDs by the same factor: estimate and interval by that factor."""
    scaled = [row.but(mean=row.mean * factor, sd=(row.sd or 0) * factor) for row in rows_of(drawn)]
    first, second = estimate(*rows_of(drawn)), estimate(*scaled)
    assert first.low is not None
    assert second.low is not None
    assert (second.mean, second.low) == pytest.approx((first.mean * factor, first.low * factor), abs=1e-9)


@given(ROWS)
def test_an_estimate_lies_between_smallest_and_largest_mean(drawn: list[tuple[int, int, int]]) -> None:
    """Whatever the weights."""
    means = [row.mean for row in rows_of(drawn)]
    assert min(means) - 1e-9 <= estimate(*rows_of(drawn)).mean <= max(means) + 1e-9


@given(ROWS, st.integers(0, 1000))
def test_the_order_of_the_file_changes_nothing(drawn: list[tuple[int, int, int]], seed: int) -> None:
    """Not even in the last digit."""
    shuffled = rows_of(drawn)
    Random(seed).shuffle(shuffled)
    assert estimate(*shuffled) == estimate(*rows_of(drawn))
