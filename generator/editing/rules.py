"""Names what can keep a change from being written, in an editor's words."""

from __future__ import annotations

from generator.problems import Rule

FILE_CHANGED = Rule(
    "content-changed-meanwhile",
    "A file was changed by somebody else after it was read, so nothing was written.",
    "It was saved in an editor meanwhile, or another command wrote to it.",
    "run the command again; it will read the file as it is now",
)
NOTHING_THERE = Rule(
    "nothing-there",
    "The place that should be changed holds no such value.",
    "Lines were moved, or another kind of value stands there.",
    "run the command again, or make the change by hand",
)
NOT_WRITABLE = Rule(
    "cannot-write",
    "A file cannot be written.",
    "The folder is protected, the disk is full, or the file was moved.",
    "make the folder one that you may write to, then run the command again",
)
NOT_SAYABLE = Rule(
    "text-not-writable",
    "A text holds characters that no content file may hold.",
    "It was copied from a program that adds invisible characters.",
    "type the text anew",
)
FILE_EXISTS = Rule(
    "file-exists",
    "A file of this name is there already, so nothing was written.",
    "The id is taken.",
    "choose another id, or change the file that is there",
)
BAD_TABLE = Rule(
    "table-not-readable",
    "A table that should be imported cannot be read, so nothing was written.",
    "It is no CSV file in UTF-8, or its first line does not name the columns.",
    "save it as CSV (UTF-8) with the columns that the README names",
)
BAD_ROW = Rule(
    "row-fits-nowhere",
    "A row of a table fits nowhere, so nothing of the table was written.",
    "A name is spelt otherwise in the content, or a value is missing.",
    "correct the row, or take it out of the table",
)
ARCHIVE_LACKS = Rule(
    "edition-not-kept",
    "The file of a recorded edition is not in the archive.",
    "The archive lies elsewhere, or was not copied along with the content.",
    "name the archive with --archive, or put the file back from a copy",
)
ARCHIVE_DAMAGED = Rule(
    "edition-damaged",
    "The kept file of an edition is not as it was recorded, so it is not handed out.",
    "It was changed or damaged after it was recorded.",
    "put the file back from a copy of the archive",
    safety=True,
)

RULES = (
    FILE_CHANGED,
    NOTHING_THERE,
    NOT_WRITABLE,
    NOT_SAYABLE,
    FILE_EXISTS,
    BAD_TABLE,
    BAD_ROW,
    ARCHIVE_LACKS,
    ARCHIVE_DAMAGED,
)
