"""Writes content: the only room that does; what an editor typed stays, comments and layout included.

`yaml_text` writes values, `splice` changes one value in a text, `files` replaces files whole, `rules` names
what can keep a change from being written. `examples` and `skeleton` write a new file from the field table.
"""

from generator.editing.files import (
    Draft,
    append_entry,
    create_file,
    hash_of,
    insert_item,
    refused_id,
    replace_files,
    replace_scalar,
)
from generator.editing.rules import RULES
from generator.editing.skeleton import new_file
from generator.editing.splice import with_entry, with_item, with_scalar

__all__ = [
    "RULES",
    "Draft",
    "append_entry",
    "create_file",
    "hash_of",
    "insert_item",
    "new_file",
    "refused_id",
    "replace_files",
    "replace_scalar",
    "with_entry",
    "with_item",
    "with_scalar",
]
