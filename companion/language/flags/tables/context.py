"""The tables that decide whether a sign counts: readings and ordinary wording, denials, other people, the past, hard work.

``-> x`` is what is read instead; a pattern without it is ordinary and taken out before anything is looked for.
"""

from companion.language.flags.flag import Flag

# Said in several words, read as one.
READ_AS = """
    hart attack|failure|problem|problems|condition|disease|racing|trouble -> heart attack
    can|could not -> cant
    not able|possible to -> cant
    unable to -> cant
    am not able|capable to? -> cant
    in|not capable of -> cant
    cant|dont ~ lift|raise it|them high -> cant lift foot
    wasnt|isnt|arent|werent able to -> cant
    no|nil|zero|any|lost|losing|loss|less|absent|missing|lack|lacking|absence|reduced all|my|the|of|any|some|most? all|my|the|of|any|some|
        most? feeling|sensation|sensations|feelings|sense|sensitivity -> nofeeling
    cant|cannot|couldnt|dont|didnt|barely|hardly|doesnt really|properly|even|quite|fully|hardly|barely|always|ever? feel|felt|fel|sense
        anything|nothing|nowt|much -> nofeeling
    feel|feels|felt|feeling nothing|nowt -> nofeeling
    pins and|an|in|&|or? needles -> pinsandneedles
    cotton wool -> cottonwool
    fallen|falling|falls|fell|fall|gone|going|went asleep -> asleep
    down there|below|south|yonder|bits -> downthere
    between|inbetween|in-between my|the|me|both? legs|thighs|leg -> betweenlegs
    between my|the|me? legs -> betweenlegs
    back passage|door -> backpassage
    bum|arse|butt hole|crack -> bumhole
    private|intimate|lady|man|girl|boy|front|personal|female|male|naughty|women's|womens|mens parts|bits|area|areas|region|zone|part|places|
        place|regions -> privates
    nether|lower regions|region -> nethers
    family|crown jewels -> genitals
    meat and two veg -> genitals
    pelvic floor -> perineum
    bathing suit|bikini area|line|region -> genitals
    number|no. one|two|1|2|ones|twos -> toilet
    pass|passing water|urine|wind|motion|motions|stool|stools|gas -> pee
    passed water|urine|wind|motion|motions|stool|stools|gas -> peed
    passing|pass water -> pee
    spend a penny -> pee
    take|taking|took|have|having a leak|piss|slash|pee|wee|dump|crap|shit|whizz|poo|poop -> pee
    big toe|toes -> bigtoe
    tip|tippy toe|toes -> tiptoe
    on|onto|up my|the? tiptoes|tiptoe|tiptoes -> tiptoe
    up|stand|standing|go|going|rise|balance ~ on|onto my|the? toes|toe|tippytoes -> tiptoe
    foot drop -> footdrop
    drop foot -> footdrop
    hard on|ons -> hardon
    morning wood|glory -> erection
    get|getting|keep|keeping it|one up -> erection
    stay|staying|get|getting|keep hard|stiff|erect -> erection
    wet the|my bed|sheets -> bedwetting
    wets|wetting the|my bed -> bedwetting
    head rush -> headrush
    self harm|harming -> selfharm
    no one|ones -> noone
    nobodys -> nobody
    no longer -> not
    none of -> nothing
    any longer -> anymore
    any more -> anymore
    my self -> myself
    chest pain|pains -> chestpain
    chest infection|cold -> infection
    heart burn -> heartburn
    gave|give way ~ on -> gave way on
    worse for wear -> worse
    bowel|breast|lung|skin|prostate|testicular|ovarian|cervical|colon|kidney|throat|brain|thyroid|blood|bone|stomach|bladder|ball|liver|
        pancreatic|cervix|womb|mouth|tongue|nut|uterine|rectal|bone cancer|tumour|tumor|cancers -> cancer
    year eight|nine -> year 9
"""

# Which flags each kind of ordinary wording may be taken for; () is all.
CONCERNS = {
    "figures of speech": (Flag.SELF_HARM, Flag.WEAKNESS, Flag.CHEST),
    "what moves in a test": (Flag.SELF_HARM, Flag.CHEST, Flag.WEAKNESS, Flag.FALL, Flag.SADDLE),
    "bladder and bowel, when nothing is wrong": (Flag.BLADDER_BOWEL, Flag.SADDLE, Flag.SEXUAL),
    "illness and accidents, when none": (Flag.FEVER, Flag.FALL, Flag.WEAKNESS, Flag.SPINE_HISTORY, Flag.BLADDER_BOWEL),
    "weight, age and size": (Flag.WEIGHT_LOSS, Flag.UNDER_18),
    "pregnancy, bones and spine, when none": (
        Flag.PREGNANCY, Flag.SPINE_HISTORY, Flag.CANCER_BONE, Flag.HEART_HISTORY, Flag.ANTICOAGULANTS, Flag.FALL),
    "limits, when none": (Flag.RESTRICTION,),
    "what others say it would do; if it should happen": (),
}  # fmt: skip

