"""The audit: the ledger run through a recipe, on paper or from any ledger at the needles.

``audit`` does a whole recipe in every size; ``consequences`` go on from any. Everything here is pure: it reads no
file, and says where in the recipe a fault stands, not on which line.
"""

from finishing_tui.recipe.audit.auditing import Audit, SizeAudit, audit, audit_size
from finishing_tui.recipe.audit.consequences import LaterChange, Stop
from finishing_tui.recipe.audit.finding import Finding
from finishing_tui.recipe.audit.footing import Inputs
from finishing_tui.recipe.audit.implied import implied

__all__ = ["Audit", "Finding", "Inputs", "LaterChange", "SizeAudit", "Stop", "audit", "audit_size", "implied"]
