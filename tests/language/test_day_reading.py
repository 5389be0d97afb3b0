"""What people type about squat days, and what it means: on Wednesday 25 November 2026, unless a case says otherwise."""

from __future__ import annotations

from datetime import date, time, timedelta

from hypothesis import example, given
from hypothesis import strategies as st

from companion.calendar.plan import (
    LONGEST_GAP,
    WEEKDAYS,
    Away,
    EveryNDays,
    MoveDay,
    On,
    Pause,
    Plan,
    Skip,
    Stay,
    StopAll,
    Weekly,
    change_of,
    changed,
    next_days,
)
from companion.calendar.words import DAY_NAMES, MONTH_NAMES
from companion.language.days.reading import (
    IncompleteChange,
    UnclearChange,
    read_change,
    read_clock,
    read_date,
    read_days,
    read_hours,
    read_rest,
)
from companion.language.days.rules import made, without_asides
from companion.language.days.times import sense_of
from tests.table import each_row

TODAY = date(2026, 11, 25)
TUE_FRI = Plan(weekly=((1, time(18)), (4, time(18))))
NO_PLAN = Plan()
CHANGES = (Weekly, EveryNDays, On, Skip, MoveDay, Pause, Away, Stay, StopAll)


def table_rows(table: str) -> list[tuple[str, str]]:
    """Lines of "typed | meaning"."""
    lines = [line for line in table.strip().splitlines() if line.strip()]
    return [(typed.strip().replace("\\n", "\n"), meaning.strip()) for typed, meaning in (line.rsplit("|", 1) for line in lines)]


CLOCKS = table_rows("""
    6pm | 18:00
    6 pm | 18:00
    6PM | 18:00
    6 p.m. | 18:00
    6:30pm | 18:30
    6.30 pm | 18:30
    630pm | 18:30
    1130 am | 11:30
    6p | 18:00
    6:30a | 06:30
    630p | 18:30
    17.30h | 17:30
    17.30 h | 17:30
    6.30 hrs | 06:30 18:30
    13a | ?
    5 p | ?
    18:00 | 18:00
    18.00 | 18:00
    18.10 | 18:10
    1800 | 18:00
    0730 | 07:30
    18 | 18:00
    18h | 18:00
    18h30 | 18:30
    18 Uhr | 18:00
    um 18.30 uhr | 18:30
    @7pm | 19:00
    at 7 in the morning | 07:00
    7 in the evening | 19:00
    evenings, 7ish | ?
    about 7ish in the evening | 19:00
    half past six in the evening | 18:30
    half past 6pm | 18:30
    quarter to 7pm | 18:45
    a quarter past seven in the morning | 07:15
    quarter to 1pm | 12:45
    twenty to eight am | 07:40
    seven thirty pm | 19:30
    six oclock in the evening | 18:00
    6 o’clock pm | 18:00
    noon | 12:00
    12 noon | 12:00
    12pm | 12:00
    12:30 | 12:30
    06:30 | 06:30
    00:30 | 00:30
    6:00pm sharp pls | 18:00
    around 6pm 🙂 | 18:00
    5 in the afternoon | 17:00
    ６ｐｍ | 18:00
    6 | 06:00 18:00
    at 6 | 06:00 18:00
    6:30 | 06:30 18:30
    6 uhr | 06:00 18:00
    half past six | 06:30 18:30
    quarter to one | 00:45 12:45
    12 | 00:00 12:00
    24:00 | ?
    midnight | ?
    12am | ?
    half seven | 07:30 19:30
    half six in the evening | 18:30
    half nine pm | 21:30
    half 13 | ?
    half | ?
    nine in the morn | 09:00
    seven in the arvo | ?
    five in the arvo | 17:00
    at nineteen hours | 19:00
    nineteen hundred | 19:00
    nineteen thirty | 19:30
    twenty one hours | 21:00
    twenty five past six | 06:25 18:25
    twenty five | ?
    for nineteen hours | ?
    two hours | ?
    seven a.m. | 07:00
    at noon | 12:00
    6-7pm | ?
    6pm or 7pm | ?
    6pm 7pm | ?
    between 6 and 7pm | ?
    five to seven | ?
    18:00 in the morning | ?
    6am in the evening | ?
    25:00 | ?
    18:60 | ?
    13pm uhr | ?
    after 6pm | ?
    6pm UTC | ?
    not 6pm | ?
    later | ?
    100 kg | ?
    6pm tomorrow | ?
""")


@each_row(("typed", "meaning"), CLOCKS)
def test_a_time_of_day_is_read_and_a_doubtful_one_is_not(typed, meaning):
    times = read_hours(typed)
    assert " ".join(f"{at:%H:%M}" for at in times) == meaning.replace("?", "")
    assert read_clock(typed) == (times[0] if len(times) == 1 else None)


