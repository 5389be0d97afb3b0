"""Signs of illness, injury, pregnancy, the bones and the spine; limits set by a clinician; age.

The wording is the project's own (choice, no source).
"""

from companion.language.flags.flag import Flag
from companion.language.flags.tables.signs import Signs

FEVER = (
    Signs(Flag.FEVER, "fever and infection", """
    fever|fevers|feverish|feaver|fevered|febrile|pyrexia
    chill|chills|shiver+|shivery|rigors|rigor|thechills !song|from
    night|cold sweats|sweat
    temp|temperature|temperatue|tempreture ~ 37.5|37.6|37.7|37.8|37.9|38|38.1|38.2|38.3|38.4|38.5|38.6|38.7|38.8|38.9|39|39.1|39.2|39.3|
        39.4|39.5|39.6|39.7|39.8|39.9|40|40.1|40.5|38,5|38,2|38,1|38,8|39,2|39,5|39,1|100|100.4|100.5|101|101.2|101.5|102|103|104|99.5|99|
        high|raised|up
    high|bit|slight|running|run|raised|had|got|have|having|spiking|spiked|ran|and|with|low|grade|a|mild temp|temperature|temps !gauge|
        controlled|in|room
    infection|infections|infected|sepsis|septic|tonsillitis|tonsilitis|pneumonia|bronchitis|strep|abscess|uti|cystitis|cellulitis|shingles|
        mono|glandular|meningitis|quinsy|sinusitis|flu|influenza|covid|corona|rona|coronavirus|norovirus|gastro|salmonella|lurgy|lurgi|
        virus|pleurisy|malaria|lyme|tuberculosis|tb|mastitis|osteomyelitis|discitis|measles|mumps|chickenpox|rsv|dengue|prostatitis|
        pyelonephritis|appendicitis|gastroenteritis|manflu|viral|bacterial !jab|jabs|vaccine|booster|shot|protection|free|year|years
    antibiotics|antibiotic|penicillin|amoxicillin|amoxycillin|doxycycline|antibios
    come|came|coming|went|gone|going ~ down|done with something|sth|a|flu|the|some|covid|it
    """),
    Signs(Flag.FEVER, "ill now", """
    im|am|feel|feeling|felt|been|got|gotten|really|so|bit|quite|too|still|very|proper|properly|just|are|super|pretty|fairly|getting|become|
        be|was|woke|fell|both|and|still|quite ill !do|be|try|go|get|tell|send|have|let|just
    ill today|since|at|with|all|again|in|now|for|atm|yesterday|for !do|be|be
    <i>|feel|feeling|felt|been|off|got|home|bit|really|so|very|woke|called|still|lying|proper|properly|getting|feelin|throwing|day|days|
        being|in|too|was|are|went sick !of|workout|gains|pump|session|pb|pr|leave|squat|playlist|set|bro|form|bag|mate|lift|at|depth|and
        tired
    sick ~ today|since|yesterday|all|with ~ !pr|pb
    not|dont|isnt|havent ~ well $|today|atm|at|right|since|this|yesterday
    unwell|poorly|bedridden|bedbound|peaky|ailing|rundown|grotty|peaky|peely
    under the weather
    burning up
    thermometer ~ 37.5|37.8|38|38.1|38.2|38.3|38.4|38.5|38.6|38.7|38.8|38.9|39|39.1|39.2|39.5|40|101|102|103|100|says|said|reads|showed
    38|38.5|39|39.5|40|38,5|101|102|103 on|by ~ thermometer
    shaking|freezing|shiver+|frozen && blanket|blankets|duvet|duvets|bed|covers|stop|fever|cold
    hot and cold|shivery
    caught|catching|got|have|picked|full|stinking|streaming|having ~ cold|bug|virus|lurgy|something|flu|covid !floor|shower|feet|hands|
        garage|bar|on
    sore|bad|raw|burning throat
    throwing|threw|thrown|chucking|puking|vomit+|chunder+|spew+|barf+|hurling ~ up|all|night|morning|since|yesterday|everything !bar
    """),
    Signs(Flag.FEVER, "ill, perhaps", """
    temp|temps|temperature|degrees|morning|fever|tonight|reads && 38|38.1|38.2|38.3|38.4|38.5|38.6|38.7|38.8|38.9|38,5|38,9|39|39.1|39.2|
        39.5|40|100.4|100.8|101|101.2|101.5|102|102.3|103|104 !kg|cm|lb|lbs|reps
    shakes|shaking|shivers|chattering|sweats|sweat|soaking|soaked|drenched && warm|sheets|blankets|cold|teeth|night !set|squats|rep
    hot|boiling|burning && cold|ice|chills && hands|then|feel|up|dreadful !bath|shower|day
    under ~ weather
    aching|achy|ache ~ all over|everywhere
    off ~ colour|color
    """, sure=False),
)

_BLOW = (
    "hit|banged|bumped|smacked|bashed|whacked|cracked|knocked|thumped|clonked|slammed|bonked|struck|"
    "battered|jarred|bruised|walloped|clattered|winded|clipped|twatted|clocked|dinged|conked|split"
)

