"""The arithmetic of pooling, held against printed results and against statsmodels.

The latter does not truncate the variance of DerSimonian and Laird at 0, so it is asked only where Q is at
least its degrees of freedom; beyond that the hand-checkable cases hold.
"""

from __future__ import annotations

from math import log, sqrt
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.progression.pooling import Effect, hartung_knapp, pool, prediction, widened

# Colditz et al. 1994, JAMA 271:698-702 (recalled; they reproduce every printed digit): vaccinated cases and
# non-cases, control cases and non-cases.
BCG = (
    (4, 119, 11, 128), (6, 300, 29, 274), (3, 228, 11, 209), (62, 13536, 248, 12619), (33, 5036, 47, 5761),
    (180, 1361, 372, 1079), (8, 2537, 10, 619), (505, 87886, 499, 87892), (29, 7470, 45, 7232),
    (17, 1699, 65, 1600), (186, 50448, 141, 27197), (5, 2493, 3, 2338), (27, 16886, 29, 17825),
)  # fmt: skip
# Borenstein, Hedges, Higgins, Rothstein 2009, Introduction to Meta-Analysis, chapter 14 (read in statsmodels'
# test suite): mean, SD, n of the treated; mean, SD, n of the controls.
BORENSTEIN = (
    (94, 22, 60, 92, 20, 60), (98, 21, 65, 92, 22, 65), (98, 28, 40, 88, 26, 40), (94, 19, 200, 82, 17, 200),
    (98, 21, 50, 88, 22, 45), (96, 21, 85, 92, 22, 85),
)  # fmt: skip
# Kacker 2004, Metrologia 41:132-136, as in statsmodels' test data: nine laboratories' results and variances.
KACKER = (
    (61.00, 0.2025), (61.40, 1.2100), (62.21, 0.0900), (62.30, 0.2025), (62.34, 0.3844), (62.60, 0.5625),
    (62.70, 0.0676), (62.84, 0.0225), (65.90, 1.8225),
)  # fmt: skip


def effects(*pairs: tuple[float, float]) -> list[Effect]:
    """Return effects from means and variances."""
    return [Effect(mean, variance) for mean, variance in pairs]


def log_risk_ratio(a: int, b: int, c: int, d: int) -> Effect:
    """Return the log risk ratio of a trial and its variance."""
    return Effect(log(a / (a + b)) - log(c / (c + d)), 1 / a - 1 / (a + b) + 1 / c - 1 / (c + d))


def hedges_g(m1: float, s1: float, n1: int, m2: float, s2: float, n2: int) -> Effect:
    """Return Hedges' g, the book's variance: Vd = (n1+n2)/(n1·n2) + d²/(2(n1+n2)), both corrected by J."""
    df = n1 + n2 - 2
    d = (m1 - m2) / sqrt(((n1 - 1) * s1**2 + (n2 - 1) * s2**2) / df)
    j = 1 - 3 / (4 * df - 1)
    return Effect(j * d, j**2 * ((n1 + n2) / (n1 * n2) + d**2 / (2 * (n1 + n2))))


def test_bcg_trials() -> None:
    """Printed results of metafor's own tests, compared there with Stata's metan: to the last digit."""
    found = pool([log_risk_ratio(*cells) for cells in BCG])
    assert found.k == 13
    assert round(found.fixed, 4) == -0.4303
    assert round(found.fixed - 1.959964 * found.fixed_se, 4) == -0.5097
    assert round(found.fixed + 1.959964 * found.fixed_se, 4) == -0.3509
    assert round(found.q, 4) == 152.2330
    assert round(found.mean, 4) == -0.7141
    assert round(found.mean - 1.959964 * found.se, 4) == -1.0644
    assert round(found.mean + 1.959964 * found.se, 4) == -0.3638
    assert round(found.tau_squared, 4) == 0.3088
    assert round(100 * found.i_squared, 4) == 92.1173


def test_borenstein_chapter_14() -> None:
    """Six studies, Hedges' g, by the book's formulas; it prints the same to four digits (recalled)."""
    found = pool([hedges_g(*row) for row in BORENSTEIN])
    assert found.fixed == pytest.approx(0.41426967, abs=5e-9)
    assert found.fixed_se == pytest.approx(0.06399026, abs=5e-9)
    assert found.q == pytest.approx(12.00325189, abs=5e-9)
    assert found.tau_squared == pytest.approx(0.03731131, abs=5e-9)
    assert found.mean == pytest.approx(0.35822942, abs=5e-9)
    assert found.se == pytest.approx(0.10524355, abs=5e-9)
    assert 100 * found.i_squared == pytest.approx(58.3446, abs=5e-5)


