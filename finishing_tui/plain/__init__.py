"""A garment worked line by line, for screen readers, braille lines and pipes: the same commands as the keys, in words.

One line in is one thing; the answer is a few short lines, the last of which says what comes next or asks something.
Nothing here moves a cursor, colours anything or draws, and nothing here decides: a line goes to the conversation of
``talk``, and what is said comes from there and from glance.
"""