ORDINARY_SIGNS = {
    "figures of speech": """
    faint|faintest idea|praise|hope|clue
    goodbye|bye then|and|now $|thanks|all
    bar|plate|plates|stick|phone ~ fell|dropped|slid ~ floor|down|off !on me|my
    useless at|with|on|without
    died|dying|die on|in|at the|my ~ bike|rower|treadmill|hill|rep|run|erg|set
    legs|arms|quads died on|in|at|after
    want out of the|this|my
    give|gave|given ~ everything|it|all away ~ on|in ~ rep|set|round
    skip+ ~ beat|beats on|of|in ~ tempo|song|music|metronome|rope
    cant|couldnt live without ~ coffee|tea|music|belt|shoes|gym|app|phone|chocolate|squats
    say|said|saying|wave|waved|kissed goodbye|bye|farewell to ~ belt|shoes|rack|bar|carbs|sugar|plates|weight|depth|stance|phone|bench
    living on chicken|rice|protein|eggs|oats|coffee|salad|pasta|a|campus
    dont|didnt|not|never want|wanna|wanted to? die
    suicidal|suicide pace|speed|speeds|weather|driving|drivers|rate|tempo
    suicide|suicidal squeeze|burrito|hotline|sprint|drill|drills
    not|isnt|hardly worth it|this for|at|to <any>|2.5|1.25|half|a ~ kg|kilo|kilos|lb|lbs|plate|rep|quid|pounds
    want|wanna ~ do it|this|that anymore , the|that|this ~ drill|test|stretch|one|exercise
    burden ~ spotter|spotters|bar
    miss|notice me ~ if|when ~ skip|skipped|missed|miss|late
    dying|died|die by|at|on|in|during|halfway|after|from the|that|those|round|set|rep|my ~ round|set|sets|rep|reps|lunges|burpees|squats|
        workout|session|hill|stairs|mile|intervals|sprints|class
    said|say|felt i ~ dying|died|dead i|, meant|mean
    ego|phone|battery|motivation|diet|laptop|app|fish|plant|plants|grip|soul ~ died|dies|die|dead|dying
    not|wont be? here|around|in for|on the|this next? next|block|month|cycle|session|class|meet|competition
    rather ~ die|dead|drown|gone than ~ do|wear|eat|run|drink|miss|skip|squat|train|use|watch|burpees|lunge|lunges|cardio
    cant go on like this , need ~ bench|rack|bar|mat|belt|phone|chair
    no need|reason|point for|of|in blood|that|it|this|more|a|any ~ here
    wall|chair sit|sits|hold ~ killed|kills|killing|kill
    squat|squats|lunges|sets|reps|burpees|stairs|doms r killing|murdering
    go on monday|tuesday|wednesday|thursday|friday|saturday|sunday|holiday|the|my|a
    end of|to the world|season|block|month|week|line|set|year
    dizzy|breathless ~ excitement|joy|blonde|view|lol|love
    blackout|blackouts|blacked ~ curtains|curtain|blinds|blind|street|garage|light
    power|street|city ~ blackout|out
    heart|watch skipped|skip|missed a beat when|lol|at|over|she|he
    faint ~ sight|screen|paper|line|smell|joking|signal
    writing|screen|line|signal|text|print ~ faint
    out of breath mints
    passed|passing out candy|sweets|leaflets|towels|water|plates
    tight chest of|on the|my|this shirt|jacket|top|tee
    grey|gray ~ weather|sky|skies|here|outside
    death of me
    exam|test|workout|traffic|commute|hill|that|it ~ suicide|murder ~ lol|haha
    kill|murder|kills me|us if|but|when|for|because
    die|dying for a|some|coffee|food|cake|pizza
    goodbye|bye|message|messages for|till|until|, now|today|tonight|tomorrow
    wont|not be here|around|in ~ week|friday|monday|tomorrow|today|weekend , holiday|vacation|driving|wedding|away|work|travelling|flying
    better off without ~ belt|shoes|music|stick|phone
    burden of carrying|proof
    bench|chair|table|rack|stand|tent|shelf|sofa ~ collapsed|gave|buckled
    drag|dragging my feet|heels on|over|about
    quads|legs|arms|grip|abs gave up|out at|after|on
    squats|lunges|burpees|set|sets|workout|session|plank|planks|cardio|legs|quads|this|that|program|programme|wod|doms|you|hamstrings|bird|
        test|stretch|stretches|heat|job|work|boss|kids|reps|back|hip|hips|neck|head|shoulder|shoulders|knee|knees|leg|ankle|calf|foot|feet|
        spine|glutes|ribs|hamstring are|is|was|were|nearly|almost|just|really|will|gonna|be? killing|killed|kill|
        destroy|destroying|destroyed|finish|finished|murdered|kills|finishing me|us off?
    nearly|almost finished|killed|killing me off?
    make+|made ~ me want|wanna to? die|cry|puke|quit
    kill|killing myself|me over|for|about|with|doing|in|at|on the|a|these|those|this|that|some|gym|missed|squats
    kill|shoot me now ,? its|it|lol|haha|leg|more|another|that|not
    gonna|going to? die if|doing|from|after|on|of|in|tomorrow|lol
    death grip|march|by|star|metal|row
    suicide grip|grips|squad|run|runs|sprint|sprints|set|sets|wide|reps
    dead|drop hang|lift|lifts|lifting|bug|bugs|stop|ball|weight|on|serious|easy|right|straight|level|center|centre|tired|set|sure|ringer|
        end|heading|hangs|dead|keen|beat|slow|still|heat|good|flat|long|last
    suicides at|in|on|for|x|today|after|then
    cant|dont do it|this|that anymore? tonight|today|right|without|alone|now|at|here|one !anymore
    cant|couldnt ~ do it|this ~ tonight|today|tired|wall|floor|kids|work
    cant|dont go|carry on , arms|hands|because|cos
    shot myself in the foot
    dying|die|died|dead laughing
    dont|not want|wanna ~ be here ,? at|in|on work|the|this|office|meeting|school|lol
    point in|of|to me|even? doing|filming|measuring|testing|redoing|repeating|the|this|that|going|stretching|squatting|warming|bird|both|
        adding|me|right|left !living|life|anymore|it|being|carry|everything|go
    no|any|the|whats point ~ doing|redoing|testing|me doing
    better|best|worse off doing|with|squatting|using|front|going|resting|training|at|on|just|waiting|stopping|as|now
    burden|waste of|on time|bar|proof|knees|money|phone
    cant take|do|stand|bear|face ~ anymore|any|more|longer|another ~ set|sets|reps|squats|burpees|lunges|plank|today|hold|weight|plates|
        heat|leg
    life|world of|on|in|time|record|hack|saver|changer|style|class|cup|good|great|leg
    hate|hating my|this|being|living|life|myself ~ leg|burpees|lunges|monday|squats|cardio|day|stairs|bird|weekend
    weak point|points|link|spot|side|sauce|wifi|signal|glutes|core|abs|hamstrings|excuse|connection|coffee|area|upper|arms|chain|sides|
        internet|grip|willpower|at|tea|lower|sticking|position|joke|effort
    my|biggest|main|only|big|a|known|one weakness is|was|always|for|chocolate|leaving|$
    chocolate|beer|squats|single|pizza|cake|crisps|biscuits|leg|legs|cheese ~ is|are|was ~ weakness
    always|forever|naturally|usually been? ~ weaker|weak|stronger
    weaker|weak|weakest|stronger side|leg|one|arm ~ is|was|as|always|on|has|same|first|left|right !getting|since|gave|now|worse|today|
        suddenly|new
    weaker|weak ~ in|on|at|during|for|with|doing ~ bird|lunges|lunge|bulgarian|split|pistol|pistols|dog|bridge|plank|single|curls|press|
        presses|step|dead|side|leg
    left|right|one|side|leg ~ always ~ weak|weaker
    """,
    "what moves in a test": """
    nothing pinched|changed|moved
    strap|band|towel|rope|hands behind|under|round my foot|leg|knee|thigh
    legs are dead , great|good|nice|what|lol
    eyes|mouth|door|hands closed|open|shut ¿
    tight chest|pec muscles|muscle|from ~ bench|benching|push|press|pecs|dips
    numb ~ from sitting|sat|kneeling && went|gone|second|minute|fine|ok|bleachers|chair|floor|bench
    no|not|without|never|doesnt|didnt|hasnt|dont|nothing|nor ~ giving|given|gave|give|gives way|out|under
    weak|weaker compared|relative|than ~ quads|glutes|hamstrings|arms|abs|upper !was|before|month|week|used
    took|take|takes|taking|take|use|used the lift|elevator
    tight|tighter|tightest|snug shirt|top|tee|vest|bra|jacket|shirts
    shirt|top|tee|vest|bra|jacket ~ tight ~ chest
    see|saw|seen|watch stars ~ sky|night|clear|telescope|garden|garage
    if you|they|someone|anyone ~ faint|dizzy|lightheaded|unwell
    pinsandneedles|tingling|numb|numbness in|down my|the|both|one? foot|feet|hand|hands|arm|arms|fingers|toes|leg from|after|sitting|sat
    ice|freezing|frozen|snow|snowy && feel my toes|feet|fingers|hands
    saddle for|on the|my turbo|bike|trainer|peloton|horse
    gel|new|comfy|leather saddle
    bum|bottom|arse|butt|backside went|goes|gone|was|is|got numb on|from|after|during ~ flight|drive|meeting|cinema|bench|pew|train
    feel everything ~ downthere
    below|south to|of the cellar|basement|border|garage|kitchen|river
    legs|quads|calves|glutes are|were|feel|felt dead after|from
    on purpose|deliberately ~ slap|slaps|stamp
    <oneleg> ~ slap|slaps|stamp && on purpose
    chest|torso ~ up|proud|high|tall|out|falls|fell|drops|dropped|drop|dropping|forward|forwards|down|caves|collapses|collapsed|collapse|
        collapsing|day|press|leans|lifted|lifts|open|flat|parallel|caved|freezer|supported|fly|workout|strap|facing|touching|dips|tips|band|
        level !pain|pains|hurts|tight|tightness|feels
    bar|barbell|hands|arms|plate|kettlebell|dumbbell|goblet|knees|knee|phone|strap|monitor ~ on|at|to|in|against|across|over|towards|near ~
        chest
    tight|close|flush|up|right|pinned|pressed to|into|against|with|on my|the? chest
    chest ~ tight to|against
    chest|pecs ~ sore|tight|doms|ache|aching|stiff ~ bench|benching|push|pushups|press|pressups|dips|from|flies|fly|flyes|monday|tuesday|
        wednesday|thursday|friday|saturday|sunday|yesterday
    heart ~ racing|pounding|pumping|thumping|going|beating ~ after|good|from|during|lol|set|that|squats|way|stairs|cardio|burpees
    puffed|puffing|out|breathless|wheezing|panting|winded ~ stairs ~ unfit|lol|garage|now
    out of puff|breath ,|gimme|give|hang|sec|one|back|lol|after
    heart|pulse ~ is|was|all ~ fine|good|healthy|ok|okay|normal|strong !was|before|until|but
    faint|light mark|line|lines|pencil|chalk|tape|signal|noise|click|stretch|pull|numbers|display|smell|hope
    passed|passing|pass out ~ bed|sofa|couch|asleep|flyers|nightshift|leaflets
    collapse|collapsed|collapses|collapsing|cave|caved|caves|buckle|buckled|fold|folded ~ in|inward|inwards|at|into|arch|arches|forward|rep
    knee|knees|arch|arches|ankle|ankles|hips|torso|form|foot ~ collapse+|cave+|caved|drop+|dropped|dive+|fall+|falling|fell|roll+ ~ in|
        inwards|inward|on|at|inside
    knee|knees|arch|arches ~ collapse+|cave+ !under|beneath
    knee|knees|heel|heels|hip|hips|toe|toes|foot|feet ~ dropped|drops|slipped|slips|slid|falls|fell|went|goes|dropping|drop|slides|slipping
        ~ in|off|on|out|down|to|over|from|up|forward|back|inwards|lower|inward|first|past|tape|wall|mat !under|when
    foot|feet|toes|socks|hands|grip|heel|heels|shoe|shoes|phone|bar|stick|tape|mat|chair|towel|band|hand|belt ~ slip+ !disc|disk
    <oneleg>|legs|feet|foot ~ fall+|fell|asleep|sleep|numb|dead|tingle|tingling|tingles ~ sitting|kneel|kneeling|cross|crossed|sat|squat|
        toileton
    numb ~ bum|arse|butt|backside ~ chair|desk|office|drive|bike|flight|floor|bench|ride|cycling|train|bus|car|driving|meeting
    """,
    "bladder and bowel, when nothing is wrong": """
    feeling|feel|feels normal|fine|ok when
    can|could start|hold and|or stop|go pee|peeing|it ~ no|fine|ok
    house|roof|tap|boiler|bottle|car ~ leak|leaks|leaking
    nothing|nowt|not|no wrong|odd|weird|amiss|strange|funny with|down|about|in|there ~ <organ>|downthere|<crotch>|<seat>|pee|peeing|toilet
    <pee>|peeing|weeing|toilet ~ nothing|nowt odd|weird|wrong|new|unusual|strange
    <organ> ,? theyre|its|all|is|are|thats grand|fine|good|great|perfect|normal|ok|okay
    obsessed with|about ~ <organ>|pee|poo|toilet
    leak|leaking|leaks|leaked oil|water|air|gas|fuel|coolant|diesel|petrol
    toilet ~ than toilet
    changed|change|changing into|out
    erection off|past|above|over|from the|my|floor|knees|rack|pins|chest|ground
    erection for the? <any>|3rd|2nd|1st|third|second|last ~ rep|reps|set
    erection , the|that bar|barbell|weight
    climax to|of|in that|the|this film|book|show|song|movie|series
    nearly|almost wet|peed|pissed|shat|pooped|pooed myself when ~ cat|dog|jumped|scared|kid|spider|bar|door|plate|alarm|film
    pissed off
    dog|cat|puppy|baby|son|daughter|toddler ~ peed|pissed|pooed|weed|leaked
    change|changing|changed nappies|nappy|diapers|diaper
    bladder|bowel|bowels ~ grand|fine|normal|ok|good|working
    saddle ~ horse|bike|height|post
    numb bum|bottom|bum|arse|ass ~ flight|stands|bench|pew|stool|cinema|bus|plane
    everything ~ works|working|fine|normal downthere
    going hard|hardest today|tomorrow|tonight|this|on|in|for
    water|roof|pipe|tap|hose|radiator|boiler|shower ~ leak|leaks|leaking|leaked
    leak|leaks|leaking|leaked ~ basement|garage|roof|kitchen|ceiling|pipe
    wiped|wipe|wiping ~ tape|bench|floor|bar|sweat|hands|mat|face|rack|board|wall|phone|lens|camera
    full|holy|oh|no|the|bull|same|good|talking|talk|hot|crazy|real|some|hard|lazy|chicken|sick|deep|tough|legit|horse|total|utter|this|that|
        of|my|feel|feels|felt|feeling|like|looks|look|squat|squats|app|im|was|is|slept|sleep|so|such|piece|what|a shit|crap|shite !myself|
        my|pants|in|when|cant|for|since|without|once
    pissed|wet|peed ~ myself ~ laughing|laugh
    wet|wetting ~ rain|hair|floor|grass|weather|shoes|socks|sweat
    roof|tap|ceiling|garage|pipe|bottle|boiler|radiator|hose|washing|window|machine|shaker|tyre ~ leaking|leaks|leaked|leak|leaky|dripping|
        wet
    toilet|loo|bathroom|bladder|bowels|bowel|bog|pee|peeing|weeing|poo|pooing|waterworks|bedroom|sex|erections|downthere|department all|
        still|habits|stuff|feeling|feels? normal|normally|fine|ok|okay|works|regular|good|perfect|unchanged !until|but|before
    feeling|sensation|feel|everything|all|fine ~ <crotch>|downthere|betweenlegs|saddle|bedroom|<seat> ~ normal|fine|ok|okay|good|same|works|
        unchanged|there|great|perfect|usual !but|until
    """,
    "illness and accidents, when none": """
    chill|chills|goosebumps $|when|from|at ~ song|music|film|that|anthem
    night|cabin|hay fever $|on|is|again
    home|sea|car sick|sickness
    infectious laugh|smile|energy|mood|song
    did|done|pressed|tapped|typed ~ by accident
    temperature gun|sensor|setting|control|outside|inside
    fever pitch
    chills down|up my|the? spine|back|neck
    hay fevers
    fevers making|bad|mad ~ eyes|nose|pollen
    infectious ~ laugh|smile|energy|enthusiasm|grin|mood
    ward|class|school|nursery|office|everyone|everybody|team|gym|half|neighbours ~ has|have|got|with norovirus|flu|covid|fever|bug
    dodged|avoided|missed|escaped ~ it|norovirus|flu|covid|bug
    <any>|38|39|41|42 degrees ~ outside|out|in|here|garage|today|shade|sweating|sun
    accident && late|parked|queue|jam|not me|nobody|traffic !me
    came|come|coming|went|going|go down|up the? stairs ~ backwards|sideways|slowly|fine|ok|bum
    fell|fall|falling out of the|my|that|a stretch|position|pose|line|bottom|hole|balance|handstand
    dropped|drop|dump|dumped the bar|barbell|weight|it ~ safeties|pins|arms|spotter
    fell lame
    shivering|shiver ,? garage|shed|barn|gym
    accident on && parked|late|stuck|nobody
    crash|crashed|crashing ~ mat|mats|computer|app|landing|course|phone
    fell|fall|falling in love|lame|behind|short|for
    in|the|this|next|last the? fall i|we|ill|well|meet|season
    movie|netflix|film|beer and chill
    gym|squat|spring|dance|cabin|hay|cup|lifting|saturday|world|marathon|football|baby fever
    chill|chills|chilling|chilled on|with|at|in|out|lol|sofa|day|pill|here|bro|mate|man|then|till|until|vibes|evening|weekend|time|session|
        today|for|watching
    shivering|shiver|cold|freezing ~ garage|gym|floor|shower|outside|wind|shed|plunge|morning|weather|water|feet|hands|room|house|basement|
        barn
    cold floor|feet|hands|garage|gym|shower|showers|plunge|bar|start|outside|weather|here|morning|muscles|today|room|house|brew|coffee|
        water|toes|turkey
    fell|fallen|fall|falling|falls off the|my wagon|plan|diet|track
    fell|falling|fall about|over? laughing
    fell|fall|fallen|falling ~ asleep|behind|wagon|laughing|over my words|own words|track|love|short
    slipped|slip|slipping ~ shoes|shoe|socks|mat ~ off|on|but
    in|this|next|last|every|by|for|until|the fall i|we|season|block|and|is|when|semester|cycle|program|marathon|training|weather|$
    infection control|risk|prevention
    phone|camera|tripod|stick|tape|broom|pole|bar|plates|plate|bottle|chair|book|mark|pencil|towel|mat|rack|shelf|collar|tablet|box|light|
        mirror|door|heel|stack|wedge|strap|band|picture|ipad|chest|hips|hip|knee|numbers|weight ~ fell|falls|fallen|falling|slipped|slips|
        dropped|toppled|crashed|keeled !on|onto
    """,
    "weight, age and size": """
    weight ~ nicely|well|steadily|slowly && counting|calories|diet|started|plan|cutting
    year <any>|<teens> of training|lifting|squatting|marriage|university|uni|work|the|this|my
    drop|dropped|dropping|taking|took|take weight|load|plates|kg|kilos ~ bar|set|sets|top|working|deload
    by|from|through dieting|calories|cutting
    not losing|lost|lose weight|any|kg|a|fat|enough ,? sadly|yet|anymore|unfortunately|but|$ !trying
    lost|lose|losing|dropped weight|kg|kilos|lb|lbs|pounds|stone|<any> && planned|purpose|plan|counting
    teach|taught|teaching|coach|work|works|working ~ at|in|for a|the|my|local? primary|secondary|high|middle school
    teach|teaching|taught|coach|coached|coaching ~ year|under|grade|<teens>|teenagers|teens
    broke|was|were|since|back|used|played|did|started|learnt|learned ~ in|at primary|secondary|high|middle|grade|junior school
    lost|lose|loose|losing|dropped ~ diet|dieting|plate|plates|plan|counting|calories|cutting|wanted
    lost|losing|lose|dropped|drop|dropping|shed|cut|cutting|loss|down ~ weight|kg|kilos|stone|lbs|pounds|fat|lb ~ on purpose|diet|cutting|
        cut|deficit|ozempic|mounjaro|wegovy|keto|slimming|for|comp|meet|planned|plan|wedding|calorie|calories|goal|target|trying|
        intentionally|deliberately|fasting|tracking|happy|pleased|finally|chuffed|yay|woo|coach|healthy|running|exercise|nice|good|great|
        stronger|better|thanks
    diet|diets|dieting|cutting|cut|deficit|ozempic|mounjaro|wegovy|keto|fasting|calories|calorie|slimming|macros|intentional|intentionally|
        deliberate|deliberately|purpose|want|wanted|trying|hoping|need|needs|like|love|goal|aiming|aim|plan|planning|try|gotta|must|should|
        help|programme|to ~ lose|losing|lost|drop|dropping|dropped|shed|loosing|loose|cut ~ weight|kg|kilos|stone|lbs|pounds|fat|few|bit|
        some|$ !not|without|even
    diet|dieting|cutting|deficit|ozempic|mounjaro|wegovy|keto|fasting & weight|kg|kilos|stone & lost|losing|lose|dropped|down|dropping|loss
    losing|lost weight as|on planned|plan|purpose|track
    bike|car|plane|train|mat|belt|shoes|dog|cat|rack|bar|kit|gym|house|phone|son|daughter|kid|brother|sister|lad|lads|boy|girl|niece|nephew|
        cousin|kids|daughters|sons|he|she|hes|shes ~ <teens>
    until|till|til|before|by|on|from|to|the|away|back|and <teens> january|february|march|april|may|june|july|august|september|
        october|november|december
    """,
    "pregnancy, bones and spine, when none": """
    due to be|fly|travel|start|finish|arrive|move|meet|leave
    club|gym|wall|work|office|school|hall|reception|pool|station|pub|church ~ defibrillator|defib|aed
    defibrillator|defib|aed on|in|by|at|near the|our wall|gym|reception|hall|corridor|office
    heart ~ checked|scan|scanned|ecg|tested && fine|clear|normal|good|healthy
    im|am|hes|shes|youre a cancer $|,|and|so|not
    rat|mouse poison ~ shelf|dog|shed|rats|cellar|garage
    pregnant ladies|women|woman|clients|class|people|lady|yoga
    no|zero chance ~ pregnant
    baby is|was|turned|turns|now ~ yrs|years|year
    wife|sister|girlfriend|daughter|partner ~ pregnant ~ due
    <any>|2|3|4|5|6 year|yr|years old baby
    cancer|cancers ~ sign|scorpio|fundraiser|charity|run|research|july|nurse|ward|awareness
    cardiac|oncology|cancer|maternity|stroke|heart|spinal|ortho ward|nurse|unit|nurses
    on|run|running a? cardiac|oncology|maternity|stroke ward|unit
    midwife|radiographer|oncologist|cardiologist , number|30s|29|40|shift|on|by|i
    give|giving out|them the|my ~ clexane|heparin|warfarin|insulin
    lump of|hammer|sugar|sum
    radiation badge|mask
    never|not ~ touched|took|used|natty|touch ~ steroids
    expecting|expected|expect to|more|it|that|less|worse|better|harder|easier|this|delivery|parcel|you|call|results|miracles|than|some|pain|
        rain|too|much|visitors|doms
    expecting a|an|my|the parcel|delivery|call|visitor|package|promotion|pb|pr|new
    than|what|as|was|not|wasnt|werent|what|like i|id|im|we|was|were|been? been|was|were|am? expecting|expected
    disc|disk|discs|disks brake|brakes|golf|jockey|plates|10|20|on|of|15|25|weight|for
    discs|disks|plates on|each|per|off the|side|bar
    steroid|steroids cream|creams|inhaler|lol|haha|nasal|ointment
    gave|give|giving|nearly ~ me|her|him ~ heart attack
    """,
    "limits, when none": """
    landlord|boss|wife|husband|neighbour|neighbours|mum|dad|teacher|manager ~ <said> ~ not|never ~ drop|stretch|lift|squat|bang
    <clinician> ~ <said> ~ fine|clear|cleared|ok|okay|good|great|normal|keep|carry|continue|healthy|go|encouraged|happy|yes|strong !not|
        unless|until|but|only|under|light|no|avoid|never
    <clinician> ~ cleared|happy|ok|okay|okayed|clear|fine|recommended|recommends|recommend|encouraged|encourages|approved|approves|allowed|
        allows|likes|loves|supports|referred|suggested|suggests|keen ~ me|with|for|to|i|squats|squatting|lifting|that|exercise|training|
        lift|it|strength|this|weights|gym !light|only|half|up|bodyweight|under|not|stop|no|avoid|rest|waiting|limit|stopping|limiting
    coach|trainer|you|app|plan|bot|program|programme|video ~ said|says|told|tells|wants|advised ~ not|no|dont|avoid|stop|only|to
    """,
    "what others say it would do; if it should happen": """
    ask|asks|asking everyone|everybody|people|all ~ about
    """,
}

