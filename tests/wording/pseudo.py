"""Makes a pretend language of any text, so that a sentence nobody can translate shows at once.

Letters get accents, sentences grow by a third as translations do, and brackets show where one ends.
Phrases in braces, ``%(name)s``, tags and numbers stay as they are.
"""

from __future__ import annotations

import re

from babel.messages import Catalog

from generator.catalogue.values import Catalogue
from generator.wording.extract import own_messages
from generator.wording.localise import Translations
from generator.wording.messages import translatable
from generator.wording.voice import Voice, voice

_KEPT = re.compile(r"(\{[^}]*\}|%\([a-z_]+\)s|%%|<[^>]*>|&[a-z#0-9]+;)")
_ACCENTS = str.maketrans("aceinosuyzACEINOSUYZ", "áçéíñóšúýžÁÇÉÍÑÓŠÚÝŽ")

BRACKETS = "⟦⟧"
PRINTED = "[]"
"""Brackets that the faces of the booklets have."""


def pseudo(text: str, brackets: str = BRACKETS) -> str:
    """Return the text accented, bracketed and at least a third longer."""
    parts = _KEPT.split(text)
    shown = "".join(part if place % 2 else part.translate(_ACCENTS) for place, part in enumerate(parts))
    letters = sum(len(part) for part in parts[::2])
    return f"{brackets[0]}{shown}{' ~' * (-(-letters // 6))}{brackets[1]}"


def pseudo_translations(catalogue: Catalogue, brackets: str = BRACKETS) -> Translations:
    """Return every text of the content in the pretend language."""
    return Translations(
        {message.key: pseudo(message.source, brackets) for message in translatable(catalogue)}
    )


def pseudo_voice(language: str, brackets: str = BRACKETS) -> Voice:
    """Return the voice of a language whose own words are all in the pretend language."""
    words = Catalog(locale=language.replace("-", "_"))
    for message in own_messages():
        if isinstance(message.id, str):
            if message.id:
                words.add(message.id, pseudo(message.id, brackets), context=message.context)
        else:
            forms = [message.id[0], *[message.id[1]] * (words.num_plurals - 1)]
            words.add(message.id, tuple(pseudo(form, brackets) for form in forms), context=message.context)
    return voice(language, words)
