"""What was done: events, the state they lead to, and the one way that state changes.

A command goes to ``decide``, which does all computing and answers with events or a refusal; the ``journal`` makes
the events durable; ``evolve`` gives the next state. Nothing in this room draws, and nothing above ``journal`` knows
how things are stored.
"""
