"""A small site with every component once, in two directions, for the tests of the frame and for looking at.

All texts, times and doses here are invented for the tests.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from generator.problems import Problem
from generator.website.assets import write_assets
from generator.website.config import Entry, Frame, Language, Line, Words, write_config
from generator.website.engine import SiteJob, build_languages
from generator.website.fonts import prepare_fonts

PROJECT = Path(__file__).resolve().parents[2]
TEMPLATES = PROJECT / "generator" / "website" / "templates"
LANGUAGES = (
    Language("en", "English", "ltr"),
    Language("de", "Deutsch", "ltr"),
    Language("ar", "العربية", "rtl"),
)
FIGURE = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 190"><path d="M10 170h380" stroke="#6f7d80" '
    'stroke-width="3"/><path d="M60 150l110-8 70-{lift} 60 {drop}" fill="none" stroke="#24363e" '
    'stroke-width="26" stroke-linecap="round" stroke-linejoin="round"/>'
    '<circle cx="40" cy="140" r="20" fill="#24363e"/></svg>'
)
PHASES = (
    ("1", "Protect", "weeks 0 to 6"),
    ("2", "Wake the muscle", "weeks 6 to 10"),
    ("3", "Build strength", "weeks 10 to 16"),
    ("4", "Back to your life", "from week 16"),
)


def words(language: str) -> Words:
    """Return the frame's words; other languages than English carry a mark, so that a leak would show."""
    if language == "ar":
        return Words(
            "إلى المحتوى",
            "القائمة",
            "اللغات",
            "سلامتك",
            "بحث",
            "مسح",
            "النتائج",
            "اكتب للبحث",
            "لا نتائج",
            "نتيجة واحدة",
            "# نتائج",
            "واحدة أخرى",
            "# أخرى",
            "مفقود",
        )
    mark = "" if language == "en" else "de: "
    return Words(
        *(
            mark + word
            for word in (
                "Skip to content",
                "Menu",
                "Languages",
                "Your safety",
                "Search",
                "Clear",
                "Search results",
                "Type to search",
                "Nothing found",
                "1 page found",
                "# pages found",
                "1 more on this page",
                "# more on this page",
                "Missing",
            )
        )
    )


def frame(language: str) -> Frame:
    """Return the frame of one language."""
    arabic = language == "ar"
    return Frame(
        title="تمارين بعد عملية الورك" if arabic else "Exercises after your hip operation",
        clinic="عيادة الميناء" if arabic else "Harbour Lane Hip Clinic",
        deferral=(
            "هذه الأوراق لا تحل محل ما يقوله معالجك. إذا قال لك شيئا آخر فاتبع قوله."
            if arabic
            else "This does not replace what the clinician treating you says. "
            "If they told you something else, follow them."
        ),
        demonstration="عرض تجريبي، ليس للعلاج" if arabic else "Demonstration, not for treatment",
        warning_label="علامات الخطر" if arabic else "Warning signs",
        warning_path="warning-signs.html",
        telephones=(Line("العيادة" if arabic else "Clinic line", "01632 960 100", "+441632960100"),),
        words=words(language),
        address="" if arabic else "1 Harbour Lane, Exampleton",
    )


def _ribbon(up: str) -> list[dict[str, Any]]:
    return [
        {"number": n, "name": name, "weeks": weeks, "href": f"{up}phase.html", "current": n == "3"}
        for n, name, weeks in PHASES
    ]


