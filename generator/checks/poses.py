"""Holds that poses can be drawn and say the same as the words beside them: no angle and no movement twice.

A joint of a leg that turns more than 10 degrees between the poses is a movement, stated under 'moves'.
"""

from __future__ import annotations

from collections.abc import Iterator

from generator.body import rules as body_rules
from generator.body.from_catalogue import Posed, can_be_settled, motion_of, posed_items, poses_of
from generator.body.pose import Side
from generator.body.ranges import signed
from generator.catalogue.exercise import LegWork, ShownAngle
from generator.catalogue.restricted import SMALL
from generator.catalogue.terms import Joint, Movement
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, Severity

TYPED_AND_DRAWN = Rule(
    "typed-and-drawn",
    "An angle is typed beside poses that show it.",
    "'to' was left where poses are drawn; the two would drift apart.",
    "delete 'to'; limits and texts take the angle from the poses",
    safety=True,
)
NOT_STATED = Rule(
    "movement-not-stated",
    "The poses move a joint that the leg does not state under 'moves'.",
    "The movement was forgotten, or the poses show more than is meant.",
    "add the movement to the leg's 'moves', or change the poses",
    severity=Severity.WARNING,
)
NOT_SHOWN = Rule(
    "movement-not-shown",
    "A leg states a movement that the poses do not show.",
    "The poses leave it out, or its direction was mixed up.",
    "add the movement to a pose, or take it out of 'moves'",
    severity=Severity.WARNING,
)
ON_SIDE = Rule(
    "pose-on-wrong-side",
    "A pose lies on the other side than the legs say.",
    "'on-side' of the pose and 'lain-on' of the legs contradict each other.",
    "leave 'on-side' out, or correct 'lain-on'",
    safety=True,
)
NO_FINISH = Rule(
    "finish-not-described",
    "A picture of the finish has no words of its own.",
    "'finish' was left out; who cannot see the picture hears a step instead.",
    "add 'finish': what the last pose looks like, in one sentence",
    severity=Severity.NOTE,
)
RULES = (TYPED_AND_DRAWN, NOT_STATED, NOT_SHOWN, ON_SIDE, NO_FINISH, *body_rules.RULES)
_SHOWN = 3.0  # degrees: less than this nobody sees


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each pose that cannot be drawn, and for each word that the poses gainsay."""
    drawn = {name for name, exercise in catalogue.exercises.items() if exercise.poses}
    for item in posed_items(catalogue):
        if not item.specs:
            if item.id.partition("/")[0] in drawn:
                yield from _typed_twice(item)
            continue
        yield from body_rules.typed(poses_of(item))
        yield from _typed_twice(item)
        yield from _wrong_side(item)
        if can_be_settled(item):
            unsettled = body_rules.settled(motion_of(item))
            yield from unsettled
            for name, leg in (("operated", item.operated_leg), ("other", item.other_leg)):
                yield from () if unsettled else _of_leg(item, name, leg)
        if item.owner.finish is None and len(item.specs) > 1:
            yield NO_FINISH.at(item.place, f"'{item.id}' shows a finish and has no words for it")


def _typed_twice(item: Posed) -> Iterator[Problem]:
    for leg in (item.owner.operated_leg, item.owner.other_leg):
        for work in (*leg.moves, *leg.holds) if leg else ():
            if work.to is not None:
                what = f"{work.joint.value} {work.movement.value}"
                yield TYPED_AND_DRAWN.at(
                    work.at("to"), f"'{item.id}' has poses and types how far {what} goes"
                )


def _wrong_side(item: Posed) -> Iterator[Problem]:
    legs = {Side.OPERATED: item.operated_leg, Side.OTHER: item.other_leg}
    for spec in item.specs:
        lain_on = [side for side, leg in legs.items() if leg.lain_on]
        if spec.on_side is not None and lain_on and spec.on_side not in lain_on:
            message = (
                f"'{spec.id}' lies on the {spec.on_side.value} side, the legs say the {lain_on[0].value} one"
            )
            yield ON_SIDE.at(spec.at("on-side"), message)


def _of_leg(item: Posed, name: str, leg: LegWork) -> Iterator[Problem]:
    """Yield where a leg's statements and its poses name different movements, both ways of an axis as one."""
    place = leg.at("moves")
    travels = {_axis(one.joint, one.movement): one for one in leg.shown or ()}
    stated = {_axis(work.joint, work.movement) for work in leg.moves}
    for axis, one in travels.items():
        if one.travel > SMALL and axis not in stated:
            yield NOT_STATED.at(place, f"'{item.id}': {_turns(name, one)}")
    if len(item.specs) < 2:
        return
    for work in leg.moves:
        axis = _axis(work.joint, work.movement)
        shown = travels.get(axis)
        if shown is None or shown.travel < _SHOWN:
            what = f"{name} {work.joint.value} {work.movement.value}"
            yield NOT_SHOWN.at(work.place, f"'{item.id}' states {what}, which no pose shows")


def _axis(joint: Joint, movement: Movement) -> tuple[Joint, Movement]:
    return joint, signed(movement, 1.0)[0]


def _turns(name: str, one: ShownAngle) -> str:
    return f"the {name} {one.joint.value} turns {one.travel:g} degrees about {one.movement.value}"
