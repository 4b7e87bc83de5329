"""Says what is wrong with the things around a person before they are drawn."""

from __future__ import annotations

from collections.abc import Iterable

from generator.body.motion import Motion
from generator.body.pose import BodyPart, Ground, Side
from generator.figures.props import Band, Chair, Crutches, Prop, Step, Stick, Toilet, WalkingFrame, Worktop
from generator.problems import Place, Problem, Rule

NO_ANCHOR = Rule(
    "figure-band-anchor",
    "A band pulls at one leg and is fixed to nothing.",
    "The band names a leg but no anchor.",
    "say where the band is fixed, or leave the side out for a loop round both legs",
)
UNUSED = Rule(
    "figure-prop-unused",
    "A thing stands there and nobody uses it.",
    "No pose rests on it or holds it, so its place is unknown.",
    "say in the pose what rests on it, or leave the thing out",
)
RULES = (NO_ANCHOR, UNUSED)
_USED: tuple[tuple[type, BodyPart, Ground], ...] = (
    (Chair, BodyPart.PELVIS, Ground.SEAT),
    (Toilet, BodyPart.PELVIS, Ground.SEAT),
    (Step, BodyPart.FOOT, Ground.STEP),
    (Worktop, BodyPart.HAND, Ground.WORKTOP),
    (Crutches, BodyPart.HAND, Ground.GRIP),
    (Stick, BodyPart.HAND, Ground.GRIP),
    (WalkingFrame, BodyPart.HAND, Ground.GRIP),
)


def around(props: Iterable[Prop], motion: Motion, place: Place) -> tuple[Problem, ...]:
    """Return what is wrong with the props of a movement."""
    found = []
    rests = {(rest.part, rest.on) for key in motion.keys for rest in key.rests}
    for prop in props:
        if isinstance(prop, Band) and prop.side is not Side.MIDDLE and prop.anchor is None:
            found.append(
                NO_ANCHOR.at(place, f"a band at the {prop.side.value} leg's {prop.at.value} has no anchor")
            )
        for kind, part, ground in _USED:
            if isinstance(prop, kind) and (part, ground) not in rests:
                found.append(UNUSED.at(place, f"no {part.value} is on the {ground.value}"))
    return tuple(found)
