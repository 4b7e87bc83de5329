"""Says which protocols there are in all languages: their edition codes and their jobs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from generator.booklets.protocol_values import ProtocolJob
from generator.catalogue.fingerprints import edition_code, fingerprint
from generator.steps.gaps import hole_in_protocol
from generator.steps.kinds import FOLDER
from generator.steps.languages import Spoken
from generator.steps.reviewed import protocol_state
from generator.steps.worked import Worked
from generator.wording.review_words import draft_mark


def protocol_jobs(
    spoken: Sequence[Spoken], worked: Worked, folder: Path, assets: Path
) -> tuple[tuple[str, str, ProtocolJob], ...]:
    """Return language, path from `folder` and job of every protocol."""
    return tuple(found for one in spoken for found in _jobs_in(one, worked, folder, assets))


def _jobs_in(
    spoken: Spoken, worked: Worked, folder: Path, assets: Path
) -> Iterator[tuple[str, str, ProtocolJob]]:
    language = spoken.voice.code
    for id_, programme in spoken.catalogue.programmes.items():
        if hole_in_protocol(spoken, programme) is not None:
            continue
        path = f"{language}/{FOLDER}/{id_}-protocol.pdf"
        job = ProtocolJob(
            catalogue=spoken.catalogue,
            voice=spoken.voice,
            programme=id_,
            order=worked.orders[id_],
            table=worked.tables[id_],
            edition=protocol_edition(spoken, id_, worked),
            output=folder / path,
            assets=assets,
            draft=draft_mark(spoken.voice, protocol_state(spoken, programme)),
        )
        yield language, path, job


def protocol_edition(spoken: Spoken, programme: str, worked: Worked) -> str:
    """Return the code of a protocol: it changes with every word, dose, place, number or source it holds."""
    catalogue, order = spoken.catalogue, worked.orders[programme]
    stages = catalogue.programmes[programme]
    exercises = [catalogue.exercises[use.use] for phase in stages.phases for use in phase.uses]
    places = (order.windows, order.places)
    said = (catalogue.safety, catalogue.clinic, catalogue.muscles, catalogue.studies)
    draft = draft_mark(spoken.voice, protocol_state(spoken, stages))
    held = ("protocol", stages, exercises, places, worked.tables[programme], said, draft)
    return edition_code(fingerprint(spoken.voice.code, *held))
