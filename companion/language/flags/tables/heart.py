"""Signs of the heart and the breath, a heart illness of one's own, and blood thinners.

That chest pain, faintness and unusual breathlessness stop a test follows the ACSM pre-participation logic (Riebe 2015,
read); the wording is the project's own.
"""

from companion.language.flags.flag import Flag
from companion.language.flags.tables.signs import Signs

CHEST = (
    Signs(Flag.CHEST, "pain or pressure in the chest", """
    <chest> & <tight> !up|muscle|muscles|day
    <tight> ~ in|on|over|across|round|around|through|behind|under|at|to|from ~ <chest>|heart|ribs
    chest infarct|discomfort|pain|pains|tightness|pressure
    pain|pains|hurt+|ache+|aching|pressure|tight|tightness|squeeze+|squeezing|stabbing|sharp|burning|discomfort & heart
    angina|chestpain
    <chest>|heart|rib & sitting|standing|sat|stood|grip|gripping|fist|knot|brick|lump|knife|block|stone|rock|anvil|elephant|vice|wire|
        clamped & on|like|in|of|my|round
    jaw && ache+|aching|pain|pains|sweating|sweaty|numb|tight && sweat+|sweaty|clammy|sick|chest|arm|dizzy|breathless
    jaw|left arm && ache+|aching|pain|pains|hurts|sweating|sweaty|numb|heavy|tingling|sick|clammy
    left arm && ache+|aching|pain|pains|hurts|sweating|sweaty|numb|heavy|tingling
    breathe|breathing|inhale ~ hurts|painful|pain|stabs
    lungs|lung && wont|cant|not|dont|burn|tight|hurt|hurts|full|fill|heavy|squeezed !good|set
    elephant|weight|brick|someone|somebody|band|belt|vice|vise|concrete|fist|rope|anvil|strap|truck|car ~ on|round|around|across|over ~
        <chest>
    pain|ache+|aching|numb|numbness|tingling|heavy|heaviness ~ left arm|jaw
    pain|ache+|aching|heavy|shooting|heaviness ~ down|in|into|through|up|to ~ jaw|left arm
    left arm|jaw ~ ache+|aching|heavy|pain|pains|hurts|numb|tingling|tingly|painful
    <chest> ~ <odd>|discomfort|bad|killing|agony|bothering|playing|fire|explode|bursting
    <tight> <chest>|chested
    weight|pressure|heaviness|load|tightness|pain|oppression|elephant ~ on|in ~ <chest> !bar|plate|press
    pinch+|burn+|press+|presses|pulling|gripping ~ <chest>
    <chest> ~ pinch+|burns|presses|grips !floor|wall|thighs|knee|knees|up
    """),
    Signs(Flag.CHEST, "breath lost", """
    <hardly>|unable|fighting|gasping|gasp|fight|couldn|cudnt to|for|really|just|even|fully|properly|i? breathe|breath|breathing|inhale|air
    <hardly>|couldn|cudnt to? ~ catch|get|take|draw|find|catching|getting|taking|drawing|finding ~ breath|air|breathe !in
    cant|couldnt|cannot|unable|hard|trouble|difficulty|struggle+|difficult|difficulties|problem|problems ~ breathe|breathing !technique|cue|
        pattern
    breathless|breathlessness|suffocating|suffocate|sob !after
    short|shortness|shortage|shorter|lost|lack|less|loss of? breath|air|breathing !after|from
    not|cant|couldnt|never ~ enough air|oxygen|breath
    panting|breathless|breath|puffed|puffing && minutes|mins|hours|ages|hour && later|not|still|wont
    out of breath|puff & walk|walking|stairs|nothing|sitting|lying|rest|resting|easily|talking|easy|unusual|unusually|bed|night|kettle|
        dressed|room|all|doing|standing|shopping|talk|lately|hill|shower
    puffed|winded|wheezy|wheezing|panting|puffing & stairs|nothing|sitting|rest|lying|walking|easily|shoes|room
    wake+|woke|woken|waking ~ gasping|choking|breathless|breath
    """),
    Signs(Flag.CHEST, "fainting", """
    faint|fainted|fainting|fainty|faintness|faints|syncope|swoon+|blackout|blackouts|unconscious|unconsious
    <dizzy> & nearly|almost|fell|fall|collapse|collapsed|stand+|stood|sit|really|very|so|grey|gray|sweaty|black|keep|always|properly|badly|
        every
    passed|pass|passing|blacked|black|blacking|conked|conking|spark|sparked|greyed|grayed|zonked|flaked|blanked|pass out !bed|sofa|couch|
        asleep|after|plate
    everything|vision|world|sight|eyes|lights|all|room ~ black|dark|tunnel|tunnelled|grey|gray|white|fading|faded|closing|closed|tunnelling|
        tunneling !hall|garage|outside
    vision|eyesight|sight ~ went|going|goes|gone|lost|blurry|blurred|blurs|narrow|narrowed|spotty
    keel+|keeled over|forward|backwards
    nearly|almost|about|close|near ~ passed|pass|blacked|black|fainted|fainting|passing|blacking|fell out|over|$
    <dizzy>|light|head|grey|black|faint && hit|down|deck|floor|fell|stood|standing|collapsed|sit|lie
    passed|pass|passing|black|blacked|blacking out && stand|standing|stood|nearly|almost|i|toilet|shower
    <chest> ~ pounding|thumping|fluttering|hammering|banging
    lost|lose|losing|loss ~ consciousness|conscious|conciousness|consiousness
    blacked|passed|pass|black out && seconds|second|secs|sec|floor|woke|came|set|rep|bar|minute|stood|toilet|stairs|street
    was|were|went|been out for|cold ~ second|seconds|minute|minutes|min|sec|secs|moment|bit
    woke|wake|came|waking ~ up|to|round|around ~ floor|ground|pavement|kitchen|bathroom|deck|people|paramedics
    came|come|coming|comes|went|go all? over ~ <dizzy>|funny|queer|weak|hot|sweaty|clammy|odd|strange|all|cold|faint
    funny turn|turns|spell
    dizzy|fainting|faint|light|giddy|sick spell|spells|turn|turns|fit|fits
    """),
    Signs(Flag.CHEST, "the heartbeat", """
    rate|hr|pulse && sitting|lying|bed|rest|resting|nothing|sofa && shot|jumps|jumped|spikes|spiked|high|racing|fast|180|160|150|140|170|up
    pulse|heart|heartbeat ~ over the place|shop
    palpitation|palpitations|palps|palpatations|palpations|tachycardia|arrhythmic|palpatation
    heart|heartbeat|pulse|ticker|rhythm|hearts ~ <flutter>|unsteady|wonky|wobbly|mental|nuts|mad|stop+|pause+|pausing|off|weird|wrong|
        trembling|quiver+|quivering !fine|rate|as
    <flutter>|extra|double|ectopic|missing ~ heart|heartbeat|heartbeats|beat|beats
    heart|heartbeat|pulse ~ <race> & rest|resting|nothing|reason|sitting|sat|lying|bed|night|random|randomly|sudden|suddenly|nowhere|stop|
        sleep|warning|relaxing|sofa|while|wont|relax|hours|calm|slow|settle|still
    <race>|fast ~ heart|heartbeat|pulse & rest|resting|nothing|reason|sitting|sat|lying|bed|night|random|randomly|sudden|suddenly|nowhere|
        sleep|relaxing|sofa|hours|calm|stop|still
    heart|pulse ~ wont|doesnt|not|isnt|never ~ slow|calm|settle|come|stop|down
    heart|heartbeat|beat ~ skips|skipped|skipping|flutters|fluttering|fluttered|missed|misses|jumps|flips|flopping
    fluttering|flutters|flutter|thudding|thumping|pounding|thuds|flapping|fluttery|skipping ~ in ~ <chest>|throat|neck|ribs
    skipped|skipping|skips|missed|missing|misses|dropped ~ beats|heartbeats|heartbeat
    butterfly|bird|fish ~ chest
    """),
    Signs(Flag.CHEST, "chest, breath, head, perhaps", """
    <dizzy>
    gasping|gasp|choking
    out cold
    grey|gray|white|pale & went|came|gone|turned|clammy|sweaty|dizzy
    <chest>|heart|heartbeat && weird|odd|funny|strange|wrong|pain|pains|pressure|heavy|hurts|hurt|squeeze|squeezing|fluttering|skips|
        skipping|jumps|racing|stabbing|tight|burning|discomfort|ache|aches|aching|crushing|numb
    breath|breathe|breathing && cant|couldnt|short|trouble|struggle|struggling|lost|odd|weird|enough|wont|worse|gasping
    seeing|saw|see stars|spots|dots
    cold sweat|sweats
    """, sure=False),
    Signs(Flag.CHEST, "breath and heartbeat, as right after hard work too", """
    heart|heartbeat|pulse ~ <race> !in|after|from|good|with
    <race>|fast ~ heart|heartbeat|pulse
    out of breath|puff
    wheezing|wheezy|winded|wheeze
    """, sure=False, effort=True),
)