# A hit is denied by one of these before it, with nothing but UNDER_DENIAL words (or other signs) in between.
NO = "no zero nil minus sans nay non noo nope nah without wo w/o free neither none"
NOT_WORDS = """not isnt wasnt arent werent aint doesnt dont didnt hasnt havent hadnt never nothing nowhere nor wont
    nobody nuffin nowt
    noone neither cant couldnt wouldnt doesn didn isn wasn hasn haven don negative denies deny denied"""
UNDER_DENIAL = """
    any or nor history past previous prior of at all kind kinds sort sorts type types hint trace sign signs symptom symptoms bit a an
    single slight slightest least other new more further noticeable form weird unusual obvious old extra even ever whatsoever actual
    sensation sensations anything anywhere one moment point sudden low associated related in on down around near to from for left right
    lower upper inner outer front both either my the me been be being was is were are had have has having get gets getting got feel
    feels feeling felt take taking taken took takes suffer suffered suffering experience experienced notice noticed noticing diagnosed
    currently known recent recently medication medications meds drug drugs big serious major chest leg legs foot bladder bowel heart
    blood back spine spinal problem problems issue issues trouble troubles with like by pass passed pregnant loss change changes control
    such regular prescribed under your own thoughts thought thinking plans plan intention intentions desire want wanting going gonna
    about doing wish wanted myself lately injury injuries medical during when after while surgery operations told said stuff things pain
    numbness weakness tingling ill unwell fever falls fall fallen accidents accident dizziness faintness temperature infection tumours
    steroids i lost losing im ive id am suicidal dark bad dizzy faint weak numb nothing way condition conditions disease significant
    fractures reason restrictions limits limit between that
"""
# What happens, said as a thing: "no trouble peeing", "no falls".
NOUNS = """<trouble> loss weight weakness accident accidents crash crashes fall falls incontinence retention
    leak leaks leaking tumble
    concussion restriction restrictions limit thoughts unexplained lifting medical burden suicide suicidal self"""
