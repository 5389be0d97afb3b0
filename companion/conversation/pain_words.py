"""Hearing pain in whatever words it is typed, also misspelt, in capitals, or in the middle of an answer.

A false alarm costs one tap ("Did something hurt?"); a miss may cost a back. So everything that is neither
clearly ordinary nor clearly denied is heard. The order of decision:

1. The text is normalised and cut into words; ``. ! ? ;`` and a new line end a sentence, a comma a clause. A
   word nobody knows that lies one slip from a word of pain becomes that word ("hrut", "tinlging"), unless it
   is a real word of its own (``REAL_WORDS``: "paint", "hunt").
2. ``ORDINARY`` wording that only sounds like pain is taken out ("painful to admit", "pain: none").
3. Every ``SURE`` and ``UNSURE`` pattern that matches is a hit.
4. Each hit is looked at where it stands:
   a. denied before it ("no pain", "didn't feel any pain"): dropped. Only small words (``BETWEEN``) may stand
      between the denial and the hit, so "didn't go well, hurts" is no denial. A denial by halves ("doesn't
      hurt much", "no pain until the bottom", "don't think it hurts") leaves it unsure.
   b. training soreness with its cause and no joint or back in it ("quads sore from monday"): dropped;
      other soreness is sure when it names the back or a joint, otherwise unsure.
   c. long ago, asked or supposed ("hurt last year", "is it meant to hurt?", "if it hurts"): unsure.
5. The strongest hit left decides: YES, then ASK.
6. With none left, "the left doesn't hurt but the right does" (``ELLIPSIS``) is unsure; and so is, while the body
   works, a clause that names a part of the body with a word that is not ``EVERYDAY`` ("my knee is narky"), or
   that part alone with a cry ("stop, my back"). Otherwise NO.

Patterns, one a line: ``a|b`` either word, ``<group>`` any word of a group, ``x?`` may be left out, ``~`` up
to three words with no denial among them, ``$`` the end of a clause, ``,`` a comma, ``¿`` a question mark, ``!``
an exclamation mark. A line set further in goes on with the one before. To teach a new wording, add a line to
the table whose comment fits. The words and the rules are the project's own (choice, no source).
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from enum import Enum
from functools import lru_cache
from typing import NamedTuple

from rapidfuzz import process
from rapidfuzz.distance import OSA

from companion.conversation.phrases import LONGEST_READ, normalise


class Pain(Enum):
    """What a reply says of pain: nothing, perhaps something (ask "Did something hurt?"), or yes."""

    NO = 0
    ASK = 1
    YES = 2


GROUPS = {
    "joint": """
        back backs spine spinal lumbar hip hips knee knees ankle ankles neck disc discs disk sacrum sacral
        si tailbone coccyx groin shoulder shoulders elbow wrist rib ribs achilles pelvis lowback patella
        kneecap""",
    "backs": "back backs lowback spine disc disk",
    "limb": """
        leg legs thigh thighs shin shins calf calves foot feet toe toes heel arm arms hand hands finger
        fingers bum butt buttock glute glutes cheek""",
    "muscle": """
        hamstring hamstrings hammy hammies ham hams quad quads quadriceps adductor adductors abductor
        psoas abs ab core trap traps lat lats pec pecs bicep biceps triceps erectors muscle muscles
        oblique obliques piriformis""",
    "body": """
        <joint> <limb> <muscle> saddle crotch genitals groin side sides head stomach chest belly jaw face""",
    "my": """
        my the this that a an his her your mine one me both left right lower low upper inner outer front""",
    "pain": "pain pains painful painfully paining pained hurt hurts hurting hurty",
    "hurt": """
        <pain> numb numbness tingling tingle tingles tingly twinge twinges pinch pinching pinches <sore>""",
    "sore": "sore soreness sorer achy ache aches ached aching achey achiness",
    "feel": "feel feels felt feeling feelin feelings",
    "none": "none no nope nah nil nothing zero 0 0/10 nada zilch nowhere",
    "nil": "none nil nothing zero 0 0/10 nada zilch nowhere",
    "noise": "pop pops snap crack crunch tear rip ping twang clunk thunk",
    "noised": """
        popped snapped cracked crunched tore ripped pinged twanged clunked ruptured popping snapping
        tearing""",
    "ruined": """
        fucked fuck fked fkd effed messed screwed buggered knackered busted bust wrecked jacked blew blown
        ruined trashed damaged tore torn strained wrenched jarred sprained tweaked popped dislocated
        injured twinged herniated ruptured snapped broke broken cricked""",
    "odd": """
        weird odd off funny strange wrong iffy sketchy dodgy bad horrible awful nasty rough crap shit
        scary worse""",
    "cursing": """
        ah ahh oh god gosh jesus christ fuck fck fuk shit damn dammit hell omg crap argh bloody wow woah
        whoa help ooh ooft oof aw aww eek
        yikes ouch ow crikey agh ugh urgh wtf ffs bugger bollocks ooo aah""",
    "when": """
        second sec time night week weekend month months year years summer winter spring autumn season
        session workout set rep monday tuesday wednesday thursday friday saturday sunday""",
    "day": """
        monday tuesday wednesday thursday friday saturday sunday mon tue tues wed thu thur thurs fri sat
        sun mondays tuesdays wednesdays thursdays fridays saturdays sundays yesterday yesterdays weekend""",
}

# Wording that only sounds like pain; taken out before anything is looked for. "-> word" leaves that word.
ORDINARY = """
    painful|painfully|pains|pained|hurt|hurts to|me? to? admit|say|confess|watch|read|hear|remember|write|lose
    painful to|me? admit|watch|see|read|look|hear|say
    painfully slow|obvious|aware|shy|boring|honest|early|long|average|unfit|cold|weak|clear|bad|inflexible|
        awkward|quiet
    hurt|hurts|hurting|bruised|wounded my|the|his|your ego|pride|feelings|brain|wallet|soul|vanity
    ego|pride|feelings|brain|wallet is|are|was|got|feels? a? bit? hurt|hurts|hurting|bruised|wounded|painful|
        sore
    hurt|hurts feelings
    no pain no gain|gains
    pain in the ass|arse|backside|bum|butt|neck|rear to
    be|being|been|such|what a pain $
    im|youre|hes|shes a pain
    be|being|such|what a|of? pain in the ass|arse|backside|butt|neck|rear
    a real|bit|right|proper|huge|total|royal? of? a? pain trying|getting|setting|working|figuring
    a real|bit|right|proper|huge|total|royal? of? a? pain to set|read|use|film|measure|find|put|see|type|park|
        open|charge|sort|clean|line|prop|watch|arrange|track
    cant|couldnt|wont|wouldnt|doesnt|not|dont hurt to ask|try|check|look|see|have|be|do|add|go|get|give
    hurts|hurt|hurting is|was my|the ego|pride|wallet|feelings
    pain|hurt|ache|hurts|injury|symptom|niggle|twinge free
    painless|painlessly|painfree|painstaking|painstakingly
    painful truth|how|lesson|reminder|viewing|reading|confession|experience
    setting|filming|reading|finding|getting|using|holding|measuring ~ is|was a pain
    doms ~ killing me -> doms
    free|freedom of|from any? <hurt>
    <hurt> level|levels|score|rating|scale? is|was|at|still|now|today|there? ,? <nil> ,? out? of? 10|ten?
        today|now|here|atm|anywhere|whatsoever|so? far? $
    not|isnt|wasnt|hasnt|havent|arent|aint|never been|feeling|totally|completely|entirely|exactly|quite|fully|
        really? pain|symptom free -> pain
    not|isnt|wasnt|arent|aint|never totally|completely|entirely|exactly|quite|fully|really? painless|painfree
        -> pain
    no longer pain free -> pain
    no longer painless|painfree -> pain
    wouldnt|cant|couldnt ~ painless|painfree -> pain
    <hurt> ¿ <none>
    <hurt> ¿ no idea|clue|joke|doubt|kidding -> hurt ¿
    <hurt> ¿ dont|didnt know|think|like -> hurt ¿
    pain|pains|numbness|tingling|pinch|soreness|twinge|twinges|cramp , <none> $
    <hurt> ¿ dont|doesnt|didnt|never
    <hurt> ¿ not at
    no|zero|without <feel>? aches or|and pains -> no pain
    no|not longer|more -> not
    none of it|this|that|them|these|those -> nothing
    no part|bit|bits|side of it|this|that|them -> nothing
    at no point|time|stage -> never
    lack|absence of -> without
    not gonna|going to? lie
    no doubt|lie|joke|kidding|question|wonder|surprise|denying|idea|clue|matter
    cant|wont|wouldnt|couldnt lie|deny
    not|no to? mention
    cant|couldnt|cannot feel|notice|detect|sense|find any? real|sharp|actual|proper? <hurt>
    cant|couldnt|cannot|dont|didnt feel <my>? <my>? <body> move|moving|moved|round|rounding|tuck|tucking|lift|
        press|flatten|change|bend|shift|arch|work|working|fire|firing|activate|engage|engaging|stretch|
        stretching|much|contract
    fine|ok|okay|good|better|great|alright|healed|sorted|grand|normal now|today|since|again|nowadays ->
        recovered
    mind|brain numbing|numbingly
    numb to|bum? it|that|waiting
    take|have|had|took|having|taking|another a? stab
    stab|stabs at
    look|looks|looking|looked|be|stay|stayed|keep|dress|looks sharp
    image|picture|video|photo|film is|looks? sharp
    am|pm|oclock sharp
    at 5|6|7|8|9|10|11|12 sharp
    sharp turn|edge|corner|corners|angle|focus|image|dressed|inhale|exhale|breath|looking|minded|pencil
    pinch of
    at|in a pinch
    electric bike|scooter|car|heater|fan|scales|toothbrush|guitar
    tweak|tweaked|tweaking|tweaks my|the|a|some|few|little|bit|it? of? my|the? stance|setup|set|form|settings|
        angle|phone|camera|program|programme|plan|grip|width|tape|technique|position|height|shoes|routine|
        answer|number|numbers|placement
    shooting|shoot|shot|shoots it|this|that|a|the|my|some|another? video|videos|film|footage|clip|vertical|
        portrait|landscape
    shooting|shoot|shot|shoots it|this|that? from the|a? side|front $|now|again|today
    burn|burned|burning|burnt calories|fat|toast|dinner|tongue|mouth
    burned|burnt out
    feel|feeling|good|nice|proper the|that|a? muscle|quad|glute burn
    feel|feeling|felt the burn $
    feel|feeling|felt the burn in|on my|the? quads|legs|thighs|glutes|abs|core|muscles
    a real|bit|right? of? a? pain to hold the|my phone|camera|tape|stick|ipad
    quads|legs|thighs|glutes|abs|core|muscles|quad|lungs are|is|were|on|feel|a|bit|really|were|proper? on|a|
        bit|really|absolutely? burning|burn|burned|fire|screaming
    sting|stings like? a? bee
    injury|injuries prevention|history
    pain|hurt cave|locker
    french|bread|au pain
    pain au
    growing pains
    dead bug|bugs|lift|lifts|lifting|hang|hangs|tired|easy|straight|centre|center
    strain gauge
    blood pressure|test|tests|work|sugar
    weight ~ going|goes|went|shifts|shifted|moves|into ~ foot|feet|toes|heel|heels|leg
    phone|stick|broom|broomstick|tape|tripod|camera|ipad|tablet|band has|just|keeps|kept? fell|fallen|falling|
        falls|slipped|snapped|cracked|popped|tipped|dropped|broke over|off|down|out|up?
    click|clicks|clicked|clicking|creaks|cracks|creaking|cracking|popping|pops|clunks ,|but|with|and|though? ,?
        no|without|not|painless any? pain|painful|sore|hurting|hurt
    painless click|clicking|clicks|pop|popping|crack
    crack on|at|open
    head|eye strain|fuzz
    flare|flared|flaring out
    fell|fallen|fall for|behind|off the|track|wagon|back into|through
    ill|will|would stop|rest|pause|quit|shout|say|yell|message|text ~ if|when|once it|anything|something|that|
        i|my|there ~ <hurt>
    tell|let|message|text you|u ~ if|when|once it|anything|something|i|my|there ~ <hurt>
    stop if|when|once it|anything|something|i|my|there ~ <hurt>