FALL = (
    Signs(Flag.FALL, "a fall", """
    <i>|just|have|and|had|nearly|almost|then|yesterday|today|also|but|btw|to|because|cos|since|after|when|ago ~ fell !asleep|behind|short|
        in|laughing|apart|silent|off the|ill|for|into|through|pregnant|to pieces|over my|over laughing|forward|sick|back to|out of
    fell|fallen|falling|fall ~ down|off|from|out|over|down|backwards|backward|onto|through|in|on|into ~ stairs|step|steps|ladder|bike|
        bicycle|horse|roof|tree|chair|shower|bath|bathroom|ice|pavement|street|scooter|motorbike|escalator|wall|scaffold|scaffolding|loft|
        hatch|kerb|curb|hole|bed|stool|table|van|lorry|trailer|fence|slope|cliff|back|hip|head|bum|arse|ass|butt|backside|bottom|side|
        tailbone|coccyx|spine|face|skis|snowboard|skateboard|tractor|quad|rack|platform|bench|box|height|garden|kitchen|floor|snow|work|
        train|bus|metre|metres|meters|feet|hill|climbing
    fell|fallen|fall|falling|tumbled|toppled hard|badly|heavily|awkwardly|yesterday|today|last|this|again|earlier|at|while|when|monday|
        tuesday|wednesday|thursday|friday|saturday|sunday|the|a|two|three|days|backwards|backward|$ !asleep|short|into place
    fell|fallen|falling over|down|downstairs|backwards|flat|heavily|bad|recently|twice|from|off !laughing|my|words|own|wagon|track|the wagon
    had|have|took|taken|taking|having|after|since|from|my|bad|nasty|recent|big|another|hard|heavy|the ~ fall|tumble|spill|topple|crash|
        collision|prang|pileup|wipeout|knock|faceplant !strength|block|training|season|programme|asleep|back
    fall|tumble|crash|accident|collision|prang ~ yesterday|last|week|ago|days|on|from|at|down|off|today|recently|morning|monday|tuesday|
        wednesday|thursday|friday|saturday|sunday|month|when|while|in !app|strength|short|video|phone|block
    slip+|trip+|stumble+|skid+|slid ~ on|over|in|down|off|up ~ ice|icy|stairs|step|steps|shower|bath|wet|mud|dog|cat|kerb|curb|pavement|toy|
        toys|rug|carpet|leaf|leaves|floor|snow|tiles|back|bum|bottom|arse|lego|root|path|hose|cable|kid|kids|kitchen|bathroom|banana|deck|
        decking|pool
    slipped|tripped|stumbled|slip|trip ~ and|& fell|landed|hit|banged|smacked|cracked|went|bashed|whacked|hurt|jarred
    slipped|tripped|skidded yesterday|today|last|this|earlier|on|over|in|while|getting|at|coming|walking|running !tape|wall|mark|my|wagon|
        grip|socks|mat
    land+ ~ on ~ back|hip|head|bum|bottom|arse|ass|butt|backside|tailbone|coccyx|spine|neck|side|shoulder|face|knee|knees|buttock|buttocks|
        hard|concrete|ice|floor|flat
    came|come|coming|thrown|threw|bucked|knocked|flew|flung|chucked|tossed|pulled|dragged ~ off|from|over|out|down ~ bike|bicycle|horse|
        motorbike|pony|scooter|skateboard|ladder|board|quad|feet|handlebars|car|moped|ebike|cycle|stairs|saddle|motorcycle
    came|come|knocked|thrown off ~ bike|horse|motorbike|it|bicycle|road|roundabout !break
    went|go|going|flew|sent ~ over|flying|down|headfirst|through|into|arse|tits|backwards|ass ~ handlebars|stairs|windscreen|bars|steps|on|
        ice|tit|up|elbow|bonnet|heels|kerb|flying|wet|yesterday
    stacked|decked|faceplanted|faceplant|binned|stack ~ it|out|bike|yesterday|down|on|last|myself !plates
    car|bike|motorbike|road|traffic|rta|motor|motorcycle|cycling|skiing|ski|riding|work|rugby|nasty|bad|serious|van|bus|train|quad|climbing|
        horse|scooter|minor|industrial crash|accident|smash|wreck|collision|injury|pileup|shunt|incident
    rear|t ended|boned
    run|ran|knocked|hit|struck|clipped|mown ~ over|down|by|off ~ car|bike|van|bus|truck|lorry|taxi|cyclist|motorbike|road|cycle|horse|
        scooter
    had|was|been|were|got|have ~ in|an|a ~ accident|accidents|crash|collision ~ $|at|on|yesterday|last|and|with|week|days|this|recently
        !pants|toilet|bed
    pushed|shoved|tackled|kicked|punched|headbutted|beaten|mugged|assaulted|jumped|attacked|elbowed|kneed|barged|speared|charged ~ down|
        over|in|by|up|to ~ back|hip|head|stairs|horse|cow|kidney|kidneys|spine|bull|face|bloke|someone|ground|coccyx|tailbone|pub|wall|
        street|night
    smashed|smash|bashed|cracked|whacked ~ hip|back|tailbone|coccyx|head|spine ~ on|against|off|into
    """, thing=False),
    Signs(Flag.FALL, "a blow", f"""
    {_BLOW} ~ my|me|the ~ head|back|hip|spine|tailbone|coccyx|skull|neck|noggin|bonce|ribs|face|kidney|pelvis|
        forehead !off|wall $|pain|injury
    {_BLOW} in|on|to|across|around|round ~ head|back|hip|spine|tailbone|coccyx|skull|neck|noggin|kidney|pelvis|
        kidneys|face|ribs
    head|back|hip|tailbone|coccyx|spine ~ {_BLOW} !phone|wall by|cue
    knock|blow|bang|bump|whack|smack|hit|clout|thump|kick|crack|clonk to|on ~ head|back|hip|spine|tailbone|coccyx|
        neck|kidney|pelvis|face|noggin
    concussion|concussed|concusion|concuss|kod
    knocked ~ out|unconscious|cold|myself|silly !of|park
    hit|knock|blow|bang|whack|kick|bash|tackle|elbow|boot ~ to|in|on ~ head|back|hip|spine|tailbone|coccyx|kidney|
        neck|ribs
    bar|barbell|weight|box|tree|branch|ladder|shelf|beam ~ came|fell|dropped|landed|crashed ~ on ~ head|back|hip|neck|
        me|spine|shoulders
    bar|plate|weight|barbell|dumbbell|box|branch|tree|beam|shelf|ceiling|ladder|rack|something|kettlebell|door|
        weights|plates|pallet|brick|bricks|tile|wardrobe ~ came|fell|dropped|landed|crashed|collapsed|rolled|slipped|
        hit|whacked|smacked|clobbered ~ on|onto|down|across|off|in ~ me|my|back|head|hip|neck|spine|foot|shoulders
    dropped ~ bar|plate|weight|barbell|dumbbell|kettlebell|it|loaded|kg|box ~ on|onto|across ~ me|my|head|back|hip|
        neck|foot|myself|spine !rack|pins
    pinned|trapped|squashed|crushed|stapled|folded ~ under|beneath|by|between ~ bar|barbell|weight|it|car|weights|
        rack|wall|tractor
    hit|clocked|whacked|caught|smacked|clobbered by ~ bar|plate|ball|swing|branch|door|car|bus|beam
    """, thing=False),
    Signs(Flag.FALL, "a fall, perhaps", """
    horse|bull|bullock|cow|bale|pallet|box|atv|quad|car|bike|bus|van|ladder|knee|elbow|cab|okada|ball && threw|flipped|rolled|crushed|hit|
        landed|caught|tipped|took|got|went|knocked && me|back|hip|head|shoulders|kidneys|gate !machine|target|depth|rep
    came a cropper
    missed ~ step|chair|stair|rung && hard|down|sat|hit|ground|concrete|tile
    busted|bust|landed ~ ass|arse|bum|tailbone|backside|hip && floor|wet|ice|concrete|on|stairs|work
    fell|fallen|tumbled|toppled|faceplanted !asleep|behind|short|laughing|apart|silent|ill|for|into|through|forward|in
    slipped|tripped|skidded & hard|bad|badly|back|hip|stairs|bum|floor
    landed ~ on ~ my
    """, sure=False),
)

