"""The audit: the ledger run through a recipe, on paper or from any ledger at the needles.

``audit`` does a whole recipe in every size; ``onward`` goes on from any ledger. Everything here is pure: it reads no
file, and says where in the recipe a fault stands, not on which line.
"""

from finishing_tui.recipe.audit.auditing import Audit, SizeAudit, audit, audit_size
from finishing_tui.recipe.audit.consequences import (
    LaterChange,
    Stop,
    changes,
    first_stop,
    new_findings,
    onward,
    own_findings,
)
from finishing_tui.recipe.audit.finding import Finding, LedgerRow
from finishing_tui.recipe.audit.footing import Inputs
from finishing_tui.recipe.audit.implied import implied
from finishing_tui.recipe.audit.running import AuditRun

__all__ = [
    "Audit",
    "AuditRun",
    "Finding",
    "Inputs",
    "LaterChange",
    "LedgerRow",
    "SizeAudit",
    "Stop",
    "audit",
    "audit_size",
    "changes",
    "first_stop",
    "implied",
    "new_findings",
    "onward",
    "own_findings",
]
