"""The commands of ``finishing``, one module each; ``finishing_tui.cli`` imports only the one that was asked for."""
