"""Marks the texts that a new file comes with, so that none of them reaches a patient unseen."""

UNWRITTEN = "Write here – "