HEART_HISTORY = (
    Signs(Flag.HEART_HISTORY, "an illness or operation of the heart", """
    heart|cardiac|coronary attack|attacks|arrest|event|failure|disease|condition|murmur|block|defect|surgery|operation|op|bypass|transplant|
        arrhythmia|trouble|problem|problems|issue|issues|rhythm|rythm|valve|meds|medication|medications|tablets|pills|complaint|patient|
        rehab|ward|infarct|procedure|scare|episode|infection|ablation|stent|stents|blocks|artery|arteries|stuff|cath|muscle
    heart|ticker ~ dodgy|weak|bad|enlarged|thickened|failing|dicky|gammy|operated|op|operation|surgery|stented|repaired|arrhythmia|stopped|
        disease|condition|leaky|leaking|leaks|ablated|zapped|shocked|bypassed|scarred|damaged
    dodgy|weak|bad|dicky|gammy|enlarged|leaky|open|broken|iffy|faulty|irregular heart|ticker|valve|heartbeat !rate
    heart ~ condition|disease|failure|problem|problems|attack|murmur|arrhythmia|surgery|operation|valve|ablation|trouble|issue|issues
    infarct|infarction|angina|angioplasty|cabg|cardiomyopathy|myocarditis|pericarditis|endocarditis|hcm|myocardial|nstemi|stemi
    stent|stents|stented|pacemaker|pacemakers|defibrillator|icd|pacer|stentings
    pace maker
    heart|double|triple|quadruple|quad|single bypass|bypasses
    had|have|got ~ bypass|bypasses|zipper|ablation|cardioversion|cardioverted|ablations
    ablation|cardioversion|cardioverted|cabbage
    arrhythmia|arrythmia|arhythmia|arrhythmias|arythmia|arrhytmia|afib|af|svt|wpw|tachy|bradycardia|flutter|fibrillation|fibrilation|pvcs|
        ectopics !in
    ejection fraction
    aortic|mitral|artificial|tissue|mechanical|metal|new|pig|leaky|leaking|replacement|replaced|tricuspid|bicuspid|cow|bovine|heart valve|
        stenosis|regurgitation|prolapse|aneurysm|root|valves|dissection
    valve|valves ~ replaced|replacement|repair|repaired|heart|leaks|leaking|leaky
    hole|holes in ~ heart
    mi in|at|last|years|aged|when
    blocked|clogged|narrowed|furred|hardened|blockage|blockages|opened ~ artery|arteries|coronary
    cardiac|coronaries
    long qt
    brugada|marfan|marfans|kawasaki|fallot|tetralogy|congenital
    <i>|had|survived|after|since|my|due|cos ~ coronary
    """, own=False),
    Signs(Flag.HEART_HISTORY, "an illness of the heart, perhaps", """
    heart thing|things|history|checked|scan|monitor|tests|specialist|doctor|clinic|man|guy|defect|stuff
    """, sure=False),
)

