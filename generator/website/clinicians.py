"""Makes the page on which a clinician can defend each choice: evidence, order, rules, and their sources."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.catalogue.base import Source
from generator.catalogue.clinic import Study
from generator.catalogue.programme import (
    LoadRestriction,
    MovementRestriction,
    Phase,
    PositionRestriction,
    Programme,
    Restriction,
    WeightRestriction,
)
from generator.website.addresses import clinicians_page, exercise_page, programme_page, reporting_page
from generator.website.allowed import week_tables
from generator.website.evidence import PlaceRow, evidence_of, place_row
from generator.website.forms import effect_rows, hanging_rows
from generator.website.gravity import gainsaid, gravity_view
from generator.website.page import Page
from generator.website.phase import Tested, booklet_detail, tested
from generator.website.shared import end_words
from generator.website.values import DataKind, SiteInput
from generator.wording.phrases import (
    angle,
    file_size,
    kilograms,
    list_of,
    number,
    pain,
    people,
    percent,
    row_of,
)
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
    places: tuple[PlaceRow, ...]
    gainsaid: tuple[str, ...]


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


@dataclass(frozen=True)
class StudyRow:
    """A study in full: who and what was measured in words, and how sure the entry is."""

    study: Study
    citation: str
    people: str
    measured: str
    source: Sourced


def clinicians_pages(site: SiteInput) -> tuple[Page, ...]:
    """Return the clinicians' page of every programme."""
    return tuple(_page(site, programme) for programme in site.catalogue.programmes.values())


def _page(site: SiteInput, programme: Programme) -> Page:
    evidence = evidence_of(site, programme)
    cited = {row.study.id for one in evidence for row in one.rows}
    rules = tuple(_rule(site.voice, rule) for rule in programme.restrictions)
    protocol = site.protocols.get(programme.id)
    title = site.voice.gettext("{programme}: for clinicians").format(programme=programme.name)
    return Page(
        path=clinicians_page(programme.id),
        template="clinicians.html",
        title=title,
        description=site.voice.gettext("Evidence, order and rules, with their sources"),
        values={
            "programme": programme,
            "aim": term(site.voice, programme.aim),
            "muscles": list_of(site.voice, (str(site.catalogue.muscles[m].name) for m in programme.muscles)),
            "programme_page": programme_page(programme.id),
            "phases": tuple(_phase(site, programme, phase) for phase in programme.phases),
            "evidence": evidence,
            "effects": tuple(effect_rows(site, programme)),
            "hanging": tuple(hanging_rows(site, programme)),
            "gravity": gravity_view(site, programme),
            "rules": rules,
            "week_tables": week_tables(site, programme),
            "forbids": {row.restriction.id: row.forbids for row in rules},
            "data": tuple(_data(site, programme)),
            "reporting": reporting_page(programme.id) if programme.id in site.reports else "",
            "protocol": protocol,
            "protocol_detail": booklet_detail(site.voice, protocol),
            "studies": tuple(_study(site.voice, one) for one in _sorted(site, cited)),
            "page_of": lambda exercise: exercise_page(exercise.id),
        },
        doses=None,
        required=tuple(row.source.text for row in rules),
        found=False,
    )


def _data(site: SiteInput, programme: Programme) -> Iterator[tuple[str, str, str]]:
    """Yield path, name and size of each file with the programme's evidence."""
    voice = site.voice
    names = {
        DataKind.ORDER_TABLE: voice.gettext("Order and estimates as a table (CSV)"),
        DataKind.ORDER: voice.gettext("Order, estimates and reasons for programs (JSON)"),
        DataKind.STUDIES: voice.gettext("Studies for a reference manager (CSL-JSON)"),
    }
    for fact in site.data.get(programme.id, ()):
        yield fact.path, names[fact.kind], file_size(voice, fact.size)


def _sorted(site: SiteInput, cited: set[str]) -> list[Study]:
    return sorted(
        (site.catalogue.studies[id_] for id_ in cited), key=lambda one: (one.authors, one.year, one.id)
    )


def _phase(site: SiteInput, programme: Programme, phase: Phase) -> PhaseRow:
    voice, order, limit = site.voice, site.orders[programme.id], phase.pain
    levels = voice.gettext("during {during}, after {after}, next morning {next_morning}")
    return PhaseRow(
        title=voice.gettext("{phase}: {name}").format(
            phase=phase_words(voice, phase.number), name=phase.name
        ),
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
        week_source=_sourced(voice, phase.week_source),
        pain_source=_sourced(voice, limit.source),
        phase=phase,
        milestones=tuple(tested(voice, phase)),
        places=tuple(place_row(site, programme, placed) for placed in order.of_phase(phase.number)),
        gainsaid=tuple(gainsaid(site, programme, phase.number)),
    )


def _sourced(voice: Voice, source: Source) -> Sourced:
    return Sourced(source.text, term(voice, source.status))


def _rule(voice: Voice, rule: Restriction) -> RuleRow:
    return RuleRow(
        rule, voice.opening(_forbids(voice, rule)), end_words(voice, rule.until), _sourced(voice, rule.source)
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


def _study(voice: Voice, study: Study) -> StudyRow:
    where = " ".join(part for part in (study.journal, study.volume) if part)
    where += f":{study.pages}" if study.pages else ""
    parts = (study.electrode, study.normalisation, study.part)
    measured = row_of(voice, (clinical_term(voice, part) for part in parts))
    citation = f"{study.authors} {study.year}. {study.title}. {where}."
    counted = people(voice, study.n) if study.n else ""
    return StudyRow(study, citation, counted, voice.opening(measured), _sourced(voice, study.status))
