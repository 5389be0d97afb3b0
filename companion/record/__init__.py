"""The only place with SQL: the file, its migrations, one turn's rows, the answer log, the outbox."""