ANTICOAGULANTS = (
    Signs(Flag.ANTICOAGULANTS, "blood thinners by name", """
    clot|clotting pill|pills|tablet|tablets|medicine|medication|meds
    jantoven|warfarin|warfrin|warferin|coumadin|cumadin|marcoumar|marcumar|sintrom|acenocoumarol|apixaban|apixiban|eliquis|elequis|
        rivaroxaban|riveroxaban|xarelto|zarelto|edoxaban|lixiana|savaysa|dabigatran|pradaxa|heparin|clexane|lovenox|enoxaparin|dalteparin|
        fragmin|tinzaparin|innohep|fondaparinux|clopidogrel|clopidrogel|plavix|ticagrelor|brilinta|brilique|prasugrel|effient|anticoagulant|
        anticoagulants|anticoagulation|anticoagulated|anticoag|anticoags|anticlotting|antiplatelet|antiplatelets|bloodthinner|bloodthinners|
        doac|doacs|noac|phenprocoumon|bivalirudin|xeralto
    blood|bloods thinner|thinners|thiners|thiner|thinning|thinned|thining
    on|take|taking|takes|my|have|got|prescribed|the|daily thinners
    thinners|thinner|tablets|pills|meds|medication|medicine|drugs|injection|injections|inject|jabs|shots|drug|med|pill|tablet & thin|
        thinner|thins|thinning|clot|clots|clotting|dvt|embolism|pe & blood|on|for|my|from|stop|against|after|since
    thin|thins|thinned|thinning|dilute|dilutes ~ blood|bloods
    blood ~ thin|thinned|thinner|thinning|clotting|diluted !pressure|test|tests
    im|am|been ~ thinned
    inr ~ is|was|check|checked|clinic|test|high|today|range|tests|<number>
    stop|stops|prevent|preventing|against ~ clot|clots|clotting
    rat poison
    """),
    Signs(Flag.ANTICOAGULANTS, "blood thinners, perhaps", """
    dvt|inr|embolism|embolus|haemophilia|hemophilia|haemophiliac|hemophiliac|thrombosis|thrombus|leiden
    blood|had|have|a|leg|lung|lungs|got ~ clot|clots
    """, sure=False),
)

HEART = (*CHEST, *HEART_HISTORY, *ANTICOAGULANTS)