"""

# Sure, and "no" or "without" before it denies it: things one has or not.
SURE_THINGS = """
    pain|pains|painful|painfully|paining|pained|hurt|hurting|hurty|agony|agonising|agonizing|excruciating
    throbbing|throb|stinging|tinglyness|tingliness|tingelly|intolerable|stabbing|tingles|unbearable|burny|
        twinge|twinges|twinging|twingey|numb|numbness|numbing|tingling|tingle|tingly
    zing|zings|zinger|zap|zaps|spasm|spasms|spasming|sprain|sciatica|sciatic|backache|zinging|radiating|
        radiates|radiated|pinsandneedles|pinsnneedles|electrocuted|injured|stinger|lumbago|whiplash
    pins|pin and|n|or|an|in? needles|needle
    sharp|shooting|stabby|jabbing|searing ~ <feel>|sensation|twinge|pinch|sting|jab|stab|ache|jolt|one|
        something|catch|burn|poke|tug
    sharp|shooting|stabbing|stabby|jab|jolt|burning|burn ~ in|at|on|from|through|down|into|up|across|around|
        behind|under my|the|left|right|lower|a|one|both? <my>? <my>? <body>
    <joint> sharp|stabby|stabbing|burning
    electric|electrical shock|shocks|jolt|jolts|zap|zaps|zing|current|<feel>|sensation|bolt|buzz|through|down|in
    dead leg|legs|foot|feet|arm|toe|toes
    trapped|pinched|squashed|irritated|compressed nerve
    nerve pain|pinch|zing|twinge|trapped|pinched
    slipped|bulging|bulged|herniated|blown|popped|prolapsed disc|disk|discs
    disc|disk|discs ~ slipped|bulging|bulged|herniated|out|popped|prolapsed
    pulled|torn|strained|pull|tearing|ripped|ripping a|my|the? muscle|hamstring|hammy|quad|calf|groin|back|
        glute|adductor|ligament|tendon|something
    weakness in|of|down my|the|one|both? <my>? <body>
    <limb> weakness
    chest ~ tight|tightness|pressure|heavy|heaviness|crushing|squeezing
    tight|tightness|pressure|heaviness in|on|across? my|the? chest
    muscle|back|calf|hamstring|groin|hip|neck tear|strain|spasm
    owie|owies|ouchie|ouchies|stabby|jabbing|smarting|crick|cricked|fizzing
    charlie|charley horse
