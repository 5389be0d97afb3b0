"""Tables of words for pain, for other signs that stop a test, and for what only sounds like them.

A coach can extend these tables; ``rules`` explains their use. In a table every entry is a heading and, under it, patterns, one a line (a
further indented line continues the one before): ``a|b`` either word · ``<group>`` any word of a group · ``x?`` optional · ``~`` up to
three words with no denial among them · ``$`` the end of a clause · ``,`` a comma · ``¿`` a question mark · ``!`` an exclamation mark ·
``-> x`` is read as x. Words are lower case and without apostrophes ("cant").

Every word and rule here is the project's own (choice, no source), except the signs beside pain that stop a test: chest pain, faintness
and unusual breathlessness, after the ACSM pre-participation logic (Riebe 2015, read).
"""

# Groups of interchangeable words in the patterns.
WORD_GROUPS = {
    # The back and the joints, where complaints weigh most.
    "joint": """back backs spine spinal lumbar hip hips knee knees ankle ankles neck disc discs disk sacrum sacral si
        tailbone coccyx groin shoulder shoulders elbow wrist rib ribs achilles pelvis lowback patella kneecap joint""",
    # Names of the spine.
    "back": "back backs lowback spine neck disc disk",
    # Limbs and their ends.
    "limb": """leg legs thigh thighs shin shins calf calves foot feet toe toes heel arm arms hand hands finger fingers
        bum butt buttock glute glutes cheek""",
    # Places a nerve of the back runs to.
    "down": "leg legs thigh calf hamstring foot toes toe shin arm bum butt glute spine knee heel ankle thighs calves",
    # Muscles that are pulled or torn.
    "pulled": "hamstring hamstrings hammy quad calf groin glute adductor muscle shin rib ligament tendon meniscus labrum",
    "muscle": """hamstring hamstrings hammy hammies ham hams quad quads quadriceps adductor adductors abductor psoas abs
        ab core trap traps lat lats pec pecs bicep biceps triceps erectors muscle muscles oblique obliques
        piriformis""",
    "body": "<joint> <limb> <muscle> saddle crotch genitals privates side sides head stomach chest belly jaw face",
    "my": "my the this that a an his her your mine one me both left right lower low upper inner outer front",
    # Pain by its name.
    "pain": "pain pains painful painfully paining pained hurt hurts hurting hurty",
    # Soreness, which may come from training.
    "sore": "sore soreness sorer achy ache aches ached aching achey achiness",
    # Words for "pain: none" or "free of …".
    "hurt": "<pain> numb numbness tingling tingle tingles tingly twinge twinges pinch pinching pinches <sore>",
    "feel": "feel feels felt feeling feelin feelings",
    # "Is", in the many ways it is typed.
    "is": "is feels feel are s felt was be just",
    "none": "none no nope nah nil nothing zero 0 0/10 nada zilch nowhere",
    "nil": "none nil nothing zero 0 0/10 nada zilch nowhere",
    # Sounds the body makes as something goes, and having made them.
    "noise": "pop pops snap crack crunch tear rip ping twang clunk thunk",
    "noised": """popped snapped cracked crunched tore ripped pinged twanged clunked ruptured popping snapping
        tearing""",
    # Harmed: "tweaked my back", "back is shot".
    "ruined": """fucked fuck fked fkd effed messed screwed buggered knackered busted bust wrecked jacked blew blown
        ruined trashed damaged tore torn strained wrenched jarred sprained tweaked popped dislocated injured twinged
        herniated ruptured ricked pranged knackered snapped broke broken cricked destroyed totaled""",
    "cant": "cant couldnt cannot",
    # A part of a part: "the bottom of my foot".
    "part": """bottom outside inside sole soles top ball end ends tip tips side back front half most part parts edge arch
        middle under""",
    # Somebody else who has it.
    "others": """mates wifes husbands sons daughters brothers sisters friends mums dads moms partners girlfriends
        boyfriends dogs cats bosss colleagues neighbours bros buddys""",
    "other": """mate wife husband son daughter brother sister friend mum dad mom coach partner girlfriend boyfriend dog
        cat boss colleague neighbour gf bf hubby buddy""",
    # Things around the lifter that are a nuisance, snap or fall.
    "nuisance": """parking app update tape tripod phone camera video film upload playlist song traffic weather timer wifi
        internet schedule website meeting instructions instruction""",
    # Efforts one is tired from.
    "effort": "squats squat set sets reps session workout class wod training run deadlifts lunges programme program",
    # Unable, or nearly so.
    "hardly": "cant couldnt cannot barely hardly struggling struggle struggled unable hard harder difficult",
    # Wrong in no particular way.
    "odd": """weird odd off funny strange wrong iffy sketchy dodgy bad horrible awful nasty rough crap shit scary
        worse""",
    "cursing": """ah ahh oh god gosh jesus christ fuck fck fuk shit damn dammit hell omg crap argh bloody wow woah whoa
        help ooh ooft oof aw aww eek yikes ouch ow crikey agh ugh urgh wtf ffs fml bugger bollocks ooo aah""",
    # Light in the head.
    "dizzy": """dizzy dizziness lightheaded lightheadedness woozy wooziness giddy vertigo headrush""",
    # Hours and clock times, before "sharp".
    "hour": "1 2 3 4 5 6 7 8 9 10 11 12 one two three four five six seven eight nine ten eleven twelve",
    "clock": """5:00 5:15 5:30 5:45 6:00 6:15 6:30 6:45 7:00 7:15 7:30 7:45 8:00 8:30 9:00 9:30 10:00 10:30 11:00 12:00
        13:00 14:00 15:00 16:00 16:30 17:00 17:30 18:00 18:30 19:00 19:30 20:00 20:30 21:00""",
    "when": """second sec time night week weekend month months year years summer winter spring autumn season session
        workout set rep monday tuesday wednesday thursday friday saturday sunday""",
    "day": """monday tuesday wednesday thursday friday saturday sunday mon tue tues wed thu thur thurs fri sat sun
        mondays tuesdays wednesdays thursdays fridays saturdays sundays yesterday yesterdays weekend""",
}

# Sure, and denied by "no", "not" or "without" before it: states.
SURE_THINGS = {
    "pain by its name": """
    pain|pains|painful|painfully|paining|pained|hurt|hurting|hurty|agony|agonising|agonizing|excruciating|unbearable|intolerable|whiplash|injured|backache|lumbago
    """,
    "kinds of pain in one word": """
    throbbing|throb|stinging|stinger|stabbing|stabby|jabbing|smarting|burny|spasm|spasms|spasming|sprain|twinge|twinges|
        twinging|twingey|crick|cricked|owie|owies|ouchie|ouchies
    """,
    "nerve signs in one word": """
    numb|numbness|numbing|tingling|tingle|tingles|tingly|tingliness|zing|zings|zinging|zinger|zap|zaps|zappy|fizzing|sciatica|
        sciatic|radiating|radiates|radiated|electrocuted|pinsandneedles|pinsnneedles
    """,
    "sharp, shooting, burning, electric": """
    pins|pin and|or|an|in? needles|needle
    sharp|shooting|searing ~ <feel>|sensation|twinge|pinch|sting|jab|stab|ache|jolt|one|something|catch|burn|poke|tug
    sharp|shooting|jab|jolt|burning|burn ~ in|at|on|from|through|down|into|up|across|around|behind|under <my>? <my>?
        <my>? <body>
    <joint> sharp|burning
    electric|electrical shock|shocks|jolt|jolts|current|<feel>|sensation|bolt|buzz|through|down|in
    trapped|pinched|squashed|irritated|compressed nerve
    nerve pinch|trapped|pinched
    """,
    "something torn, slipped or weak": """
    slipped|bulging|bulged|herniated|blown|popped|prolapsed disc|disk|discs
    disc|disk|discs ~ slipped|bulging|bulged|herniated|out|popped|prolapsed
    pulled|torn|strained|pull|tearing|ripped|ripping a|my|the? <pulled>|back|ligament|tendon|something
    <pulled>|<joint> tear|strain
    dead leg|legs|foot|feet|arm|toe|toes
    weakness in|of|down <my>? <my>? <body>
    <limb> weakness
    <limb> ~ weak|weaker
    both <my>? legs ~ weak|weaker
    foot ~ drops|drop|dropping
    <limb> ~ getting|gets|got|going weaker
    charlie|charley horse
    """,
    "the chest: a stop of its own": """
    chest ~ tight|tightness|tightening|pressure|heavy|heaviness|crushing|squeezing|squeezed|constricted
    tight|tightness|tightening|pressure|heaviness|squeezing|crushing ~ chest
    heart attack
    heart ~ fluttering|flutters|flutter|skipping|skipped|skips|irregular|funny|weird|crazy|mad|mental|nuts
    palpitations
    """,
    "fainting and breathlessness: a stop of their own": """
    faint|fainted|fainting|fainty|faintness|breathless|breathlessness|suffocating|unconscious
    short|shortness of breath|air
    trouble|difficulty|difficulties|problem|problems|issue|issues|discomfort with? breathing
    passed|pass|passing|blacked|black|blacking|conked|conking out
    gonna|going|about|might|nearly|almost to? faint|pass|black out?
    really|very|so|too|badly|super|proper|extremely|seriously|pretty|quite <dizzy>|light headed?
    <dizzy>|headed ~ badly|fall|fell|sit|stop
    """,
}

