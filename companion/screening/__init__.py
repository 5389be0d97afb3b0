"""The trade's reasoning: pure functions on frozen records. Knows no conversation, no database, no channel.

safety     which work is open today
screen     the answers of each test, gathered from the log
readings   numbers, their errors, and the lines they are held against
geometry   angles from heights, levels and distances
evidence   the evidence table, as data a coach can read; findings: which of its rows a screen shows
verdicts   the decision rule over those rows; causes: what a lifter is told
drills     the drills, as data; retest: when to test again, and whether something changed
"""
