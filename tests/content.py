"""A small valid content, typed as an editor would type it: two exercises in two phases.

Everything in it is invented for tests: the clinic, the study, the numbers, the words. Tests take `FILES`,
change one thing with `with_change`, and look at what the program says about it.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from types import MappingProxyType

from generator.catalogue.values import Catalogue
from generator.checks import check_content
from generator.problems import Problem, has_errors, in_order
from generator.reading import Reading, read_files

CLINIC = """\
# Invented for tests.
name: Clinic at the Old Mill (invented)
about: An invented clinic that exists only in tests.
telephone:
  clinic: 0555 010 200
  hours: Monday to Friday, 8 to 16
  out-of-hours: 0555 010 300
  emergency: "112"
languages: [en]
paper: A4
reach: intranet only
demo: yes
"""
SAFETY = """\
deferral: Do these exercises only as your physiotherapist has told you.
deferral-full: This booklet does not replace the advice of your surgeon and your physiotherapist.
demonstration: Demonstration, not for treatment.
start-only: Start only when your physiotherapist has said so.
stay: Until you are told, stay with the booklet you have.
working-area: Stand beside something that cannot move. Keep a telephone within reach.
pain-rule: Stop when the pain is above the limit of your phase.
signs:
  - id: calf-swelling
    level: emergency
    sign: Your calf is swollen, warm and painful.
    meaning: This can be a blood clot.
    act: Call the emergency number now.
    source: {text: Invented for tests, status: invented}
  - id: sudden-pop
    level: clinic
    sign: You felt a pop and your foot is weak.
    meaning: The repaired tendon may be hurt.
    act: Call the clinic today.
    source: {text: Invented for tests, status: invented}
worse:
  today:
    - Stop for today.
    - Do the easier form tomorrow.
  clinic:
    - Call when it is not better after one day.
  emergency:
    - Call when you cannot breathe well.
fall:
  - Stay where you are and breathe.
  - Call for help before you get up.
"""
STUDIES = """\
invented-2001:
  authors: Nobody A, Noone B
  year: 2001
  title: Invented activity of the calf in two invented exercises
  journal: Journal of Invented Numbers
  volume: 1.10
  pages: 0123
  people: 12 invented people without complaints
  n: 12
  electrode: surface
  normalisation: mvic
  part: mean
  status: {text: Invented for tests, status: invented}
"""
MUSCLES = """\
calf:
  name: Triceps surae
  plain: the muscle at the back of your lower leg
inner-calf:
  name: Medial head of gastrocnemius
  plain: the inner half of your calf
  part-of: calf
"""
EQUIPMENT = """\
worktop:
  name: A worktop or a heavy table
  check: It must not move when you lean on it.
"""
PRECAUTIONS = """\
knee:
  name: Knee
  advice: Ask about knee pain when standing.
"""
GLOSSARY = """\
tendon:
  term: Tendon
  meaning: The cord that ties a muscle to a bone.
"""
ANKLE_PUMP = """\
name: Ankle pump
purpose: Keeps the blood in your leg moving.
role: circulation
demand: lying or sitting
posture: lying on the back
surface: [bed, floor]
helper: none
support: none
strains: []
operated-leg:
  moves:
    - {joint: ankle, movement: plantarflexion, how: active, against: nothing, to: 20 deg}
  holds: []
  carries: nothing
  lain-on: no
other-leg:
  moves: []
  holds: []
  carries: nothing
  lain-on: no
start: Lie on your back with your legs straight.
steps:
  - Point your toes away from you.
  - Bring your foot back to the middle.
feel: A light pull in your calf.
not-feel: Pain at the scar.
dose:
  kind: times an hour
  times: {usual: 10, from: 5, to: 15}
"""
HEEL_RAISE = """\
name: Heel raise with both legs
purpose: Makes your calf strong enough for stairs.
role: strength
demand: standing on two legs with support
posture: standing
surface: [standing]
helper: none
support: fingertips
equipment: [worktop]
strains: [knee]
requires: [ankle-pump]
operated-leg:
  moves:
    - {joint: ankle, movement: plantarflexion, how: active, against: gravity, to: 30 deg}
  holds: []
  carries: shared
  lain-on: no
other-leg:
  moves:
    - {joint: ankle, movement: plantarflexion, how: active, against: gravity, to: 30 deg}
  holds: []
  carries: shared
  lain-on: no
set-up:
  - Stand at the worktop.
start: Stand with your feet as wide as your hips.
steps:
  - Push up onto your toes.
  - Stay up for {hold}.
  - Lower slowly.
feel: Work in both calves.
not-feel: A sharp pain at your heel.
mistakes:
  - Leaning on your hands.
cautions:
  - signal: warning
    harm: serious injury
    hazard: A table that moves
    consequence: can make you fall
    avoid: Hold something that is fixed.
dose:
  kind: sets and repetitions
  sets: {usual: 3, from: 1, to: 3}
  repetitions: {usual: 10, from: 6, to: 12}
  hold: 3 s
  tempo: {lift: 2 s, lower: 3 s}
  rest: 60 s
  bands: [light]
variations:
  seated:
    is: easier
    name: Heel raise sitting
    change: Sit on a chair and raise both heels.
    operated-leg: same
    other-leg: same
    demand: lying or sitting
