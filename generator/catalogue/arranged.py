"""Holds what was worked out from the catalogue: estimates, places in the order, reasons, week windows.

`progression` fills these values; pages, booklets and the command line only show them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum


class Basis(Enum):
    """What an estimate rests on."""

    MEASURED = "measured"
    PARTLY_RECALLED = "measured, partly recalled"
    NOT_MEASURED = "not measured"


@dataclass(frozen=True)
class SetAside:
    """A measurement that did not enter an estimate: its study, value, and why (a short English reason)."""

    study: str
    mean: float
    reason: str


@dataclass(frozen=True)
class Estimate:
    """Activity of one muscle in one exercise.

    mean: in %MVIC. k: studies pooled. n: people in them. studies: their ids.
    """

    muscle: str
    mean: float
    k: int
    n: int
    basis: Basis
    studies: tuple[str, ...]
    set_aside: tuple[SetAside, ...] = ()


class ReasonKind(Enum):
    """Why an exercise has its place."""

    ROLE = "role"
    DEMAND = "demand"
    ACTIVITY = "activity"
    PREREQUISITE = "prerequisite"
    NOT_MEASURED = "not measured"
    ENTRY = "entry"
    TIE = "tie"


@dataclass(frozen=True)
class Reason:
    """One reason for a place; `other` is the exercise it refers to, `number` its %MVIC or week."""

    kind: ReasonKind
    other: str | None = None
    number: float | None = None


class BandPosition(Enum):
    """Where an estimate stands to its phase's band."""

    BELOW = "below"
    INSIDE = "inside"
    ABOVE = "above"
    UNKNOWN = "unknown"


@dataclass(frozen=True)
class Placed:
    """A use in its computed place.

    phase: phase number. place: in the phase, from 1. overall: in the programme, from 1 (first appearance).
    level: same number for neighbours that are about as hard; None where activity does not order.
    estimate: of the programme's most active muscle; None where not measured or not ordered by activity.
    above_by: %MVIC points above the band, 0 otherwise.
    """

    exercise: str
    phase: int
    place: int
    overall: int
    level: int | None
    estimate: Estimate | None
    band_position: BandPosition
    above_by: float
    reasons: tuple[Reason, ...]


@dataclass(frozen=True)
class Window:
    """When a phase runs, in full weeks after the operation; an end of None is open."""

    phase: int
    start: int
    end: int | None
    delayed_start: int
    delayed_end: int | None


@dataclass(frozen=True)
class Order:
    """The order of introduction of one programme, phase by phase, with the windows of its phases."""

    programme: str
    windows: tuple[Window, ...]
    places: tuple[Placed, ...]

    def of_phase(self, number: int) -> tuple[Placed, ...]:
        """Return the places of one phase in order."""
        return tuple(placed for placed in self.places if placed.phase == number)


Orders = Mapping[str, Order]
