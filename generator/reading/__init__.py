"""Reads content: text to values, every value with its file, line and column; all mistakes in one run.

`rules` names the mistakes, `nodes` turns text into nodes, `kinds` says what forms a value takes, `table`
builds records by the field table, `fields_*` are that table, `content` reads the whole folder.
"""

from generator.reading.content import Reading, read_content, read_files
from generator.reading.rules import RULES

__all__ = ["RULES", "Reading", "read_content", "read_files"]
