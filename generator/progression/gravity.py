"""Models what gravity asks of a repaired muscle, to see whether the order of measured numbers is plausible.

Only the component along the muscle's action counts, and only for a leg that is free, without load and without
help; for all others there is no model. A moment never orders anything.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise

from generator.body.from_catalogue import Posed, can_be_settled, motion_of, posed_items
from generator.body.moment import against_gravity, is_free
from generator.body.motion import Body, Motion
from generator.body.pose import Side
from generator.catalogue.arranged import Order, ReasonKind
from generator.catalogue.clinic import Action
from generator.catalogue.moments import MASS_KG, STATURE_M, Contradiction, Moment, NoModel
from generator.catalogue.pose import Thing
from generator.catalogue.programme import Programme
from generator.catalogue.terms import How, Joint
from generator.catalogue.values import Catalogue

_LOADS = (Thing.BAND, Thing.ANKLE_WEIGHT, Thing.BIKE)
_HELPS = (Thing.HELPER_HANDS, Thing.STRAP)
_CARRIED = (How.PASSIVE, How.ASSISTED)
_MODELLED = (Joint.HIP, Joint.KNEE)
FAR_MORE = 2.0
_NOTABLE = 5.0  # N·m: below this a leg's own weight hardly acts on the muscle (our own choice)


def gravity_moments(catalogue: Catalogue, programme: Programme) -> Mapping[str, Moment]:
    """Return the moment against the programme's muscles in each exercise and variation that it uses.

    Empty where none of its muscles states an action; of several the first that does counts. A variation
    without poses looks like its exercise and is left out.
    """
    action = next(filter(None, (catalogue.muscles[id_].action for id_ in programme.muscles)), None)
    if action is None:
        return {}
    used = {use.use for phase in programme.phases for use in phase.uses}
    return {
        item.id: _moment(item, action)
        for item in posed_items(catalogue)
        if item.id.partition("/")[0] in used and (item.specs or item.id in used)
    }


def _moment(item: Posed, action: Action) -> Moment:
    without = _without(item, action)
    largest = None if without else _largest(item, action)
    if largest is None and without is None:
        without = NoModel.RESTS
    return Moment(item.id, action.joint, action.movement, largest, without)


def _largest(item: Posed, action: Action) -> float | None:
    """Return the largest moment over all frames in which the operated leg is free, in N·m to one decimal."""
    found = [
        against_gravity(frame, Side.OPERATED, action.joint, action.movement, MASS_KG, STATURE_M)
        for frame in _free_frames(motion_of(item))
    ]
    known = [moment for moment in found if moment is not None]
    return round(max(known), 1) if known else None


def _free_frames(motion: Motion) -> Iterator[Body]:
    """Yield the frames that lead to or from a key pose with a free leg.

    A foot that rolls from sole to toes shares no support between two poses, and still carries weight.
    """
    free = [is_free(key, Side.OPERATED) for key in motion.keys]
    each = max((len(motion.frames) - 1) // max(len(free) - 1, 1), 1)
    for number, frame in enumerate(motion.frames):
        if free[number // each] or free[-(-number // each)]:
            yield frame


def _without(item: Posed, action: Action) -> NoModel | None:
    """Return why nothing can be modelled, as far as words and things around tell; the poses come after."""
    things = {thing.thing for thing in item.figure.things}
    ways = {one.how for one in (*item.operated_leg.moves, *item.operated_leg.holds)}
    if action.joint not in _MODELLED:
        return NoModel.OTHER_JOINT
    if not can_be_settled(item):
        return NoModel.NO_POSES
    if things & set(_LOADS) or How.RESISTED in ways:
        return NoModel.LOADED
    return NoModel.HELPED if things & set(_HELPS) or ways & set(_CARRIED) else None


def forms_of(programme: Programme) -> Mapping[tuple[int, str], str]:
    """Return by phase and exercise the form (``exercise/variation``) where a variation is used."""
    return {
        (phase.number, use.use): f"{use.use}/{use.variation}"
        for phase in programme.phases
        for use in phase.uses
        if use.variation
    }


def contradictions(
    order: Order, moments: Mapping[str, Moment], forms: Mapping[tuple[int, str], str] | None = None
) -> Iterator[Contradiction]:
    """Yield neighbours ordered by activity where gravity asks at least twice as much of the easier one.

    forms: which variation stands for an exercise in a phase (`forms_of`); one without a moment of its own
    looks like its exercise.
    """
    forms = forms or {}
    for phase in sorted({placed.phase for placed in order.places}):
        placed = [
            one
            for one in order.of_phase(phase)
            if any(reason.kind is ReasonKind.ACTIVITY for reason in one.reasons)
        ]
        for one, two in pairwise(placed):
            easier, harder = (
                _known(moments.get(forms.get((phase, item.exercise), "")) or moments.get(item.exercise))
                for item in (one, two)
            )
            if easier is None or harder is None:
                continue
            if easier >= _NOTABLE and easier >= FAR_MORE * harder:
                yield Contradiction(phase, one.exercise, two.exercise, easier, harder)


def _known(moment: Moment | None) -> float | None:
    return moment.newton_metres if moment else None
