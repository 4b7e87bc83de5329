"""Makes the page of warning signs: whom to call and how fast, if it got worse, after a fall."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.base import Text
from generator.catalogue.clinic import Sign
from generator.catalogue.terms import Level, Signal
from generator.website.addresses import WARNING_SIGNS
from generator.website.config import Line
from generator.website.frame import clinic_line, emergency_line, telephone_line
from generator.website.page import Page
from generator.website.shared import untranslated
from generator.website.values import SiteInput
from generator.wording.terms import term


@dataclass(frozen=True)
class SignGroup:
    """Warning signs that need help equally fast: signal word, heading, lines to call and when, the signs."""

    level: str
    word: str
    heading: str
    lines: tuple[Line, ...]
    hours: Text | None
    signs: tuple[Sign, ...]


@dataclass(frozen=True)
class WorseLevel:
    """One level of what to do when it got worse, mildest first."""

    when: str
    heading: str
    acts: tuple[Text, ...]
    phone: Line | None


def warning_page(site: SiteInput) -> Page:
    """Return the page of warning signs."""
    safety, groups = site.catalogue.safety, sign_groups(site)
    worse = (*safety.worse.today, *safety.worse.clinic, *safety.worse.emergency)
    signs = (text for sign in safety.signs for text in (sign.sign, sign.meaning, sign.act))
    return Page(
        path=WARNING_SIGNS,
        template="warning_signs.html",
        title=site.voice.gettext("Warning signs"),
        description=site.voice.gettext("Whom to call and how fast, and what to do if it got worse"),
        values={
            "groups": groups,
            "worse": worse_levels(site),
            "safety": safety,
            "clinic": site.catalogue.clinic,
            "untranslated": untranslated(safety),
        },
        required=(
            *(str(text) for text in (*signs, *worse, *safety.fall, safety.deferral_full)),
            *(line.number for group in groups for line in group.lines),
        ),
    )


def sign_groups(site: SiteInput) -> tuple[SignGroup, ...]:
    """Return the warning signs, the most urgent first; a level without signs is left out."""
    catalogue, voice = site.catalogue, site.voice
    telephone = catalogue.clinic.telephone
    closed = telephone_line(voice.gettext("At other times"), telephone.out_of_hours)
    plans = (
        (Level.EMERGENCY, Signal.DANGER, (emergency_line(catalogue, voice),), None),
        (Level.CLINIC, Signal.WARNING, (clinic_line(catalogue, voice), closed), telephone.hours),
        (Level.TODAY, Signal.CAUTION, (), None),
    )
    found = (
        SignGroup(
            signal.value,
            term(voice, signal),
            voice.opening(term(voice, level)),
            lines,
            hours,
            tuple(sign for sign in catalogue.safety.signs if sign.level is level),
        )
        for level, signal, lines, hours in plans
    )
    return tuple(group for group in found if group.signs)


def worse_levels(site: SiteInput) -> tuple[WorseLevel, ...]:
    """Return the three levels of what to do when it got worse, the mildest first."""
    catalogue, voice = site.catalogue, site.voice
    worse = catalogue.safety.worse
    plans = (
        (Level.TODAY, voice.pgettext("how fast", "Today"), worse.today, None),
        (
            Level.CLINIC,
            voice.pgettext("how fast", "Within a day"),
            worse.clinic,
            clinic_line(catalogue, voice),
        ),
        (
            Level.EMERGENCY,
            voice.pgettext("how fast", "At once"),
            worse.emergency,
            emergency_line(catalogue, voice),
        ),
    )
    return tuple(
        WorseLevel(when, voice.opening(term(voice, level)), acts, phone)
        for level, when, acts, phone in plans
        if acts
    )
