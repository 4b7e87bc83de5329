"""Lists the keys of a judgement: what a clinician may say about an exercise that nobody measured."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from generator.catalogue.judgement import JudgedAs, Judgement
from generator.reading.findings import ID_PATTERN
from generator.reading.kinds import Id, Plain
from generator.reading.table import Field, ListOf, Table, Tagged

_FORM = Plain("the id of an exercise, or exercise/variation", f"{ID_PATTERN}(/{ID_PATTERN})?")
_SHARED = (
    Field("muscles", ListOf(Id("muscle"), least=1), "Muscles for which it holds, from muscles.yml."),
    Field("role", Plain("the role of a person, such as surgeon"), "Who judged.", example="physiotherapist"),
    Field("reason", Plain("a reason", ".{1,500}"), "Why, for clinicians."),
)


def _judged(kind: JudgedAs) -> Callable[..., Judgement]:
    def build(**values: Any) -> Judgement:
        return Judgement(kind=kind, **values)

    return build


def _table(kind: JudgedAs, *own: Field) -> Table:
    words = "How hard muscles work that nobody measured."
    return Table("a judgement", _judged(kind), words, (*own, *_SHARED))


def _others(count: int, words: str) -> Field:
    return Field("others", ListOf(_FORM, least=count, most=count), words)


JUDGEMENT = Tagged(
    "as",
    {
        # The first is what a new file shows: it refers to no other exercise.
        JudgedAs.NO_LOAD.value: _table(JudgedAs.NO_LOAD),
        JudgedAs.LIKE.value: _table(JudgedAs.LIKE, _others(1, "The exercise that works them as hard.")),
        JudgedAs.BETWEEN.value: _table(JudgedAs.BETWEEN, _others(2, "The easier and the harder exercise.")),
    },
)