# With these, the denial is of a thought only, or by halves: the sign is doubtful.
THOUGHT = """think sure know believe reckon certain suppose guess say remember mean imagine thought idea convinced positive
    really exactly quite very much always entirely completely totally that"""
# After a hit, these take half of the denial back.
TOLD_AFTERWARDS = "yet unless until till except before besides apart usually normally anymore"
# Answered after its name: "fever: no".
ANSWERED_AFTER = """
    ¿|,|is|are|was|=|still|: no|none|nope|nah|nil|negative|never|zero|n|not|neg|0|fine|normal|ok|okay|good|clear $|,|really
    no|none|nope|nah|nil|negative|neg|0 $
    ¿ no|none|nope|nah|nil|never|not|negative|zero|n|nothing
    ¿ i? dont|havent|never|wouldnt|didnt|am|hasnt not|no|have|had|think|been|got
    is|are|was|all|both|feels|seem|seems|feel totally|all|completely|perfectly|absolutely|quite|still|both|back? fine|normal|good|ok|okay|
        great|perfect|clear|gone|no !before|until|till
    tested|test|came|was ~ negative
    ruled out
    were|was|are|is ~ ruled
"""
OTHERS = """
    my|the|his|her|our|a|one|another|some|that|this|your|best|two ~ <person>
    dad|mum|mom|wife|husband|brother|sister|nan|gran|grandad|grandma|uncle|aunt|auntie|aunty|girlfriend|boyfriend|hubby|gf|bf|grandpa|
        granny|nana|kids|daughter|son|father|mother|stepdad|dads|mums|missus
    my|a|one|his|her|our|another|some|this|old|best|training|that mate|mates|lad|lads|coach|bloke|guy|guys|lady|woman|man|buddy|neighbours|
        girl|boy|teammate|partner|missus|colleague|client|people|person|pal
    he|she|hes|shes|his|hers|him|someone|somebody|client|dog|dogs|cat|puppy|kid|toddler
    friend|mate|someone|guy|girl|bloke|colleague|<person> of mine|ours
    wifes ~ weeks|months gone|pregnant
    wifes|sisters|brothers|daughters|sons|husbands|nans ~ pregnant|due|expecting|in|on|year|grade|school|birthday|had|has|got|just
    cousin|cousins|grandpas|grandmas|landlord|athlete|athletes|ladies|lifter|lifters|clients|patients|members|pupil|pupils|lodger|bridesmaid
    uncles|aunts|aunties|grans|nans|grandads|husbands|brothers|sisters|daughters|neighbours|girlfriends|boyfriends|mates|bosses
    someone|somebody|guy|bloke|lady|woman|man|lad|girl|friend|anyone in|at|from|down my|our|the ~ class|gym|club|team|work|office|street|
        road|family|building|group|box|lane
    one|some|two|half|most of my|our|the ~ ladies|clients|athletes|lads|members|team|class|guys
    gyms|clubs pregnant
    coach had|has|got|is|was
    my youngest|oldest|eldest
"""
FAMILY = """
    in|on my|the|our? family|dads|mums|mothers|fathers|wifes|side
    runs|run|running|goes in|through my|the|our? family
    that|which my|his|her|the? <person> had|has
    for my|his|her|the <person>
    thing my|his|her|the <person>
"""
FAMILY_BEFORE = """
    family|familial history|side|got|has|have|all|had|members|of
    runs in my|the|our? family
    hereditary
    history|risk of ~ in my|the|our family
"""
ME_TOO = """
    me|i too|also|aswell
    same here|as|for|with
    so have|do|did|am i
    and so|i|im|me ~ too|also|have|same|now|myself
    like me|mine
"""
ONES_OWN = "i im ive id iam me my mine myself meself"