CANCER_BONE = (
    Signs(Flag.CANCER_BONE, "cancer, of one's own", """
    cancer|cancers|cancerous|canser|tumour|tumor|tumours|tumors|leukaemia|leukemia|lukemia|lymphoma|hodgkins|hodgkin|myeloma|melanoma|
        carcinoma|sarcoma|seminoma|glioma|mesothelioma|neuroblastoma|metastasis|metastases|metastatic|mets|metastasized|metastasised|
        malignant|malignancy|malignent|oncologist|oncology|chemo|chemotherapy|chemotheraphy|kemo|radiotherapy|radiotheraphy|radiochemo|
        immunotherapy|mastectomy|lumpectomy|orchiectomy|orchidectomy|prostatectomy|tamoxifen|letrozole|anastrozole|herceptin|brachytherapy|
        secondaries|remission|nonhodgkins|zoladex|melanomas !research|run|charity|star
    big c
    """),
    Signs(Flag.CANCER_BONE, "steroid tablets for long", """
    prednisolone|prednisone|prednisalone|pred|prednisolon|predinsone|prednisilone|dexamethasone|hydrocortisone|methylprednisolone|cortison|
        cortisone|medrol|decadron|budesonide|corticosteroid|corticosteroids|betamethasone|fludrocortisone|glucocorticoids !cream|injection|
        shot|jab|ointment|inhaler|nasal
    steroid|oral|cortisone tablets|pills|tabs|medication|meds|medicine|course|courses|steroids|treatment|therapy|dose !cream
    steroids ~ for|since|years|every|daily|tablets|prescribed|from ~ asthma|copd|crohns|colitis|arthritis|lupus|lungs|years|ages|months|pmr|
        polymyalgia|doctor|my|inflammation|decade|life|rheumatoid|ms|kidneys|uc|ra|transplant|skin|long|time
    steroid|steroids & asthma|copd|crohns|colitis|arthritis|lupus|tablets|polymyalgia|prescribed|years|long|doctor|doc|daily|medical|ra|
        transplant|eczema
    """),
    Signs(Flag.CANCER_BONE, "thin bones", """
    osteoporosis|osteoperosis|osteoperosis|osteoporotic|osteoporisis|osteopenia|osteopenic|osteoporois|osteopinia|osteogenesis|osteomalacia|
        pagets|osteopaenia|osteoporose
    brittle|thin|weak|fragile|soft|crumbly|crumbling|porous|low|poor|honeycomb|thinning|bad|glass bone|bones|skeleton
    bone|bones ~ brittle|thin|thinning|fragile|weak|porous|crumbling|crumble|chalk|glass|break|density|loss|soft|crumbly|thinned|snap|mass|
        honeycomb|deteriorating !broth
    alendronic|alendronate|fosamax|risedronate|denosumab|prolia|bisphosphonate|bisphosphonates|zoledronate|zoledronic|ibandronate|boniva|
        actonel|teriparatide|forteo|raloxifene|evenity|romosozumab
    broke|fractured|broken|fracture ~ from|with|just|by ~ nothing|sneezing|coughing|sneeze|cough|hardly|standing
    """),
    Signs(Flag.CANCER_BONE, "cancer, steroids or bones, perhaps", """
    steroid|steroids|cortisone !cream|creams|inhaler|lol|spray|no|cycle|gear
    dexa|biopsy|tumor|lump|benign
    bone density|scan
    chemo
    radiation
    """, sure=False),
)

_AMOUNT = (
    "weight|wieght|wait|kg|kgs|kilos|kilo|kilogram|kilograms|lb|lbs|pound|pounds|stone|stones|bodyweight|"
    "mass|wt|sizes|size|inches|percent|10kg|muscle|appetite"
)
_UNMEANT = (
    "without|unexplained|unintentional|unintentionally|unintended|unplanned|unwanted|inexplicable|"
    "inexplicably|mysterious|mysteriously|unexpected|unexpectedly|explain|explanation|reason|why|cause|"
    "trying|meaning|tried|intending|idea|clue|anything|accidentally|dunno|wanting|intentional|deliberate|"
    "deliberately|purpose|intentionally|dieting|diet|normally|normal|same|loads|lots|ton|tons|tonnes|"
    "plenty|horse|usual|concerning|worrying|worried|scary|worryingly|weirdly|strangely|oddly|mystery|"
    "rapidly|alarming|alarmingly|appetite|sick|more|random|randomly|nothing|changed|changing|different|"
    "differently|noticed|effort"
)

