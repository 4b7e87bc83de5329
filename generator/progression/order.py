"""Orders exercises from easy to hard without ever putting one before what it needs.

The order is the smallest linear extension of the prerequisites: among the exercises whose prerequisites
are all placed, the easiest comes next (Kahn's algorithm with a heap, O((n + e) log n)).
"""

from __future__ import annotations

import heapq
from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType
from typing import Any, TypeVar

Item = TypeVar("Item", bound=Any)
_NO_CHOICE: Mapping[Any, Iterable[Any]] = MappingProxyType({})


def linear_extension(
    items: Iterable[Item],
    needs: Mapping[Item, Iterable[Item]],
    key: Any,
    one_of: Mapping[Item, Iterable[Item]] = _NO_CHOICE,
) -> list[Item]:
    """Return `items` in the smallest order by `key` that puts every need first.

    `needs` maps an item to all that must come before it, `one_of` to things of which one is enough; what is
    not among the items counts for nothing. Raises ValueError with a cycle where needs go round in a circle.
    """
    present = set(items)
    waiting = {item: set(needs.get(item, ())) & present for item in present}
    choices = {item: chosen for item in present if (chosen := set(one_of.get(item, ())) & present)}
    follows: dict[Item, list[Item]] = {}
    for item in present:
        for need in waiting[item] | choices.get(item, set()):
            follows.setdefault(need, []).append(item)
    ready = [(key(item), item) for item in present if not waiting[item] and item not in choices]
    heapq.heapify(ready)
    placed: dict[Item, None] = {}
    while ready:
        _, item = heapq.heappop(ready)
        placed[item] = None
        for later in follows.get(item, ()):
            was_free = not waiting[later] and later not in choices
            waiting[later].discard(item)
            if item in choices.get(later, ()):
                del choices[later]
            if not was_free and not waiting[later] and later not in choices:
                heapq.heappush(ready, (key(later), later))
    if len(placed) < len(present):
        stuck = present - set(placed)
        raise ValueError(
            find_cycle({item: sorted(waiting[item] | choices.get(item, set())) for item in stuck})
        )
    return list(placed)


def find_cycle(needs: Mapping[Item, Sequence[Item]]) -> list[Item] | None:
    """Return one cycle as the items in order, the first again at the end, or None where there is none.

    The walk keeps its own stack, so a chain of ten thousand exercises is no danger.
    """
    done: set[Item] = set()
    for start in sorted(needs):
        if start in done:
            continue
        # A dict keeps the path in order and finds a member at once.
        path: dict[Item, None] = {start: None}
        pending = [iter(needs[start])]
        while pending:
            following = next(pending[-1], None)
            if following is None:
                pending.pop()
                done.add(path.popitem()[0])
            elif following in path:
                walked = list(path)
                return [*walked[walked.index(following) :], following]
            elif following not in done:
                path[following] = None
                pending.append(iter(needs.get(following, ())))
    return None


def levels(means: Sequence[float | None], span: float) -> list[int | None]:
    """Return a level for each place of an order; neighbours on one level are about as hard.

    A level spans at most `span` %MVIC points from its first member and is not chained, so that "about as
    hard" never creeps. A place without a number has no level and ends the level before it.
    """
    found: list[int | None] = []
    level = 0
    low = high = 0.0
    open_level = False
    for mean in means:
        if mean is None:
            found.append(None)
            open_level = False
            continue
        low, high = (min(low, mean), max(high, mean)) if open_level else (mean, mean)
        if not open_level or high - low > span:
            level += 1
            low = high = mean
        open_level = True
        found.append(level)
    return found
