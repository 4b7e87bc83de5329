"""Holds what gravity asks of a repaired muscle, as a model says: for clinicians, beside measured numbers."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from generator.catalogue.terms import Joint, Movement

# The person of the model; moments grow in step with mass and with stature.
MASS_KG = 70.0
STATURE_M = 1.70
# Masses and centres of the segments: Dempster, as in Winter's table 4.1; lengths: his figure 4.1.
SOURCE = (
    "Winter DA. Biomechanics and Motor Control of Human Movement. 4th ed. Hoboken: Wiley; 2009. "
    "Figure 4.1, table 4.1."
)


class NoModel(Enum):
    """Why there is no model of what gravity asks."""

    LOADED = "a band, a weight or a pedal adds load"
    HELPED = "the leg is helped"
    RESTS = "the leg is not free in any pose"
    OTHER_JOINT = "only the hip and the knee are modelled"
    NO_POSES = "no poses are typed"


@dataclass(frozen=True)
class Moment:
    """The largest moment that gravity sets against a muscle's action in one exercise or variation.

    form: ``exercise`` or ``exercise/variation``. newton_metres: for a person of 70 kg and 1.70 m; at most 0
    where gravity helps or does not act that way. None: no model, for the reason `without`.
    """

    form: str
    joint: Joint
    movement: Movement
    newton_metres: float | None
    without: NoModel | None = None


@dataclass(frozen=True)
class Contradiction:
    """Two neighbours in the order whose moments point the other way: the easier one carries far more.

    It changes no order: a measured number counts before a modelled one.
    """

    phase: int
    easier: str
    harder: str
    easier_moment: float
    harder_moment: float