WEIGHT_LOSS = (
    Signs(Flag.WEIGHT_LOSS, "weight lost without meaning to", f"""
    <lose> ~ {_AMOUNT} && {_UNMEANT}
    {_AMOUNT} ~ <lose>|off|down|gone|melt+|falls && {_UNMEANT}
    <lose> && {_AMOUNT} && without|unexplained|unintentional|unintentionally|reason|meaning|explain|accidentally|
        dunno|somehow|noticing
    weight|wieght|kilos|pounds|lbs|stone ~ fall+|drop+|melt+|pour+|fell|come|comes|coming|slip+|vanish+|disappear+|
        shed+|slid+|dwindl+|flying|plummet+ ~ off|away|by|me|without|away|down
    unexplained|unintentional|unintended|unplanned|unwanted|mystery|mysterious|unexpected|sudden|rapid|involuntary ~
        weight|wieght ~ loss|drop|lost
    weight|wieght loss && {_UNMEANT}|cant|dont
    cant|couldnt|cannot|hard|struggle+|unable|trouble|dont|doesnt|wont ~ keep|put|gain|hold|maintain|putting|keeping|
        gaining|stay ~ weight|wieght|kilos|pounds|it|any ~ on && weight|wieght|kilos|pounds !bulk
    cant ~ gain|maintain|hold|keep ~ weight|wieght
    weight|wieght|kilos|pounds wont|doesnt|isnt|not stay|staying on
    cant ~ stop losing ~ weight|kilos
    thinner|skinnier|skinny|bony|gaunt|scrawny|skeletal|emaciated|smaller|thin|lighter|shrinking|shrunk|ribs|bones &&
        {_UNMEANT}|clothes|eating|eat|eats|showing|people|everyone|everybody|keeps|sticking|concerned
    belt|trousers ~ last|new|extra|another|two hole|holes|notch|notches && {_UNMEANT}|diet|food|eat|eating|change|
        changed
    clothes|trousers|jeans|belt|pants|shirts|rings|ring|shorts|skirt|bra|watch|leggings|suit|everything ~ loose|
        looser|fall+|hang+|baggy|big|huge|slip+|drop+|slide+|swimming|swamp+|notch|hole|holes && {_UNMEANT}|weight|
        eat|eating|lately|suddenly|diet|changed|thing|food|me|now|weeks
    weigh|weighing|weighed ~ less && {_UNMEANT}|every|keep|bulking|eat|eating|week
    scale|scales|weight|number|numbers ~ keep+|going|kept|drops|dropping|falling|goes ~ down|dropping|falling|going|
        lower && {_UNMEANT}|scale|scales|weight|diet|eating
    from|at <any> to|down && {_UNMEANT} && weight|kg|kilos|stone|eat|eating|food|wanting|scales|pounds|trying
    dropped|gone|down|went from ~ to && {_UNMEANT} && {_AMOUNT}|eat|eating|food|trousers
    down|dropped|lost|lose|losing|gone|shed <any>|two|three|four|couple|few ~ {_AMOUNT} && {_UNMEANT}|eating|eat|not
    from|84|80|70|90 ~ to <any> without ~ wanting|trying|meaning
    shrink+|wasting|wither+|fading|melting|disappearing ~ away
    i|keep|im|body|just ~ shrinking|wasting|shrink && {_UNMEANT}|eating|eat|food|more
    dropped|lost|gone|down ~ dress|trouser|jean|belt|clothes|notches|notch|sizes|size && {_UNMEANT}|sudden|weeks|
        dress|nothing
    """, thing=False),
    Signs(Flag.WEIGHT_LOSS, "weight lost, perhaps", """
    scale|scales|weight|kg|kilos|stone|lb|lbs|pounds|trousers|jeans|bra|belt|watch|clothes|size|sizes|suit|thinner|skinny|lean|shrunk|
        shrinking && without|nothing|accident|itself|own|same|unwanted|purpose|trying|how|why|reason|keep|keeps|no|not && down|was|lost|
        lose|changed|big|losing|gone|going|reducing|dropped|lighter|decreased|become|eating|gym !plate|bar
    lost|losing|loosing|lossing|loose|lose|keep|keeps|kept|still ~ weight|wieght !plates|room|planned|plan|diet
    lost|losing|loosing|dropped|shed ~ kg|kilos|stone|lb|lbs|pounds !bar|squat|deadlift|plates|lift
    weight|wieght loss
    weight|wieght ~ dropping|falling|melting|plummeting|plummeted|vanishing
    no|lost|gone|off ~ appetite|food
    dropping|losing|shedding|melting kilos|pounds|weight|stone !bar
    kilos|pounds|weight|kgs ~ disappearing|vanishing|melting|dropping
    """, sure=False, thing=False),
)

