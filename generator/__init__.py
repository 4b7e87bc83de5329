"""Turns one catalogue of exercises into a translated site and printed booklets, phase by phase."""