# Sure, but "no" before it is a word of its own ("no my back went"): events.
SURE_EVENTS = {
    "cries": """
    ouch|ow|oww|owch|owww|yowch|yeouch|yeowch|owwie|outch|ouchy|ooyah|eina|aiya|aua|autsch|booboo
    <cursing> ,? my|me <my>? <my>? <body> $
    my <my>? <joint> !
    there goes|went my <my>? <joint>
    """,
    "it hurts": """
    hurts|urt|urts|urting|stings|stung|throbs|throbbed|tingled|smarts|smarted|stabs|stabbed|jabbed|spasmed|zinged|zapped
    tweak|tweaks|tweaked|tweaking|twinged|wrenched|jarred|sprained|herniated|ruptured|dislocated|paralysed|paralyzed
    <hurt> ¿ yes|yep|yeah|yup|ya|y
    never felt|had|feel|known ~ <hurt> like this|that|it
    in bits|pieces|agony|tatters|trouble
    killing|killin|kills|killed|wrecked|destroyed me|us
    kills $
    <joint> kills|killing
    killed|killing|destroying|wrecking|ruining my <my>? <joint>
    was|feels|felt|feeling|really|very|so|bit|too|quite|thats|pretty|super sharp
    it|that|this|<body> huts|hunts|hut|hunt|hust
    not|isnt|aint|more|worse just? ~ than a? stretch $
    """,
    "the back or a joint went": """
    <feel> my <my>? <joint> go|give $|when|and|in|out|pop
    <feel> it|that|this go|give|pop|snap|slip|tear|rip|crack $|then|and
    ligament|tendon|meniscus|labrum went|gone
    <feel> my <my>? <joint> pop|snap|crack|slip|twinge|pull|tear|seize|lock|spasm
    <back>|hip|knee|hammy|hamstring|calf|groin|shoulder|ankle ~ went|gone|goes|gave|going $|again|on|pop|bang|crack|twang|
        ping|snap|spasm|and
    <back>|<joint>|leg|legs ~ gave|gives|giving|give|given|seized|seizes|seizing|seize|locked|locking|locks|cramped|buckled|
        buckles|buckling|spasm|collapsed way|out|up|on|under|beneath|from|$
    everything|muscles|it seized|locked|cramped|spasmed|tightened|clamped ~ in|across|around|up ~ <joint>
    <back>|hip|shoulder ~ went|gone|is|goes|was|going|popped|slipped|came out? $|again|on
    <back> ~ went|gone|go|goes into
    <joint> ~ went|goes|going <noise>
    hips|knee|knees ~ went|gone|goes|going|popped|slipped $|again|on
    <joint>|<limb> ~ give way|out
    about to|2 go $
    seized|seizing|seizes|seize up|$
    <joint> ~ seized|seizing
    locking|locked up|solid $
    kneecap|patella ~ moved|shifted|slipped|slid
    """,
    "harm done to it": """
    threw|throw|thrown|throwing|put|putting|puts|popped <my>? <my>? <joint> ~ out
    did|done|doin <my> <my>? <joint>|<pulled> ~ in $|again|good|properly|proper
    did|done|doin <my> <my>? <joint>|<pulled> again|$|properly|good|bad|there
    <joint> ~ had|has|have it|gone|had $
    did|done|doing|do something|damage|mischief|injury ~ to|in
    did|done some|a|real|proper damage|number
    did|done myself a|an some? mischief|injury|damage
    <ruined>|hurt up|out|in|off? <my> <my>? <my>? <joint>|<pulled>|leg|toe
    pulled <my> <my>? <my>? back|neck|shoulder|<pulled>
    <ruined>|hurt|pulled|twisted|rolled something|it|a|myself|meself $|in|again|bad|badly|there|i
    twisted|rolled|sprained|strained|pulled|torn|broken <joint>|<pulled>
    <joint>|<pulled> ~ <ruined>
    <limb>|<joint> ~ <is>|totally|completely ~ killing|agony|screaming|bits|pieces|floppy|dumb|done|gone $
    <joint> ~ <is> ~ toast|cooked|fried
    <limb>|<joint> ~ <is>|totally|completely ~ fucked|fkd|screwed|buggered|wrecked|killing|busted|shot|ruined|inflamed|agony|
        screaming|bits|pieces|floppy|dumb
    is|its|was|been torn|pulled|strained|sprained
    <feel> torn|pulled|broken|ripped
    twisted|twist|rolled|rolling <my>? <my>? <joint>
    ankle rolled|twisted
    twisted it
    it gave|popped|slipped out
    flared my|it|the ~ up|back
    flared|flaring up
    """,
    "something popped or gave": """
    heard|herd|felt|hear|feel|was|had|got|made|hearing|feeling ~ <noise>
    a|loud|big|massive|audible|huge|definite|nasty|little|small|sudden <noise> $
    <noise> in|from|at|down|inside <my>? <my>? <body>
    something|somethings ~ <noised>|gave|pulled|broke|broken
    something|somethings ~ went|gone|go|give|going $|in|pop|bang|twang|crack|ping
    it|that|just|muscle ~ popped|snapped|tore|ripped|twanged $
    <body> ~ <noised>
    <noised> <my>|something|in? <my>? <joint>|<muscle>|something
    slipped|popped|bulged|burst a|my|another? disc|disk
    """,
    "feeling lost": """
    <hardly> to? feel any|half|most|anything|nothing? of|in|between|around|inside? <my>? <my>? <my>? <body>
    <cant>|dont|didnt feel it|anything|nothing ~ below|down|from|foot|leg|toes
    <cant>|dont feel ~ down there
    <cant> feel it|anything $|i|when|now
    <cant> really|even|properly|quite|fully|hardly|barely? feel|fell|fel <my>? <part>? of? <my>? <my>? foot|feet|toes|toe|
        leg|legs|heel|sole|soles|shin|calf|thigh|bum|saddle
    not|dont|didnt|doesnt feel my <my>? foot|toes|toe|leg|legs|feet
    no|lost|losing|lose|reduced|loss|less any|all|the|of|my|some|most|half? feeling|sensation|sense in|down|below|from|on|
        at|round|between|along|around|under|over|inside|$
    feeling|sensation has|have|is|s|all|just|has? gone|went|going|missing|lost|faded|disappeared|vanished
    like its|it is? not|isnt there|mine|attached
    <limb>|<joint> ~ went|gone|going|goes|fell|falling|fallen|is|feels|feel|felt|still|all ~ dead|asleep|sleep|sleeping
    leg|foot|arm|toe|hand|thigh|calf ~ dead|asleep
    <limb> ~ sleep|sleeping
    """,
    "it runs down the leg": """
    shooting|shoots|shot|radiates|travelling|traveling|travels|travelled|spreading|spreads|spread|running|runs|ran|going|
        goes|went|coming ~ down|into|up|through|along to|into? <my>? <my>? <my>? <down>
    shooting|shoots|shot down|up|into|through|across|to <my> <my>? <my>? <body>
    shooting|shoots|shot|radiates|zips|zipped|runs|ran|goes|went|travels|travelled all|right|straight|the the? way? down|up|
        to|into|through ~ <down>
    shooting|shoots down|up|into|through|across
    like|right|straight|all the? way? down ~ leg|legs|thigh|calf|shin|foot|toes
    feeling|buzz|buzzing|electricity|current|lightning|fire|hot|cold|warm|heat|burning|burn|burns|prickling|prickly|
        something|jolt|shock|weird ~ down|into|through|up <my>? <my>? <my>? <down>
    """,
    "it burns, it stabs": """
    burns|burning|burn|burned|burnt|fire ~ <joint>|foot|toes|calf
    <joint>|foot|toes|heel|calf|leg ~ burning|burns|fire|burned|burnt
    burns like|$
    hot poker|knife|needle
    needle|needles|needling like|feeling|sensation|down|through|all
    like a? ~ knife|dagger|poker|stabbed|shocked|electrocuted|lightning|nail
    knife|dagger|nail ~ in|into|through ~ <body>
    """,
    "cannot move, stand or lift": """
    <hardly> to? move|walk|straighten|stand|sit|get|put up|straight|on|properly|upright|weight|off|down|$
    <hardly> to? straighten|move ~ <body>
    <hardly> to? turn|twist|rotate ~ neck|head|back
    <cant> lift|raise|pull|hold|wiggle my|the foot|toes|toe
    foot|feet|toes keeps|keep|kept|is? drop|dropping|dragging|slapping|slaps|slap|flop|flops|flopping
    foot|toes ~ flop|flops|floppy|limp|lifeless
    leg|legs|foot|ankle|knee|knees|arm went|gave|goes|go ~ under|way|up
    leg|legs|knee|knees just|suddenly? folded|crumpled ~ under|beneath|on|$
    <limb>|<joint> wont|cant|couldnt|doesnt take|hold|bear|carry|support my|any|the|me weight?
    foot|feet|toes|toe|leg ~ wont|cant|couldnt|doesnt come|lift|go up|off|when
    <limb> wont|doesnt|not|isnt|dont|arent|stopped|cant hold|holding|support|work|working|move|moving|respond|responding|
        lift|lifting
    <limb> ~ went|gone|going ~ weak
    no|lost|losing|lose strength|power|control in|of|over ~ <limb>
    <limb> has|have|with|got? no|zero|little power|strength
    """,
    "bladder and bowel: said to hospital": """
    no|lost|losing|lose control of|over ~ bladder|bowel|bowels
    peed|wet|pissed|shat|soiled|weed|pooed|peeing|wetting|shitting my? myself|self|pants|trousers|shorts|leggings
    i|just|have|ive peed
    peed a bit|little
    <cant>|not able|to? pee|wee|poo|urinate
    <hardly>|trouble|problem|problems|difficulty to? hold? my? peeing|weeing|pee|wee|bladder|urine
    ambulance|paramedic|paramedics
    """,
    "breath and collapse": """
    <hardly>|fighting|gasping to|for|really|just|even|fully|properly? breathe|breath|breathing|inhale|air
    <hardly>|couldn to? catch|get|take|draw|find ~ breath|air|breathe
    not enough air|breath|oxygen
    keel|keeled|keeling over
    lost|losing consciousness
    i|just|gonna|to|nearly|almost|ive collapsed|collapse
    """,
    "in other languages": """
    duele|duelen|dolor|dolore|douleur|schmerz|schmerzen|weh|pijn|boli|bola|plecy|bolno|dor|doi|vondt|больно|больна|болит|боль|痛い|痛|
        疼|疼痛|sattuu|itai|sakit|masakit|acı|agri|doendo|doliendo|schmerzt|zeer|aie|ouille|ahia|ohia|aray|ajaj|auc|ała|ай|ой
    fait|fa|jai|ai|au|avoir|faire mal|male
    mal|male au|aux|alla|al|a|de|di|nella
    gor|har ont
    ont i
    """,
}

