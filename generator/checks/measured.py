"""Says which measurements can never be pooled because a number is missing or cannot be."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.exercise import Measurement
from generator.catalogue.terms import Statistic
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, Severity
from generator.progression.activity import forms

RULE = Rule(
    "not-pooled",
    "A measurement is set aside because its weight beside other studies cannot be worked out.",
    "The number of people is not known or is 1, or the standard deviation is not above 0.",
    "nothing need be done: it is shown with the reason; add the number once it has been read",
    severity=Severity.NOTE,
)
RULES = (RULE,)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a note for each measurement without people, of one person, or with an SD that is not above 0."""
    for form, measured, _ in forms(catalogue):
        for item in measured:
            study = catalogue.studies.get(item.study)
            if study is None:
                continue
            people = item.n or study.n
            if people is None:
                yield _note(form, item, "n", "the number of people is not known")
            elif people == 1:
                yield _note(form, item, "n", "one person only")
            elif item.sd == 0 and item.statistic is Statistic.MEAN:
                yield _note(form, item, "sd", "the standard deviation is 0")
            elif item.iqr == 0:
                yield _note(form, item, "iqr", "the interquartile range is 0")


def _note(form: str, item: Measurement, key: str, why: str) -> Problem:
    message = f"{item.mean:g} % for {item.muscle} in '{form}' by '{item.study}' is set aside: {why}"
    return RULE.at(item.at(key), message)
