"""Works out numbers from the catalogue: activity, order, bands, weeks, sessions; pure, and knows no language.

`weeks` turns full weeks into days and windows and `dates` into calendar days. `alike` says which measurements
belong together, `pooling` pools them, `judged` says what a judgement comes to, `activity` holds what is known
of every muscle in every exercise, `worked` what a use asks of a programme's muscles. `order` finds the order
of introduction, `compare` asks people who did both neighbours, `bands` says where a number stands to a phase,
`reasons` why, and `arrange` puts these together for every programme. `variations` says what easier and harder
forms do to each muscle, `sensitivity` on which studies a place hangs. `restrictions` tells what is allowed
when, `withheld` which variations a phase forbids, `session_order` and `session` what a day holds and how long
it takes, `step_back` what to do instead after it got worse, `equipment` and `heights` what must be at hand,
`gravity` what a model says of gravity's pull, `reporting` how far a programme answers two checklists.
"""

from generator.progression.activity import Activity, activity_of
from generator.progression.arrange import arrange
from generator.progression.dates import calendar
from generator.progression.equipment import things_of_phase
from generator.progression.gravity import contradictions, forms_of, gravity_moments
from generator.progression.heights import anchor_heights, anchor_table
from generator.progression.reporting import report_items
from generator.progression.restrictions import restriction_table
from generator.progression.sensitivity import hanging
from generator.progression.session import day, days, minutes, session
from generator.progression.step_back import step_back, steps_back
from generator.progression.variations import variation_effects
from generator.progression.withheld import withheld_variations

__all__ = [
    "Activity",
    "activity_of",
    "anchor_heights",
    "anchor_table",
    "arrange",
    "calendar",
    "contradictions",
    "day",
    "days",
    "forms_of",
    "gravity_moments",
    "hanging",
    "minutes",
    "report_items",
    "restriction_table",
    "session",
    "step_back",
    "steps_back",
    "things_of_phase",
    "variation_effects",
    "withheld_variations",
]
