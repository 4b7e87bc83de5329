"""Works out numbers from the catalogue: activity, order, bands, weeks; pure, and knows no language.

`weeks` turns full weeks into days and windows, `activity` gives one number for a muscle in an exercise,
`order` finds the order of introduction, `bands` says where a number stands to a phase, `arrange` puts
these together for every programme.
"""

from generator.progression.arrange import arrange

__all__ = ["arrange"]
