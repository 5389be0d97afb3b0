"""The effects of urgent signs on a day, said instead of the sign: stairs, shoes and seats, trousers and toilets, a place not wanted.

All of it is doubtful and asked about. The wording is the project's own (choice, no source).
"""

from companion.language.flags.flag import Flag
from companion.language.flags.tables.signs import Signs

DAILY = (
    Signs(Flag.WEAKNESS, "lifted, pulled, pushed by the hands instead", """
    hand|hands|arms|hitch|hitched|haul|hauled|haul+|swing|swung|grab|drag|carry|carried|pick|lifted|lift && leg|legs|foot|knee|thigh && bed|
        car|truck|cab|tub|bath|kerb|doorstep|pedal|brake|gas|clutch|sofa|couch|seat !rep|test
    sink|rail|banister|trolley|wall|arms|hands|crawl|crawled|pull|haul|hold && toilet|stairs|upstairs|steps|walk|stand|tractor|chair|get|
        getting && leg|legs|thigh|thighs|knee|foot !touch|reach|plank
    stuck|get|got|getting|stand|standing|kneel|kneeling ~ up|toilet|chair|sofa|couch|floor|down && leg|legs|thigh|thighs && wouldnt|wont|
        not|nothing|dont|doesnt !test|squat
    stairs|upstairs|steps ~ && could|used|normally|usually|month|week|fine|sudden && cant|took|minutes|stop|crawl|bum|much|anymore|rail
    upstairs|stairs ~ on ~ bum|hands|knees|bottom
    shove|shoved|pushed|push off|up ~ with ~ arms|hands && used|ago|was|normally|wont|legs
    cant|not|barely|hardly ~ get|put|pull|lift ~ sock|socks|trousers ~ && leg|left|right|knee|hip|foot
    """, sure=False),
    Signs(Flag.WEAKNESS, "a foot that is heard, seen or left behind", """
    shoe|shoes|boot|boots|slipper|sneaker|sneakers|toe|foot|flipflop && scuff|scuffs|scuffed|scuffing|scrape|scrapes|scraped|scraping|worn|
        flop| flops|clomp|clomps|slap|slaps|slapping|smack|smacks|catches|behind|slipping !dont|wall
    slap|slaps|slapping|flop|flops|flopping ~ floor|duck|hall|pavement|foot|feet !bench|bar
    heel|toe|toes|forefoot|foot && stayed|stays|drops|falls|hung|hangs|sink|sinks && cant|possible|wont|hung|walk|up|tried
    <cant>|wont|zero|nothing|nope|none & calf|heel|heels|toe|toes raise|raises|up|walk|lift
    calf|heel|toe raises|raise ~ && zero|nothing|none|cant|not
    lift|raise|pull|flex|get ~ toes|toe|foot|heel ~ && nothing|cant|wont|stays|not|hung|couldnt
    toes|toe|foot|forefoot|heel ~ && wont|cant|not ~ lift|pull|flex|come|rise|up !higher|further|reach|touch
    limp|limping|shuffling|swinging|duck && foot|leg|walk|walking
    toe|toes|foot && no ~ fight|strength|power|push|muscle
    """, sure=False),
    Signs(Flag.WEAKNESS, "a leg as if it were somebody else's", """
    left|right|l|r && zero|nothing|nope|possible|sink|none && raise|raises|toes|heel|calf|tiptoe !hurt|pain
    leg|legs|foot|knee|thigh|stairs && wouldnt|jello|wobbly|floppy|nothing|dead && worse|rail|wall|crawl|since|had|sore|stand|lift
    toe|toes|tiptoe|leg|foot no good|use
    cant|wont|couldnt ~ hop|march|lift|push|feel strong && leg|knee|toe|bigtoe|foot|off !chest|bar
    leg|legs|knee|thigh|calf|quad|quads|foot ~ folded|folding|folds|fold|crumples|crumpled|betrayed|unplugged|passenger|drunk|quit|
        trembling|bending|died|dead|late !set|squats|after|seat|asleep
    crumples|crumpled|folded|betrayed|unplugged && leg|legs|knee|thigh|calf|foot
    power|strength|force|spring|push|drive|signal|fight|muscle & no|lost|leaving|gone|reduce|reduced|going|without|out|nothing & leg|legs|
        foot|calf|thigh|left|right
    leg|legs|quad|quads|muscle|thigh|hip|side|left|right ~ wont|dont|doesnt|isnt|not|cant|nothing|switched ~ fire|push|pushing|help|march|
        give|off|support|straighten !activate
    plug|signal|switch & leg|legs|foot
    dont|cant|not trust ~ leg|legs|knee|foot
    walk+|walking && shuffling|shuffle|trolley|frame|furniture
    """, sure=False),
    Signs(Flag.BLADDER_BOWEL, "found wet, or a towel put down", """
    wet|damp|soaked|puddle|patch|stain|smell|smelt|smelled|towel && trousers|pants|jeans|boxers|underwear|undies|knickers|wrapper|chair|
        couch|sofa| bed|cushion|seat|pee|wee|sheets !sweat|sweaty|rain|gym|bench|mat
    changed|change|carrying|spare|check|checking ~ trousers|pants|underwear|boxers|knickers|shorts !gym|squat
    leaked|leaking|leak|leaky|leaks !tap|roof|pipe|hose|valve|boiler|radiator
    potty|continence ~ trained|and
    """, sure=False),
    Signs(Flag.BLADDER_BOWEL, "the toilet, roundabout", """
    finish|finished|zipped|stop|start && more|dribbling|stop|once && pee+|peeing|up|comes|out|started|plumbing|water !set|rep|timer|video
    hours|hrs|days no pee|wee|poo
    peed|pooed|weed when|during|as|a ~ test|stood|bent|up
    lost ~ urge
    <cant>|no ~ control|hold ~ water|it ~ && downthere|water|yesterday|weekend|aisle
    trouble ~ hold|holding|control ~ water|it
    tell|hold ~ fart|wind|motion
    toilet|loo|bathroom|throne|trough|urinal|wee|pee|poo|number|piss|water|urine|go|going && minutes|mins|hour|hours|ages|drops|drips|drip|
        trickle|drop && nothing|start|took|takes|only|trying|couldnt|cant|time|wait|night|needed|need|every
    nothing|drops|drips|drop ~ but|only|just|by|and? drops|drips|dribbles|trickle|drop
    up ~ times ~ night|last && drops|trickle|pee|wee|nothing
    only|just|barely|sometimes|dont|didnt|couldnt ~ make it && toilet|loo|time|bathroom|bed|hurry|wee|pee|poo|new
    no|without|lost|dont|missed ~ urge|warning|sign|will|signal|feeling ~ && wee|pee|toilet|bathroom|go|leaked|number|poo
    havent|hasnt|not|no|couldnt ~ been|gone|go|pee|wee|poo|urine|motion|ease ~ && days|hours|hrs|since|week|yesterday|morning|last && wee|
        pee|poo|toilet|loo|go|urine|motion|myself|bathroom|number|tummy|belly|piss
    motion|motions|stool|poo|poop|urine|wee|pee ~ && not|slipping|coming|comes|came|out|slides|falls|drop !first|break
    <seat>|bumhole|hole && close|closes|shut|shuts|clench|hold|control|loose && cant|not|doesnt|wont|dont|no|longer|like|lost|when !squeeze
    didnt|dont|not|hadnt|couldnt|only ~ know|notice|noticed|realised|realise|feel|hear && going|until|till|wee|weed|peed|pooed|leaked|wet|
        happened|poo && until|till|was|wee|weed|peed|pooed|leaked|it !squat
    constipated|constipation && back|days|never|new
    used to && pee|wee|go|hold|straight|stop && now !squat|bend
    <cant> to? ~ hold ~ water|it|wee|pee ~ && get|long|until|car|home|time|toilet|drive
    """, sure=False),
    Signs(Flag.SADDLE, "a seat, a cloth, a wipe not felt", """
    nofeeling|hardly|barely|not|guessing|tell && towel|water|label|seam|cold|lap|pants|tp|pin|pinched|kegel|bleachers|sanitary|wiping|clean
        && touching|felt|feel|feeling|it|nofeeling|them|groin|thigh|toilet !wall|floor|hands|feet
    <numb> ~ && front|between|downstairs|passage|part|place|skin|bits|legs && there|where|between|has|that|near|now|two|way !knee|hip|
        stretch
    wipe+|wiping|paper|tp|towel|washing|wash|bath|bathing|shower|cloth|roll|seam|elastic|underwear|knickers|label|saddle|tractor|horse|bike|
        pinched|pin|kegel|lap && nofeeling|numb|dead|deaf|odd|weird|strange|guessing|dull|else|elses|nothing|quiet
    sit|sits|sitting|sat|seat|bleachers && like|as && towel|cushion|pillow|someone|somebody|nothing|padded|wrapped|folded|else|elses
    feel|feels|felt|like && someone|somebody|somebodys|someones && else|elses && wipe+|wiping|wash|washing|bottom|backside|bum|sitting|seat|
        groin
    groin|downthere|sac|<crotch>|<seat>|underneath|downstairs|thighs && wrapped|woolly|padded|cling|static|vague|quiet|absent|dormant|
        missing| deaf|ants|pepper|plastic|rubbery|scratchy|wool|padding|different|funny !move
    <numb>|feeling|ants|pins && underneath|sun|private|goolies|perineal|perianal|crutch|wee|area && bottom|where|area|feels|feel|numb|dead|
        shine
    where|part|place|patch ~ sit|sits|sun|bike|underneath|mention|say|middle && <numb>|deaf|feeling
    perineal|perianal|goolies|saddle && numb|sensation|nofeeling|paresthesia|lost|reduced|down|area
    only|one|half|side && bottom|seat|bum|cheek && feel|know|numb|tell|lopsided|nofeeling !glute|squat
    """, sure=False),
    Signs(Flag.SEXUAL, "not up to it, roundabout", """
    boyfriend|girlfriend|husband|wife|him|her|he|she|partner|love && inside|touched|make|making|tried|asked|used && nofeeling|cant|couldnt|
        numb|dont
    wont|doesnt|isnt|not|cant|no ~ stand|rise|rising|standing|get && attention|manhood|soldier|downstairs|up|rise && since|anymore|just|now|
        again !early|bar
    half mast
    limp|potency|performance|ed && since|lately|gone|issues|new|stopped|started|belt|fortnight !walk|walking|foot|leg
    disconnected|wiring|reacting|dead && sex|bed|wife|touching|mood|girlfriend|boyfriend
    bed|bedroom|honeymoon && working|failed|failure|function|going && not|arent|problem|times|cant
    not|cant|unable ~ perform & since|bed|its|lately
    jerked|wank|wanked|rub|vibrator && nofeeling|numb|nothing
    marital|bedroom|intimate relations|failure
    pill && nothing && time|first|blue
    """, sure=False),
    Signs(Flag.CHEST, "greyed out, or the breath and heart on a stair", """
    greyed|whited|dim|dark|darkness|fuzzy|away|stars|quiet|black && floor|eyes|stand|stood|slid|everything|under && went|i|and|came|when|out
        !room|garage
    next ~ know|thing ~ floor|ground
    woke|came ~ on ~ floor|tiles|ground|lino|carpet
    lost ~ time|seconds|minute && lift|bar|brother|set|answering
    stairs|walk|fridge|hill|flight|sentence|fence|post|yards && breath|gasping|wind|whale|blowing|stop|puff|air !after|cardio|sprint
    breath|air|lungs & wont|doesnt|cant|couldnt|not|half & in|get|full|way|come|deep|all|size !cue|brace
    watch|monitor|rate|pulse|bpm && sitting|sat|lying|rest|nothing|long && 120|130|140|145|150|155|160|165|170|180|high|racing|stuck
    heart|ticker|chest ~ && stumbles|stumble|stumbling|flip|flips|flops|thud|gap|misfiring|misfires|flapping|fires|ectopics|holding
    jaw|teeth|arm|throat && hill|push|run|effort|exert|walk|climb|rest|lift|loading && ache|aches|hurt|hurts|tight|pain|heavy
    heartburn|indigestion && arm|lift|exert|push|effort|stairs|rest
    belt|bra|band|vice|elephant|hand|weight|squeezing|pain && chest|ribs|middle|me && tight|closing|stairs|climb|like|exert|cold|walking|on
        !bar|plate
    drowning ~ && lie|lying|flat|breath
    lie|lying flat|down && drowning|breathe|breath
    not|something right|wrong|up ~ chest
    chest ~ thing|yes|niggle|do|bit
    """, sure=False),
    Signs(Flag.SELF_HARM, "a wish not to be here, sideways", """
    hope|hoping|wish|wouldnt mind|glad ~ && wake|lorry|truck|hit|cancer|neck|kills|bar ~ && me|im|id|i|so
    hope|hoping|wish|wouldnt|not && lorry|truck|cancer|neck|drops|fell|over && me|sorry|mind|glad|finishes|done && bar|hit|id|can|off|hope|
        kinda
    hope|hoping|wish|sooner|rather ~ && dont|never|not|that && wake|wakes|up|home && it|next|made|that|morning|again !lift|squat|early
    kids|family|wife|sons|farm|everyone|them|they && insurance|burden|cost|gone|trouble && with|than|for|off|me|become|less|better !bench|
        team
    gun|guns|shotgun|pistol|rifle|safe|cabinet|rope|beam|river|bridge|overpass|platform|pills|wheel|median|brakes && think|thinking|wonder|
        looked|looking|look|keys|trust|worries|urge|turn|turning|step|drift|stood|purpose|thought !squat|bar|rack|squatting
    wrote|written|sorted|picked|putting|got|wrote && letters|affairs|date|way && order|out|dog|and|my|i|planned|everything !workout|meet|
        squat
    wont|not ~ be|around|needing|need|answering|texting && here|around|soon|any|answering|it|next && by|soon|any|more|after|everything|
        where| point|nephew !holiday|vacation|away|driving|friday
    wont|not ~ hear from me
    join|follow|following|with|be|where|going ~ && husband|wife|son|dad|brother|him|her|mum|he|once && dead|passed|died|heaven|miss|did|too
    done|finished|tired|tire|rest|sick ~ && life|living|everything|forever|anything && me|with|im|want|has|more !set|workout
    <cant>|dont|no ~ do|live|want|have ~ life|anything|live|future|tomorrow|another
    no|theres ~ place|future|tomorrow|point ~ for|in me|world|living|life
    think|thinking|thoughts|thought && about|of|how|where|again && dead|gone|die|dark|bad|most|plan|do && every|most|awake|nights|again|
        gone|days !squat|set|form
    wanting|want|ready|way ~ && dead|peace|out|god|check|clock|tonight && me|i|be|lie|for|only|planned|take !squat|set
    cut|cutting ~ again|myself|last night !weight|carbs|calories
    by my own hand
    finish|end|finished ~ myself
    check|checking|clock out ~ good|permanently|life
    keep ~ myself safe
    goodbye $ !¿
    only alive|living|here ~ because|for
    six feet under
    forward ~ to being|be dead|gone
    stop+|stopped existing
    nobody|noone|nobodyd ~ miss me
    """, sure=False, own=True),
)