# Soreness: its cause and place decide.
SORENESS = """
    <sore>
"""

# Stops the test while the body is at work; afterwards it is asked about.
DIZZY_THINGS = {
    "light in the head": """
    <dizzy>
    light headed|headedness
    head rush
    seeing|saw|see stars|spots
    head|room|everything|world ~ spinning|spins|swimming
    vision ~ went|going|goes|spinning
    came|coming|come over all|a|bit? all|a|bit|very? funny|faint|queer|odd|weird|wobbly|hot|weak
    vision|sight|eyes|eyesight ~ went|going|goes|gone|is|are|was ~ blurry|blurred|funny|black|dark|fuzzy|weird|double|dim
    everything|vision|world|sight ~ black|dark|blurry|blurred|tunnel|grey|white|fading
    """,
}

# Perhaps pain; "no" before it denies it.
UNSURE_THINGS = {
    "unpleasant": """
    discomfort|uncomfortable|uncomfy|unpleasant|niggle|niggles|niggly|niggling|nagging|gnawing|gyp|jip|gip|suffering|suffer|
        severe|torture|headache|migraine|irritation|irritated|inflammation|aggravated|aggravating|inflamed
    jab|jabs|nip|flare|flares|lame
    pinch|pinches|pinching|pinched|pinchy|impinging|impingement|nips|nipping|nippy|sting|stab|knife|jolt|jolts|biting|bites|
        pricks|pricking|jaggy|gouging|sharpness|strain|strained|straining|kink|stitch
    cramp|cramps|cramping|cramped|crampy|charley|tender|tenderness|sensitive|burning|pulsing|pulsating|pounding
    a shock $
    n/10 in|on|at|for|down? <my>? <my>? <joint>|<limb>
    <joint> problem|problems|trouble|issue|issues
    bother|trouble|problem|problems|issue|issues|grief with|in|from ~ <joint>
    red flag|flags
    flare|flair up|ups
    """,
    "nerve signs, perhaps": """
    buzzing|prickly|prickling|prickles|ants|fizzy|electric|electricity|nervy
    lightning bolt|in|down|through|strike
    trickling|trickle down
    hot wire
    pins in my|the? <limb>
    weak <limb>
    current|needles in|down|up ~ <down>
    """,
    "sounds and feelings of a joint": """
    creaky|creaking|grinding|crunching|crunchy|clicking|clunking|clunk
    ripping|tearing|popping|snapping|crushing <feel>|sensation
    locked|stuck|jammed <my>? <joint>
    """,
    "hurt by a knock": """
    swelling|swollen|swelled|bruise|bruised|bruising|bleeding|blood|injure|injuring
    boo boo
    """,
    "illness, help and remedies": """
    nauseous|nausea|emergency|hospital|bladder|bowel|bowels|incontinent|incontinence|leaking|leaked|collapsed|painkiller|
        painkillers|ibuprofen|paracetamol
    cold sweat|sweats
    seeing|saw double|spots
    threw|throwing|thrown up
    ears ~ ringing|ring
    band|elephant|weight|vice around|on|round my|the chest
    a and e
    """,
    "winced": """
    wince|winced|wincing|yelped|yelp|flinch|flinched|whimpering
    in tears
    tears in my? eyes
    son of a bitch|gun
    🤕|😖|😣|😫|🚑|⚡|💥|🩹|😩|😵|😢|😥|😰|🤬|😱|🆘|💢
    🔥|💣 in? my? <joint>|<limb>
    <joint>|<limb> 🔥
    """,
    "pain mistyped as a word of its own": """
    sharp|bad|some|strong|stabbing|shooting pin|pan|pans|plain|plains|paint|pane|rain|pai|paid|pair|main|gain|spain|pine|pails
    pin|pan|pine|plain|pai|pane|pail|rain|paint in|on|at ~ <joint>|<muscle>|leg|foot|calf
    """,
}