DATES = table_rows("""
    today | 2026-11-25
    tomorrow | 2026-11-26
    tmrw pls | 2026-11-26
    tommorow | 2026-11-26
    the day after tomorrow | 2026-11-27
    Friday | 2026-11-27
    on friday. | 2026-11-27
    this Friday | 2026-11-27
    this wednesday | 2026-11-25
    next Tuesday | 2026-12-01
    next friday | 2026-12-04
    friday next week | 2026-12-04
    fri | 2026-11-27
    firday | 2026-11-27
    sat | 2026-11-28
    in 3 days | 2026-11-28
    in two weeks | 2026-12-09
    in a week | 2026-12-02
    in a fortnight | 2026-12-09
    in a month | 2026-12-25
    3 January | 2027-01-03
    3rd of january | 2027-01-03
    January 3rd | 2027-01-03
    jan 3 | 2027-01-03
    3 jan 2027 | 2027-01-03
    3. January | 2027-01-03
    janurary 3 | 2027-01-03
    3.1. | 2027-01-03
    3.1 | 2027-01-03
    03.01.2027 | 2027-01-03
    3.1.27 | 2027-01-03
    24.12. | 2026-12-24
    2027-01-03 | 2027-01-03
    25 november | 2026-11-25
    the 14th | 2026-12-14
    14th | 2026-12-14
    the 27 | 2026-11-27
    the 31st | 2026-12-31
    next week | 2026-11-30
    after the weekend | 2026-11-30
    next month | 2026-12-01
    13/1 | 2027-01-13
    1/13 | 2027-01-13
    3/3 | 2027-03-03
    Friday 27 November | 2026-11-27
    fri, the 27th | 2026-11-27
    Fr 27.11. | ?
    the one after wednesday | 2026-11-26
    day before sunday | 2026-11-28
    the first day of the weekend | 2026-11-28
    third of january | 2027-01-03
    the sixth of april | 2027-04-06
    april the third | ?
    the twelfth | 2026-12-12
    the twenty first of march | 2027-03-21
    valentine's day | 2027-02-14
    christmas eve | 2026-12-24
    the second | ?
    the second set | ?
    second | ?
    the day after fridays | ?
    the one after that | ?
    thursday 27 november | ?
    wednesday | ?
    3/1 | ?
    2026-01-03 | ?
    3 January 2026 | ?
    3 January 2029 | ?
    29 february | ?
    31 november | ?
    32.1. | ?
    yesterday | ?
    last friday | ?
    friday or saturday | ?
    friday saturday | ?
    fridays | ?
    this weekend | ?
    next tuesdays | ?
    2026-13-01 | ?
    the 32nd | ?
    soon | ?
    may | ?
    munday | ?
    in a while | ?
    not friday | ?
    the 3 bears | ?
""")


@each_row(("typed", "meaning"), DATES)
def test_a_date_is_read_and_a_doubtful_one_is_not(typed, meaning):
    assert str(read_date(typed, TODAY) or "?") == meaning


def test_next_tuesday_is_of_the_week_that_starts_on_the_coming_monday():
    sunday = date(2026, 11, 29)
    assert read_date("next tuesday", sunday) == date(2026, 12, 1)
    assert read_date("next tuesday", date(2026, 11, 30)) == date(2026, 12, 8)


def test_the_29th_of_february_is_read_where_the_next_one_is_near():
    assert read_date("29 feb", date(2028, 1, 10)) == date(2028, 2, 29)


