"""Brings what a language has together with what the content says today, so that no translator's work is lost.

A message keeps its translation while its context and source stay. Where the source was reworded, the old
translation is offered as outdated (fuzzy, with the sentence it belonged to); what is gone is set aside.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Mapping
from io import BytesIO
from typing import TypeAlias

from babel.messages import Catalog
from babel.messages.catalog import Message
from babel.messages.pofile import read_po

from generator.wording.po import forms_of

_Key: TypeAlias = tuple[str, str]

# Below this likeness (difflib's ratio) a sentence was written anew rather than changed.
_LIKE = 0.5


def read_whole(data: bytes, language: str) -> Catalog:
    """Return a PO file with comments, outdated and set-aside entries; `po` has judged it before."""
    return read_po(BytesIO(data), locale=language.replace("-", "_"), abort_invalid=True)


def merged(fresh: Catalog, before: Catalog) -> Catalog:
    """Return `fresh`, the messages of today without translations, filled from `before`.

    Comments of translators and their outdated marks stay.
    """
    old = {_key(message): message for message in before if message.id}
    today = {_key(message) for message in fresh if message.id}
    left = {key: message for key, message in old.items() if key not in today and _is_filled(message)}
    taken: set[_Key] = set()
    for message in fresh:
        known = old.get(_key(message)) if message.id else None
        if known is not None and _fits(message, known):
            _take(message, known)
        elif message.id:
            taken |= _offer(message, left, old)
    for key, message in {**_set_aside(before), **left}.items():
        if key not in taken and key not in today:
            fresh.obsolete[str(key)] = message
    return fresh


def imported(today: Catalog, given: Catalog) -> tuple[int, tuple[Message, ...]]:
    """Bring the translations of `given` into `today`; return how many changed, and entries of no message.

    An empty entry of `given` takes nothing away.
    """
    here = {_key(message): message for message in today if message.id}
    strangers: list[Message] = []
    changed = 0
    for message in given:
        if not message.id or not _is_filled(message):
            continue
        known = here.get(_key(message))
        if known is None:
            strangers.append(message)
            continue
        if (known.string, known.fuzzy) != (message.string, message.fuzzy):
            changed += 1
        _take(known, message)
    return changed, tuple(strangers)


def _key(message: Message) -> _Key:
    first = message.id if isinstance(message.id, str) else message.id[0]
    return (message.context or "", first)


def _is_filled(message: Message) -> bool:
    return any(forms_of(message))


def _fits(message: Message, known: Message) -> bool:
    return isinstance(message.id, str) == isinstance(known.id, str)


def _take(message: Message, known: Message) -> None:
    message.string = known.string
    message.user_comments = list(known.user_comments)
    message.flags.discard("fuzzy")
    if known.fuzzy:
        message.flags.add("fuzzy")
        message.previous_id = list(known.previous_id)


def _offer(message: Message, left: Mapping[_Key, Message], old: Mapping[_Key, Message]) -> set[_Key]:
    """Offer the translation of the likest sentence as outdated, and return what was taken for it."""
    found = _likest(message, left, old)
    if found is None:
        return set()
    _take(message, found)
    message.flags.add("fuzzy")
    message.previous_id = [found.id] if isinstance(found.id, str) else list(found.id)
    return {_key(found)} & set(left)


def _likest(message: Message, left: Mapping[_Key, Message], old: Mapping[_Key, Message]) -> Message | None:
    context, source = _key(message)
    for (_, other), known in old.items():
        # The same sentence under another name: an exercise that was renamed.
        if other == source and _is_filled(known) and _fits(message, known):
            return known
    near = {other: known for (place, other), known in left.items() if place == context}
    best = difflib.get_close_matches(source, near, n=1, cutoff=_LIKE)
    return near[best[0]] if best and _fits(message, near[best[0]]) else None


def _set_aside(before: Catalog) -> dict[_Key, Message]:
    return {_key(message): message for message in _obsolete(before)}


def _obsolete(before: Catalog) -> Iterator[Message]:
    yield from (message for message in before.obsolete.values() if _is_filled(message))
