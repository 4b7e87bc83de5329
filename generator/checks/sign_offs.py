"""Looks at the ledger of sign-offs: what no command would have written is an error.

A sign-off that belongs to nothing is worth nothing and only warned of: it is the record of an item that may
have been taken out on purpose.
"""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.editorial import Scope
from generator.catalogue.review import SignOff
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, Severity, nearest
from generator.review.items import items_of

BAD_SIGN_OFF = Rule(
    "sign-off-impossible",
    "A sign-off in the ledger says something that no reviewer can have signed.",
    "The ledger was changed by hand.",
    "delete the entry, and sign anew with: review sign",
    safety=True,
)
OF_NOTHING = Rule(
    "sign-off-of-nothing",
    "A sign-off in the ledger belongs to nothing in the content.",
    "The item was renamed or taken out, or its name was changed in the ledger.",
    "when the item was taken out leave the entry as a record; else sign anew with: review sign",
    severity=Severity.WARNING,
)
RULES = (BAD_SIGN_OFF, OF_NOTHING)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each sign-off that cannot be, or that belongs to nothing."""
    if catalogue.ledger.invented and not catalogue.clinic.demo:
        message = "the sign-offs are invented, and clinic.yml does not say 'demo: yes'"
        remedy = "delete reviews.yml, then let reviewers sign what they have read"
        yield BAD_SIGN_OFF.at(catalogue.ledger.at("invented"), message, remedy)
    if not catalogue.ledger.signed:
        return
    items = items_of(catalogue)
    for one in catalogue.ledger.signed:
        why = _impossible(one, catalogue.source_language)
        if why:
            yield BAD_SIGN_OFF.at(one.place, why)
        elif one.item not in items:
            near = nearest(one.item, items)
            remedy = f"{OF_NOTHING.remedy}; the nearest is '{near}'" if near else ""
            yield OF_NOTHING.at(one.at("item"), f"there is no '{one.item}'", remedy)
        elif not items[one.item].has(one.scope):
            yield BAD_SIGN_OFF.at(one.at("scope"), f"'{one.item}' has nothing to sign as {one.scope.value}")


def _impossible(one: SignOff, source_language: str) -> str:
    """Return what contradicts itself in a sign-off, or an empty text."""
    if one.scope is Scope.LANGUAGE and one.language is None:
        return "a translation was signed, but not which: 'language' is missing"
    if one.scope is not Scope.LANGUAGE and one.language is not None:
        return f"'language' stands beside the scope {one.scope.value}, which has none"
    if one.language == source_language:
        return f"'{one.language}' is the language of the content itself; its scope is content"
    if one.next_review is not None and one.next_review < one.date.replace(day=1):
        return "the next review lies before the day of the sign-off"
    return ""
