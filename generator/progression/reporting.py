"""Fills two reporting checklists from a programme, so that a reader sees what is answered and what is open.

Nothing is counted as answered that only a person can judge, and no score is reckoned: PEMAT-P is rated by
people. The lists and their sources are in `catalogue.reporting`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.catalogue.exercise import Exercise
from generator.catalogue.programme import Programme, Use
from generator.catalogue.reporting import Answer, Item, ItemAnswer, Reading, Shown
from generator.catalogue.terms import Helper, Surface, Tester, Then
from generator.catalogue.values import Catalogue

# A paragraph of more letters is no small piece any more (common practice, no source).
LONG_TEXT = 300

_PATIENTS = (Shown.EXERCISE_PAGES, Shown.BOOKLETS)
_PHASES = (Shown.PHASE_PAGES, Shown.BOOKLETS)


@dataclass(frozen=True)
class _Known:
    """What is counted: a programme's uses and its exercises, each once."""

    catalogue: Catalogue
    programme: Programme
    uses: tuple[Use, ...]
    exercises: tuple[Exercise, ...]

    @property
    def forms(self) -> int:
        """Return how many easier and harder forms the exercises have."""
        return sum(len(one.variations) for one in self.exercises)

    @property
    def pictured(self) -> int:
        """Return how many exercises have poses to be drawn from."""
        return sum(1 for one in self.exercises if one.poses)


def report_items(
    catalogue: Catalogue, programme: Programme, reading: Reading | None = None
) -> tuple[ItemAnswer, ...]:
    """Return an answer to each item of both lists, in their order.

    reading: how hard the texts are, in the language that is reported on; None where nobody measured.
    """
    uses = tuple(use for phase in programme.phases for use in phase.uses if use.use in catalogue.exercises)
    ids = dict.fromkeys(use.use for use in uses)
    known = _Known(catalogue, programme, uses, tuple(catalogue.exercises[id_] for id_ in ids))
    parts = (_what_and_how(known), _harder(known), _rest(known), _words(known, reading), _look(known))
    found = {one.item: one for part in (*parts, _act(known)) for one in part}
    return tuple(found.get(item, ItemAnswer(item, Answer.OPEN)) for item in Item)


def _if(
    item: Item,
    holds: object,
    shown: tuple[Shown, ...],
    *,
    number: int = 0,
    total: int = 0,
    as_: Answer = Answer.ANSWERED,
) -> ItemAnswer:
    """Return an item that is answered (or `as_`) where something holds, else open."""
    if not holds:
        return ItemAnswer(item, Answer.OPEN, number=number, total=total)
    return ItemAnswer(item, as_, shown, number, total)


def _share(item: Item, number: int, total: int, shown: tuple[Shown, ...]) -> ItemAnswer:
    """Return an item that is answered where all have something, partly where some have it."""
    whole = Answer.ANSWERED if number == total else Answer.PARTLY
    return _if(item, number, shown, number=number, total=total, as_=whole)


def _what_and_how(known: _Known) -> Iterator[ItemAnswer]:
    exercises, phases = known.exercises, known.programme.phases
    equipped = sum(1 for one in exercises if one.equipment)
    # Where none names a thing, "none is needed" cannot be told from "left out".
    yield _if(Item.CERT_1, equipped, _PATIENTS, number=equipped, total=len(exercises))
    roles = tuple(dict.fromkeys(phase.pain.set_by for phase in phases if phase.pain.set_by))
    answer = Answer.PARTLY if roles else Answer.OPEN
    yield ItemAnswer(
        Item.CERT_2, answer, (Shown.CLINICIANS_PAGE, Shown.PROTOCOL) if roles else (), names=roles
    )
    alone = sum(1 for one in exercises if one.helper is Helper.NONE)
    yield _if(Item.CERT_3, exercises, _PATIENTS, number=alone, total=len(exercises))
    milestones = [one for phase in phases for one in phase.milestones]
    tested = sum(1 for one in milestones if one.tester is Tester.CLINICIAN)
    shown = (Shown.PROTOCOL, *_PHASES)
    yield _if(Item.CERT_4, milestones, shown, number=tested, total=len(milestones))
    yield _if(Item.CERT_5, known.uses, (Shown.BOOKLETS,), number=len(known.uses))


def _harder(known: _Known) -> Iterator[ItemAnswer]:
    phases = known.programme.phases
    ruled = sum(1 for phase in phases if str(phase.going_up) and phase.milestones)
    yield _share(Item.CERT_7A, ruled, len(phases), (Shown.PROTOCOL, *_PHASES))
    rising = sum(1 for use in known.uses if len(use.dose_steps) > 1 or use.then is Then.REPLACED)
    shown = (Shown.PROTOCOL, *_PATIENTS)
    yield _if(Item.CERT_7B, rising, shown, number=rising, total=len(known.uses))