# The past: long over it is no matter for a sign of now; otherwise doubtful.
YEARS_AGO = """
    years|yrs|decades|decade|ages ago|back|since|now
    at|in uni|university|college
    back ~ at|in school
    in|back|since|from 1970|1975|1980|1985|1990|1992|1995|1996|1997|1998|1999|2000|2001|2002|2003|2004|2005|2006|2007|2008|2009|2010|2011|
        2012|2013|2014|2015|2016|2017|2018|2019|2020|2021|2022|2023|2024
    as a kid|child|teen|teenager|student|youngster|boy|girl|junior|baby|toddler|youth
    when|while i was|were ~ <kids>|<teens>|3|4|5|6|7
    when|while i was|were a|young|younger|little|small|ten|twelve|at|in|six|five|seven|eight|nine|teenager|kid|pregnant
    in my|the teens|twenties|20s|thirties|30s|youth|childhood|90s|80s|70s|army
    last year
    long time|while ago
    years|yrs ago
    childhood
"""
PAST_WORDS = """
    ago
    last year|summer|winter|spring|autumn
    used to
    in the past
    months back|before
    once
    previously|formerly
    a while back|ago
"""
LASTING = """
    since then|and|with
    ever since
    still|again|now|today|currently|lately|worse|recently|nowadays|keeps|keep|present|presently|always|started|getting
    since ~ and|still|now
    days|hours|week|weeks|day|mins|minutes|yesterday|night|morning|fortnight
"""
OVER_NOW = """
    fine|ok|okay|better|good|great|alright|normal|recovered|gone|over|healed|sorted|clear now|since|again|today|after|completely|and|
        nowadays|then|$
    all|completely|fully|totally|long ~ fine|good|clear|gone|healed|recovered|better|over|ok|sorted|normal
    healed|recovered
    no|never|not|without|nothing|none ~ since|problem|problems|trouble|bother|again|issues|came|after|then
    got|am|im|feel|feeling|am|been ~ better|over it|fine|great|good
    just the once
"""
# Asked or supposed rather than so.
SUPPOSITIONS = """if unless case scared afraid worried might would could whether risk suppose fear possibly maybe perhaps probably
    wonder should hope hoping"""
