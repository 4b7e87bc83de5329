"""Does what the sentences of the pipeline say, each step joining two or three rooms; no step prints.

`languages` makes one catalogue per language, `paper` makes the booklets, `pages` makes the site, and
`expectations` says what the finished files must show.
"""
