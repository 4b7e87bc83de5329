"""Knows what was read by whom: items with fingerprints, sign-offs, and what they are still worth today."""
