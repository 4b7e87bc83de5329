"""Makes the list of all exercises, by programme and phase, for a reader who looks for a name."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import Enum

from generator.catalogue.base import Text
from generator.catalogue.exercise import Exercise
from generator.website.addresses import EXERCISES, exercise_page, phase_page
from generator.website.page import Page
from generator.website.values import SiteInput
from generator.wording.phrases import phase as phase_words
from generator.wording.terms import term
from generator.wording.voice import Voice
from generator.wording.weeks import weeks

# What stands for "needs no thing at all" in the address; no id of a thing can be that.
NOTHING = "-"


@dataclass(frozen=True)
class Listed:
    """An exercise in the list, with its page; told: what narrows the list, ids by the filter's name."""

    exercise: Exercise
    page: str
    told: Mapping[str, str]


@dataclass(frozen=True)
class Filter:
    """A choice above the list: options as id and words. avoid: it leaves out what has the chosen thing."""

    name: str
    label: str
    options: tuple[tuple[str, str], ...]
    avoid: bool = False


@dataclass(frozen=True)
class PhaseList:
    """The exercises of a phase in their order; number, name and weeks of the phase in words, and its page."""

    where: str
    weeks: str
    page: str
    exercises: tuple[Listed, ...]


@dataclass(frozen=True)
class ProgrammeList:
    """The exercises of a programme, phase by phase."""

    name: Text
    phases: tuple[PhaseList, ...]


def list_page(site: SiteInput) -> Page:
    """Return the page that lists all exercises."""
    known = site.catalogue.exercises
    programmes = tuple(_programme(site, programme) for programme in site.catalogue.programmes)
    used = {placed.exercise for order in site.orders.values() for placed in order.places}
    others = tuple(_listed(site, exercise) for exercise in known if exercise not in used)
    return Page(
        path=EXERCISES,
        template="exercise_list.html",
        title=site.voice.gettext("All exercises"),
        description=site.voice.gettext("Every exercise with its steps and its dose"),
        values={
            "safety": site.catalogue.safety,
            "programmes": programmes,
            "others": others,
            "filters": tuple(_filters(site)),
        },
        required=(str(site.catalogue.safety.stay), *(str(one.name) for one in known.values())),
        script="find",
    )


def _filters(site: SiteInput) -> Iterator[Filter]:
    """Yield the choices above the list; each offers only what some exercise has."""
    voice, catalogue = site.voice, site.catalogue
    known = tuple(catalogue.exercises.values())
    last = max((len(one.phases) for one in catalogue.programmes.values()), default=0)
    programmes = tuple((one.id, str(one.name)) for one in catalogue.programmes.values())
    if len(programmes) > 1:
        yield Filter("programme", voice.gettext("Programme"), programmes)
    phases = tuple((str(count), voice.opening(phase_words(voice, count))) for count in range(1, last + 1))
    yield Filter("phase", voice.gettext("Phase"), phases)
    postures = dict.fromkeys(one.posture for one in known)
    yield Filter("posture", voice.gettext("Position"), _options(voice, postures))
    surfaces = dict.fromkeys(surface for one in known for surface in one.surface)
    yield Filter("surface", voice.gettext("Where"), _options(voice, surfaces))
    needed = dict.fromkeys(thing for one in known for thing in one.equipment)
    things = tuple((one, str(catalogue.equipment[one].name)) for one in needed)
    yield Filter("equipment", voice.gettext("What you need"), ((NOTHING, voice.gettext("Nothing")), *things))
    strained = dict.fromkeys(strain for one in known for strain in one.strains)
    strains = tuple((one, str(catalogue.strains[one].name)) for one in strained)
    yield Filter("strain", voice.gettext("Leave out what strains"), strains, avoid=True)


def _options(voice: Voice, members: Iterable[Enum]) -> tuple[tuple[str, str], ...]:
    return tuple((_id(member), voice.opening(term(voice, member))) for member in members)


def _id(member: Enum) -> str:
    return member.name.lower().replace("_", "-")


def _programme(site: SiteInput, id_: str) -> ProgrammeList:
    programme, order = site.catalogue.programmes[id_], site.orders[id_]
    phases = tuple(
        PhaseList(
            where=site.voice.gettext("{phase}: {name}").format(
                phase=phase_words(site.voice, phase.number), name=phase.name
            ),
            weeks=weeks(site.voice, order.windows[phase.number - 1]),
            page=phase_page(id_, phase.number),
            exercises=tuple(
                _listed(site, one.exercise, id_, phase.number) for one in order.of_phase(phase.number)
            ),
        )
        for phase in programme.phases
    )
    return ProgrammeList(programme.name, phases)


def _listed(site: SiteInput, exercise: str, programme: str = "", phase: int = 0) -> Listed:
    found = site.catalogue.exercises[exercise]
    told = {
        "programme": programme,
        "phase": str(phase or ""),
        "posture": _id(found.posture),
        "surface": " ".join(_id(one) for one in found.surface),
        "equipment": " ".join(found.equipment),
        "strain": " ".join(found.strains),
    }
    return Listed(found, exercise_page(exercise), told)
