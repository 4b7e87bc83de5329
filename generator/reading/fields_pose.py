"""Lists the keys of poses and pictures, which exercises, variations and daily-life items share."""

from __future__ import annotations

from typing import Any

from generator.catalogue import terms
from generator.catalogue.pose import Detail, FigureSpec, Limit, PoseSpec, Side, Thing, ThingSpec, View, Where
from generator.reading import posing
from generator.reading.kinds import Choice, Flag, Id, Measure, Parsed
from generator.reading.posing import Angles, InOrder, Things
from generator.reading.table import Field, Group, ListOf, MapOf, Table

_REST = Parsed(posing.rest, posing.REST_PATTERN, posing.REST_WORDS)
_HALF = Parsed(
    lambda typed: Side(typed) if typed in ("operated", "other") else None,
    "operated|other",
    "operated or other",
)
_LIMB = Parsed(
    posing.limb, "(operated|other) (leg|arm)|buttocks", "a limb, such as operated leg, or buttocks"
)
_ARROW = Parsed(
    posing.arrow,
    posing.ARROW_PATTERN,
    "what the arrow follows: none, pelvis, chest, head, or a side and foot, toes, knee, hip or hand",
)
_PRESS = Parsed(
    posing.press,
    posing.PRESS_PATTERN,
    "what presses which way (down, outwards, inwards), such as operated knee down",
)
_CM = Measure({"cm": 1}, -200, 200, "15 cm")
_HEIGHT = Field("height", Measure({"cm": 1}, 1, 130, "15 cm"), "Height, person 170 cm tall.", required=False)
_WHERE = Field("where", Choice(Where), "On which side of the person.", required=False)
_ITS_SIDE = Field("side", _HALF, "Of which side: operated or other.")


def _pose(**values: Any) -> PoseSpec:
    """Return a pose with the angles of all sides in one list."""
    angles = [angle for key in ("operated", "other", "middle") for angle in values.pop(key, ())]
    return PoseSpec(angles=tuple(angles), **values)


def _figure(**values: Any) -> FigureSpec:
    """Return a picture's description; ``arrow: none`` is a choice of its own."""
    arrow = values.pop("arrow", None)
    none = arrow == posing.NO_ARROW
    return FigureSpec(things=values.pop("with", ()), arrow=None if none else arrow, no_arrow=none, **values)


def _anchor(**values: Any) -> tuple[float, ...]:
    return tuple(values.get(key, 0.0) for key in ("forward", "up", "out"))


