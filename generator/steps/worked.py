"""Works out, once for all languages, everything that pages and sheets show beside the editor's words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from generator.catalogue.arranged import AnchorHeights, Day, Orders, RestrictionRow, StepBack, Thing
from generator.catalogue.values import Catalogue
from generator.progression import (
    anchor_table,
    days,
    restriction_table,
    steps_back,
    things_of_phase,
    withheld_variations,
)

PhaseKey = tuple[str, int]
StepKey = tuple[str, int]


@dataclass(frozen=True)
class Worked:
    """Facts by programme id, or by programme id and number of the phase.

    orders: order of introduction. withheld: variations (``exercise/variation``) that a phase forbids.
    days: what the fullest day holds, in session order. tables: what is allowed when. back: the step
    back from each dose step (exercise, position from 0). things: what must be at hand. anchors: a band's
    heights.
    """

    orders: Orders
    withheld: Mapping[PhaseKey, frozenset[str]] = field(default_factory=dict)
    days: Mapping[PhaseKey, Day] = field(default_factory=dict)
    tables: Mapping[str, tuple[RestrictionRow, ...]] = field(default_factory=dict)
    back: Mapping[PhaseKey, Mapping[StepKey, StepBack]] = field(default_factory=dict)
    things: Mapping[PhaseKey, tuple[Thing, ...]] = field(default_factory=dict)
    anchors: tuple[AnchorHeights, ...] = ()


def work_out(catalogue: Catalogue, orders: Orders) -> Worked:
    """Return the facts of a catalogue without errors, whose orders are known."""
    withheld: dict[PhaseKey, frozenset[str]] = {}
    back: dict[PhaseKey, Mapping[StepKey, StepBack]] = {}
    things: dict[PhaseKey, tuple[Thing, ...]] = {}
    for programme in catalogue.programmes.values():
        forbidden = withheld_variations(catalogue, programme)
        for phase in programme.phases:
            key = (programme.id, phase.number)
            withheld[key] = forbidden[phase.number]
            back[key] = steps_back(catalogue, programme, phase, withheld[key])
            things[key] = things_of_phase(catalogue, phase, withheld[key])
    return Worked(
        orders=orders,
        withheld=withheld,
        days=days(catalogue, orders),
        tables={id_: restriction_table(programme) for id_, programme in catalogue.programmes.items()},
        back=back,
        things=things,
        anchors=anchor_table(),
    )