# Perhaps pain, as an event.
UNSURE_EVENTS = {
    "cries, perhaps": """
    argh|aargh|agh|aaah|aah|gah|oof|ooof|yikes|ooft|eesh
    dying ,? ~ <joint>
    <cursing>|au|aua|ahi|no|nono ,? no? ,? my <my>? <joint> $
    <cursing> , my? <joint>
    <joint> ,? help
    """,
    "felt in the back or a joint": """
    <feel> it|that|this|something ~ in|at|across <my>? <my>? <my>? <joint>|buttock|bum|butt
    something|pressure|pull|pulling|kink|catch|nip|nips|nipped|tug|grab|poke|jab|spike in|of|at ~ <joint>
    catching|catches|nipping|grabbing|digging|jamming|biting in|at|into ~ <joint>
    got|gets|get|caught|catches|grabbed|grabs|nipped|nips me ~ <joint>|<muscle>|calf
    got|gets|caught|hits my <my>? <joint> $
    <cant> feel my ~ $
    <muscle>|<limb> ~ fire $
    feeling hasnt|isnt|not ~ back
    no|not|i feel ~ foot|leg|toes
    """,
    "the back or a joint complains": """
    <joint> ~ bothering|bothers|bothered|bugging|bugs|playing|plays|acting|complaining|complains|barking|screaming|angry|
        unhappy|grumbling|grumbles|moaning|hates|protesting|protests|catching|catches|caught|nagging|troubling|trouble|
        stuck|jammed|gripping|grabbing|grabby|grabbed|twitching|giving|gives|grumpy|sensitive|irritable|annoyed
    bothering|bothers|bugging|irritating|irritates|annoying me|my|the
    giving|gives|gave|given|causing me|us ~ grief|hell|gip|jip|gyp|bother|trouble|stick|jolts|bad
    playing|acting|plays|acts|kicking up|off $|again|now|today|bad
    it|that|this|side|one|spot just|always|really|keeps? catches|grabs|bites|nips|jams|shoots|zaps|catching|grabbing|jabs|
        burns|flares $|me|when|as|at|if|every|on|again|going|coming
    shoots when|if|as|every|each
    gets|getting|got|feels|felt|is|becomes worse each|every|with|as|when|if|down|on
    brings|bringing|brought|sets|setting|set|triggers|triggered|triggering it|that|this|my|the|them ~ off|on|$
    triggers|triggered|triggering my <my>? <joint>|leg
    down into|to my|the <my>? calf|shin|leg|thigh|foot|toes
    old|same|usual problem|spot|place|injury|thing|trouble|friend is|s|has|back|again|at
    thing with|in my <my>? <body> ~ back|again
    happened|happening again
    walking|walk|walked|moving like|funny|bent|crooked|sideways|wonky|weird
    told me to stop
    spine ~ shifted|shift|slid|slipped|slip
    more than just? tight|tightness|stiff|stiffness|stretching
    it|that|something went crunch|click|clunk|crack|pop|bang|twang|ping|thud
    <cant> turn|roll over
    <cant> put|get|pull ~ socks|sock|shoes|shoe|trousers ~ on
    <cant> feel when|if i touch|press|pinch|stroke
    kept|keeps|keeping ~ awake
    havent|hasnt|hadnt been able to pee|wee|urinate|poo|go
    like my|the|your <my>? <limb>|<joint> ~ there|gone|mine|belongs|attached
    walking on glass|needles|pins|knives|nails|broken
    need|had|have|gotta|must to? lie|lay|sit down ,? ~ <joint>
    couldnt|cant|didnt|not sleep|slept because|cos|for|from|with
    iced|icing|ice my|it|the
    abort|mayday
    <joint>|<limb> ~ clicked|clicks|cracks|cracking|grinds|clunks|pops
    <joint> <joint>? make|makes|made|making ~ crack|noise|sound|pop|click
    heard ~ click|clicks|crackle|cracking|creak
    <joint> ~ <is>|went|a|bit ~ <odd>|knackered|stiffening|unstable
    <joint> is|<feel>|are|went? isnt|not|doesnt|didnt|aint ~ right|good|happy|great|like|liking|enjoying|having
    <joint>|<limb> wont|doesnt|cant|didnt let|allow|want|like|cooperate
    not happy ~ <joint>
    not ok|okay|fine|good ,? my <my>? <joint>
    <joint>|<limb> cant take|handle|do|cope
    <cant> go|do|carry|continue|squat|bend|sit|lift|walk|stand|train|manage ~ with my <my>? <joint>
    <joint> ~ at it again
    too much for|on my <my>? <joint>|<limb>
    hard|tough|rough|bad|heavy on my <my>? <joint>
    <joint> says|said|saying|screams no|nope|stop
    bone on bone
    my|whole <my>? <joint> ~ worse
    worse ~ my <joint>
    worse now? ,? my <joint>
    """,
    "the back or a joint went, perhaps": """
    <back> went|gone when|while|as|before|halfway|mid
    backs|necks|hips|shoulders|kneecap out $|again|on|of
    stuck|frozen|locked|jammed ~ bent|over|bend|halfway|position|floor|folded|doubled|crooked|sideways
    bent|doubled over $
    <limb>|<joint> ~ lit|lights|lighting up
    hit|caught|touched|touching|trapping|trapped a|the|my|some? nerve
    like being|getting|i|im|ive|someone|somebody ~ kicked|stabbed|hit|shot|punched|shocked|tasered|tased|zapped|whipped|
        sliced|cut|struck|touched|grabbed
    like a? ~ needle|needles|nail|blade|spike|pin|skewer|icepick|screwdriver|taser|fence|socket|wasp|bee
    <back>|<limb> has|have|is|are|s|just|all? gone
    leg|legs|foot|arm just|suddenly|both? went|going $
    <joint> is|s|feel|feels|went|just? out|done $
    something ~ moved|slipped|slid|shift|move|clicked|stuck|caught
    something|it|that ~ let go
    it|its|thats|that|this gone|went just? $|again
    it|that|this just? went|gave $
    it|that|just pinged|pinging|twinged|crunched|cracked
    did ~ pop|snap|crack|click|twinge|pinch|sting
    done|did something|myself $|again|bad|in
    im|am|something broken|bust|busted|broke
    jerked|yanked|jolted|overstretched|overextended|hyperextended|jarring|wrenching|torqued|bulge|overdid
    something pooped|poped|pooping|pup
    somethings|something is? ~ wrong|off|up|weird|bad with|in ~ <joint>|<limb>
    sharp ,? ~ in|at|on|under|behind ~ <body>
    legs|thighs|quads|glutes|arms ~ dead|asleep
    <limb> ~ weak
    weak|weaker <my>? leg|foot ~ suddenly|sudden
    """,
    "stopped for it": """
    because|cos|cause|coz|due|bc of|to? my|the <my>? <joint>
    <joint> made me stop
    need|had|have to bail|stop|quit|rest|drop|rack out? ,? ~ <joint>
    bailed|stopped|quit|dropped|couldnt , ~ <joint>
    <cant> bear|stand it|this|that
    <cant> bend $|down|over|forward|forwards|at|now|any|anymore|properly
    had|have|need to hold|grab|cling ~ stand|walk|up|wall
    <cant> unbend
    <cant> get back up
    <cant> ~ toilet|loo|bathroom
    stuck on the floor|ground
    limp|limping|limped|hobbling|hobbled|hobble
    had to crawl
    dare not move
    dont dare
    """,
    "a fall or a knock": """
    hit|banged|bumped|smacked|bashed|whacked|stubbed|clipped <my> <my>? <body>
    dropped ~ on <my> <my>? <body>
    bar|plate|weight|it ~ came|fell|dropped|landed|crashed down? on|onto|across <my> <my>? <body>
    pinned|trapped|stuck|squashed under the|my? bar|weight|plates
    landed|slipped|fell ~ badly|hard|awkwardly|heavily|funny|wrong
    ankle|knee went over|sideways|inwards ~ $
    went over on my|it|the
    fell|fallen|falling|fall over|down|off|backwards|forward|forwards|on|onto
    i|ive|just|nearly|almost fell|fallen $
    """,
    "asking whether to go on, calling for help": """
    should|shall|better|ought i|to? be? stop|worry|worried|concerned|rest
    should|shall i ~ continue|carry|keep going|on
    not|isnt|wasnt|doesnt ~ safe
    need|see|call|get a|my|the? doctor|doc|medic|physio
    call|get|fetch someone|somebody|help|911|999|112
    going|go to hospital|er
    took|taking|take|need|popped ~ tablets
    wake|wakes|woke|keeps me up
    not|isnt just? a stretch $
    dont|didnt|not like ~ <feel>
    """,
    "hurt mistyped as a word of its own": """
    hut|huts|hunts|harts|hart when|in|at|bad|a|like|so|my|badly|too|really|every
    it|that|this|<body> does|really|still|just|kinda|always? hearts|hears|hurls|hurl|heart|hunts|hart|harts|hut|huts|hunt
    """,
}

