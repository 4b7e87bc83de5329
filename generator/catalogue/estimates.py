"""Holds how hard a muscle works in an exercise: the pooled number, what it rests on, what was set aside."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from generator.catalogue.judgement import Judgement
from generator.catalogue.terms import Electrode, OutsideLoad, Part


class Basis(Enum):
    """What an estimate rests on."""

    MEASURED = "measured"
    PARTLY_RECALLED = "measured, partly recalled"
    JUDGED_LIKE = "judged like"
    JUDGED_BETWEEN = "judged between"
    JUDGED_NO_LOAD = "judged no load"
    NOT_MEASURED = "not measured"


class Aside(Enum):
    """Why a measurement does not enter an estimate; each value is the reason in English."""

    NO_STUDY = "the study could not be read"
    LEFT_OUT = "left out on purpose, to see what hangs on this study"
    SEGMENT = "a part of the muscle, not the whole"
    REFERENCE = "percent of a reference contraction, not of MVIC"
    MEDIAN = "a median, not a mean"
    NO_PEOPLE = "the number of people is not known"
    ONE_PERSON = "one person only"
    NO_SPREAD = "a standard deviation that is not above 0"
    NO_SD = "no standard deviation, and none of this muscle to borrow from"
    SAME_PEOPLE = "the same people are in the estimate already, with a higher value"
    OTHER_LOAD = "another condition of load than the values in the estimate"
    OTHER_ELECTRODE = "another kind of electrode than the values in the estimate"
    OTHER_PART = "another part of the repetition than the values in the estimate"


@dataclass(frozen=True)
class SetAside:
    """A measurement that did not enter an estimate.

    study, mean: what was measured. kinds: every reason. muscle: as measured, a segment by its own id.
    """

    study: str
    mean: float
    kinds: tuple[Aside, ...]
    muscle: str = ""

    @property
    def reason(self) -> str:
        """Return all reasons as a short English text."""
        return "; ".join(kind.value for kind in self.kinds)


class CaveatKind(Enum):
    """What a clinician must know about a number inside an estimate."""

    PART_UNKNOWN = "the part of the repetition is not known; counted as mean"
    HOLD = "the average over a hold; counted as mean"
    SD_IMPUTED = "standard deviation borrowed from the muscle's other measurements"
    SD_FROM_IQR = "standard deviation taken from the interquartile range"
    FROM_MEDIAN = "a median with its interquartile range; counted as mean"
    BORROWED_ELSEWHERE = "doubt between studies borrowed from pools of other muscles"
    NO_BETWEEN = "doubt between studies is not known; the interval is too narrow"


@dataclass(frozen=True)
class Caveat:
    """A caveat and the study it concerns; empty where it concerns the whole estimate."""

    kind: CaveatKind
    study: str = ""


@dataclass(frozen=True)
class Condition:
    """What measurements must have in common to be pooled: load, electrode, part (mean or peak).

    added: load added from outside beyond what the exercise itself asks for.
    """

    load: str
    electrode: Electrode
    part: Part
    added: OutsideLoad | None = None


@dataclass(frozen=True)
class Estimate:
    """Activity of one muscle in one exercise or variation; every number in %MVIC or its square.

    mean: random-effects mean, or what a judgement comes to. k: studies pooled, n: people in them (both 0 for
    a judgement), studies: their ids. se: standard error of the mean. low, high: 95 % interval, as computed: a
    lower limit below 0 means "down to nothing". prediction: 95 % interval for a further study, k ≥ 3. q:
    Cochran's Q. i_squared: 0 to 1. tau_squared: variance between the studies pooled. borrowed: variance
    between studies added to the interval for k < 3. condition: what the pooled values have in common.
    """

    muscle: str
    mean: float
    k: int
    n: int
    basis: Basis
    studies: tuple[str, ...]
    set_aside: tuple[SetAside, ...] = ()
    se: float | None = None
    low: float | None = None
    high: float | None = None
    prediction: tuple[float, float] | None = None
    q: float | None = None
    i_squared: float | None = None
    tau_squared: float | None = None
    borrowed: float | None = None
    condition: Condition | None = None
    caveats: tuple[Caveat, ...] = ()
    judgement: Judgement | None = None


@dataclass(frozen=True)
class Comparison:
    """How a place compares with the one before it, for the muscle that both are ordered by.

    before: the exercise before. muscle: id. studies: those that measured both in the same people; harder,
    easier: those of them that found this one harder, or easier. Where there are any, they outrank the chance.
    chance: probability, 0 to 1, that this one is harder, from the pooled numbers and their doubt; None where
    one is a judgement. people: how many a next study of both in the same people must have to settle it; None
    where it is settled, cannot be reckoned, or would take more than anyone can measure. by_activity: whether
    activity alone puts the two in this order, and neither week nor prerequisite.
    """

    before: str
    muscle: str
    studies: tuple[str, ...] = ()
    harder: tuple[str, ...] = ()
    easier: tuple[str, ...] = ()
    chance: float | None = None
    people: int | None = None
    by_activity: bool = True

    @property
    def contradicts(self) -> bool:
        """Return whether the studies of both in the same people speak against an order by activity."""
        return self.by_activity and len(self.easier) > len(self.harder)


@dataclass(frozen=True)
class VariationEffect:
    """What a variation does to one muscle.

    variation: ``exercise/variation``. estimate: of the variation; None: not measured. points: %MVIC more (or
    less) than the exercise itself; None where the two cannot be compared. within: studies that measured both
    in the same people, from which the points come; empty: from two pools that are alike.
    """

    variation: str
    muscle: str
    estimate: Estimate | None
    points: float | None
    within: tuple[str, ...] = ()


@dataclass(frozen=True)
class Hanging:
    """A place in a phase that would stand otherwise to the band without one study.

    mean, above_by: without the study, in %MVIC; mean None: nothing would be left.
    """

    study: str
    exercise: str
    phase: int
    mean: float | None
    above_by: float
