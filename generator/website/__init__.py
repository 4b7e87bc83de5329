"""Turns the localised catalogue into pages, and pages into a site, one MkDocs process per language."""
