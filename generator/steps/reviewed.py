"""Works out what pages and booklets say about their review: every part of them must have been read."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from generator.catalogue.editorial import Scope
from generator.catalogue.programme import Phase, Programme
from generator.catalogue.review import Reviewed, ReviewState
from generator.review.items import SAFETY, WORDS
from generator.review.standing import Standing, State
from generator.steps.languages import Spoken
from generator.website import addresses
from generator.wording.review_words import review_words


def pages_reviewed(spoken: Spoken) -> Mapping[str, str]:
    """Return, by page, what it says about its review."""
    return {page: review_words(spoken.voice, review_state(spoken, items)) for page, items in _pages(spoken)}


def _pages(spoken: Spoken) -> Iterator[tuple[str, Sequence[str]]]:
    catalogue = spoken.catalogue
    yield addresses.WARNING_SIGNS, (SAFETY,)
    for id_ in catalogue.exercises:
        yield addresses.exercise_page(id_), (f"exercise/{id_}",)
    for id_ in catalogue.daily_life:
        yield addresses.daily_life_page(id_), (f"daily-life/{id_}",)
    for programme in catalogue.programmes.values():
        own = (f"programme/{programme.id}",)
        phases = [f"phase/{programme.id}/{phase.number}" for phase in programme.phases]
        yield addresses.programme_page(programme.id), (*own, *phases)
        for phase in programme.phases:
            page = addresses.phase_page(programme.id, phase.number)
            yield page, (*own, *_phase_items(programme, phase))
            exercises = (f"exercise/{use.use}" for use in phase.uses)
            sheet = addresses.patient_page(programme.id, phase.number)
            yield sheet, (SAFETY, *own, *_phase_items(programme, phase), *exercises)
        for address in (addresses.protocol_page, addresses.order_page, addresses.evidence_page):
            yield address(programme.id), _programme_items(programme)


def _phase_items(programme: Programme, phase: Phase) -> tuple[str, ...]:
    name = f"{programme.id}/{phase.number}"
    return (f"phase/{name}", *(f"use/{name}/{use.use}" for use in phase.uses))


def _programme_items(programme: Programme) -> tuple[str, ...]:
    phases = (item for phase in programme.phases for item in _phase_items(programme, phase))
    exercises = (f"exercise/{use.use}" for phase in programme.phases for use in phase.uses)
    return (f"programme/{programme.id}", *phases, *exercises)


def booklet_state(spoken: Spoken, programme: Programme, phase: Phase) -> ReviewState:
    """Return how everything that a phase's booklet prints was reviewed."""
    exercises = (f"exercise/{use.use}" for use in phase.uses)
    life = (f"daily-life/{id_}" for id_ in phase.daily_life)
    own = (SAFETY, WORDS, f"programme/{programme.id}", *_phase_items(programme, phase))
    return review_state(spoken, (*own, *exercises, *life))


def protocol_state(spoken: Spoken, programme: Programme) -> ReviewState:
    """Return how everything that a programme's protocol prints was reviewed."""
    return review_state(spoken, (SAFETY, WORDS, *_programme_items(programme)))


def review_state(spoken: Spoken, items: Iterable[str]) -> ReviewState:
    """Return how several items, taken together, were reviewed in the language."""
    wanted = tuple(dict.fromkeys(items))
    code, stands = spoken.voice.code, spoken.standings
    translated = code != spoken.catalogue.source_language
    content = [found for item in wanted if (found := stands.get((item, Scope.CONTENT, "")))]
    words = [found for item in wanted if (found := stands.get((item, Scope.LANGUAGE, code)))]
    return ReviewState(
        content=_together(content),
        translation=_together(words) if translated else None,
        changed=any(one.state is State.CHANGED for one in content),
        translated=translated and bool(words),
        invented=spoken.catalogue.ledger.invented,
    )


def _together(found: Sequence[Standing]) -> Reviewed | None:
    """Return what holds of all: roles that read everything, or all that read a part where none read all."""
    if not found or not all(one.valid for one in found):
        return None
    roles = [{sign_off.role for sign_off in one.valid} for one in found]
    every, some = set.intersection(*roles), set.union(*roles)
    given = [sign_off for one in found for sign_off in one.valid]
    planned = [sign_off.next_review for sign_off in given if sign_off.next_review]
    return Reviewed(
        tuple(sorted(every or some, key=lambda role: role.value)),
        max(sign_off.date for sign_off in given),
        min(planned, default=None),
    )
