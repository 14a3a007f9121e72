"""What is to be done: the typed recipe, its kinds of step and their stages, the reader of recipe files, the audit.

This room knows the arithmetic (``craft``) and nothing of garments, journals or screens. Its model is made of frozen
standard dataclasses, so that opening a garment under way need not import the validation library; only
``recipe.reader`` does, when a file is read.
"""