"""

# Sure, and "no" before it is only a word of its own ("no my back went"): things that happen.
SURE_EVENTS = """
    ouch|ow|oww|owch|owww|yowch|yeouch|yeowch|owwie|outch|ouchy|aua|autsch|aie|booboo|ooyah|ooya|ouille|ahia|
        ohia|aray|ajaj|auc|ała|ай|ой|urts|urt|urting|hurts|stings|stung|throbs|throbbed|tingled|sprained
    twinged|tweaked|tweaking|tweak|tweaks|zinged|zapped|spasmed|spasmd|wrenched|jarred|herniated|ruptured|
        dislocated|paralysed|paralyzed
    stabs|stabbed|jabbed|smarts
    <hurt> ¿ yes|yep|yeah|yup|ya|y
    never felt|had|feel|known ~ <hurt> like this|that|it
    there goes|went my <my>? <joint>
    my <my>? <joint> !
    <feel> my <my>? <joint> go|give $|when|and|in|out|pop
    <feel> my <my>? <joint> pop|snap|crack|slip|twinge|tweak|pull|tear|seize|lock|spasm
    cant|couldnt|cannot|barely|hardly|struggling|struggle to? feel any|half|most|anything|nothing? of|in|
        between|around|inside? <my>? <my>? <my>? <body>
    no|lost|losing|lose|reduced|loss any|all|the|of|my? feeling|sensation|sense in|down|below|from|$
    cant|couldnt|dont feel it|anything|nothing ~ below|down|from|foot|leg|toes
    cant|couldnt|dont feel ~ down there
    <limb>|<joint> ~ went|gone|going|goes|fell|falling|fallen|is|are|feels|feel|felt|still|all ~ dead|asleep|
        numb|sleep|tingly
    leg|foot|arm|toe|hand|thigh|calf ~ dead|asleep
    heard|herd|felt|hear|feel|was|had|got|made|hearing|feeling ~ <noise>
    a|loud|big|massive|audible|huge|definite|nasty|little|small|sudden <noise> $
    <noise> in|from|at|down|inside my|the|left|right|lower? <my>? <body>
    something|somethings ~ <noised>|gave|pulled|tweaked
    something|somethings ~ went|gone|go|give|going $|in|pop|bang|twang|crack|ping
    it|that|just|muscle ~ popped|snapped|tore|ripped|twanged $
    <body> ~ <noised>
    <noised> my|the|something|a|in? <my>? <joint>|<muscle>|something|calf
    <backs>|neck|hip|knee|hammy|hamstring|calf|groin|shoulder|ankle just|has|have|totally|completely|kinda|
        sorta|kind|sort|of|literally|really|suddenly|fully|is|s|nearly|almost|bloody? just|totally|completely|
        kinda|suddenly|really? went|gone|goes|gave|going $|again|on|pop|bang|crack|twang|ping|snap|spasm|and
    <backs>|hip|neck|knee|shoulder|leg|legs|knees|ankle ~ gave|gives|giving|given|seized|seizes|seizing|seize|
        locked|locking|locks|cramped|buckled|buckles|buckling|spasmed|spasm|collapsed way|out|up|on|$
    <backs>|hip|shoulder ~ went|gone|is|goes|was|going|popped|slipped|came out? $|again|on
    hips|knee|knees ~ went|gone|goes|going|popped|slipped $|again|on
    <backs> ~ went|gone|go|goes into
    seized|seizing|seizes up
    threw|throw|thrown|throwing|put|putting|puts|popped <my>? <my>? back|neck|hip|shoulder|knee ~ out
    did|done|doin <my> <my>? <joint>|hamstring|hammy|quad|calf ~ in $|again|good|properly|proper
    did|done|doin <my> <my>? <joint>|hamstring|hammy|quad|calf again|$|properly|good|bad|there
    <backs>|hip|hips|knee|knees ~ had|has|have it|gone|had $
    <backs> ~ done|fucked $
    did|done|doing|do something|damage ~ to|in
    did|done myself a|an some? mischief|injury|damage
    <ruined>|hurt up|out|in|off? <my> <my>? <my>? <joint>|hamstring|hammy|quad|calf|groin|glute|adductor|
        muscle|leg|toe|shin
    pulled <my> <my>? <my>? back|groin|neck|hamstring|hammy|quad|calf|glute|adductor|muscle|shoulder|rib
    <ruined>|hurt|pulled|twisted|rolled|tweaked something|it|a|myself|meself $|in|again|bad|badly|there|i
    twisted|rolled|sprained|strained|pulled|torn|broken <joint>|hamstring|hammy|quad|calf
    <joint>|hamstring|hammy|calf ~ broke|broken|busted|torn|wrecked|blew
    is|its|was|been torn|pulled|strained|sprained
    twisted|twist|rolled|rolling <my> <my>? ankle|knee|back|neck
    twisted something|it
    pulled something|it $
    <joint>|<limb> ~ is|feels|feel|are|s|felt|be|in|totally|completely|just ~ fucked|fkd|fked|screwed|buggered|
        wrecked|shot|broken|killing|busted|ruined|paralysed|agony|screaming|inflamed|jacked|bits|pieces|floppy|
        dumb
    <backs>|knee|hip is|feels|was? <ruined>|toast|wrecked|shot
    in bits|pieces|agony|tatters|trouble
    killing|killin|kills me|us
    kills $
    <joint> kills|killing
    shooting|shoots|shot|radiating|radiates|radiated|travelling|traveling|travels|travelled|spreading|spreads|
        spread|running|runs|ran|going|goes|went|coming ~ down|into|up|through|along to|into? <my>? <my>? <my>?
        leg|legs|thigh|calf|hamstring|foot|toes|toe|shin|arm|bum|butt|glute|spine|knee
    shooting|radiating|radiates|shoots down|up|into|through|across
    feeling|zing|buzz|buzzing|fizzing|electric|electricity|current|lightning|fire|hot|cold|warm|heat|burning|
        burn|burns|prickling|prickly|something|jolt|shock|weird ~ down|into|through|up <my>? <my>? <my>? leg|
        legs|thigh|calf|hamstring|foot|toes|toe|shin|arm|bum|butt|glute|spine
    burns|burning|burn|burned|burnt|fire ~ <joint>|foot|toes|calf
    <joint>|foot|toes|calf|leg ~ burning|burns|fire|burned|burnt
    hot poker|knife|needle
    needle|needles|needling like|feeling|sensation|down|through|all
    slipped|popped|bulged|burst a|my|another? disc|disk
    flared my|it|the ~ up|back
    cant|cannot|couldnt|dont|not feel when|it|anything i|when|down
    not|dont|didnt|doesnt feel my <my>? foot|toes|toe|leg|legs|feet
    like its|it is? not|isnt there|mine|attached
    no|lost control of|over ~ bladder|bowel|bowels|leg|legs
    <joint> ~ went|goes|going <noise>|crunch|crack|pop
    like a? ~ knife|dagger|poker|stabbed|stabbing|shocked|electrocuted|lightning|nail
    knife|dagger|nail ~ in|into|through ~ <body>
    flared|flaring up
    duele|duelen|dolor|dolore|douleur|schmerz|schmerzen|weh|pijn|boli|bolno|dor|doi|vondt|больно|болит|боль|痛い|
        痛|疼|疼痛|sattuu|itai|sakit|больна|acı|agri|doendo|doliendo|schmerzt|zeer
    fait|fa|jai|ai|au|avoir mal|male
    mal|male au|aux|alla|al|a|de|di|nella
    gor|har ont
    ont i
    fa|fait|faire male|mal
    tut weh
    cant|couldnt|cannot|unable|struggling|struggle|hardly|barely to? move|walk|straighten|stand|sit|get|put up|
        straight|on|properly|upright|weight|off|$
    cant|cannot|couldnt sit down
    cant|couldnt|cannot straighten|move my? <backs>|hip|neck|leg|legs|foot|toes
    cant|couldnt|cannot|hardly|barely|struggling to? walk|breathe
    peed|wet|pissed|shat|soiled|weed|pooed myself
    cant|couldnt|cannot|not able|to? pee|wee|poo|urinate
    lost|lose|losing control of? my? bladder|bowel|bowels
    trouble|problem|problems|difficulty|hard|unable|cant to? hold? my? peeing|weeing|pee|wee|bladder|urine
    wet|peed|pissed|weed my? self|myself|pants|trousers|shorts|leggings
    ambulance|paramedic|paramedics
    was|feels|felt|feeling|really|very|so|bit|too|quite|thats|pretty|super sharp
    it|that|this|<body> huts|hunts|hut|hunt|hust
    <cursing> ,? my|me <my>? <my>? <joint>|<limb>|<muscle> $
    not|isnt|aint|more|worse just? ~ than a? stretch $
    foot|feet|toes keeps|keep|kept|is? drop|dropping|dragging|slapping|slaps|flopping
    foot|toes ~ flop|flops|floppy|limp|lifeless
    <limb> went|gave|goes|go ~ under|way
    cant|couldnt|cannot lift|raise|pull|hold|move|wiggle my|the foot|toes|toe
    <limb> wont|doesnt|not|isnt|dont|arent|stopped|cant hold|holding|support|work|working|move|moving|respond|
        responding|lift|lifting
    <limb> ~ sleep|sleeping
    no|lost|losing strength|power in <my> <my>? <limb>
    <limb> ~ went|gone|going ~ weak
    <joint>|<limb> ~ give way|out
    <limb> has|have|with|got? no|zero|little power|strength
    i|just|have|ive peed
    peeing|wetting myself
"""

# Soreness; what it means depends on the cause and the place (4b).
SORE = """
    <sore>