def exercise_page(parts: Any, arabic: bool) -> str:
    """Return the page of one exercise."""
    steps = (
        ["استلق على ظهرك. اثن ركبتيك.", "اضغط بكعبيك.", "ارفع وركيك ببطء.", "عد إلى ثلاثة.", "انزل ببطء."]
        if arabic
        else [
            "Lie on your back. Bend both knees. Put your feet flat, as wide as your hips.",
            "Press through both heels.",
            "Lift your hips until knees, hips and shoulders make one line.",
            "Hold while you count to three.",
            "Lower slowly.",
        ]
    )
    title = "رفع الحوض" if arabic else "Bridge with both legs"
    kicker = ["التمرين 3 من 8"] if arabic else ["Exercise 3 of 8", "About as hard as exercise 2"]
    lead = "" if arabic else "Wakes the muscles behind and beside your hip while both feet share the work."
    pictures = [
        {"src": f"../figures/{name}.svg", "alt": alt, "caption": caption, "width": 400, "height": 190}
        for name, alt, caption in (
            ("start", "Lying on the back, both knees bent, feet flat", "البداية" if arabic else "Start"),
            (
                "finish",
                "The hips are lifted level with knees and shoulders",
                "النهاية" if arabic else "Finish: hips level with knees and shoulders",
            ),
        )
    ]
    return "".join(
        (
            parts.ribbon("Phases", "You are reading this phase", _ribbon("../")),
            '<div class="pb-sheet"><div class="pb-sheet__wide">',
            parts.title(kicker, title, lead),
            parts.belongs(
                "Belongs to",
                [{"name": "Phase 3, Build strength", "href": "../phase.html"}],
                "Not before week 10. Side-lying on your operated side is not allowed yet.",
            ),
            '</div><div class="pb-sheet__dose">',
            parts.dose(
                "Your dose",
                "3 × 10",
                "3 sets of 10 lifts",
                ["Rest 60 seconds between sets", "Once a day, every second day", "About 5 minutes"],
            ),
            '</div><div class="pb-sheet__figures">',
            parts.figures(pictures),
            '</div><div class="pb-sheet__side">',
            parts.signal(
                "caution",
                "تنبيه" if arabic else "Caution",
                "Too much work can hurt the repair.",
                "Pain grows and healing slows.",
                "Stop, rest, and call the clinic line.",
                ["Pain at the side of your hip goes above 2 out of 10.", "It is worse the next morning."],
            ),
            '</div><div class="pb-sheet__main">',
            parts.chips(
                "What you need",
                [
                    {"label": "Where", "value": "Bed"},
                    {"label": "You need", "value": "Nothing else"},
                    {"label": "Helper", "value": "Not needed"},
                ],
            ),
            parts.steps("How to do it", steps),
            parts.feel(
                "You should feel", "Work in your buttocks.", "Not", "in your back, and not at the scar."
            ),
            parts.pair(
                [
                    {"heading": "Too hard?", "text": "Lift half as high."},
                    {"heading": "Too easy?", "text": "Cross your arms on your chest."},
                ]
            ),
            "</div></div>",
            parts.onward(
                "Next and previous",
                {"word": "Previous", "name": "Bend your knee lying down", "href": "bridge.html"},
                {"word": "Next", "name": "Stand on both legs and shift your weight", "href": "bridge.html"},
            ),
        )
    )


def phase_page(parts: Any) -> str:
    """Return the page of one phase."""
    items = [
        {
            "place": 1,
            "name": "Ankle pumps",
            "href": "exercises/bridge.html",
            "purpose": "Keeps the blood moving.",
            "amount": "20",
            "state": "",
        },
        {
            "place": 2,
            "name": "Bridge with both legs",
            "href": "exercises/bridge.html",
            "purpose": "Wakes the muscles beside your hip.",
            "amount": "3 × 10",
            "state": "",
        },
    ]
    later = {
        "place": 3,
        "name": "Lift your leg lying on your side",
        "href": "exercises/bridge.html",
        "purpose": "Strengthens the repaired muscle.",
        "amount": "2 × 8",
        "state": "Add when you are told",
    }
    return "".join(
        (
            '<div class="pb-sheet pb-sheet--list"><div class="pb-sheet__wide">',
            parts.breadcrumb(
                "Where you are",
                [
                    {"name": "Home", "href": "index.html"},
                    {"name": "After hip abductor tendon repair", "href": "index.html"},
                ],
            ),
            parts.ribbon("Phases", "You are reading this phase", _ribbon("")),
            parts.title(
                ["Phase 3", "weeks 10 to 16"],
                "Build strength",
                "Your repaired muscle starts to work harder, a little more each week.",
            ),
            parts.gate(
                "Start only when you are told",
                "Start this phase only when your physiotherapist has said so. "
                "Until then stay with the booklet you have.",
            ),
            parts.restrictions(
                "What to avoid",
                [
                    {
                        "text": "Do not lie on your operated side.",
                        "until": "Until week 12, and until you are told.",
                    },
                    {"text": "Do not cross your legs.", "until": "Until week 12."},
                ],
            ),
            '</div><div class="pb-sheet__main">',
            "<section><h2>Your session, in order</h2>",
            parts.session(
                [{"heading": "Lying down", "items": items}, {"heading": "On your side", "items": [later]}]
            ),
            "</section>",
            "<section><h2>Before you move on</h2>",
            parts.milestones(
                {"test": "How to test", "pass": "Passed when", "tester": "Who tests"},
                [
                    {
                        "name": "Stand on the operated leg",
                        "test": "Stand beside a fixed rail. Lift the other foot.",
                        "pass": "30 seconds, hips level",
                        "tester": "Your physiotherapist only",
                    }
                ],
            ),
            "</section>",
            '</div><div class="pb-sheet__side">',
            parts.pain(
                "How much pain is all right",
                "Up to 2 out of 10 is all right. Above 2: stop.",
                2,
                "All right",
                "Too much: stop",
                [
                    "During: up to 2",
                    "After: up to 2, gone within an hour",
                    "Next morning: no worse than before",
                ],
            ),
            parts.download("index.html", "Booklet for this phase", "PDF, 14 pages, 0.9 MB"),
            "</div></div>",
        )
    )


