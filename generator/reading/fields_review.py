"""Lists the keys of the ledger of sign-offs, which a command writes and a person may read."""

from __future__ import annotations

import datetime
import re

from generator.catalogue.editorial import Scope
from generator.catalogue.review import Ledger, Reviewer, SignOff
from generator.reading.fields_clinic import LANGUAGE
from generator.reading.kinds import Choice, Flag, Parsed, Plain
from generator.reading.table import Field, Group, ListOf, Table

MOST_SIGN_OFFS = 20_000
_MONTH_PATTERN = r"[12]\d{3}-(?:0[1-9]|1[0-2])"
_DAY_PATTERN = rf"{_MONTH_PATTERN}-(?:0[1-9]|[12]\d|3[01])"


def day_of(typed: str) -> datetime.date | None:
    """Return the day that a text such as ``2026-11-25`` names; None where it names none."""
    if not re.fullmatch(_DAY_PATTERN, typed, re.ASCII):
        return None
    try:
        return datetime.date.fromisoformat(typed)
    except ValueError:
        return None


def month_of(typed: str) -> datetime.date | None:
    """Return the first day of the month that a text such as ``2028-11`` names; None where it names none."""
    return day_of(f"{typed}-01") if re.fullmatch(_MONTH_PATTERN, typed, re.ASCII) else None


SIGN_OFF = Table(
    "a sign-off",
    SignOff,
    "Who read what, when, in which state.",
    (
        Field("item", Plain("an item, such as exercise/clam", r"[a-z0-9/-]{2,160}"), "What was read."),
        Field("scope", Choice(Scope), "Whether its content, a translation or its evidence was read."),
        Field("role", Choice(Reviewer), "In which role it was read; never a name."),
        Field("language", LANGUAGE, "Which translation was read.", required=False),
        Field(
            "fingerprint",
            Plain("32 hexadecimal digits, as 'review sign' wrote them", "[0-9a-f]{32}"),
            "The state that was read.",
        ),
        Field("date", Parsed(day_of, _DAY_PATTERN, "a day, such as 2026-11-25"), "When it was read."),
        Field(
            "document",
            Plain("a document number", r"[A-Za-z0-9 ./_-]{1,40}"),
            "Number in the clinic's own system.",
            required=False,
        ),
        Field(
            "next-review",
            Parsed(month_of, _MONTH_PATTERN, "a month, such as 2028-11"),
            "When it is to be read again.",
            required=False,
        ),
        Field("initials", Plain("initials", r"[^\W\d_]{1,6}"), "Initials of the person.", required=False),
    ),
)
LEDGER = Table(
    "the ledger of sign-offs",
    Ledger,
    "What was reviewed; written by: review sign.",
    (
        Field(
            "invented", Flag(), "Yes: made up for a demonstration, and worth nothing else.", required=False
        ),
        Field("signed", ListOf(Group(SIGN_OFF), most=MOST_SIGN_OFFS), "Sign-offs, the latest last."),
    ),
)