# Hard work just done, after which some of it is ordinary.
EFFORT = """
    after|from|post|following|during|doing|did|since|by|of ~ set|sets|squat|squats|squatting|workout|session|training|deadlift|deadlifts|
        lunges|gym|leg|run|running|ride|reps|rep|burpees|cardio|walk|test|wod|sprints|sprint|plank|that|stairs|hike|football|match|game|
        exercise|lifting|class|bike|cycling|monday|those|step|legs|bridges|wall
    leg|squat day|days|session|workout
    set|sets|reps|rep|workout|session|squats|lunges|burpees|cardio|deadlifts
    was|that|been a|one|was ~ hard|tough|heavy|set
    as|like usual|always|normal
    normal|usual for|after|as
    good way
    sore|tired|doms
    fine|ok|good|normal $
"""

# Slips too far for the edit distance, or nearer to a word of their own.
SIGN_SPELLINGS = {
    "bladder": "bader", "diarrhoea": "diarea diarrea", "pee": "peee pea", "urine": "urin", "urinate": "pipi piddle",
    "weak": "waek wek weeak", "numb": "numm nub num nmub nunb numbe nummed nom", "tingling": "tinglin", "perineum": "perenium perinial",
    "genitals": "genitles", "foot": "fot foto foots", "leg": "lge legg", "cant": "cnat carnt cnt kant cudnt",
    "couldnt": "couldn couldnot coudnt cudnt", "dont": "dnt doont don", "doesnt": "dosent dosnt doesent doenst dsnt doesn",
    "didnt": "dident didn ddint dint", "havent": "havnt haven avent", "wont": "wnt", "breath": "breth brath", "faint": "fant feint",
    "fainted": "fented", "chest": "chst", "difficult": "diffcult dificult", "pain": "pian payn pani paine", "pressure": "pression",
    "tight": "tihgt tigth tigh tite", "exist": "exsist exsit", "flu": "grippe", "fever": "fevr feaver", "pregnant": "pregnet",
    "doctor": "dokter doktor", "physio": "fysio fizio", "since": "sinse sence", "yesterday": "yday yest yestarday ystrday",
    "want": "wnt wan", "wanna": "wana", "anymore": "anymor anymroe", "suicidal": "sucidal suisidal suicidle", "myself": "mysel myslef",
    "losing": "loosing lossing", "living": "livin", "going": "goin", "something": "smth sth summat smthing somthing sumthin",
    "nothing": "nuthin nothin nuffin nowt nuthing", "because": "cuz coz cos bc becuz becoz cause", "weight": "wieght",
    "feeling": "feelin", "disc": "disck", "slipped": "sliped", "you": "u", "years": "yrs", "with": "w wiv",
    "squats": "sqauts sqats squtas squas",
    "difficulty": "diffculty dificulty difficultly", "ankle": "ankel anckle", "fell": "falled fel", "thigh": "thy thie tigh",
    "and": "n nd", "tonight": "tonite", "night": "nite", "stomach": "stomache", "temperature": "tempreture", "surgery": "surgry",
    "medication": "medicaton", "palpitations": "palpatations", "haemorrhage": "hemorrhage",
}  # fmt: skip