PREGNANCY = (
    Signs(Flag.PREGNANCY, "pregnant, or lately given birth", """
    pregnant|pregnent|pregant|preggers|preggo|prego|preg|preggy|pregnancy|pregnancies|prengant|pregananant|gravid|pregnat|pregante
    expecting|expectin|expecting ~ a|our|my|another|twins|baby|first|second|in|triplets !than|to|more|it|harder|easier|that|less|worse|this
    up the duff|stick|pole|spout
    knocked up !by the
    bun|bump in|on ~ oven|way
    family way
    trimester
    due|baby|edd ~ in|on|date|next|the|any|this|around ~ january|february|march|april|may|june|july|august|september|october|november|
        december|jan|feb|mar|apr|jun|jul|aug|sept|sep|oct|nov|dec|soon|christmas|spring|summer|autumn|weeks|week|month|day|baby|easter|xmas
        !renewal|mot|delivery|test
    baby ~ due|coming|on|way|inside|kicking|kicks|boards|board|arriving|arrive|belly|in
    having|carrying|expecting ~ twins|boy|girl|baby|triplets
    bump ~ big|bigger|huge|way|growing !car|speed|head
    midwife|antenatal|prenatal|obgyn|obstetrician|doula|postnatal|postpartum|postpartem|perinatal|natal|puerperium|fetus|foetus|embryo|
        obstetric|gyno|midwifes
    post|ante|pre partum|natal|pregnancy|birth|pregnant|baby
    gave|given|give|giving|after|since ~ birth
    birth|birthed|birthing ~ ago|weeks|her|him|last|month|days|baby|yesterday !date
    had|delivered|having|have|birthed|got ~ baby|twins|newborn|little|bub|bubba|bairn|daughter|son|first|second|third|sprog ~ ago|weeks|
        week|days|month|months|last|recently|just|yesterday|old !sitting|plates
    just|recently|only ~ had|birthed|delivered|popped ~ baby|kid|twins|bub|child|daughter|son|bairn
    c|sea section|sections|sec
    csection|csec|cesarean|caesarean|caesarian|cesarian|ceasarean|cesarian|caesar|kaiserschnitt|cessarian|ceserean|cesarea
    breastfeed+|breastfed|nursing|lactating|lochia|episiotomy|pumping ~ baby|newborn|my|milk|still|mom|mum|a
    breastfeeding|breastfeed|lactating|episiotomy
    late|missed|skipped|overdue ~ period|periods
    period ~ late|overdue|missed|hasnt|not|isnt
    late|overdue & period
    positive ~ pregnancy|hpt|stick|test
    second|2nd|two|faint|double|pink ~ line|lines && test
    waiting|wait for|on ~ baby
    emergency|planned|elective section|sections|c
    <any>|22|24|26|27|28|32|34|35|36|37|38|39|40|17|19|21|23|29|31|33 week|weeks|wk|wks along|gone|preg|pregnant|pp|postpartum|tomorrow|with
    two|2|double ~ pink|lines|blue lines|line
    eating|squatting|lifting|training|living for two|2 !weeks|years|months|reps|hours|mins|sets|days
    """),
    Signs(Flag.PREGNANCY, "pregnant, perhaps", """
    carrying|trimester|lines|late|section|forceps|delivery|belle ~ && months|weeks|month|trimester|stick|test|tested|am|scar|ago|july|
        operation|cut|first|second|third !bar|plate|coach|train
    baby|delivery ~ && weeks|wks|week|months|came|old|days && is|was|by|i|cant|since|before|ago|old && my|me|old|i|before|since !brother|
        sister
    newborn|infant
    expecting !than|to|more|it|harder|easier|that|less|worse|this|you|a message|an
    miscarriage|miscarried|ivf|ttc|ectopic|stillbirth|stillborn|abortion|termination
    trying|try ~ for|to ~ baby|conceive|babies
    had|have|just ~ baby|babies !steps
    belly|bump ~ big|huge|growing|gets|too & way|fold|months|weeks|wks|baby|bump
    maternity
    """, sure=False),
)

_SPINE = (
    "spine|spinal|back|lumbar|vertebra|vertebrae|neck|cervical|sacrum|backbone|thoracic|coccyx|l5|l4|l3|"
    "s1|l2|l1|t12|c5|c6|c7|vertebras|disc|discs|disk|disks"
)