# Ordinary in other contexts, or too vague: asked about only while the body is at work.
VAGUE = {
    "after effort": """
    puffed|puffing|winded|panting|huffing|wheezing|wheezy
    out of breath|puff
    breathing ~ hard|heavy|heavily|fast
    catch|get my|a breath
    heart ~ racing|pounding|thumping|hammering
    shooting
    feel|feeling|felt|gonna|going to|like? ~ sick|puke|vomit|throw
    """,
    "felt something": """
    <feel> something
    <feel> it|that|this there|here
    its|all|felt|was in|my ~ <joint> $|again
    my <my>? <joint> again
    something|somethings ~ off|wrong|weird|odd|funny|not|isnt|wasnt|happened
    somethings up
    got|grabbed|bit me
    <pulled> pulled $|i|again|now|maybe|a
    that did it
    thats done it
    same spot|place again
    popped|snapped|pop|crack $
    <feel> my <my>? back|neck|knee|spine $|a|too|again|now|more|there|every
    """,
    "odd, bad, not right": """
    <feel> ~ <odd>
    doesnt|didnt|dont|isnt|wasnt|not|doesn|never|no feel|felt|feels|feeling|quite|too|very|so|all|really|that|right|good|
        great? ~ right|good|great|normal|ok|okay|happy|comfortable|comfy|nice|pleasant|well|fun|myself $
    not|isnt|wasnt quite|really right
    not|isnt|wasnt comfortable|comfy
    doesnt|didnt|dont|not|never feel|felt|feeling ~ right|good|great|normal|ok|okay|nice|pleasant|well|happy|comfortable
    didnt|dont like that|it|this $
    its|is|it locked|stuck $
    <feel> like its|im|something|someone|theres|ive|my|a|needle|needles|glass|bone
    weird|odd|funny|strange|iffy|dodgy|bad|horrible|awful|nasty <feel>|sensation|pull|tug|twist|spot|twitch
    horrible|awful|nasty|weird that|was $
    nasty|horrible
    bit|little|slightly|kinda|quite weird|odd|off|strange|iffy|dodgy|sketchy
    really|too|so|very|thats|this|its is? bad $
    bad one
    its|it|thats|is|getting|gets|got|gotten|much|even|way worse $|now|again|every
    is that|it|this ~ normal|ok|okay|bad|meant|supposed|expected ¿
    meant|supposed to feel
    """,
    "cursing and fright": """
    sharp
    fuck|fucks|fuckk|shit|shite|christ|jesus|ffs|fml|wtf|omg|yow|eek|ay|ayy|au|ai|eeek|ahhh|aaaah|ugh|ughh|urgh|ahi|uy|grr|grrr
    😬|😭|😕|☹|🙁|😞|😓
    scared|worried|panicking|crying|screamed
    bit|little|slightly|kinda ~ worried|concerned|scared
    <cant> go|carry on
    <cant> continue|carry
    had|have|need|gotta|must to? lie|lay|sit down
    """,
    "an old trouble spoken of": """
    bad|dodgy|dicky|old|trick|iffy|gammy|crook|cranky|grumpy|gippy|wonky <joint>
    disc|disk|nerve|injury|injuries
    but|because|and my <my>? <joint> $
    """,
}

