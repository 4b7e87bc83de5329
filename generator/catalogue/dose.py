"""Says how much of an exercise: permitted ranges, dose steps, load and pace."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from generator.catalogue.base import Record
from generator.catalogue.terms import BandStrength


class DoseKind(Enum):
    """The ways in which the trade counts work."""

    REPETITIONS = "sets and repetitions"
    HOLDS = "holds"
    MINUTES = "minutes"
    HOURLY = "times an hour"
    STEPS = "steps walked"


@dataclass(frozen=True)
class Span:
    """A usual whole number and the range a clinician may choose from, both ends included."""

    usual: int
    least: int
    most: int

    def holds(self, number: int) -> bool:
        """Return whether `number` lies within the permitted range."""
        return self.least <= number <= self.most


@dataclass(frozen=True)
class Load:
    """An outside load: a band by strength in words, or a weight in kilograms; neither means body weight."""

    band: BandStrength | None = None
    kilograms: float | None = None


@dataclass(frozen=True)
class DoseStep:
    """One dose that a patient does, e.g. three sets of ten repetitions.

    sets: number of sets (repetitions, holds), else 1.
    count: repetitions in a set, holds in a set, minutes, times an hour, or steps walked.
    hold: seconds each hold lasts; None where the kind has none or the exercise states it.
    load: outside load.
    """

    kind: DoseKind
    sets: int
    count: int
    hold: int | None = None
    load: Load = Load()


@dataclass(frozen=True, kw_only=True)
class Tempo(Record):
    """Seconds that the lifting and the lowering of one repetition take."""

    lift: int = 2
    lower: int = 2


@dataclass(frozen=True, kw_only=True)
class Dose(Record):
    """What an exercise permits; a use in a phase chooses steps within it.

    sets, count: permitted numbers (`count` as in DoseStep).
    hold: seconds each repetition or hold is kept, or None.
    tempo, rest: pace; rest in seconds between sets.
    bands, kilograms: outside loads that may be added, rising; the most kilograms.
    """

    kind: DoseKind
    sets: Span
    count: Span
    hold: Span | None = None
    tempo: Tempo = Tempo()
    rest: int = 0
    bands: tuple[BandStrength, ...] = ()
    kilograms: float = 0.0
