"""The conversation about a garment in hand: what may be done, what is asked, and what an answer leads to.

The screens and the line-by-line mode are its two mouths: they draw or say what stands here, hand back what the knitter
did, and decide nothing. Nothing here draws, or reads or writes a stream.
"""
