"""Writes content: the only room that does; what an editor typed stays, comments and layout included.

`yaml_text` writes values, `splice` changes one value in a text, `files` replaces files whole, `rules` names
what can keep a change from being written. `examples` and `skeleton` write a new file from the field table,
`measurements` brings tables of published values in, `sign_offs` adds to the ledger of reviews, `editions`
keeps what was handed out.
"""

from generator.editing.editions import add_editions, keep_file, kept_file, write_bytes
from generator.editing.files import (
    Draft,
    append_entry,
    change_files,
    create_file,
    hash_of,
    hashes_as_read,
    insert_item,
    refused_id,
    replace_files,
    replace_scalar,
    write_text,
)
from generator.editing.measurements import edits_of, new_rows, rows_of
from generator.editing.rules import RULES
from generator.editing.sign_offs import sign_offs_written
from generator.editing.skeleton import new_file
from generator.editing.splice import with_entry, with_item, with_scalar

__all__ = [
    "RULES",
    "Draft",
    "add_editions",
    "append_entry",
    "change_files",
    "create_file",
    "edits_of",
    "hash_of",
    "hashes_as_read",
    "insert_item",
    "keep_file",
    "kept_file",
    "new_file",
    "new_rows",
    "refused_id",
    "replace_files",
    "replace_scalar",
    "rows_of",
    "sign_offs_written",
    "with_entry",
    "with_item",
    "with_scalar",
    "write_bytes",
    "write_text",
]
