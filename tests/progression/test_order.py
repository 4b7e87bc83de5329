"""The order from easy to hard: every need first, otherwise the smallest, whatever order things came in."""

from __future__ import annotations

from itertools import pairwise, permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.progression.order import find_cycle, levels, linear_extension

Needs = dict[int, list[int]]


def _key(weights: list[int]) -> dict[int, tuple[int, int]]:
    return {item: (weight, item) for item, weight in enumerate(weights)}


def _allowed(order: tuple[int, ...], needs: Needs, one_of: Needs) -> bool:
    """Return whether nothing stands before its needs, said as plainly as can be."""
    for place, item in enumerate(order):
        before = order[:place]
        if any(need in order and need not in before for need in needs.get(item, [])):
            return False
        choice = [need for need in one_of.get(item, []) if need in order]
        if choice and not any(need in before for need in choice):
            return False
    return True


def _relations(most: int) -> st.SearchStrategy[Needs]:
    items = st.integers(0, most)
    return st.dictionaries(items, st.lists(items, max_size=3, unique=True), max_size=most + 1)


_WEIGHTS = st.lists(st.integers(0, 4), min_size=1, max_size=6)


@given(_WEIGHTS, _relations(7), _relations(7))
def test_smallest_of_all_orders(weights: list[int], needs: Needs, one_of: Needs) -> None:
    """Of all orders that put every need first the smallest is found; if there is none, a circle is named."""
    keys = _key(weights)
    orders = [order for order in permutations(keys) if _allowed(order, needs, one_of)]
    if orders:
        expected = min(orders, key=lambda order: [keys[item] for item in order])
        assert linear_extension(keys, needs, keys.__getitem__, one_of) == list(expected)
        return
    with pytest.raises(ValueError, match=r"\d") as caught:
        linear_extension(keys, needs, keys.__getitem__, one_of)
    circle = caught.value.args[0]
    assert circle[0] == circle[-1]
    assert len(circle) > 1
    for item, need in pairwise(circle):
        assert need in (*needs.get(item, []), *one_of.get(item, []))


@given(st.integers(1, 40), st.randoms(use_true_random=False))
def test_order_of_typing_does_not_matter(count: int, random: object) -> None:
    """The same exercises typed in another order, with needs in another order, come out in the same order."""
    items = list(range(count))
    needs = {item: [need for need in range(item) if (item * 7 + need * 3) % 5 == 0] for item in items}
    keys = {item: ((item * 13) % 5, item) for item in items}
    expected = linear_extension(items, needs, keys.__getitem__)
    assert sorted(expected) == items
    assert _allowed(tuple(expected), needs, {})
    shuffled, turned = items[:], {item: first[::-1] for item, first in reversed(needs.items())}
    random.shuffle(shuffled)  # type: ignore[attr-defined]
    assert linear_extension(shuffled, turned, keys.__getitem__) == expected


def test_needs_of_elsewhere_count_for_nothing() -> None:
    """A need that is not among the items is not waited for."""
    assert linear_extension(["b"], {"b": ["a"]}, str) == ["b"]


def test_long_chain_needs_no_recursion() -> None:
    """A chain of 20,000 exercises, each needing the one before, is ordered, and its circle is found."""
    chain = {item: [item - 1] for item in range(1, 20_000)}
    assert linear_extension(range(20_000), chain, lambda item: -item) == list(range(20_000))
    assert find_cycle(chain) is None
    circle = find_cycle({**chain, 0: [19_999]})
    assert circle is not None
    assert len(circle) == 20_001


def test_circle_is_given_in_walking_order() -> None:
    """A circle begins and ends with the same exercise, each needing the next."""
    assert find_cycle({"a": ["b"], "b": ["d", "c"], "c": ["b"], "d": []}) == ["b", "c", "b"]


_MEANS = st.lists(st.one_of(st.none(), st.floats(0, 120)), max_size=30)


@given(_MEANS, st.floats(0.5, 50))
def test_levels_never_span_more_than_the_setting(means: list[float | None], span: float) -> None:
    """All numbers of one level lie within the span, and a level is one unbroken run of places."""
    found = levels(means, span)
    assert [level is None for level in found] == [mean is None for mean in means]
    numbered = [level for level in found if level is not None]
    assert numbered == sorted(numbered)
    for level in set(numbered):
        places = [place for place, other in enumerate(found) if other == level]
        assert places == list(range(places[0], places[-1] + 1))
        members = [mean for place in places if (mean := means[place]) is not None]
        assert max(members) - min(members) <= span


@given(st.lists(st.floats(0, 120), max_size=30), st.floats(0.5, 50))
def test_level_closes_only_when_it_must(means: list[float], span: float) -> None:
    """In a rising order a new level begins only where the number is beyond the first member's span."""
    rising = sorted(means)
    found = levels(rising, span)
    first: dict[int | None, float] = {}
    for place, (mean, level) in enumerate(zip(rising, found, strict=True)):
        if place and level != found[place - 1]:
            assert mean - first[found[place - 1]] > span
        first.setdefault(level, mean)


def test_levels_are_not_chained() -> None:
    """Steps of 6 points with a span of 10 make pairs: 'about as hard' never creeps up the list."""
    assert levels([20.0, 26.0, 32.0, 38.0], 10) == [1, 1, 2, 2]
