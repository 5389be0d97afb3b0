"""Greetings, thanks, praise and fright: whole replies that answer nothing."""

from __future__ import annotations

import re
from typing import Final

from companion.language.phrases import normalise

_WHOM: Final = r"(?:,? (?:there|again|mate|bro|man|buddy|bot|all|everyone|friend|then|love))*"
_HELLO: Final = re.compile(rf"(?:hi+|hello+|hey+|hiya|howdy|good (?:morning|afternoon|evening|day)|g'?day|yo){_WHOM}")
_PRAISE: Final = re.compile(r"great|cool|good|nice|perfect|fine|lovely|brilliant|awesome")
_NODS: Final = (r"ok|okay|kk?|got it|will do|alright|all right|right|understood|noted|sounds good|fair enough|good to know|no worries|"
                r"\N{THUMBS UP SIGN}")
_THANKS: Final = (r"(?:many |lots of )?(?:thanks|thank you|thank u|thankyou|thx|tx|ty|ta|cheers|much appreciated|appreciate it)"
                  r"(?: (?:so|very|ever so) much| a lot| a million| a bunch| heaps| loads| indeed)?(?: for .{1,40})?")
_ANY: Final = rf"(?:{_NODS}|{_THANKS}|{_PRAISE.pattern})"
_NOD: Final = re.compile(rf"(?:{_ANY}[,!.]? (?:and )?)*(?:{_NODS}|{_THANKS}){_WHOM}")
_VERY: Final = r"(?:so|really|very|too|a (?:bit|little)|kind ?of|kinda|quite|pretty|just|totally|honestly)"
_FRIGHT: Final = re.compile(
    r"(?:(?:but|and|ok|okay|oh|god|oh god|oh no|omg|sorry|help|now|well|please),? )*(?:(?:i'?m|i am|i feel|i'?m feeling|feeling|this is|"
    r"that'?s|it'?s|you'?re|you are)(?: all| getting| just| now| still)? )?"
    rf"(?:{_VERY} )*(?:scared|scary|frightened|frightening|terrified|terrifying|afraid|petrified|panicking|in a panic|freaking out|"
    r"freaked out|scaring me|freaking me out|shaken|(?:having|going to have) a panic attack)"
    r"(?: (?:now|right now|rn|tbh|honestly|(?:about|of) (?:this|that|it)|lol|sorry|help|please|too))*")


def greets(text: str) -> bool:
    """True if a whole reply is a greeting."""
    return bool(_HELLO.fullmatch(_plain(text)))


def frightened(text: str) -> bool:
    """True if a whole reply only says that somebody is frightened."""
    return bool(_FRIGHT.fullmatch(_plain(text)))


def praises(text: str) -> bool:
    """True if a whole reply is praise: it answers "how", and else only acknowledges."""
    return bool(_PRAISE.fullmatch(_plain(text)))


def nods(text: str) -> bool:
    """True if a whole reply thanks or acknowledges and no more, as after the message of the evening before a squat day."""
    return bool(_NOD.fullmatch(_plain(text))) or praises(text)


def _plain(text: str) -> str:
    return normalise(text).strip(" .!")
