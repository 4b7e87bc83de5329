"""Fills the reporting checklists of every programme in each language, for some texts are harder to read."""

from __future__ import annotations

from collections.abc import Mapping

from generator.catalogue.programme import Programme
from generator.catalogue.reporting import ItemAnswer, Reading
from generator.progression.reporting import report_items
from generator.steps.languages import Spoken
from generator.wording.readability import levels, measure_of


def reports_of(spoken: Spoken) -> Mapping[str, tuple[ItemAnswer, ...]]:
    """Return by programme what it answers to each item of both lists."""
    return {
        id_: report_items(spoken.catalogue, programme, _reading(spoken, programme))
        for id_, programme in spoken.catalogue.programmes.items()
    }


def _reading(spoken: Spoken, programme: Programme) -> Reading | None:
    """Return how many texts of a programme are too hard; None where the language cannot be measured."""
    measure = measure_of(spoken.voice.code)
    if measure is None:
        return None
    own = {("programme", programme.id)}
    for phase in programme.phases:
        own.add(("phase", f"{programme.id}/{phase.number}"))
        own |= {("exercise", use.use) for use in phase.uses}
        own |= {("daily-life", item) for item in phase.daily_life}
    found = [one for one in levels(spoken.catalogue, spoken.voice.code) if (one.kind, one.id) in own]
    return Reading(len(found), sum(1 for one in found if measure.too_hard(one.value)))
