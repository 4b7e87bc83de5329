"""Holds that what the legs do is stated where it cannot be nothing: lying on a side, standing on one leg.

Standing on one leg the muscles at the side of its hip hold the pelvis level (common practice, no source), so
that a supporting leg without work would slip past every restriction.
"""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.daily_life import DailyLife
from generator.catalogue.exercise import Exercise, LegWork
from generator.catalogue.terms import Carries, Joint, Movement, Posture
from generator.catalogue.values import Catalogue
from generator.problems import Place, Problem, Rule

SIDE = Rule(
    "side-not-stated",
    "A posture on the side does not say which side is lain on.",
    "'lain-on' was left at no, or at yes, for both legs.",
    "write 'lain-on: yes' for exactly one leg (in daily life for both, where either side will do)",
    safety=True,
)
STANCE = Rule(
    "stance-leg-not-stated",
    "A leg that one stands on alone is said to do nothing at the side of its hip.",
    "Only the moving leg was described.",
    "add hip abduction, isometric, against gravity, to the 'holds' of the leg that carries the whole body",
    safety=True,
)
RULES = (SIDE, STANCE)
ON_A_SIDE = frozenset({Posture.ON_SIDE, Posture.SIDE_SUPPORT})


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each exercise, variation and thing of daily life that leaves this out."""
    for exercise in catalogue.exercises.values():
        yield from _of_legs(exercise, exercise.operated_leg, exercise.other_leg, exercise.place, exercise.id)
        for variation in exercise.variations.values():
            legs = (
                variation.operated_leg or exercise.operated_leg,
                variation.other_leg or exercise.other_leg,
            )
            if variation.operated_leg or variation.other_leg:
                yield from _of_legs(exercise, *legs, variation.place, f"{exercise.id}/{variation.id}")
    for item in catalogue.daily_life.values():
        yield from _of_legs(item, item.operated_leg, item.other_leg, item.place, item.id)


def _of_legs(
    body: Exercise | DailyLife, operated: LegWork, other: LegWork, place: Place, name: str
) -> Iterator[Problem]:
    # Either side will do for sleeping, say: then both are lain on.
    either = isinstance(body, DailyLife) and operated.lain_on
    if body.posture in ON_A_SIDE and operated.lain_on == other.lain_on and not either:
        yield SIDE.at(body.at("posture"), f"'{name}' is done {body.posture.value}, on which side is not said")
    for leg in (operated, other):
        if body.posture is Posture.STANDING and leg.carries is Carries.ONE_LEG and not _holds_level(leg):
            where = leg.at("carries") if leg.place.path else place
            yield STANCE.at(where, f"'{name}' stands on one leg, whose hip is said to do nothing")


def _holds_level(leg: LegWork) -> bool:
    return any(
        (work.joint, work.movement) == (Joint.HIP, Movement.ABDUCTION) for work in (*leg.holds, *leg.moves)
    )
