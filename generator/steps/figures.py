"""Turns what the content says about poses into pictures: scenes, drawn in several processes, all sides.

An item without poses, or with poses that are wrong, has no picture; it is published as text.
"""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from generator.body.from_catalogue import Posed, can_be_settled, motion_of, posed_items
from generator.body.pose import Side
from generator.catalogue.pose import Thing, ThingSpec
from generator.catalogue.terms import Joint
from generator.catalogue.values import Catalogue
from generator.figures import props
from generator.figures.arrows import Follow, Press, Towards
from generator.figures.camera import View
from generator.figures.details import Detail
from generator.figures.moving import moving_both
from generator.figures.palette import Palette
from generator.figures.pictures import Gallery, Pictures, Shown
from generator.figures.props import Prop
from generator.figures.rules import RULES, around
from generator.figures.scene import Operated, Scene, draw, drawn_stills, drawn_strip
from generator.pool import pool
from generator.problems import Problem

__all__ = ["RULES", "draw_all", "draw_anew", "palette_of", "scene_of", "thing_problems", "write_gallery"]

RIGHT_AND_LEFT = (False, True)
_STATURE_CM = 170.0
_TOKEN = re.compile(r"(--pb-[a-z-]+):\s*(#[0-9a-f]{3,6}|var\((--pb-[a-z-]+)\));")
_GROUND = (Thing.FLOOR, Thing.MAT, Thing.BED)


def palette_of(css: str) -> Palette:
    """Return the colours of figures from the text of ``tokens.css``; a missing token is a KeyError."""
    named = {name: other or value for name, value, other in _TOKEN.findall(css)}
    return Palette.from_tokens({name: named.get(value, value) for name, value in named.items()})


_ALONE: Mapping[Thing, Prop] = {
    Thing.FLOOR: props.Floor(),
    Thing.MAT: props.Mat(),
    Thing.CRUTCHES: props.Crutches(),
    Thing.WALKING_FRAME: props.WalkingFrame(),
    Thing.BIKE: props.Bike(),
    Thing.TOILET: props.Toilet(),
    Thing.SCALES: props.Scales(),
    Thing.STEERING_WHEEL: props.SteeringWheel(),
}
_OF_A_SIDE: Mapping[Thing, Callable[[Side], Prop]] = {
    Thing.STICK: props.Stick,
    Thing.STRAP: props.Strap,
    Thing.REACHER: props.Reacher,
    Thing.ANKLE_WEIGHT: props.AnkleWeight,
    Thing.HELPER_HANDS: props.HelperHands,
    Thing.COLD_PACK: props.ColdPack,
}


def prop_of(thing: ThingSpec) -> Prop:
    """Return a thing as figures draw it."""
    kind, side = thing.thing, Side.MIDDLE if thing.side is None else thing.side
    if kind in _ALONE:
        return _ALONE[kind]
    if kind in _OF_A_SIDE:
        return _OF_A_SIDE[kind](side)
    at, under = (None if one is None else props.Limit(one.value) for one in (thing.on_legs, thing.under))
    where = None if thing.where is None else props.Where(thing.where.value)
    made: dict[Thing, Callable[[], Prop]] = {
        Thing.CAR_SEAT: lambda: props.CarSeat(thing.edge),
        Thing.BED: lambda: props.Bed(thing.edge),
        Thing.CHAIR: lambda: props.Chair(thing.back, thing.arms),
        Thing.WORKTOP: lambda: props.Worktop(where or props.Where.FRONT),
        Thing.WALL: lambda: props.Wall(where or props.Where.BEHIND),
        Thing.STEP: lambda: props.Step(thing.flight),
        Thing.BANISTER: lambda: props.Banister(where or props.Where.OTHER, thing.rising),
        Thing.BAND: lambda: _band(thing, at or props.Limit.THIGHS, side),
        Thing.PILLOW: lambda: props.Pillow(at, under),
        Thing.TOWEL_ROLL: lambda: props.TowelRoll(at or props.Limit.KNEES, side),
    }
    return made[kind]()


def _band(thing: ThingSpec, at: props.Limit, side: Side) -> props.Band:
    if thing.anchor is None:
        return props.Band(at, side)
    forward, up, out = (length / _STATURE_CM for length in thing.anchor)
    return props.Band(at, Side.OPERATED if side is Side.MIDDLE else side, (forward, up, out))


def props_of(item: Posed) -> tuple[Prop, ...]:
    """Return the things around; whoever is on no mat and no bed is on the floor."""
    things = item.figure.things
    made = tuple(prop_of(thing) for thing in things)
    return made if any(thing.thing in _GROUND for thing in things) else (props.Floor(), *made)


def scene_of(item: Posed, joint: str = "") -> Scene:
    """Return what the item's picture shows; `joint`: English word of the ringed one, or empty for none."""
    figure = item.figure
    working = ((Side.OPERATED, None),) if figure.working is None else figure.working
    return Scene(
        motion_of(item),
        props_of(item),
        frozenset((side, "leg" if limb is None else limb.value) for side, limb in working),
        Operated[Joint(joint).name] if joint and Joint(joint).name in Operated.__members__ else None,
        None if figure.view is None else View(figure.view.value),
        None if figure.arrow is None else (figure.arrow[0], Follow(figure.arrow[1].value)),
        arrow=not figure.no_arrow,
        press=tuple(Press(side, Follow(what.value), Towards(way.value)) for side, what, way in figure.press),
        detail=None if figure.detail is None else Detail(figure.detail.value),
    )


