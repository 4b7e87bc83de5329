"""Makes the protocol for clinicians: one programme on a few wide sheets, read back and examined."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from urllib.parse import quote

from markupsafe import Markup

from generator.booklets import rules
from generator.booklets.engine import no_collecting
from generator.booklets.every_sheet import expected
from generator.booklets.examine import examine
from generator.booklets.fonts import font_rules
from generator.booklets.html import PARTING, TEMPLATES, environment
from generator.booklets.kept import keep, taken
from generator.booklets.layout import Laid, lay_out
from generator.booklets.marks import mark_rules, tokens
from generator.booklets.pdf import write
from generator.booklets.protocol_chart import Chart
from generator.booklets.protocol_values import LEAST_POINTS, MOST_SHEETS, ProtocolJob
from generator.booklets.protocol_view import Protocol, protocol_view
from generator.booklets.seen import seen_in_layout
from generator.booklets.values import BookletResult, SheetFact
from generator.catalogue.terms import Paper
from generator.problems import Place, Problem, in_order
from generator.shelf import Shelf

# Inner width of a wide sheet, in millimetres, and what number and name of a restriction take of it.
_INNER_MM = {Paper.A4: 297.0 - 24.0, Paper.LETTER: 279.4 - 24.0}
_LAST = "sources"
# Lines at their usual distance need at least so much more, in millimetres (measured: 42 on three sheets).
_LOOSER_MM = 40.0
_MARK_MM, _WHAT_MM = 6.0, 82.0
# A letter of a table's type with its share of blanks, and the room beside the words (measured, rounded up).
_LETTER_MM, _BESIDE_MM = 1.4, 2.0
# Letters of a heading that stands on one line above words that may be shorter.
_HEADING = 12
_PAPER_RULE = (
    "@page {{ size: {paper} landscape; @bottom-{start} {{ content: element(foot-note); width: 62%; {foot} }}"
    " @bottom-{end} {{ content: element(foot-facts); width: 38%; {foot} }} }}"
)
_FOOT = "vertical-align: top; padding-top: 1.6mm; border-top: 0.3mm solid var(--pb-line); margin-top: 2mm;"


def make_protocol(job: ProtocolJob, shelf: Shelf | None = None) -> BookletResult:
    """Write one protocol to its output and return what came of it.

    shelf: where it is taken from if it would be the same, and put otherwise.
    """
    if shelf is None:
        return _printed(job)
    name = shelf.name(protocol_html(job))
    if (found := taken(shelf, name, job.output)) is not None:
        return found
    result = _printed(job)
    keep(shelf, name, result)
    return result


# What the library has made is let go first: only its cycles are left to be collected.
@no_collecting()
def _printed(job: ProtocolJob) -> BookletResult:
    view = protocol_view(job, _chart_mm(job))
    _, laid = fitted_protocol(job)
    pdf, logged = write(laid)
    job.output.parent.mkdir(parents=True, exist_ok=True)
    job.output.write_bytes(pdf)
    sheets = tuple(_facts(view, laid))
    found = (
        *_seen_in_layout(job, laid, logged),
        *examine(pdf, expected(view, laid.pages, sheets), LEAST_POINTS),
    )
    return BookletResult(job.output, laid.pages, sheets, in_order(found))


def fitted_protocol(job: ProtocolJob) -> tuple[str, Laid]:
    """Return the protocol as HTML and laid out; its lines stand closer where that spares a sheet."""
    tight = protocol_html(job, tight=True)
    closer = lay_out(tight)
    if closer.sections[_LAST].spare < _LOOSER_MM:
        return tight, closer
    html = protocol_html(job)
    laid = lay_out(html)
    return (tight, closer) if closer.pages < laid.pages else (html, laid)


def protocol_html(job: ProtocolJob, *, tight: bool = False) -> str:
    """Return the protocol as one HTML document that needs no file besides the fonts.

    tight: whether lines stand closer, in type that is nowhere larger than it has to be.
    """
    view = protocol_view(job, _chart_mm(job))
    return (
        environment(job.voice)
        .get_template("protocol.html")
        .render(
            protocol=view,
            programme=job.stages,
            clinic=job.catalogue.clinic,
            safety=job.catalogue.safety,
            source_language=job.catalogue.source_language,
            tight=tight,
            style=_style(job, view),
        )
    )


def _chart_mm(job: ProtocolJob) -> float:
    return _INNER_MM[job.catalogue.clinic.paper] - _MARK_MM - _WHAT_MM


def _style(job: ProtocolJob, view: Protocol) -> Markup:
    css = (job.assets / "tokens.css").read_text(encoding="utf-8")
    own = "".join((TEMPLATES / name).read_text(encoding="utf-8") for name in ("protocol.css", PARTING))
    rtl = job.voice.direction == "rtl"
    start, end = ("right", "left") if rtl else ("left", "right")
    paper = _PAPER_RULE.format(paper=job.catalogue.clinic.paper.value, start=start, end=end, foot=_FOOT)
    parts = (
        font_rules(),
        css,
        mark_rules(css, job.voice.direction),
        _drawn(view.chart, tokens(css), rtl),
        _columns(view),
        paper,
        own,
    )
    # The sources are our own files; escaping would break the quotes of the rules.
    return Markup("\n".join(parts))


def _columns(view: Protocol) -> str:
    """Return how wide the columns are whose words differ most between languages: each on one line."""
    rows = [row for group in view.exercises for row in group.rows]
    widest = {"role": max(len(row.role) for row in rows), "demand": max(len(row.demand) for row in rows)}
    wide = {name: max(letters, _HEADING) * _LETTER_MM + _BESIDE_MM for name, letters in widest.items()}
    said = (f"--{name}: {width:.1f}mm;" for name, width in wide.items())
    return f":root {{ {' '.join(said)} }}"


def _drawn(chart: Chart, colours: Mapping[str, str], rtl: bool) -> str:
    """Return the rules of what is drawn: hatching, and the lines of weeks and phases behind the bars."""
    hatch = (
        '<svg xmlns="http://www.w3.org/2000/svg" width="6" height="6" viewBox="0 0 6 6">'
        f'<path d="M-1 7 7 -1M-1 1 1 -1M5 7 7 5" stroke="{colours["quiet"]}" stroke-width="1.1"/></svg>'
    )
    width, height = chart.weeks * 10, 10
    lines = "".join(
        f'<rect x="{width - at * 10 if rtl else at * 10}" width="{1.1 if at in chart.starts else 0.4}"'
        f' height="{height}" fill="{colours["line" if at in chart.starts else "rule"]}"/>'
        for at in range(chart.weeks)
    )
    grid = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}"'
        f' preserveAspectRatio="none">{lines}</svg>'
    )
    side, drawn_mm = "left" if rtl else "right", round(chart.week_mm * chart.weeks, 2)
    return (
        f":root {{ --mark-hatch: {_address(hatch)}; --what: {_WHAT_MM}mm; }}"
        f" .chart {{ background: {_address(grid)} no-repeat {side} top / {drawn_mm}mm 100%; }}"
    )


def _address(svg: str) -> str:
    return f'url("data:image/svg+xml,{quote(svg)}")'


def _facts(view: Protocol, laid: Laid) -> Iterator[SheetFact]:
    required = _required(view)
    for key, section in laid.sections.items():
        pages = range(section.first, section.first + section.pages)
        standing = {words: laid.page_with(words, pages) for words in required.get(key, ())}
        for page in pages:
            yield SheetFact(None, page, tuple(words for words, where in standing.items() if where == page))


def _required(view: Protocol) -> dict[str, tuple[str, ...]]:
    """Return what must be read in each section."""
    uses = [row for group in view.exercises for row in group.rows]
    return {
        "allowed": tuple(row.what for row in view.chart.rows),
        "phases": (
            *(cell.words for fact in view.facts for cell in fact.cells),
            *(str(gate.milestone.passed) for gates in view.gates for gate in gates),
        ),
        "exercises": tuple(dict.fromkeys(words for row in uses for words in (str(row.name), *row.steps))),
        "sources": tuple(str(one.about) for one in view.rules),
    }


def _seen_in_layout(job: ProtocolJob, laid: Laid, logged: tuple[str, ...]) -> Iterator[Problem]:
    place = Place(job.output.as_posix())
    yield from seen_in_layout(laid, logged, place)
    if laid.pages > MOST_SHEETS:
        yield rules.LONG_PROTOCOL.at(place, f"the protocol takes {laid.pages} sheets")
