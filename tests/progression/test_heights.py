"""Anchor heights are held to Drillis & Contini 1966 as in Winter 2009, figure 4.1."""

from __future__ import annotations

import pytest

from generator.body import segments
from generator.catalogue.terms import Landmark
from generator.progression import anchor_heights, anchor_table


def test_body_heights_close() -> None:
    """From sole to crown the lengths add up to one stature: 0.039+0.246+0.245+0.288+0.052+0.130 = 1.000."""
    lengths = (
        segments.ANKLE_HEIGHT,
        segments.SHANK,
        segments.THIGH,
        segments.TRUNK,
        segments.NECK,
        segments.HEAD,
    )
    assert sum(lengths) == pytest.approx(1.0, abs=1e-12)


@pytest.mark.parametrize(
    ("landmark", "fraction"),
    [
        (Landmark.ANKLE, 0.039),
        (Landmark.KNEE, 0.285),
        (Landmark.HIP, 0.530),
        (Landmark.ELBOW, 0.630),  # from memory
        (Landmark.SHOULDER, 0.818),
    ],
)
def test_landmarks_stand_at_their_printed_height(landmark: Landmark, fraction: float) -> None:
    """The fractions printed in Winter 2009, figure 4.1."""
    assert anchor_heights(100).heights[landmark] == pytest.approx(100 * fraction)


def test_a_person_of_170_cm() -> None:
    """Worked out by hand: 170 cm times each fraction."""
    heights = [anchor_heights(170).heights[landmark] for landmark in Landmark]
    assert heights == pytest.approx([6.63, 48.45, 90.1, 107.1, 139.06])


def test_the_table_covers_most_adults() -> None:
    """Body heights from 145 to 200 cm, rising, each landmark higher on a taller person."""
    table = anchor_table()
    assert (table[0].stature, table[-1].stature) == (145, 200)
    for landmark in Landmark:
        column = [row.heights[landmark] for row in table]
        assert column == sorted(set(column))


@pytest.mark.parametrize("stature", [0, 49, 251, 1700])
def test_a_slip_of_the_unit_is_refused(stature: int) -> None:
    """Millimetres and metres are no centimetres."""
    with pytest.raises(ValueError, match="no body height"):
        anchor_heights(stature)