DAYS = table_rows("""
    Tuesdays and Fridays at 6pm | weekly TU=18:00,FR=18:00
    tue fri 6.30 pm | weekly TU=18:30,FR=18:30
    tue & thur 6p | weekly TU=18:00,TH=18:00
    mon/thu 17.30h | weekly MO=17:30,TH=17:30
    mon thu 17.30 h | weekly MO=17:30,TH=17:30
    mon 7.15 a.m. thu 6.45 p.m. | weekly MO=07:15,TH=18:45
    tue fri 6.10 pm | weekly TU=18:10,FR=18:10
    tuesday & friday 18.00 | weekly TU=18:00,FR=18:00
    tue fri 18:00 | weekly TU=18:00,FR=18:00
    tue, fri @ 6pm | weekly TU=18:00,FR=18:00
    tue/fri 1800 | weekly TU=18:00,FR=18:00
    TUESDAY AND FRIDAY 6 PM!!! | weekly TU=18:00,FR=18:00
    Tuesday and friday at half past six in the evening | weekly TU=18:30,FR=18:30
    mon/wed/fri 7am | weekly MO=07:00,WE=07:00,FR=07:00
    mon wed fri 0700 | weekly MO=07:00,WE=07:00,FR=07:00
    mon-wed-fri 7am | weekly MO=07:00,WE=07:00,FR=07:00
    Mo/We/Fr 18.30 | weekly MO=18:30,WE=18:30,FR=18:30
    mo, mi | ?
    MWF 7am | weekly MO=07:00,WE=07:00,FR=07:00
    weekdays at 7am | weekly MO=07:00,TU=07:00,WE=07:00,TH=07:00,FR=07:00
    every weekday, mornings at 7 | weekly MO=07:00,TU=07:00,WE=07:00,TH=07:00,FR=07:00
    Mon-Fri 07:00 | weekly MO=07:00,TU=07:00,WE=07:00,TH=07:00,FR=07:00
    monday to friday 7am | weekly MO=07:00,TU=07:00,WE=07:00,TH=07:00,FR=07:00
    from monday through thursday at 7am | weekly MO=07:00,TU=07:00,WE=07:00,TH=07:00
    weekends 10am | weekly SA=10:00,SU=10:00
    sat & sun 10h30 | weekly SA=10:30?,SU=10:30?
    sat sun | weekly SA=??:??,SU=??:??
    tuesday 6pm and saturday 10am | weekly TU=18:00,SA=10:00
    tue 6pm, sat 10am | weekly TU=18:00,SA=10:00
    tue 18:00\\nsat 10am | weekly TU=18:00,SA=10:00
    6pm tuesdays, 10am saturdays | weekly TU=18:00,SA=10:00
    6pm on tuesdays and fridays | weekly TU=18:00,FR=18:00
    mon wed 7am fri 6pm | weekly MO=07:00,WE=07:00,FR=18:00
    tues + thurs evenings at 7 | weekly TU=19:00,TH=19:00
    tue and thu at 7 in the evening | weekly TU=19:00,TH=19:00
    in the evening at 7 on tuesdays | weekly TU=19:00
    tuesday evenings 7 | weekly TU=19:00
    every tuesday and friday 18h | weekly TU=18:00,FR=18:00
    every tues, thurs and sat at 6:30 pm | weekly TU=18:30,TH=18:30,SA=18:30
    each monday 18 uhr | weekly MO=18:00
    tuesday's and friday's at 6pm | weekly TU=18:00,FR=18:00
    weekly on mondays 6pm | weekly MO=18:00
    twice a week tue fri 6pm | weekly TU=18:00,FR=18:00
    3x a week, mon wed fri at 6pm | weekly MO=18:00,WE=18:00,FR=18:00
    I usually squat on Tuesdays and Fridays, at 6pm please | weekly TU=18:00,FR=18:00
    tues n fri 6pm | weekly TU=18:00,FR=18:00
    tue and fri 6 | weekly TU=06:00?,FR=06:00?
    saturdays 10 | weekly SA=10:00?
    mon wed fri 18 | weekly MO=18:00,WE=18:00,FR=18:00
    every other day 7 | every 2 07:00? ????-??-??
    tue 3 fri 6 | ?
    sat 10 | ?
    tuesdays 30 | ?
    so like tuesdays n fridays | weekly TU=??:??,FR=??:??
    hmm ok tuesdays and fridays around 6pm i think | weekly TU=18:00,FR=18:00
    my squat days are monday and thursday, 6pm 💪🏽 | weekly MO=18:00,TH=18:00
    I'll do mondays at 6pm | weekly MO=18:00
    tuesdya and firday 6pm | weekly TU=18:00,FR=18:00
    wensday 6pm | weekly WE=18:00
    weds and sats 9am | weekly WE=09:00,SA=09:00
    mons + fris 6pm, suns 10.30 am | weekly MO=18:00,FR=18:00,SU=10:30
    wendsday n thurday | weekly WE=??:??,TH=??:??
    wendsday, thurday 18:00 | weekly WE=18:00,TH=18:00
    tusdays and saterdays 10am | weekly TU=10:00,SA=10:00
    tuesday 6pm | weekly TU=18:00
    sat 10am | weekly SA=10:00
    every day except sunday at 7am | weekly MO=07:00,TU=07:00,WE=07:00,TH=07:00,FR=07:00,SA=07:00
    tuesdays and fridays | weekly TU=??:??,FR=??:??
    tuesdays and fridays in the evening | weekly TU=??:??,FR=??:??
    tue fri | weekly TU=??:??,FR=??:??
    tuesday 6pm and saturday | weekly TU=18:00,SA=??:??
    tue fri at 6 | weekly TU=06:00?,FR=06:00?
    tuesdays at 6:30 | weekly TU=06:30?
    tuesday 6pm, saturday at 10 | weekly TU=18:00,SA=10:00?
    tuesdays and fridays at 6pm starting tomorrow | weekly TU=18:00,FR=18:00
    every other day at 18:00 starting tomorrow | every 2 18:00 2026-11-26
    starting tomorrow every other day 6pm | every 2 18:00 2026-11-26
    every second day 6pm from friday | every 2 18:00 2026-11-27
    every 2nd day, 18:00, starting 1.12. | every 2 18:00 2026-12-01
    every 3 days 6pm from the 28th | every 3 18:00 2026-11-28
    every three days at 18h starting today | every 3 18:00 2026-11-25
    every third day, 6pm, first one tomorrow | every 3 18:00 2026-11-26
    every two weeks from monday 6pm | every 14 18:00 2026-11-30
    every other day | every 2 ??:?? ????-??-??
    every 3 days 6pm | every 3 18:00 ????-??-??
    i train mon wed fri at 6pm | weekly MO=18:00,WE=18:00,FR=18:00
    every other day 6pm from wednesday | every 2 18:00 ????-??-??
    every other day from wednesday | every 2 ??:?? ????-??-??
    every day from wednesday 7am | every 1 07:00 ????-??-??
    every other day from monday | every 2 ??:?? 2026-11-30
    alternate days at 7 from tomorrow | every 2 07:00? 2026-11-26
    every day at 6 | every 1 06:00? 2026-11-25
    daily | every 1 ??:?? 2026-11-25
    every evening at 7 | every 1 19:00 2026-11-25
    everyday 6 am | every 1 06:00 2026-11-25
""")


@each_row(("typed", "meaning"), DAYS)
def test_squat_days_are_read(typed, meaning):
    assert str(read_days(typed, TODAY) or "?") == meaning


NO_DAYS = """
    sat on a box | I sat down | i sat | I sat at 6pm | sun | the sun | in the sun | second | mon ami | fry | mon | wed | sundry | may
    someday | holiday | birthday | Monkey at 6pm | frida 6pm | sundae 6pm | saturate | mundane | hello | ok | yes | no | 6pm | 18:00 | |
    twice a week | 3 times a week | 3x a week at 6pm | three times a week tue fri 6pm | tuesday or friday | maybe tuesdays | not tuesdays
    every other tuesday 6pm | every second friday | every other week tuesday 6pm | every 30 days | every 0 days | every few days
    when I can | whenever | depends | tue-thu 7am | fri-mon 7am | tuesday 6pm tuesday 7pm | tuesdays 18:00-19:30 | tuesdays 6pm or 7pm
    tue 18:00 in the morning | this friday 6pm | tomorrow 6pm | next tuesday 6pm | friday 27 november 6pm | 100 kg on tuesdays | 3x5
    tuesdays 5x5 6pm | two tuesdays ago | 2nd tuesday of the month | first monday | tuesday week 6pm | a week on tuesday | mon cheri at 6pm
    tuesdays except this one | tuesday before 6pm | munday 6pm | tuesdays if I feel good | do I squat tuesday? | was it tuesday 6pm
    tuesdays and fridays at 6pm starting next week | every day every other day | my back hurts on tuesdays | ❌ tuesdays 6pm
    I squatted tuesday 6pm | should I squat tuesdays at 6pm | tuesday 24:00 | 6pm every day 7pm | every other day except sunday
    every other day 6pm from yesterday | mondays 6pm from wednesday | evenings, tue 7:30 fri 8:30 | from friday to saturday 10am | friday 20
"""


@each_row("typed", [typed.strip() for typed in NO_DAYS.replace("\n", "|").split("|")])
def test_other_words_are_no_squat_days(typed):
    assert read_days(typed, TODAY) is None


