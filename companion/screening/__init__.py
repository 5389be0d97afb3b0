"""The domain logic: pure functions on frozen records. It imports no conversation, database or channel.

protocol   what a test is, as one record; protocols/: the tests, one a file; pairs: rules that take two of them
safety     which work is open today
about      the lifter; screen: the answers that count, from the log; sessions: a test's readings, session by session
readings   measurements and the thresholds they are compared with; errors: a lifter's own errors
geometry   angles from heights, levels and distances
evidence   rows of the evidence table, and findings; findings: the rows that apply to a screen
rulings    the decision rule over those rows; certainty: how often it comes out the same; conclusion: what a lifter is told
doubts     readings that can't stand, and the one repeat that settles them; front_pinch: a pinch at the front of hip or knee
setups     the lifter's own best squat, checked; load_threshold: the load at which rounding begins
body       a lifter as rigid segments; posture: a balanced squat; tuck: where length alone starts the tuck, by draws
estimate   that estimate for one lifter, compared with what they saw
drills     the drills, as data; retest: dates to test again, and change beyond measurement error
trend      change over several sessions, and of pain; priming_trial: a fair trial of the priming drill
squat_days squat days as reported; depth_progression: the depth to keep to; warm_up_sets: loads
"""
