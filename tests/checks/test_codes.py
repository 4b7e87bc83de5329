"""Every code of reading and of the checks of content is produced by a test, from what an editor types."""

from __future__ import annotations

from generator import checks, reading
from tests.checks import test_content, test_in_use, test_poses, test_sign_offs, test_trade
from tests.reading import test_files, test_values


def test_every_code_has_a_mistake_that_produces_it() -> None:
    """The tables of mistakes and the rules name the same codes: none is untested, none is invented."""
    mistakes = (
        *test_content.CASES,
        *test_in_use.CASES,
        *test_sign_offs.CASES,
        *test_trade.CASES,
        *test_poses.CASES,
        *test_values.CASES,
        *test_files.SPOILT,
        *test_files.DISTURBED,
    )
    rules = (*reading.RULES, *checks.RULES)
    assert {mistake.code for mistake in mistakes} == {rule.code for rule in rules}


def test_each_code_is_one_rule() -> None:
    """A code stands for one rule only, and each rule says what one sees, why, and what to do."""
    rules = (*reading.RULES, *checks.RULES)
    codes = [rule.code for rule in rules]
    assert sorted(codes) == sorted(set(codes))
    for rule in rules:
        assert rule.symptom.endswith(".")
        assert rule.cause.endswith(".")
        assert rule.remedy