CHANGED = table_rows("""
    skip tuesday | skip 2026-12-01
    Skip Tuesday please 🙏 | skip 2026-12-01
    skip tues | skip 2026-12-01
    skip teusday | skip 2026-12-01
    skip this one | skip 2026-11-27
    skip the next one | skip 2026-11-27
    skip it | skip 2026-11-27
    skip my next squat day | skip 2026-11-27
    not this friday | skip 2026-11-27
    not friday | skip 2026-11-27
    I can't on Friday | skip 2026-11-27
    sorry i cant make it on friday | skip 2026-11-27
    cant squat friday | skip 2026-11-27
    I won’t make friday | skip 2026-11-27
    friday off pls | skip 2026-11-27
    friday i can't | skip 2026-11-27
    can we skip friday? | skip 2026-11-27
    leave out next tuesday | skip 2026-12-01
    drop the 1st | skip 2026-12-01
    cancel friday | skip 2026-11-27
    cancel fri 27.11. | skip 2026-11-27
    cancel friday 6pm | skip 2026-11-27
    no squats on friday | skip 2026-11-27
    skip friday's session | skip 2026-11-27
    move friday | move 2026-11-27 ????-??-?? 18:00
    cancel my squat days | stop
    stop squat day reminders | stop
    move friday to saturday 10am | move 2026-11-27 2026-11-28 10:00
    move friday to saturday at 10 am, thanks | move 2026-11-27 2026-11-28 10:00
    Move Friday 6pm to Saturday 10am | move 2026-11-27 2026-11-28 10:00
    can you move friday to saturday 10h | move 2026-11-27 2026-11-28 10:00?
    move it to sunday | move 2026-11-27 2026-11-29 18:00
    move this one to tomorrow | move 2026-11-27 2026-11-26 18:00
    move tuesday to wednesday 7pm | move 2026-12-01 2026-12-02 19:00
    move tuesday to thursday | move 2026-12-01 2026-12-03 18:00
    move tuesday to sunday | move 2026-12-01 2026-12-06 18:00
    move friday 4 december to wednesday | move 2026-12-04 2026-12-02 18:00
    move friday 4 december to monday | move 2026-12-04 2026-12-07 18:00
    move friday to thursday | move 2026-11-27 2026-11-26 18:00
    thursday instead of tuesday | move 2026-12-01 2026-12-03 18:00
    shift friday to sunday 18.30 | move 2026-11-27 2026-11-29 18:30
    push the next one to 3.12. at 7pm | move 2026-11-27 2026-12-03 19:00
    swap friday for saturday 10am | move 2026-11-27 2026-11-28 10:00
    saturday instead of friday | move 2026-11-27 2026-11-28 18:00
    saturday 10am instead of friday | move 2026-11-27 2026-11-28 10:00
    instead of friday, saturday 10am | move 2026-11-27 2026-11-28 10:00
    not friday but saturday 10am | move 2026-11-27 2026-11-28 10:00
    can't friday, saturday 10am instead | move 2026-11-27 2026-11-28 10:00
    can't do friday. saturday 10am? | move 2026-11-27 2026-11-28 10:00
    move friday to saturday at 9 | move 2026-11-27 2026-11-28 09:00?
    move friday to saturday evening at 7 | move 2026-11-27 2026-11-28 19:00
    move friday to 7pm | on 2026-11-27 19:00
    change friday to 19:00 | on 2026-11-27 19:00
    friday at 7pm instead | on 2026-11-27 19:00
    friday, 7pm instead | on 2026-11-27 19:00
    7pm on friday instead | on 2026-11-27 19:00
    this friday at 7pm | on 2026-11-27 19:00
    friday 7pm | on 2026-11-27 19:00
    friday at 7 | on 2026-11-27 07:00?
    make it 7pm | on 2026-11-27 19:00
    friday instead | on 2026-11-27 ??:??
    saturday 10am as well | on 2026-11-28 10:00
    also sat 10am | on 2026-11-28 10:00
    add saturday 10am | on 2026-11-28 10:00
    an extra session tomorrow 18h | on 2026-11-26 18:00
    tomorrow at 6pm too | on 2026-11-26 18:00
    today 6pm | on 2026-11-25 18:00
    tonight at 7 | on 2026-11-25 19:00
    this evening 7 | on 2026-11-25 19:00
    also on sunday at 9 | on 2026-11-29 09:00?
    saturday too | on 2026-11-28 ??:??
    squeeze in sunday at noon | on 2026-11-29 12:00
    throw in sunday ten in the morning | on 2026-11-29 10:00
    push it to sunday ten in the morning | move 2026-11-27 2026-11-29 10:00
    shift it to saturday nine in the morn | move 2026-11-27 2026-11-28 09:00
    skip the day after thursday | skip 2026-11-27
    on holiday, freeze it til the 14th of march | pause 2027-03-14
    back under the bar on the sixth of april | pause 2027-04-06
    back on valentines day | pause 2027-02-14
    mondays an thursdays at half six in the evening | weekly MO=18:30,TH=18:30
    pause until 3 January | pause 2027-01-03
    pause til 3.1. | pause 2027-01-03
    pause until 3.1.27 please | pause 2027-01-03
    pause until wednesday | pause 2026-12-02
    pause till after the weekend | pause 2026-11-30
    pause until next week | pause 2026-11-30
    pause for two weeks | pause 2026-12-09
    pause 10 days | pause 2026-12-05
    take a break for a week | pause 2026-12-02
    I'm on holiday until the 14th | pause 2026-12-14
    im away for a fortnight | pause 2026-12-09
    on vacation till 20th december | pause 2026-12-20
    sick, no squats until monday | pause 2026-11-30
    no squats for two weeks | pause 2026-12-09
    no squats this week | pause 2026-11-30
    no squats for 3 days | pause 2026-11-28
    skip two weeks | pause 2026-12-09
    cancel everything until monday | pause 2026-11-30
    pause all squat days for a week | pause 2026-12-02
    im back from holiday on monday | pause 2026-11-30
    travelling until 2026-12-14 | pause 2026-12-14
    until monday no squats | pause 2026-11-30
    back on monday | pause 2026-11-30
    I'm back on Monday | pause 2026-11-30
    back in two weeks | pause 2026-12-09
    on holiday, back on the 14th | pause 2026-12-14
    start again on tuesday | pause 2026-12-01
    stop all | stop
    Stop everything. | stop
    no more squat days | stop
    cancel everything | stop
    cancel all my squat days | stop
    delete the whole plan please | stop
    tuesdays and thursdays at 7pm | weekly TU=19:00,TH=19:00
    tuesdays and fridays at 7 | weekly TU=07:00?,FR=07:00?
    mon/wed/fri 7am | weekly MO=07:00,WE=07:00,FR=07:00
    from now on only fridays 7pm | weekly FR=19:00
    saturdays 10am as well | weekly TU=18:00,FR=18:00,SA=10:00
    every other day 18:00 from tomorrow | every 2 18:00 2026-11-26
    change my days to mon thu 6pm | weekly MO=18:00,TH=18:00
    make it mondays and thursdays at 6pm | weekly MO=18:00,TH=18:00
    friday 7pm from now on | weekly FR=19:00
    also sundays | weekly TU=18:00,FR=18:00,SU=??:??
    - mon 6pm\\n- thu 7pm | weekly MO=18:00,TH=19:00
    tuesday6pm | on 2026-12-01 18:00
    1.12. at 19h | on 2026-12-01 19:00
    tue 1.12. 19 uhr | on 2026-12-01 19:00
    squat on 24.12. 9:30 | on 2026-12-24 09:30?
    i wanna skip fri | skip 2026-11-27
    rest day on friday | skip 2026-11-27
    not gonna make it friday | skip 2026-11-27
    every 3 days | every 3 ??:?? ????-??-??
""")


