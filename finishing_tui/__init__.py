"""Finishing a hand-knitted garment at the needles.

The package is a stack of rooms, and data flows through them one way: ``craft`` (the arithmetic and the ledger),
``recipe`` (what is to be done), ``garment`` (what was done), ``glance`` (what there is to see), and on top the
screens, the line-by-line mode and the record. This module itself must stay empty, so that a sum from the prompt
imports nothing but its own arithmetic.
"""
