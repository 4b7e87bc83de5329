"""Makes the list of all exercises, by programme and phase, for a reader who looks for a name."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.base import Text
from generator.catalogue.exercise import Exercise
from generator.website.addresses import EXERCISES, exercise_page, phase_page
from generator.website.page import Page
from generator.website.values import SiteInput
from generator.wording.phrases import phase as phase_words
from generator.wording.weeks import weeks


@dataclass(frozen=True)
class Listed:
    """An exercise in the list, with its page."""

    exercise: Exercise
    page: str


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
    return Page(
        path=EXERCISES,
        template="exercise_list.html",
        title=site.voice.gettext("All exercises"),
        description=site.voice.gettext("Every exercise with its steps and its dose"),
        values={
            "safety": site.catalogue.safety,
            "programmes": programmes,
            "others": tuple(_listed(site, exercise) for exercise in known if exercise not in used),
        },
        required=(str(site.catalogue.safety.stay), *(str(one.name) for one in known.values())),
    )


def _programme(site: SiteInput, id_: str) -> ProgrammeList:
    programme, order = site.catalogue.programmes[id_], site.orders[id_]
    phases = tuple(
        PhaseList(
            where=site.voice.gettext("{phase}: {name}").format(
                phase=phase_words(site.voice, phase.number), name=phase.name
            ),
            weeks=weeks(site.voice, order.windows[phase.number - 1]),
            page=phase_page(id_, phase.number),
            exercises=tuple(_listed(site, one.exercise) for one in order.of_phase(phase.number)),
        )
        for phase in programme.phases
    )
    return ProgrammeList(programme.name, phases)


def _listed(site: SiteInput, exercise: str) -> Listed:
    return Listed(site.catalogue.exercises[exercise], exercise_page(exercise))
