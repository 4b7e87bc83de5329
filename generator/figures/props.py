"""Names the things around a person, each a frozen value, and says where they stand in a movement."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from generator.body.pose import Side


class Limit(Enum):
    """Between which parts of the legs a thing lies, or to which it is fixed."""

    THIGHS = "thighs"
    KNEES = "knees"
    ANKLES = "ankles"
    FEET = "feet"


class Where(Enum):
    """On which side of the person a thing stands."""

    FRONT = "front"
    BEHIND = "behind"
    OPERATED = "operated side"
    OTHER = "other side"


@dataclass(frozen=True)
class Floor:
    """The ground one stands on."""


@dataclass(frozen=True)
class Mat:
    """A mat on the floor under a lying or kneeling person."""


@dataclass(frozen=True)
class Bed:
    """A bed under a lying person.

    edge: it has a seat's height, and in the last pose one sits across it, on its edge.
    """

    edge: bool = False


@dataclass(frozen=True)
class Chair:
    """A firm chair under the pelvis; its height is the setting's seat. `arms`: it has armrests."""

    back: bool = True
    arms: bool = False


@dataclass(frozen=True)
class Toilet:
    """A toilet under the pelvis, with a raised seat at the setting's height and rails for the hands."""


@dataclass(frozen=True)
class Scales:
    """Two bathroom scales, one under each foot."""


@dataclass(frozen=True)
class CarSeat:
    """A car's seat under the pelvis, its back tilted behind the person's.

    edge: in the first pose one sits across it, on its edge, and the back is beside the person.
    """

    edge: bool = False


@dataclass(frozen=True)
class Bike:
    """An exercise bike: saddle under the pelvis, at the height of a seat, pedals under both feet."""


@dataclass(frozen=True)
class Worktop:
    """A worktop within reach of the hands; its height is the setting's."""

    where: Where = Where.FRONT


@dataclass(frozen=True)
class Wall:
    """A wall behind, before or beside the person."""

    where: Where = Where.BEHIND


@dataclass(frozen=True)
class Step:
    """A step under whatever rests on it; its height is the setting's. `flight`: more steps lead on up."""

    flight: bool = False


@dataclass(frozen=True)
class Banister:
    """A banister under the hands that hold it; `rising`: it climbs with a flight of stairs."""

    where: Where = Where.OTHER
    rising: bool = False


@dataclass(frozen=True)
class Band:
    """An elastic band: a loop round both legs, or from one leg to a fixed anchor.

    at: where on the legs. side: the pulled leg where the band runs to an anchor; MIDDLE for a loop.
    anchor: where it is fixed, from the middle of the feet: forward, up, to the operated side, statures.
    """

    at: Limit
    side: Side = Side.MIDDLE
    anchor: tuple[float, float, float] | None = None


@dataclass(frozen=True)
class Pillow:
    """A pillow under the head, between the legs, or under both legs."""

    between: Limit | None = None
    under: Limit | None = None


@dataclass(frozen=True)
class TowelRoll:
    """A rolled towel under a knee or ankle."""

    under: Limit
    side: Side


@dataclass(frozen=True)
class Stick:
    """A walking stick in one hand."""

    side: Side


@dataclass(frozen=True)
class Crutches:
    """Two elbow crutches."""


@dataclass(frozen=True)
class WalkingFrame:
    """A walking frame held with both hands."""


@dataclass(frozen=True)
class Strap:
    """A strap round the sole of one foot, held with both hands."""

    side: Side


@dataclass(frozen=True)
class Reacher:
    """A long reaching tool in the hand of one side, its end at that foot."""

    side: Side


@dataclass(frozen=True)
class AnkleWeight:
    """A weight cuff above one ankle."""

    side: Side


@dataclass(frozen=True)
class ColdPack:
    """A wrapped cold pack that lies on the knee of one side."""

    side: Side


@dataclass(frozen=True)
class SteeringWheel:
    """A car's wheel in both hands. No pedal: which foot brakes does not depend on the operated side."""


@dataclass(frozen=True)
class HelperHands:
    """A helper's two hands that carry one leg, under the knee and under the heel, until its foot stands."""

    side: Side


Prop = (
    Floor
    | Mat
    | Bed
    | Chair
    | Bike
    | CarSeat
    | Toilet
    | Scales
    | Worktop
    | Wall
    | Step
    | Banister
    | Band
    | Pillow
    | TowelRoll
    | Stick
    | Crutches
    | WalkingFrame
    | Strap
    | Reacher
    | ColdPack
    | SteeringWheel
    | AnkleWeight
    | HelperHands
)
