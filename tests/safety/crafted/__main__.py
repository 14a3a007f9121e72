"""Crafts garments, looks at each in every way, and prints what was seen: ``python -m tests.safety.crafted 500 1``."""

import sys

from tests.safety.crafted.looks import looked_at

seen = looked_at(int(sys.argv[1]), int(sys.argv[2]))
print(*seen.faults, sep="\n")
print(f"{seen.crafted} crafted, {seen.looks} looks, {len(seen.faults)} faults")
print(f"a row decoded {seen.most_rows:.1f} times at the most, its body read {seen.most_read:.1f} times")
print(f"memory at the most {seen.most_memory / 2**20:.0f} MB; exit statuses {seen.statuses}")
