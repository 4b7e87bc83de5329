"""Orders the exercises of one session apart from the order of introduction: few changes of position, safely.

Warm-up comes first; free balance work never comes after work that tires the stance leg; within a stop the
order of introduction holds. Among the sequences of positions that allow this the one with the fewest changes
is taken, then the one with the fewest times down to the floor (uniform-cost search over the positions).
"""

from __future__ import annotations

import heapq
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from generator.catalogue.arranged import SessionReason, SessionReasonKind
from generator.catalogue.exercise import Exercise, LegWork
from generator.catalogue.restricted import Work, work_of
from generator.catalogue.terms import Carries, Demand, How, Role, Surface

WARM_UP = frozenset({Role.CIRCULATION, Role.MOVEMENT})
FREE = frozenset({Demand.TWO_LEGS, Demand.ONE_LEG, Demand.STEPPING, Demand.JUMPING})
_CARRYING = frozenset({Carries.PARTIAL, Carries.SHARED, Carries.ONE_LEG})
_EASE = (Surface.BED, Surface.CHAIR, Surface.STANDING, Surface.FLOOR)


@dataclass(frozen=True)
class Item:
    """An exercise as used: where it can be done, whether it warms up, wants or tires a fresh stance leg."""

    exercise: str
    surfaces: frozenset[Surface]
    warm_up: bool
    wants_fresh: bool
    tires: bool


@dataclass(frozen=True)
class Stop:
    """A position of the body and what is done in it, in order."""

    surface: Surface
    items: tuple[Item, ...]


def items_of(exercises: Iterable[tuple[Exercise, str | None]]) -> tuple[Item, ...]:
    """Return the exercises (with the variation used, or None) as what the order of a session asks about."""
    works = [(item, work_of(item, item.variations.get(used or ""))) for item, used in exercises]
    balance = [work for item, work in works if _is_free_balance(item, work)]
    operated = any(work.operated.carries in _CARRYING for work in balance)
    other = any(work.other.carries in _CARRYING for work in balance)
    return tuple(
        Item(
            exercise=item.id,
            surfaces=frozenset(item.surface),
            warm_up=item.role in WARM_UP,
            wants_fresh=_is_free_balance(item, work),
            tires=item.role is Role.STRENGTH
            and ((operated and _works(work.operated)) or (other and _works(work.other))),
        )
        for item, work in works
    )


def _is_free_balance(exercise: Exercise, work: Work) -> bool:
    return exercise.role is Role.BALANCE and work.demand in FREE


def _works(leg: LegWork) -> bool:
    """Return whether the leg's own muscles work or carry."""
    own = any(item.how not in (How.PASSIVE, How.ASSISTED) for item in leg.moves)
    return own or bool(leg.holds) or leg.carries in _CARRYING


def stops(items: Sequence[Item]) -> tuple[Stop, ...]:
    """Return the session of `items`, which are given in the order of introduction, as stops in order."""
    every = frozenset(range(len(items)))
    # Cost: changes of position, times on the floor, then the easier positions first.
    waiting: list[tuple[int, int, tuple[int, ...], tuple[tuple[int, ...], ...]]] = [(0, 0, (), ())]
    seen: set[tuple[int, frozenset[int]]] = set()
    while waiting:
        changes, floors, path, parts = heapq.heappop(waiting)
        done = frozenset(index for part in parts for index in part)
        if done == every:
            return tuple(
                Stop(_EASE[place], tuple(items[index] for index in part))
                for place, part in zip(path, parts, strict=True)
            )
        if path and (path[-1], done) in seen:
            continue
        seen.add((path[-1] if path else -1, done))
        for place, surface in enumerate(_EASE):
            part = _doable(items, done, surface)
            if part:
                floor = floors + (surface is Surface.FLOOR)
                heapq.heappush(waiting, (changes + 1, floor, (*path, place), (*parts, part)))
    raise ValueError("an exercise can be done nowhere")


def _doable(items: Sequence[Item], done: frozenset[int], surface: Surface) -> tuple[int, ...]:
    """Return all that can be done now on this surface: leaving any of it for later saves no change."""
    here = [index for index, item in enumerate(items) if surface in item.surfaces and index not in done]
    taken = [index for index in here if items[index].warm_up]
    if any(item.warm_up for index, item in enumerate(items) if index not in done and index not in taken):
        return tuple(taken)
    fresh = {index for index, item in enumerate(items) if item.wants_fresh and index not in done}
    ready = fresh <= set(here)
    rest = [index for index in here if not items[index].warm_up and (ready or not items[index].tires)]
    # Sorting is stable: only what tires moves behind the balance work.
    return (*taken, *sorted(rest, key=lambda index: bool(fresh) and items[index].tires))


def reasons(stop: Stop, position: int, balance: Sequence[Item]) -> tuple[SessionReason, ...]:
    """Say why the item at `position` of a stop stands there; `balance`: the free balance items of the day."""
    item = stop.items[position]
    found: list[SessionReason] = []
    if item.warm_up:
        found.append(SessionReason(SessionReasonKind.WARM_UP))
    if item.wants_fresh:
        found.append(SessionReason(SessionReasonKind.FRESH_LEG))
    elif item.tires and balance:
        found.append(SessionReason(SessionReasonKind.FRESH_LEG, balance[-1].exercise))
    if position:
        before = stop.items[position - 1].exercise
        found.append(SessionReason(SessionReasonKind.SAME_POSITION, before))
    if not found or position:
        found.append(SessionReason(SessionReasonKind.INTRODUCED))
    return tuple(found)