# Only sounds like pain; removed before anything else is matched.
ORDINARY = {
    "painful to say; hurt pride": """
    painful|painfully|pains|pained|hurt|hurts to|me? to? admit|say|confess|watch|read|hear|remember|write|lose
    painful to|me? see|look
    painfully slow|obvious|aware|shy|boring|honest|early|long|average|unfit|cold|weak|clear|bad|inflexible|awkward|quiet
    painful truth|how|lesson|reminder|viewing|reading|confession|experience
    hurt|hurts|hurting|bruised|wounded is|was? my|the|his|your? ego|pride|feelings|brain|wallet|soul|vanity
    ego|pride|feelings|brain|wallet is|are|was|got|feels? a? bit? hurt|hurts|hurting|bruised|wounded|painful|sore
    growing pains
    painful|pain watching|listening|reading|viewing|rewatching|song|music
    <nuisance> is|was|here|has|being ~ a? pain|painful|nightmare
    my|his|her|the <others> <my>? <body> ~ <hurt>
    my|his|her|the <other> has|had|got|hurt|with the|a|his|her? bad|sore|dodgy|broken? <body>
    wife|husband|mum|dad|mom|brother|sister|son|daughter|friend|partner|gf|bf has|had a|the|his|her? bad|sore|dodgy|broken <body>
    my|his|her|the|our <other>|father|mother|grandad|grandma|gran|nan|uncle|aunt|cousin has|had|having|got|survived|died a|of|from? a?
        mild|big|small|massive? heart attack
    <others> <body>
    what|says|said my|the <other> said|says|always
    injury|injuries prevention|history
    french|bread|au pain
    pain|hurt cave|locker
    """,
    "a pain: a nuisance": """
    pain in the ass|arse|backside|bum|butt|neck|rear to
    be|being|been|such|what a pain $
    be|being|been|such|what a pain this|that|the|these|setting|getting|trying|to
    im|youre|hes|shes a pain
    be|being|such|what a|of? pain in the ass|arse|backside|butt|neck|rear
    a real|bit|right|proper|huge|total|royal? of? a? pain trying|getting|setting|working|figuring
    a real|bit|right|proper|huge|total|royal? of? a? pain to set|read|use|film|measure|find|put|see|type|park|open|charge|
        sort|clean|line|prop|watch|arrange|track|hold
    setting|filming|typing|writing|logging|uploading|parking|recording|reading|finding|getting|using|holding|measuring ~ is|was a pain
    """,
    "nothing lost by it": """
    cant|couldnt|wont|wouldnt|doesnt|not|dont hurt to ask|try|check|look|see|have|be|do|add|go|get|give
    would|will it hurt to|if
    cant|couldnt|wont|wouldnt|shouldnt hurt to
    will|would|gonna|does it|this|that|they|these|the|any test|one|bit|next|stretch|squat? hurt|hurts ¿
    will|would it|this|that|they|these|the test|one|next? hurt $
    strain|strained|straining to see|read|hear
    """,
    "free of pain; a score of none": """
    pain|hurt|ache|hurts|injury|symptom|niggle|twinge free
    painless|painlessly|painfree|painstaking|painstakingly
    free|freedom of|from any? <hurt>
    <hurt> level|levels|score|rating|scale? is|was|at|still|now|today|there? ,? <nil> ,? out? of? 10|ten? today|now|here|atm|
        anywhere|whatsoever|so? far? $
    <nil> out of 10|ten on? the? <hurt>?
    <nil> on|for the? <hurt>
    no|zero pain|pains ,? all|everything|its|im|feels|felt|feeling|both|still? all? good|fine|great|ok|okay|well|happy|normal $
    no pain|pains|hurt yet
    not painful|hurting|sore yet $
    doesnt|isnt|hasnt|didnt hurt|hurting|hurts yet
    <hurt> ¿ <none>
    <hurt> ¿ dont|doesnt|didnt|never
    <hurt> ¿ not at
    pain|pains|numbness|tingling|pinch|soreness|twinge|twinges|cramp , <none> $
    click|clicks|clicked|clicking|creaks|cracks|creaking|cracking|popping|pops|clunks ,|but|with|and|though? ,? no|without|not|
        painless any? pain|painful|sore|hurting|hurt
    painless click|clicking|clicks|pop|popping|crack
    """,
    "stopping if it should hurt": """
    ill|will|would stop|rest|pause|quit|shout|say|yell|message|text ~ if|when|once it|anything|something|that|i|my|there ~
        <hurt>
    tell|let|message|text you|u ~ if|when|once it|anything|something|i|my|there ~ <hurt>
    stop if|when|once it|anything|something|i|my|there ~ <hurt>
    """,
    "what did not move; muscles at work": """
    <cant>|dont|didnt feel <my>? <my>? <body> move|moving|moved|round|rounding|tuck|tucking|lift|press|flatten|change|bend|
        shift|arch|work|working|fire|firing|activate|engage|engaging|stretch|stretching|much|contract
    feel|feeling|felt|good|nice|proper the|that|a? muscle|quad|glute? burn in|on? my|the? <limb>|<muscle>|$
    legs|thighs|quads|quad|glutes|abs|core|muscles|lungs are|is|were|on|feel|a|bit|really|proper? on|a|bit|really|absolutely?
        burning|burn|burned|fire|screaming
    heel|heels|toe|toes popped|pop|pops|popping up|off
    keep|kept|keeping|with|hold|holding|have <my>? <my>? knee|knees|leg|legs|elbow|elbows locked|lock
    lock|locked|locking my|the? knee|knees|elbows|elbow
    because|cos|cause|coz|when|once|where|as|after|before <my> <my>? <my>? <body> began|started|starts|begins to? round|rounding|
        lift|lifting|tuck|tucking|tip|tipping|curve|curving|bend|bending|tilt|tilting
    because|cos|cause|coz|when|once|where|as|after|before <my> <my>? <my>? <body> bent|bends|lifted|lifts|rounded|rounds|tucked|
        tucks|tipped|tips|curved|curves|tilted|tilts|unlocked|rose
    knees out
    pulled|pull|pulling|hugged|hug|brought|bring|bringing|held my|the|a <my>? knee|knees|leg|thigh to|up|in|towards|close
    push|pushed|pushing|drive|driving|spread|shove|force|keep|kept <my> knees|knee|elbows|hips|chest|bum out|in|up|forward|back
    back|spine|pelvis|hips|bum stayed|stays|kept|keeps|remained still? down|flat|put|neutral|straight|still|level|on
    tweak|tweaked|tweaking|tweaks my|the|a? foot|feet|toe|hand|back|knee|hip|elbow|arm|heel angle|position|placement|stance|
        setup|width|height|line|turnout
    <effort> ~ nearly|almost|really? killed|killing|destroyed|wrecked|broke|finished me
    core|abs|arms|grip gave|gives|giving up|out
    dead bug|bugs|lift|lifts|lifting|hang|hangs|tired|easy|straight|centre|center
    strain gauge
    chest up|high|proud|out|forward|tall
    tight|close|up|right to|into|against my|the? chest
    weight ~ going|goes|went|shifts|shifted|moves|into ~ foot|feet|toes|heel|heels|leg
    """,
    "things, not bodies": """
    phone|stick|broom|broomstick|tape|tripod|camera|ipad|tablet|band|shoelace|lace|laces|stand|holder|mount|strap|bottle|chair|
        selfie|ladder|mirror|elastic|collar|clip|belt|pencil|pen|charger|cable|floorboard|floorboards|floor|door|shelf|rope|
        bulb|screen|box|bench|plate|plates|bands|string|zip|button has|just|keeps|kept|stick? fell|fallen|falling|falls|slipped|
        slipping|slips|snapped|snaps|cracked|cracks|crack|popped|pops|tipped|dropped|broke|broken|creaks|creak|gave
        over|off|down|out|up|way?
    something|somethings is? wrong|off|up|weird with the|my|this? phone|app|bot|video|film|camera|link|tape|upload|file
    faint <my>? tape? pencil|chalk|line|lines|mark|marks|stretch|signal|light
    mark|line|tape is|was a|bit|very|too? faint
    look|looks|looking|looked|be|stay|stayed|keep|dress|looks sharp
    image|picture|video|photo|film is|looks? sharp
    am|pm|oclock sharp
    <clock> sharp
    at|by|there|tonight|tomorrow|around|from|till|until|tmrw|day|meet|before|after <hour> sharp
    <hour> sharp works|is|tonight|tomorrow|please|then|every|on|works|suits|good|ok|am|pm
    at 5|6|7|8|9|10|11|12 sharp
    sharp turn|edge|corner|corners|angle|focus|image|dressed|inhale|exhale|breath|looking|minded|pencil
    pinch of
    in|at a pinch
    electric bike|scooter|car|heater|fan|scales|toothbrush|guitar
    tweak|tweaked|tweaking|tweaks my|the|a|some|few|little|bit|it? of? my|the? plan|schedule|squat|squats|diet|sleep|lift|
        lifts|reminder|reminders|days|stance|setup|set|form|settings|angle|phone|
        camera|program|programme|plan|grip|width|tape|technique|position|height|shoes|routine|answer|number|numbers|placement|
        time|times|day|days
    shooting|shoot|shot|shoots it|this|that|a|the|my|some|another? video|videos|film|footage|clip|vertical|portrait|landscape
    shooting|shoot|shot|shoots it|this|that? from the|a? side|front $|now|again|today
    burn|burned|burning|burnt calories|fat|toast|dinner|tongue|mouth|out
    blood pressure|test|tests|work|sugar
    head|eye strain|fuzz
    """,
    "sayings": """
    hell|fuck|omg|shit|damn|wow yeah|yes|yep|nice|easy
    kid|kids|baby|son|daughter|dog ~ crying|screaming|barking
    omg|wow|damn|christ|jesus|shit|fuck|god|blimey so|that|thats was|is? easy|low|good|deep|fun
    shit|fuck|damn|argh|oops|ugh wrong|meant|forgot|forget|sorry|typo|missed
    take|have|had|took|having|taking|another a? stab
    covid|flu|my|a|the|had|booster|travel flu|covid|booster|second|tetanus? jab|jabs today|yesterday|this|last|on|booked|at
    covid|flu|booster|tetanus jab|jabs
    nip|nipping to|out|into|round|home|over|up|down the|a|for|my|to|see|get? shop|shops|loo|toilet|town|kitchen|gym|car|door
    nip|nipping out|round|home
    stab|stabs at it|this|that|another|measuring|guessing|doing|one|number|answering
    fell|fallen|falling over|about? laughing
    fell|fallen|fall for|behind|off the|track|wagon|back into|through
    mind|brain|bum numbing|numbingly
    sore loser|losers|subject|point
    im|were|so|flat|still|too broke so|this|until|till|no|lol|haha|right
    burning|burned|burnt through <my>|data|cash|money|calories
    chest|torso|stick|broom fell|falls|dropped|drops|falling forward|forwards|down|over
    numb to|bum it|that|waiting
    numb skull
    fat|clumsy|butter|cold|slippy|sausage fingers|thumbs
    not gonna|going to? lie
    no doubt|lie|joke|kidding|question|wonder|surprise|denying|idea|clue|matter
    cant|wont|wouldnt|couldnt lie|deny
    not|no to? mention
    so|too|very|really|pretty|quite light a|an load|weight|bar|day|session|set
    load|weight|weights|bar|plates|kilos|number is|was|are|were|feels|felt|seems|being so|too|very|really|pretty|quite light
    why ~? load|weight|weights|bar so|too light
    why so|too light $|today|this|on|for|again|still
    set|setting my|the|this|that depth|load|weight|limit|limits|bar|height|target|reminder|days|day|time|timer|pins|safeties|level|goal
    """,
    "read as something else": """
    doms ~ killing me -> doms
    work|job|kids|kid|boss|heat|wife|baby|traffic|wifi is|are|was killing me
    feel|feels|felt like a|the? nice|good|big|strong|deep|just|normal|proper? stretch|pull|jelly|lot|good|champ|beast|boss ->
        stretch
    not|isnt|wasnt|hasnt|havent|arent|aint|never|wouldnt|couldnt|cant been|be|feeling|totally|completely|entirely|exactly|
        quite|fully|really? pain|symptom free -> pain
    not|isnt|wasnt|arent|aint|never|wouldnt|couldnt|cant be? totally|completely|entirely|exactly|quite|fully|really?
        painless|painfree -> pain
    no longer pain free -> pain
    no longer painless|painfree -> pain
    <hurt> ¿ no idea|clue|joke|doubt|kidding -> hurt ¿
    <hurt> ¿ dont|didnt know|think|like -> hurt ¿
    no|zero|without <feel>? aches or|and pains -> no pain
    not|no longer|more -> not
    none of it|this|that|them|these|those -> nothing
    no part|bit|bits|side of it|this|that|them -> nothing
    at no point|time|stage -> never
    lack|absence of -> without
    <cant> feel|notice|detect|sense|find any? real|sharp|actual|proper? <hurt> -> no pain
    but they|it|that|its? never came|come|been back? -> , healed
    ,|and|it|they never came|come back -> , healed
    but its|it|thats|im|all|been|has|is|was|ive? been? completely|fully|totally|entirely|all|long recovered|healed|fine|better|good|ok|
        normal|gone now|since? -> , healed
    fine|ok|okay|good|better|great|alright|healed|sorted|grand|normal now|today|since|again|nowadays -> recovered
    """,
}

