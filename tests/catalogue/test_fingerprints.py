"""Fingerprints cover meaning and nothing else; edition codes notice a slip of the tongue."""

from __future__ import annotations

import re

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.catalogue.fingerprints import edition_code, fingerprint, is_edition_code, plain
from tests.content import FILES, catalogue_of, with_change

RAISE = "exercises/heel-raise.yml"
# Crockford's base 32 alphabet without its last letter, from https://www.crockford.com/base32.html.
LETTERS = "0123456789ABCDEFGHJKMNPQRSTVWXY"
_DIGESTS = st.text("0123456789abcdef", min_size=64, max_size=64)
_JSON = st.recursive(
    st.one_of(st.none(), st.booleans(), st.integers(), st.text(max_size=5)),
    lambda inner: st.one_of(
        st.lists(inner, max_size=3), st.dictionaries(st.text(max_size=3), inner, max_size=3)
    ),
    max_leaves=8,
)


def _of_raise(files: dict[str, str]) -> str:
    return fingerprint(catalogue_of(files).exercises["heel-raise"])


def _blocks(text: str) -> list[str]:
    """Return the top keys of a file, each with the lines that belong to it."""
    blocks: list[str] = []
    for line in text.splitlines(keepends=True):
        if line[0] in " -":
            blocks[-1] += line
        else:
            blocks.append(line)
    return blocks


@given(st.permutations(_blocks(FILES[RAISE])), st.integers(0, 5))
def test_order_of_keys_and_comments_change_nothing(blocks: list[str], blank: int) -> None:
    """Keys in another order, comments and blank lines leave a fingerprint as it is."""
    moved = {**FILES, RAISE: ("# a remark\n" + "\n" * blank).join(blocks)}
    assert _of_raise(moved) == _of_raise(dict(FILES))


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("Lower slowly.", "Lower slowly"),
        ("hold: 3 s", "hold: 4 s"),
        ("to: 12}", "to: 11}"),
        ("strains: [knee]", "strains: []"),
        ("support: fingertips", "support: both hands"),
        ("    demand: lying or sitting\n", ""),
        ("is: easier", "is: harder"),
        ("mean: 34.5", "mean: 34.6"),
        ("read: [mean, sd]", "read: [mean]"),
        ("  seated:", "  sitting:"),
        (
            "  - Push up onto your toes.\n  - Stay up for {hold}.\n",
            "  - Stay up for {hold}.\n  - Push up onto your toes.\n",
        ),
    ],
)
def test_meaning_changes_the_fingerprint(old: str, new: str) -> None:
    """A word, a number, a left-out key or two swapped steps change the fingerprint."""
    assert _of_raise(with_change(FILES, RAISE, old, new)) != _of_raise(dict(FILES))


def test_notation_without_meaning_changes_nothing() -> None:
    """The same number or text written otherwise is the same."""
    for old, new in (
        ("sd: 11", "sd: 11.0"),
        ("rest: 60 s", "rest: 1 min"),
        ("role: strength", 'role: "strength"'),
    ):
        assert _of_raise(with_change(FILES, RAISE, old, new)) == _of_raise(dict(FILES))


@given(_JSON, _JSON)
def test_different_values_have_different_fingerprints(one: object, other: object) -> None:
    """Values that differ, in kind too (1 and true), differ in their fingerprints; so does a list of them."""
    assume(repr(plain(one)) != repr(plain(other)) and one != other)
    assert fingerprint(one) != fingerprint(other)
    assert fingerprint(one, other) != fingerprint([one, other])
    assert fingerprint(True) != fingerprint(1)


def test_unknown_values_are_refused() -> None:
    """A value that has no plain form is an error of the program, never a silent fingerprint of its name."""
    with pytest.raises(TypeError, match="no fingerprint for set"):
        fingerprint({1, 2})


@given(_DIGESTS)
def test_code_of_a_digest(digest: str) -> None:
    """A code is two groups of four letters without I, L, O, U and Z, and is known to be one."""
    code = edition_code(digest)
    assert len(code) == 9
    assert code[4] == "-"
    assert set(code.replace("-", "")) <= set(LETTERS)
    assert is_edition_code(code)
    assert is_edition_code(code.lower().replace("-", " "))
    assert is_edition_code(code.replace("0", "O").replace("1", "l"))


@given(_DIGESTS, st.integers(0, 7), st.sampled_from(LETTERS + "Z"))
def test_one_wrong_letter_is_noticed(digest: str, spot: int, letter: str) -> None:
    """A code with one letter misread is none."""
    code = edition_code(digest).replace("-", "")
    assume(code[spot] != letter)
    assert not is_edition_code(code[:spot] + letter + code[spot + 1 :])


def test_the_letter_that_stands_in_no_code() -> None:
    """The letter Z counts as nothing in the check and is therefore never taken for a 0."""
    code = edition_code("0" * 64)
    assert code == "0000-0000"
    assert not is_edition_code("Z000-0000")


@given(_DIGESTS, st.integers(0, 6))
def test_swapped_neighbours_are_noticed(digest: str, spot: int) -> None:
    """A code with two neighbouring letters swapped is none."""
    code = edition_code(digest).replace("-", "")
    assume(code[spot] != code[spot + 1])
    assert not is_edition_code(code[:spot] + code[spot + 1] + code[spot] + code[spot + 2 :])


@given(st.text(max_size=12))
def test_text_of_another_length_is_no_code(text: str) -> None:
    """What has not eight letters, blanks and hyphens apart, is no code, and asking never raises."""
    assume(len(re.sub(r"[\s-]", "", text)) != 8)
    assert not is_edition_code(text)
