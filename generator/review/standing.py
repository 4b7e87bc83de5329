"""Says what sign-offs are worth today: still of the text as it stands, of an earlier one, or never given."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from types import MappingProxyType

from generator.catalogue.editorial import Scope
from generator.catalogue.review import SignOff
from generator.catalogue.values import Catalogue
from generator.review.items import Item, Key, items_of

Subject = tuple[str, Scope, str]
"""An item's id, a scope, and the language of a translation (else an empty text)."""

NO_WORDS: Mapping[str, Mapping[Key, str]] = MappingProxyType({})


class State(Enum):
    """How sign-offs stand to what they were given for."""

    SIGNED = "signed"
    CHANGED = "changed since"
    NEVER = "never"


@dataclass(frozen=True)
class Standing:
    """What one item's sign-offs in one scope are worth.

    valid: of the state of today, the latest of each role. earlier: of other states.
    """

    item: Item
    scope: Scope
    language: str
    fingerprint: str
    valid: tuple[SignOff, ...]
    earlier: tuple[SignOff, ...]

    @property
    def subject(self) -> Subject:
        """Return what it is about."""
        return (self.item.id, self.scope, self.language)

    @property
    def state(self) -> State:
        """Return how it stands."""
        if self.valid:
            return State.SIGNED
        return State.CHANGED if self.earlier else State.NEVER

    @property
    def next_review(self) -> datetime.date | None:
        """Return the first day of the month in which the next review is due, the soonest of all roles."""
        return min((one.next_review for one in self.valid if one.next_review), default=None)

    def is_due(self, today: datetime.date) -> bool:
        """Return whether a new review is due in the month of `today` or was before it."""
        planned = self.next_review
        return planned is not None and planned <= today


def standings(
    catalogue: Catalogue, translations: Mapping[str, Mapping[Key, str]] = NO_WORDS
) -> Mapping[Subject, Standing]:
    """Return what each item's sign-offs are worth, in every scope that it has.

    translations: the valid words of each language to be looked at, by context and source.
    """
    given: dict[Subject, list[SignOff]] = {}
    for sign_off in catalogue.ledger.signed:
        given.setdefault((sign_off.item, sign_off.scope, sign_off.language or ""), []).append(sign_off)
    found: dict[Subject, Standing] = {}
    for item in items_of(catalogue).values():
        for scope, language in _scopes(item, tuple(translations)):
            print_ = item.fingerprint(scope, language, translations.get(language))
            listed = given.get((item.id, scope, language), [])
            found[item.id, scope, language] = _standing(item, scope, language, print_, listed)
    return MappingProxyType(found)


def _scopes(item: Item, languages: tuple[str, ...]) -> Iterator[tuple[Scope, str]]:
    for scope in Scope:
        if item.has(scope):
            yield from ((scope, one) for one in (languages if scope is Scope.LANGUAGE else ("",)))


def _standing(item: Item, scope: Scope, language: str, now: str, given: Sequence[SignOff]) -> Standing:
    # A later sign-off of the same role stands for the earlier one.
    valid = {one.role: one for one in sorted(given, key=lambda one: one.date) if one.fingerprint == now}
    earlier = tuple(one for one in given if one.fingerprint != now)
    return Standing(item, scope, language, now, tuple(valid.values()), earlier)


def signed_texts(found: Mapping[Subject, Standing], language: str) -> frozenset[Key]:
    """Return the texts (context and source) whose translation every item that holds them has signed."""
    there = [one for one in found.values() if (one.scope, one.language) == (Scope.LANGUAGE, language)]
    unsigned = {key for one in there if not one.valid for key in one.item.texts}
    return frozenset(key for one in there if one.valid for key in one.item.texts if key not in unsigned)
