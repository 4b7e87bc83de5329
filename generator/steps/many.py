"""Measures how long an order of very many exercises takes, on copies of the catalogue's own exercises."""

from __future__ import annotations

import time
from dataclasses import replace
from itertools import cycle, islice

from generator.catalogue.base import read_only
from generator.catalogue.values import Catalogue
from generator.progression import arrange


def seconds_to_order(catalogue: Catalogue, count: int = 10_000, runs: int = 3) -> float:
    """Return the seconds of processor time that ordering `count` exercises takes, the best of `runs`.

    The copies keep the measurements and roles of the exercises used in the first programme, and each but the
    first requires the one before it in its group of ten, so that prerequisites have to be kept as well.
    """
    many = of_many(catalogue, count)
    return min(_seconds(many) for _ in range(runs))


def _seconds(many: Catalogue) -> float:
    started = time.process_time()
    arrange(many)
    return time.process_time() - started


def of_many(catalogue: Catalogue, count: int) -> Catalogue:
    """Return a catalogue of `count` exercises that one phase of one programme uses."""
    programme = next(iter(catalogue.programmes.values()))
    uses = [use for phase in programme.phases for use in phase.uses if use.use in catalogue.exercises]
    exercises, listed = {}, []
    for place, use in enumerate(islice(cycle(uses), count)):
        id_ = f"exercise-{place:06}"
        before = (f"exercise-{place - 1:06}",) if place % 10 else ()
        own = replace(
            catalogue.exercises[use.use],
            id=id_,
            requires=before,
            requires_one_of=(),
            variations={},
        )
        exercises[id_] = own
        listed.append(replace(use, use=id_, variation=None, week=None, delayed_week=None, waives=()))
    phase = replace(programme.phases[0], uses=tuple(listed))
    one = replace(programme, phases=(phase,), restrictions=())
    return replace(catalogue, exercises=read_only(exercises), programmes=read_only({programme.id: one}))
