"""Reads what a picture is made from: joint angles by name, what rests on what, the things around.

Editors type words (``head on pillow``, ``other hip``, ``{step: 15 cm}``); each is looked up, none is guessed.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from generator.catalogue.pose import AngleSpec, BodyPart, Follow, Ground, Limb, RestSpec, Side, Thing, Towards
from generator.catalogue.terms import Joint, Movement
from generator.problems import did_you_mean
from generator.reading import rules
from generator.reading.findings import BAD, Findings, name_of, shown
from generator.reading.kinds import Number
from generator.reading.nodes import Entries, Node, Scalar
from generator.reading.table import Group, MapOf, Table

BOTH = (Side.OPERATED, Side.OTHER)
_DEGREES = Number(-200, 200, whole=False)
_PLURALS = {BodyPart.FOOT: "feet", BodyPart.TOES: "toes"}
_GROUNDS = {
    **{ground.value: ground for ground in Ground},
    **dict.fromkeys(("mat", "bed"), Ground.FLOOR),
    **dict.fromkeys(("grips", "crutches", "stick", "walking frame"), Ground.GRIP),
    **dict.fromkeys(("armrests",), Ground.ARMREST),
    **{
        "chair": Ground.SEAT,
        "saddle": Ground.SEAT,
        "handlebar": Ground.ARMREST,
        "hips": Ground.HIP,
        "thighs": Ground.THIGH,
        "operated foot": Ground.OTHER_FOOT,
    },
}
_PARTS = {part.value: part for part in BodyPart}
_PAIRS = {_PLURALS.get(part, part.value + "s"): part for part in BodyPart if part.paired}
REST_WORDS = "a part of the body and what it rests on, such as: operated foot, hands, head on pillow"
_REST = re.compile(r"(?:(operated|other) )?(.+?)(?: on (?:the )?(.+))?")

_SIDED = "|".join(word for word, part in _PARTS.items() if part.paired)
_UNSIDED = "|".join((*_PAIRS, *(word for word, part in _PARTS.items() if not part.paired)))
REST_PATTERN = rf"(?:(?:operated|other) (?:{_SIDED})|{_UNSIDED})(?: on (?:the )?(?:{'|'.join(_GROUNDS)}))?"


def rest(typed: str) -> RestSpec | None:
    """Return the rest that ``operated foot on step`` or ``hands`` means; None where it means none."""
    match = _REST.fullmatch(typed)
    side, word, ground = match.groups() if match else (None, "", None)
    if ground is not None and ground not in _GROUNDS:
        return None
    on = _GROUNDS[ground] if ground else None
    part = _PARTS.get(word)
    if side is None and word in _PAIRS:
        return RestSpec(part=_PAIRS[word], sides=BOTH, on=on)
    if part is None or part.paired != (side is not None):
        return None
    return RestSpec(part=part, sides=(Side(side),) if side else (Side.MIDDLE,), on=on)


def limb(typed: str) -> tuple[Side, Limb] | None:
    """Return the limb that ``operated leg`` means; the buttocks have no side."""
    side, _, name = typed.rpartition(" ")
    known = {item.value: item for item in Limb}
    if name not in known or side not in ("", "operated", "other") or known[name].paired != bool(side):
        return None
    return Side(side or "middle"), known[name]


NO_ARROW = "none"
_FOLLOWED = (
    f"(?:operated|other) (?:{'|'.join(one.value for one in Follow if one.paired)})"
    f"|{'|'.join(one.value for one in Follow if not one.paired)}"
)
ARROW_PATTERN = f"{NO_ARROW}|{_FOLLOWED}"
PRESS_PATTERN = f"(?:{_FOLLOWED}) (?:{'|'.join(one.value for one in Towards)})"


def arrow(typed: str) -> tuple[Side, Follow] | str | None:
    """Return what the arrow follows, for ``other hip``; `NO_ARROW` as typed."""
    if typed == NO_ARROW:
        return NO_ARROW
    known = {item.value: item for item in Follow}
    side, _, name = typed.rpartition(" ")
    if name not in known or side not in ("", "operated", "other") or known[name].paired != bool(side):
        return None
    return Side(side or "operated"), known[name]


def press(typed: str) -> tuple[Side, Follow, Towards] | None:
    """Return what presses which way, for ``operated knee down``."""
    what, _, way = typed.rpartition(" ")
    followed = arrow(what)
    if not isinstance(followed, tuple) or way not in {item.value for item in Towards}:
        return None
    return (*followed, Towards(way))


@dataclass(frozen=True)
class Angles:
    """Joint angles of one side: joints, each with movements in plain degrees."""

    side: Side

    def read(self, node: Node, findings: Findings) -> Any:
        """Return a tuple of angles; what is not known is reported, and spoils them."""
        if not isinstance(node, Entries):
            message = f"{name_of(node)} stands where joints and their angles are wanted"
            remedy = "write for example: {hip: {flexion: 45}}"
            return findings.bad(rules.WRONG_KIND, node.place, message, remedy)
        found: list[AngleSpec] = []
        spoilt = False
        for joint, movements in node.entries:
            if self._choice(joint, Joint, findings) is BAD:
                spoilt = True
            elif not isinstance(movements, Entries):
                message = f"{name_of(movements)} stands where a movement and its angle are wanted"
                remedy = f"write for example: {joint.text}: {{flexion: 45}}"
                findings.bad(rules.WRONG_KIND, movements.place, message, remedy)
                spoilt = True
            else:
                read = [self._angle(joint, *entry, findings) for entry in movements.entries]
                found += [angle for angle in read if angle is not None]
                spoilt = spoilt or None in read
        return BAD if spoilt else tuple(found)

    def _angle(self, joint: Scalar, movement: Scalar, value: Node, findings: Findings) -> AngleSpec | None:
        degrees = _DEGREES.read(value, findings)
        if self._choice(movement, Movement, findings) is BAD or not isinstance(degrees, int | float):
            return None
        return AngleSpec(
            side=self.side,
            joint=Joint(joint.text),
            movement=Movement(movement.text),
            degrees=degrees,
            place=value.place,
        )

    @staticmethod
    def _choice(typed: Scalar, options: type[Joint] | type[Movement], findings: Findings) -> Any:
        known = [member.value for member in options]
        if typed.text in known:
            return typed.text
        remedy = did_you_mean(typed.text, known) or f"take one of: {', '.join(known)}"
        what = "joint" if options is Joint else "movement"
        return findings.bad(
            rules.UNKNOWN_CHOICE, typed.place, f"{shown(typed.text)} is no {what} known here", remedy
        )

    def schema(self) -> dict[str, Any]:
        """Return the schema."""
        movements = {
            "type": "object",
            "properties": {movement.value: _DEGREES.schema() for movement in Movement},
            "additionalProperties": False,
        }
        joints = {joint.value: movements for joint in Joint}
        return {"type": "object", "properties": joints, "additionalProperties": False}

    def words(self) -> str:
        """Return the form in words."""
        return "joints with their angles in degrees, such as {hip: {flexion: 45}}"


@dataclass(frozen=True)
class InOrder:
    """Ids with their keys, where the order of the file counts."""

    entries: MapOf
    most: int

    def read(self, node: Node, findings: Findings) -> Any:
        """Return the records as a tuple."""
        read = self.entries.read(node, findings)
        if read is BAD:
            return BAD
        if not 1 <= len(read) <= self.most:
            message = f"there are {len(read)} entries, wanted are 1 to {self.most}"
            return findings.bad(rules.OUT_OF_RANGE, node.place, message, "add or remove entries")
        return tuple(read.values())

    def schema(self) -> dict[str, Any]:
        """Return the schema."""
        return {**self.entries.schema(), "minProperties": 1, "maxProperties": self.most}

    def words(self) -> str:
        """Return the form in words."""
        return self.entries.words()


@dataclass(frozen=True)
class Things:
    """One thing by name, alone or with its keys; a single word after the name stands for its first key."""

    tables: Mapping[Thing, Table]

    def read(self, node: Node, findings: Findings) -> Any:
        """Return the thing's record."""
        if isinstance(node, Scalar):
            name, keys = node, Entries(node.place, ())
        elif isinstance(node, Entries) and len(node.entries) == 1:
            name, value = node.entries[0]
            keys = value if isinstance(value, Entries) else self._short(name, value)
        else:
            message = f"{name_of(node)} stands where one thing is wanted"
            return findings.bad(rules.WRONG_KIND, node.place, message, "write one thing in each entry")
        known = {thing.value: thing for thing in self.tables}
        if name.text not in known:
            remedy = did_you_mean(name.text, known) or f"take one of: {', '.join(known)}"
            message = f"{shown(name.text)} is no thing known here"
            return findings.bad(rules.UNKNOWN_CHOICE, name.place, message, remedy)
        thing = known[name.text]
        return Group(self.tables[thing]).read(keys, findings, thing=thing)

    def _short(self, name: Scalar, value: Node) -> Entries:
        table = next((table for thing, table in self.tables.items() if thing.value == name.text), None)
        first = table.fields[0].key if table and table.fields else ""
        return Entries(value.place, ((Scalar(value.place, first, False), value),))

    def schema(self) -> dict[str, Any]:
        """Return the schema: the name alone, or the name with its keys."""
        options: list[dict[str, Any]] = [
            {
                "enum": [
                    thing.value
                    for thing, table in self.tables.items()
                    if not any(field.required for field in table.fields)
                ]
            }
        ]
        for thing, table in self.tables.items():
            forms = [Group(table).schema(), *(field.kind.schema() for field in table.fields[:1])]
            options.append(
                {
                    "type": "object",
                    "properties": {thing.value: {"anyOf": forms}},
                    "required": [thing.value],
                    "additionalProperties": False,
                }
            )
        return {"anyOf": options}

    def words(self) -> str:
        """Return the form in words."""
        names = ", ".join(thing.value for thing in self.tables)
        return f"a thing, such as mat or {{step: 15 cm}}; one of: {names}"
