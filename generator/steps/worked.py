"""Works out, once for all languages, everything that pages and sheets show beside the editor's words."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field

from generator.catalogue.arranged import (
    AnchorHeights,
    Day,
    Orders,
    RestrictionRow,
    SessionPlace,
    StepBack,
    Thing,
)
from generator.catalogue.choices import PhaseChoices
from generator.catalogue.editions import NO_EDITIONS, EditionLedger
from generator.catalogue.estimates import Estimate, Hanging, SetAside, VariationEffect
from generator.catalogue.moments import Contradiction, Moment
from generator.catalogue.values import Catalogue
from generator.figures.pictures import Gallery
from generator.progression import (
    activity_of,
    anchor_table,
    contradictions,
    days,
    forms_of,
    gravity_moments,
    hanging,
    restriction_table,
    steps_back,
    things_of_phase,
    variation_effects,
    withheld_variations,
)
from generator.progression.one_patient import phase_choices
from generator.progression.session import whole_session

PhaseKey = tuple[str, int]
StepKey = tuple[str, int]
FormKey = tuple[str, str]


@dataclass(frozen=True)
class Worked:
    """Facts by programme id, or by programme id and number of the phase.

    orders: order of introduction. withheld: variations (``exercise/variation``) that a phase forbids.
    days: what the fullest day holds, in session order. turns: all of a phase in session
    order. tables: what is allowed when. back: the step
    back from each dose step (exercise, position from 0). things: what must be at hand. anchors: a band's
    heights. estimates, set_aside: what is known of each form (``exercise`` or ``exercise/variation``) and
    whole muscle. effects: by exercise, what its variations change. hanging: by programme, what hangs on
    one study. moments: by programme and form, what gravity asks, as a model says. contradictions: where
    it gainsays the order, which it never changes. choices: what
    can be narrowed for one patient. gallery: the pictures, empty where nothing was drawn.
    ledger: editions recorded before. recorded: the day to print on a booklet, by its code.
    """

    orders: Orders
    withheld: Mapping[PhaseKey, frozenset[str]] = field(default_factory=dict)
    days: Mapping[PhaseKey, Day] = field(default_factory=dict)
    turns: Mapping[PhaseKey, tuple[SessionPlace, ...]] = field(default_factory=dict)
    tables: Mapping[str, tuple[RestrictionRow, ...]] = field(default_factory=dict)
    back: Mapping[PhaseKey, Mapping[StepKey, StepBack]] = field(default_factory=dict)
    things: Mapping[PhaseKey, tuple[Thing, ...]] = field(default_factory=dict)
    anchors: tuple[AnchorHeights, ...] = ()
    estimates: Mapping[FormKey, Estimate] = field(default_factory=dict)
    set_aside: Mapping[FormKey, tuple[SetAside, ...]] = field(default_factory=dict)
    effects: Mapping[str, tuple[VariationEffect, ...]] = field(default_factory=dict)
    hanging: Mapping[str, tuple[Hanging, ...]] = field(default_factory=dict)
    moments: Mapping[str, Mapping[str, Moment]] = field(default_factory=dict)
    contradictions: Mapping[str, tuple[Contradiction, ...]] = field(default_factory=dict)
    choices: Mapping[PhaseKey, PhaseChoices] = field(default_factory=dict)
    gallery: Gallery = field(default_factory=Gallery)
    ledger: EditionLedger = NO_EDITIONS
    recorded: Mapping[str, datetime.date] = field(default_factory=dict)


def work_out(catalogue: Catalogue, orders: Orders) -> Worked:
    """Return the facts of a catalogue without errors, whose orders are known."""
    withheld: dict[PhaseKey, frozenset[str]] = {}
    back: dict[PhaseKey, Mapping[StepKey, StepBack]] = {}
    things: dict[PhaseKey, tuple[Thing, ...]] = {}
    turns: dict[PhaseKey, tuple[SessionPlace, ...]] = {}
    activity = activity_of(catalogue)
    for programme in catalogue.programmes.values():
        forbidden = withheld_variations(catalogue, programme)
        for phase in programme.phases:
            key = (programme.id, phase.number)
            withheld[key] = forbidden[phase.number]
            turns[key] = whole_session(catalogue, orders[programme.id], phase).places
            back[key] = steps_back(catalogue, programme, phase, withheld[key])
            things[key] = things_of_phase(catalogue, phase, withheld[key])
    moments = {id_: gravity_moments(catalogue, one) for id_, one in catalogue.programmes.items()}
    return Worked(
        orders=orders,
        withheld=withheld,
        days=days(catalogue, orders),
        turns=turns,
        tables={id_: restriction_table(programme) for id_, programme in catalogue.programmes.items()},
        back=back,
        things=things,
        anchors=anchor_table(),
        estimates=activity.estimates,
        set_aside=activity.set_aside,
        effects=variation_effects(catalogue, activity),
        hanging={id_: hanging(catalogue, one) for id_, one in catalogue.programmes.items()},
        moments=moments,
        choices={
            (one.id, phase.number): phase_choices(catalogue, one, phase)
            for one in catalogue.programmes.values()
            for phase in one.phases
        },
        contradictions={
            id_: tuple(contradictions(orders[id_], moments[id_], forms_of(catalogue.programmes[id_])))
            for id_ in orders
        },
    )