"""

# Perhaps pain; "no" before it denies it.
UNSURE_THINGS = """
    discomfort|uncomfortable|uncomfy|unpleasant|niggle|niggles|niggly|niggling|pinch|pinches|pinching|pinched|
        pinchy
    cramp|cramps|cramping|cramped|crampy|charley|tender|tenderness|sensitive|creaky|creaking|jolt|swelling|
        swollen|swelled|bruise|bruised|bruising
    burning|headache|migraine|injure|injuring|painkiller|painkillers|ibuprofen|paracetamol|irritation|irritated
    inflamed|inflammation|aggravated|aggravating|strain|strained|straining|sting|stab|knife|prickly|prickling|
        prickles|buzzing
    grinding|crunching|crunchy|clicking|clunking|clunk|suffering|suffer|wince|winced|wincing|gyp|jip|gip
    dizzy|dizziness|faint|fainted|fainting|lightheaded|woozy|nauseous|nausea|bleeding|blood|emergency|nips|
        nipping|nippy|impinging|impingement|leaking|hospital|fizzy|fizzing|headrush
    light headed
    collapsed|stitch|kink|severe|yelped|yelp|flinch|flinched|whimpering|nagging|gnawing|pulsing|pounding|
        biting|backache|bachache|sharpness|jolts|twingle|ants
    current|ants|needles in|down|up ~ leg|foot|toes|calf|arm
    n/10 in|on|at|for|down? my|the? <my>? <joint>|<limb>
    trickling|trickle down
    a and e
    hot wire
    ripping|tearing|popping|snapping|grinding|crushing <feel>|sensation
    in tears
    bladder|bowel|bowels|incontinent|incontinence|palpitations|breathless
    short of breath
    cold sweat|sweats
    heart ~ racing|pounding|fluttering|skipping|funny|weird
    pins in my|the? foot|leg|toes|calf|arm|feet|hand
    boo boo
    sharp|bad|stabbing|shooting|some|strong pai|paid|pair|main|gain|spain|pine|pans|pails|plains
    son of a bitch|gun
    tears in my? eyes
    weak|weaker <my>? leg|foot ~ suddenly|sudden
    pin|pan|pine|plain|pai|pane|pail|rain|paint in|on|at ~ <joint>|<muscle>|leg|foot|calf
    sharp|bad|some|strong pin|pan|plain|paint|pane|rain
    locked|stuck|jammed <my>? <joint>
    😩|😵|😢|😥|😰|🤬|😱|🆘|💢
    🔥|💣 <joint>|<limb>
    <joint>|<limb> 🔥
    lightning bolt|in|down|through|strike
    flare|flair up|ups
    electric|electricity
    weak leg|foot|legs
    🤕|😖|😣|😫|🚑|⚡|💥|🩹
    leaked|pricks|pricking|bites|jaggy|gouging|torture
"""

# Perhaps pain, as something that happens.
UNSURE_EVENTS = """
    argh|aargh|arrgh|arghh|agh|aaah|aah|gah|oof|ooof|yikes|ooft|eesh|oww
    <feel> it|that|this|something ~ in|at|across <my>? <my>? <my>? <joint>|buttock|bum|butt
    something ~ in|at <my>? <my>? <my>? <joint>
    got|gets|caught|gets|hits my <my>? back|neck|knee|hip $
    <backs> went|gone when|while|as|before|halfway|mid
    my <my>? <joint> cant take|handle|do|cope
    because|cos|cause|coz|due|bc of|to? my|the <my>? <joint>
    <joint> made me stop
    bothering|bothers|bugging|irritating|irritates|annoying|hitting|hurt my|the <my>? <joint>
    catching|catches|nipping|grabbing|digging|jamming|biting in|at|into ~ <joint>
    bother|trouble|problem|problems|issue|issues|grief with|in|from ~ <joint>
    <joint> says|said|saying|screams no|nope|stop
    need|see|call|get a|my|the? doctor|doc|medic|paramedic|physio
    cant|cannot|couldnt bear|stand it|this|that
    got|gets|get|caught|catches|grabbed|grabs|nipped|nips me ~ in|at <my>? <my>? <joint>|<muscle>|calf
    pressure|pull|pulling|kink|something in ~ back|spine|neck|knee
    nip|nips|nipped|tug|catch|grab|poke|jab|spike in|of|at ~ <joint>
    <joint> ~ bothering|bothers|bothered|bugging|bugs|playing|plays|acting|complaining|complains|barking|
        screaming|angry|unhappy|grumbling|grumbles|moaning|hates|protesting|protests|catching|catches|caught|
        nagging|troubling|trouble|stuck|jammed|gripping|grabbing|grabby|twitching|giving|gives|grumpy|
        sensitive|inflamed|irritable|annoyed
    <joint>|<limb> ~ clicked|clicks|clicking|cracks|cracking|creaking|grinding|grinds|clunks|clunking|pops
    <joint> ~ is|feels|feel|felt|are|was|s|a|bit ~ weird|odd|funny|strange|wrong|iffy|sketchy|dodgy|bad|
        horrible|awful|nasty|rough|worse|knackered|tender|stiffening|unstable
    <joint> is|feels|feel|felt off $
    <joint> is|feels|feel|felt|are? isnt|not|doesnt|didnt|aint ~ right|good|happy|great|like|liking|enjoying
    not happy ~ <joint>
    heard ~ click|clicks|crackle|cracking|creak
    should|shall i be? stop|worry|worried|concerned|rest
    should|shall i ~ continue|carry|keep going|on
    hit|banged|bumped|smacked|bashed|whacked|stubbed|clipped <my> <my>? <body>
    dropped ~ on <my> <my>? <body>
    fell|fallen|falling|fall over|down|off|backwards|forward|forwards|on|onto
    passed|blacked|pass|black|passing out
    head rush
    saw stars
    seeing stars
    cant|couldnt catch my? breath
    cant|couldnt|cannot bend $|down|over|forward|forwards
    wake|wakes|woke|keeps me up
    took|taking|take|need|popped ~ painkillers|ibuprofen|paracetamol|tablets
    limp|limping|hobbling
    something ~ moved|slipped|slid|shift|move|clicked|stuck|caught
    red flag|flags
    dying ~ <joint>
    call|get|fetch someone|somebody|help|911|999|112
    <limb> has|have|is|are|s|just|all? gone $
    everything|vision ~ black|went|blurry|blurred|spinning
    cant|couldnt|cannot ~ toilet|loo|bathroom
    no|lost feeling|sensation when
    numb when
    room|head ~ spinning|spins
    feeling hasnt|isnt|not ~ back
    <joint>|<limb> wont|doesnt|cant|didnt let|allow|want|like|cooperate
    its|it|thats|is|getting|gets|got|much|even|way worse $|now|again|every
    i ~ should|better|ought to? stop
    not|isnt|wasnt|doesnt ~ safe
    dont|didnt|not like ~ feel|felt|feels|feeling
    jerked|yanked|jolted|overstretched|overextended|hyperextended|jarring|wrenching|torqued|bulge|overdid
    it|that|just pinged|pinging|twinged|crunched|cracked
    hut|huts|hunts|harts|hart when|in|at|bad|a|like|so|my|badly|too|really|every
    it|that|this|<body> does|really|still|just|kinda|always huts|hut|hunts|hunt|harts|hart|hearts
    done|did something $|again|bad
    done|did myself in
    something|it|that ~ let go
    it|that|this just? went|gave $
    worse now? ,? my <joint>
    getting|got|gotten worse
    its|it|thats|is worse $
    dying , my <joint>
    <joint> ,? help
    going|go to hospital|er
    it|that|this|<joint> hearts|hears|hurls|hurl|heart|hunts|hart|harts
    something pooped|poped|pooping|pup
    no|not|i feel ~ foot|leg|toes
    <joint> <joint>? make|makes|made|making ~ crack|noise|sound|pop|click
    think|thought ~ did|done <my> <joint>|hamstring|calf|groin
    my|whole <my>? <joint> ~ worse
    worse ~ my <joint>
    not ok|okay|fine|good ,? my <my>? <joint>
    not|isnt just? a stretch $
    <joint> ~ done $
    cant unbend
    cant|couldnt|cannot get back up
    need|had to bail|stop|quit|rest|drop|rack ,? ~ <joint>
    bailed|stopped|quit|dropped , ~ <joint>
    legs|thighs|quads|glutes|arms ~ dead|asleep
    <limb> ~ weak
    <limb> ~ is|feels|feel|felt|are|gone|went ~ dead
    cant|couldnt|cannot ~ breath|breathe
    im|am broken|bust|busted
    bone on bone
    did ~ pop|snap|crack|click|twinge|pinch|sting
    too much for|on my <my>? <joint>|<limb>
    hard|tough|rough|bad|heavy on my <my>? <joint>
    it|its|thats gone|went again
    dare not move
    dont dare
