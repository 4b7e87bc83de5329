"""Lists the keys of the ledger of editions, which a command writes and a person may read."""

from __future__ import annotations

from generator.catalogue.editions import (
    Edition,
    EditionLedger,
    ExerciseFact,
    Facts,
    ItemFact,
    RuleFact,
    Sheet,
)
from generator.reading.doses import SCHEMA, WANTED, parse_step
from generator.reading.fields_clinic import LANGUAGE
from generator.reading.fields_review import day_of
from generator.reading.kinds import Id, Number, Parsed, Plain
from generator.reading.table import Field, Group, ListOf, Table

# Twenty years of a clinic that prints in eight languages; a state is recorded only when it changed.
MOST_EDITIONS = 20_000
_DAY = Parsed(day_of, r"[12]\d{3}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])", "a day, such as 2026-11-25")
_CODE = Plain("an edition code, such as 7KQ2-M0XP", r"[0-9A-HJKMNP-TV-Y]{4}-[0-9A-HJKMNP-TV-Y]{4}")
_SHORT = Plain("12 hexadecimal digits", r"[0-9a-f]{12}")
_NAME = Plain("a name as it was printed", r".{1,600}")


def _numbers(count: int, most: int = 9999) -> ListOf:
    return ListOf(Number(0, most), least=count, most=count)


SHEET = Table(
    "a kept file",
    Sheet,
    "One PDF file in the archive.",
    (
        Field("code", _CODE, "The code at the foot of every sheet."),
        Field("kind", Id(), "Kind of booklet: standard, large, pocket, sheet, protocol ..."),
        Field("pdf", Plain("64 hexadecimal digits", r"[0-9a-f]{64}"), "SHA-256 of the file."),
    ),
)
EXERCISE_FACT = Table(
    "an exercise on paper",
    ExerciseFact,
    "What a booklet said of one exercise.",
    (
        Field("id", Id(), "The exercise."),
        Field("name", _NAME, "Its name in the booklet's language."),
        Field("variation", Id(), "The form that was used.", required=False),
        Field("position", Number(0, 999), "Its place in the order of the phase."),
        Field("weeks", _numbers(2), "From which week, usual and delayed."),
        Field("dose", ListOf(Parsed(parse_step, SCHEMA, WANTED), least=1), "All dose steps."),
        Field("often", _numbers(3), "Times a day, days a week, days of rest."),
        Field("pace", _numbers(4), "Seconds of holding, lifting, lowering, and rest between sets."),
        Field("forms", ListOf(Id()), "Easier and harder forms that it offered.", required=False),
        Field("when", _SHORT, "Fingerprint of what must be reached first.", required=False),
        Field("words", _SHORT, "Fingerprint of how it is done."),
        Field("safety", _SHORT, "Fingerprint of what keeps it safe."),
        Field("pictures", _SHORT, "Fingerprint of its poses."),
    ),
)
RULE_FACT = Table(
    "a restriction on paper",
    RuleFact,
    "What a booklet said must not be done.",
    (
        Field("id", Id(), "The restriction."),
        Field("words", _NAME, "As it was said to the patient."),
        Field("weeks", _numbers(2), "Until which week, usual and delayed."),
        Field("limit", _SHORT, "Fingerprint of what exactly it forbids."),
    ),
)
ITEM_FACT = Table(
    "a thing of daily life on paper",
    ItemFact,
    "What a booklet said of one thing of daily life.",
    (
        Field("id", Id(), "The thing of daily life."),
        Field("name", _NAME, "Its name in the booklet's language."),
        Field("words", _SHORT, "Fingerprint of how it is done."),
        Field("safety", _SHORT, "Fingerprint of what keeps it safe."),
        Field("pictures", _SHORT, "Fingerprint of its poses."),
    ),
)
FACTS = Table(
    "what a booklet said",
    Facts,
    "The facts by which old paper is told from new.",
    (
        Field("weeks", _numbers(2), "From which week the phase may begin, usual and delayed."),
        Field("pain", _numbers(3, 10), "Highest pain during, after, the next morning."),
        Field("support", _SHORT, "Fingerprint of weight, walking aid and brace."),
        Field("avoid", _SHORT, "Fingerprint of what must not be done in the phase."),
        Field("help", _SHORT, "Fingerprint of warning signs and what to do when it got worse."),
        Field("telephone", _SHORT, "Fingerprint of the numbers to call."),
        Field("phase", _SHORT, "Fingerprint of goals and milestones."),
        Field("rest", _SHORT, "Fingerprint of all other texts."),
        Field("exercises", ListOf(Group(EXERCISE_FACT)), "The exercises in their order."),
        Field("rules", ListOf(Group(RULE_FACT)), "The restrictions that held.", required=False),
        Field("daily-life", ListOf(Group(ITEM_FACT)), "Things of daily life.", required=False),
    ),
)
EDITION = Table(
    "a recorded edition",
    Edition,
    "Booklets that say the same, in one language.",
    (
        Field("recorded", _DAY, "When it was recorded."),
        Field("programme", Id(), "The programme."),
        Field("phase", Number(1, 12), "The phase; left out for a protocol.", required=False),
        Field("language", LANGUAGE, "The language of the paper."),
        Field("fingerprint", Plain("40 hexadecimal digits", r"[0-9a-f]{40}"), "Of all that it says."),
        Field("sheets", ListOf(Group(SHEET), least=1), "The files that were kept."),
        Field("facts", Group(FACTS), "What it told its reader; a protocol has none.", required=False),
    ),
)
LEDGER = Table(
    "the ledger of editions",
    EditionLedger,
    "Every recorded booklet; written by: editions record.",
    (Field("editions", ListOf(Group(EDITION), most=MOST_EDITIONS), "Editions, the latest last."),),
)
