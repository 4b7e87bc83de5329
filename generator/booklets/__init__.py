"""Localised catalogue to HTML to PDF; reads the finished PDF back and examines it."""
