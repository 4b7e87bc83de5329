"""Runs the trials that anyone can repeat, and prints what came of them: faults first, then the counts."""

from __future__ import annotations

import tempfile
from collections.abc import Mapping
from itertools import pairwise
from pathlib import Path

import click

from generator.catalogue.values import Catalogue
from generator.cli.shared import DONE, PROBLEMS, ROOT, print_json
from generator.steps import fuzzing
from generator.steps.again import measure_again
from generator.steps.excerpt import content_files, excerpt
from generator.steps.growth import measure_growth
from generator.steps.kills import kill_builds, second_state
from generator.steps.kills_of_ledgers import kill_ledgers
from generator.steps.rebuilt import both_directions, rebuild_passed

# Of so many spoilt files one is built, and a few in any case.
_ONE_BUILT_OF = 1000
_LEAST_BUILT = 4
# Of so many killed builds there is one recording and one signing, and a few in any case.
_ONE_WRITTEN_OF = 5
_LEAST_WRITTEN = 5


def show_fuzz(catalogue: Catalogue, content: Path, count: int, workers: int, form: str) -> int:
    """Spoil the content `count` times; build some of what passes and read it back."""
    files = content_files(content)
    verdicts = fuzzing.run(files, range(count), workers, say)
    faults = [f"seed {one.seed}, {one.done}: {one.failure}" for one in verdicts if one.failure]
    wanted = max(_LEAST_BUILT, count // _ONE_BUILT_OF)
    built = rebuild_passed(both_directions(files, catalogue), wanted, ROOT, say)
    faults += [f"built, seed {one.seeds[0]}, {one.done}: {one.failure}" for one in built if one.failure]
    for fault in faults:
        say(fault)
    counted = {"built of those that pass": len(built), "published": sum(one.published for one in built)}
    show({**fuzzing.counts(verdicts), **counted, "faults": len(faults)}, form)
    return PROBLEMS if faults else DONE


def show_kills(catalogue: Catalogue, content: Path, count: int, form: str) -> int:
    """Kill builds of one programme, then the writers of its ledgers, and tell what was met meanwhile."""
    files = excerpt(content_files(content), catalogue)
    with tempfile.TemporaryDirectory(prefix="phasebook-kills-") as folder:
        found = kill_builds((files, second_state(files)), count, ROOT, Path(folder), say)
    wanted = max(_LEAST_WRITTEN, count // _ONE_WRITTEN_OF)
    with tempfile.TemporaryDirectory(prefix="phasebook-kills-") as folder:
        ledgers = kill_ledgers(files, wanted, ROOT, Path(folder), say)
    faults = (*found.faults, *ledgers.faults)
    for fault in faults:
        say(fault)
    show(
        {
            "builds killed": found.kills,
            "builds that were quicker": found.done,
            "files read meanwhile": found.reads,
            "recordings and signings killed": ledgers.kills,
            "recordings and signings that were quicker": ledgers.done,
            "faults": len(faults),
        },
        form,
    )
    return PROBLEMS if faults else DONE


def again_values(catalogue: Catalogue, content: Path) -> dict[str, float]:
    """Return the cost of builds that follow a full one, as parts of it."""
    found = measure_again(content_files(content), catalogue, ROOT, say)
    full = found.full.cost.cpu
    return {
        "from nothing, seconds of processor": full,
        "nothing changed, percent of that": 100 * found.unchanged.cost.cpu / full,
        "one sentence changed, percent of that": 100 * found.sentence.cost.cpu / full,
        "made again for one sentence": found.sentence.made,
        "from nothing, MB of the largest worker": found.full.worker,
    }


def show_growth(catalogue: Catalogue, content: Path, sizes: tuple[int, ...], form: str) -> int:
    """Build catalogues of these sizes, and tell what each costs and what one programme more does."""
    found = measure_growth(content_files(content), catalogue, sizes, ROOT, say)
    values: dict[str, float] = {}
    for one in found:
        head = f"{one.times} programmes"
        values[f"{head}: pages"] = one.built.pages
        values[f"{head}: booklets"] = one.built.booklets
        values[f"{head}: seconds of processor a booklet"] = one.built.cost.cpu / one.built.booklets
        values[f"{head}: seconds of processor a page"] = one.built.cost.cpu / one.built.pages
        values[f"{head}: milliseconds to check a programme"] = 1000 * one.check / one.times
        values[f"{head}: MB of the main process"] = one.built.peak
        values[f"{head}: MB of the largest worker"] = one.built.worker
    for one, more in pairwise(found):
        step = more.times - one.times
        head = f"{one.times} to {more.times}, a programme more"
        values[f"{head}: seconds"] = (more.built.cost.cpu - one.built.cost.cpu) / step
        values[f"{head}: MB"] = (more.built.peak - one.built.peak) / step
    return show(values, form)


def say(words: str) -> None:
    """Tell how far it has come."""
    click.echo(words, err=True)


def show(values: Mapping[str, float], form: str) -> int:
    """Print numbers by name; return that all is done."""
    if form == "json":
        print_json({"format": 1, **values})
    else:
        for name, value in values.items():
            click.echo(f"{name:52} {value:10.3f}")
    return DONE