"""

# Too vague, or as likely history, to ask about unless the body is at work.
VAGUE = """
    <feel> something
    <feel> ~ <odd>
    <feel>|look|seem|seems to? be? not|isnt ~ right|good|great|normal|ok|okay|well
    doesnt|didnt|dont|isnt|wasnt|not|doesn|never feel|felt|feels|feeling|quite|too|very|so|all|really|that|
        right|good|great ~ right|good|great|normal|ok|okay|happy|comfortable|nice|pleasant|well|myself $
    not comfortable|comfy
    sharp
    weird|odd|funny|strange|iffy|dodgy|bad|horrible|awful|nasty <feel>|sensation|pull|tug|twist|spot|twitch
    horrible|awful|nasty|weird that|was $
    not|wasnt nice|pleasant|fun $
    didnt|dont like that|it|this $
    bit|little|slightly|kinda|quite weird|odd|off|strange|iffy|dodgy|sketchy
    <feel> it|that|this there|here
    not|isnt|wasnt quite|really right
    <joint> ~ not sure ~ good
    😬|😭|😕
    fuck|fucks|fuckk|shit|shite|christ|jesus|ffs|wtf|omg|yow|eek|ay|ayy|au|ai|eeek|ahhh|aaaah|ugh|ughh|urgh|
        ahi|uy|grr|grrr|☹|🙁|😞|😓
    <cursing> , my? <joint>
    scared|worried|panicking
    no|not good $
    got me $
    really|too|so|very|thats|bad bad $
    nasty|horrible
    cant|couldnt|cannot go|carry|continue on?
    something got|grabbed|bit|caught me
    got me
    not|isnt|wasnt ~ right|comfortable|comfy $
    something|somethings ~ off|wrong|weird|odd|funny|up|not|isnt|wasnt|happened
    is that|it|this ~ normal|ok|okay|bad|meant|supposed|expected ¿
    meant|supposed to feel
    bit|little|slightly|kinda ~ worried|concerned|scared
    trapped|pinched|a|my nerve
    nervy
    bad|dodgy|dicky|old|trick|iffy|gammy|crook|cranky|grumpy|gippy|wonky back|hip|hips|knee|knees|ankle|disc|
        shoulder|neck
    disc|disk|nerve|injury|injuries
    shooting
    <feel> my <my>? back|neck|knee|spine $|a|too|again|now|more|there|every
    had|have to lie|sit down
    that did it
    thats done it
    bad one
    same spot|place again
    popped|snapped $
    ahhh
"""

# What people say of the back, the hips and the legs when nothing is wrong. While the body works, a clause that
# names one of them with a word from outside this list is asked about: a catch for wording no table has.
EVERYDAY = """
    i im ive id ill you youre we he she they them it its itself is isnt are arent was wasnt were am be been
    being do does did doing done has have had having will would can could cant couldnt should may might must get
    gets got getting go goes going went gone come comes came coming stay stays stayed staying keep keeps kept
    keeping start starts started starting begin begins began move moves moved moving stop stops stopped round
    rounds rounded rounding tuck tucks tucked tucking tilt tilts tilted bend bends bent bending lift lifts
    lifted lifting press presses pressed pressing push pushes pushed pushing flatten flattens flattened arch
    arches arched arching curve curves curved curving fold folds folded folding turn turns turned turning rotate
    rotates rotated shift shifts shifted shifting rise rises rose raise raised raises reach reaches reached
    touch touches touched drop drops dropped lower lowered sit sits sat sitting stand stands stood standing lie
    lies lay lying squat squats squatted squatting hinge hinged hold holds held holding brace braced use used
    using see saw seen look looks looked show shows filmed film felt measure measured put puts take takes took
    taking change changes changed make makes made let lets lock locked pull pulls stretch stretches stretched
    stretching stretchy relax relaxed help helps cave caves caved caving travel travels slide slides slid
    straighten straightened straight pointing point points pointed spread work works worked working fire engage
    engaged warm warmed train trained rest rested try tried need needs want wants know think say said mean means
    and or nor but so then when while as if because cos than that this these those there here where which what
    who how why in on off at to of for from with without by up down over under into onto out through between
    behind before after past near against across around along above below beside inside outside towards toward
    until till about during again also too still yet now just only even ever never always sometimes usually
    often maybe perhaps probably definitely really very quite pretty rather almost nearly bit little lot lots
    much more most less least some any all both each either neither every one once twice two three four five six
    seven eight nine ten eleven twelve few first second third last next same other another left right side sides
    front top bottom middle end half way deep deeper deepest depth low high higher parallel angle degrees degree
    deg cm inches inch wide wider narrow closer apart far further slow slower slowly fast faster early earlier
    late later soon sooner quickly long longer short shorter big small tight tighter stiff loose flat flatter
    neutral level good great fine ok okay easy easier hard harder clean smooth solid strong stronger better best
    well clear clearly normal usual nice happy comfortable free stable steady balanced tired shaking shaky
    wobbly sweaty hot fresh heavy light lighter heel heels toe toes floor ground wall bar stick broom broomstick
    tape box chair bench plate mirror phone camera video step stance position form shape range motion movement
    pressure hands palm knees set sets rep reps test tests time times day today yesterday morning minute minutes
    min mins week weeks number numbers cms metres yes yeah yep yup no nope nah not none nothing please thanks
    thank sorry mate lol haha tbh hmm um oh anyway though butt wink tail pelvis body weight bodyweight kg lb lbs
    back lumbar k flexible mobile inflexible limited restricted bendy gives give trouble issue issues problem
    problems curl curls extension bridge plank thrust leg legs machine shoulder width hip height knee kneecap
    hamstring hamstrings glute glutes sleeve sleeves wrap wraps belt shoes barefoot socks feel feels feeling
    mostly slightly somewhat roughly exactly evenly equal equally different symmetrical naturally fully
    completely totally hardly barely soft softer firm firmly upright vertical nearer close cross crossed forward
    forwards backward backwards sideways inwards outwards inward outward internal external rotation whole entire
    part parts area bits flexion crease joint spine muscles muscle my your a an the shot shoot shoots flexor
    flexors chest slip slipped slips weak weaker roll rolls rolled rolling pins safety skip skipped skipping
    pulled pulling pop pops track tracks tracked hit hits miss misses missed block blocked open opens opened
    limit limits cooked jelly hike hiked coach physio doctor says pump pumped meant supposed wrong like mad bum
    sag sagged sway swayed wobble wobbled line lines mop pipe whose recovered"""

# Training soreness: where it comes from.
CAUSES = """
    doms
    <day>
    from|after|since ~ training|gym|workout|session|squats|squat|squatting|deadlifts|deadlift|lunges|run|
        running|football|class|lifting|rdls|rows|cycling|ride|game|match|leg|hike|hiking|walk|pt|spin|rugby|
        tennis|exercise|sets|reps|cardio|monday|lunging|volume|benching|bench|pressing
    leg|squat|deadlift|push|pull|gym|training day|days|session|sesh|workout
    day|days after|later
    last <when>
    post workout|gym|training|exercise|squat|leg|run
    the other day
    training|workout|gym|muscle|delayed soreness|sore|ache|aches
"""

# Not now, or not known to be now.
PAST = """
    ago|yesterday|previously|formerly|once|historically|anymore|recovered
    last <when>
    used to
    years|months|weeks back|before|earlier|now
    in the past
    history of
    when i was|started|used|did|played
    as a kid|child|teen|teenager
    back in the|school|college|uni|university|winter|summer|spring|autumn|january|february|march|april|may|
        june|july|august|september|october|november|december
    in 2000|2001|2002|2003|2004|2005|2006|2007|2008|2009|2010|2011|2012|2013|2014|2015|2016|2017|2018|2019|
        2020|2021|2022|2023|2024|2025|2026
    a|the while|time back|ago
    the other day|week|night
    old
    this morning|week|month|year
    earlier this|in
    stopped hurting
    <pain> has|have|is|all|s|just? gone|went|eased|settled|cleared|passed|vanished|disappeared|faded
    no longer
    on <day>
    <day>
"""
NOW = """
    still|again|currently|today|presently
    right now
    came|come|comes|coming back
    now
    just <pain>
