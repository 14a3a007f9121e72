"""The terminal program: the screens, and what keys do on them. Nothing below imports this."""
