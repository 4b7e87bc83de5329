"""Works out numbers from the catalogue: activity, order, bands, weeks, sessions; pure, and knows no language.

`weeks` turns full weeks into days and windows and `dates` into calendar days, `activity` gives one number for
a muscle in an exercise, `order` finds the order of introduction, `bands` says where a number stands to a
phase, `arrange` puts these together for every programme. `restrictions` tells what is allowed when,
`withheld` which variations a phase forbids, `session_order` and `session` what a day holds and how long it
takes, `step_back` what to do instead after it got worse, `equipment` and `heights` what must be at hand.
"""

from generator.progression.arrange import arrange
from generator.progression.dates import calendar
from generator.progression.equipment import things_of_phase
from generator.progression.heights import anchor_heights, anchor_table
from generator.progression.restrictions import restriction_table
from generator.progression.session import day, days, minutes, session
from generator.progression.step_back import step_back, steps_back
from generator.progression.withheld import withheld_variations

__all__ = [
    "anchor_heights",
    "anchor_table",
    "arrange",
    "calendar",
    "day",
    "days",
    "minutes",
    "restriction_table",
    "session",
    "step_back",
    "steps_back",
    "things_of_phase",
    "withheld_variations",
]
