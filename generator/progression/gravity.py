"""Models what gravity asks of a repaired muscle, to see whether the order of measured numbers is plausible.

Only the component along the muscle's action counts, and only for a leg that is free, without load and without
help; for all others there is no model. A moment never orders anything.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise

from generator.body.from_catalogue import Posed, can_be_settled, motion_of, posed_items
from generator.body.moment import against_gravity
from generator.body.pose import Side
from generator.catalogue.arranged import Order, ReasonKind
from generator.catalogue.clinic import Action
from generator.catalogue.moments import MASS_KG, STATURE_M, Contradiction, Moment
from generator.catalogue.pose import Thing
from generator.catalogue.programme import Programme
from generator.catalogue.terms import How
from generator.catalogue.values import Catalogue

_LOADS = (Thing.BAND, Thing.ANKLE_WEIGHT)
_HELPS = (Thing.HELPER_HANDS, Thing.STRAP)
_CARRIED = (How.PASSIVE, How.ASSISTED)
FAR_MORE = 2.0
_NOTABLE = 5.0  # N·m: below this a leg's own weight hardly acts on the muscle (our own choice)


def gravity_moments(catalogue: Catalogue, programme: Programme) -> Mapping[str, Moment]:
    """Return the moment against the programme's muscles in each exercise and variation that it uses.

    Empty where none of its muscles states an action; of several the first that does counts.
    """
    action = next(filter(None, (catalogue.muscles[id_].action for id_ in programme.muscles)), None)
    if action is None:
        return {}
    used = {use.use for phase in programme.phases for use in phase.uses}
    return {
        item.id: Moment(item.id, action.joint, action.movement, _largest(item, action))
        for item in posed_items(catalogue)
        if item.id.partition("/")[0] in used and can_be_settled(item)
    }


def _largest(item: Posed, action: Action) -> float | None:
    """Return the largest moment over all poses in which the operated leg is free, in N·m to one decimal."""
    if _is_loaded_or_helped(item):
        return None
    found = [
        against_gravity(frame, Side.OPERATED, action.joint, action.movement, MASS_KG, STATURE_M)
        for frame in motion_of(item).frames
    ]
    known = [moment for moment in found if moment is not None]
    return round(max(known), 1) if known else None


def _is_loaded_or_helped(item: Posed) -> bool:
    things = {thing.thing for thing in item.figure.things}
    work = (*item.operated_leg.moves, *item.operated_leg.holds)
    ways = {one.how for one in work}
    return bool(things & {*_LOADS, *_HELPS}) or How.RESISTED in ways or bool(ways & set(_CARRIED))


def contradictions(order: Order, moments: Mapping[str, Moment]) -> Iterator[Contradiction]:
    """Yield neighbours ordered by activity where gravity asks at least twice as much of the easier one."""
    for phase in sorted({placed.phase for placed in order.places}):
        placed = [
            one
            for one in order.of_phase(phase)
            if any(reason.kind is ReasonKind.ACTIVITY for reason in one.reasons)
        ]
        for one, two in pairwise(placed):
            easier, harder = (_known(moments.get(item.exercise)) for item in (one, two))
            if easier is None or harder is None:
                continue
            if easier >= _NOTABLE and easier >= FAR_MORE * harder:
                yield Contradiction(phase, one.exercise, two.exercise, easier, harder)


def _known(moment: Moment | None) -> float | None:
    return moment.newton_metres if moment else None
