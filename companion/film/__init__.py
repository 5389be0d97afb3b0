"""Angles of a filmed squat from printed cards, without any learnt model. Pure but for decoding, which runs in a process of its own."""
