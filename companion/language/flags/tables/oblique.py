"""Signs said round about, without their names: what somebody noticed, had to do, or says with a wink. All are doubtful, and asked about.

The wording is the project's own (choice, no source). A line stays only where it is heard in few of the messages that carry no sign.
"""

from companion.language.flags.flag import Flag
from companion.language.flags.tables.signs import Signs

OBLIQUE = (
    Signs(Flag.WEAKNESS, "a leg that fails, round about", """
    foot|foots|feet|ankle ~ floppy|floppier|limp
    <leg> collapse|crumple|fold ~ under ~ bar|me|weight
    foot ~ slip+ ~ off ~ pedal && push|strength|weak
    knee|leg|ankle|hip bends|folds|goes|buckles by itself
    legs|knees|leg|knee buckle+ ~ if|when|while ~ stand|walk|step|stairs|queue|standing|walking
    scuff+ ~ toe|toes|carpet|floor|pavement|foot|shoe
    it|leg|knee|foot|ankle|hip gave|giving|gives out|way|under
    <oneleg>|knee ~ crumple+|wafted|splat|unlocked|folds|folded|crumples
    dragging|drag it|behind
    haul+|pull|lift|heave+|pick|carry ~ <leg>|it ~ by|with|over ~ hand|hands|ankle|trousers|bath|car|bed
    someone|somebody elses leg|foot
    <leg> ~ percent|% ~ of ~ was
    one at a time & stairs|steps|step
    slap slap|slaps
    slap+|clop+|flap+ ~ hallway|corridor|pavement|hall|tiles|step
    swing|hitch|hike ~ <leg>|hip ~ out|clear|round|side
    stepping|steps|step ~ high|higher
    toes|foot|toe wont|wouldnt|dont|didnt|doesnt|cant clear|pick|come|rise|obey|answer
    trip+|stumble+ ~ over nothing|flat|thin
    zero|none|0 on ~ right|left && toes|heel|raise|raises|hop|hops
    banister|bannister|handrail && hands|haul|pull|cling|hang|both
    walking stick|frame|pole
    legs|knees went|gone|go soft|jelly ~ walk+|stairs|shop|street|kitchen
    strength ~ gone|left|disappeared|went !test
    <oneleg> ~ not|isnt|wasnt|aint ~ there|picking|listening|answering|holding|was|cooperating
    push+ like a|an baby|child|kid|toddler
    cant ~ lift|raise|get ~ <leg> ~ into|onto|over|up|to ~ trousers|sock|shoe|bath|car|step|kerb|stair|pedal|bed
    """, sure=False, thing=False),
    Signs(Flag.BLADDER_BOWEL, "passing or holding, round about", """
    second|third|another pair ~ trousers|pants|underwear|knickers|shorts|jeans today
    no warning & wet|wee|pee|toilet|poo|leak+|gush+
    toilet|loo trips|visits & lottery|gamble|panic|luck
    accident ~ number|aldi|tesco|shop|queue|lift|office|car & two|toilet|poo|wee|pee
    falls|comes|runs|pours ~ out of me
    no control ~ back|front end
    stream|flow ~ feeble|weak|thin|slow|stops
    never|not|dont|without|still ~ empty|full && loo|toilet|pee|wee|go|stream|down|bladder|downthere
    sneeze+|cough+|laugh+|bend+ && let go|squirt|came|dribble|lot|leak+|wet|damp
    push|press|lean+ ~ belly|tummy|stomach|forward && empty|come|go|going|start|loo
    change+|wash+ the|my sheets|bed|mattress|bedding
    not|wasnt|isnt ~ wind|fart $|.|,
    realised|realized|knew|noticed|heard ~ gone|been|went ~ without|because|only
    gone|went|go without deciding|knowing|meaning|asking|noticing
    no clue|idea ~ when ~ happened|started|came
    last|proper|good wee|pee|poo|slash|crap|movement ~ was|yesterday|monday|tuesday|wednesday|thursday|friday|saturday|sunday|days
    when i last had|did ~ go|poo|wee|pee
    tap ~ wont|not|doesnt ~ turn+|run|open|shut
    hours|days|morning|night && wont|doesnt|not|nothing come|comes|coming|go|happens && belly|drunk|drank|water|litre|litres|it
    backed|blocked|bunged up for|since
    cant|couldnt go at|in the|a? urinal|loo|home|toilet|bathroom|night
    come|comes|came|goes|start|starts|started ~ without ~ asking|warning|telling|permission|me
    dark|spare|second|extra trousers|pants|jeans|underwear|knickers|undies
    incident|accident|mishap|episode in|on the|my ~ car|bed|sofa|shop|bus|work|trousers|supermarket
    up <number>|six|seven|eight times && stand|produce|teaspoon|trickle|pee|loo|toilet|night|dribble
    potty trained|training && me|i
    no|nothing|cant|zero squeeze
    urge|warning|signal|alarm|bell|message|sensation ~ doesnt|not|gone|no|never|isnt|stopped ~ ring|come|arrive|there|go
    didnt|never|couldnt|not ~ make ~ to|the ~ hallway|door|bathroom|loo|stairs|toilet|house
    damp|wet patch|patches|footprints|seat
    cant make it stop|start|go|come
    no way|how|idea to|of get|getting|start|starting it
    tell|ask|beg ~ it to go|start|come
    ruin+ ~ seat|trousers|sofa|mattress|chair
    press|lean|strain|push ~ forward|hard|belly ~ to ~ empty|go|finish
    """, sure=False, thing=False),
    Signs(Flag.SADDLE, "between the legs, round about", """
    sanitary|towel|tampon|pad|pants ~ slipped|moved|wet && nofeeling|idea
    <crotch>|<seat>|thigh|thighs|pants && cardboard|rubber|rubbery|wood|wooden|plastic|mannequin|glove|duvet|injection|anaesthetic|dentist|
        snow|balloon|sponge|blank|fizz|sherbet|nettles|carpet|sandpaper|wax
    sit|sat|sits|sitting & cardboard|snow|duvet|glove|rubber|balloon|sponge|foam
    chair|seat|bench|cushion isnt|wasnt|not there
    inside|inner|inwards ~ thigh|thighs|leg|legs && nothing|missing|less|dull|couldnt|didnt|gone|blank|duvet|fingers|dead|numb|felt
    paper|soap|towel|seam|shower|bath|wipe|wiping|dry|washing|wash|shave+ && register|air|gap|middle|nofeeling|nothing|numb|idea
    where|place ~ legs meet|join|start
    bit|part|skin|area|patch ~ i|you|we sit|wipe ~ on|with? ~ feels|is|like|cant|isnt|gone|dead|numb|cardboard|different
    jeans|seam|underwear|pants|knickers|boxers && dont|cant|couldnt|not feel|notice
    line ~ below|downwards ~ && feel|faint|numb|gone|nothing
    nappy|diaper ~ && feel|feels|like
    keys|phone|wallet|pen|plug && sat|sitting && notice|feel|felt|knew|idea
    volume ~ down|turned ~ && <crotch>|<seat>
    tailbone|coccyx && numb|rubbery|fizz|odd|patch|weird|tingle+|strange|front
    """, sure=False, thing=False),
    Signs(Flag.CHEST, "heart and breath, round about", """
    like a|an vice|vise|clamp|elephant $|.|,|on|round
    tight|tightening belt|band|strap round|around ~ ribs|chest
    lips ~ blue|purple|grey
    room|floor|world|garage|ceiling tilted|tilts|tipped|spun|swam|moved|went
    dont|cant|not remember ~ bit|after|getting|falling|landing|floor
    came|come|coming round|to ~ floor|by|with|on|later
    puffed|winded|gasping|panting|wrecked|breathless ~ tying|walking|dressing|talking|making|getting|carrying|laces|bins|postbox|bed|
        shower|phone
    half|one a? flight && done|stop|rest|lean+|rail|gone
    elephant|brick|clamp|vice|fist|sandbag|sand|heaviness && chest|breastbone|sternum|ribs|shoulder|heaviness|effort
    pressure|squeezing|squeeze|squeezes|burny|burning ~ middle|breastbone|sternum|centre|center|behind
    squeezing|squeezes|clamp+|grips && carry|carrying|effort|walk|walking|hill|hills|stairs|bins|shopping
    indigestion|reflux|heartburn && walk+|hill|hills|effort|climb+|stairs|tablets|exercise|brisk
    come|comes|came|coming on ~ walking|effort|hills|stairs|climbing|exertion && goes|stops|eases|sitting|rest|stop
    tunnel vision
    lights|vision|sight ~ go|goes|went|going ~ out|dark|black|narrow && stand|standing|rep|reps|sec|second|seconds|bottom|when|bend|bending
    breathe|breathing|breath through|like|thru a? straw
    breath ~ back ~ twenty|thirty|ten|minutes|ages|hour|longer
    finish|get|say ~ sentence|sentences|words && walk+|stairs|breath|phone|stop
    watch|monitor|pulse ~ said|says|showed|shows|read && tv|sofa|bed|lying|sitting|nothing|resting|asleep
    hummingbird|butterflies|butterfly|morse|jackhammer & chest|heart|there|ribs
    heart ~ && morse|hummingbird|pillow|somersault|washing|bongo|jazz
    went|go|goes|gone|dropped down ~ like|sack|tree|lump|potatoes|stone|bricks
    cant|couldnt ~ without stopping|stop|rest|breath|puffing && postbox|shop|stairs|hill|car|gate|street|corner|week
    next thing ~ floor|ceiling|carpet
    """, sure=False, thing=False),
    Signs(Flag.SELF_HARM, "not wanting to go on, round about", """
    tell my kids|wife|mum|mom|dad|husband|family|son|daughter|parents|sister|brother i ~ tried|love|loved|sorry
    sorted|sort|sorting|arranged|arrange|found|decided ~ who|whod|whos|home ~ && dog|cat|kids|children|horse
    written|wrote|writing|leaving ~ letters|passwords|will|goodbyes
    everything i need to end|do|go
    pills|tablets are counted|ready|here
    easiest|quickest|cleanest|painless|best way to go|die|do|end
    no|dont|cant ~ way out except|but|other
    wrote|written|writing to my ~ in case
    picked|chose|chosen|set ~ day|date|place|bridge && it|a|the
    hope|hoping|pray|praying ~ thats|that|this|its|it ~ it|last|end|over $ !set|rep
    tired && not|dont ~ sleepy|sleep ~ kind|$|sort|type
    wont|not|wouldnt|wasnt|never|dont|cant ~ see ~ spring|summer|winter|christmas|tomorrow|birthday|easter|future
    not turn|turning ~ wheel|corner
    insurance && kids|wife|family|boys|girls|start|clean
    run|ran|running out of reasons
    reason|reasons ~ && crossed|last|tonight|left|run|list
    feel something|anything ~ other|else|than|real && scratch+|cut+|burn+|hit|bit
    peace|quiet|calm|lighter|lightest|relieved && decided|decision|letters|god|mind
    tell my ~ wasnt|sorry|loved|love|angry|fault
    cancel+|paid|tidy+|clean+|closed && nobody|noone|passwords|set|after|letters
    stopped|past|stop caring if|whether|about
    weight|millstone|stone|chain round|around ~ neck && wife|husband|kids|family|everyone|them|me
    free|rid|shot of me
    bye|goodbye without
    last entry|message|log|check ~ from me|i|ever
    deserve|deserved it|this|that|pain && punch+|hit|cut|burn+|hurt|bruise|knuckles|wall
    life|lifes ~ done|finished|over with
    if|when i wasnt|werent|not|no|am|were alive
    did it at|like|too ~ && understand|understanding|age|why
    thought|thoughts ~ again && bad|dark|stayed|longer|back
    under the ground|earth|soil
    burn+|cut+|scratch+|punch+ ~ arm|arms|legs|wrist|wrists|wall|thigh && help|helps|deserve|lighter|because|numb|feel|calm
    leave so i can
    wasnt|never|not ~ meant|supposed ~ to|for ~ stay|last|here|alive|life
    take|took|want|found|see the|an|my exit !left|right|ramp
    wont|not|isnt ~ be ~ anyone|anybody|someone|one ~ read|reply|answer
    peace with god|it|myself|dying|that
    cross+ ~ bridge|tracks && stop|middle|look|every|water
    dont|cant|not ~ see ~ myself|me ~ pictures|future|plans|christmas|photos|old|any
    haunt+ ~ own|my|house
    remember me ~ when|as|was|strong|happy
    no more tomorrows|mornings|birthdays|christmases
    would|will be easier|better|simpler|lighter|cheaper for ~ all|them|everyone|everybody|her|him|kids
    stop|end|switch the whole|entire thing|lot
    given|giving|gave ~ away && need|wont|kids|mates|everything|anymore
    who|nobody|noone|anyone ~ read|notice|find|miss ~ me|it|friday|body !if
    """, sure=False, thing=False),
    Signs(Flag.SEXUAL, "sexual function or feeling, round about", """
    ed at|when|since|after
    nothing|not|nowt ~ stands|rises|stirs|responds && downthere|attention|wife|husband|bed|there
    bedroom department|business|side|front|life
    equipment|soldier|soldiers|plumbing|machinery|hydraulics|downstairs|engine ~ not|hasnt|doesnt|isnt|stopped|deserted|
        wont|retired|asleep|broken
    we tried && couldnt|cant|didnt|nothing|numb|feel
    stays|staying soft
    soft lately|again|halfway|now && gone|goes|bit
    fake|faked|faking it|an
    finish|come && dont|cant|no|without ~ feel|feeling ~ it
    not|cant|couldnt|isnt perform+ && wife|drift|partner|bed|back|husband|girlfriend
    touch+ me && nothing|numb|sofa|feel|dead|off
    wires|wire ~ cut|unplugged|dead
    feel ~ partner|him|her|wife|husband && used|cant|couldnt|just|not|anymore|no
    """, sure=False, thing=False, own=True),
    Signs(Flag.FALL, "a fall or a blow, round about", """
    horse|bike|scooter|swing|trampoline|motorbike|kerb|curb|ladder|quad|moped|toboggan+|sledge|sled|skates && had me|threw|thrown|
        broke|gravity|came off|went off|bump|landed|hip|off
    miss+ ~ last|two|one|a ~ stair|stairs|step|steps|rung
    went|came|go ~ over backwards|backward|sideways|handlebars
    someone|somebody|car|van|lorry|bus|cyclist|truck|taxi ~ into ~ back|side|rear of me|us|my
    took|got|caught ~ stick|ball|knee|elbow|kick|plate|boot|puck ~ in|on|to|right ~ kidneys|back|hip|head|ribs|spine
    hit|kissed|met the|a deck|tiles|tarmac|pavement|pole|lamppost|wall && hip|back|head|first|hard|wet|ice
    dropped|fell|went through ~ ceiling|loft|floor|ice|roof
    car|van ~ ditch|roof|rolled|wrapped|wall|tree|hedge
    ditch && car|bike|ended
    size of a|an melon|grapefruit|orange|egg|football
    caught|hit me on|in the|my ~ hip|head|back|spine|neck
    judo|rugby|wrestling|hockey|football && thrown|tackled|landed|came|slammed|badly
    down the ~ steps|stairs|escalator with|on|head|bum
    ski+|skied|snowboard+ ~ into|fell|crashed|tumbled
    """, sure=False, thing=False, own=True),
    Signs(Flag.FEVER, "ill, round about", """
    thermometer & 38|39|40|41|37.8|38.1|38.2|38.3|38.4|38.5|38.6|38.7|38.8|39.1|39.2|39.3|39.4|39.5|39.6|39.7|40.1|101|102|103
    down to 37|38|37.5|38.5
    glands up|swollen|like|out
    throat ~ razor|blades|glass|sandpaper|raw
    hot ,? cold ,? hot
    red and? hot && cut|wound|scar|skin|shin|leg|line|swollen
    boil|abscess|wound|scar|blister|bite ~ weeping|pus|oozing|angry|infected|septic|hot
    hug+ ~ toilet|bowl|bucket|loo
    had|have|got|with the runs|squits|trots|bug|lurgy
    bringing|hacking|cough+ up muck|phlegm|green|stuff|gunk|blood|lung
    cant|not|cannot get|keep|stay warm
    fluey|fluish|flulike
    achy ~ sweaty|hot|cold|shivery
    death warmed|heated
    whatever|what the|my kids|kid|nursery|office|school|boss brought|gave|had|have
    """, sure=False),
    Signs(Flag.HEART_HISTORY, "a heart with a history, round about", """
    tube|tubes|balloon|box|battery|device|gadget|wires|mesh & artery|arteries|heart|collarbone|ticker
    pig|pigs|cow|cows|mechanical|metal|tissue|plastic valve
    my|the|our cardiologist|cardio ~ says|knows|said|sees|wants|team
    zap+|shock+|jolt+ ~ rhythm|heart
    pump|ticker|heart only|just runs|works|pumps|at
    ticker|pump ~ dodgy|dickie|dicky|gammy|bad|off|old|percent
    dickie|dicky|dodgy|gammy|enlarged|thick|stiff heart|ticker|pump
    hole in it|my|the|heart && born|patched|heart|closed
    heart muscle
    aorta|aortic|aneurysm|widowmaker|flatlined|cabg
    grafts|graft ~ && leg|vein|three|triple|heart|quad
    """, sure=False),
    Signs(Flag.CANCER_BONE, "cancer or bones, round about", """
    all clear ~ year|years|month|last|since|scan|this
    year|years ~ all clear
    lost a|one|my|both boob|breast|ball|testicle|kidney|lung
    one ball|boob|breast|kidney|lung $|left|.|,
    shrunk|shrunken|shorter && inch|inches|cm|bones|height
    prostate ~ watch|watched|surveillance|out|removed
    active surveillance
    zapped|radiation|rads && pelvis|breast|chest|neck|years|times|treatment
    bone|bones tablet|tablets|injection|drip|jab|infusion|pill|medicine|strengthener
    injection|infusion|tablet|drip ~ for|strengthen ~ bones
    bowel|kidney|lung|stomach|womb|lump && growth|nasty|cut out|shortened|malignant
    growth in|on it|my|the
    """, sure=False),
    Signs(Flag.WEIGHT_LOSS, "getting thinner, round about", """
    gain ~ but|yet|and ~ losing|lighter|shrinking
    been|keep|im|still shrinking|wasting
    was <any> at|in|since ~ easter|christmas|xmas|spring|summer|autumn|january && nothing|not|didnt
    belt|ring|rings|watch|jeans|trousers|clothes|skirt|bra & loose|looser|slid|slides|slipped|taken|baggy|falling|swimming|last|holes
    fall+|melt+|drop+|shed off|from me
    fall+|melt+ off $|,|.|and
    less|half of me
    scale|scales|weighed && was|down && didnt|not|without|weirdly|nothing|trying|strange
    never|not|havent|didnt|without ~ diet|dieted|dieting|tried|trying|cutting|cut && gone|less|loose|smaller|thinner|lighter|lost|photos
    <any>|half ~ lb|lbs|pounds|kg|kilos|stone gone|vanished|since|down|disappeared && same|on|own|didnt|not|eat|food|just|xmas
    on its own|accord && weight|stone|kg|pounds|lb|gone|vanished
    large to|a ~ small|medium
    losing size|mass|bulk|inches|muscle
    all bones|skin|ribs
    didnt set out|try|mean && slim|lose|weight|taken|thin
    """, sure=False, thing=False),
    Signs(Flag.PREGNANCY, "expecting or after a birth, round about", """
    first|second|third|1st|2nd|3rd trimester
    scan & weeks
    two lines|stripes
    period|periods ~ gone|late|missing|missed|skipped|stopped|overdue|weeks
    late|missed|skipped period|periods|my
    due date
    feed+|nurse|nursing|pump|pumping ~ baby|newborn
    months|weeks gone|along $|,|.|today|now|and|so
    had|delivered the|my|our twins|baby|boy|girl|son|daughter|little in|last|on|weeks|months|one
    cut open for|to
    bump && feet|see|wall|kick|belly|lie|baby|month|months
    test was|is|came|says positive !covid
    baby|babys ~ avocado|kick+|grape|lemon|mango|melon|heartbeat
    heartbeat on|at the|my scan
    from|since|after the|my birth|labour|section|delivery
    stork & coming|due|visit|june|july|may|spring|summer
    queasy|sick|puking ~ every|each|in morning|mornings
    """, sure=False),
    Signs(Flag.SPINE_HISTORY, "a spine with a history, round about", """
    cage|rods|screws|bolts|metalwork|plate|plates|titanium in|holding my|me|the ~ back|spine|neck|in|$|since|together
    surgeon|they ~ put ~ cage|rod|rods|screws|metal|plate
    room for ~ nerve|nerves
    disc|disk guy|girl|person|trouble|sufferer|club
    l|c|s|t 4|5|4/5|5/6|3/4|5/1|6/7|3|1|5/s && disc|fused|slip|op|guy|bulge|gone|tear|surgery|nerve
    spinal canal
    microd|laminectomied|discectomied
    needles|injection|injections|jab|jabs|epidural|epidurals ~ in|into my|the ~ spine|back|sciatica
    vertebra|vertebrae ~ healed|wedge|cracked|broke|broken|crushed|shaped|collapsed
    neck|spine|back|neck's|necks|backs ~ fused|operated|opped
    grade 1|2|one|two slip
    tethered cord
    annular|disc|disk tear
    """, sure=False),
    Signs(Flag.ANTICOAGULANTS, "thin blood, round about", """
    blood|bloods ~ thin|thinner|thinned|water && tablets|pills|meds|on
    bled|bleed|bleeds|bleeding for|like ~ minutes|ages|hours|hour && tablet|tablets|pills|meds|thinners
    blood|clot tablet|tablets|pill|pills|meds|medicine|clinic|drug
    lifelong|permanent|daily|my thinners
    factor v|five
    stop|stopping|prevent|preventing|against ~ clots|clotting|clot
    clot|clots && tablets|pills|flight|leg|lung|since|medicine
    """, sure=False),
    Signs(Flag.RESTRICTION, "a limit set, round about", """
    doc|doctor|physio|surgeon|consultant|specialist|she|he said no $|.|,|way|chance
    kilos|kilo|kg|kgs|lbs|pounds max|maximum|limit|tops && <clinician>
    walk|walking|swim|swimming|stretching|walks ~ only && <clinician>|cleared|said|told
    cleared for ~ walking|swimming|light ~ only
    dont|doesnt|didnt|not want|wants|like me ~ raising|lifting|bending|squatting|going|over|above|running|twisting|doing
    paper|letter|note|sheet|leaflet ~ saying|says|that ~ no|not
    squatting|lifting|training|barbell|deadlifting days|career ~ over|done|finished|behind
    brace|corset|collar|sling|boot && not|wear|off|weeks
    feel like bending|lifting|squatting
    kill me if ~ knew|saw|caught && <clinician>|squatting|lifting
    <clinician> & max|maximum|only|nothing|below|under & kilos|kilo|kg|kgs|lbs|walk|weeks
    """, sure=False, thing=False, own=True),
    Signs(Flag.UNDER_18, "young, round about", """
    not|isnt 18 til|till|until|yet|for|before
    born in 2009|2010|2011|2012|2013|2014
    mum|mom|dad|parents|mums|moms ~ sign|signs|permission|consent|allowed && gym|age|old|young|<teens>
    mum|mom|dad|mums|moms|parents ~ sign && age|gym
    not|too old|young enough|to|for ~ drive|vote|drink|gym|membership|licence|license
    <teens> and a|3|three|nearly half|quarters|three|bit
    under 12|13|14|15|16|17|18 s
    start|started|starting|just|in|at ~ secondary|high|middle|sixth|upper school|form|college
    curfew
    till|until|til|before|when im|i am|turn|i'm <teens>|18
    old|young enough to ~ <teens>|not
    """, sure=False, thing=False, own=True),
    Signs(Flag.SELF_HARM, "means, goodbyes and last things, sideways", """
    kids|family|wife|husband|son|daughter|they|she|he ~ deserve+ && better|someone|isnt|without && me|this|i|than|who
    my will && sorted|wrote|written|done|updated|signed
    wish+|hope+ ~ bar|plate|weight|it && neck|crush+|skull
    deserve ~ to? hurt|suffer|pain|punished|punishment !rest|lift
    on purpose && burn+|burnt|cut|hit|bit|scratched|hurt|starve+ && arm|arms|leg|legs|wrist|wrists|thigh|thighs|myself|hand|food
    voices && say|saying|tell|telling|should|do
    bought|tied|hid|got|have ~ rope|noose|blade|blades|knife|gun && not|purpose|for|ready|wardrobe|drawer !jump|skipping|bench|battle|climb
    how many && tablets|pills|paracetamol|painkillers && takes|take|would|enough
    saved|saving|save|kept|keeping ~ painkillers|tablets|pills|insulin|morphine|codeine
    sleep && never|forever && get|wake|up|again
    cant|dont|wont|not ~ think|sure|stay|keep ~ stay|keep|safe ~ safe|tonight|myself !with|bar|rack|spotter
    once|when|after|until ~ mum|mam|mom|dad|dog|cat|nan|gran|parents ~ dies|die|passes|goes|gone && i|im|ill && off|too|go|follow|finally
    taking|wasting|just|only ~ up? space|air|oxygen && im|just|i !at|rack
    insurance && answer|covers|pays|least|get && me|my|she|he|they|kids|life
    see|join|meet|be ~ brother|dad|mum|mam|wife|gran|nan|sister|husband ~ soon|again && gone|dead|years|heaven|passed|ago|been
    stop+|stopped|skipping|off|quit ~ insulin|heart|tablets|meds|medication|dialysis|pills && hope|let|finishes|finish|nature|end|kill|over
    nearly|almost ~ did it|jumped|through !wr|pb|pr|wall|box
    roof|ledge|rooftop|bridge|parapet && hour|hours|night|last|stood|sat|alone|again !hip|glute
    engine|exhaust|hosepipe && garage|running|car|door
    not|isnt|wasnt|nobodys ~ fault && tell|them|her|him|note|know|when
    last everything
    wont|not|doesnt|nothing ~ matter && tomorrow|soon|friday|monday|then|dead|gone|anyway|ill !set|rep|number|score|order
    dead by ~ friday|monday|tuesday|wednesday|thursday|saturday|sunday|tomorrow|morning|then|tonight|christmas|easter
    it|itll|all ~ be ~ over ~ soon|tonight|tomorrow|friday !set|test|workout|session
    not here ~ as in
    done|finished with|wi ~ all|aw of it
    scratched|cut|burned|burnt ~ arms|arm|legs|thighs|wrists && again|up|after|work|night
    voice|voices ~ say|says|said|tell|tells|telling
    because im going && gone|miss
    no more me
    i could|might|will|want to? end it
    only way && stops|stop|ends|end && i|me
    every|each lorry|train|truck|bus|bridge && step|think|one|jump
    where im going
    find me && if|how|who|when|they && did|body|garage|gone|it
    what|nothing ~ to stay|live|wake for
    """, sure=False, own=False),
    Signs(Flag.WEAKNESS, "what a weak leg no longer does", """
    stand+|stood|balance ~ one leg && drop+|cant|fall|falls|collapse+|dip|dips && new|now|since|week|left|right|today !wobble|wobbly
    foot|one|toes ~ points|hangs|hang|point ~ down && stays|stay|wont|cant|and
    power|strength ~ leaving|draining|fading|ebbing|slipping|disappearing|going && leg|legs|foot !up|press
    hold|holding|lift|lifting|lifted|pull|pulled ~ leg|foot|thigh|knee && hands|hand|trouser|arms && sock|shoe|trousers|car|bed|bath|put|up
    ankle ~ rolls|turns|gives|goes|flops && step|steps|nobody|nothing|holding|walk
    heel ~ wont|wouldnt|cant|couldnt|doesnt ~ leave|lift|rise && floor|ground|side|one|left|right|up !squat|bottom|wall|lunge
    need|use|using|walk+ ~ stick|cane|crutch|crutches|frame && leg|gives|now|knee
    collapsed|buckled|folded|crumpled ~ on|under|beneath me
    get up off|from|out ~ toilet|chair|sofa|floor|bath|bed && arms|pushing|hands|help && now|could|cant|ago|without
    ankle|foot ~ flop+|flops|drops|slaps|hangs && now|every|step|walk
    muscle|ankle|calf|shin|thigh ~ packed|given ~ in|up
    ankle ~ no hold|strength|control
    toes|foot && down && up|lift && nothing|wont|cant
    both|my knees|legs went && floor|once|same
    leg|knee ~ fainted|crumpled|crumples|sagged under|beneath
    weak|weaker in|on ~ leg|legs|foot|ankle|thigh|side && since|now|yesterday|noticeably|before|today
    wont|cant|doesnt ~ hold ~ weight|me && leg|knee|numb|it
    legs ~ fading|failing|going on me
    thigh|calf|leg|quad ~ gone|going|got thin|thinner|wasted|small
    muscle|muscles && shin|calf|thigh && dont|wont|not|doesnt && fire|work|respond|answer|switch
    weaker than ~ last|yesterday|before|monday|it|usual && side|leg|foot|sure|left|right|week
    """, sure=False),
    Signs(Flag.BLADDER_BOWEL, "what is wet, or does not come", """
    dribbl+|dribbling|trickles|trickling && day|now|just|all|always|constantly|after|pee
    woke|wake|waking|wakes ~ puddle
    flow|stream ~ half|weak|weaker|less|slow|slower|poor|stops|gone !yoga|blood|chart
    accident|accidents && brown|wet|toilet|loo|pants|trousers|plural|nights|pee|poo|wee|sheets
    both ends
    lost ~ control && downstairs|there|below|bowel|bladder
    change|changed|changing|washing ~ bed|sheets|bedding && night|nights|running|again|twice
    tap && turned|stuck|wont|switched && off|pee|wee|like
    squirt|leak|leaks|spurt|drop|drops ~ pee|wee|urine && cough|sneeze|laugh|jump|lift
    pelvic floor && doesnt|wont|not|gone|answer|nothing|isnt
    went ~ in my shorts|pants|trousers|knickers|undies|leggings|jeans
    drink|drinking|drank && nothing|cant|wont && comes|come|out|pee|wee
    strain+|straining|push+ ~ to? go|pee|wee|empty|start && cant|nothing|stop|ages|toilet|lean|takes|only
    not|never|wont|isnt ~ emptying|empty && fully|bladder|properly|$
    sit|sitting|sleep|sleeping on ~ towel|towels|pad|pads|mat && now|leak|wet|case
    mishap && way|home|toilet|loo|car|pants|bed
    never|not|isnt|hasnt ~ emptied|empties|empty ~ right|properly|fully|since
    scared|afraid|worried ~ leave|go|sit && leak+|accident|wet
    change|changed|changing ~ sheets|bed && me|because|again|husband|wife
    strain+|straining && minutes|mins|cupful|drop|drops|nothing
    nappies|pullups|incontinence && im|in|now|basically|since|wear|wearing
    wet patch && saw|chair|sofa|seat|trousers|before
    not|havent|hasnt ~ pee+|peeing|peed|wee|weed ~ today|all|since|yet !before
    urge && no|havent|never|not|proper|lost|without && pee|wee|go|days|poo
    bladder|bowel|bowels ~ only|just ~ works|work|empties
    """, sure=False),
    Signs(Flag.SADDLE, "the seat, by what touches it", """
    nappy|diaper|jockstrap|crotch|knicker area|zone|region|part|covers
    part|bit|area|bits ~ nappy|diaper|saddle|jockstrap|pants ~ covers|is|are
    bidet|suppository|tampon|enema|catheter && feel|felt|zip|nothing|idea|not|no|nofeeling|numb
    bit|part|place|patch && touches|saddle|bike|seat && dead|numb|blunt|nofeeling|asleep
    <cant> feel ~ bits|parts
    touch ~ different|dull|blunt|odd && there|below|down|groin
    like|as ~ epidural|anaesthetic|anesthetic|novocaine && down|there|numb|but|only|groin|no|below
    lost|lose|losing touch|contact in|with|of ~ groin|crotch|privates|downstairs
    felt|feel ~ that|it && hadnt|havent|didnt|couldnt && he|she|doctor|nurse|down|there && asked|touched
    """, sure=False),
    Signs(Flag.CHEST, "the chest and the head, by what they do", """
    tight|squeezing band ~ chest|ribs
    grey|gray|greying|greyed|whited out !hair|room
    see|saw|seeing|made ~ black|stars|grey !friday|ops
    funny turn|turns
    gone|out|away ~ for ~ seconds|second|moment && i|was|few !run|walk|sec
    like|thought|felt ~ going|gonna|about ~ to? drop|faint|pass|keel
    stop+|stopped|rest ~ halfway|twice|three && air|breath|stairs|mailbox|gate|corner
    swallowed ~ brick|stone|rock|ball
    rope|band|belt|strap|wire ~ round|around ~ ribs|chest
    beat|beats|beating|heart|pulse ~ uneven|irregular|irregularly|skips|erratic
    ticker|heart ~ somersault|somersaults|fluttery|flutters|jumping|thuds|thudding && rest|resting|sat|sitting|sweaty|ticker|lying|duvet
    huffing|puffing ~ like && train|whale|all|did|only
    arm|arms && achy|ache|aching|heavy && sweating|sweaty|sweat|clammy|finger
    <chest> ~ gripped|gripping|grips|clamped
    cold sweat && chest|right|heart|arm
    syncopal|syncope|presyncope
    thump && nothing|skip|skips|pause|stops !bass|music
    no air && minute|set|second|couldnt|lungs|in !con|conditioning|bike|pressure|$
    puffing|panting ~ like && rep|stair|stairs|walk|nothing|one|not
    breathing ~ hard|difficult|tough|laboured && sitting|rest|even|lying|still|today|nothing
    """, sure=False),
)