"""

# Asked about, feared or supposed rather than felt, when it stands shortly before the hit.
SUPPOSED = """
    if unless supposed meant should would might may gonna will whether until till case scared afraid
    worried worry fear avoid avoiding prevent risk causing cause expect expecting suppose normal could"""

# Denials. "no" denies a thing, "not" anything; "hardly" only halves it.
NO = "no zero 0 0/10 0.0 nil minus sans nay non noo"
WITHOUT = "without wo w/o"
NOT = """
    not isnt wasnt arent werent aint doesnt dont didnt hasnt havent hadnt never nothing nowhere none
    neither nor wont nobody nuffin nowt doesn didn isn wasn hasn haven don dosnt"""
HARDLY = "hardly barely scarcely shouldnt minimal minimally negligible"
UNABLE = """
    cant couldnt cannot not never unable hard impossible struggle struggled didnt wont dont doesnt difficult
    barely"""

# What may stand between a denial and what it denies. Anything else between them and it is no denial.
BETWEEN = """
    any or nor of at all kind kinds sort sorts type types hint trace sign signs bit a an single slight
    slightest least other new more further noticeable nerve sharp shooting stabbing burning form weird
    unusual obvious old extra even ever whatsoever actual sensation sensations anything anywhere one
    moment point dull sudden spreading radiating low associated related referred in on down around
    near <body> left right lower upper inner outer front both either"""
# Only in a list with "or": "no tightness or pain".
LISTED = """
    tight tightness stretch stretching stiff stiffness discomfort symptoms issue issues problem problems
    weakness pop pops clicking popping pulling swelling heat"""
BETWEEN_VERBS = """
    feel feels felt feeling have has had having get gets getting got been be being is was are were cause
    causes caused causing give gave gives giving me notice noticed noticing experience experienced
    experiencing seem seems seemed to from actually currently like also say detect sense report remotely
    to"""
# With these between, "no" is a word of its own ("no it hurts") and "not" denies only a thought of it.
OPEN = """
    i it its that thats this there theres my the your if id ive im think thought thinking know sure call
    called would believe say reckon what described describe when where because cos"""
# With these between, some is left: "not that painful", "no real pain".
DEGREE = """
    really real very too so much bad badly terribly particularly exactly quite overly super crazy massive
    massively huge hugely lot lots severe severely extreme extremely serious significant significantly
    major necessarily entirely completely totally always usually proper properly as"""
# After a denied hit these take half of it back: "no pain until the bottom", "doesn't hurt much".
AFTERWARDS = """
    much too bad badly lot anymore yet unless until till except excluding apart besides aside before than
    if barring unlike exactly really per"""
ELLIPSIS = """
    left|right|other|back|hip|knee|one side|one|leg|hip|knee? does|did|is|was|has $
    but ~ it|that|one|side|left|right does|did|has|is|was $
    only at|when|if|on|below|past|near|deep
