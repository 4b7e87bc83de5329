"""Holds what was worked out from the catalogue: estimates, places in the order, reasons, week windows.

`progression` fills these values; pages, booklets and the command line only show them.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum

from generator.catalogue.dose import DoseStep
from generator.catalogue.estimates import Aside as Aside
from generator.catalogue.estimates import Basis as Basis
from generator.catalogue.estimates import Caveat as Caveat
from generator.catalogue.estimates import CaveatKind as CaveatKind
from generator.catalogue.estimates import Comparison as Comparison
from generator.catalogue.estimates import Condition as Condition
from generator.catalogue.estimates import Estimate as Estimate
from generator.catalogue.estimates import Hanging as Hanging
from generator.catalogue.estimates import SetAside as SetAside
from generator.catalogue.estimates import VariationEffect as VariationEffect
from generator.catalogue.programme import Acceptance
from generator.catalogue.terms import Landmark, Surface


class ReasonKind(Enum):
    """Why an exercise has its place."""

    ROLE = "role"
    DEMAND = "demand"
    ACTIVITY = "activity"
    PREREQUISITE = "prerequisite"
    NOT_MEASURED = "not measured"
    ENTRY = "entry"
    TIE = "tie"
    JUDGED = "judged"
    ABOUT_AS_HARD = "about as hard"
    SAME_PEOPLE = "same people"
    CHANCE = "chance"
    NEXT_STUDY = "next study"
    LATE = "late in the phase"
    ACCEPTED = "accepted"
    UPPER_LIMIT = "upper limit"


@dataclass(frozen=True)
class Reason:
    """One reason for a place; `other` is the exercise it refers to.

    number: %MVIC (activity, the second muscle of a tie, what is accepted, the upper limit), points above the
    band (late), week (entry), studies that found this one harder (same people), probability from 0 to 1
    (chance), people needed (next study). of: how many studies measured both. muscle: id of the muscle meant.
    """

    kind: ReasonKind
    other: str | None = None
    number: float | None = None
    of: int | None = None
    muscle: str | None = None


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
    estimate: of the programme's most active muscle in the form used; None where not measured.
    above_by: %MVIC points above the band, 0 otherwise; late: above by no more than the programme's margin.
    others: estimates of the programme's other muscles, the more active first. not_measured: its muscles
    without a value and without a judgement. set_aside: what was set aside for any of its muscles.
    comparison: with the place before, where activity orders both. accepted: who allows it above the band.
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
    late: bool = False
    others: tuple[Estimate, ...] = ()
    not_measured: tuple[str, ...] = ()
    set_aside: tuple[SetAside, ...] = ()
    comparison: Comparison | None = None
    accepted: Acceptance | None = None


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
    """The order of introduction of one programme, phase by phase, with the windows of its phases.

    withheld: by phase, the variations (``exercise/variation``) that demand, restrictions or band forbid.
    """

    programme: str
    windows: tuple[Window, ...]
    places: tuple[Placed, ...]
    withheld: Mapping[int, frozenset[str]] = field(default_factory=dict)

    def of_phase(self, number: int) -> tuple[Placed, ...]:
        """Return the places of one phase in order."""
        return tuple(placed for placed in self.places if placed.phase == number)


Orders = Mapping[str, Order]


class Hold(Enum):
    """How a restriction stands to a phase."""

    FORBIDDEN = "forbidden"
    LIMITED = "limited"
    LIFTED = "lifted"


@dataclass(frozen=True)
class RestrictionCell:
    """A restriction in one phase.

    hold: forbidden wholly, limited (allowed up to an angle or an amount), or lifted from the first day on.
    until, delayed_until: the week in which it can end on either track (the phase's own week where it has
    ended by then); None: not within this phase.
    """

    phase: int
    hold: Hold
    until: int | None = None
    delayed_until: int | None = None


@dataclass(frozen=True)
class RestrictionRow:
    """One row of "what is allowed when".

    kind: as typed in the programme. end_day, delayed_end_day: the first day on which it can have ended, from
    the operation on (day 0). by_release: it ends on no day, but when the named person says so.
    """

    id: str
    kind: str
    end_day: int
    delayed_end_day: int
    by_release: bool
    cells: tuple[RestrictionCell, ...]


class SessionReasonKind(Enum):
    """Why an exercise has its place in a session."""

    WARM_UP = "warm-up"
    FRESH_LEG = "free balance work before the stance leg is tired"
    SAME_POSITION = "no change of position"
    INTRODUCED = "order of introduction"


@dataclass(frozen=True)
class SessionReason:
    """One reason for a place in a session; `other` is the exercise before it that the reason refers to."""

    kind: SessionReasonKind
    other: str | None = None


@dataclass(frozen=True)
class SessionPlace:
    """An exercise in a session: where it is done, and how long its longest dose step takes, in seconds."""

    exercise: str
    place: int
    surface: Surface
    seconds: int
    reasons: tuple[SessionReason, ...]


@dataclass(frozen=True)
class Session:
    """What is done at one time of the day, in order.

    changes: changes of position. seconds: work, rest, set-up and changes of position. minutes: the same,
    rounded up to 5.
    """

    places: tuple[SessionPlace, ...]
    changes: int
    seconds: int
    minutes: int


@dataclass(frozen=True)
class Day:
    """The fullest day of a phase: everything is due, each exercise with its longest dose step.

    sessions: the first holds every exercise, later ones those that are done more often. in_passing: what is
    done a few times each hour, beside the sessions. minutes: of all sessions, rounded up to 5.
    """

    phase: int
    sessions: tuple[Session, ...]
    in_passing: tuple[str, ...]
    minutes: int


@dataclass(frozen=True)
class StepBack:
    """What to do instead after it got worse, all of it within the restrictions of the phase.

    exercise, step: today's exercise and the position of its dose step, from 0.
    previous: the dose step to go back to; None where today's is the easiest that is allowed.
    easier: easier forms, as ``exercise/variation``, or the exercise itself where a harder form is used.
    pause: exercises to leave out for the time being.
    """

    exercise: str
    step: int
    previous: DoseStep | None
    easier: tuple[str, ...]
    pause: tuple[str, ...]


@dataclass(frozen=True)
class Thing:
    """A thing that a phase needs: id, for which exercises, and whether only a variation on offer needs it."""

    id: str
    exercises: tuple[str, ...]
    optional: bool


@dataclass(frozen=True)
class AnchorHeights:
    """Heights in cm above the floor of the landmarks of a person of a body height in cm."""

    stature: int
    heights: Mapping[Landmark, float]


@dataclass(frozen=True)
class NotBefore:
    """The first day on which a phase, or a use that enters later, may begin; never that it does begin.

    exercise: None for the phase itself. week, delayed_week: full weeks after the operation.
    """

    phase: int
    exercise: str | None
    week: int
    delayed_week: int
    usual: datetime.date
    delayed: datetime.date
