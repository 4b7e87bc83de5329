"""Words what holds for one patient alone: tighter limits, and why something is not in the booklet."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Any

from generator.catalogue.base import Text
from generator.catalogue.clinic import Equipment, Strain
from generator.catalogue.dose import DoseStep
from generator.catalogue.exercise import Exercise
from generator.catalogue.one_patient import (
    PATIENT_WEIGHT,
    ForOnePatient,
    LeftOut,
    LeftOutKind,
    OperatedSide,
    PatientDates,
    Wishes,
)
from generator.catalogue.programme import MovementRestriction, Programme, Restriction
from generator.catalogue.terms import Position, Surface, WeightBearing
from generator.catalogue.values import Catalogue
from generator.wording.doses import told_apart
from generator.wording.phrases import angle, list_of
from generator.wording.restrictions import allowed
from generator.wording.terms import clinical_term, term
from generator.wording.voice import Voice
from generator.wording.weeks import date


@dataclass(frozen=True)
class OutRow:
    """What is left out for the same reason: names, why, and what to do about it."""

    names: tuple[Text, ...]
    why: str
    instead: str


@dataclass(frozen=True)
class PatientWords:
    """What a booklet for one patient says besides the programme, in one language; what is not said is empty.

    side: operated side. surgery, phase, following: days, the last two as "not before". diary: from which day
    its weeks can run. limits, doses, mastered, strained: for the clinician. exercises: not before which days
    they are added. pictured: whether the pictures show the side that was operated.
    """

    side: str
    surgery: str
    phase: str
    following: str
    diary: str
    exercises: tuple[str, ...]
    limits: tuple[str, ...]
    doses: tuple[str, ...]
    mastered: str
    left_out: tuple[OutRow, ...]
    strained: tuple[OutRow, ...]
    pictured: bool

    @property
    def required(self) -> tuple[str, ...]:
        """Return what the audit must find on the sheet for the clinician."""
        rows = (
            words
            for row in (*self.left_out, *self.strained)
            for words in (*map(str, row.names), row.why, row.instead)
        )
        return (*self.limits, *self.doses, *self.exercises, *rows)


def patient_words(
    voice: Voice, catalogue: Catalogue, programme: Programme, told: ForOnePatient
) -> PatientWords:
    """Return the words for one patient; catalogue and programme are localised and narrowed."""
    held = {rule.id: rule for rule in programme.restrictions}
    names = (str(catalogue.exercises[id_].name) for id_ in told.mastered)
    return PatientWords(
        side=_side(voice, told.side) if told.side else "",
        limits=tuple(voice.opening(_limit(voice, held[id_])) for id_ in told.added),
        doses=tuple(_dose(voice, catalogue.exercises[id_], *steps) for id_, *steps in told.dosed),
        mastered=list_of(voice, names),
        left_out=_gathered(_row(voice, catalogue, programme, one) for one in told.left_out),
        pictured=told.side in (OperatedSide.LEFT, OperatedSide.RIGHT),
        strained=_gathered(_strained(voice, catalogue, id_, strains) for id_, strains in told.strained),
        **_days(voice, catalogue, told.dates),
    )


def _dose(voice: Voice, exercise: Exercise, begins: DoseStep, usual: DoseStep) -> str:
    first, other = told_apart(voice, (begins, usual), exercise.dose)
    words = voice.gettext("{exercise}: begins with {dose}; the phase begins with {usual}.")
    return words.format(exercise=exercise.name, dose=first, usual=other)


def _gathered(rows: Iterable[OutRow]) -> tuple[OutRow, ...]:
    """Return the rows with those of the same reason and advice in one, in the order of the first of them."""
    found: dict[tuple[str, str], tuple[Text, ...]] = {}
    for row in rows:
        key = (row.why, row.instead)
        found[key] = (*found.get(key, ()), *row.names)
    return tuple(OutRow(names, why, instead) for (why, instead), names in found.items())


def _row(voice: Voice, catalogue: Catalogue, programme: Programme, one: LeftOut) -> OutRow:
    if one.replaced_by is not None:
        name = catalogue.exercises[one.replaced_by].name
        instead = voice.gettext("Instead: {exercise}.").format(exercise=name)
    elif one.kind in (LeftOutKind.ASKED, LeftOutKind.NOT_CHOSEN):
        instead = voice.gettext("Nothing was put in its place.")
    elif one.daily_life:
        instead = voice.gettext("Explain to the patient how to do it.")
    else:
        instead = voice.gettext("No alternative passed. Please decide.")
    items = catalogue.daily_life if one.daily_life else catalogue.exercises
    return OutRow((items[one.item].name,), _why(voice, catalogue, programme, one), instead)


def _strained(voice: Voice, catalogue: Catalogue, item: str, strains: tuple[str, ...]) -> OutRow:
    words = voice.gettext("It stays in, and strains: {what}.")
    return OutRow(
        (catalogue.daily_life[item].name,),
        words.format(what=list_of(voice, _names(catalogue.strains, strains))),
        voice.gettext("Go through it with the patient."),
    )


def _days(voice: Voice, catalogue: Catalogue, dates: PatientDates | None) -> dict[str, Any]:
    if dates is None:
        return {"surgery": "", "phase": "", "following": "", "diary": "", "exercises": ()}
    words = voice.gettext("If you are told to start on {first}, the second week begins on {second}.")
    second = dates.phase + datetime.timedelta(weeks=1)
    later = voice.gettext("{exercise}: not before {date}.")
    return {
        "surgery": date(voice, dates.surgery),
        "phase": voice.gettext("This phase: not before {date}.").format(date=date(voice, dates.phase)),
        "following": (
            voice.gettext("The next phase: not before {date}.").format(date=date(voice, dates.following))
            if dates.following
            else ""
        ),
        "diary": words.format(first=date(voice, dates.phase), second=date(voice, second)),
        "exercises": tuple(
            later.format(exercise=catalogue.exercises[id_].name, date=date(voice, day))
            for id_, day in dates.exercises.items()
        ),
    }


def restriction_words(voice: Voice, wishes: Wishes) -> Mapping[str, Text]:
    """Return the words of the limits set for one patient, by the ids of `progression.one_patient`."""
    found = {
        "why": voice.gettext("Your surgeon or physiotherapist has set this limit for you."),
        "release": voice.gettext("Your surgeon or physiotherapist has lifted this limit."),
        "source": voice.gettext("Set for one patient by the treating clinician"),
    }
    for limit in wishes.limits:
        words = voice.gettext("{joint}, {movement}: no further than {angle}.").format(
            joint=term(voice, limit.joint),
            movement=term(voice, limit.movement),
            angle=angle(voice, limit.degrees),
        )
        found[limit.id] = voice.opening(words)
    if wishes.weight_bearing is not None:
        found[PATIENT_WEIGHT] = _weight(voice, wishes.weight_bearing)
    return {key: Text(words, words=words, language=voice.code) for key, words in found.items()}


def _weight(voice: Voice, allows: WeightBearing) -> str:
    """Return how much weight the operated leg may take, as an instruction."""
    return {
        WeightBearing.NONE: voice.gettext("Put no weight on your operated leg."),
        WeightBearing.TOUCH: voice.gettext("Let your operated foot touch the floor, but do not lean on it."),
        WeightBearing.PARTIAL: voice.gettext(
            "Put only part of your weight on your operated leg, as you were shown."
        ),
        WeightBearing.AS_TOLERATED: voice.gettext(
            "Put as much weight on your operated leg as is comfortable."
        ),
    }[allows]


def _side(voice: Voice, side: OperatedSide) -> str:
    return {
        OperatedSide.LEFT: voice.pgettext("operated side", "left"),
        OperatedSide.RIGHT: voice.pgettext("operated side", "right"),
        OperatedSide.BOTH: voice.pgettext("operated side", "left and right"),
    }[side]


def _limit(voice: Voice, rule: Restriction) -> str:
    """Return a limit for clinicians: ``hip flexion: only up to 70°``."""
    if isinstance(rule, MovementRestriction):
        parts = {"joint": clinical_term(voice, rule.joint), "movement": clinical_term(voice, rule.movement)}
        what = voice.gettext("{joint} {movement}").format(**parts)
    else:
        what = voice.gettext("weight on the leg")
    left = allowed(voice, rule) or voice.gettext("none")
    return voice.gettext("{what}: {limit}").format(what=what, limit=left)


def _why(voice: Voice, catalogue: Catalogue, programme: Programme, one: LeftOut) -> str:
    """Return in a sentence why something is not in the booklet; `programme`: as narrowed."""
    if one.kind is LeftOutKind.ASKED:
        return voice.gettext("Left out on request.")
    if one.kind is LeftOutKind.NOT_CHOSEN:
        return voice.gettext("Not among the exercises chosen.")
    if one.kind is LeftOutKind.THING:
        words = voice.gettext("Not at hand: {what}.")
        return words.format(what=list_of(voice, _names(catalogue.equipment, one.what)))
    if one.kind is LeftOutKind.STRAIN:
        words = voice.gettext("To be spared: {what}.")
        return words.format(what=list_of(voice, _names(catalogue.strains, one.what)))
    if one.kind is LeftOutKind.LIMIT:
        held = {rule.id: rule for rule in programme.restrictions}
        words = voice.gettext("Goes beyond this patient's limit ({what}).")
        return words.format(what=list_of(voice, (_limit(voice, held[id_]) for id_ in one.what)))
    kind: type[Enum] = Surface if one.kind is LeftOutKind.SURFACE else Position
    words = voice.gettext("To be avoided: {what}.")
    return words.format(what=list_of(voice, (term(voice, kind(value)) for value in one.what)))


def _names(known: Mapping[str, Equipment] | Mapping[str, Strain], ids: Iterable[str]) -> list[str]:
    return [str(known[id_].name) for id_ in ids]
