"""Makes the pages on which a clinician can defend each choice: evidence, order, rules, and their sources."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from generator.catalogue.clinic import Study
from generator.catalogue.programme import Phase, Programme
from generator.website.addresses import (
    clinicians_page,
    evidence_page,
    exercise_page,
    order_page,
    patient_page,
    phase_page,
    programme_page,
    protocol_page,
    reporting_page,
)
from generator.website.allowed import week_tables
from generator.website.evidence import Evidence, PlaceRow, evidence_of, place_row
from generator.website.forms import effect_rows, hanging_rows
from generator.website.gravity import gainsaid, gravity_view
from generator.website.page import Page
from generator.website.phase import booklet_detail
from generator.website.protocol_rows import Sourced, phase_row, phase_title, rule_row, sourced
from generator.website.values import DataKind, SiteInput
from generator.wording.phrases import file_size, list_of, people, row_of
from generator.wording.terms import clinical_term, term
from generator.wording.voice import Voice


@dataclass(frozen=True)
class Way:
    """A page of the programme for clinicians: where it lies, its name, and what it holds."""

    path: str
    name: str
    text: str = ""


@dataclass(frozen=True)
class Section:
    """A part of a page with an anchor of its own."""

    id: str
    name: str


@dataclass(frozen=True)
class OrderRow:
    """A phase with its exercises in the order of introduction, and where a model gainsays them."""

    title: str
    places: tuple[PlaceRow, ...]
    gainsaid: tuple[str, ...]


@dataclass(frozen=True)
class StudyRow:
    """A study in full: who and what was measured in words, and how sure the entry is."""

    study: Study
    citation: str
    people: str
    measured: str
    source: Sourced


def clinicians_pages(site: SiteInput) -> tuple[Page, ...]:
    """Return the pages of every programme for clinicians: overview, protocol, order, evidence."""
    return tuple(
        page
        for programme in site.catalogue.programmes.values()
        for page in (
            _overview(site, programme),
            _protocol(site, programme),
            _order(site, programme),
            _evidence(site, programme),
        )
    )


def _ways(site: SiteInput, programme: Programme) -> Iterator[Way]:
    """Yield the pages of a programme in the order of reading."""
    gettext = site.voice.gettext
    yield Way(clinicians_page(programme.id), gettext("Overview"))
    yield Way(
        protocol_page(programme.id),
        gettext("Protocol"),
        gettext("Phase by phase, and the restrictions with their sources"),
    )
    yield Way(order_page(programme.id), gettext("Order"), gettext("Why each exercise stands where it stands"))
    yield Way(evidence_page(programme.id), gettext("Evidence"), gettext("Every measurement, and the studies"))
    if programme.id in site.reports:
        yield Way(
            reporting_page(programme.id),
            gettext("Reporting"),
            gettext("Reporting checklists: CERT and PEMAT-P"),
        )


def _page(
    site: SiteInput,
    programme: Programme,
    kind: tuple[str, str, str],
    sections: tuple[Section, ...],
    values: Mapping[str, Any],
    required: tuple[str, ...] = (),
) -> Page:
    """Return one page; kind: its path, its template and its name."""
    path, template, name = kind
    return Page(
        path=path,
        template=template,
        title=site.voice.gettext("{programme}, for clinicians: {part}").format(
            programme=programme.name, part=name
        ),
        description=site.voice.gettext("Evidence, order and rules, with their sources"),
        values={
            "programme": programme,
            "programme_page": programme_page(programme.id),
            "overview": clinicians_page(programme.id),
            "evidence_page": evidence_page(programme.id),
            "pages": tuple(_ways(site, programme)),
            "here": path,
            "heading": name,
            "sections": sections,
            "page_of": lambda exercise: exercise_page(exercise.id),
            **values,
        },
        doses=None,
        required=required,
        found=False,
        script="tables",
    )


def _overview(site: SiteInput, programme: Programme) -> Page:
    voice, protocol = site.voice, site.protocols.get(programme.id)
    rules = tuple(rule_row(voice, rule) for rule in programme.restrictions)
    return _page(
        site,
        programme,
        (clinicians_page(programme.id), "clinicians.html", voice.gettext("Overview")),
        (),
        {
            "aim": term(voice, programme.aim),
            "muscles": list_of(voice, (str(site.catalogue.muscles[m].name) for m in programme.muscles)),
            "sheets": tuple(
                Way(patient_page(programme.id, phase.number), phase_title(voice, phase))
                for phase in programme.phases
            ),
            "week_tables": week_tables(site, programme),
            "forbids": {row.restriction.id: row.forbids for row in rules},
            "data": tuple(_data(site, programme)),
            "reviews": tuple(_reviews(site, programme)),
            "protocol": protocol,
            "protocol_detail": booklet_detail(voice, protocol),
        },
    )


def _reviews(site: SiteInput, programme: Programme) -> Iterator[Way]:
    """Yield each part of the programme with its page and how it was reviewed, where that is known."""
    used = dict.fromkeys(use.use for phase in programme.phases for use in phase.uses)
    parts = [
        Way(programme_page(programme.id), str(programme.name)),
        *(
            Way(phase_page(programme.id, one.number), phase_title(site.voice, one))
            for one in programme.phases
        ),
        *(Way(exercise_page(id_), str(site.catalogue.exercises[id_].name)) for id_ in used),
    ]
    for part in parts:
        if words := site.reviewed.get(part.path):
            yield replace(part, text=words)


def _protocol(site: SiteInput, programme: Programme) -> Page:
    voice = site.voice
    rules = tuple(rule_row(voice, rule) for rule in programme.restrictions)
    return _page(
        site,
        programme,
        (protocol_page(programme.id), "clinicians_protocol.html", voice.gettext("Protocol")),
        (
            Section("protocol", voice.gettext("The protocol, phase by phase")),
            Section("rules", voice.gettext("Restrictions and their sources")),
        ),
        {
            "phases": tuple(phase_row(site, programme, phase) for phase in programme.phases),
            "rules": rules,
        },
        tuple(row.source.text for row in rules),
    )


def _order(site: SiteInput, programme: Programme) -> Page:
    gettext = site.voice.gettext
    hanging, gravity = tuple(hanging_rows(site, programme)), gravity_view(site, programme)
    sections = [Section("order", gettext("How the order came out"))]
    sections += [Section("hanging", gettext("What hangs on one study"))] if hanging else []
    sections += [Section("gravity", gettext("What gravity asks, by a model"))] if gravity else []
    return _page(
        site,
        programme,
        (order_page(programme.id), "clinicians_order.html", gettext("Order")),
        tuple(sections),
        {
            "phases": tuple(_order_row(site, programme, phase) for phase in programme.phases),
            "hanging": hanging,
            "gravity": gravity,
        },
    )


def _order_row(site: SiteInput, programme: Programme, phase: Phase) -> OrderRow:
    placed = site.orders[programme.id].of_phase(phase.number)
    return OrderRow(
        phase_title(site.voice, phase),
        tuple(place_row(site, programme, one) for one in placed),
        tuple(gainsaid(site, programme, phase.number)),
    )


def _evidence(site: SiteInput, programme: Programme) -> Page:
    gettext, evidence = site.voice.gettext, evidence_of(site, programme)
    effects = tuple(effect_rows(site, programme))
    sections = [Section("evidence", gettext("Evidence for each exercise"))]
    sections += [Section("forms", gettext("What easier and harder forms change"))] if effects else []
    sections += [Section("studies", gettext("Studies"))]
    return _page(
        site,
        programme,
        (evidence_page(programme.id), "clinicians_evidence.html", gettext("Evidence")),
        tuple(sections),
        {
            "evidence": evidence,
            "effects": effects,
            "studies": tuple(_study(site.voice, one) for one in _cited(site, evidence)),
        },
    )


def _cited(site: SiteInput, evidence: tuple[Evidence, ...]) -> list[Study]:
    cited = {row.study.id for one in evidence for row in one.rows}
    return sorted(
        (site.catalogue.studies[id_] for id_ in cited), key=lambda one: (one.authors, one.year, one.id)
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


def _study(voice: Voice, study: Study) -> StudyRow:
    where = " ".join(part for part in (study.journal, study.volume) if part)
    where += f":{study.pages}" if study.pages else ""
    parts = (study.electrode, study.normalisation, study.part)
    measured = row_of(voice, (clinical_term(voice, part) for part in parts))
    citation = f"{study.authors} {study.year}. {study.title}. {where}."
    counted = people(voice, study.n) if study.n else ""
    return StudyRow(study, citation, counted, voice.opening(measured), sourced(voice, study.status))