def test_kacker_2004() -> None:
    """The published DerSimonian-Laird tau is 0.5359 (agrees to 1e-3 only); the rest by statsmodels."""
    found = pool(effects(*KACKER))
    assert sqrt(found.tau_squared) == pytest.approx(0.5359, abs=1e-3)
    assert found.fixed == pytest.approx(62.58339709, abs=5e-9)
    assert found.q == pytest.approx(24.80189774, abs=5e-9)
    assert found.tau_squared == pytest.approx(0.28804925, abs=5e-9)
    assert found.mean == pytest.approx(62.39013860, abs=5e-9)
    assert found.se == pytest.approx(0.24574967, abs=5e-9)
    assert 100 * found.i_squared == pytest.approx(67.7444, abs=5e-5)


@pytest.mark.parametrize(
    ("given_", "fixed", "fixed_se", "q", "tau", "mean", "se"),
    [
        (((40, 25), (60, 25)), 50, 3.53553391, 8, 175, 50, 10),
        (((50, 4), (50, 9), (50, 36)), 50, 1.60356745, 0, 0, 50, 1.60356745),
        (
            ((10, 1), (20, 4), (30, 9)),
            13.46938776,
            0.85714286,
            53.06122449,
            89.35714286,
            19.71822131,
            5.59491219,
        ),
    ],
    ids=["two that differ", "three that agree: truncated at 0", "three that differ"],
)
def test_cases_that_can_be_checked_by_hand(
    given_: tuple[tuple[float, float], ...],
    fixed: float,
    fixed_se: float,
    q: float,
    tau: float,
    mean: float,
    se: float,
) -> None:
    """Plain arithmetic with w = 1/v, C = Σw - Σw²/Σw, tau² = max(0, (Q - df)/C)."""
    found = pool(effects(*given_))
    wanted = (fixed, fixed_se, q, tau, mean, se)
    got = (found.fixed, found.fixed_se, found.q, found.tau_squared, found.mean, found.se)
    assert got == pytest.approx(wanted, abs=5e-9)


# Pools worked out with statsmodels from published rows; most SDs are recalled. They mix loads, electrodes and
# parts, so they test the arithmetic only: the catalogue's own pools keep these apart.
ROWS: tuple[tuple[str, tuple[tuple[float, float, int], ...], tuple[float, ...]], ...] = (
    ("clam", ((32.6, 16.9, 20), (26.7, 18, 20)), (29.8358, 2.7550, 1.1420, 2.1648, 29.8127, 2.9455)),
    ("bridge", ((28, 17, 30), (15, 10.5, 20)), (19.7315, 1.8725, 11.1582, 76.9271, 21.3415, 6.4981)),
    (
        "lunge",
        ((42, 21, 21), (29, 12, 30), (19.3, 12.9, 20), (17.7, 8.8, 44)),
        (21.6220, 1.0291, 40.5028, 69.6052, 26.2850, 4.4142),
    ),
    (
        "forward step-up",
        ((62.7, 18.2, 34), (29.5, 14.9, 20), (44, 17, 23)),
        (46.2518, 1.9163, 53.4535, 284.9591, 45.4289, 9.9346),
    ),
    (
        "lateral step-up",
        ((43, 18, 30), (61, 20, 34), (38, 18, 23)),
        (47.7271, 2.0057, 23.7601, 132.0764, 47.3731, 6.9349),
    ),
    (
        "side-lying abduction",
        ((81, 42, 21), (39, 17, 30), (42, 23, 16), (70.1, 29.9, 20), (43.5, 14.7, 20)),
        (45.5278, 1.9578, 33.6674, 164.1143, 53.1603, 6.2791),
    ),
    ("side step", ((61, 34, 21), (30.2, 15.7, 20)), (35.8343, 3.1733, 14.0806, 440.6339, 44.9064, 15.3844)),
    (
        "one-leg bridge",
        ((47, 24, 30), (30.9, 20.7, 20)),
        (39.3908, 3.1821, 6.3806, 109.2928, 39.0191, 8.0497),
    ),
    (
        "one-leg squat",
        ((64, 25, 21), (30.1, 9.1, 44)),
        (32.1162, 1.3305, 36.3169, 558.7830, 46.6388, 16.9450),
    ),
    (
        "abduction, gluteus maximus",
        ((39, 18, 21), (21, 16, 30), (25.3, 24.6, 20)),
        (27.0859, 2.1564, 13.6460, 92.0058, 28.3893, 6.0375),
    ),
    (
        "step-up, gluteus maximus",
        ((29, 13, 30), (31, 19.9, 34), (56, 29, 23)),
        (32.1306, 1.8547, 17.4312, 99.9430, 37.3744, 6.2307),
    ),
)