# Words said of the back, hips and legs when nothing is wrong. While the body works, a clause that names one of them with a word from
# outside this list is asked about: a catch for wording no table has.
EVERYDAY = """
    find finds found finding wal tap taps tapped hug hugged hugs
    i im ive id ill you youre we he she they them it its itself is isnt are arent was wasnt were am be been being do
    does did doing done has have had having will would can could cant couldnt should may might must get gets got
    getting go goes going went gone come comes came coming stay stays stayed staying keep keeps kept keeping start
    starts started starting begin begins began move moves moved moving stop stops stopped round rounds rounded
    rounding tuck tucks tucked tucking tilt tilts tilted bend bends bent bending lift lifts lifted lifting press
    presses pressed pressing push pushes pushed pushing flatten flattens flattened arch arches arched arching curve
    curves curved curving fold folds folded folding turn turns turned turning rotate rotates rotated shift shifts
    shifted shifting rise rises rose raise raised raises reach reaches reached touch touches touched drop drops
    dropped lower lowered sit sits sat sitting stand stands stood standing lie lies lay lying squat squats squatted
    squatting hinge hinged hold holds held holding brace braced use used using see saw seen look looks looked show
    shows filmed film felt measure measured put puts take takes took taking change changes changed make makes made let
    lets lock locked pull pulls stretch stretches stretched stretching stretchy relax relaxed help helps cave caves
    caved caving travel travels slide slides slid straighten straightened straight pointing point points pointed
    spread work works worked working fire engage engaged warm warmed train trained rest rested try tried need needs
    want wants know think say said mean means and or nor but so then when while as if because cos than that this these
    those there here where which what who how why in on off at to of for from with without by up down over under into
    onto out through between behind before after past near against across around along above below beside inside
    outside towards toward until till about during again also too still yet now just only even ever never always
    sometimes usually often maybe perhaps probably definitely really very quite pretty rather almost nearly bit little
    lot lots much more most less least some any all both each either neither every one once twice two three four five
    six seven eight nine ten eleven twelve few first second third last next same other another left right side sides
    front top bottom middle end half way deep deeper deepest depth low high higher parallel angle degrees degree deg
    cm inches inch wide wider narrow closer apart far further slow slower slowly fast faster early earlier late later
    soon sooner quickly long longer short shorter big small tight tighter stiff loose flat flatter neutral level good
    great fine ok okay easy easier hard harder clean smooth solid strong stronger better best well clear clearly
    normal usual nice happy comfortable free stable steady balanced tired shaking shaky wobbly sweaty hot fresh heavy
    light lighter heel heels toe toes floor ground wall bar stick broom broomstick tape box chair bench plate mirror
    phone camera video step stance position form shape range motion movement pressure hands palm knees set sets rep
    reps test tests time times day today yesterday morning minute minutes min mins week weeks number numbers cms
    metres yes yeah yep yup no nope nah not none nothing please thanks thank sorry mate lol haha tbh hmm um oh anyway
    though butt wink tail pelvis body weight bodyweight kg lb lbs back lumbar k flexible mobile inflexible limited
    restricted bendy gives give trouble issue issues problem problems curl curls extension bridge plank thrust leg
    legs machine shoulder width hip height knee kneecap hamstring hamstrings glute glutes sleeve sleeves wrap wraps
    belt shoes barefoot socks feel feels feeling mostly slightly somewhat roughly exactly evenly equal equally
    different symmetrical naturally fully completely totally hardly barely soft softer firm firmly upright vertical
    nearer close cross crossed forward forwards backward backwards sideways inwards outwards inward outward internal
    external rotation whole entire part parts area bits flexion crease joint spine muscles muscle my your a an the
    shot shoot shoots flexor flexors chest slip slipped slips weak weaker roll rolls rolled rolling pins safety skip
    skipped skipping pulled pulling pop pops track tracks tracked hit hits miss misses missed block blocked open opens
    opened limit limits cooked jelly hike hiked coach physio doctor says pump pumped meant supposed wrong like mad bum
    sag sagged sway swayed wobble wobbled line lines mop pipe whose recovered toast fried spent gassed drum stiffer
    oops whoops travelled traveled wandered wanders touching loses lose peeled peels away tip unlocked thing runs room
    twists twist lead kick kicks kicked dangerous strap straps explain terrible mess messed silly stopping unlock ish
    halfway partway sinks sink sank sunk levelled levels settled settles loaded loads extend extends extended
    extending flex flexes flexed flexing elongate hover hovers hovered float floats floated planted plants glued dip
    dips dipped wavy scoop scoops scooped poke pokes poked duck ducks ducked flare flares fan collapses collapse
    collapsed spill spills tilting leaving unfold unfolds unfolded closed closes nearest furthest distance gap gaps
    touchdown contact switch switching switched swap swapped swapping uneven bare redo trunk torso air cue recording
    recorded swing swings swung bounce bounced bouncing adjust adjusted adjusting flight drive drove driving trip bus
    car plane desk office sofa couch bed sleep slept sleeping woke gym home house garage kitchen hall stairs street
    park weather rain sun summer winter birthday dinner lunch breakfast coffee water food kid kids wife husband friend
    mum dad boss allowed x fat finger fingers word words type typed typing reply answer question message send sent
    link picture photo pic clip upload charger battery screen app bot music song timer clock pencil pen paper book
    door window table shelf towel pillow blanket cushion rug carpet tile wood wooden shirt shorts trousers pants jeans
    shoe sock trainers lifters deadlift deadlifts lunge lunges row rows pulldown chin ups pullups cardio jog jogging
    run ran running bike cycle cycling swim swam swimming walk walked walking football rugby tennis yoga pilates class
    course program programme plan routine schedule exercise exercises drill drills mobility flexibility technique cues
    weights dumbbell dumbbells kettlebell barbell empty rack racked unracked warmup cooldown percent quarter double
    triple single total average max maximum minimum approx somewhere everything anything something everyone someone
    people person guy girl lady man woman old new young white green colour shadow lights mark marks marked ruler
    bubble reading readings measuring measurement score result results true false correct check checked checking
    compare compared copy copied repeat repeated practise practice practised learn learned learning teach taught watch
    watched watching videos follow followed listen heard read reads write wrote written call called name named age
    weighs weigh tall skinny thick thin square angled diagonal horizontal wonder wondering guess suppose hope
    hopefully tomorrow tonight afternoon evening night noon weekend month months year years hour hours ago since
    already otherwise instead except besides whichever whatever whenever therefore drift drifts drifted blocks lost
    looser squashed squeezed rocked rocks tipped tips hikes fell s secs seconds sec
"""

# Causes of training soreness.
SORENESS_CAUSES = """
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

# Long ago, and wholly over: with both said and nothing against it, an old pain does not stop a test.
LONG_AGO = """
    years|months|yrs|decades|decade|ages ago|back|since
    at school|uni|university|college
    in 1990|1995|1998|1999|2000|2001|2002|2003|2004|2005|2006|2007|2008|2009|2010|2011|2012|2013|2014|2015|2016|2017|
        2018|2019|2020|2021|2022|2023|2024
    as a kid|child|teen|teenager|student|youngster|boy|girl|junior
    when i was a|young|younger|little|small|ten|twelve|at|in
    old <joint>? injury|injuries|problem|break|fracture|strain|tear
