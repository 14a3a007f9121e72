"""Speed, measured side by side with a bare Textual app. Nothing in here is a test: it prints ratios."""
