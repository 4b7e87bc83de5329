"""Reads the content's translations from PO files, and says where one cannot be trusted.

Babel parses; what it accepts in silence (a second translation of the same message, a quotation mark
that is missing) is found before or while it does.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from pathlib import Path

from babel.messages import Catalog
from babel.messages.catalog import Message
from babel.messages.pofile import PoFileError, PoFileParser

from generator.problems import NOWHERE, Place, Problem, Rule, in_order
from generator.wording.localise import NO_TRANSLATIONS, Key, OwnKey, Translations
from generator.wording.voice import unknown_languages

UNREADABLE = Rule(
    "translation-unreadable",
    "A file of translations cannot be read.",
    "The file is not UTF-8, or a line is not as PO files have it: a quotation mark or keyword is missing.",
    "open the file with a PO editor, or restore the line from the last good state",
)
HEADER = Rule(
    "translation-header",
    "The header of a file of translations does not fit.",
    "The header is missing, or names another language or another character set than UTF-8.",
    "start the file with a header whose Language is that of the file's name and whose charset is UTF-8",
)
TWICE = Rule(
    "translation-twice",
    "A message is translated twice in one file.",
    "Two entries have the same msgctxt and msgid, so nobody can tell which one counts.",
    "keep one of the two entries",
)
WITHOUT_CONTEXT = Rule(
    "translation-without-context",
    "An entry does not say which text it belongs to.",
    "Its msgctxt line was lost, or it has plural forms, which no text of the content has.",
    "restore the entry from the export of messages",
)
PLURALS = Rule(
    "plural-forms-differ",
    "An entry or a header does not have as many plural forms as the language.",
    "A form was left out or added, or the header's Plural-Forms line was changed.",
    "give every form that the header counts; the header's line is that of the export",
)
# A bomb is stopped by counting what no language needs: Arabic has six plural forms, the most of CLDR.
MOST_BYTES = 20_000_000
MOST_ENTRIES = 100_000
MOST_FORMS = 10
_FORMS = re.compile(r"nplurals\s*=\s*(\d+)")
# The generator's own words in a file of content: ``generator``, or ``generator/<context of its own>``.
OWN = "generator"

_EXPORT_ANEW = "export the messages anew and keep only their entries"
_PUT_THERE = "put the file itself there"

_QUOTED = r'"(?:[^"\\]|\\.)*"'
_LINE = re.compile(rf"(?:(msgctxt|msgid|msgid_plural|msgstr(?:\[\d\])?)\s+)?{_QUOTED}")
_FOLLOWS = {
    "": ("msgctxt", "msgid"),
    "msgctxt": ("msgid",),
    "msgid": ("msgid_plural", "msgstr"),
    "msgid_plural": ("msgstr",),
    "msgstr": ("msgctxt", "msgid", "msgstr"),
}
# Texts are one line; a no-break space is meant.
_BLANKS = re.compile(r"[ \t\n]+")
# Controls but line ends and tab; marks that embed, override or isolate: they could turn numbers round.
_HIDDEN = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ufeff]")


class _Recorder(Catalog):
    """A Babel catalogue that remembers its header as written and every entry beyond the first."""

    def __init__(self) -> None:
        self.header: dict[str, str] | None = None
        self.again: list[tuple[Message, int]] = []
        self._seen: dict[tuple[str | None, str], int] = {}
        super().__init__()

    def __setitem__(self, id: str | tuple[str, ...] | list[str], message: Message) -> None:  # noqa: A002
        line = message.lineno or 0
        first = self._seen.setdefault((message.context, str(id)), line)
        if first != line:
            self.again.append((message, first))
            return
        if not id and isinstance(message.string, str):
            pairs = (item.partition(":") for item in message.string.splitlines())
            self.header = {key.strip().lower(): value.strip() for key, _, value in pairs}
        super().__setitem__(id, message)


def read_translations(path: Path) -> tuple[Translations, tuple[Problem, ...]]:
    """Return the translations in ``<language>.po`` and what is wrong with the file.

    Entries marked fuzzy are outdated; empty ones are left out. A file that cannot be read gives none.
    """
    data = po_bytes(path)
    if isinstance(data, Problem):
        return NO_TRANSLATIONS, (data,)
    if os.path.dirname(os.path.realpath(path)) != os.path.realpath(path.parent):  # noqa: PTH120
        found = UNREADABLE.at(Place(str(path)), "it is a link that leads out of its folder", _PUT_THERE)
        return NO_TRANSLATIONS, (found,)
    return parse_translations(str(path), data, path.stem)


def po_bytes(path: Path) -> bytes | Problem:
    """Return what a file holds, or why it cannot be read; a pipe would keep the reader waiting for ever."""
    if path.exists() and not path.is_file():
        return UNREADABLE.at(Place(str(path)), "it is no ordinary file", _PUT_THERE)
    try:
        with path.open("rb") as file:
            return file.read(MOST_BYTES + 1)
    except OSError as error:
        return UNREADABLE.at(Place(str(path)), f"it cannot be opened ({error.strerror})")


def parse_translations(name: str, data: bytes, language: str) -> tuple[Translations, tuple[Problem, ...]]:
    """Return the translations in the bytes of a PO file; `name` is the file as the reader knows it."""
    lines, problems = _lines(name, data)
    if problems:
        return NO_TRANSLATIONS, problems
    recorder = _Recorder()
    try:
        PoFileParser(recorder, ignore_obsolete=True, abort_invalid=True).parse(lines)
    except PoFileError as error:
        place = Place(name, error.lineno + 1, 1)
        return NO_TRANSLATIONS, (UNREADABLE.at(place, str(error).rsplit(" on ", 1)[0]),)
    except (ValueError, LookupError) as error:
        return NO_TRANSLATIONS, (HEADER.at(Place(name, 1, 1), f"the header cannot be read ({error})"),)
    found = [*_header_problems(name, recorder, language), *_entry_problems(name, recorder)]
    return _translations(name, recorder), in_order(found)


def _lines(name: str, data: bytes) -> tuple[list[str], tuple[Problem, ...]]:
    if len(data) > MOST_BYTES:
        message = f"the file has more than {MOST_BYTES // 1_000_000} MB"
        return [], (UNREADABLE.at(Place(name), message, _EXPORT_ANEW),)
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        return [], (UNREADABLE.at(Place(name, line, 1), "this line is not UTF-8"),)
    lines = [line.strip() for line in text.replace("\r\n", "\n").split("\n")]
    # Of comments only flags count; entries that a PO editor has set aside (#~) are history.
    kept = ["" if line[:1] == "#" and line[:2] != "#," else line for line in lines]
    return kept, tuple(_bombs(name, kept)) or tuple(_syntax(name, kept))


def _bombs(name: str, lines: list[str]) -> Iterator[Problem]:
    """Yield the first line that would make the parser ask for far more memory than a translation needs."""
    entries = 0
    for number, line in enumerate(lines, 1):
        forms = _FORMS.search(line)
        entries += line.startswith("msgid ")
        message = ""
        if forms and (len(forms[1]) > 2 or int(forms[1]) > MOST_FORMS):
            message = f"it asks for {forms[1][:12]} plural forms; no language has more than {MOST_FORMS}"
        elif entries > MOST_ENTRIES:
            message = f"the file has more than {MOST_ENTRIES:,} entries"
        if message:
            yield UNREADABLE.at(Place(name, number, 1), message, _EXPORT_ANEW)
            return


def _syntax(name: str, lines: list[str]) -> Iterator[Problem]:
    last, where = "", 0
    for number, line in enumerate(lines, 1):
        if not line or line[0] == "#":
            continue
        hidden = _HIDDEN.search(line)
        if hidden:
            message = f"the line holds the invisible character U+{ord(hidden.group()):04X}"
            yield UNREADABLE.at(Place(name, number, 1), message)
        match = _LINE.fullmatch(line)
        keyword = match.group(1) if match else None
        kind = keyword.partition("[")[0] if keyword else last
        wrong = ""
        if match is None or not kind:
            wrong = "this is no keyword with a text in quotation marks"
        elif keyword and kind not in _FOLLOWS[last]:
            wrong = f"{kind} does not belong here"
        if wrong:
            yield UNREADABLE.at(Place(name, number, 1), wrong)
            return  # what follows would only be blamed for this line
        last, where = (kind, number) if keyword else (last, where)
    if last not in ("", "msgstr"):
        yield UNREADABLE.at(Place(name, where, 1), "the file ends before the translation of this entry")


def _header_problems(name: str, recorder: _Recorder, language: str) -> Iterator[Problem]:
    place = Place(name, 1, 1)
    if recorder.header is None:
        yield HEADER.at(place, "the file has no header")
        return
    stated = recorder.header.get("language", "")
    if stated.replace("_", "-").lower() != language.lower():
        yield HEADER.at(
            place, f"the header says Language: {stated or '(nothing)'}, the file's name {language}"
        )
    stated = recorder.header.get("plural-forms", "")
    forms = Catalog(locale=language.replace("-", "_")).num_plurals if stated and _known(language) else None
    if forms is not None and f"nplurals={forms};" not in stated.replace(" ", "") + ";":
        yield PLURALS.at(place, f"the header says Plural-Forms: {stated}; {language} has {forms} forms")
    if "charset=utf-8" not in recorder.header.get("content-type", "").lower():
        yield HEADER.at(place, "the header does not say charset=UTF-8")


def _known(language: str) -> bool:
    return not any(True for _ in unknown_languages([language], NOWHERE))


def _entry_problems(name: str, recorder: _Recorder) -> Iterator[Problem]:
    for message, first in recorder.again:
        place = Place(name, message.lineno or 0, 1)
        yield TWICE.at(place, f"{_short(message)} is already translated in line {first}")
    for message in recorder:
        place = Place(name, message.lineno or 0, 1)
        if message.id and not isinstance(message.id, str):
            if not _is_own(message):
                yield WITHOUT_CONTEXT.at(place, f"{_short(message)} has plural forms")
            elif any(forms_of(message)) and not all(forms_of(message)):
                given = sum(map(bool, forms_of(message)))
                wanted = f"{given} of {recorder.num_plurals} forms"
                yield PLURALS.at(place, f"{_short(message)} has {wanted}")
        elif message.id and not message.context:
            yield WITHOUT_CONTEXT.at(place, f"{_short(message)} has no msgctxt")


def forms_of(message: Message) -> tuple[str, ...]:
    """Return the translations of a message: one, or one for each plural form; () where it has none at all."""
    text = message.string
    return (text,) if isinstance(text, str) else tuple(text or ())


def _is_own(message: Message) -> bool:
    return (message.context or "").partition("/")[0] == OWN


def _short(message: Message) -> str:
    text = message.id if isinstance(message.id, str) else message.id[0]
    return repr(text if len(text) <= 60 else f"{text[:57]}...") if text else "the header"


def _translations(name: str, recorder: _Recorder) -> Translations:
    current: dict[Key, str] = {}
    outdated: dict[Key, str] = {}
    places: dict[Key, Place] = {}
    own: dict[OwnKey, tuple[str, ...]] = {}
    for message in recorder:
        if _is_own(message):
            forms = forms_of(message)
            ids = (message.id,) if isinstance(message.id, str) else tuple(message.id)
            if all(forms) and not message.fuzzy:
                own[(message.context or "").partition("/")[2], ids] = forms
            continue
        if not message.context or not isinstance(message.id, str) or not isinstance(message.string, str):
            continue
        words = _BLANKS.sub(" ", message.string).strip()
        if message.id and words:
            key = (message.context, message.id)
            places[key] = Place(name, message.lineno or 0, 1)
            (outdated if message.fuzzy else current)[key] = words
    return Translations(current, outdated, places, own)


RULES = (UNREADABLE, HEADER, TWICE, WITHOUT_CONTEXT, PLURALS)
