"""How many examples a test tries that is dearer, or worth more of them, than most."""

from hypothesis import settings


def share(in_ci: int) -> int:
    """Return how many examples to try in the profile in force, where it is ``in_ci`` of the hundred in CI."""
    return max(in_ci * settings().max_examples // 100, 1)
