"""What a coach gets out of the record: a person's answers in open formats."""
