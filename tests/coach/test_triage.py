"""The state of each of 300 lifters, against the same states reckoned in SQL alone."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from companion.coach.caseload import caseload
from companion.coach.triage import GROUPS, TRIAGE
from companion.record.timestamps import text_of
from tests.coach.caseload_rows import NOW, Room, record
from tests.coach.caseload_world import populate

LIFTERS = 300

FACTS = """
create temp table told as select person, name, value, because, at from findings f where id = (select max(id) from findings l
    where l.person = f.person and l.name = f.name);
create temp table mine as select k.person, k.since,
    ifnull((select max(at) from acts a where a.person = k.person and a.coach = k.coach and a.what = 'reviewed'
        and cast(a.id as text) not in (select value from acts where what = 'unreviewed')), '') as reviewed,
    max(ifnull((select max(at) from looks l where l.person = k.person and l.coach = k.coach and l.what = 'summary'), ''),
        ifnull((select max(at) from acts a where a.person = k.person and a.coach = k.coach and a.what <> 'unreviewed'), '')) as looked,
    (select max(at) from answers a where a.person = k.person) as answered
    from coaches k where k.coach = {coach};
create temp table finished as select person, max(at) as at from told where name = 'pain.hurt' group by person;
create temp table planned as with recursive days(day) as (select date('{now}', '-100 days') union all
    select date(day, '+1 day') from days where day < date('{now}', '-1 day'))
    select t.person, d.day from told t, days d where t.name = 'squat.plan' and not exists (select 1 from json_each(t.value, '$.away') w
        where d.day >= w.key and d.day < w.value)
    and (exists (select 1 from json_each(t.value, '$.weekly') w where w.key = substr('SUMOTUWETHFRSA', 2 * strftime('%w', d.day) + 1, 2))
        or d.day >= t.value ->> 'start' and (julianday(d.day) - julianday(t.value ->> 'start')) % (t.value ->> 'every') = 0);
create temp table last_retest as select * from reminders r
    where id = (select max(id) from reminders l where l.person = r.person and kind = 'retest');
"""

RECKONED = {
    "asks": """select a.person from alerts a join runs r on r.person = a.person and r.run = a.run join mine on mine.person = a.person
        where r.flow = 'crisis' and a.at > reviewed""",
    "unanswered": """select r.person from runs r where r.flow = 'signs' and r.ending is null and not exists (select 1 from runs c
        where c.person = r.person and c.flow = 'safety_check' and c.began_at > r.began_at)""",
    "clinicians_word": """select a.person from alerts a join runs r on r.person = a.person and r.run = a.run
        where r.flow = 'limits' and a.seen_at is null""",
    "hurt": """select person from mine where exists (select 1 from alerts a join runs r on r.person = a.person and r.run = a.run
            where a.person = mine.person and a.at > reviewed and r.flow in ('pain', 'morning'))
        or exists (select 1 from runs r where r.person = mine.person and r.flow = 'pain' and ifnull(r.ending, '') <> 'done'
            and r.began_at > reviewed and r.began_at > ifnull((select at from finished f where f.person = mine.person), ''))""",
    "referred": "select person from told where name = 'safety.level' and value in ('clinician', 'same_day', 'emergency')",
    "over_load": """select a.person from (select *, dense_rank() over (partition by person order by date(at) desc) as nth from answers
            where flow = 'squat_after' and key in ('back', 'load') and id in (select max(id) from answers l where l.flow = 'squat_after'
            group by l.person, l.key, date(l.at))) a join mine using (person)
        where a.nth <= 12 and a.key = 'load' and a.value > 60 and a.at > reviewed""",
    "worse": """select person from told join mine using (person) where name = 'retest.change' and value = 'worse' and at > reviewed
        union select a.person from answers a join mine using (person) join told s on s.person = a.person and s.name = 'depth.step'
        where a.id = (select max(id) from answers l where l.person = a.person and l.key = 'back')
        and a.value = 'moved' and a.at > reviewed and s.because like '%a step back%' and a.key = 'back'""",
    "quiet": """select person from mine join told p using (person) where p.name = 'squat.plan' and case when p.value = '{{}}' then
            julianday('{now}') - julianday(answered) > 14 else
            (select count(*) from planned d where d.person = mine.person and d.day > date(answered)) >= 3 end
            and person in (select person from addresses where gone_at is null)
        union select person from addresses where gone_at is not null and person in (select person from mine)""",
    "overdue": """select person from last_retest r join mine using (person)
        where r.made_at >= ifnull((select max(t.at) from told t where t.person = r.person and t.name = 'outcome.at'), '')
        and case when r.state = 'ignored' then r.settled_at > reviewed when r.state in ('open', 'replaced') then
            julianday('{now}') > julianday(r.due_at) + 7 and julianday(r.due_at) + 7 > ifnull(julianday(nullif(reviewed, '')), 0) end""",
    "retest_due": """select person from last_retest r join mine using (person)
        where r.made_at >= ifnull((select max(t.at) from told t where t.person = r.person and t.name = 'outcome.at'), '')
        and r.state in ('open', 'replaced') and julianday('{now}') between julianday(r.due_at) and julianday(r.due_at) + 7
        and r.due_at > reviewed""",
    "new_result": "select person from told join mine using (person) where name = 'outcome.at' and at > reviewed",
    "contradiction": """select distinct c.person from told c join told o on o.person = c.person and o.name = 'outcome.at' join mine on
        mine.person = c.person where c.name in ('length', 'strength', 'control') and c.value = 'too_close' and o.at > reviewed""",
    "note": """select distinct n.person from answers n join runs r on r.person = n.person and r.run = n.run join mine on
        mine.person = n.person where n.flow = 'note_to_coach' and n.at > looked and r.asked in ('', '{coach}')""",
    "better": "select person from told join mine using (person) where name = 'retest.change' and value = 'better' and at > reviewed",
}


@pytest.fixture(scope="module")
def world(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Room]:
    with record(Path(tmp_path_factory.mktemp("world"))) as room:
        populate(room, LIFTERS)
        for statement in FACTS.format(coach=room.coach, now=text_of(NOW)).split(";"):
            room.db.execute(statement)
        yield room


def states_of(room: Room) -> dict[int, list[str]]:
    return {line.person: [line.group, *(one.group for one in line.also)] for line in caseload(room.db, room.coach, NOW, "UTC+00:00")}


def test_every_state_of_the_table_is_reckoned():
    assert RECKONED.keys() == TRIAGE.keys()


@pytest.mark.parametrize("state", TRIAGE)
def test_a_state_holds_for_exactly_those_for_whom_sql_alone_finds_it(world, state):
    reckoned = {person for (person,) in world.db.execute(RECKONED[state].format(now=text_of(NOW), coach=world.coach))}
    held = {person for person, states in states_of(world).items() if state in states}
    assert held == reckoned
    assert 5 <= len(held) <= LIFTERS - 5, "the world has some of each"


def test_everybody_is_listed_once_in_one_group_and_fine_only_where_no_state_holds(world):
    lines = caseload(world.db, world.coach, NOW, "UTC+00:00")
    assert len(lines) == len({line.person for line in lines}) == LIFTERS
    held = {person for state, query in RECKONED.items() for (person,) in world.db.execute(query.format(now=text_of(NOW),
                                                                                                       coach=world.coach))}
    assert {line.person for line in lines if line.group == "fine"} == {line.person for line in lines} - held


def test_states_are_named_once_each_and_the_most_urgent_first(world):
    for states in states_of(world).values():
        assert states == sorted(set(states), key=GROUPS.index)
