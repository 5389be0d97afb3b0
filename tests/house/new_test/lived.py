"""Lives the made-up test through the whole companion on a real file, and prints as JSON all that was said and written."""

import asyncio
import json
import sys
from datetime import timedelta
from pathlib import Path

from companion.channels import script
from companion.cli.play import play
from companion.coach.report import report_html
from companion.conversation.flow import Known
from companion.export.fhir.bundle import as_fhir
from companion.export.table import as_csv
from companion.pictures.series import ChartOwner, chart_of
from companion.record import log
from companion.record.context import known_of
from companion.record.file import open_for_reading
from companion.screening.conclusion import conclude
from companion.screening.screen import about_from, screen_from
from companion.verify.check import faults
from companion.verify.domains import Ways
from companion.verify.proof import prove
from flows.catalogue import BOOK

ID = "seated_hip_rotation"


def main(conversation: Path, database: Path) -> None:
    """Play the conversation, then read the file as a coach, a lifter and an export do."""
    lines = script.parse(conversation.read_text(encoding="utf-8"))
    heard = asyncio.run(play(lines, database, lambda line: None))
    now = lines.begins + timedelta(hours=2)
    db = open_for_reading(database).conn
    known, rows = known_of(db, 1, now), list(log.answers_of(db, 1))
    answers, chart = list(known.answers()), chart_of(f"chart_{ID}", known.answers(), ChartOwner("1"))
    without = [row for row in answers if row.flow != ID]
    rulings = [conclude(screen_from(some), about_from(some), 0).verdict("length") for some in (without, answers)]
    ways = Ways(BOOK, BOOK[ID], Known({"today": now.date().isoformat()}, now))
    print(json.dumps({
        "faults": faults(ways, prove(ways)), "command": BOOK.command("seated hip rotation"),
        "said": ["\n".join(line.lines) for line in heard.lines if isinstance(line, script.BotMessage)],
        "report": report_html(db, 1, now, BOOK), "csv": as_csv(rows, BOOK, "UTC"), "fhir": as_fhir(1, rows, BOOK),
        "chart": chart.words if chart else "", "rulings": [[one.ruling.value, one.part] for one in rulings]}))


main(Path(sys.argv[1]), Path(sys.argv[2]))
