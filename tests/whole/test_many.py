"""Ten thousand exercises are ordered in one go, every need first."""

from __future__ import annotations

import pytest

from generator.progression import arrange
from generator.reading import read_content
from generator.steps.many import of_many, seconds_to_order
from tests.whole.command import PROJECT


@pytest.mark.slow
def test_ten_thousand_exercises_have_an_order() -> None:
    """Each stands once, and what it requires stands before it; the time is measured and not asserted."""
    catalogue = read_content(PROJECT / "content").catalogue
    assert catalogue is not None
    many = of_many(catalogue, 10_000)
    (order,) = arrange(many).values()
    places = {placed.exercise: placed.place for placed in order.places}
    assert sorted(places.values()) == list(range(1, 10_001))
    for id_, place in places.items():
        assert all(places[needed] < place for needed in many.exercises[id_].requires)
    assert seconds_to_order(catalogue, count=100, runs=1) > 0
