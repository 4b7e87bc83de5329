"""Says which kinds of booklet are printed in which language, and where each of them lies."""

from __future__ import annotations

from enum import Enum

from generator.booklets.formats import KINDS, LARGE, POCKET, SHEET, STANDARD

FOLDER = "booklets"

FOLD = "pocket-fold"
"""The print file of the pocket booklet: its pages put together on sheets to fold."""


class Kinds(Enum):
    """How many kinds are made: the standard booklet alone, what is usual, or all in every language."""

    STANDARD = "standard"
    USUAL = "usual"
    ALL = "all"

    def of(self, language: str, source: str) -> tuple[str, ...]:
        """Return the kinds in a language; `source` is the one that editors write.

        Usual are the standard booklet and the sheet of a session in each, large print and pocket in that one:
        others are made when they are asked for, because each takes as long as all the rest together.
        """
        if self is Kinds.STANDARD:
            return (STANDARD,)
        if self is Kinds.ALL or language == source:
            return KINDS
        return (STANDARD, SHEET)


def paper_path(language: str, programme: str, phase: int, kind: str) -> str:
    """Return where a booklet lies, from the site's root."""
    suffix = "" if kind == STANDARD else f"-{kind}"
    return f"{language}/{FOLDER}/{programme}-phase-{phase}{suffix}.pdf"


__all__ = ["FOLD", "FOLDER", "KINDS", "LARGE", "POCKET", "SHEET", "STANDARD", "Kinds", "paper_path"]