SPINE_HISTORY = (
    Signs(Flag.SPINE_HISTORY, "a disc", """
    slipped|slip|slipt|herniated|hernated|herniated|bulging|bulged|prolapsed|blown|ruptured|popped|degenerated|degenerative|degenerating|
        torn|dodgy|knackered|worn|protruding|extruded|crushed|dehydrated|dried|bad|damaged|burst|squashed|replaced|artificial|compressed|
        blew|shot|dessicated|desiccated|sequestered|fucked|buggered|dislocated|moved|dicky|busted|exploded|extruding|broken|flat|thin|
        crumbled|messed|two|dead|black ~ disc|discs|disk|disks|disc's !bar|plates|10
    disc|disk|discs|disks ~ slipped|herniated|bulge|bulges|bulging|bulged|prolapse|prolapsed|prolapses|rupture|ruptured|protrusion|
        protrusions|protruding|replacement|replaced|herniation|herniations|hernia|hernias|degeneration|degenerative|disease|injury|injuries|
        problem|problems|trouble|issue|issues|surgery|operation|op|out|gone|went|knackered|worn|torn|tear|shot|slip|removed|bad|trimmed|
        shaved|extrusion|history|space|slips|flare|flares|damage|damaged|burst|popped|pressing|nerve|squashed|desiccation !bar|plates|brake|
        brakes|golf
    hernia|herniation|prolapse|protrusion|bulge ~ back|lumbar|spine|l5|l4|s1|disc|neck|lower
    discus|disco|discal|disk|disc hernia|prolapse|hernias|herniation
    curved|curvy|crooked|twisted|bent|s-shaped spine|backbone !at|in|when|position
    discectomy|microdiscectomy|laminectomy|disectomy|microdisectomy|laminotomy|foraminotomy|diskectomy|microdiskectomy|vertebroplasty|
        kyphoplasty|discectomies|rhizotomy|laminoplasty|microdisc|alif|plif|tlif
    l 4|5|3|2|1
    """),
    Signs(Flag.SPINE_HISTORY, "an illness or break of the spine", f"""
    scoliosis|scholiosis|scoliotic|kyphosis|lordosis|spondylolisthesis|spondylolithesis|spondy|spondylosis|
        spondylolysis|spondylitis|spondilitis|spondolisthesis|spondilolisthesis|spondylothesis|spondyloarthritis|
        axspa|retrolisthesis|anterolisthesis|stenosis|
        scheuermanns|scheuermann|schmorls|schmorl|tarlov|arachnoiditis|spina|syringomyelia|myelopathy|radiculopathy|
        listhesis|olisthesis|bechterew|spondylarthritis|ankylosing|scoliose|pars|chiari !exam
    cauda equina
    ankylosing spondylitis
    pars|stress|wedge|compression|burst|crush|vertebral|vertebra|spinal fracture|fractures|defect|defects & back|
        spine|vertebra|vertebrae|lumbar|pars|l5|compression|wedge|burst|l4|l3|t12|spinal|crush
    compression|wedge|burst|pars|vertebral fracture|fractures|defect
    broke|broken|fractured|cracked|fracture|fractures|crushed|break|snapped|shattered|collapsed|crack|chipped ~
        {_SPINE} !squat|foot|pb
    {_SPINE} ~ broke|broken|fractured|fracture|fractures|cracked|crushed|snapped|shattered
    {_SPINE} ~ surgery|surgeries|operation|operations|op|ops|operated|fusion|fused|surgeon|decompression|decompressed|
        implant|stimulator|injection|injections|epidural|scan|curvature|curved|stenosis|hardware|replacement|
        deformity|infection|arthritis|arthritic|degeneration|degenerative|degenerated|degenerating|condition|disease|
        cyst|narrowing|rods|metalwork|
        surgry|fuse !bar
    surgery|surgeries|operation|op|operated|fusion|fused|decompression|injections|injection|epidural|metalwork|
        procedure|surgry|op's|hardware|operations|scar ~ on|to|in|of|for|my|at|from ~ {_SPINE}
    screw|screws|rod|rods|metal|metalwork|plate|bolt|bolts|cage|titanium|pins|hardware|cages|nails|implant|spacer|
        scaffolding ~ in|holding|down|along|on|up|through ~ {_SPINE}
    {_SPINE} ~ screws|rods|metal|bolts|cage|titanium|pins|bolted|screwed|hardware|metalwork
    fused|fusion|fuse|fusions & {_SPINE}|vertebrae
    narrowing|narrowed|narrow|curvature|curved|curve|arthritis|arthritic|degenerative|degeneration|degenerated|wear|
        cyst|growth|crumbling|bent|deformity|instability ~ of|in|on|my|to|the ~ spine|spinal|vertebra|vertebrae|
        lumbar|canal|backbone|sacral|facet|discs|disks|facets
    spine|spinal|facet|facets|lumbar ~ curvature|arthritis|arthritic|degenerative|degeneration|crumbling|injury|
        injuries|problem|problems|condition|trouble|issue|issues|history|damage|damaged|bent|crooked|curves|twisted|
        unstable|scan|instability|wear|worn
    spina bifida
    slipped|crushed|cracked|broken|fused|collapsed|displaced vertebra|vertebrae|vertebrea|vertabra
    degenerative|crumbling|fused spine|back|lumbar|disc|discs
    mri ~ disc|bulge|spine|back|l5|stenosis|protrusion|lumbar|herniation|hernia|showed|nerve
    nerve|root|facet block|blocks|decompression|ablation|injection|injections|freeing & back|spine|l5|facet|root|
        lumbar|spinal
    trapped|pinched|compressed ~ nerve & years|history|always|before|back|used|old
    lumbar|cervical|spinal ~ spondylosis|stenosis|fusion|hernia|disc|prolapse|bulge|laminectomy|surgery
    slipped ~ l4|l5|disc
    """),
    Signs(Flag.SPINE_HISTORY, "the spine, perhaps", """
    mri|epidural|traction|osteophytes|schmorls|sequestrectomy
    disc|disk & mine|my|nerve|doctor|neck|lumbar|mri|years|pressing|l5
    """, sure=False),
)

_NOT = (
    "not|no|never|dont|avoid|avoiding|stop|against|off|cant|shouldnt|nothing|only|limit|limited|max|"
    "maximum|under|until|without|lay|refrain|restrict|restricted|quit|forbid|forbidden|banned|ban|mustnt|"
    "isnt|light|rest|careful|resting|easy|less|minimal|steer|clear"
)

