"""Makes the site of the small content in three languages, one of them written from right to left.

All texts are those of `tests.content`, invented for tests. German is translated in part. Arabic is translated
wholly, but for one real sentence in the pretend language of `tests.wording.pseudo`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from generator.catalogue.values import Catalogue
from generator.figures.pictures import Gallery, Pictures, Shown
from generator.problems import Problem
from generator.progression import arrange
from generator.publish.audit import audit_tree
from generator.publish.expected import Audit, Direction, Expected
from generator.reading.schema import reference
from generator.steps.downloads import data_texts, write_data
from generator.steps.languages import Spoken
from generator.steps.reports import reports_of
from generator.steps.worked import work_out
from generator.website.assets import Assets, write_assets
from generator.website.config import Language
from generator.website.engine import RULES, SiteJob, build_languages
from generator.website.figure_files import write_figures
from generator.website.fonts import prepare_fonts
from generator.website.frame import write_settings
from generator.website.pages import write_pages
from generator.website.root import base_path, write_root
from generator.website.values import BookletFact, PageFact, SiteInput
from generator.wording.localise import NO_TRANSLATIONS, Translations, exercise_in_use, localise
from generator.wording.voice import Voice, voice
from tests.content import FILES, catalogue_of, with_change
from tests.wording.pseudo import pseudo_translations, pseudo_voice
from tests.wording.samples import GERMAN, speaking

PROJECT = Path(__file__).resolve().parents[2]
CODES = ("en", "de", "ar")
HEEL_RAISE = "exercises/heel-raise.html"
PHASE_1, PHASE_2 = (f"programmes/tendon-repair/phase-{number}.html" for number in (1, 2))
PROGRAMME = "programmes/tendon-repair/index.html"
CLINICIANS = "clinicians/tendon-repair.html"
ORDER, EVIDENCE, PROTOCOL = (
    f"clinicians/tendon-repair-{part}.html" for part in ("order", "evidence", "protocol")
)
PATIENT_1, PATIENT_2 = (f"clinicians/tendon-repair-patient-{number}.html" for number in (1, 2))
REPORTING = "clinicians/tendon-repair-reporting.html"
# The path that the browser tests serve the site under.
PREFIX = "prefix"
STAIRS = "daily-life/stairs.html"
HELPER = "helper.html"
STAIRS_FILE = """\
name: Stairs one at a time
purpose: Lets your other leg do the lifting.
demand: moving or stepping
posture: standing
helper: nearby
helper-role:
  does: Stands one step below you.
  must-not: Must not pull you up.
support: both hands
equipment: [worktop]
strains: [knee]
operated-leg: {moves: [], holds: [], carries: part, lain-on: no}
other-leg: {moves: [], holds: [], carries: whole body, lain-on: no}
steps:
  - Hold the banister.
  - Step up with your other leg.
avoid:
  - Do not hurry.
cautions:
  - signal: warning
    harm: serious injury
    hazard: A missed step
    consequence: can make you fall
    avoid: Hold on.
"""


def real_life(files: Mapping[str, str]) -> dict[str, str]:
    """Return the files with a thing of daily life, a helper, a band on a fixed height and a replacement."""
    programme = "programmes/tendon-repair.yml"
    files = {**files, "daily-life/stairs.yml": STAIRS_FILE}
    helped = "helper:\n  does:\n    - Keep crutches near.\n  must-not:\n    - Never pull the leg.\nfall:\n"
    files = with_change(files, "safety.yml", "fall:\n", helped)
    files = with_change(
        files, "exercises/heel-raise.yml", "equipment: [worktop]\n", "equipment: [worktop]\nanchor: knee\n"
    )
    pump = (
        "    daily-life: [stairs]\n    uses:\n"
        "      - {use: ankle-pump, dose-steps: [5 times an hour], times-a-day: 1, days-a-week: 7,\n"
        "         then: replaced, replaced-by: heel-raise}\n      - use: heel-raise\n"
        "        week: 9\n        delayed-week: 12\n"
    )
    files = with_change(files, programme, "    uses:\n      - use: heel-raise\n", pump)
    return with_change(files, programme, "then: ends\n", "then: goes on\n")


def picture(drawn: str) -> str:
    """Return a small picture."""
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20" width="40" height="20">{drawn}</svg>'


START, FINISH = picture('<path d="M0 9h9v9H0z"/>'), picture('<path d="M20 9h9v9h-9z"/>')
MOVING = picture('<path d="M0 9h9v9H0z"><animate attributeName="fill" values="red;blue" dur="1s"/></path>')
GALLERY = Gallery(
    {
        Shown("heel-raise"): Pictures((START, FINISH), START, MOVING),
        Shown("heel-raise/seated"): Pictures((FINISH,), FINISH, None),
        Shown("stairs"): Pictures((START,), START, None),
    },
    {"heel-raise": "", "heel-raise/seated": "", "stairs": "", "ankle-pump": ""},
    ("ankle-pump",),
)

SERVED = real_life(
    with_change(FILES, "clinic.yml", "paper: A4", f"base-address: https://clinic.example/{PREFIX}\npaper: A4")
)
BOOKLET = BookletFact("booklets/tendon-repair-phase-2.pdf", 9, 412_345, "7KQ2-M0XP")
# "Rise onto your toes. Hold the standing.", from memory; it only serves to be searched for.
ARABIC_STEP = "ارتفع على أصابع قدميك. حافظ على الوقفة."


@dataclass(frozen=True)
class Small:
    """A site prepared for building: its jobs, its root, what it was made from, what its pages must hold."""

    jobs: tuple[SiteJob, ...]
    site: Path
    inputs: tuple[SiteInput, ...]
    facts: Mapping[str, tuple[PageFact, ...]]
    assets: Assets


def german(_: Catalogue) -> tuple[Voice, Translations]:
    """Return a language of which only one step and a few of the generator's words are translated."""
    key = ("exercise/heel-raise/steps", "Lower slowly.")
    return speaking("de", GERMAN), Translations({key: "Langsam senken."})


