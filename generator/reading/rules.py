"""Names everything that can be wrong with the text of a content file, in an editor's words."""

from __future__ import annotations

from generator.problems import Rule, Severity

MISSING_FILE = Rule(
    "missing-file",
    "A file or folder that the programme cannot do without is not there.",
    "It was moved, renamed, or never made.",
    "put the file back under this name",
    safety=True,
)
UNREADABLE_FILE = Rule(
    "unreadable-file",
    "A file cannot be opened.",
    "It is a folder, a broken link, or protected.",
    "make it an ordinary file that you may read",
)
UNEXPECTED_FILE = Rule(
    "unexpected-file",
    "A file lies where only certain files belong, so it would be left out in silence.",
    "Content files end in .yml and lie in their own folder.",
    "rename it so that it ends in .yml, or move it out of the content folder",
)
BAD_ID = Rule(
    "bad-id",
    "A file name or a key that serves as an id has characters that do not work in an address.",
    "Ids have 2 to 48 small letters a to z, digits and hyphens.",
    "rename it, for example heel-slide",
)
DUPLICATE_ID = Rule(
    "duplicate-id",
    "Two things have the same id.",
    "An id was copied together with the lines it names.",
    "give one of them an id of its own",
)
FILE_TOO_LARGE = Rule(
    "file-too-large",
    "A content file is far larger than texts ever are.",
    "Something else was saved under this name, or one file holds many.",
    "split it into one file for each exercise or programme",
)
NOT_UTF8 = Rule(
    "not-utf8",
    "Letters in the file cannot be read.",
    "The file was saved in another encoding than UTF-8.",
    "save it again and choose UTF-8 as the encoding",
)
CONTROL_CHARACTER = Rule(
    "control-character",
    "The file holds an invisible character that prints as nothing or turns text around.",
    "It came in by copying from another program.",
    "delete the character and type the place anew",
)
TAB = Rule(
    "tab-indentation",
    "A line begins with a tab.",
    "Indentation is made of blanks only.",
    "replace each tab at the start of the line by two blanks",
)
YAML_SYNTAX = Rule(
    "yaml-syntax",
    "The file cannot be understood from this place on.",
    "An indentation, a colon, a dash or a quotation mark is not where it should be.",
    "check the indentation and the blank after each colon; put a text that contains ': ' in quotation marks",
)
CUT_SHORT = Rule(
    "text-cut-short",
    "A sentence is followed by a number sign, so that the rest of its line is not part of it.",
    "In YAML a number sign after a blank begins a remark.",
    "put the whole text in quotation marks, or move the remark to a line of its own",
    severity=Severity.WARNING,
    safety=True,
)
SEVERAL_DOCUMENTS = Rule(
    "several-documents",
    "A line of three dashes starts a second document in the same file.",
    "Two files were pasted into one.",
    "keep one document in a file and delete the line of dashes",
)
ALIAS = Rule(
    "alias",
    "A value refers to another value by a star and a name.",
    "References inside a file make it unclear which line counts.",
    "write the value out again at this place; put a text that begins with a star in quotation marks",
)
TAG = Rule(
    "tag",
    "A value carries a tag: an exclamation mark and a word.",
    "Tags tell programs to make other things than text and numbers.",
    "delete the tag, or put the whole text in quotation marks",
)
TOO_MUCH = Rule(
    "too-much",
    "The file has far more values, or far deeper lists, than any content needs.",
    "It was made by a program, or a bracket is never closed.",
    "split the file, or close the brackets",
)
DUPLICATE_KEY = Rule(
    "duplicate-key",
    "The same key stands twice; only one of the two would count.",
    "A block of lines was copied and not renamed.",
    "delete one of the two",
)
UNKNOWN_KEY = Rule(
    "unknown-key",
    "The programme does not know a key.",
    "It is misspelt, or stands under the wrong heading.",
    "use one of the keys in the field reference",
)
MISSING_KEY = Rule(
    "missing-key",
    "A statement that must be there is left out.",
    "The line was forgotten or deleted.",
    "add the line",
    safety=True,
)
WRONG_KIND = Rule(
    "wrong-kind",
    "A value has another form than this key takes.",
    "A word stands where a number is wanted, a list where a text is wanted, and so on.",
    "write it in the form that the field reference shows",
)
OUT_OF_RANGE = Rule(
    "out-of-range",
    "A number is outside what can be meant.",
    "A digit too many, a missing point, or a wrong unit.",
    "correct the number",
)
EMPTY_TEXT = Rule(
    "empty-text",
    "A text has no words.",
    "The line was begun and not finished.",
    "write the text, or delete the line",
)
TEXT_TOO_LONG = Rule(
    "text-too-long",
    "One text is as long as a page.",
    "Several sentences or steps stand in one entry.",
    "split it into several entries",
)
MARKUP = Rule(
    "markup-in-text",
    "A text holds angle brackets.",
    "HTML was pasted, or a sign stands for 'less than' or 'more than'.",
    "write plain words; the programme takes care of the layout",
)
BAD_PHRASE = Rule(
    "bad-phrase",
    "A text holds a brace that opens or closes no phrase.",
    "Braces are kept for phrases such as {hold}.",
    "write the phrase as {hold}, or use round brackets",
)
UNKNOWN_CHOICE = Rule(
    "unknown-choice",
    "A word is not one of those that this key takes.",
    "It is misspelt, or another word is in use here.",
    "take one of the words that the message lists",
)
WRONG_SCHEMA = Rule(
    "wrong-schema",
    "A comment tells the editor's program to check the file by the rules of another kind of file.",
    "The file was copied from one of another kind, or the comment was mistyped.",
    "write the comment that the message shows, or delete it",
    severity=Severity.WARNING,
)
UNKNOWN = {
    target: Rule(
        f"unknown-{target}",
        f"A name does not belong to any {target}.",
        f"It is misspelt, or the {target} has not been written yet.",
        f"correct the name, or add the {target} to {where}",
    )
    for target, where in {
        "exercise": "content/exercises/",
        "study": "content/studies.yml",
        "muscle": "content/muscles.yml",
        "equipment": "content/equipment.yml",
        "strain": "content/precautions.yml",
        "daily-life-item": "content/daily-life/",
    }.items()
}

RULES: tuple[Rule, ...] = (
    MISSING_FILE,
    UNREADABLE_FILE,
    UNEXPECTED_FILE,
    BAD_ID,
    DUPLICATE_ID,
    FILE_TOO_LARGE,
    NOT_UTF8,
    CONTROL_CHARACTER,
    TAB,
    YAML_SYNTAX,
    CUT_SHORT,
    SEVERAL_DOCUMENTS,
    ALIAS,
    TAG,
    TOO_MUCH,
    DUPLICATE_KEY,
    UNKNOWN_KEY,
    MISSING_KEY,
    WRONG_KIND,
    OUT_OF_RANGE,
    EMPTY_TEXT,
    TEXT_TOO_LONG,
    MARKUP,
    BAD_PHRASE,
    UNKNOWN_CHOICE,
    WRONG_SCHEMA,
    *UNKNOWN.values(),
)