def _rest(known: _Known) -> Iterator[ItemAnswer]:
    programme, exercises, uses = known.programme, known.exercises, known.uses
    told = sum(1 for one in exercises if one.steps and one.poses)
    described = bool(exercises) and all(one.steps for one in exercises)
    whole = Answer.ANSWERED if told == len(exercises) else Answer.PARTLY
    yield _if(Item.CERT_8, described, _PATIENTS, number=told, total=len(exercises), as_=whole)
    yield _if(Item.CERT_9, uses, _PHASES, number=len(exercises))
    life = {item for phase in programme.phases for item in phase.daily_life}
    other = Answer.ANSWERED if life else Answer.PARTLY
    yield ItemAnswer(Item.CERT_10, other, (Shown.PHASE_PAGES, Shown.BOOKLETS), number=len(life))
    signs = known.catalogue.safety.signs
    # What to watch for is said; how often it happens, no programme can say.
    safe = (Shown.WARNING_SIGNS, Shown.BOOKLETS)
    yield _if(Item.CERT_11, signs, safe, number=len(signs), as_=Answer.PARTLY)
    places = tuple(place for place in Surface if any(place in one.surface for one in exercises))
    where = Answer.ANSWERED if places else Answer.OPEN
    yield ItemAnswer(Item.CERT_12, where, _PATIENTS if places else (), terms=places)
    doses = sum(len(use.dose_steps) for use in uses)
    yield _if(Item.CERT_13, doses, (Shown.PROTOCOL, *_PATIENTS), number=doses, total=len(uses))
    reasons = len(programme.delay_reasons)
    fitted = known.forms + reasons
    yield _if(Item.CERT_14A, uses, (Shown.PROTOCOL, *_PHASES), number=fitted)
    yield _if(Item.CERT_14B, fitted, (Shown.PROTOCOL, *_PATIENTS), number=known.forms, total=reasons)
    start = uses and str(known.catalogue.safety.start_only)
    yield _if(Item.CERT_15, start, (Shown.PROTOCOL, Shown.BOOKLETS), number=len(uses))


def _words(known: _Known, reading: Reading | None) -> Iterator[ItemAnswer]:
    yield _if(Item.PEMAT_1, str(known.programme.summary), (Shown.PROGRAMME_PAGE,), as_=Answer.PARTLY)
    easy = reading.texts - reading.too_hard if reading else 0
    yield _share(Item.PEMAT_3, easy, reading.texts if reading else 0, _PATIENTS)
    terms = len(known.catalogue.glossary)
    yield _if(Item.PEMAT_4, terms, (Shown.GLOSSARY, Shown.BOOKLETS), number=terms)
    yield _if(Item.PEMAT_6, known.uses, _PATIENTS, as_=Answer.PARTLY)
    yield _if(Item.PEMAT_7, known.uses, _PHASES)
    texts = [str(text) for one in known.exercises for text in (one.purpose, one.start, *one.steps)]
    texts += [str(text) for phase in known.programme.phases for text in (phase.summary, phase.walking_aid)]
    short = sum(1 for text in texts if len(text) <= LONG_TEXT)
    yield _share(Item.PEMAT_8, short, len(texts), _PATIENTS)


def _look(known: _Known) -> Iterator[ItemAnswer]:
    phases, exercises = known.programme.phases, known.exercises
    yield _if(Item.PEMAT_9, exercises, _PATIENTS)
    yield _if(Item.PEMAT_10, phases, (Shown.PROGRAMME_PAGE, *_PHASES), number=len(phases))
    summed = sum(1 for phase in phases if str(phase.summary) and phase.goals)
    yield _share(Item.PEMAT_11, summed, len(phases), _PHASES)
    warned = sum(len(one.cautions) for one in exercises)
    yield _if(Item.PEMAT_12, warned, _PATIENTS, number=warned)
    yield _share(Item.PEMAT_15, known.pictured, len(exercises), _PATIENTS)
    named = sum(1 for one in exercises if one.poses and one.finish)
    yield _share(Item.PEMAT_17, named, len(exercises), _PATIENTS)
    # That a drawing holds no text and no clutter is fixed; whether it is clear, only a person can say.
    yield _if(Item.PEMAT_18, known.pictured, _PATIENTS, number=known.pictured, as_=Answer.PARTLY)
    yield _if(Item.PEMAT_19, known.uses, _PHASES)


def _act(known: _Known) -> Iterator[ItemAnswer]:
    exercises = known.exercises
    steps = sum(len(one.steps) for one in exercises)
    yield _if(Item.PEMAT_20, steps, _PATIENTS, number=steps)
    stepped = sum(1 for one in exercises if len(one.steps) > 1)
    yield _share(Item.PEMAT_22, stepped, len(exercises), _PATIENTS)
    yield _if(Item.PEMAT_23, known.uses, (Shown.BOOKLETS,))
    yield _if(Item.PEMAT_24, known.uses, (Shown.BOOKLETS,), as_=Answer.PARTLY)
    yield ItemAnswer(Item.PEMAT_25, Answer.NOT_APPLICABLE)
    yield _share(Item.PEMAT_26, known.pictured, len(exercises), _PATIENTS)
