"""The words of the codes of this room."""

import pytest

from generator.problems import Rule
from generator.publish import RULES


def test_no_code_is_used_twice() -> None:
    """A code names one rule for ever."""
    codes = [rule.code for rule in RULES]
    assert sorted(set(codes)) == sorted(codes)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.code)
def test_every_code_says_what_why_and_what_to_do(rule: Rule) -> None:
    """Symptom and cause are sentences, the remedy says in a few words what to do."""
    for words in (rule.symptom, rule.cause):
        assert words.strip().endswith(".")
    assert all(len(words.split()) >= 3 for words in (rule.symptom, rule.cause, rule.remedy))
    assert len({rule.symptom, rule.cause, rule.remedy}) == 3
