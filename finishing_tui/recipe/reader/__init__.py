"""Reads a recipe file: guards, TOML, types, references; and says everything that is wrong with it at once.

A recipe comes from outside. Nothing in it is trusted, nothing in it is run, and whatever is wrong with it becomes a
sentence that names the file, the line and the key, and says what would be right. What validates (pydantic) and what
finds lines (tree-sitter) is imported inside functions only: neither is needed once a garment is under way.
"""

from finishing_tui.recipe.reader.errors import BadRecipe, Problem
from finishing_tui.recipe.reader.reader import read_recipe, read_text, read_with_text

__all__ = ["BadRecipe", "Problem", "read_recipe", "read_text", "read_with_text"]
