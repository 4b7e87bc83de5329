"""Jobs for protocols: of the small content that an editor would type, and of the demonstration."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from babel.messages import Catalog

from generator.booklets.protocol_values import ProtocolJob
from generator.catalogue.values import Catalogue
from generator.progression import arrange, restriction_table
from generator.reading import read_content
from generator.wording.extract import own_messages
from generator.wording.localise import localise
from generator.wording.voice import Voice, voice
from tests.booklets.builders import ASSETS, EDITION, in_words
from tests.content import FILES, catalogue_of

CONTENT = Path(__file__).parents[2] / "content"
DEMO = ("hip-abductor-repair", "knee-replacement")


@cache
def demo() -> Catalogue:
    """Return the demonstration."""
    found = read_content(CONTENT).catalogue
    assert found is not None
    return found


def arabic_voice() -> Voice:
    """Return a voice whose own words are all the same Arabic words around their values."""
    words = Catalog(locale="ar")
    for message in own_messages():
        if isinstance(message.id, str):
            if message.id:
                words.add(message.id, _arabic(message.id), context=message.context)
        else:
            forms = (_arabic(message.id[0]), *[_arabic(message.id[1])] * (words.num_plurals - 1))
            words.add(message.id, forms, context=message.context)
    return voice("ar", words)


def _arabic(message: str) -> str:
    """Return a message in Arabic words, its values and signs kept, one word for a run of others."""
    return re.sub(r"(\{[a-z_]+\}|%\([a-z_]+\)s|%%)|[A-Za-z][A-Za-z' ]*[A-Za-z]|[A-Za-z]", _kept, message)


def _kept(found: re.Match[str]) -> str:
    return found.group(1) or "علاج"


class Arabic(dict[str, str]):
    """Says every sentence of the content in the same Arabic words."""

    def __missing__(self, _: str) -> str:
        return "ارفع ساقك ببطء ولا تضغط على مكان العملية"


def small_job(files: Mapping[str, str] = FILES, **changes: Any) -> ProtocolJob:
    """Return the job of printing the small content's programme in English."""
    return job_of(catalogue_of(files), "tendon-repair", **changes)


def job_of(
    known: Catalogue,
    programme: str,
    output: Path = Path("protocol.pdf"),
    spoken: Voice | None = None,
    said: Mapping[str, str] | None = None,
) -> ProtocolJob:
    """Return the job of printing a programme; `said` translates every text."""
    speaker = spoken or voice("en")
    localised, _ = localise(known, speaker)
    return ProtocolJob(
        catalogue=localised if said is None else in_words(localised, speaker.code, said),
        voice=speaker,
        programme=programme,
        order=arrange(known)[programme],
        table=restriction_table(known.programmes[programme]),
        edition=EDITION,
        output=output,
        assets=ASSETS,
    )
