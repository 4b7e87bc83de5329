"""Makes the home page: it asks which booklet the reader was given, and leads straight to that phase."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.base import Text
from generator.catalogue.programme import Phase, Programme
from generator.website.addresses import CHECK, HELPER, HOME, phase_page, programme_page
from generator.website.check import check_lead
from generator.website.frame import clinic_line, emergency_line
from generator.website.helper import has_helper_page
from generator.website.page import Page
from generator.website.values import SiteInput
from generator.wording.phrases import phase as phase_words
from generator.wording.weeks import weeks


@dataclass(frozen=True)
class PhaseDoor:
    """A way to a phase: its number and name, when it runs, what it is about, and its page."""

    number: str
    name: Text
    weeks: str
    summary: Text
    page: str


@dataclass(frozen=True)
class ProgrammeDoor:
    """A programme on the home page, with the ways to its phases."""

    programme: Programme
    page: str
    phases: tuple[PhaseDoor, ...]


def home_page(site: SiteInput) -> Page:
    """Return the home page of one language."""
    catalogue, voice = site.catalogue, site.voice
    programmes = catalogue.programmes.values()
    return Page(
        path=HOME,
        template="home.html",
        title=voice.gettext("Your exercises, phase by phase"),
        description=voice.gettext("Exercise programmes after an operation, phase by phase"),
        values={
            "clinic": catalogue.clinic,
            "safety": catalogue.safety,
            "programmes": tuple(
                ProgrammeDoor(one, programme_page(one.id), phase_doors(site, one)) for one in programmes
            ),
            "check": CHECK,
            "check_text": check_lead(site),
            "helper": HELPER if has_helper_page(site) else "",
            "lines": (clinic_line(catalogue, voice), emergency_line(catalogue, voice)),
        },
        required=(str(catalogue.safety.stay),),
    )


def phase_doors(site: SiteInput, programme: Programme) -> tuple[PhaseDoor, ...]:
    """Return the ways to all phases of a programme."""
    windows = {window.phase: weeks(site.voice, window) for window in site.orders[programme.id].windows}
    return tuple(_door(site, programme, phase, windows[phase.number]) for phase in programme.phases)


def _door(site: SiteInput, programme: Programme, phase: Phase, when: str) -> PhaseDoor:
    page = phase_page(programme.id, phase.number)
    return PhaseDoor(phase_words(site.voice, phase.number), phase.name, when, phase.summary, page)