activity:
  - muscle: calf
    mean: 34.5
    sd: 11
    study: invented-2001
    at-place: Table 1
    load: body weight on both legs
    read: [mean, sd]
alternative: ankle-pump
"""
TENDON_REPAIR = """\
name: After a repair of the heel tendon (invented)
operation: The torn tendon above your heel was sewn together.
summary: An invented programme in two phases.
joint: ankle
aim: protects
muscles: [calf]
delay-reasons:
  - The wound was slow to heal.
restrictions:
  - kind: movement
    id: no-stretch
    leg: operated
    words: Do not pull your toes towards you.
    why: The repaired tendon must not be stretched.
    until: {week: 6, delayed-week: 8, phase: 2}
    source: {text: Invented for tests, status: invented}
    joint: ankle
    movement: dorsiflexion
    how: [passive, assisted, active]
    limit: 0 deg
  - kind: impact
    id: no-jumping
    leg: operated
    words: Do not jump or run.
    why: The repaired tendon is not strong yet.
    until: {week: 16, delayed-week: 20, release: your surgeon}
    source: {text: Invented for tests, status: invented}
phases:
  - name: Protect
    summary: The tendon heals.
    week: 0
    delayed-week: 0
    week-source: {text: Invented for tests, status: invented}
    goals: [Keep the blood moving.]
    avoid: [Standing on your toes.]
    band: {above: 0, up-to: 20}
    demand: lying or sitting
    weight-bearing: Put no weight on your operated leg.
    walking-aid: Walk with two crutches.
    brace: Wear the boot day and night.
    pain:
      during: 2
      after: 2
      next-morning: 0
      set-by: surgeon
      source: {text: Invented for tests, status: invented}
    going-up: Go up when two sessions in a row were easy.
    milestones:
      - goal: The wound is closed.
        test: Look at the wound in good light.
        passed: It is dry and closed.
        tester: clinician
    uses:
      - use: ankle-pump
        dose-steps: [5 times an hour, 10 times an hour]
        times-a-day: 1
        days-a-week: 7
        then: ends
  - name: Load
    summary: The calf gets strong again.
    week: 6
    delayed-week: 8
    week-source: {text: Invented for tests, status: invented}
    goals: [Stand on your toes.]
    avoid: [Jumping.]
    band: {above: 20, up-to: 50}
    demand: standing on two legs with support
    weight-bearing: Put as much weight on your leg as feels good.
    walking-aid: Give up one crutch when you walk without a limp.
    pain:
      during: 3
      after: 3
      next-morning: 0
      set-by: physiotherapist
      source: {text: Invented for tests, status: invented}
    going-up: Go up when two sessions in a row were easy.
    milestones:
      - goal: You can stand on your toes.
        test: Stand on your toes at the worktop.
        passed: Ten times without pain.
        tester: at home
    uses:
      - use: heel-raise
        dose-steps: [2 x 8, 3 x 8, 3 x 10, 3 x 10 with light band]
        times-a-day: 1
        days-a-week: 3
        rest-days: 1
        then: goes on
"""
FILES: Mapping[str, str] = MappingProxyType(
    {
        "clinic.yml": CLINIC,
        "safety.yml": SAFETY,
        "studies.yml": STUDIES,
        "muscles.yml": MUSCLES,
        "equipment.yml": EQUIPMENT,
        "precautions.yml": PRECAUTIONS,
        "glossary.yml": GLOSSARY,
        "exercises/ankle-pump.yml": ANKLE_PUMP,
        "exercises/heel-raise.yml": HEEL_RAISE,
        "programmes/tendon-repair.yml": TENDON_REPAIR,
    }
)


def with_change(files: Mapping[str, str], path: str, old: str, new: str) -> dict[str, str]:
    """Return the files with `old` replaced by `new` in one of them; `old` must stand there exactly once."""
    times = files[path].count(old)
    assert times == 1, f"{old!r} stands {times} times in {path}"
    return {**files, path: files[path].replace(old, new)}


def read(files: Mapping[str, str]) -> Reading:
    """Return what the reader makes of the files, with places as in ``clinic.yml:3:5``."""
    return read_files({path: text.encode("utf-8") for path, text in files.items()})


def findings_of(files: Mapping[str, str]) -> tuple[Problem, ...]:
    """Return everything that reading and the checks of content find, sorted by place."""
    reading = read(files)
    whole = not has_errors(reading.problems)
    checked = check_content(reading.catalogue, whole) if reading.catalogue else ()
    return in_order((*reading.problems, *checked))


def problems_of(files: Mapping[str, str]) -> list[str]:
    """Return every finding as code and place, such as ``unknown-key clinic.yml:3:1``."""
    return [f"{problem.code} {problem.place}" for problem in findings_of(files)]


def catalogue_of(files: Mapping[str, str] = FILES) -> Catalogue:
    """Return the catalogue of files in which nothing is wrong, notes apart."""
    reading = read(files)
    assert reading.problems == ()
    assert reading.catalogue is not None
    return reading.catalogue


def write_content(folder: Path, files: Mapping[str, str] = FILES) -> Path:
    """Write the files into `folder` and return it."""
    for path, text in files.items():
        target = folder / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, encoding="utf-8", newline="\n")
    return folder
