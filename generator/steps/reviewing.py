"""Gives the command line what it shows and writes of reviews: what is signed, what may be signed now."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fnmatch import fnmatchcase
from pathlib import Path

from generator.catalogue.editorial import Scope
from generator.catalogue.review import Reviewer, SignOff
from generator.catalogue.values import Catalogue
from generator.problems import Place, Problem, Rule, Severity, did_you_mean, in_order
from generator.review.evidence import Recalled, recalled
from generator.review.items import SAFETY, WORDS, Item, Key, items_of
from generator.review.standing import Standing, standings
from generator.wording.negations import LOST_NEGATION
from generator.wording.po import read_translations
from generator.wording.soundness import soundness_problems

NO_ITEM = Rule(
    "review-of-nothing",
    "What should be signed is not there, so nothing was signed.",
    "Its name is misspelt, or the pattern fits nothing that can be signed in this scope.",
    "take a name that 'review status' lists",
)
ITEM_BROKEN = Rule(
    "review-of-errors",
    "What should be signed has errors or gaps, so nothing was signed.",
    "A file it is made from has errors, or its translation is not complete.",
    "run: check; mend what it finds, then sign",
    safety=True,
)
BAD_SCOPE = Rule(
    "review-scope",
    "Scope and language do not go together, so nothing was signed.",
    "A translation needs its language, and only a translation has one.",
    "write --language CODE for a translation, and leave it out for content and evidence",
)
__all__ = ["Recalled", "Row", "Signing", "recalled_unsigned", "review_rows", "sign"]

RULES = (NO_ITEM, ITEM_BROKEN, BAD_SCOPE)

LEDGER = "reviews.yml"
# The files that a shared item is made from.
_SHARED = {SAFETY: ("safety.yml", "precautions.yml", "clinic.yml"), "study": ("studies.yml",)}
_WORDS = ("clinic.yml", "glossary.yml", "equipment.yml", "muscles.yml")
_FOLDERS = {
    "exercise": "exercises",
    "daily-life": "daily-life",
    "programme": "programmes",
    "phase": "programmes",
    "use": "programmes",
}


@dataclass(frozen=True)
class Signing:
    """What a reviewer wants to sign, as typed; `date` is the day of reading."""

    items: tuple[str, ...]
    scope: Scope
    language: str
    role: Reviewer
    date: datetime.date
    document: str | None = None
    next_review: datetime.date | None = None
    initials: str | None = None


@dataclass(frozen=True)
class Row:
    """One item in one scope: how it stands, who signed what still holds, and when it is to be read again.

    state: ``signed``, ``due``, ``changed since`` or ``never``. last: the latest sign-off, of any state.
    """

    item: str
    scope: str
    language: str
    state: str
    place: Place
    roles: tuple[str, ...]
    last: SignOff | None
    next_review: datetime.date | None


def review_rows(catalogue: Catalogue, content: Path, today: datetime.date) -> tuple[Row, ...]:
    """Return how every item stands in every scope and language; `today` decides what is due."""
    found = standings(catalogue, {code: _words(content, code) for code in _translated(catalogue)})
    return tuple(_row(one, today) for one in found.values())


def _row(one: Standing, today: datetime.date) -> Row:
    given = sorted((*one.valid, *one.earlier), key=lambda item: item.date)
    return Row(
        item=one.item.id,
        scope=one.scope.value,
        language=one.language,
        state="due" if one.is_due(today) else one.state.value,
        place=one.item.place,
        roles=tuple(item.role.value for item in one.valid),
        last=given[-1] if given else None,
        next_review=one.next_review,
    )


def recalled_unsigned(catalogue: Catalogue) -> tuple[Recalled, ...]:
    """Return the recalled numbers and sources that no reviewer has signed after reading the source."""
    found = standings(catalogue)
    return tuple(one for one in recalled(catalogue) if not found[one.item, Scope.EVIDENCE, ""].valid)


def sign(
    catalogue: Catalogue, content: Path, wanted: Signing, found: Sequence[Problem]
) -> tuple[tuple[SignOff, ...], tuple[Problem, ...]]:
    """Return the sign-offs to be written, or all reasons why none is.

    found: what reading and the checks of content have found.
    """
    wrong = _scope_problem(catalogue, wanted)
    if wrong:
        return (), (wrong,)
    words = _words(content, wanted.language) if wanted.language else {}
    chosen, problems = _chosen(catalogue, content, wanted, found)
    for item in chosen:
        problems += _faults(item, content, wanted, found, words)
    if problems:
        return (), in_order(problems)
    return tuple(_signed(item, wanted, words) for item in chosen), ()


def _signed(item: Item, wanted: Signing, words: Mapping[Key, str]) -> SignOff:
    return SignOff(
        item=item.id,
        scope=wanted.scope,
        role=wanted.role,
        language=wanted.language or None,
        fingerprint=item.fingerprint(wanted.scope, wanted.language, words),
        date=wanted.date,
        document=wanted.document,
        next_review=wanted.next_review,
        initials=wanted.initials,
    )


def _scope_problem(catalogue: Catalogue, wanted: Signing) -> Problem | None:
    if (wanted.scope is Scope.LANGUAGE) != bool(wanted.language):
        message = (
            "a translation is signed, but not which" if not wanted.language else "only a translation has one"
        )
        return BAD_SCOPE.at(Place("--language"), message)
    if wanted.language and wanted.language not in _translated(catalogue):
        near = did_you_mean(wanted.language, _translated(catalogue))
        remedy = near or "sign the source language with --scope content"
        message = f"'{wanted.language}' is no language that the clinic translates into"
        return BAD_SCOPE.at(Place("--language"), message, remedy)
    if wanted.next_review and wanted.next_review < wanted.date.replace(day=1):
        return BAD_SCOPE.at(Place("--next"), "the next review lies before this one", "take a later month")
    return None


def _chosen(
    catalogue: Catalogue, content: Path, wanted: Signing, found: Sequence[Problem]
) -> tuple[list[Item], list[Problem]]:
    """Return the items that names and patterns mean, each once."""
    items = items_of(catalogue)
    able = {id_: item for id_, item in items.items() if item.has(wanted.scope)}
    chosen: dict[str, Item] = {}
    problems: list[Problem] = []
    for typed in wanted.items:
        fitting = {id_: item for id_, item in able.items() if fnmatchcase(id_, typed)}
        chosen |= fitting
        if not fitting:
            problems.append(_why_none(typed, items, content, wanted.scope, found))
    return list(chosen.values()), problems


def _why_none(
    typed: str, items: Mapping[str, Item], content: Path, scope: Scope, found: Sequence[Problem]
) -> Problem:
    place = Place(typed)
    if typed in items:
        return NO_ITEM.at(place, f"it has nothing to sign as {scope.value}")
    broken = next(iter(_errors_in(typed, content, found)), None)
    if broken is not None:
        return ITEM_BROKEN.at(broken.place, f"'{typed}' cannot be read: {broken.message}", broken.remedy)
    return NO_ITEM.at(place, "there is no such item", did_you_mean(typed, items))


def _faults(
    item: Item, content: Path, wanted: Signing, found: Sequence[Problem], words: Mapping[Key, str]
) -> list[Problem]:
    """Return why an item cannot be signed: errors where it is written, gaps in its translation."""
    faults = [
        ITEM_BROKEN.at(one.place, f"'{item.id}' has an error: {one.message}", one.remedy)
        for one in _errors_in(item.id, content, found)
    ]
    if wanted.scope is Scope.LANGUAGE:
        faults += _gaps(item, wanted.language, words)
    return faults[:1]


def _gaps(item: Item, language: str, words: Mapping[Key, str]) -> Iterator[Problem]:
    """Yield a finding for the first text without words, then for each whose numbers or phrases differ."""
    missing = [text for key, text in item.texts.items() if not words.get(key)]
    if missing:
        more = f" and {len(missing) - 1} more" if len(missing) > 1 else ""
        message = f"'{item.id}' is not complete in '{language}': {missing[0].source!r}{more}"
        yield ITEM_BROKEN.at(missing[0].place, message, "complete its translation, then sign")
    for key, text in item.texts.items():
        for one in soundness_problems(key[1], words.get(key) or key[1], text.place):
            yield ITEM_BROKEN.at(
                one.place, f"'{item.id}' has an error in '{language}': {one.message}", one.remedy
            )


def _errors_in(item: str, content: Path, found: Sequence[Problem]) -> Iterator[Problem]:
    """Yield the errors in the files that an item is made from; a doubt about "not" is settled by signing."""
    paths = {f"{content}/{name}" for name in _files_of(item)}
    for one in found:
        if one.place.path in paths and one.severity is Severity.ERROR and one.code != LOST_NEGATION.code:
            yield one


def _files_of(item: str) -> tuple[str, ...]:
    kind, _, rest = item.partition("/")
    if kind in _FOLDERS:
        return (f"{_FOLDERS[kind]}/{rest.partition('/')[0]}.yml",)
    return _WORDS if kind == WORDS else _SHARED.get(kind, ())


def _translated(catalogue: Catalogue) -> tuple[str, ...]:
    return tuple(code for code in catalogue.clinic.languages if code != catalogue.source_language)


def _words(content: Path, language: str) -> Mapping[Key, str]:
    path = content / "translations" / f"{language}.po"
    return read_translations(path)[0].current if path.exists() else {}