RESTRICTION = (
    Signs(Flag.RESTRICTION, "a clinician forbade it or set a limit", f"""
    <clinician> & <said> & {_NOT} & <load>
    <clinician> ~ <said> ~ {_NOT} ~ <load>|kg|kilos|lbs|than|anything|over|above|more|it|this|that|sport|parallel|
        deep|depth|range|weeks|until|twisting|impact|jumping|work|legs|overhead|kilo|pounds !fine|worry
    <clinician> ~ doesnt|dont|wont|didnt|not|isnt|wouldnt|never|hasnt|refuses ~ want|let|allow|like|happy|recommend|
        cleared|clear|think|keen|agree|let|advise|wants ~ me|i|my|to|with|for|us|<load>
    <clinician> ~ banned|forbade|forbid|forbids|forbidden|barred|capped|limited|restricted|stopped|grounded|benched|
        prohibited|prohibits|limits|restricts|nixed|vetoed|ruled|caps|forbade|forbad|grounds|discouraged ~ me|my|us|
        all|any|<load>|from|to|it|out|at|heavy|deep
    <clinician> ~ put|has|got|gave|given|set|imposed|placed ~ on|a|me|ban|limit|restrictions|restriction|kg|limits|
        cap|rest|strict ~ limit|restriction|restrictions|rest|ban|cap|light|max|duties|limits|orders|hold|<load>|leave
    signed|sign|signing ~ off ~ <load>|work|sport|exercise|gym|training|heavy|sick|pe
    signed off work|sick|lifting|by
    doctors|doctor|docs|drs|physios|physio|surgeons|surgeon|medical|hospital|consultants|specialists|gps|midwifes|
        strict order|orders|advice|instructions|restriction|restrictions|limit|limits|rules|recommendation|ban
    under|on|doctors ~ orders|restriction|restrictions ~ no|not|to|only|limited|dont|never|avoid
    lifting|weight|load|medical|movement|bending|post|op|exercise|squat|activity|spinal|back|surgical|hip ~
        restriction|restrictions|limits|precaution|precautions|ban
    <clinician> ~ <said> ~ max|limit|only|under|below|maximum|light ~ <number>|kg|kilos|bodyweight|weights|weight|bar|
        lbs
    <clinician> ~ <said> ~ rest|wait|hold|back|lay|ease|slow|stay|keep|take|go ~ up|off|until|for|weeks|easy|down|
        <load>|days|before|from|light|away|months !up straight
    <clinician> ~ <said> ~ i|me|to|that|my ~ <load> ~ {_NOT}|yet|until|till|below
    <clinician> ~ <said> ~ {_NOT} & <load>
    <clinician> ~ <said> no ~ <load>|more|way|to|exercise|sport|weights|twisting|impact|heavy|deep|forward|overhead|
        anything|sit|folds|running|jumping|barbell|$
    <clinician> ~ only|just ~ <said>|allows|lets|allowed|cleared|let|wants|okayed ~ me|us|to|for|<load>|light|body|
        bodyweight|half|up|walking|walk|swim
    <clinician> ~ <said> ~ stop|avoid|quit|skip|lay|cut|drop|pause|give|steer|limit|reduce|leave|minimise|minimize|
        hold ~ <load>|all|it|out|off|up|clear|heavy|deep|everything|this|that|forward|loading|weights
    {_NOT} ~ <load> ~ <said> ~ <clinician>
    <load> ~ {_NOT} ~ <said>|by|per|from ~ <clinician>
    told|advised|warned|ordered|instructed|cleared|allowed|supposed|recommended|asked|prohibited|forbidden|banned|
        signed|barred|restricted|limited ~ {_NOT}|to|from ~ <load> ~ by|from|per|until|after|since|because|due|for|
        says|doctor|weeks|my
        & <clinician>|op|surgery|operation|weeks|scan|until|discharge|after|hernia|back
    advised|warned|told|recommended|ordered|instructed ~ {_NOT} ~ <load>|kg|kilos|lbs|weights|anything|heavy|deep|
        twisting|forward|parallel !worry
    advised|warned|told|ordered|instructed|banned|forbidden|barred|prohibited|restricted|cautioned from|against|off|
        to ~ stop|avoid|rest|<load>|limit|wait ~ <load>|weights|until|for|heavy|by|weeks|$ & by|doctor|against|from|
        avoid|stop|off|rest|limit|until|weeks|<clinician>
    not|never|isnt|cant|aint|no ~ allowed|supposed|permitted|meant|cleared|aloud|alowed|longer|authorised|authorized
        to|for ~ <load>|kg|kilos|deep|twist|heavy !here|in|at|my gym|until warm|phone|app|filming|on the|high|fast|
        inside|indoors
    not cleared
    no|avoid|without ~ heavy|lifting|bending|squatting|twisting|loading|weights|deep|strenuous|exercise|impact|sport|
        flexion|sports|forward ~ lifting|bending|for|until|till|allowed|weeks|post|exercise|per|weights|advised|
        months|squats|squatting|twisting|rule|rules|after|orders & <clinician>|weeks|months|until|till|op|surgery|
        operation|allowed|orders|order|post|discharge|advised|told|scan|6|six
    <load> ~ not|isnt|off|against|forbidden|banned|restricted|limited|limits|cards|table|ban|prohibited|nono|verboten
        ~ allowed|advised|permitted|recommended|<clinician>|medical|orders|by|advice|limits & <clinician>|medical|
        orders|weeks|surgery|op|me|until|allowed
    doctor|medically|physio|surgeon|hospital|medical ~ limit|restriction|restricted|ban|banned|cap|limited|
        restrictions
    limited|restricted|capped|max|cap|limit ~ to|at|is|of ~ <number>|half|bodyweight|light|kg|body|partial|25|
        parallel & <clinician>|surgery|op|orders|medical|rehab
    light duties|duty
    post op|surgery|operation|surgical ~ no|rules|restrictions|not|cant|limit|instructions|orders
    <clinician> ~ ruled|rules|signed ~ out|off
    weight limit & <clinician>|back|op|surgery|orders
    contraindicated
    <clinician> ~ <said> ~ avoid|stop|no|limit|not|only|against ~ flexion|bending|folds|squats|loading|impact|light|
        stuff|walking|sitting|sit|that|deep|extension|rotation|twisting|deadlifts
    hernia|op|operation|surgery|stitches|appendix ~ no|not|cant|without ~ lifting|lift|bending|squats|squatting|
        weights|exercise|gym|training
    no|not|cant ~ lift|lifting|bend|bending|squat|squatting|weights ~ after|since|because|until|following|cos|for ~
        op|operation|surgery|hernia|stitches|section|scan|discharge
    <clinician> ~ <said>|set|kept|keeps ~ <any>|25|40 kg|kilos|kgs|lb|lbs|pounds|kilo ~ max|limit|only|maximum|tops|$
    max|maximum|limit ~ <any>|25|40 kg|kilos|lbs && <clinician>
    <clinician> ~ <said> ~ rest|walking|swimming|light|bodyweight only
    <clinician> ~ <said> ~ i|me|we|to ~ shouldnt|cant|mustnt|must|shouldn|musnt|may|cannot|not|no|never|dont ~ not|be|
        do|doing? ~ <load>|fold|folds|forward|squat|deep|it|sit|situps|crunches|heavy|more|anything|sports
    """, thing=False),
    Signs(Flag.RESTRICTION, "a limit, perhaps a clinician's", """
    no|not|never|dont|avoid ~ lifting|lift|strain|squat|heavy|weight|barbell|flexing|stretching ~ && note|ob|doctor|surgeon|surgeons|clinic|
        team|repair|hernia|profile|op|operation|er|til|until && per|on|said|says|til|until|wks|weeks|my|no|clear
    <clinician> ~ <said> ~ off|avoid|nothing|never|rest|no|past|clear|bend !worries|problem
    not|havent|isnt|wont been|be|yet? cleared
    medical hold|leave|rest
    told|advised|warned|ordered|forbidden|banned|instructed ~ not|never|dont|against|no|avoid|from|off|cant|shouldnt|stop|only ~ <load>
    not|never|cant|isnt ~ allowed|supposed|permitted|meant ~ to ~ <load> !here|in|at|upstairs|inside|indoors
    not|never|shouldnt|mustnt ~ <load> & surgery|op|operation|rehab|hernia|injury|stitches|sling|boot|cast|brace|back|spine
    shouldnt|mustnt|forbidden|banned ~ <load> & <clinician>|told|says|said|back|spine
    """, sure=False, thing=False),
)