# Words that are put right when mistyped, one slip away (two from nine letters).
MISTYPED_SIGNS = """
    bladder bowels urine urinate urinating incontinent incontinence weakness paralysed numbness tingling saddle genitals testicles penis
    vagina perineum buttock buttocks crotch erection orgasm sexual breathless breathing breathe dizzy fainted fainting collapsed
    palpitations pressure chest tightness attack pacemaker bypass angioplasty arrhythmia fibrillation angina defibrillator fever
    feverish temperature infection antibiotics shivering pneumonia tripped slipped accident ladder concussion concussed cancer
    chemotherapy radiotherapy leukaemia lymphoma melanoma osteoporosis osteopenia steroids prednisolone prednisone brittle unexplained
    unintentional unintentionally explanation weight pregnant pregnancy expecting trimester postpartum caesarean midwife herniated
    bulging prolapsed scoliosis stenosis spondylolisthesis vertebra vertebrae laminectomy discectomy microdiscectomy fusion surgery
    operation spinal warfarin apixaban rivaroxaban eliquis xarelto clopidogrel anticoagulants anticoagulant thinners doctor physio
    physiotherapist surgeon consultant advised forbidden allowed restriction restrictions lifting bending squatting suicidal suicide
    myself burden overdose worthless hopeless existing disappear goodbye living fourteen fifteen sixteen seventeen sophomore freshman
    without trying sensation feeling control retention catheter constipated myocardial ventricular consciousness unconscious blackout
    lightheaded weaker floppy dragging slapping buckled buckles buckling miscarriage breastfeeding fractured diagnosed shortness
    ankylosing spondylitis tumour remission oncologist haemophilia
"""

# Words nobody means one of these by.
REAL_WORDS = """
    restrictive restricting ladders saddled saddles fewer adviser cheat chess crest breathed breather listing lofting linting shipped
    sipped binding banding blending pressured physic cancel canter accidental tangling controls lining loving liking exiting felling
    tying bowls spiral attach forbidding operating snapping strapping diagnose diagnosis
"""
