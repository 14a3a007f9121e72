"""Speed beside that of a bare Textual app, as ratios, which no test asks for; and calls a press, which one bounds."""
