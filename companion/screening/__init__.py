"""The trade's reasoning: pure functions on frozen records. Knows no conversation, no database, no channel.

safety     which work is open today
screen     the answers of each test, gathered from the log; sessions: a test's readings, session by session
readings   numbers, their published errors, and the lines they are held against; errors: a lifter's own errors
geometry   angles from heights, levels and distances
evidence   the evidence table, as data a coach can read; findings: which of its rows a screen shows
verdicts   the decision rule over those rows; causes: what a lifter is told
body       a lifter as rigid segments; posture: a balanced squat; tuck: where length alone starts the tuck, by draws
estimate   what that says of one lifter, beside what they saw
drills     the drills, as data; retest: when to test again, and whether something changed
trend      change over several sessions, and of pain; priming: a fair trial of the priming drill
agreement  how well raters agree; load: the heaviest repetition a set points at
"""
