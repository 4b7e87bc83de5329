"""Makes the pages on which a clinician narrows a phase to one patient, and prints the sheet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from generator.catalogue.choices import PhaseChoices, limit_name
from generator.catalogue.one_patient import PATIENT_WEIGHT, Limit, OperatedSide, Wishes
from generator.catalogue.programme import (
    MovementRestriction,
    Phase,
    Programme,
    Restriction,
    WeightRestriction,
)
from generator.catalogue.terms import Leg
from generator.website.addresses import clinicians_page, patient_page, programme_page
from generator.website.page import Page
from generator.website.patient_cards import SheetCard, cards_of, word
from generator.website.phase import pain_view, ribbon
from generator.website.protocol_rows import phase_title
from generator.website.safety import sign_groups, worse_levels
from generator.website.shared import forbidden_in, untranslated
from generator.website.values import PaperKind, SiteInput
from generator.wording.one_patient import restriction_words
from generator.wording.phrases import angle, pain
from generator.wording.terms import clinical_term, term

STANDARD = "standard"


@dataclass(frozen=True)
class Option:
    """Something to choose: as the command line writes it, in words, and the sentence on the sheet, if any."""

    value: str
    words: str
    said: str = ""


@dataclass(frozen=True)
class Movement:
    """A movement that can be limited further: as the command line writes it, its name, and the limits."""

    name: str
    words: str
    options: tuple[Option, ...]


def patient_pages(site: SiteInput) -> tuple[Page, ...]:
    """Return a page for each phase whose choices were worked out."""
    return tuple(
        _page(site, programme, phase, site.choices[programme.id, phase.number])
        for programme in site.catalogue.programmes.values()
        for phase in programme.phases
        if (programme.id, phase.number) in site.choices
    )


def _page(site: SiteInput, programme: Programme, phase: Phase, choices: PhaseChoices) -> Page:
    voice, safety = site.voice, site.catalogue.safety
    cards = cards_of(site, programme, phase, choices)
    forbidden = forbidden_in(voice, programme, phase)
    # What only comes in place of something else is hidden until it does, so the audit cannot read it.
    shown = tuple(one for one in cards if not one.brought)
    title = voice.gettext("Sheet for one patient: {programme}, {phase}")
    return Page(
        path=patient_page(programme.id, phase.number),
        template="patient.html",
        title=title.format(programme=programme.name, phase=phase_title(voice, phase)),
        description=voice.gettext("Fewer exercises, smaller doses, tighter limits, and the sheet to print"),
        values={
            "programme": programme,
            "programme_page": programme_page(programme.id),
            "overview": clinicians_page(programme.id),
            "phase": phase,
            "phase_title": phase_title(voice, phase),
            "steps": _steps(site, programme, phase),
            "cards": cards,
            "path": patient_page(programme.id, phase.number),
            "stop_points": _stop_points(site, phase),
            "forbidden": forbidden,
            "covered": covered,
            "pain": pain_view(voice, phase),
            "groups": sign_groups(site),
            "worse": worse_levels(site),
            "safety": safety,
            "untranslated": untranslated(phase, tuple(one.exercise for one in cards), safety),
            **_choices(site, programme, phase, choices),
        },
        doses=tuple(dict.fromkeys(big for card in shown for big in card.steps)),
        required=(
            *_warnings(site, phase),
            *(str(rule.words) for group in forbidden for rule in group.rules),
            *(text for card in shown for text in _required(card)),
        ),
        found=False,
        script="patient",
    )


def _warnings(site: SiteInput, phase: Phase) -> Iterator[str]:
    """Yield the safety texts that no sheet may lack."""
    safety = site.catalogue.safety
    gate = (safety.start_only, safety.stay) if phase.number > 1 else (safety.stay,)
    yield from map(str, (*gate, safety.deferral_full, *safety.worse.today))


def _stop_points(site: SiteInput, phase: Phase) -> tuple[str, ...]:
    voice = site.voice
    limit = voice.gettext("Pain at the operated place goes above {limit}.")
    return (
        limit.format(limit=pain(voice, phase.pain.during)),
        voice.gettext("The pain is sharp or sudden."),
    )


def _required(card: SheetCard) -> Iterator[str]:
    yield from map(
        str, (card.exercise.name, card.exercise.start, *card.exercise.steps, *card.exercise.limits)
    )
    for one in card.cautions:
        yield from map(str, (one.hazard, one.consequence, one.avoid))


def _steps(site: SiteInput, programme: Programme, phase: Phase) -> tuple[object, ...]:
    """Return the phases as a ribbon that leads to their sheets."""
    found = ribbon(site, programme, phase.number)
    return tuple(replace(one, page=patient_page(programme.id, number)) for number, one in enumerate(found, 1))


def _choices(site: SiteInput, programme: Programme, phase: Phase, choices: PhaseChoices) -> dict[str, Any]:
    known = site.catalogue.exercises
    command = f"phasebook booklet {programme.id} {phase.number}"
    return {
        "sides": tuple(_sides(site, programme)),
        "avoid": tuple(_avoid(site, choices)),
        "things": tuple((id_, site.catalogue.equipment[id_].name) for id_ in choices.things),
        "movements": tuple(_movements(site, choices)),
        "weights": tuple(_weights(site, choices)),
        "mastered": tuple((id_, known[id_].name) for id_ in choices.mastered),
        "languages": site.languages,
        "kinds": tuple(_kinds(site)),
        "command": command,
        "help": f"{command} --help",
    }


def _sides(site: SiteInput, programme: Programme) -> Iterator[Option]:
    voice = site.voice
    yield Option(OperatedSide.LEFT.value, voice.pgettext("operated side", "left"))
    yield Option(OperatedSide.RIGHT.value, voice.pgettext("operated side", "right"))
    if programme.both_sides:
        yield Option(OperatedSide.BOTH.value, voice.pgettext("operated side", "left and right"))


def _avoid(site: SiteInput, choices: PhaseChoices) -> Iterator[Option]:
    """Yield what can be avoided, as far as the phase has it; a strain and a position may share a word."""
    voice, uses = site.voice, (*choices.uses, *choices.brought)
    words = {
        **{strain: str(site.catalogue.strains[strain].name) for one in uses for strain in one.strains},
        **{word(place): clinical_term(voice, place) for one in uses for place in one.positions},
        **{word(place): term(voice, place) for one in uses for place in one.surfaces},
    }
    for value, said in words.items():
        yield Option(value, voice.opening(said))


def _movements(site: SiteInput, choices: PhaseChoices) -> Iterator[Movement]:
    voice = site.voice
    for name in dict.fromkeys(map(limit_name, choices.limits)):
        limits = [one for one in choices.limits if limit_name(one) == name]
        words = voice.gettext("{joint} {movement}").format(
            joint=clinical_term(voice, limits[0].joint), movement=clinical_term(voice, limits[0].movement)
        )
        yield Movement(name, voice.opening(words), tuple(_limit(site, one) for one in reversed(limits)))


def _limit(site: SiteInput, limit: Limit) -> Option:
    # One at a time: limits of the same movement share the id that their words are found by.
    said = restriction_words(site.voice, Wishes(limits=(limit,)))
    return Option(f"{limit.degrees:g}", angle(site.voice, limit.degrees), str(said[limit.id]))


def _weights(site: SiteInput, choices: PhaseChoices) -> Iterator[Option]:
    voice = site.voice
    for one in choices.weights:
        said = restriction_words(voice, Wishes(weight_bearing=one))
        yield Option(word(one), voice.opening(clinical_term(voice, one)), str(said[PATIENT_WEIGHT]))


def _kinds(site: SiteInput) -> Iterator[Option]:
    voice = site.voice
    yield Option(STANDARD, voice.gettext("Booklet"))
    names = {
        PaperKind.SHEET: voice.gettext("One sheet for the fridge door"),
        PaperKind.LARGE: voice.gettext("Large print"),
        PaperKind.POCKET: voice.gettext("Small pages, for a telephone or for reading aloud"),
        PaperKind.FOLD: voice.gettext("To fold: print on both sides, turn over the short edge, staple"),
    }
    for kind, words in names.items():
        yield Option(kind.value, words)


def covered(rule: Restriction) -> str:
    """Return which choice makes a restriction superfluous on the sheet: a movement, ``weight``, or nothing.

    Side by side two limits on the same thing would confuse; all that can be chosen is tighter.
    """
    if rule.leg is not Leg.OPERATED:
        return ""
    if isinstance(rule, WeightRestriction):
        return "weight"
    if isinstance(rule, MovementRestriction) and rule.limit is not None:
        return f"{rule.joint.value}.{rule.movement.value}".replace(" ", "-")
    return ""
