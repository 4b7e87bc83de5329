"""Understands what a clinician types about one patient: ids and names, limits, doses; says what it cannot."""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import Enum
from typing import TypeVar

from generator.catalogue.dose import DoseStep
from generator.catalogue.one_patient import Avoided, Limit, OperatedSide, Wishes
from generator.catalogue.programme import Phase
from generator.catalogue.restricted import Track
from generator.catalogue.terms import Joint, Movement, Position, Surface, WeightBearing
from generator.catalogue.values import Catalogue
from generator.problems import Problem, in_order, offered
from generator.progression.one_patient import rules
from generator.reading.doses import WANTED, parse_step

_LIMIT = re.compile(r"([a-z -]+)\.([a-z -]+)=(\d{1,3}(?:\.\d+)?)", re.ASCII)
# The trade's own word for a position, where the content's is an everyday one.
_TRADE = {"prone": Position.ON_FRONT}
Member = TypeVar("Member", bound=Enum)


@dataclass(frozen=True, kw_only=True)
class Typed:
    """The wishes as typed: lists parted by commas, ``hip.flexion=70``, ``heel-slide=2x8``."""

    side: str | None = None
    surgery: datetime.date | None = None
    delayed: bool = False
    only: str | None = None
    without: str = ""
    mastered: str = ""
    have: str | None = None
    avoid: str = ""
    limits: tuple[str, ...] = ()
    weight_bearing: str | None = None
    doses: tuple[str, ...] = ()


def read_wishes(catalogue: Catalogue, phase: Phase, typed: Typed) -> tuple[Wishes, tuple[Problem, ...]]:
    """Return what is meant, and a finding for each part that is not understood."""
    reader = _Reader(catalogue, phase, [])
    wishes = Wishes(
        side=None if typed.side is None else reader.member("side", typed.side, OperatedSide),
        surgery=typed.surgery,
        track=Track.DELAYED if typed.delayed else Track.USUAL,
        only=None if typed.only is None else reader.exercises("only", typed.only, reader.here),
        without=reader.exercises("without", typed.without, reader.here),
        mastered=reader.exercises("mastered", typed.mastered, tuple(catalogue.exercises)),
        have=None if typed.have is None else frozenset(reader.things(typed.have)),
        avoid=reader.avoided(typed.avoid),
        limits=tuple(reader.limits(typed.limits)),
        weight_bearing=(
            None
            if typed.weight_bearing is None
            else reader.member("weight-bearing", typed.weight_bearing, WeightBearing)
        ),
        doses=reader.doses(typed.doses),
    )
    return wishes, in_order(reader.found)


def _parts(typed: str) -> list[str]:
    return [part.strip() for part in typed.split(",") if part.strip()]


def _plain(words: str) -> str:
    """Return words in one spelling: small letters, blanks for hyphens."""
    return " ".join(words.casefold().replace("-", " ").split())


@dataclass(frozen=True)
class _Reader:
    """Reads one part after the other and gathers what is wrong in `found`."""

    catalogue: Catalogue
    phase: Phase
    found: list[Problem]

    @property
    def here(self) -> tuple[str, ...]:
        return tuple(use.use for use in self.phase.uses)

    def unknown(self, option: str, word: str, known: Iterable[str], kind: str) -> None:
        message = f"there is no {kind} '{word}'"
        self.found.append(rules.UNKNOWN.at(rules.option(option), message, offered(word, known)))

    def member(self, option: str, word: str, kind: type[Member]) -> Member | None:
        """Return the member that a word stands for; hyphens count as blanks."""
        for one in kind:
            if _plain(str(one.value)) == _plain(word):
                return one
        self.unknown(option, word, (str(one.value) for one in kind), option.replace("-", " "))
        return None

    def exercises(self, option: str, typed: str, known: tuple[str, ...]) -> frozenset[str]:
        listed = _parts(typed)
        kind = "exercise" if option == "mastered" else f"exercise in phase {self.phase.number} called"
        for word in listed:
            if word not in known:
                self.unknown(option, word, known, kind)
        if option == "only" and not listed:
            self.found.append(rules.EMPTY.at(rules.option(option), "no exercise is named"))
        return frozenset(listed)

    def things(self, typed: str) -> Iterator[str]:
        """Yield the ids of things: typed as id or name, or as a word that only one id holds."""
        equipment = self.catalogue.equipment
        names = {_plain(word): id_ for id_, one in equipment.items() for word in (id_, one.name.source)}
        for word in _parts(typed):
            plain = _plain(word)
            holding = [id_ for id_ in equipment if plain in id_.split("-")]
            if plain in names:
                yield names[plain]
            elif len(holding) == 1:
                yield holding[0]
            else:
                self.unknown("have", word, holding or equipment, "single thing" if holding else "thing")

    def avoided(self, typed: str) -> Avoided:
        """Return what to avoid; a word that names a strain and a position means both."""
        strains = {
            _plain(word): id_
            for id_, one in self.catalogue.strains.items()
            for word in (id_, one.name.source)
        }
        surfaces = {_plain(one.value): one for one in Surface}
        positions = {**{_plain(one.value): one for one in Position}, **_TRADE}
        words = [_plain(word) for word in _parts(typed)]
        known = {*self.catalogue.strains, *surfaces, *positions}
        for word in words:
            if word not in {*strains, *surfaces, *positions}:
                self.unknown("avoid", word, known, "strain, surface or position")
        return Avoided(
            strains=frozenset(strains[word] for word in words if word in strains),
            surfaces=frozenset(surfaces[word] for word in words if word in surfaces),
            positions=frozenset(positions[word] for word in words if word in positions),
        )

    def limits(self, typed: Iterable[str]) -> Iterator[Limit]:
        seen: set[str] = set()
        for word in typed:
            match = _LIMIT.fullmatch(word.strip())
            if match is None:
                self.notation("limit", word, "hip.flexion=70, in degrees")
                continue
            joint, movement = self.member("limit", match[1], Joint), self.member("limit", match[2], Movement)
            if joint is None or movement is None:
                continue
            limit = Limit(joint, movement, float(match[3]))
            if limit.id in seen:
                self.notation("limit", word, "each movement once")
            seen.add(limit.id)
            yield limit

    def doses(self, typed: Iterable[str]) -> Mapping[str, DoseStep]:
        found: dict[str, DoseStep] = {}
        for word in typed:
            exercise, _, dose = word.partition("=")
            exercise = exercise.strip()
            # On the command line 2x8 is one word; the content's notation has blanks.
            step = parse_step(re.sub(r"(\d)\s*x\s*(\d)", r"\1 x \2", dose.strip()))
            if step is None or exercise in found:
                wanted = "each exercise once" if step else f"heel-slide=2x8; a dose is {WANTED}"
                self.notation("dose", word, wanted)
            elif exercise not in self.catalogue.exercises:
                self.unknown("dose", exercise, self.catalogue.exercises, "exercise")
            else:
                found[exercise] = step
        return found

    def notation(self, option: str, word: str, wanted: str) -> None:
        self.found.append(
            rules.NOTATION.at(rules.option(option), f"'{word}' is not understood", f"write {wanted}")
        )