def arabic(catalogue: Catalogue) -> tuple[Voice, Translations]:
    """Return a language written from right to left in which everything is translated."""
    words = dict(pseudo_translations(catalogue).current)
    words["exercise/heel-raise/steps", "Push up onto your toes."] = ARABIC_STEP
    return pseudo_voice("ar"), Translations(words)


_VOICES: Mapping[str, Callable[[Catalogue], tuple[Voice, Translations]]] = {
    "en": lambda _: (voice("en"), NO_TRANSLATIONS),
    "de": german,
    "ar": arabic,
}


def files_for(codes: Sequence[str], files: Mapping[str, str] = FILES) -> dict[str, str]:
    """Return the files with these languages named by the clinic."""
    return with_change(files, "clinic.yml", "languages: [en]", f"languages: [{', '.join(codes)}]")


def site_inputs(files: Mapping[str, str] = FILES, codes: Sequence[str] = CODES) -> tuple[SiteInput, ...]:
    """Return what the pages of each language are made from."""
    catalogue = catalogue_of(files_for(codes, files))
    orders = arrange(catalogue)
    worked = work_out(catalogue, orders)
    spoken = [_VOICES[code](catalogue) for code in codes]
    languages = tuple(Language(one.code, one.own_name, one.direction) for one, _ in spoken)
    fields = tuple(
        (file, table.name, table.help, tuple((f.key, f.required, f.form, f.help) for f in table.fields))
        for file, table in reference()
    )
    return tuple(
        SiteInput(
            catalogue=localise(catalogue, one, translations)[0],
            voice=one,
            languages=languages,
            orders=orders,
            days=worked.days,
            turns=worked.turns,
            things=worked.things,
            back=worked.back,
            tables=worked.tables,
            anchors=worked.anchors,
            estimates=worked.estimates,
            set_aside=worked.set_aside,
            effects=worked.effects,
            hanging=worked.hanging,
            moments=worked.moments,
            contradictions=worked.contradictions,
            choices=worked.choices,
            booklets={("tendon-repair", 2): BOOKLET},
            reports=reports_of(Spoken(one, localise(catalogue, one, translations)[0], translations)),
            in_use={
                (programme.id, phase.number, use.use): exercise_in_use(
                    catalogue.exercises[use.use], use.dose_steps[0], catalogue, one, translations
                )
                for programme in catalogue.programmes.values()
                for phase in programme.phases
                for use in phase.uses
            },
            rules=RULES,
            fields=fields,
        )
        for one, translations in spoken
    )


def prepare(work: Path, cache: Path, inputs: Sequence[SiteInput]) -> Small:
    """Write pages, root pages, shared assets and configurations under `work`; fonts are kept in `cache`."""
    site = work / "site"
    codes = [one.voice.code for one in inputs]
    assets = write_assets(PROJECT / "site_assets", prepare_fonts(cache), codes, site)
    facts: dict[str, tuple[PageFact, ...]] = {"": write_root(inputs, assets, site)}
    first = inputs[0]
    figures = write_figures(GALLERY, site)
    texts = data_texts(first.catalogue, work_out(first.catalogue, first.orders))
    jobs = []
    for one in inputs:
        code = one.voice.code
        job = SiteJob(
            code, one.voice.direction, work / "pages" / code, site / code, work / "config" / f"{code}.yml"
        )
        one = replace(one, figures=figures, data=write_data(texts, job.pages))
        facts[code] = write_pages(one, job.pages)
        write_settings(one, job, PROJECT, assets)
        jobs.append(job)
    return Small(tuple(jobs), site, tuple(inputs), facts, assets)


def build(small: Small) -> tuple[Problem, ...]:
    """Build the site with two processes at most, and lay down the booklet that its pages offer."""
    _, found = build_languages(small.jobs, 2)
    for job in small.jobs:
        booklet = job.output / BOOKLET.path
        booklet.parent.mkdir(parents=True, exist_ok=True)
        booklet.write_bytes(b"%PDF-1.7\n")
    return found


def audit(small: Small) -> tuple[Problem, ...]:
    """Return what the audit finds in the built site, the stand-in for the booklet left aside."""
    facts = [(f"{code}/{fact.path}".lstrip("/"), fact) for code, some in small.facts.items() for fact in some]
    expected = Audit(
        languages=tuple(_expected(one) for one in small.inputs),
        required={path: fact.required for path, fact in facts},
        doses={path: fact.doses for path, fact in facts if fact.doses is not None},
        base_path=base_path(small.inputs[0].catalogue.clinic),
    )
    found = audit_tree(small.site, expected, 1)
    return tuple(problem for problem in found if not problem.place.path.endswith(".pdf"))


def _expected(one: SiteInput) -> Expected:
    safety, clinic = one.catalogue.safety, one.catalogue.clinic
    direction: Direction = one.voice.direction
    return Expected(
        one.voice.code,
        direction,
        (str(safety.deferral),),
        str(safety.demonstration) if clinic.demo else None,
        clinic.telephone.clinic,
    )
