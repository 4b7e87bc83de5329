"""Frozen values: what the content says, with its places; nothing here reads, prints or computes."""
