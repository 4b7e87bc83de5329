"""Puts what a booklet says into a few facts, and finds a code that somebody read out or typed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import fields, is_dataclass
from enum import Enum
from typing import Any

from generator.catalogue.arranged import Order
from generator.catalogue.base import Text
from generator.catalogue.daily_life import DailyLife
from generator.catalogue.edition_values import LONG, facts_fingerprint
from generator.catalogue.editions import Edition, EditionLedger, ExerciseFact, Facts, ItemFact, RuleFact
from generator.catalogue.exercise import Exercise, Variation
from generator.catalogue.fingerprints import as_printed, fingerprint, is_edition_code
from generator.catalogue.in_force import in_force
from generator.catalogue.programme import Phase, Programme, Restriction, Use
from generator.catalogue.values import Catalogue
from generator.problems import Place, Problem, Rule, did_you_mean
from generator.wording.isolation import plain

BAD_CODE = Rule(
    "edition-code-wrong",
    "An edition code in the ledger of editions has a typing error: its last character does not fit.",
    "The ledger was edited by hand.",
    "put the ledger back as it was recorded; it is written by: editions record",
)
TWICE = Rule(
    "edition-twice",
    "One edition code stands in two entries of the ledger of editions, so nobody can tell which it means.",
    "Lines were copied, or two versions of the ledger were joined.",
    "delete the entry that was added",
    safety=True,
)
NOT_AS_RECORDED = Rule(
    "edition-changed",
    "An entry in the ledger of editions does not say what was recorded.",
    "The ledger was edited by hand: its fingerprint no longer fits.",
    "put the ledger back as it was recorded; it is written by: editions record",
    safety=True,
)
UNKNOWN_CODE = Rule(
    "edition-unknown",
    "No edition with this code was recorded.",
    "The code was misread, or the booklet was printed from a state that nobody recorded.",
    "read the code again; it stands at the foot of every sheet",
)
RULES = (BAD_CODE, TWICE, NOT_AS_RECORDED, UNKNOWN_CODE)

_SHORT = 12
# The code was typed at the command line, not in a file.
_TYPED = Place("CODE")


def facts_of(catalogue: Catalogue, order: Order, phase: Phase, withheld: Iterable[str]) -> Facts:
    """Return what the booklet of a phase says in the language of the catalogue.

    withheld: variations (``exercise/variation``) that the phase does not offer.
    """
    programme = catalogue.programmes[order.programme]
    hidden = frozenset(withheld)
    places = {placed.exercise: placed.place for placed in order.of_phase(phase.number)}
    uses = sorted(phase.uses, key=lambda use: places.get(use.use, 0))
    safety, clinic = catalogue.safety, catalogue.clinic
    goals = (phase.name, phase.summary, phase.goals, phase.going_up, phase.milestones)
    kept = (safety.deferral, safety.deferral_full, safety.start_only, safety.stay, safety.pain_rule)
    around = (programme.name, programme.operation, programme.delay_reasons, clinic.name, clinic.about)
    others = (catalogue.glossary, catalogue.equipment, clinic.demo, safety.demonstration)
    return Facts(
        weeks=(phase.week, phase.delayed_week),
        pain=(phase.pain.during, phase.pain.after, phase.pain.next_morning),
        support=_short(phase.weight_bearing, phase.walking_aid, phase.brace),
        avoid=_short(phase.avoid),
        help=_short(safety.signs, safety.worse, safety.fall, safety.working_area, safety.helper, kept),
        telephone=_short(clinic.telephone),
        phase=_short(goals),
        rest=_short(around, others),
        exercises=tuple(
            _exercise(catalogue.exercises[use.use], use, phase, places.get(use.use, 0), hidden)
            for use in uses
        ),
        rules=tuple(_rule(rule) for rule in in_force(programme, phase)),
        daily_life=tuple(_item(catalogue.daily_life[id_]) for id_ in phase.daily_life),
    )


def protocol_fingerprint(catalogue: Catalogue, programme: Programme, order: Order) -> str:
    """Return the fingerprint of what a programme's protocol says."""
    said = (programme, order.places, catalogue.safety, catalogue.clinic, catalogue.studies)
    return fingerprint("protocol", *said)[:LONG]


def _exercise(exercise: Exercise, use: Use, phase: Phase, place: int, hidden: frozenset[str]) -> ExerciseFact:
    dose = exercise.dose
    form = exercise.variations.get(use.variation or "")
    offered = tuple(
        one
        for id_, one in exercise.variations.items()
        if id_ != use.variation and f"{exercise.id}/{id_}" not in hidden
    )
    week = phase.week if use.week is None else use.week
    late = phase.delayed_week + week - phase.week if use.delayed_week is None else use.delayed_week
    legs = (exercise.operated_leg, exercise.other_leg)
    return ExerciseFact(
        id=exercise.id,
        name=_words(exercise.name),
        variation=use.variation or "",
        position=place,
        weeks=(week, late),
        dose=use.dose_steps,
        often=(use.times_a_day, use.days_a_week, use.rest_days),
        pace=(dose.hold.usual if dose.hold else 0, dose.tempo.lift, dose.tempo.lower, dose.rest),
        forms=tuple(one.id for one in offered),
        when=_short(use.when) if use.when else "",
        words=_short(_how(exercise), form and (form.name, form.change), [_form(one) for one in offered]),
        safety=_short(_guards(exercise, use), form and form.cautions, [one.cautions for one in offered]),
        pictures=_short(exercise.poses, exercise.figure, form and (form.poses, form.figure), legs),
    )