@each_row(("typed", "meaning"), CHANGED)
def test_a_change_is_read(typed, meaning):
    read = read_change(typed, TUE_FRI, TODAY)
    assert not isinstance(read, UnclearChange), read.reason
    assert str(read) == meaning


REFUSED = table_rows("""
    skip saturday | Saturday 28 November is no squat day. Next: Fri 27 Nov, Tue 1 Dec, Fri 4 Dec.
    leave out tomorrow | Tomorrow is no squat day. Next: Fri 27 Nov, Tue 1 Dec, Fri 4 Dec.
    move saturday to sunday | Saturday 28 November is no squat day. Next: Fri 27 Nov, Tue 1 Dec, Fri 4 Dec.
    move friday to yesterday | That day has passed.
    move friday to 20.11.2026 | That day has passed.
    move friday to tuesday | Tuesday 1 December is a squat day already, at 18:00.
    friday 7pm as well | Friday 27 November is a squat day already, at 18:00.
    skip friday 7am | Friday 27 November is at 18:00. Which one do you mean?
    skip wednesday | It is Wednesday today. Do you mean today, or next week? Say “today” or the date, please.
    skip 3/12 | I can't tell day and month apart there. Write the month as a word, please.
    skip thursday 27 november | That date is another day of the week.
    skip 31 november | There is no such date.
    also friday 18.12 | I can't tell whether that is a date or a time. Write 18:10 or 18 October, please.
    saturday 10am instead | Instead of which day? Next: Fri 27 Nov, Tue 1 Dec, Fri 4 Dec.
    fridays at 7pm | For every week, name all the days that stay, with their times. For one day, say its date.
    skip fridays | For every week, name all the days that stay, with their times. For one day, say its date.
    no more fridays | For every week, name all the days that stay, with their times. For one day, say its date.
    move fridays to 7pm | For every week, name all the days that stay, with their times. For one day, say its date.
    pause | Until when? Say “pause until 3 January” or “pause for two weeks”.
    pause until | Until when? Say “pause until 3 January” or “pause for two weeks”.
    I'm on holiday | Until when? Say “pause until 3 January” or “pause for two weeks”.
    pause until today | Until when? Say “pause until 3 January” or “pause for two weeks”.
    pause for 13 months | Until when? Say “pause until 3 January” or “pause for two weeks”.
    move friday to wednesday | It is Wednesday today. Do you mean today, or next week? Say “today” or the date, please.
    wednesday 6pm | It is Wednesday today. Do you mean today, or next week? Say “today” or the date, please.
    back on wednesday | It is Wednesday today. Do you mean today, or next week? Say “today” or the date, please.
    also every other day 6pm from tomorrow | For every week, name all the days that stay, with their times. For one day, say its date.
    away friday | From when until when? Say “away 10 to 20 March”, or “skip Friday” for one day.
    skip early next week | From when until when? Say “away 10 to 20 March”, or “skip Friday” for one day.
    skip friday to monday | From when until when? Say “away 10 to 20 March”, or “skip Friday” for one day.
    away 20 to 10 december | That ends before it begins.
    away from 20 december until 10 december | That ends before it begins.
    away from 12/3 to 20 december | I can't tell day and month apart there. Write the month as a word, please.
    away from today | Until when? Say “pause until 3 January” or “pause for two weeks”.
    away 10 december to 10 december 2027 | That is more than a year ahead.
    pause until 2029-01-01 | That is more than a year ahead.
    start again | Your squat days are not paused. Next: Fri 27 Nov, Tue 1 Dec, Fri 4 Dec.
    stop all reminders | For the reminders alone, say “reminder times”; the squat days stay. To end those, say “stop all”.
    don't remind me | For the reminders alone, say “reminder times”; the squat days stay. To end those, say “stop all”.
    stop | One squat day, or all of them? Say “skip Friday”, or “stop all”.
    cancel | One squat day, or all of them? Say “skip Friday”, or “stop all”.
    skip | Which day? Next: Fri 27 Nov, Tue 1 Dec, Fri 4 Dec.
    move | Which day? Next: Fri 27 Nov, Tue 1 Dec, Fri 4 Dec.
    move to saturday 10am | Which day? Next: Fri 27 Nov, Tue 1 Dec, Fri 4 Dec.
    7pm | Which day? Next: Fri 27 Nov, Tue 1 Dec, Fri 4 Dec.
    friday | Friday 27 November: skip it, move it, or squat at another time?
    skip tuesday and friday | One squat day at a time, please.
    skip friday, tuesday 1 december | One squat day at a time, please.
""")