@pytest.mark.parametrize(("rows", "wanted"), [row[1:] for row in ROWS], ids=[row[0] for row in ROWS])
def test_pools_of_published_rows(
    rows: tuple[tuple[float, float, int], ...], wanted: tuple[float, ...]
) -> None:
    """Fixed effect, its SE, Q, tau² and random effects of eleven small pools, to four decimals."""
    found = pool([Effect(mean, sd**2 / n) for mean, sd, n in rows])
    got = (found.fixed, found.fixed_se, found.q, found.tau_squared, found.mean, found.se)
    assert got == pytest.approx(wanted, abs=6e-5)


_EFFECTS = st.lists(st.builds(Effect, st.floats(5, 110), st.floats(1, 200)), min_size=2, max_size=9)


def combined(found: list[Effect]) -> Any:
    """Return statsmodels' pool (0.15.0) of the same effects."""
    meta = pytest.importorskip("statsmodels.stats.meta_analysis", reason="statsmodels is not installed")
    means = np.array([item.mean for item in found])
    variances = np.array([item.variance for item in found])
    return meta.combine_effects(means, variances, method_re="dl", use_t=True)


@given(_EFFECTS)
def test_statsmodels_agrees(found: list[Effect]) -> None:
    """By statsmodels 0.15.0: mean, SE, Q and tau² of random effects where Q ≥ df."""
    ours = pool(found)
    assume(ours.q >= ours.k - 1)
    theirs = combined(found)
    assert ours.fixed == pytest.approx(theirs.mean_effect_fe)
    assert ours.q == pytest.approx(theirs.q)
    assert ours.tau_squared == pytest.approx(theirs.tau2, abs=1e-9)
    assert ours.mean == pytest.approx(theirs.mean_effect_re)
    assert ours.se == pytest.approx(theirs.sd_eff_w_re)


@given(_EFFECTS)
def test_statsmodels_agrees_on_hartung_and_knapp(found: list[Effect]) -> None:
    """By statsmodels 0.15.0: the Hartung-Knapp interval; with a correction below 1 ours is wider."""
    ours = pool(found)
    assume(ours.q >= ours.k - 1)
    theirs = combined(found)
    low, high = hartung_knapp(found, ours)
    wanted = theirs.conf_int(use_t=True)[3]
    if theirs.scale_hksj_re >= 1:
        assert (low, high) == pytest.approx(tuple(wanted))
    else:
        assert low <= wanted[0] + 1e-9
        assert high >= wanted[1] - 1e-9


def test_prediction_interval_of_the_bcg_trials() -> None:
    """Mean ± t(k-2) · √(tau² + SE²) (Higgins 2009); t(11) = 2.200985 (table value, recalled)."""
    found = pool([log_risk_ratio(*cells) for cells in BCG])
    half = 2.200985 * sqrt(found.tau_squared + found.se**2)
    assert prediction(found) == pytest.approx((found.mean - half, found.mean + half), abs=1e-6)


def test_one_or_two_studies_borrow_doubt() -> None:
    """40 ± 1.96 · √(3² + 16): the borrowed variance of 16 makes a half-width of 5 · 1.959964."""
    low, high = widened(pool(effects((40, 9))), 16)
    assert (low, high) == pytest.approx((40 - 9.79982, 40 + 9.79982), abs=1e-5)


@given(_EFFECTS, st.floats(-50, 50))
def test_adding_a_constant_to_every_mean_adds_it(found: list[Effect], constant: float) -> None:
    """The variances do not know where zero is."""
    moved = pool([Effect(item.mean + constant, item.variance) for item in found])
    assert moved.mean == pytest.approx(pool(found).mean + constant, abs=1e-6)
    assert moved.tau_squared == pytest.approx(pool(found).tau_squared, abs=1e-5)


@given(_EFFECTS, st.floats(0.1, 10))
def test_multiplying_means_and_sds_multiplies(found: list[Effect], factor: float) -> None:
    """Another unit changes mean and SE by the same factor."""
    scaled = pool([Effect(item.mean * factor, item.variance * factor**2) for item in found])
    plain = pool(found)
    assert (scaled.mean, scaled.se) == pytest.approx((plain.mean * factor, plain.se * factor), rel=1e-6)


@given(_EFFECTS)
def test_the_pool_lies_between_smallest_and_largest(found: list[Effect]) -> None:
    """No weighting leads outside of what was measured."""
    means = [item.mean for item in found]
    assert min(means) - 1e-9 <= pool(found).mean <= max(means) + 1e-9


@pytest.mark.parametrize("variance", [0.0, -1.0])
def test_a_variance_that_is_not_above_zero_is_refused(variance: float) -> None:
    """A study with SD 0 would take all the weight."""
    with pytest.raises(ValueError, match="above 0"):
        pool(effects((40, 9), (50, variance)))


def test_nothing_is_no_pool() -> None:
    """Without a study there is no number: it is never 0."""
    with pytest.raises(ValueError, match="nothing to pool"):
        pool([])
