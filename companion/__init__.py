"""A text-message companion for people who squat with a barbell, and for their coaches."""