@each_row(("typed", "reason"), REFUSED)
def test_what_can_not_be_is_refused_with_its_reason(typed, reason):
    assert read_change(typed, TUE_FRI, TODAY) == UnclearChange(reason)


NO_CHANGES = """
    hello | ok | how are you | I squatted on friday | skipped friday | don't skip friday | do not skip friday | never skip friday
    maybe skip friday | skip friday or tuesday | if it rains skip friday | should I skip friday? | did I skip friday | is it friday?
    do I squat on friday? | when is the next one
    have I got friday 6pm? | is friday 6pm ok | skip the rope | move the bar
    move my feet back | back | my back hurts | back rounds on friday | my back hurts since tuesday
    it hurts | pause squat | pause squats 3x5 | two second pause
    pause squats on friday | stop rounding | stop at parallel | sat back | sit back | I sat on the box on friday | add 5 kg on friday
    add weight friday | also my knee hurts | friday was good | tuesday felt heavy | not sure | not all | don't stop all | not everything
    no | nothing | cancel the reminder for friday if I'm late | start again from the top | what about friday 7pm | why not friday
    move friday to saturday or sunday
    move friday to saturday 10am or 11am | skip every other friday | ❌ | 👎 friday 7pm | friday week
    skip two days | back squats on monday | back training tuesday | I'm off on friday | skip the reminder friday | not good friday
    usually not friday | remind me friday at 6pm | I normally squat friday 7pm | pause squats tomorrow | drop sets friday | friday 20
    skip the next two | 1234567890 | 6 | /skip | sun is out | second set | fri\u0435nd | unskip friday | I was on holiday until friday
"""


@each_row("typed", [typed.strip() for typed in NO_CHANGES.replace("\n", "|").split("|") if typed.strip()])
def test_other_words_are_no_change(typed):
    assert isinstance(read_change(typed, TUE_FRI, TODAY), UnclearChange)


def test_who_is_paused_can_start_again_and_is_told_of_the_pause():
    paused = changed(TUE_FRI, Pause(date(2026, 12, 14)))
    for typed in ("start again", "I'm back", "unpause", "resume please"):
        assert read_change(typed, paused, TODAY) == Pause(TODAY)
    assert read_change("saturday 10am as well", paused, TODAY) == UnclearChange("Your squat days are paused until Monday 14 December.")
    assert read_change("skip friday", paused, TODAY) == UnclearChange("Your squat days are paused until Monday 14 December.")
    assert read_change("skip it", paused, TODAY) == Skip(date(2026, 12, 15))


@each_row(("typed", "left"), [
    ("sunday ten in the morning when her dad has her", "sunday ten in the morning"),
    ("my shift changed, wednesday at 7pm", "wednesday at 7pm"),
    ("mondays 6pm after im showered", "mondays 6pm"), ("third of january, once the hangovers gone", "3th of january"),
    ("skip friday when her dad is here, not monday", "skip friday, not monday"), ("tuesdays if I feel good", "tuesdays if i feel good"),
    ("tuesdays, maybe when i can", "tuesdays, maybe"), ("not friday, my kid is ill", "not friday"),
    ("tuesday before 6pm", "tuesday before 6pm"), ("skip friday when it rains", "skip friday when it rains"),
    ("after friday", "after friday"), ("monday, cancel the lot", "monday, cancel the lot")])
def test_only_what_tells_the_circumstances_is_left_out(typed, left):
    assert without_asides(typed, TODAY) == left


@each_row(("typed", "part"), [
    ("half six before the gym opens", "morning"), ("with my coffee", "morning"), ("after work", "evening"), ("when i clock off", "evening"),
    ("once the little one's down", "evening"), ("coffee after work", ""), ("after lunch", ""), ("work", "")])
def test_what_is_done_then_tells_morning_from_evening(typed, part):
    assert sense_of(typed) == part


LATER = table_rows("""
    away 10 to 20 december | away 2026-12-10 2026-12-21
    I'm away 10-20 December | away 2026-12-10 2026-12-21
    away december 10 to 20 | away 2026-12-10 2026-12-21
    no squats from the 10th to the 20th of december | away 2026-12-10 2026-12-21
    10 to 20 december I'm away | away 2026-12-10 2026-12-21
    skip 10 to 20 december | away 2026-12-10 2026-12-21
    away 28 december to 3 january | away 2026-12-28 2027-01-04
    away 28 december until 3 january | away 2026-12-28 2027-01-03
    skip next week | away 2026-11-30 2026-12-07
    no squats next week | away 2026-11-30 2026-12-07
    pause next week | away 2026-11-30 2026-12-07
    next week off | away 2026-11-30 2026-12-07
    no squats next month | away 2026-12-01 2027-01-01
    pause from friday until 14 december | away 2026-11-27 2026-12-14
    away from friday until monday | away 2026-11-27 2026-11-30
    away from friday to monday | away 2026-11-27 2026-12-01
    from friday until monday I'm away | away 2026-11-27 2026-11-30
    on holiday from next week until 14 december | away 2026-11-30 2026-12-14
    pause for two weeks from friday | away 2026-11-27 2026-12-11
    away from 31 january for a month | away 2027-01-31 2027-02-28
    away from friday | away 2026-11-27 ????-??-??
    pause from today until friday | pause 2026-11-27
    away 20 to 28 november | pause 2026-11-29
""")