def thing_problems(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield what is wrong with the things around the person; poses are checked before by `checks.poses`."""
    for item in posed_items(catalogue):
        if can_be_settled(item):
            place = item.owner.at("figure")
            yield from around(props_of(item), motion_of(item), place)


@dataclass(frozen=True)
class _Job:
    """One item with every joint that is ringed and every side that is wanted; only the first is played."""

    item: Posed
    joints: tuple[str, ...]
    lefts: tuple[bool, ...]
    palette: Palette
    moving: bool


def draw_all(
    catalogue: Catalogue,
    palette: Palette,
    *,
    ids: Iterable[str] | None = None,
    lefts: tuple[bool, ...] = RIGHT_AND_LEFT,
    with_moving: bool = True,
    workers: int = 1,
) -> Gallery:
    """Return the pictures of everything with poses, or of `ids`; the same bytes for any number of workers.

    lefts: operated sides, right (False) and left (True). with_moving: whether movements are made too.
    """
    wanted = None if ids is None else set(ids)
    items = [item for item in posed_items(catalogue) if wanted is None or item.id in wanted]
    joints = {item.id: _joints(item.id, catalogue) for item in items}
    jobs = [
        _Job(item, joints[item.id], lefts, palette, with_moving) for item in items if can_be_settled(item)
    ]
    drawn = {key: pictures for made in _run(jobs, workers) for key, pictures in made}
    known = {job.item.id for job in jobs}
    return Gallery(
        drawn,
        {name: listed[0] for name, listed in joints.items()},
        # A variation without poses looks like its exercise.
        tuple(item.id for item in items if not known & {item.id, item.id.partition("/")[0]}),
    )


def _joints(item: str, catalogue: Catalogue) -> tuple[str, ...]:
    """Return which joints are ringed: where no programme is named, then those of the programmes that use it.

    Several programmes have several joints: then none is ringed where none of them is named.
    """
    name = item.partition("/")[0]
    found = [
        programme.joint.value
        for programme in catalogue.programmes.values()
        for phase in programme.phases
        if name in phase.daily_life or any(use.use == name for use in phase.uses)
    ]
    each = tuple(dict.fromkeys(found))
    return each if len(each) == 1 else ("", *each)


def _run(jobs: Sequence[_Job], workers: int) -> Iterable[list[tuple[Shown, Pictures]]]:
    if workers < 2 or len(jobs) < 2:
        return [_draw_one(job) for job in jobs]
    # A fresh process takes the limit before its numeric library starts: two threads in each of two
    # processes on two cores only stand in one another's way.
    before = os.environ.get("OPENBLAS_NUM_THREADS")
    os.environ["OPENBLAS_NUM_THREADS"] = "1"
    try:
        with pool(min(workers, len(jobs)), fresh=True) as processes:
            return list(processes.map(_draw_one, jobs, chunksize=4))
    finally:
        if before is None:
            del os.environ["OPENBLAS_NUM_THREADS"]
        else:
            os.environ["OPENBLAS_NUM_THREADS"] = before


def draw_anew(catalogue: Catalogue, palette: Palette, count: int, workers: int) -> int:
    """Draw at least `count` stills, all poses of the catalogue in whole rounds, to see how long it takes.

    Returns how many were drawn; 0 where the catalogue has no poses.
    """
    items = [item for item in posed_items(catalogue) if can_be_settled(item)]
    once = sum(len(item.specs) for item in items)
    rounds = -(-count // once) if once else 0
    # Each item's drawings beside one another: a process settles its movement once.
    jobs = [_Job(item, ("",), (False,), palette, moving=False) for item in items for _ in range(rounds)]
    return sum(len(pictures.stills) for made in _run(jobs, workers) for _, pictures in made)


def _draw_one(job: _Job) -> list[tuple[Shown, Pictures]]:
    made = []
    for number, joint in enumerate(job.joints):
        scene = scene_of(job.item, joint)
        drawn = draw(scene, job.palette)
        played: Sequence[str | None] = (None, None)
        if job.moving and not number and scene.plays:
            played = moving_both(scene, job.palette, drawn)
        for left in job.lefts:
            pictures = Pictures(drawn_stills(drawn, left), drawn_strip(drawn, left), played[left])
            made.append((Shown(job.item.id, joint, left), pictures))
    return made


def file_name(item: str) -> str:
    """Return an item's name for a file: ``clam.with-band`` for a variation."""
    return item.replace("/", ".")


def write_gallery(gallery: Gallery, folder: Path, *, left: bool) -> Mapping[str, Path]:
    """Write each item's strip, stills and movement as SVG files; return the strips by item."""
    folder.mkdir(parents=True, exist_ok=True)
    strips: dict[str, Path] = {}
    for item, joint in gallery.default_joint.items():
        pictures = gallery.pictures.get(Shown(item, joint, left))
        if pictures is None:
            continue
        name = file_name(item)
        parts = {name: pictures.strip, f"{name}.moving": pictures.moving or ""}
        parts |= {f"{name}.{number}": still for number, still in enumerate(pictures.stills, 1)}
        for part, text in parts.items():
            if text:
                (folder / f"{part}.svg").write_text(text + "\n", encoding="utf-8", newline="\n")
        strips[item] = folder / f"{name}.svg"
    return strips