ANCHOR = Table(
    "an anchor",
    _anchor,
    "Where a band is fixed, from the middle of the feet.",
    (
        Field("forward", _CM, "In front of the person (behind: less than 0).", required=False),
        Field("up", _CM, "Above the ground.", required=False),
        Field("out", _CM, "Towards the operated side (the other side: less than 0).", required=False),
    ),
)
POSE = Table(
    "a pose",
    _pose,
    "How the person stands or lies at one moment. What it does not state is usual in the posture.",
    (
        Field("posture", Choice(terms.Posture), "Where it is not the exercise's own.", required=False),
        Field("like", Id(), "Another pose here that holds where this one is silent.", required=False),
        Field("operated", Angles(Side.OPERATED), "Joints of the operated side.", required=False),
        Field("other", Angles(Side.OTHER), "Joints of the other side.", required=False),
        Field("middle", Angles(Side.MIDDLE), "Lower back, upper back, neck.", required=False),
        Field("rests-on", ListOf(_REST, most=20), "What is supported, where it differs.", required=False),
        Field("slides", ListOf(_REST, most=8), "Supported parts that may travel.", required=False),
        Field("on-side", _HALF, "The side lain on, where the legs do not say.", required=False),
    ),
)
_THINGS: dict[Thing, tuple[Field, ...]] = {
    Thing.FLOOR: (),
    Thing.MAT: (),
    Thing.BED: (
        _HEIGHT,
        Field("edge", Flag(), "Whether one sits across, on its edge, in the last pose.", required=False),
    ),
    Thing.CHAIR: (
        _HEIGHT,
        Field("back", Flag(), "Whether it has a back.", required=False),
        Field("arms", Flag(), "Whether it has armrests.", required=False),
    ),
    Thing.BIKE: (_HEIGHT,),
    Thing.CAR_SEAT: (
        _HEIGHT,
        Field("edge", Flag(), "Whether one sits across, on its edge, in the first pose.", required=False),
    ),
    Thing.TOILET: (_HEIGHT,),
    Thing.SCALES: (),
    Thing.WORKTOP: (_WHERE, _HEIGHT),
    Thing.WALL: (_WHERE,),
    Thing.STEP: (_HEIGHT, Field("flight", Flag(), "Whether more steps lead on up.", required=False)),
    Thing.BANISTER: (
        _WHERE,
        Field("rising", Flag(), "Whether it rises with a flight of stairs.", required=False),
        _HEIGHT,
    ),
    Thing.BAND: (
        Field("at", Choice(Limit), "Where it lies on the legs."),
        Field("side", _HALF, "The pulled leg, where it is no loop round both.", required=False),
        Field("anchor", Group(ANCHOR), "Where it is fixed, where it is no loop.", required=False),
    ),
    Thing.PILLOW: (
        Field("between", Choice(Limit), "Between the legs, not under the head.", required=False),
        Field("under", Choice(Limit), "Under both legs, not under the head.", required=False),
        _HEIGHT,
    ),
    Thing.TOWEL_ROLL: (
        _ITS_SIDE,
        Field("at", Choice(Limit), "Under what; the knees where nothing is said.", required=False),
        _HEIGHT,
    ),
    Thing.STICK: (_ITS_SIDE, _HEIGHT),
    Thing.CRUTCHES: (_HEIGHT,),
    Thing.WALKING_FRAME: (_HEIGHT,),
    Thing.STRAP: (_ITS_SIDE,),
    Thing.REACHER: (_ITS_SIDE,),
    Thing.ANKLE_WEIGHT: (_ITS_SIDE,),
    Thing.HELPER_HANDS: (_ITS_SIDE,),
    Thing.COLD_PACK: (_ITS_SIDE,),
    Thing.STEERING_WHEEL: (),
}


def _thing(**values: Any) -> ThingSpec:
    """Return a thing; ``at`` and ``between`` are the same statement."""
    for key in ("at", "between"):
        if key in values:
            values["on_legs"] = values.pop(key)
    return ThingSpec(**values)


THINGS = Things({thing: Table(f"a {thing.value}", _thing, "", keys) for thing, keys in _THINGS.items()})
FIGURE = Table(
    "a picture",
    _figure,
    "What the picture shows beside the poses.",
    (
        Field("with", ListOf(THINGS, most=12), "Things around the person.", required=False),
        Field("working", ListOf(_LIMB, most=4), "Limbs that stand out.", required=False),
        Field("view", Choice(View), "From where it is seen; else the view that shows most.", required=False),
        Field("arrow", _ARROW, "What the arrow follows; else what travels furthest.", required=False),
        Field("press", ListOf(_PRESS, most=4), "What presses while nothing moves.", required=False),
        Field("detail", Choice(Detail), "What is shown besides, to make it plain.", required=False),
    ),
)
POSES = Field(
    "poses",
    InOrder(MapOf(Group(POSE)), most=6),
    "Key poses in order, such as start and finish; pictures, limits and angles in texts come from them.",
    required=False,
    example={
        "start": {"posture": "standing"},
        "finish": {"like": "start", "operated": {"hip": {"flexion": "30"}}},
    },
)
PICTURE = Field(
    "figure",
    Group(FIGURE),
    "What the picture shows beside the poses.",
    required=False,
    example={"with": ["floor"], "working": ["operated leg"]},
)
FIELDS = (POSES, PICTURE)
