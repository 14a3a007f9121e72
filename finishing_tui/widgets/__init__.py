"""What is seen: widgets that draw the values of ``glance`` and know nothing else of a garment."""
