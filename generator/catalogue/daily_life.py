"""Describes the rest of the day: sleeping, stairs, the car, held to the same restrictions as exercises."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.base import Record, Text
from generator.catalogue.exercise import Caution, HelperRole, LegWork
from generator.catalogue.pose import FigureSpec, PoseSpec
from generator.catalogue.terms import Demand, Helper, Position, Posture, Support


@dataclass(frozen=True, kw_only=True)
class DailyLife(Record):
    """One thing of daily life and how to do it safely.

    id: the file's name. steps: what to do, one action each; avoid: what not to do.
    positions: positions that a surgeon may forbid, beside lying on a side, which the legs state.
    poses, figure, finish: as in an exercise.
    """

    id: str
    name: Text
    purpose: Text
    demand: Demand
    posture: Posture
    helper: Helper
    helper_role: HelperRole | None = None
    support: Support
    equipment: tuple[str, ...] = ()
    strains: tuple[str, ...] = ()
    positions: tuple[Position, ...] = ()
    operated_leg: LegWork
    other_leg: LegWork
    steps: tuple[Text, ...]
    avoid: tuple[Text, ...]
    cautions: tuple[Caution, ...] = ()
    finish: Text | None = None
    poses: tuple[PoseSpec, ...] = ()
    figure: FigureSpec | None = None
