"""The arithmetic of finishing, and the ledger of stitches: pure, exact, and knowing nothing else of this program.

Every count is an ``int`` and every ratio a ``fractions.Fraction``. Nothing in here may import a third-party
package or any other part of ``finishing_tui``, read a clock or a file, or print.
"""
