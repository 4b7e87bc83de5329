"""Compares two states of the content: what changed for whom, and which paper that is out must come back."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from generator.body.shown import facts_of
from generator.catalogue.arranged import Orders
from generator.catalogue.editions import Change, ChangeKind, EditionLedger, Facts, KnownPaper
from generator.catalogue.values import Catalogue
from generator.review.changes import differences
from generator.review.order_moves import Ordered, measured_changes, order_causes
from generator.steps.editions import FactsKey, facts_in, known_paper
from generator.steps.languages import speak_one
from generator.steps.worked import work_out
from generator.wording.edition_words import change_words
from generator.wording.messages import translatable
from generator.wording.voice import voice

_OF_KIND: Mapping[ChangeKind, str] = {
    **dict.fromkeys((ChangeKind.LESS, ChangeKind.DOSE), "dose"),
    ChangeKind.ORDER: "order",
    **dict.fromkeys(
        (
            ChangeKind.NEW_RULE,
            ChangeKind.CHANGED_RULE,
            ChangeKind.RULE_WORDS,
            ChangeKind.RULE_ENDED,
            ChangeKind.LATER,
            ChangeKind.EARLIER,
            ChangeKind.PHASE_LATER,
            ChangeKind.PHASE_EARLIER,
            ChangeKind.PAIN_LOWER,
            ChangeKind.PAIN_HIGHER,
            ChangeKind.SUPPORT,
            ChangeKind.AVOID,
            ChangeKind.WHEN,
        ),
        "restriction",
    ),
    **dict.fromkeys(
        (ChangeKind.SAFETY, ChangeKind.HELP, ChangeKind.TELEPHONE, ChangeKind.ITEM_SAFETY), "safety"
    ),
    **dict.fromkeys(
        (
            ChangeKind.NOT_IN_USE,
            ChangeKind.REMOVED,
            ChangeKind.ADDED,
            ChangeKind.FORM_REMOVED,
            ChangeKind.FORM_ADDED,
            ChangeKind.OTHER_FORM,
            ChangeKind.ITEM_ADDED,
            ChangeKind.ITEM_REMOVED,
        ),
        "selection",
    ),
}


@dataclass(frozen=True)
class State:
    """One state of the content: its catalogue, orders, the ledger in it, and what each booklet says."""

    catalogue: Catalogue
    orders: Orders
    ledger: EditionLedger
    facts: Mapping[FactsKey, Facts]


@dataclass(frozen=True)
class Row:
    """One change of a phase.

    kind: dose, order, restriction, safety, selection or wording. words: as a patient reads it, in the source
    language. because: why the order changed.
    """

    programme: str
    phase: int
    kind: str
    change: Change
    words: str
    because: tuple[str, ...] = ()


@dataclass(frozen=True)
class Sentence:
    """A text under one context as it was and is; empty where it is new or gone."""

    context: str
    before: tuple[str, ...]
    after: tuple[str, ...]


@dataclass(frozen=True)
class Report:
    """Everything that differs. evidence: by exercise or study, each change in a sentence.

    languages: that have to be translated. booklets: recorded ones, the most urgent first.
    """

    rows: tuple[Row, ...]
    sentences: tuple[Sentence, ...]
    evidence: tuple[tuple[str, str], ...]
    languages: tuple[str, ...]
    booklets: tuple[KnownPaper, ...]


def state_of(catalogue: Catalogue, orders: Orders, ledger: EditionLedger, content: Path) -> State:
    """Return a state whose catalogue was read and checked without errors."""
    shown = facts_of(catalogue)
    spoken = [speak_one(catalogue, code, content, shown)[0] for code in catalogue.clinic.languages]
    return State(catalogue, orders, ledger, facts_in(spoken, work_out(catalogue, orders)))


def compare(old: State, new: State) -> Report:
    """Return everything that differs between two states."""
    source = new.catalogue.source_language
    return Report(
        rows=tuple(_rows(old, new)),
        sentences=tuple(_sentences(old.catalogue, new.catalogue)),
        evidence=tuple(_evidence(old, new)),
        languages=tuple(code for code in new.catalogue.clinic.languages if code != source),
        booklets=_booklets(old, new),
    )


def _rows(old: State, new: State) -> Iterator[Row]:
    """Yield the changes of each phase in the source language, what keeps people safe first."""
    source = new.catalogue.source_language
    before = {key[:2]: facts for key, facts in old.facts.items() if key[2] == old.catalogue.source_language}
    after = {key[:2]: facts for key, facts in new.facts.items() if key[2] == source}
    for programme, phase in sorted(before.keys() | after.keys()):
        was, now = before.get((programme, phase)), after.get((programme, phase))
        found: tuple[Change, ...] = ()
        if was is None or now is None:
            found = (Change(ChangeKind.NOT_IN_USE),) if now is None else ()
        else:
            found = differences(was, now, source)
        for change in found:
            words = change_words(voice(source), change, new.catalogue, programme)
            because: tuple[str, ...] = ()
            if change.kind is ChangeKind.ORDER:
                because = order_causes(_ordered(old, programme), _ordered(new, programme), phase)
            yield Row(programme, phase, _OF_KIND.get(change.kind, "wording"), change, words, because)


def _ordered(state: State, programme: str) -> Ordered:
    return Ordered(state.catalogue, state.orders[programme])


def _sentences(old: Catalogue, new: Catalogue) -> Iterator[Sentence]:
    """Yield what translators have to look at: by context, texts that went and texts that came."""
    before = [message.key for message in translatable(old)]
    after = [message.key for message in translatable(new)]
    gone, come = _by_context(before, set(after)), _by_context(after, set(before))
    for context in dict.fromkeys((*come, *gone)):
        yield Sentence(context, gone.get(context, ()), come.get(context, ()))


def _by_context(keys: Sequence[tuple[str, str]], other: set[tuple[str, str]]) -> dict[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for context, source in keys:
        if (context, source) not in other:
            found[context] = (*found.get(context, ()), source)
    return found


def _evidence(old: State, new: State) -> Iterator[tuple[str, str]]:
    """Yield what changed in measurements, judgements, studies and bands."""
    was, now = old.catalogue, new.catalogue
    for id_ in sorted(was.exercises.keys() & now.exercises.keys()):
        for change in measured_changes(was.exercises[id_], now.exercises[id_]):
            yield id_, change
        if was.exercises[id_].judged != now.exercises[id_].judged:
            yield id_, "what a clinician judged of it changed"
    for id_ in sorted(was.studies.keys() | now.studies.keys()):
        if was.studies.get(id_) != now.studies.get(id_):
            word = "is new" if id_ not in was.studies else "is gone" if id_ not in now.studies else "changed"
            yield id_, f"the study {word}"
    for id_ in sorted(was.programmes.keys() & now.programmes.keys()):
        for phase in was.programmes[id_].phases:
            if phase.number > len(now.programmes[id_].phases):
                continue
            band = now.programmes[id_].phase(phase.number).band
            if phase.band != band:
                then = f"{phase.band.above:g} to {phase.band.up_to:g}"
                yield (
                    id_,
                    f"phase {phase.number}: the band was {then}, now {band.above:g} to {band.up_to:g} %MVIC",
                )


def _booklets(old: State, new: State) -> tuple[KnownPaper, ...]:
    """Return every recorded booklet as it stands to the newer state, the most urgent first."""
    every = (*old.ledger.editions, *new.ledger.editions)
    both = {tuple((one.code, one.kind) for one in edition.sheets): edition for edition in every}
    found = known_paper(EditionLedger(editions=tuple(both.values())), new.facts, {})
    return tuple(sorted(found, key=lambda one: (one.urgency.rank, one.programme, one.phase or 0, one.code)))