@each_row(("typed", "meaning"), LATER)
def test_a_pause_that_begins_later_is_read(typed, meaning):
    read = read_change(typed, TUE_FRI, TODAY)
    assert not isinstance(read, UnclearChange), read.reason
    assert str(read) == meaning


def test_who_has_a_pause_to_come_can_take_it_back_or_give_it_another_end():
    away = changed(TUE_FRI, Away(date(2026, 12, 7), date(2026, 12, 14)))
    for typed in ("unpause", "start again", "end the pause"):
        assert read_change(typed, away, TODAY) == Stay(date(2026, 12, 7))
    assert read_change("back on 10 december", away, TODAY) == Away(date(2026, 12, 7), date(2026, 12, 10))
    assert read_change("skip 8 december", away, TODAY) == UnclearChange("Your squat days are paused until Monday 14 December.")
    assert read_change("skip it", away, TODAY) == Skip(date(2026, 11, 27))
    assert read_change("unpause", away, date(2026, 12, 9)) == Pause(date(2026, 12, 9))
    assert read_change("back on 10 december", away, date(2026, 12, 9)) == Pause(date(2026, 12, 10))


def test_who_has_no_plan_is_asked_whether_a_day_is_every_week():
    assert read_change("tuesday 6pm", NO_PLAN, TODAY) == UnclearChange(
        "Every Tuesday, or only the next one? Say “Tuesdays”, or its date.")
    assert read_change("tuesdays 6pm", NO_PLAN, TODAY) == Weekly(((1, time(18)),))
    assert read_change("after work mostly", NO_PLAN, TODAY) == UnclearChange("I could not read that as squat days.")
    assert read_change("tomorrow 6pm", NO_PLAN, TODAY) == On(date(2026, 11, 26), time(18))
    assert read_change("skip it", NO_PLAN, TODAY) == UnclearChange("No squat day is planned.")
    assert read_change("start again", NO_PLAN, TODAY) == UnclearChange("No squat day is planned.")
    assert read_change("pause for a week", NO_PLAN, TODAY) == UnclearChange("No squat day is planned.")


def test_a_day_added_by_hand_can_be_moved_and_a_day_left_out_is_no_squat_day():
    plan = changed(changed(TUE_FRI, On(date(2026, 11, 26), time(7))), Skip(date(2026, 11, 27)))
    assert read_change("move it to saturday", plan, TODAY) == MoveDay(date(2026, 11, 26), date(2026, 11, 28), time(7))
    assert isinstance(read_change("skip friday", plan, TODAY), UnclearChange)
    assert read_change("also friday 9am", plan, TODAY) == On(date(2026, 11, 27), time(9))


@each_row(("open_", "wants", "reply", "now"), [
    ("weekly TU=06:00?,FR=19:00", "half", "evening", "weekly TU=18:00,FR=19:00"),
    ("weekly TU=06:00?,FR=06:30?", "half", "in the morning please", "weekly TU=06:00,FR=06:30"),
    ("weekly TU=06:00?", "half", "pm", "weekly TU=18:00"),
    ("weekly TU=06:00?", "half", "18:00", "weekly TU=18:00"),
    ("weekly TU=06:00?", "half", "6", "None"),
    ("weekly TU=06:00?,FR=07:00?", "half", "18:00", "None"),
    ("weekly TU=??:??,FR=??:??", "time", "6pm", "weekly TU=18:00,FR=18:00"),
    ("weekly TU=??:??,FR=19:00", "time", "at 6", "weekly TU=06:00?,FR=19:00"),
    ("on 2026-11-28 ??:??", "time", "dunno", "None"),
    ("on 2026-11-28 09:00?", "half", "the morning", "on 2026-11-28 09:00"),
    ("every 2 ??:?? ????-??-??", "time", "18h", "every 2 18:00 ????-??-??"),
    ("every 2 18:00 ????-??-??", "day", "tomorrow", "every 2 18:00 2026-11-26"),
    ("every 2 18:00 ????-??-??", "day", "yesterday", "None"),
])
def test_a_half_asks_for_what_is_missing_and_takes_it(open_, wants, reply, now):
    half = IncompleteChange(open_)
    assert half.wants == wants
    assert bool(half.could_be) == (wants == "half")
    assert str(read_rest(half, reply, TODAY)) == now


def test_a_half_says_which_two_times_its_hour_may_mean():
    assert IncompleteChange("on 2026-11-28 09:30?").could_be == (time(9, 30), time(21, 30))


def test_a_very_long_text_is_not_read_at_all():
    for text in ("tuesdays 6pm " * 5041, "x" * 65536, "1" * 65536, " " * 65536, "6" + " " * 300, "½" * 65536):
        assert read_clock(text) is None
        assert read_date(text, TODAY) is None
        assert read_days(text, TODAY) is None
        assert isinstance(read_change(text, TUE_FRI, TODAY), UnclearChange)


# Properties.

SOME_WORDS = (
    "skip move to friday tuesdays every other day 6pm at 6 18:00 18.10 pause until the 14th . , - / and & this next one it back "
    "start again stop all no more in two weeks starting tomorrow evening 3.1. 3/1 31st jan 29 feb 2027 sat sun instead of also for a "
    "week weekend 12 0 99 half past quarter to noon last yesterday monday except twice mwf mo we ÷ ٣ ² 🙂 \n from")
WORDS = st.sampled_from(SOME_WORDS.split(" "))
TEXTS = st.text(max_size=60) | st.lists(WORDS, max_size=9).map(" ".join) | st.lists(WORDS, max_size=7).map("".join)
TIMES = st.times().map(lambda at: time(at.hour, at.minute))
TODAYS = st.dates(date(2024, 1, 1), date(2090, 12, 31))
CLEAR = TIMES.filter(lambda at: at.hour not in (10, 11))
"""Times clear without am or pm: 10:00 and 11:00 have no leading nought to tell the 24-hour clock by."""
WEEKLY = st.dictionaries(st.integers(0, 6), CLEAR, min_size=1).map(lambda days: Weekly(tuple(sorted(days.items()))))