def _home_page(parts: Any) -> str:
    rows = [
        {
            "name": f"{n} {name}",
            "href": "phase.html",
            "usual": {"from": a, "to": b, "text": f"week {a} to {b}"},
            "delayed": {"from": c, "to": d, "text": f"week {c} to {d}"} if c else None,
        }
        for (n, name, _), (a, b, c, d) in zip(
            PHASES, ((0, 6, 0, 0), (6, 10, 6, 13), (10, 16, 13, 20), (16, 24, 20, 24)), strict=True
        )
    ]
    return "".join(
        (
            parts.title(
                [],
                "Exercises after your hip operation",
                "Step by step, with your physiotherapist, from the first day to your daily life.",
            ),
            parts.doors(
                [
                    {
                        "name": "After hip abductor tendon repair",
                        "href": "phase.html",
                        "text": "Four phases over about six months",
                    },
                    {
                        "name": "All exercises",
                        "href": "exercises/bridge.html",
                        "text": "Each with pictures, steps and dose",
                    },
                ]
            ),
            parts.timeline(
                "Your phases along the weeks",
                "Usual",
                "If healing is delayed",
                "Full weeks since the operation",
                [0, 4, 8, 12, 16, 20],
                24,
                rows,
            ),
        )
    )


def _warning_page(parts: Any) -> str:
    return "".join(
        (
            parts.title([], "Warning signs", "Read this before you start. Keep it where you can see it."),
            parts.signal(
                "danger",
                "Danger",
                "Chest pain or sudden breathlessness",
                "This can be a blood clot in the lung. It can kill.",
                "Call 999 at once.",
            ),
            parts.signal(
                "warning",
                "Warning",
                "A pop at your hip, or strength that is suddenly gone",
                "The repair may have torn.",
                "Stop. Do not put weight on the leg. Call the clinic line today.",
            ),
            parts.signal("notice", "Note", "Tired muscles for a day are normal.", "", ""),
            "<section><h2>If it got worse</h2>",
            parts.worse(
                [
                    {
                        "when": "Today",
                        "heading": "More pain than your limit",
                        "signs": ["Pain above 2 during or after", "It settles within a day"],
                        "todo": "Stop for today. Rest tomorrow. Then go one step back.",
                        "phone": None,
                    },
                    {
                        "when": "Within a day",
                        "heading": "It does not settle",
                        "signs": ["Two bad mornings in a row", "A new limp", "A fall"],
                        "todo": "Call the clinic line.",
                        "phone": {"label": "Clinic line", "number": "01632 960 100", "dial": "+441632960100"},
                    },
                    {
                        "when": "At once",
                        "heading": "Emergency",
                        "signs": ["Chest pain", "You cannot stand on the leg"],
                        "todo": "Call the emergency number.",
                        "phone": {"label": "Emergency", "number": "999", "dial": "999"},
                    },
                ]
            ),
            "</section>",
        )
    )


