"""Names everything that can be wrong with a booklet, with its cause and remedy."""

from __future__ import annotations

from generator.problems import Rule, Severity

_OURS = "tell the maintainers, with the booklet and this message"
_CHANGED = "make the booklet again; if it comes back, tell the maintainers"

OVERFLOW = Rule(
    "booklet-overflow",
    "Words stand beyond their box or the sheet.",
    "A word is longer than its column, so that its end would be cut off or printed over something else.",
    "shorten the word, or put a hyphen or blank where it may break",
    safety=True,
)
PRINTED_OVER = Rule(
    "booklet-printed-over",
    "Words or a picture stand on others.",
    "Two parts of a sheet took the same place, so that neither can be read.",
    _OURS,
    safety=True,
)
MISPRINT = Rule(
    "booklet-misprint",
    "Words are printed twice, or only in part.",
    "A text met the foot of a sheet, and the layout library printed it once more or lost its end.",
    "shorten or lengthen the text before it by a line, and " + _OURS,
    safety=True,
)
COMPLAINT = Rule(
    "booklet-complaint",
    "The PDF writer complained.",
    "It met something that it cannot print as asked: a missing font, picture or sign.",
    _OURS,
)
LONG_EXERCISE = Rule(
    "booklet-long-exercise",
    "An exercise takes more than two sheets.",
    "Its set-up, steps, limits and warnings are too long for two sheets at a size that everyone can read.",
    "shorten the texts of the exercise, or part it into two exercises",
    Severity.WARNING,
)
PAGE_LOCK = Rule(
    "booklet-page-lock",
    "A booklet stands on other sheets than the same booklet in another language.",
    "A text is so much longer in one language that the sheets could not be made to agree.",
    "shorten the translation of what is named here, so that a clinician finds it on the same sheet",
)
LONG_PROTOCOL = Rule(
    "booklet-long-protocol",
    "A protocol for clinicians takes more than four sheets.",
    "The programme has so many phases, restrictions or exercises that nobody reads it at a glance.",
    "shorten the texts of the programme, or part it into two programmes",
    Severity.WARNING,
)
NOT_A_PDF = Rule(
    "booklet-not-a-pdf",
    "The finished file cannot be read back.",
    "The file is damaged or incomplete.",
    _CHANGED,
)
PAGES = Rule(
    "booklet-pages",
    "The finished file has another number of pages than was laid out.",
    "Pages were lost or added when the file was written.",
    _CHANGED,
)
FONT_NOT_EMBEDDED = Rule(
    "booklet-font-not-embedded",
    "A font is not inside the file.",
    "On another machine or printer another font would take its place, and signs may be missing.",
    _OURS,
)
STRANGE_FONT = Rule(
    "booklet-strange-font",
    "A font that is not ours was used.",
    "A sign or script is missing from our fonts, so the machine took one of its own.",
    "leave the sign out, or install the font package for the script",
)
MISSING_SIGN = Rule(
    "booklet-missing-sign",
    "An empty box stands where a sign should be.",
    "No font on this machine has the sign.",
    "leave the sign out, or install the font package for the script",
    safety=True,
)
MARGIN_LINE = Rule(
    "booklet-margin-line",
    "A sheet lacks a line that must stand on every sheet.",
    "The deferral note, the clinic's telephone line, the page number, the edition or the demonstration line"
    " did not reach the sheet.",
    _OURS,
    safety=True,
)
TEXT_MISSING = Rule(
    "booklet-text-missing",
    "A dose, a stop rule or a warning is not on its sheet as it should be read.",
    "It was lost, or its figures stand in another order than they are read.",
    _OURS,
    safety=True,
)
OFF_SHEET = Rule(
    "booklet-off-sheet",
    "Characters stand off the sheet.",
    "They would be lost in print.",
    "shorten the text that stands there",
    safety=True,
)
SMALL_TEXT = Rule(
    "booklet-small-text",
    "Text is smaller than 12 points, in a protocol for clinicians than 8.",
    "People with weak sight could not read it.",
    _OURS,
)
TITLE = Rule(
    "booklet-title",
    "The file has no title, or another one.",
    "A screen reader would read out the file's name instead.",
    _OURS,
)
LANGUAGE = Rule(
    "booklet-language",
    "The file does not say its language, or says another.",
    "A screen reader would read it with the wrong voice.",
    _OURS,
)
TAGS = Rule(
    "booklet-tags",
    "The file is not tagged.",
    "A screen reader could not tell headings, lists and tables from text.",
    _OURS,
)
HEADINGS = Rule(
    "booklet-headings",
    "Headings jump over a level.",
    "People who move from heading to heading would miss parts.",
    _OURS,
)
PICTURE_WORDS = Rule(
    "booklet-picture-words",
    "A picture has no words.",
    "People who cannot see it would not know that it is there.",
    "describe the picture",
)
HEADER_SCOPE = Rule(
    "booklet-header-scope",
    "A table header does not say what it heads.",
    "A screen reader could not say which row or column a cell belongs to.",
    _OURS,
)

RULES = (
    OVERFLOW,
    PRINTED_OVER,
    MISPRINT,
    COMPLAINT,
    LONG_EXERCISE,
    PAGE_LOCK,
    LONG_PROTOCOL,
    NOT_A_PDF,
    PAGES,
    FONT_NOT_EMBEDDED,
    STRANGE_FONT,
    MISSING_SIGN,
    MARGIN_LINE,
    TEXT_MISSING,
    OFF_SHEET,
    SMALL_TEXT,
    TITLE,
    LANGUAGE,
    TAGS,
    HEADINGS,
    PICTURE_WORDS,
    HEADER_SCOPE,
)
