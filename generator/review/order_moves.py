"""Explains why exercises changed places: by the measurement or prerequisite that moved."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from generator.catalogue.arranged import Order, Placed
from generator.catalogue.exercise import Exercise, Measurement
from generator.catalogue.programme import Programme, Use
from generator.catalogue.values import Catalogue


@dataclass(frozen=True)
class Ordered:
    """A state of the catalogue and the order that was worked out from it."""

    catalogue: Catalogue
    order: Order

    @property
    def programme(self) -> Programme:
        """Return the programme that the order is of."""
        return self.catalogue.programmes[self.order.programme]

    def ids(self, phase: int) -> tuple[str, ...]:
        """Return the exercises of a phase in their order."""
        return tuple(placed.exercise for placed in self.order.of_phase(phase))


def order_causes(old: Ordered, new: Ordered, phase: int) -> tuple[str, ...]:
    """Return why the exercises that stand in both states changed places, one English sentence each.

    First what moved the exercises that changed places themselves; where nothing did, what changed at others
    of the phase or at the whole programme, which can move them through a level or a prerequisite.
    """
    moved = _moved(old.ids(phase), new.ids(phase))
    if not moved:
        return ()
    every = [id_ for id_ in new.ids(phase) if id_ in old.ids(phase)]
    found = {id_: tuple(_causes(old, new, phase, id_)) for id_ in every}
    own = [cause for id_ in every if id_ in moved for cause in found[id_]]
    others = [cause for id_ in every if id_ not in moved for cause in found[id_]]
    whole = list(_whole(old, new, phase))
    return tuple(own or others or whole) or ("no single measurement or prerequisite explains it",)


def _moved(before: Sequence[str], after: Sequence[str]) -> frozenset[str]:
    """Return all exercises of which at least one pair stands the other way round."""
    kept = [id_ for id_ in before if id_ in after]
    place = {id_: after.index(id_) for id_ in kept}
    pairs = ((one, two) for one, two in combinations(kept, 2) if place[one] > place[two])
    return frozenset(id_ for pair in pairs for id_ in pair)


def _causes(old: Ordered, new: Ordered, phase: int, id_: str) -> Iterator[str]:
    was, now = old.catalogue.exercises[id_], new.catalogue.exercises[id_]
    for word, then, here in (
        ("role", was.role.value, now.role.value),
        ("demand", was.demand.value, now.demand.value),
    ):
        if then != here:
            yield f"{id_}: its {word} went from '{then}' to '{here}'"
    yield from _prerequisites(id_, was, now)
    yield from _use(id_, _use_of(old, phase, id_), _use_of(new, phase, id_))
    yield from _estimate(_placed(old, phase, id_), _placed(new, phase, id_), measured_changes(was, now))
    if was.judged != now.judged:
        yield f"{id_}: what a clinician judged of it changed"
    if was.name.source != now.name.source:
        yield f"{id_}: its name changed, which tells equal ones apart"


def _prerequisites(id_: str, was: Exercise, now: Exercise) -> Iterator[str]:
    before = {*was.requires, *was.requires_one_of}
    after = {*now.requires, *now.requires_one_of}
    for other in sorted(after - before):
        yield f"{id_}: {other} must be mastered first now"
    for other in sorted(before - after):
        yield f"{id_}: {other} need no longer be mastered first"


def _use(id_: str, was: Use, now: Use) -> Iterator[str]:
    if was.variation != now.variation:
        forms = [use.variation or "itself" for use in (was, now)]
        yield f"{id_}: it was used as {forms[0]}, now as {forms[1]}"
    if (was.week, was.delayed_week) != (now.week, now.delayed_week):
        yield f"{id_}: the week in which it enters changed"


def _estimate(was: Placed, now: Placed, values: Sequence[str]) -> Iterator[str]:
    before = was.estimate.mean if was.estimate else None
    after = now.estimate.mean if now.estimate else None
    if before == after:
        return
    shown = [f"{value:.1f}" if value is not None else "not known" for value in (before, after)]
    because = f", because {'; '.join(values)}" if values else ", through measurements of other exercises"
    yield f"{now.exercise}: its activity went from {shown[0]} to {shown[1]} %MVIC{because}"


def measured_changes(was: Exercise, now: Exercise) -> tuple[str, ...]:
    """Return each measurement that is new, gone or different, with its study and muscle."""
    before, after = _measured(was), _measured(now)
    found = []
    for key in sorted(before.keys() | after.keys()):
        then, here = before.get(key), after.get(key)
        if then == here:
            continue
        form, study, muscle, place, load = key
        named = (
            f"{study}, {muscle} ({form}, {place}, {load})" if form else f"{study}, {muscle} ({place}, {load})"
        )
        found.append(f"{named}: {_value(then)}, now {_value(here)}")
    return tuple(found)


_Key = tuple[str, str, str, str, str]


def _measured(exercise: Exercise) -> dict[_Key, Measurement]:
    forms = {"": exercise.activity, **{id_: one.activity for id_, one in exercise.variations.items()}}
    return {
        (form, one.study, one.muscle, one.at_place, one.load): one
        for form, some in forms.items()
        for one in some
    }


def _value(one: Measurement | None) -> str:
    if one is None:
        return "none"
    spread = f" ± {one.sd:g}" if one.sd is not None else ""
    people = f", {one.n} people" if one.n is not None else ""
    return f"{one.mean:g}{spread} %{people}"


def _whole(old: Ordered, new: Ordered, phase: int) -> Iterator[str]:
    was, now = old.programme, new.programme
    if (was.muscles, was.aim) != (now.muscles, now.aim):
        yield "the muscles that the programme goes by changed"
    if was.level_span != now.level_span:
        yield f"levels are {now.level_span:g} points wide now, they were {was.level_span:g}"
    band, wide = was.phase(phase).band, now.phase(phase).band
    if band != wide or was.margin != now.margin:
        yield "the band of the phase or its margin changed"
    if old.catalogue.studies != new.catalogue.studies:
        yield "a study behind the estimates changed"


def _use_of(state: Ordered, phase: int, id_: str) -> Use:
    return next(use for use in state.programme.phase(phase).uses if use.use == id_)


def _placed(state: Ordered, phase: int, id_: str) -> Placed:
    return next(placed for placed in state.order.of_phase(phase) if placed.exercise == id_)
