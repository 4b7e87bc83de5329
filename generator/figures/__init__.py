"""Draws a body in space as a picture: camera, outlines, things around it, movement; knows no exercise.

Shapes are projected skin, joined and smoothed; no picture holds a letter or a number. Colours are given
(`Palette`), never chosen here.
"""