def _how(exercise: Exercise) -> tuple[Any, ...]:
    steps = (exercise.set_up, exercise.start, exercise.steps, exercise.finish, exercise.feel)
    held = (exercise.surface, exercise.posture, exercise.equipment, exercise.anchor, exercise.sides)
    return (exercise.name, exercise.purpose, steps, held)


def _form(form: Variation) -> tuple[Any, ...]:
    return (form.id, form.name, form.change)


def _guards(exercise: Exercise, use: Use) -> tuple[Any, ...]:
    """Return what keeps an exercise safe."""
    said = (exercise.cautions, exercise.limits, exercise.not_feel, exercise.mistakes, use.cautions, use.note)
    held = (exercise.support, exercise.helper, exercise.helper_role, exercise.strains)
    return (said, held)


def _rule(rule: Restriction) -> RuleFact:
    """Return the facts of a restriction; what it forbids is all that it states beside words and source."""
    told = ("place", "places", "words", "why", "source")
    stated = {name: value for name, value in vars(rule).items() if name not in told}
    return RuleFact(
        id=rule.id,
        words=_words(rule.words),
        weeks=(rule.until.week, rule.until.delayed_week),
        limit=_short(type(rule).__name__, stated),
    )


def _item(item: DailyLife) -> ItemFact:
    safety = (item.avoid, item.cautions, item.helper, item.helper_role, item.support, item.strains)
    return ItemFact(
        id=item.id,
        name=_words(item.name),
        words=_short(item.name, item.purpose, item.steps, item.finish, item.equipment),
        safety=_short(safety),
        pictures=_short(item.poses, item.figure, item.operated_leg, item.other_leg),
    )


def _words(text: Text) -> str:
    return " ".join(plain(str(text)).split())


def _short(*values: Any) -> str:
    return fingerprint([_said(value) for value in values])[:_SHORT]


def _said(value: Any) -> Any:
    """Return what a reader meets of a value: words without their source, and no key that says nothing.

    Names of keys are left out too: a key that is added one day must not make old paper look changed.
    """
    if isinstance(value, Text):
        return _words(value)
    if is_dataclass(value) and not isinstance(value, type):
        told = (_said(getattr(value, item.name)) for item in fields(value) if item.compare)
        return [one for one in told if one not in (None, "", [], False)]
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, Mapping):
        return [[key, _said(item)] for key, item in value.items()]
    return [_said(item) for item in value] if isinstance(value, list | tuple) else value


def ledger_problems(ledger: EditionLedger) -> Iterator[Problem]:
    """Yield what is wrong with a ledger that could be read.

    A code may come again only with another kind of booklet that says the same.
    """
    seen: dict[str, Edition] = {}
    kinds: set[tuple[str, str]] = set()
    for edition in ledger.editions:
        for sheet in edition.sheets:
            if not is_edition_code(sheet.code):
                yield BAD_CODE.at(sheet.at("code"), f"'{sheet.code}' is no edition code")
            first = seen.setdefault(sheet.code, edition)
            if _means(first) != _means(edition) or (sheet.code, sheet.kind) in kinds:
                line = first.place.line
                message = f"the code '{sheet.code}' stands in two entries (the first is in line {line})"
                yield TWICE.at(sheet.at("code"), message)
            kinds.add((sheet.code, sheet.kind))
        if edition.facts is not None and facts_fingerprint(edition.facts) != edition.fingerprint:
            message = "this entry does not have the fingerprint of what it says"
            yield NOT_AS_RECORDED.at(edition.at("fingerprint"), message)


def _means(edition: Edition) -> tuple[object, ...]:
    return (edition.programme, edition.phase, edition.language, edition.fingerprint)


def typed_code(typed: str, ledger: EditionLedger) -> str | Problem:
    """Return the recorded code that was typed, or what is wrong with it, the nearest recorded offered."""
    code = as_printed(typed)
    known = [sheet.code for edition in ledger.editions for sheet in edition.sheets]
    if code in known:
        return code
    hint = did_you_mean(code or typed, known)
    if not known:
        hint = "nothing was recorded yet; record what goes out with: editions record"
    if not is_edition_code(typed):
        message = f"'{typed}' is no edition code: its check character does not fit"
        return UNKNOWN_CODE.at(_TYPED, message, hint)
    return UNKNOWN_CODE.at(_TYPED, f"no edition '{code}' was recorded", hint)