"""

WHOLLY_OVER = """
    completely|fully|totally|entirely|100|perfectly|absolutely ~ recovered|healed|fine|better|gone|good|ok|normal|over|
        pain
    long ~ gone|healed|over|recovered|forgotten
    all ~ fine|good|clear|healed|gone|normal|sorted|recovered
    healed
    no|never|zero|not|without any|more|a|had? trouble|troubles|problem|problems|issue|issues|bother since|now|at|after|ever|$
    nothing|none since|now
    never came|come|been|returned|bothered|had|felt it|me|back|since|again|any
"""

# With one of these the old pain may not be over.
NOT_OVER = """
    but though although until till except again still sometimes occasionally lately recently just came comes unless
    however apart only and otherwise here hurts hurting aches aching
"""

# Not now, or perhaps not now; and words that say it is now after all.
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

STILL_NOW = """
    still|again|currently|today|presently
    right now
    came|come|comes|coming back
    now
    just <pain>
"""

# After a denied hit: "the left doesn't hurt but the right does".
ELLIPSIS = """
    left|right|other|back|hip|knee|one side|one|leg? does|did|is|was|has $
    but ~ it|that|one|side|left|right does|did|has|is|was $
    only at|when|if|on|below|past|near|deep
    but ~ left|right|other|one ~ yes|yeah|yep|yup
"""

# Shortly before a hit: asked about, feared or supposed rather than felt.
SUPPOSED = """
    if unless supposed meant should would might may gonna will whether until till case scared afraid worried worry
    fear avoid avoiding prevent risk causing cause expect expecting suppose normal could counts
"""

# Denials. "no" denies a thing, "not" anything; "hardly" only partly; "without" after UNABLE denies nothing.
NO_FORMS = """
    no zero 0 0/10 0.0 nil minus sans nay non noo
"""

WITHOUT = """
    without wo w/o
"""

NOT = """
    not isnt wasnt arent werent aint doesnt dont didnt hasnt havent hadnt never nothing nowhere none neither nor wont
    nobody nuffin nowt doesn didn isn wasn hasn haven don dosnt
"""

HARDLY = """
    hardly barely scarcely shouldnt minimal minimally negligible
"""

UNABLE = """
    cant couldnt cannot not never unable hard impossible struggle struggled didnt wont dont doesnt difficult barely
"""

# Allowed between a denial and what it denies. With any other word between them it is no denial.
BETWEEN = """
    any or nor history past previous prior of at all kind kinds sort sorts type types hint trace sign signs bit a an
    single slight slightest least other new more further noticeable nerve sharp shooting stabbing burning form weird
    unusual obvious old extra even ever whatsoever actual sensation sensations anything anywhere one moment point dull
    sudden spreading radiating low associated related referred in on down around near <body> left right lower upper
    inner outer front both either
"""

# Allowed between them only in a list with "or": "no tightness or pain".
LISTED = """
    tight tightness stretch stretching stiff stiffness discomfort symptoms issue issues problem problems weakness pop
    pops clicking popping pulling swelling heat
"""

# Verbs allowed between "not" or "without" and the hit; "no" with one of them denies nothing.
BETWEEN_VERBS = """
    feel feels felt feeling have has had having get gets getting got been be being is was are were cause causes caused
    causing give gave gives giving me notice noticed noticing experience experienced experiencing seem seems seemed to
    from actually currently like also say detect sense report remotely
"""

# With these between, "no" is a word of its own ("no it hurts") and "not" denies only a thought of it.
OPENERS = """
    i it its that thats this there theres my the your if id ive im think thought thinking know sure call called would
    believe say reckon what described describe when where because cos
"""

# With these between, some is left: "not that painful", "no real pain".
DEGREE = """
    really real very too so much bad badly terribly particularly exactly quite overly super crazy massive massively
    huge hugely lot lots severe severely extreme extremely serious significant significantly major necessarily
    entirely completely totally always usually proper properly as
"""

# After a denied hit these take part of the denial back: "no pain until the bottom", "doesn't hurt much".
AFTERWARDS = """
    much too bad badly lot anymore yet unless until till except excluding apart besides aside before than if barring
    unlike exactly really per
"""

# Misspellings too far for the edit distance, or closer to another word: the word meant, and how it is typed.
SPELLINGS = {
    "hurt": "hrt hert hurrt jurt",
    "hurts": "hrts herts hurtz hurst hrus hurys hurtds hutrs hrust hurted",
    "pain": "pian payn pani oain paon pane pqin psin pein",
    "ouch": "uch ouhc ouc oucj",
    "numb": "numm nub num nmub nunb",
    "cramp": "kramp",
    "squats": "sqauts sqats squtas squas",
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
    "dizzy": "dissy dizy dizzie dizzi",
    "popped": "popd poped",
    "breath": "breth brath",
    "breathe": "breeth brethe breate",
    "pins": "pns",
    "faint": "fant feint",
    "chest": "ches chst",
}

# Words of the patterns that are corrected when mistyped, besides the single words of pain and the joints.
MISTYPED = """
    without doesnt didnt hasnt havent nothing never feeling something needles pins popped popping snapped cracked
    shooting electric electrical twisted pulled muscle hamstring hamstrings hammy calf calves foot thigh buttock
    killing seized locked radiating travelling spreading running feel went heard stretch monday yesterday training
    session stopped sensation headed breathe breathing chest
"""

# Words that count only if spelt exactly: too many others are one typing mistake away.
EXACT = """
    ants bowel bowels boli bolno agri ahia ohia aray ajaj sakit zeer dolore urts urting weh ooft ooof eesh severe
    bulge biting nagging torqued yelped yikes kink stitch collapsed bites pricks pricking leaked gouging torture faint
    lame flare flares jabs eina aiya
"""

# Real words one typing mistake from a word of the tables.
WORDS_NEAR_PAIN = """
    aceh acre acres almere bela boca bole bolu charles hutt lake lakes lima tieling tongling zinder
    acted angles arched arches arching array ashes bank bark blending bloom bread breeding bunny burly bury camp
    camped camping camps champ champs chick chunk clamp clamped clamps clock cracker crammed cranked crappy crazy
    creamy cricket desk dick disco dish donor door duel electrician fading faints feed feeding fees feint felling fizz
    font food fool fort fuel fuzzy gender gift grain grin grinning groan grown hack hacks haunting heck herd hippy
    hits hops hosting hugging humming hunt hunting hurling hurry hurtful hurth hurtle huts jury kneel knew lacked lamp
    leading leaning leaping leaving licked limb lime limo lump mates napping naps necks needless nick noting paint
    painted painter painters painting paintings paints paired pairing pairs panned pans pawn pelvic pens pickles pics
    pies pigs pine pings pink pint pints piss pitch pitched pits plain plains pooped popper pouch propped propping
    pulley pulsed punch punched punches punching radiate raining reel retraining rigs rims rips root rubs scorer sent
    shabby shard share shark shelled shine shirt shopped shore shouldered shouting sine sing singer singing sings
    sized slab slapped sling smart smelled smelling snore sober sole spain spam spelled spelling spice spines spins
    spiral spite stag stain stained staining stan star stars stat stats stays stepped stingy stink stinking stinks
    stint stomped store strains strait string strings stub stun stunt surfer swapped swing swinging swings swore
    tangle tanked teak tended throws tickling tinder trailing twine twinkling twister valves waist wax welling welt
    wept west whispering wine winking winning wore wrists yepp yoghurt yurt zinc zips
"""

# Neighbours of each key on the keyboard.
BESIDE = {
    "a": "qsz", "b": "vnh", "c": "xvd", "d": "sfe", "e": "wrd", "f": "dgr", "g": "fht", "h": "gjbnyu", "i": "uok",
    "j": "hku", "k": "jli", "l": "kop", "m": "nk", "n": "bmhj", "o": "0ipl", "p": "0ol", "q": "wa", "r": "etf",
    "s": "adwz", "t": "ryg", "u": "yij", "v": "cb", "w": "qes", "x": "zc", "y": "tuh", "z": "xas",
}  # fmt: skip

# Units said with a number: a reply of nothing else is an answer, and is never weighed.
UNITS = """
    cm cms mm m metre metres meter meters in inch inches ft foot feet kg kgs kilo kilos lb lbs pound pounds
    stone st deg degs degree degrees s sec secs second seconds min mins am pm left right l r both each side
    sides about around roughly approx ish half and or plus minus x reps rep sets set k
"""
