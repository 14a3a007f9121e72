"""Speed, measured side by side with a bare Textual app. No time in here is a test: it prints ratios, and one count has a ceiling."""
