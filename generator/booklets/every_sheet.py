"""Says what every sheet of a booklet or protocol must bear, once for both: no kind can lose a note."""

from __future__ import annotations

from generator.booklets.booklet_view import Booklet
from generator.booklets.fonts import FAMILIES
from generator.booklets.protocol_view import Protocol
from generator.booklets.values import Expected, SheetFact
from generator.wording.isolation import plain
from generator.wording.phrases import page_of


def expected(view: Booklet | Protocol, pages: int, sheets: tuple[SheetFact, ...]) -> Expected:
    """Return what the finished PDF must show."""
    job = view.job
    safety, clinic = job.catalogue.safety, job.catalogue.clinic
    demonstration = (str(safety.demonstration),) if clinic.demo else ()
    return Expected(
        path=job.output.as_posix(),
        title=plain(view.title),
        language=job.voice.code,
        every_page=(
            *demonstration,
            str(safety.deferral),
            view.clinic_line,
            clinic.telephone.clinic,
            view.edition_line,
            job.edition,
            *((view.recorded_line,) if isinstance(view, Booklet) and view.recorded_line else ()),
        ),
        page_lines=tuple(page_of(job.voice, number, pages) for number in range(1, pages + 1)),
        families=FAMILIES,
        sheets=sheets,
    )