def _clinician_page(parts: Any) -> str:
    def cell(low: int, mean: int, high: int) -> Markup:
        return Markup(str(parts.interval(low, mean, high, 21, 50)))

    columns = [
        {"label": label, "numeric": numeric}
        for label, numeric in (
            ("Exercise", False),
            ("Mean %MVIC", True),
            ("95 % interval", True),
            ("People", True),
            ("Studies", True),
            ("Band 21 to 50", False),
        )
    ]
    rows = [
        ["Bridge with both legs", "28.0", "19.4 – 36.6", "43", "3", cell(19, 28, 37)],
        ["Side-lying hip abduction", "51.2", "40.1 – 62.3", "97", "6", cell(40, 51, 62)],
    ]
    return "".join(
        (
            parts.title(
                [],
                "For clinicians",
                "The numbers come from healthy people. EMG is not tendon load. "
                "Low activity is not permission.",
            ),
            parts.table("Gluteus medius activity (invented for this sample)", columns, rows),
            "<section><h2>Words used here</h2>",
            parts.glossary(
                [
                    {
                        "term": "%MVIC",
                        "id": "mvic",
                        "meaning": "Activity as a share of the strongest squeeze measured.",
                    },
                    {"term": "Band", "id": "band", "meaning": "The range of activity a phase allows."},
                ]
            ),
            "</section>",
        )
    )


def write_pages(folder: Path, language: str) -> None:
    """Write the sample's Markdown pages for one language."""
    environment = Environment(
        loader=FileSystemLoader(TEMPLATES), autoescape=True, undefined=StrictUndefined, trim_blocks=True
    )
    parts = environment.get_template("components.html").module
    pages: dict[str, tuple[str, Callable[[], str]]] = {
        "index": ("Home", lambda: _home_page(parts)),
        "phase": ("Phase 3", lambda: phase_page(parts)),
        "warning-signs": ("Warning signs", lambda: _warning_page(parts)),
        "clinicians": ("For clinicians", lambda: _clinician_page(parts)),
        "exercises/bridge": ("Bridge with both legs", lambda: exercise_page(parts, language == "ar")),
    }
    for name, (title, body) in pages.items():
        path = folder / f"{name}.md"
        path.parent.mkdir(parents=True, exist_ok=True)
        head = f"---\ntitle: {json.dumps(title)}\ndescription: {json.dumps(title)}\n---\n\n"
        path.write_text(f'{head}<div class="pb-page">\n{body()}</div>\n', "utf-8")
    (folder / "figures").mkdir(exist_ok=True)
    for name, lift, drop in (("start", 60, 88), ("finish", 90, 118)):
        (folder / "figures" / f"{name}.svg").write_text(FIGURE.format(lift=lift, drop=drop), "utf-8")


@dataclass(frozen=True)
class Sample:
    """A sample prepared for building: its jobs and the site's root."""

    jobs: tuple[SiteJob, ...]
    site: Path


def prepare(work: Path, cache: Path, languages: tuple[Language, ...] = LANGUAGES) -> Sample:
    """Write pages, shared assets and configurations under `work`; fonts are kept in `cache`."""
    site = work / "site"
    assets = write_assets(
        PROJECT / "site_assets", prepare_fonts(cache), [language.code for language in languages], site
    )
    jobs = []
    for language in languages:
        code = language.code
        job = SiteJob(
            code, language.direction, work / "pages" / code, site / code, work / "config" / f"{code}.yml"
        )
        write_pages(job.pages, code)
        menu = (
            Entry("Home", "index.md"),
            Entry("Phases", "", (Entry("Phase 3", "phase.md"),)),
            Entry("Warning signs", "warning-signs.md"),
            Entry("For clinicians", "clinicians.md"),
        )
        write_config(job, PROJECT, frame(code), languages, menu, assets, ("exercises/*",))
        jobs.append(job)
    return Sample(tuple(jobs), site)


def build(sample: Sample) -> tuple[Problem, ...]:
    """Build the sample with two processes at most."""
    return build_languages(sample.jobs, 2)
