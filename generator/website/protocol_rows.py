"""Words a programme's protocol for clinicians: phases and restrictions in the trade's terms, with sources."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.base import Source
from generator.catalogue.programme import (
    LoadRestriction,
    MovementRestriction,
    Phase,
    PositionRestriction,
    Programme,
    Restriction,
    WeightRestriction,
)
from generator.website.phase import Tested, tested
from generator.website.shared import end_words
from generator.website.values import SiteInput
from generator.wording.phrases import angle, kilograms, list_of, number, pain, percent, row_of
from generator.wording.phrases import phase as phase_words
from generator.wording.terms import clinical_term, term
from generator.wording.voice import Voice
from generator.wording.weeks import both_tracks


@dataclass(frozen=True)
class PhaseRow:
    """A phase for clinicians: weeks, band, highest demand and pain limit, with their sources in words."""

    title: str
    weeks: str
    band: str
    demand: str
    pain: str
    set_by: str
    week_source: Sourced
    pain_source: Sourced
    phase: Phase
    milestones: tuple[Tested, ...]


@dataclass(frozen=True)
class Sourced:
    """A source as typed, and how sure it is in words."""

    text: str
    status: str


@dataclass(frozen=True)
class RuleRow:
    """A restriction for clinicians: as said to the patient, in the trade's terms, its end, its source."""

    restriction: Restriction
    forbids: str
    until: str
    source: Sourced


def phase_title(voice: Voice, phase: Phase) -> str:
    """Return number and name of a phase."""
    words = voice.gettext("{phase}: {name}")
    return words.format(phase=phase_words(voice, phase.number), name=phase.name)


def phase_row(site: SiteInput, programme: Programme, phase: Phase) -> PhaseRow:
    """Return a phase as clinicians read it."""
    voice, order, limit = site.voice, site.orders[programme.id], phase.pain
    levels = voice.gettext("during {during}, after {after}, next morning {next_morning}")
    return PhaseRow(
        title=phase_title(voice, phase),
        weeks=voice.opening(both_tracks(voice, order.windows[phase.number - 1])),
        band=voice.gettext("above {low}, up to and including {high}").format(
            low=number(voice, phase.band.above), high=number(voice, phase.band.up_to)
        ),
        demand=clinical_term(voice, phase.demand),
        pain=levels.format(
            during=pain(voice, limit.during),
            after=pain(voice, limit.after),
            next_morning=pain(voice, limit.next_morning),
        ),
        set_by=limit.set_by,
        week_source=sourced(voice, phase.week_source),
        pain_source=sourced(voice, limit.source),
        phase=phase,
        milestones=tuple(tested(voice, phase)),
    )


def sourced(voice: Voice, source: Source) -> Sourced:
    """Return a source with how sure it is."""
    return Sourced(source.text, term(voice, source.status))


def rule_row(voice: Voice, rule: Restriction) -> RuleRow:
    """Return a restriction as clinicians read it."""
    return RuleRow(
        rule, voice.opening(_forbids(voice, rule)), end_words(voice, rule.until), sourced(voice, rule.source)
    )


def _forbids(voice: Voice, rule: Restriction) -> str:
    leg = term(voice, rule.leg)
    return voice.gettext("{leg}: {rule}").format(leg=leg, rule=_kind(voice, rule))


def _kind(voice: Voice, rule: Restriction) -> str:
    if isinstance(rule, MovementRestriction):
        return _movement(voice, rule)
    if isinstance(rule, WeightRestriction):
        amounts = [clinical_term(voice, rule.allows)]
        amounts += [kilograms(voice, rule.kilograms)] if rule.kilograms is not None else []
        amounts += [percent(voice, rule.percent)] if rule.percent is not None else []
        return voice.gettext("at most {amount}").format(amount=row_of(voice, amounts))
    if isinstance(rule, PositionRestriction):
        return voice.gettext("not {position}").format(position=clinical_term(voice, rule.position))
    if isinstance(rule, LoadRestriction):
        loads = list_of(voice, (clinical_term(voice, load) for load in rule.loads), "or")
        if rule.kilograms:
            most = kilograms(voice, rule.kilograms)
            return voice.gettext("no {loads} above {most}").format(loads=loads, most=most)
        return voice.gettext("no {loads}").format(loads=loads)
    return voice.gettext("no impact")


def _movement(voice: Voice, rule: MovementRestriction) -> str:
    kinds = list_of(voice, (clinical_term(voice, how) for how in rule.how), "or")
    movement = voice.gettext("{joint} {movement}").format(
        joint=clinical_term(voice, rule.joint), movement=clinical_term(voice, rule.movement)
    )
    words = voice.gettext("no {kinds} {movement}").format(kinds=kinds, movement=movement)
    if rule.limit is not None:
        words = voice.gettext("{rule} beyond {angle}").format(rule=words, angle=angle(voice, rule.limit))
    if rule.against is not None:
        words = row_of(voice, (words, clinical_term(voice, rule.against)))
    return words