"""

# Slips too far for the edit distance, or nearer to a word of their own.
SPELLINGS = {
    "hurt": "hrt hert hurrt jurt",
    "hurts": "hrts herts hurtz hurst",
    "pain": "pian payn pani oain paon pane pqin",
    "ouch": "uch ouhc ouc oucj",
    "numb": "numm nub",
    "back": "bak bck bakc bac",
    "tingling": "tingeling",
    "twinge": "twinj twing twindge",
    "sciatica": "siatica",
    "something": "smth sth summat smthing somthing sumthin",
    "no": "noo",
    "doesnt": "dosent dosnt doesent doenst dsnt doesn",
    "didnt": "dident didn ddint",
    "cant": "cnat carnt cnt",
    "and": "n",
    "feel": "fel feeel fele",
    "foot": "fot foto",
    "sore": "sre sor sair soer",
    "went": "wemt wnet wint",
}

# Words of the patterns that are put right when mistyped, besides the single words of pain and the joints.
MISTYPED = """
    without doesnt didnt hasnt havent nothing never feeling something needles pins popped popping snapped
    cracked shooting electric electrical twisted pulled muscle hamstring hamstrings hammy calf calves foot
    thigh buttock killing seized locked radiating travelling spreading running feel went heard stretch
    monday yesterday training session stopped sensation"""

# Words that count only as they stand: too many others lie one slip away.
EXACT = """
    ants bowel bowels boli bolno agri ahia ohia aray ajaj sakit zeer dolore urts urting weh ooft ooof eesh severe bulge
    biting nagging torqued yelped yikes kink stitch collapsed bites pricks pricking leaked gouging torture"""

# Real words one slip from a word of the tables.
REAL_WORDS = """
    aces acres acted aggregated angles arched arching array ashes bank banks bark barks blacks blending blond
    bloods bloom braised breeding brood buck bucks bunny burly bury burying butthurt cache caches calif calm
    camp campaign campaigns camped camping camps caves champ champs chick chunk clamp clamped clamping clamps
    clocking clung clunky cracker crammed cramming cranked crappy craps creamy creating cricket crock crump desk
    dick dielectric dink dint disco discus dish disks donor door duel duels dusk dwelling electrically
    electrician electronic emergence fait feed feeding fees felling finch fisk fizz flint font food fool fort
    fuel fueling fuzzy gender grain grin grinning groan grown hack hacks halting harding harming hast haunting
    hears heart heating heck herd herding herring hinting hippy hits hoard holt hops hospitable hospitals
    hosting hugging humming humping hunt hunting hunts hurd hurl hurling hurry hurrying hurtful hurtle hurtling
    hustling huts hutt inch inches inflated insure insured insuring invitation kneel knew lacked lain lamp
    leading leaning leaping leasing leaving licked lightening lighthearted lighting lima limb lime limo lisp
    locket lumber lump napping nappy naps necks needless nerdy newer nick nils noting opie owes paid pail
    painless paint paintball painted painter painters painting paintings paints pair
    paired pairing pairs panned panning pans pawn pawns peaking pelvic pens pickles pics pies pigs pimp pine
    pines pings pining pink pinks pint pints piss pitch pitched pitches pitching pits plain plains pooped
    pooping popper pouch propped propping pulley pulsed punch punched punches punching punchy radiate raining
    reel reeling render retraining rigs rims rips root rubs ruining scab scorer scrum selling sent shabby shard
    share shark sharpe shelled shelling shimmering shine shopped shore shouldered shouting sine sing singer
    singing sings sire sized slab slabs slapped sling slinging slung smart smelled smelling snapper snore sober
    sole sores spain spam spamming spelled spelling spice spines spins spiral spire spite spore stag stain
    stained staining stans star starting starts stat stats stays stepped stingy stink stinking stinks stint
    stints stomped stopper store strains strait string stringer stringing strings stub stubs stun stunt
    sufferings suffers sung surfer swab swapped swine swing swinger swinging swings swore swung tangle tanked
    teak tended tenders throes throws tickling tinder trailing traversing twine twinkle twinkling twister
    unbeatable unbreakable valves waist want welling welt wept west whispering winch winded winding wine winged
    winked winking winning woody wore wrists writ xing yankee yoghurt zinc zine zipped zips"""


class _Step(NamedTuple):
    """One place of a pattern."""

    words: frozenset[str]
    optional: bool = False
    gap: bool = False


class _Rule(NamedTuple):
    steps: tuple[_Step, ...]
    level: Pain = Pain.NO
    thing: bool = True
    sore: bool = False
    instead: tuple[str, ...] = ()


class _Hit(NamedTuple):
    start: int
    end: int
    rule: _Rule


_END, _QUESTION, _COMMA, _STOP, _SHOUT, _TAKEN_OUT = "$", "¿", ",", ".", "!", "·"
_SENTENCE_ENDS = frozenset((_QUESTION, _STOP, _SHOUT))
_MARKS = _SENTENCE_ENDS | {_COMMA}
_CLAUSE_ENDS = _MARKS | {"and", "but", "when", "so", "while", "then"}
_GAP = 3
_SENTENCE = 40


def _group(words: str) -> Iterator[str]:
    for word in words.split():
        for choice in word.split("|"):
            if choice.startswith("<"):
                yield from _group(GROUPS[choice[1:-1]])
            else:
                yield choice


def _rules(table: str, level: Pain = Pain.NO, *, thing: bool = True, sore: bool = False) -> Iterator[_Rule]:
    """The rules of a table, a line each; a line set further in goes on with the one before."""
    for line in re.sub(r"\n {5,}", " ", table).replace("| ", "|").split("\n"):
        if not line.strip():
            continue
        pattern, _, instead = line.partition("->")
        steps = tuple(
            _Step(frozenset(), gap=True)
            if part == "~"
            else _Step(frozenset(_group(part.removesuffix("?"))), optional=part.endswith("?"))
            for part in pattern.split()
        )
        yield _Rule(steps, level, thing, sore, tuple(instead.split()))


def _by_first_word(*tables: Iterator[_Rule]) -> dict[str, list[_Rule]]:
    index: dict[str, list[_Rule]] = {}
    for rule in (rule for table in tables for rule in table):
        first = rule.steps[0]
        if first.optional or first.gap:
            raise ValueError(f"a pattern must begin with a word: {rule.steps}")
        for word in first.words:
            index.setdefault(word, []).append(rule)
    return index


_NO, _WITHOUT, _NOT, _HARDLY, _UNABLE = (frozenset(t.split()) for t in (NO, WITHOUT, NOT, HARDLY, UNABLE))
_DENIALS = _NO | _WITHOUT | _NOT | _HARDLY
_BETWEEN = frozenset(_group(BETWEEN))
_BETWEEN_VERBS, _OPEN, _DEGREE = (frozenset(t.split()) for t in (BETWEEN_VERBS, OPEN, DEGREE))
_LISTED = frozenset(LISTED.split())
_OR = frozenset(("or", "nor"))
_AFTERWARDS, _SUPPOSED = frozenset(AFTERWARDS.split()), frozenset(SUPPOSED.split())
_JOINTS = frozenset(_group("<joint>"))
_BODY = frozenset(_group("<joint> <limb> <muscle>"))
_OWNED = frozenset(_group("my the lower low upper mid ma me your whole"))
_CRIED = frozenset(("my", "stop", "wait", "help"))
_CRY = _JOINTS | _CRIED | _MARKS | frozenset(_group("<my> hold on mate man bro please no"))
_WORSE = frozenset(("worse", "worsening", "now", "badly", "cant", "sharp", "sudden", "suddenly"))
_OF_A_NOUN = frozenset(("is", "was", "has", "feels", "felt", "just", "still", "isnt", "doesnt", "wont"))
_TURNS = frozenset(("but", "though", "although", "however"))
_EVERYDAY = frozenset(_group(f"{EVERYDAY} <my> <feel> <day> {BETWEEN} {LISTED} {BETWEEN_VERBS} {OPEN} {DEGREE} {NO} {NOT}"))

_ORDINARY = _by_first_word(_rules(ORDINARY))
_HITS = _by_first_word(
    _rules(SURE_THINGS, Pain.YES),
    _rules(SURE_EVENTS, Pain.YES, thing=False),
    _rules(SORE, Pain.YES, sore=True),
    _rules(UNSURE_THINGS, Pain.ASK),
    _rules(UNSURE_EVENTS, Pain.ASK, thing=False),
)
_VAGUE = _by_first_word(_rules(VAGUE, Pain.ASK))
_CAUSES, _PAST, _NOW, _ELLIPSIS = (_by_first_word(_rules(t)) for t in (CAUSES, PAST, NOW, ELLIPSIS))

_SPELLING = {wrong: right for right, wrongs in SPELLINGS.items() for wrong in wrongs.split()}


def _words_of(index: dict[str, list[_Rule]]) -> set[str]:
    return {word for rules in index.values() for rule in rules for step in rule.steps for word in step.words}


_TRAINING = _words_of(_CAUSES)
_SINGLE = {word for rules in _HITS.values() for rule in rules if len(rule.steps) == 1 for word in rule.steps[0].words} | {"sharp"}
_FUZZY = sorted(
    word for word in (_SINGLE - set(EXACT.split())) | _JOINTS | set(MISTYPED.split()) if len(word) > 3 and word.isascii()
)
_KNOWN = frozenset().union(
    *(_words_of(i) for i in (_ORDINARY, _HITS, _VAGUE, _CAUSES, _PAST, _NOW, _ELLIPSIS)),
    _DENIALS,
    _BETWEEN,
    _BETWEEN_VERBS,
    _LISTED,
    _OPEN,
    _DEGREE,
    _AFTERWARDS,
    _SUPPOSED,
    _UNABLE,
    REAL_WORDS.split(),
)

_RATED = re.compile(r"(?:[1-9]|10)/10")
# Unlike enough to other words to be known with two slips in them.
_DISTINCT = ("painful", "numbness", "tingling", "throbbing", "sciatica", "excruciating", "discomfort")
_VOWELS = re.compile("[aeiouy]")
_WITHOUT_VOWELS = {_VOWELS.sub("", word): word for word in ("hurting", "painful", "tingling", "throbbing", "numb", "sharp")}
_BESIDE = {
    "a": "qsz", "b": "vnh", "c": "xvd", "d": "sfe", "e": "wrd", "f": "dgr", "g": "fht", "h": "gjbnyu", "i": "uok",
    "j": "hku", "k": "jli", "l": "kop", "m": "nk", "n": "bmhj", "o": "0ipl", "p": "0ol", "q": "wa", "r": "etf",
    "s": "adwz", "t": "ryg", "u": "yij", "v": "cb", "w": "qes", "x": "zc", "y": "tuh", "z": "xas",
}  # fmt: skip
_LINES = re.compile(r"[\r\n\u2028\u2029\x85\x0b\x0c]+")
_JOINED = re.compile(r"(?<=[a-z])-(?=[a-z])")
_EITHER = re.compile(r"(?<=[a-z]) ?/ ?(?=[a-z])")
_TOKEN = re.compile(r"[^\W\d_]+|\d+(?:[.,/:]\d+)*|[^\w\s]")
_LETTER_BY_LETTER = re.compile(r"(?<!\S)(?:[a-z] ){2,}[a-z](?!\S)")
_SCREAM = re.compile(
    r"a{3,}h*|a*(?:o+w+){2,}|a+o+w+|a+h{4,}|a+r*g+h+|g+a+h+|h*n+g+h+|y?e?o{2,}w+|yeow+|(?:a+u+)+a+|(?:a[iy]){2,}a*"
)
_DRAWN_OUT = re.compile(r"(.)\1{2,}")
_FIGURED = re.compile(r"(?<![a-z0-9])(?:[a-z]+[013457][a-z]*|0[a-z]{2,})(?![a-z0-9])")
_FIGURES = str.maketrans("013457", "oieast")
_DOUBLED = re.compile(r"(.)\1")
_GLUED = re.compile(r"^(.*?)(hurt(?:s|ing)?|pain(?:s|ful)?|numb(?!er)|(?<![a-z])ouch)(.*)$")
_MARK = {"?": _QUESTION, ".": _STOP, "!": _SHOUT, ";": _STOP, "…": _STOP, **dict.fromkeys(",:()-–=", _COMMA)}


def hear_pain(text: str, *, body_at_work: bool = True) -> Pain:
    """Whether a reply speaks of pain: YES, ASK (ask "Did something hurt?") or NO.

    ``body_at_work`` is whether the question is one during which the body works; only then is a vague feeling
    ("felt something") asked about. Reads the first ``LONGEST_READ`` characters; never raises.
    """
    words = _ordinary_taken_out(_words(text))
    hits = list(_found(words, _HITS))
    things = frozenset(at for hit in hits if hit.rule.thing for at in range(hit.start, hit.end))
    if body_at_work:
        hits += _found(words, _VAGUE)
    hits.sort(key=lambda hit: hit.rule.level.value, reverse=True)
    inside = frozenset(at for hit in hits for at in range(hit.start, hit.end))
    heard, any_denied = Pain.NO, False
    for hit in hits:
        if hit.rule.level.value <= heard.value:
            break
        level = _judged(words, hit, things)
        if level is Pain.YES:
            return Pain.YES
        any_denied = any_denied or level is Pain.NO
        heard = max(heard, level, key=_strength)
    if heard is Pain.NO and ((any_denied and _holds(words, _ELLIPSIS)) or (body_at_work and _odd_of_body(words, inside))):
        return Pain.ASK
    return heard


def _odd_of_body(words: list[str], inside: frozenset[int]) -> bool:
    """Whether some clause names the back, a joint or a leg together with a word that is not an everyday one."""
    named = odd = False
    if _CRY.issuperset(words) and not (_JOINTS.isdisjoint(words) or _CRIED.isdisjoint(words)):
        return True  # "stop, my back": no more than where, and that something is
    for at, word in enumerate([*words, _STOP]):
        if word in _MARKS or word in _TURNS:
            if named and odd:
                return True
            named = odd = False
        elif word in _BODY:
            beside = {*words[max(0, at - 1) : at]} & _OWNED or {*words[at + 1 : at + 2]} & _OF_A_NOUN
            adverb = word == "back" and not beside
            named = named or not adverb
        elif at not in inside and word.isalpha() and word not in _EVERYDAY and word not in _TRAINING:
            odd = True
    return False


def _words(text: str) -> list[str]:
    """The words and marks of a text, misspelt words of pain put right."""
    plain = normalise(_LINES.sub(" . ", text[:LONGEST_READ])).replace("'", "")
    if not plain.isascii():
        bare = (letter for letter in unicodedata.normalize("NFKD", plain) if not unicodedata.combining(letter))
        plain = "".join(bare)
    plain = _EITHER.sub(" or ", _JOINED.sub(" ", plain)).replace("&", " and ")
    plain = _LETTER_BY_LETTER.sub(lambda spaced: spaced[0].replace(" ", ""), plain)
    plain = _FIGURED.sub(lambda figured: _unfigured(figured[0]), plain)
    words: list[str] = []
    for token in _TOKEN.findall(plain):
        if token[0].isalpha():
            if words and words[-1] + token in _SINGLE and not (words[-1] in _KNOWN and token in _KNOWN):
                words[-1] += token  # "hur t"
            else:
                words.extend(_spelt(token))
        elif token[0].isdigit() or token in _HITS or token in _VAGUE:
            words.append("n/10" if _RATED.fullmatch(token) else token)
        elif token in _MARK:
            words.append(_MARK[token])
    return words


def _unfigured(figured: str) -> str:
    """A word of pain typed with figures for letters ("pa1n"), or what was typed."""
    word = figured.translate(_FIGURES)
    return word if word in _SINGLE else figured


@lru_cache(maxsize=4096)
def _spelt(token: str) -> tuple[str, ...]:
    """The word meant; two or three where words of pain are run together with others."""
    if token in _KNOWN:
        return (token,)
    if token in _SPELLING:
        return (_SPELLING[token],)
    if _SCREAM.fullmatch(token):
        return ("argh",)
    if _DRAWN_OUT.search(token):
        for short in (_DRAWN_OUT.sub(r"\1", token), _DRAWN_OUT.sub(r"\1\1", token)):
            if short in _KNOWN or short in _SPELLING:
                return (_SPELLING.get(short, short),)
        token = _DRAWN_OUT.sub(r"\1", token)
    if (single := _DOUBLED.sub(r"\1", token)) in _SPELLING or single in _SINGLE:
        return (_SPELLING.get(single, single),)
    if len(token) > 30:
        return (token,)
    if len(token) > 5 and (glued := _GLUED.match(token)):
        return tuple(part for part in glued.groups() if part)
    return (_one_slip_from(token),) if len(token) > 3 else (token,)


def _one_slip_from(token: str) -> str:
    """The word of pain that was meant: one edit away (two from ten letters), begun alike or swapped."""
    if not _VOWELS.search(token):
        return _WITHOUT_VOWELS.get(token, token)
    if len(token) > 6:
        far = process.extractOne(token, _DISTINCT, scorer=OSA.distance, score_cutoff=2)
        if far is not None and far[0][0] == token[0]:
            return far[0]
    near = process.extract(token, _FUZZY, scorer=OSA.distance, score_cutoff=2 if len(token) > 9 else 1, limit=4)
    for word, _, _ in near:
        if word[0] == token[0] or word[1::-1] == token[:2] or token[0] in _BESIDE.get(word[0], ""):
            return word
    return token


def _ordinary_taken_out(words: list[str]) -> list[str]:
    left: list[str] = []
    at = 0
    while at < len(words):
        end = at
        instead: tuple[str, ...] = ()
        for rule in _ORDINARY.get(words[at], ()):
            if (reach := _match(rule.steps, 0, words, at)) > end:
                end, instead = reach, rule.instead or (_TAKEN_OUT,)
        if end > at:
            left.extend(instead)
            at = end
        else:
            left.append(words[at])
            at += 1
    return left


def _found(words: list[str], index: dict[str, list[_Rule]]) -> Iterator[_Hit]:
    for at, word in enumerate(words):
        for rule in index.get(word, ()):
            if (end := _match(rule.steps, 0, words, at)) > at:
                yield _Hit(at, end, rule)


def _match(steps: tuple[_Step, ...], k: int, words: list[str], at: int) -> int:
    """Where the pattern from its k-th step ends in the words, or -1."""
    if k == len(steps):
        return at
    step = steps[k]
    if step.gap:
        for skipped in range(_GAP + 1):
            if (end := _match(steps, k + 1, words, at + skipped)) >= 0:
                return end
            if at + skipped >= len(words) or words[at + skipped] in _MARKS or words[at + skipped] in _DENIALS:
                return -1
        return -1
    if at < len(words) and words[at] in step.words and (end := _match(steps, k + 1, words, at + 1)) >= 0:
        return end
    if step.optional or (_END in step.words and (at >= len(words) or words[at] in _CLAUSE_ENDS)):
        return _match(steps, k + 1, words, at)
    return -1


def _holds(words: list[str], index: dict[str, list[_Rule]]) -> bool:
    return next(_found(words, index), None) is not None


def _strength(pain: Pain) -> int:
    return pain.value


def _judged(words: list[str], hit: _Hit, things: frozenset[int]) -> Pain:
    """What one hit is worth where it stands; ``things`` are the places of all that can be listed with it."""
    start, end = _sentence(words, hit)
    level = min(hit.rule.level, _denied(words, hit, things, start, end), key=_strength)
    if level is Pain.NO:
        return Pain.NO
    sentence = words[start:end]
    if hit.rule.sore:
        placed = not _JOINTS.isdisjoint(sentence)
        if _holds(sentence, _CAUSES):
            return Pain.NO if not placed and _WORSE.isdisjoint(sentence) else Pain.ASK
        return level if placed else Pain.ASK
    if level is Pain.YES and (_supposed(words, hit) or (_holds(sentence, _PAST) and not _holds(sentence, _NOW))):
        return Pain.ASK
    return level


def _sentence(words: list[str], hit: _Hit) -> tuple[int, int]:
    """Where the sentence around a hit begins and ends, no further off than ``_SENTENCE`` words."""
    start, end = hit.start, hit.end
    while start > max(0, hit.start - _SENTENCE) and words[start - 1] not in _SENTENCE_ENDS:
        start -= 1
    while end < min(len(words), hit.end + _SENTENCE) and words[end] not in _SENTENCE_ENDS:
        end += 1
    return start, end


def _supposed(words: list[str], hit: _Hit) -> bool:
    """Whether the hit is asked or supposed: "if it hurts", "it hurts?"."""
    for word in reversed(words[max(0, hit.start - 4) : hit.start]):
        if word in _MARKS:
            break
        if word in _SUPPOSED:
            return True
    mark = next((word for word in words[hit.end : hit.end + _SENTENCE] if word in _MARKS), _STOP)
    return mark == _QUESTION


def _denied(words: list[str], hit: _Hit, things: frozenset[int], start: int, end: int) -> Pain:
    """NO where the hit is denied, ASK where that is only half a denial, YES where the hit stands."""
    half = listed = verb = opened = False
    at = hit.start - 1
    while at >= start and words[at] not in _DENIALS:
        word = words[at]
        if word == _COMMA and (at - 1 in things or words[at - 1] in _LISTED or words[at + 1] in _OR):
            listed = True
        elif word in _DEGREE or word == "and":
            half = True
        elif word in _OPEN:
            opened = True
        elif word in _BETWEEN_VERBS:
            verb = True
        elif word not in _BETWEEN:
            if at not in things and word not in _LISTED:
                return Pain.YES
            listed = True
        at -= 1
    if at < start:
        return Pain.YES
    if words[at] in _NO and (opened or verb or not hit.rule.thing):
        return Pain.YES
    if words[at] in _WITHOUT:
        if not _UNABLE.isdisjoint(words[start:at]):
            return Pain.YES
    elif opened or words[at] in _HARDLY:
        half = True
    if not (_NOT | _UNABLE).isdisjoint(words[max(start, at - 3) : at]):
        half = True  # a denial denied: "can't say it didn't hurt"
    if listed and _OR.isdisjoint(words[at:end]):
        half = True  # "no tingling pain in hip" may be two answers
    after = words[hit.end : min(end, hit.end + 3)]
    return Pain.ASK if half or not _AFTERWARDS.isdisjoint(after) else Pain.NO
