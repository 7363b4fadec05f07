"""Text, inline maths, figures and answer spaces in; finished pages out. Knows no lessons."""
