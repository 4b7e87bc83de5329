"""Names what can keep a change from being written, in an editor's words."""

from __future__ import annotations

from generator.problems import Rule

FILE_CHANGED = Rule(
    "file-changed",
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

RULES = (FILE_CHANGED, NOTHING_THERE, NOT_WRITABLE, NOT_SAYABLE, FILE_EXISTS)