@st.composite
def plans(draw):
    return changed(changed(NO_PLAN, draw(WEEKLY)), draw(st.builds(On, TODAYS, TIMES)))


@example("tuesday", date(2026, 11, 25))
@given(TEXTS, TODAYS)
def test_any_text_gives_a_result_of_its_kind(text, today):
    assert isinstance(read_clock(text), time | None)
    day = read_date(text, today)
    assert day is None or today <= day <= today + timedelta(days=366)
    for read in (read_days(text, today), read_change(text, TUE_FRI, today), read_change(text, NO_PLAN, today)):
        if isinstance(read, UnclearChange):
            assert 0 < len(read.reason) <= 120
            assert "!" not in read.reason
        elif isinstance(read, IncompleteChange):
            assert made(read.open) == read
        elif read is not None:
            assert isinstance(read, CHANGES)
            assert change_of(str(read)) == read


@given(TEXTS, st.data())
def test_a_day_left_out_or_moved_is_a_squat_day_of_the_plan(text, data):
    today, plan = data.draw(TODAYS), data.draw(plans())
    read = read_change(text, plan, today)
    if isinstance(read, Skip | MoveDay):
        assert next_days(plan, read.day, 1)[0].day == read.day >= today
    if isinstance(read, MoveDay):
        assert read.to >= today
        assert read.to != read.day


def _twelve(at: time) -> str:
    return f"{at.hour % 12 or 12}:{at.minute:02d}{'am' if at.hour < 12 else 'pm'}"


CLOCK_FORMS = (lambda at: f"{at:%H:%M}", lambda at: f"at {at:%H:%M}", lambda at: f"@{at:%H.%M}", lambda at: f"{at:%H}h{at:%M}",
               lambda at: f"{at:%H:%M} Uhr")


@given(CLEAR, st.sampled_from(CLOCK_FORMS))
def test_a_written_time_reads_back(at, form):
    assert read_clock(form(at)) == at


@given(TIMES.filter(lambda at: at.minute or at.hour))
def test_a_time_with_am_or_pm_reads_back(at):
    assert read_clock(_twelve(at)) == at


@given(TODAYS, st.integers(0, 364), st.integers(0, 6))
def test_a_written_date_reads_back(today, ahead, form):
    day = today + timedelta(days=ahead)
    month = MONTH_NAMES[day.month - 1]
    texts = (day.isoformat(), f"{day.day} {month}", f"{month} {day.day}", f"{day.day}.{day.month}.",
             f"the {day.day}th of {month[:3].lower()}",
             f"{DAY_NAMES[day.weekday()]} {day.day} {month}", f"{day.day:02d}.{day.month:02d}.{day.year}")
    assert read_date(texts[form], today) == day


NAMES = (lambda day: DAY_NAMES[day], lambda day: DAY_NAMES[day] + "s", lambda day: DAY_NAMES[day][:3].lower(),
         lambda day: DAY_NAMES[day].upper(), lambda day: f"every {DAY_NAMES[day].lower()}")


@given(WEEKLY, st.permutations(range(7)), st.sampled_from(NAMES), st.sampled_from(CLOCK_FORMS),
       st.sampled_from((", ", " and ", " / ", " & ", "; ", " ", "\n")),
       st.booleans())
def test_a_written_week_reads_back(rule, order, name, clock, between, time_first):
    times = dict(rule.days)
    rows = [(name(day), clock(times[day])) for day in order if day in times]
    text = between.join(f"{at} {day}" if time_first else f"{day} {at}" for day, at in rows)
    assert read_days(text, TODAY) == rule
    assert read_change(f"from now on {text}", NO_PLAN, TODAY) == rule


@given(st.sets(st.integers(0, 6), min_size=2), CLEAR, st.sampled_from(NAMES), st.sampled_from(("/", ", ", " ", " + ", " and ")))
def test_days_that_share_a_time_read_back(days, at, name, between):
    text = between.join(map(name, sorted(days, reverse=True))) + f" {at:%H:%M}"
    assert str(read_days(text, TODAY)) == "weekly " + ",".join(f"{WEEKDAYS[day]}={at:%H:%M}" for day in sorted(days))


@given(st.integers(1, LONGEST_GAP), CLEAR, st.integers(0, 300))
def test_every_so_many_days_reads_back(count, at, ahead):
    start = TODAY + timedelta(days=ahead)
    assert read_days(f"every {count} days at {at:%H:%M} starting {start}", TODAY) == EveryNDays(count, at, start)


@given(TODAYS, plans(), CLEAR, st.integers(1, 100), st.integers(0, 5))
def test_a_change_in_words_reads_back(today, plan, at, ahead, which):
    squat = next_days(plan, today, 1)[0]
    day, to = squat.day, today + timedelta(days=ahead)
    free = all(one.day != to for one in next_days(plan, today, ahead + 1))
    cases = [(f"skip {day}", Skip(day)), ("skip it", Skip(day)), (f"pause until {to}", Pause(to)),
             (f"move {day} to {at:%H:%M}", On(day, at))]
    cases += [(f"move {day} to {to} {at:%H:%M}", MoveDay(day, to, at)), (f"also on {to} at {at:%H:%M}", On(to, at))] if free else cases[:2]
    text, change = cases[which]
    assert read_change(text, plan, today) == change


@given(TODAYS, st.integers(1, 300), st.integers(0, 60), st.integers(0, 4))
def test_a_written_pause_reads_back(today, ahead, days, form):
    first = today + timedelta(days=ahead)
    last = first + timedelta(days=days)
    over = last + timedelta(days=1)
    texts = (f"away {first} to {last}", f"pause from {first} until {over}", f"no squats from {first} to {last}",
             f"on holiday {first} - {last}", f"away from {first} for {days + 1} days")
    assert read_change(texts[form], TUE_FRI, today) == Away(first, over)
