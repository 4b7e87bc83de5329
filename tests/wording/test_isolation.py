"""Numbers stay in their order inside right-to-left lines (Unicode Standard Annex #9)."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.wording.isolation import CLOSE, NO_BREAK, OPEN, isolate, isolate_numbers, plain


def shown(text: str) -> str:
    """Return the text with isolates made visible."""
    return loosened(isolate_numbers(text)).replace(OPEN, "[").replace(CLOSE, "]")


def loosened(text: str) -> str:
    """Return the text with blanks that may break."""
    return text.replace(NO_BREAK, " ")


@pytest.mark.parametrize(
    ("typed", "isolated"),
    [
        ("اثنِ ركبتك 90° وكرر 3 × 10", "اثنِ ركبتك [90°] وكرر [3 × 10]"),
        ("Hold 3 x 10 s.", "Hold [3 x 10 s]."),
        ("from 20–50 % to -5°", "from [20–50 %] to [-5°]"),
        ("pain 2/10, twice (3 times)", "pain [2/10], twice ([3] times)"),
        ("2,5 kg or 1 234,5 m", "[2,5 kg] or [1 234,5 m]"),
        ("2 كغم", "[2] كغم"),
        ("Call (020) 7946 0000, else 112.", "Call [(020) 7946 0000], else [112]."),
        ("from abroad +44 20 7946 0000", "from abroad [+44 20 7946 0000]"),
        ("in week 6 10 minutes", "in week [6] [10] minutes"),
        ("Step 3. 10 times", "Step [3]. [10] times"),
        ("L4/5 and A4 paper", "L4/5 and A4 paper"),
        ("≤ 30° or < 5 cm", "[≤ 30°] or [< 5 cm]"),
    ],
)
def test_what_is_read_as_one_number_is_one_unit(typed: str, isolated: str) -> None:
    """A dose, range, angle, weight or telephone number never comes apart; letters keep their digits."""
    assert shown(typed) == isolated


@given(st.text(alphabet=st.sampled_from("ab 0123×x*°%-–−+.,/()kgmس ثا\u00a0:'")))
def test_isolating_changes_no_word_and_never_nests(text: str) -> None:
    """Without its isolates a sentence is as it was, but for blanks; each isolate opens and closes once."""
    once = isolate_numbers(text)
    assert loosened(plain(once)) == loosened(text)
    assert isolate_numbers(once) == once
    assert re.fullmatch(f"(?:[^{OPEN}{CLOSE}]|{OPEN}[^{OPEN}{CLOSE}]+{CLOSE})*", once)


@given(st.text(alphabet=st.sampled_from("abc 059×°%ثس")))
def test_no_digit_that_stands_free_is_left_bare(text: str) -> None:
    """A digit outside an isolate hangs on a letter, a comma or a full stop of the text."""
    bare = re.sub(f"{OPEN}[^{OPEN}{CLOSE}]*{CLOSE}", " ", isolate_numbers(text))
    assert not re.search(r"(?<!\w)\d", bare)


def test_an_isolate_of_an_isolate_is_one() -> None:
    """A phrase that is isolated as a whole drops what its parts brought along."""
    assert isolate(f"{isolate('3')} × {isolate('10')}") == f"{OPEN}3{NO_BREAK}×{NO_BREAK}10{CLOSE}"


def test_no_line_breaks_inside_a_number() -> None:
    """The parts of a telephone number on two lines would stand in the wrong order from right to left."""
    found = re.findall(f"{OPEN}(.*?){CLOSE}", isolate_numbers("اتصل 01632 960100 أو +44 20 7946 0000"))
    assert found == ["01632 960100", "+44 20 7946 0000"]
