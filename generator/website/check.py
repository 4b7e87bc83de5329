"""Makes the page on which a booklet's code tells whether it is current, and what changed since."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.catalogue.base import Text
from generator.catalogue.editions import Change, KnownPaper, Standing, Urgency
from generator.catalogue.terms import Reach
from generator.website.addresses import CHECK
from generator.website.frame import clinic_line, telephone_line
from generator.website.page import Page
from generator.website.values import SiteInput
from generator.wording.edition_words import change_words, standing_words, what_to_do
from generator.wording.isolation import isolate
from generator.wording.phrases import phase as phase_words
from generator.wording.voice import Voice, voice
from generator.wording.weeks import date

# The form of a code, with letters that nobody has to type.
CODE_FORM = "XXXX-XXXX"


@dataclass(frozen=True)
class Code:
    """A code with the name of its language, and when it was recorded in words (or "")."""

    code: str
    language: str
    recorded: str


@dataclass(frozen=True)
class Told:
    """What is said of booklets that stand alike; level: of the look; urgent, others: what changed."""

    level: str
    heading: str
    about: Text | str
    phase: str
    act: str
    urgent: tuple[str, ...]
    others: tuple[str, ...]
    codes: tuple[Code, ...]


def for_staff(site: SiteInput) -> bool:
    """Return whether only the clinic's staff can reach the page, so that a patient has to call."""
    return site.catalogue.clinic.reach is Reach.INTRANET


def check_lead(site: SiteInput) -> str:
    """Return what the page is for, in one or two sentences."""
    if for_staff(site):
        return site.voice.gettext(
            "A patient reads the code out on the telephone. Read out what stands under it here."
        )
    return site.voice.gettext("See whether your booklet is current, and what changed since it was printed.")


def check_page(site: SiteInput) -> Page:
    """Return the page; each code is an anchor, so that it works without a script."""
    catalogue, speaker = site.catalogue, site.voice
    closed = telephone_line(speaker.gettext("At other times"), catalogue.clinic.telephone.out_of_hours)
    return Page(
        path=CHECK,
        template="check.html",
        title=speaker.gettext("Check your booklet"),
        description=speaker.gettext("Whether a booklet on paper is current, and what changed since"),
        values={
            "staff": for_staff(site),
            "lead": check_lead(site),
            "form": isolate(CODE_FORM),
            "told": tuple(_told(site)),
            "lines": (clinic_line(catalogue, speaker), closed),
            "hours": catalogue.clinic.telephone.hours,
        },
        required=tuple(one.code for one in site.paper),
        script="check",
    )


def _told(site: SiteInput) -> Iterator[Told]:
    """Yield what is said, the most urgent first, each thing once for all codes of which it holds."""
    together: dict[tuple[object, ...], list[KnownPaper]] = {}
    for one in sorted(site.paper, key=_rank):
        key = (one.programme, one.phase, one.standing, one.urgency, one.changes)
        together.setdefault(key, []).append(one)
    for found in together.values():
        yield _words(site, found[0], [_code(site.voice, one) for one in found])


def _rank(one: KnownPaper) -> tuple[int, int, str, int, str]:
    stands = tuple(Standing).index(one.standing)
    return (one.urgency.rank, -stands, one.programme, one.phase or 0, one.code)


def _words(site: SiteInput, paper: KnownPaper, codes: Sequence[Code]) -> Told:
    speaker, programme = site.voice, site.catalogue.programmes.get(paper.programme)
    urgent = tuple(_said(site, paper, one) for one in paper.changes if one.urgency is Urgency.NOW)
    others = tuple(_said(site, paper, one) for one in paper.changes if one.urgency is not Urgency.NOW)
    protocol = speaker.gettext("Protocol for clinicians")
    return Told(
        level=_level(paper),
        heading=standing_words(speaker, paper.standing),
        about=programme.name if programme else paper.programme,
        phase=protocol if paper.phase is None else phase_words(speaker, paper.phase),
        act=_act(speaker, paper),
        urgent=urgent,
        others=others,
        codes=tuple(codes),
    )


def _said(site: SiteInput, paper: KnownPaper, change: Change) -> str:
    return change_words(site.voice, change, site.catalogue, paper.programme)


def _level(paper: KnownPaper) -> str:
    if paper.standing is Standing.CURRENT:
        return "current"
    return {Urgency.NOW: "now", Urgency.NEXT_VISIT: "next", Urgency.NO_NEED: "same"}[paper.urgency]


def _act(speaker: Voice, paper: KnownPaper) -> str:
    if paper.phase is None and paper.standing is not Standing.CURRENT:
        return speaker.gettext("Use the protocol that the clinic publishes now.")
    if paper.phase is None:
        return ""
    return what_to_do(speaker, paper.standing, paper.urgency)


def _code(speaker: Voice, paper: KnownPaper) -> Code:
    recorded = ""
    if paper.recorded is not None:
        recorded = speaker.gettext("recorded on {day}").format(day=date(speaker, paper.recorded))
    return Code(paper.code, voice(paper.language).own_name, recorded)