UNDER_18 = (
    Signs(Flag.UNDER_18, "an age under 18", """
    im|iam|age|aged|only|just|nearly|almost|turned|turning|turn|still|being|ima|now|barely|becoming a? <teens> !<unit>|<teens>|<number>|/
    i am|m only|just|nearly|almost|still|a|now? <teens> !<unit>|<teens>|<number>
    age , <teens>
    i have <teens> years|year|yrs !lifting|training|experience|of|left
    <teens> m|f|male|female|boy|girl $|,|here|and|with|btw|50|55|60|65|70|75|80|58|62|68|72|kg|5|6
    sixteen|fifteen|fourteen|seventeen $ !reps|cm|inches|degrees
    6|7|8|9|10|11|12 th grade|grader|graders
    be|becoming|become <teens>|18|eighteen in|on|this|next|soon|until|by|january|february|march|april|may|june|july|august|september|
        october|november|december !reps|cm|weeks
    turn|turning|nearly|almost|til|till|until|before <teens>|18|eighteen $|in|on|this|next|soon|years|yo|yrs|year|and|so|at|tomorrow|
        january|february|march|april|may|june|july|august|september|october|november|december|if !reps|cm|kg|weeks|sets|mins
    turn|turning|turned|hit|reach <teens>|18|eighteen next|in|this|soon|tomorrow|on !reps
    <teens> next|last|this month|week|birthday|year|june|july|january|february|march|april|may|august|september|october|november|december|
        summer|spring
    im|iam|i'm only|just <kids> $|is|and|so|years !reps|cm
    <teens> year|years|yr|yrs|y old|of|o|young age? !<person>
    <teens> f|m|male|female|boy|girl|fem|lad|guy $|and|here|btw|years|old|from|, !cm
    m|f|male|female|boy|girl|lad <teens> $|years|yo|here|and !kg|cm|reps
    not|isnt|wasnt|never ~ yet? ~ 18|eighteen $|yet|btw|so|if|is|until !cm|kg|reps|sure
    under|below|nearly|almost|younger ~ 18|eighteen $|btw|so|is|yet|if|years|still|lol !kg|cm|reps|inches|seconds|stone
    year 7|8|9|10|11|12|13|seven|eight|nine|ten|eleven|twelve $|at|in|student|pupil|btw|now|so|and|school|gcse|gcses|going !of|training|
        plan|block
    in|im|start|starting|finished|finish|currently|going|into ~ year 7|8|9|10|11|12|13|seven|eight|nine|ten|eleven|twelve|thirteen !of|
        training|plan|block|programme
    yr 7|8|9|10|11|12 $|at|student|pupil|now
    grade 6|7|8|9|10|11|12|nine|ten|eleven|twelve|eight|seven $|at|student|in|now|and|btw|so !pain|spondy|listhesis
    freshman|sophomore|freshmen
    in|at|go|goes|still|im|attend|to|from|start|starting|my|finish|doing|after|on ~ high|middle|secondary|junior|grammar|boarding|prep|
        comprehensive|elementary|primary school !back|years
    <teens> ~ years ~ old
    14|15|16|17|fifteen|sixteen|seventeen in january|february|march|april|may|june|july|august|september|october|november|december
    middle|high|secondary schooler|schooler
    im|i|am|still|just|being|only|as ~ minor|teen|teenager|kid|child|teenage|boy|girl|youngster|pupil|underage !bit|old|issue|adjustment|
        pain|day|at heart|again
    in|at|still|im|go|from|to ~ school $|and|so|btw|tomorrow|team|sports|student|lol|till|until|atm !run|gym|old|holidays|pick
    gcse|gcses|sats|ks3|ks4|btec|igcse|alevels|alevel
    born in? ~ 2009|2010|2011|2012|2013|2014|2015|2016|2017|2018
    too young ~ vote|drink|drive|gym|join|sign
    """, thing=True, own=False),
    Signs(Flag.UNDER_18, "an age under 18, perhaps", """
    year|class|standard|grade|fourth|third|second 7|8|9|10|11|year at|of|in|student|secondary|school|$
    7|8|9|10|11|12 th class|grade|standard|grader|year
    im|in|a|my|as ~ junior|sophomore|freshman|senior|yr hs|high|of|year|varsity|, hs|high|playing|school
    <teens> and a half|bit
    <teens>|<kids> ~ student|school|permit|birthday|hs
    im <kids> $|and|btw
    s|ss|jss 1|2|3|4|5 student|at|,|$
    <teens> , senior|junior|sophomore|freshman
    year|transition 10|11|9|year ~ school|student
    high school|schools
    too young
    teens|youngest
    """, sure=False),
)

HEALTH = (*FEVER, *FALL, *CANCER_BONE, *WEIGHT_LOSS, *PREGNANCY, *SPINE_HISTORY, *RESTRICTION, *UNDER_18)
