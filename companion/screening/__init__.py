"""The trade's reasoning: pure functions on frozen records. Knows no conversation, no database, no channel.

protocol   what a test is, as one record; protocols/: the tests, one a file; pairs: rules that take two of them
safety     which work is open today
about      the lifter; screen: the answers that count, gathered from the log; sessions: a test's readings, session by session
readings   numbers and the lines they are held against; errors: a lifter's own errors
geometry   angles from heights, levels and distances
evidence   rows of the evidence table, and findings of them; findings: which rows a screen shows
rulings    the decision rule over those rows; conclusion: what a lifter is told
body       a lifter as rigid segments; posture: a balanced squat; tuck: where length alone starts the tuck, by draws
estimate   what that says of one lifter, beside what they saw
drills     the drills, as data; retest: when to test again, and whether something changed
trend      change over several sessions, and of pain; priming_trial: a fair trial of the priming drill
squat_days squat days as they were told; depth_progression: the depth to keep to; warm_up_sets, one_rep_max: loads
"""
