"""Starting a garment: the list of recipes, one read through, the questions, the audit. One screen a file.

All of it is imported only when a garment is started, for it reads recipes; whoever picks a garment up needs none of it.
"""
