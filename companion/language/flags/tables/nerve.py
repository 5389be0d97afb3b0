"""Signs of the nerves of the spine: leg weakness, bladder and bowel, the saddle, sexual function.

The set of signs is the cauda equina guidance's, as in ``screening.safety``; the wording is the project's own.
"""

from companion.language.flags.flag import Flag
from companion.language.flags.tables.signs import Signs

WEAKNESS = (
    Signs(Flag.WEAKNESS, "a leg is weak", """
    <oneleg> & <weak>
    bigtoe|foot & <weak>
    both|one|left|right & leg|legs|foot|feet & <weak>
    weakness|weakening|paralysis|weak in|of|down|on|through ~ <leg>|side|half
    weakness|paralysis|weak below|from ~ waist|hip|hips|knee|knees|down
    <leg>|side|knee ~ packs|packed|packing in|up
    nofeeling|cant|no|dont ~ strength|power|force && <leg>
    <hardly> to? ~ hold ~ leg|foot ~ up
    no|lost|losing|lack the|all|my? all? power|strength|force && <leg>|push|stairs|stand|walk
    no|lost|losing|less|reduced|zero strength|power|force|control && <leg>
    <leg> ~ half|less|fraction ~ strength|power|strong
    no|lost|losing|lose|loses|loss|less|reduced|zero|little power|strength|control|use|movement|function|force ~ in|of|over|from ~ <leg>
    <leg> ~ no|zero|little|lost|less|losing|loses|half ~ power|strength|control|movement|push|force|oomph
    footdrop|dropfoot
    leg|foot|calf|thigh|quad ~ wasting|wasted|withered|shrinking|shrunk|thinner|skinnier
    leg|foot|toes|legs ~ getting|gets|got|gotten|going|becoming|become ~ weaker|weak|worse|useless|floppy
    """, effort=False),
    Signs(Flag.WEAKNESS, "legs are weak, as after hard work too", """
    legs|knees|quads|thighs|calves|feet & <weak>
    """, sure=False, effort=True),
    Signs(Flag.WEAKNESS, "a leg gives way", """
    <leg> ~ give+|gave|given ~ way|out|up|under|beneath|underneath|from|on
    one|right|left|it just|keeps|kept|always|suddenly ~ gives|giving|gave|buckles|buckling|collapses|folds $|out|way|on|under|when
    <leg> ~ buckle+|crumple+|crumbled|collapse+
    <leg> ~ fold+|went|goes|gone|go|going|drop+|disappear+|vanish+|slipped|slips ~ under|beneath|underneath|me
    <leg> ~ fold+|went|goes|gone|go|drop+ ~ under|beneath|underneath me|you|myself
    <leg> just|suddenly|keeps|kept|randomly? ~ went|goes|going|folds|folded|quit|quits|quitting $
    <leg>|knee|hip|quad|side|one just? ~ switches|switched|switching|cuts|cutting|shuts|shut|let|lets|letting ~ off|out|go|down ~ under|me|
        $|and|suddenly !tape|position|a|as|low
    giving|gives|gave|give way ~ on|under|beneath|when|while|going|walking|$
    """, thing=False),
    Signs(Flag.WEAKNESS, "a foot drops, slaps, drags", """
    foot|feet|toe|toes|bigtoe ~ slap+|flop+|drag+|scuff+|flap+|scrape+|trail+|droop+ !kg|low
    foot|feet|toe|toes|bigtoe ~ drop+ !down|to|off|kg|through|it|back|in|out|lower
    foot|feet|toe|toes ~ drag+|scuff+|scrape+|slap+|flop+|catch+ ~ floor|ground|carpet|stairs|kerb|curb|pavement|step|rug|edge
    drag+|scuff+|trail+|slap+ ~ foot|feet|toe|toes|leg
    leg|legs ~ drag+|trail+|lag+ !and|out
    shoe|shoes|toe|toes|foot ~ catch+|catches|snag+ ~ on ~ kerb|curb|floor|carpet|step|stairs|rug|pavement|ground|everything|edge
    shoe|shoes|toe|toes|foot keep+|kept|always|started ~ scuff+|drag+|catch+|trip+|stub+|slap+
    foot|toes|toe just|kinda|sort? ~ hang+|dangle+|flop+
    toes|toe|foot ~ hang|hangs|hanging|dangle+ ~ there|down|loose
    trip+|stumble+|catch+|catches|caught ~ my|own ~ foot|feet|toe|toes
    toe|toes|foot keep|keeps|kept catching|tripping|slapping|dragging|dropping|flopping|scuffing
    """, thing=False),
    Signs(Flag.WEAKNESS, "a leg, foot or toes do not do as they are asked", """
    <cant> ~ lift|raise|wiggle|waggle|move|pull|flex|curl|control|hold|bring ~ foot|toe|toes|feet|bigtoe !any|higher|past|above|more|
        further|beyond|much|off|from|flat
    <hardly> to? lift|raise|wiggle|waggle|control my <my>? foot|toe|toes|feet|bigtoe
    <cant> ~ pull|bring|get ~ toe|toes|foot|feet|bigtoe up|upwards|back
    <cant> ~ bring|lift|raise|pull|curl|straighten|push|uncurl ~ them|it ~ back|up|down && toe|toes|foot|feet|bigtoe
    foot|feet|toe|toes|leg|bigtoe|forefoot && cant|couldnt|unable|hardly|barely ~ tap|lift|raise|wiggle|move|push|press|curl|point !any|
        higher|past|further|off|more|flat|out|over|much|deeper|closer
    <cant> ~ push|press|push|work|use|depress the|my clutch|pedal|brake|accelerator
    <hardly>|difficulty|difficult|trouble to? lift|lifting|raise|raising|move|moving my|the|up|a <my>? <my>? foot|toes|toe|feet|bigtoe|ankle
        !any|higher
    lift|pick|move|use|put|help ~ leg|foot ~ with|by|using ~ hands|hand|arms
    foot|toes|toe|shoe|feet doesnt|dont|wont|not|isnt ~ clear|clearing
    <cant> push|press ~ clutch|pedal|brake|accelerator|gas|pedals && foot|leg|toe|strength
    <cant> ~ lift|raise ~ foot|toes|forefoot
    <cant> make|manage|do ~ step ~ up
    hip|leg|knee wont|cant|doesnt ~ lift|raise|bring ~ leg|foot|knee
    hands|arms|hand to? lift|pick|move ~ leg|foot
    tiptoe|tiptoes && cant|nothing|couldnt|impossible|unable|collapse+|drop+|struggle+|hardly
    foot|feet|toe|toes|leg|legs|bigtoe|calf ~ wont|cant|doesnt|dont|isnt|arent|not|refuse+|stopped|couldnt|didnt|cannot ~ <obeys>|respond
        !past|far|much|any|forward|further|more|out|back|in|higher|apart|well|together|enough|equally|evenly|that
    foot|feet|toe|toes|bigtoe wont|doesnt|dont|cant|couldnt|refuse+|not ~ lift|come|go|pull|move|raise|rise up|upwards|towards|properly|at|
        when|$
    leg|legs|knee|foot|ankle wont|doesnt|dont|cant|didnt|not ~ hold|support|bear|carry|take me|my|up|weight
    leg|foot|legs|feet ~ wont|doesnt|dont|not ~ do|doing ~ what|as ~ tell|told|want|ask|asked|say|says
    <hardly> to? stand|walk|go|get|rise|push|balance ~ tiptoe|tiptoes|tippytoes|ontoes|onheels
    <cant>|hardly|barely do|manage|get ~ heel|calf raise|raises ~ on|with ~ one|left|right|that|this
    <leg> ~ doesnt|dont|isnt|not|wont ~ belong|mine|there|connected|attached
    """, thing=False),
    Signs(Flag.WEAKNESS, "weakness, perhaps", """
    weakness !of|in|is|was|are|there|for|leaving|with
    weaker|weak ~ than|since ~ last|before|yesterday|ever|usual|normal|was|week|monday|tuesday|wednesday|thursday|friday|saturday|sunday
    leg|foot ~ heavy|dead|gone|asleep|jelly
    both legs ~ heavy|dead|gone|lead|strange|weird|odd
    keep+|kept|been falling|stumbling|tripping !asleep|behind|off
    ankle|knee|leg|foot|hip wont|doesnt|cant|not ~ hold|holding
    <leg> ~ fail+|answer+|water|belongs|quits|quitting|packed !test
    walking|walk|walks|gait ~ odd|funny|weird|differently|drunk
    <oneleg> && wont|cant|cannot|couldnt|useless|nothing|stopped|gone|refuses|lazy|floppy|slap|slaps|drags|tripping|trip+|odd|strange &&
        since|suddenly|sudden|yesterday|lately|keeps|keep|started|new|today|week|morning|walk|walking|stairs|tuesday|monday|wednesday|
        thursday|friday|saturday|sunday !higher|any|past|further|straighten|reach|deeper|more
    <hardly>|unable to? ~ walk|stand|balance|hop|jump|step ~ on ~ heel|heels|tiptoe|tiptoes|ball|balls|left|right|one !and|because|hold|side
    slappy|floppy|lazy|dropped|dropping|dragging|draggy foot|feet|leg|toe|toes
    leg|side|left|right|one|foot && lost ~ loads|lot|strength|power|muscle
    weak|weaker|weakness ~ left|right|side|half|hip|hips|lower|waist
    legs|leg|foot|toes|ankle|knee && weak|weaker|weakness|floppy|lifeless|powerless
    legs|leg|foot ~ not|isnt|arent|dont|doesnt ~ strong|hold|right|same|themselves|itself
    """, sure=False),
)

BLADDER_BOWEL = (
    Signs(Flag.BLADDER_BOWEL, "cannot pass it", """
    <hardly> to? ~ <go> !first|now|break|here|in|before|quick|quickly|real|brb|during|while|again
    <hardly> ~ pass|passing|empty|emptying|start|starting|void|voiding|release|get|getting|make|finish+|initiate ~ <pee>|<poo>|water|motion|
        flow|stream|wind|gas|going|completely|properly
    <trouble>|hardly|trouble with? ~ <pee>|<poo>|<organ>|pass+ !talk
    havent|hasnt|not|hadnt|cant|didnt|aint been|being|able ~ to <go>|go !gym|home|out|work|swimming|running|there|training|for|heavier|
        lower|deeper|deep
    havent|havnt|hasnt|not|didnt|aint|hadnt peed|weed|pooed|pooped|urinated|shat|pissed|defecated|crapped|pood
    havent|havnt|hasnt|not|didnt|hadnt ~ had|done|have|opened|open|moved ~ pee|wee|piss|poo|poop|dump|crap|shit|bowel|bowels|movement|number
        since|for|in|today|all|yesterday|days
    havent|hasnt|not|didnt been|went|gone ~ toilet|loo|bathroom|number ~ for|since|in|today|all|days
    pee|wee|urine|piss|poo|stool|bladder|bowels|stream|flow ~ wont|doesnt|isnt|not|refuse+|cant|stopped|stuck|dont ~ come|coming|start|
        starting|empty|emptying|flow|flowing|out|move|moving|open|work|working|work|go|going
    need|want|needing|try|trying|sit|sat|urge|stand|stood|standing ~ <go>|toilet|loo|go ~ but|and|then? ~ nothing|cant|wont|couldnt|nowt
    toilet|loo|pee|wee|pissing ~ nothing|nowt ~ come|comes|happens|coming|out|there
    strain+|push+|force|forcing|squeeze|concentrate|pushing ~ <pee>|urinate|wee|poo !squat|of|the
    takes|take|taking|took ~ ages|forever|while|minutes|long|longer|time ~ to|for|before ~ <pee>|stream|flow|bladder
    standing|sat|sitting|stood|stand|sit ~ toilet|loo|urinal|bog ~ for ~ nothing|ages|trying|minutes|hours|waiting|before
    stream|flow ~ weak|weaker|slow|slower|dribble+|stops|stopping|interrupted|gone|poor|trickle|rubbish
    stream|flow|pee+|wee|weeing ~ stop+ ~ start+
    <toilet>|<go>|pee|wee|bladder && wont|doesnt|isnt|not ~ start|come|happen|go|flow|empty|out
    need|needed|try|tried|want|sat|stand|stood && <go>|<toilet>|go && nothing $|comes|came|happens|happened|happening|out|at
    nothing|nowt comes|came|happens|happened && <go>|<toilet>|go
    push+|press+|lean|leaning ~ belly|tummy|stomach|bladder && <go>|<toilet>|wee|pee|start|empty
    <hardly> to? empty|void|urinate $|properly|fully|completely|myself !bar|bag|box
    having|had|have|been|another|keep|more|two|few|little|toilet accidents
    <toilet>|<go> ~ impossible|hard|difficult|struggle|nightmare|ages|painful
    woke|wake|waking ~ up ~ wet|soaked|soaking|soiled !sweat
    <pee>|<go>|wee ~ takes|taking|take|took ~ ages|forever|long|minutes|longer|while|time
    retention|catheter|catheterised|catheterized|selfcatheterise
    """, thing=False),
    Signs(Flag.BLADDER_BOWEL, "cannot hold it", """
    <pee>|<poo>|shat|soil+|wet|wetting|wets|mess+|sharted|shart+ ~ myself|meself|self|meslef|mysel
    <pee>|<poo>|shat|soil+|wet|wetting|mess+ ~ my|me|the|in ~ <clothes>
    <hardly> ~ hold|control|holding|controlling|keep ~ <pee>|<poo>|<organ>|farts|wind|gas|urine|stool|toilet
    <cant> ~ hold|control my <my>? pee|wee|water|bladder|bowel|bowels|poo|wind|gas|farts|fart
    lost|losing|lose|loses|loss|no|less|little|poor|reduced|zero|without ~ control|sensation|feeling ~ <organ>|pee|wee|poo|urine|stool|
        stools|downthere|toilet|bodily|functions
    lost|losing|lose|no control ~ downthere|number|toilet|waterworks
    incontinent|incontinence|incontinant|incontinance
    <pee>|urine|bladder|poo|stool|bum|bowel|bowels|i|im|keep|kept|been|started|always ~ leak+|dribble+|dribbling|seep+
    leak+|leaky|dribbling|dribble+ when|if|whenever|every|while|as|a|when|since|without|after ~ sneeze+|cough+|lift+|squat+|laugh+|jump+|
        stand|walk|run|noticing|time|back|bit|this|loo|toilet|pee+
    accident|accidents ~ in|on|with|before|to ~ <clothes>|<toilet>|bed|pee|wee|poo|bladder
    didnt|dont|never|havent|couldnt|barely|cant|not make|making|made|reach|get it? ~ to ~ <toilet>
    caught short
    <pee>|wee|urine|poo|it|bit|stuff|something ~ comes|coming|came|runs|running|ran|trickle+|just|falls|drips|dripping out|down ~ without|
        before|when|myself|leg|legs|noticing|i
    pee|wee|urine|poo|stool ~ comes|coming|came|slips|slipped|running|runs|ran|falls|trickle+|fell|drip+ out|down|through|away|by|$
    skid|skidmark|skidmarks marks|in|on|$
    pad|pads|nappy|nappies|diaper|diapers|tena ~ for|because|cos|wear|wearing|pee|leaks|in|needed|bladder|now
    wear|wearing|need|needing|bought|buy|using ~ pad|pads|nappy|nappies|diaper|diapers|tena
    wet|damp ~ patch ~ <clothes>|pants|noticed|front|felt
    peed|weed|pissed|wet|pooed|pooped|shat|soiled ~ floor|bed|sofa|chair|car|stairs|couch|carpet|shorts|mat !laughing
    <go>|going|gone|went|wetting|wet|leak+|soil+|poo+|peed|pooed|toilet ~ without ~ meaning|wanting|knowing|noticing|realising|realizing|
        feeling|warning|control|trying|intending
    damp|wet|soiled|soaked|warm ~ && <clothes>|patch|bed && feel|felt|know|notice|noticed|realise|realised|without|hadnt|didnt|no
    <clothes> ~ damp|wet|soaked|soiled|stained|dirty && <cant>|feel|felt|know|notice|noticed|didnt|hadnt|woke|loo|no|pee
    lost|losing|no control && <pee>|<poo>|<toilet>|<organ>|downthere|<go>
    <cant> ~ stop ~ mid|midstream|stream|pee|peeing|wee|flow|going
    <cant>|dont|didnt|never|no ~ tell|know|feel|felt|realise|notice|noticed && need|needing|done|finished|going|full|coming|came|come|ran &&
        <go>|<toilet>|bladder|pee|wee|poo|leg
    feeling|sense|urge|sensation|need|signal ~ of|to|for|from ~ need+|go|toilet|loo|<pee>|<poo> && lost|gone|no|missing|dont|never|without|
        less|nofeeling|hardly
    nofeeling ~ need+|when|of|to && <go>|<toilet>|<pee>|<poo>
    <cant> ~ tell|feel ~ fart|gas|wind|bladder|full|need
    """, thing=False),
    Signs(Flag.BLADDER_BOWEL, "no feeling for it", """
    cant|dont|couldnt|didnt|doesnt|cannot|barely|hardly|never|not|no|longer|wouldnt ~ feel|tell|know|notice|sense|sure|realise|realize|idea
        ~ when|if|that|whether|im|i|myself|my|it|the|me ~ <pee>|<poo>|<organ>|urine|toilet|loo|full|coming
    cant|dont|couldnt|didnt|cannot|barely|hardly|never|not|no ~ feel|tell|know|notice|sense|feeling|sensation ~ <pee>|<poo>|<organ>|urine|
        stool|toilet|loo !first
    cant|dont|couldnt|didnt|barely|hardly|never|not|no ~ feel|tell|know|notice|sense|feeling|urge ~ need|needing|have|want|urge|to ~ to?
        <go>|go|loo|toilet
    no|lost|lack|without|never|less|missing ~ urge|desire|sensation|feeling|need|warning ~ to|of|when|for|from ~ <pee>|<poo>|<organ>|go|loo|
        toilet|full
    nofeeling|numb|numbness && <go>|<organ>|urine|wee|toilet|loo
    <pee>|<poo>|<organ> & nofeeling|numb|numbness
    """, thing=False),
    Signs(Flag.BLADDER_BOWEL, "trouble with bladder or bowel by name", """
    <organ> ~ <trouble>|<odd>|playing|acting|gone|going|stopped|shutting|lazy|weak|leaky|leaking|weakness|failing|failed|dysfunction|
        misbehaving|irregular|loose|control|urgency|overactive|sluggish|slow|numb|changes|symptoms|dont|doesnt|isnt|arent|hasnt|havent|wont|
        not !control|over
    <trouble>|<odd>|weakness|loss|change|changes|urgency|symptoms ~ with|in|of|to|from|going|on ~ <organ>|pee|peeing|weeing|poo|pooing|
        urine|urinating|urination|toilet
    <pee>|weeing|poo|toilet|going ~ <odd>|differently|strange|problem|problems|difficult|painful|hurts|burns|hard|harder
    """),
    Signs(Flag.BLADDER_BOWEL, "trouble with bladder or bowel, perhaps", """
    bladder|bowel|bowels|urination|urinating|defecating|defecate
    <organ>|urine|urinate+|incontinen+|peed|peeing|pants|undies|poo|stool|wee|pee|toilet|loo && weird|odd|strange|cant|couldnt|wont|without|
        nothing|feel|feeling|felt|lost|numb|leak|leaks|stopped|changed|control|accident|trouble|problem|problems|hard|difficult|notice|
        noticed|embarrassing|embarassed|worse|new|suddenly|keeps|keep|since|lately|weak|slow !first|break
    i|just|still|really|simply cant|couldnt go $|since|for|anymore|properly|when|despite
    <hardly> to? ~ clench|squeeze ~ hold|stop|pee|in|it
    peed|weed|wee|pee|pooed ~ when|while|as ~ lift+|squat+|brace+|cough+|sneeze+|laugh+|jump+|deadlift+|ran|run
    <pee>|wee|stream|flow && trickle|dribble|dribbles|drip|drips
    constipated|constipation|costive|bunged|backed up?|since|for|now|again|$
    <toilet> && isnt|not|arent|aint|wrong|weird|odd|changed|different|trouble|problem && working|right|normal|wise|stuff|things|going|
        lately|since !is|paper|roll
    urge|urgency ~ to? <go>|go|toilet|loo
    """, sure=False),
)

SADDLE = (
    Signs(Flag.SADDLE, "numb between the legs", """
    <numb> & <crotch>
    <numb> & <seat>
    <numb> & wipe+|wiping|toilet|loo|bog|poo|pee|pissing
    <numb> && sit|sitting|sat|seat|chair|saddle|backside|end|wipe !cross|crossed|desk|long|hour|hours
    paper|tissue|wiping|wipe ~ feels|feel|felt|is ~ different|weird|odd|strange|nothing|funny|numb|rough|wrong
    <cant>|dont|didnt|nofeeling ~ when && touch|touches|touched|touching|wipes|wipe|strokes
    saddle|seat && nofeeling|cant|dont ~ feel|touching !height
    <numb> & where|when ~ sit|sat|sitting|saddle|sits
    <numb> & inner|insides|inside ~ thigh|thighs|leg|legs|bum|buttock|buttocks|cheeks
    less|not|isnt|barely|hardly ~ sensitive ~ <crotch>|<seat>
    <crotch>|seat|bum && frozen|dentist|injection|anaesthetic|novocaine|lidocaine|cardboard|missing
    frozen|dentist|anaesthetic|novocaine|injection && <crotch>
    <hardly>|dont|didnt|not|doesnt ~ feel|sense|tell ~ <seat> !move|work+|stretch|activate|fire|firing|engage
    <hardly>|dont|didnt|not|doesnt ~ feel|sense && saddle|wash|washing|shower|wipe+|wiping|water|paper|tampon|bidet
    <crotch>|<seat> && not|isnt|arent|dont ~ there|mine|belong|attached
    dont|not|no|isnt ~ normal ~ feeling|sensation ~ <crotch>|<seat>
    sit|sat|sitting|bicycle|bike|saddle|ride && numb|nofeeling|tingle+|tingling|pinsandneedles && area|where|bit|part|it|skin|patch|spot|bum
    pins|needles|ants|pinsandneedles|prickles|tingles ~ <crotch>
    touch+|wash+|wipe+|wiping|shower|rub|rubbing ~ myself|downthere|bits && nofeeling|numb|nothing|cant|dont
    <numb> && top|between|inside|insides|inner ~ thigh|thighs
    sitting|sit|sat ~ on ~ balloon|cushion|cloud|sponge|cotton|foam|air|pillow|ball && feel|feels|like
    cheek|cheeks && numb|nofeeling|tingle+|tingling|dead
    saddle anaesthesia|anesthesia|numbness|area|paraesthesia|paresthesia|region|sensation
    <crotch> ~ <lost>|no|less|lack|reduced|without|little ~ <feel>|sensitivity
    <lost>|reduced|changed|altered|different <feel>|sensitivity ~ <crotch>|<seat>|wiping|wipe
    <feel>|sensation ~ <crotch>|<seat> ~ <lost>|gone|going|<odd>|reduced|missing
    <hardly>|dont|didnt|not|doesnt|never ~ feel|sense|tell|notice ~ <crotch> !it|move
    <hardly>|dont|didnt|not|doesnt|never ~ feel|tell|sense|notice|know ~ wipe+|wiping|paper|tampon|clean
    wipe+|wiping & <odd>|<numb>|<cant>|nothing|<feel>|dont|didnt|doesnt|barely|hardly|sensation
    paper|tissue|bidet|tampon & <numb>|<cant>|nothing|dont|barely
    tampon & feel
    <hardly>|dont|didnt|not ~ feel|tell ~ seat|chair|sitting|sat|saddle|toilet|cushion !move
    """),
    Signs(Flag.SADDLE, "odd between the legs", """
    <crotch> & <odd>|buzzing|buzz+|prickly|prickling|prickle+|fizzy|burn+|burning|cold|electric|asleep|swollen|wooden|plastic|rubber|
        rubbery|not|isnt|doesnt|foreign|wet !time
    <odd>|buzzing|prickly|fizzy|strange ~ <feel> ~ <crotch>|<seat>|sitting|sit
    perineum|saddle|privates|genitals|penis|dick|cock|willy|testicles|scrotum|vagina|labia|fanny|vulva|clit|anus|rectum|bumhole|backpassage|
        downthere|betweenlegs|undercarriage|nethers|taint|gooch && feel|feels|feeling|felt|odd|weird|strange|cant|dont|less|lost|gone|
        nothing|since|started|change|changed|different|asleep|funny|hardly|barely|missing|dull|cold|wrong|tingle|buzz|prickle
    between ~ cheeks|buttocks & <odd>|<numb>
    inner|inside ~ thighs|thigh|buttocks|buttock & <odd>|<numb>|<lost>|nothing
    <crotch> & <feel> & nothing|weird|odd|different|less|gone|isnt|not
    <seat> ~ feels|feel|felt|is|are|isnt|has|was ~ dead|asleep|sleep|belong|mine|there|nothing|wooden|fuzzy|prickly|patchy
    <seat>|<crotch> ~ fall+|fell|went|gone|goes|going|go ~ asleep|sleep|dead
    saddle ~ sore|weird|odd|funny|different|sensation|feeling|area|region
    number|funny|weird|strange|odd ~ downthere
    """, sure=False),
)

SEXUAL = (
    Signs(Flag.SEXUAL, "sexual function or feeling lost", """
    <hardly>|no|lost|losing|loss|lose|not|dont|doesnt|wont|never|havent|without|isnt|didnt|unable|less|weak|weaker|poor|havnt ~ <erection>
    <erection> ~ gone|lost|difficult|impossible|weak|weaker|stopped|numb|trouble|problem|problems|issues|soft|softer|less|missing|failing|
        not|isnt|arent|dont|doesnt|wont|never|nofeeling|nothing
    <trouble>|changes|change|worse|dysfunction ~ <erection>|erectile|sexually|sexual|sex|bedroom|arousal|libido|viagra
    <numb>|nofeeling & <sex>|<erection>
    erectile|sexual dysfunction|problem|problems|issues|trouble|difficulties|difficulty|function|failure|numbness|sensation
    impotent|impotence|impotency|limpdick|brewersdroop
    <sex> & <odd>|<numb>|nofeeling|nothing|<lost>|feel|painful|different|problem|dead|cant|couldnt
    <hardly>|dont|didnt|not|no|lost|less ~ feel|feeling|sensation ~ sex|orgasm|climax|intercourse|come|cum|wanking
    <hardly>|not|unable|dont|havent ~ come|finish|cum|climax|orgasm ~ sex|anymore|during|bed|partner|wife|husband|girlfriend|boyfriend
    dick|willy|penis|cock|todger|tackle|johnson|manhood|clit ~ stopped|doesnt|dont|not|isnt|wont|numb|dead|broken ~ work+|function+|
        respond+|hard|up|rise
    dick|willy|penis|cock|todger|knob|tackle|manhood|nothing ~ doesnt|dont|wont|not|isnt|stopped ~ work+|function+|respond+|going|rise+
    doesnt|dont|not|nothing|stopped ~ work+|happen+|going ~ bedroom|downthere|trousers|betweensheets|downstairs
    <cant>|not|unable|trouble|problems|struggling ~ perform+ ~ bed|bedroom|wife|sexually|partner|girlfriend|husband|sheets
    touch+|wank+|masturbat+ ~ myself|downthere && nofeeling|numb|nothing|cant
    <sex>|partner|wife|husband|girlfriend|boyfriend|him|her|inside && nofeeling|numb && when|during|with|inside|him|her|bed|touch+|sex|
        partner
    cant|dont|didnt ~ feel ~ him|her|partner inside|during|in
    downthere|nothing|he && respond+|react+|works|happen+|work && wife|husband|partner|girlfriend|boyfriend|sex|bed|bedroom
    dont|cant|not|never|hardly|doesnt ~ get ~ wet|lubricated|aroused|turned|horny|excited
    cant|couldnt finish|come|cum && since|anymore|during|lately|normal|wife|bed|back|sex
    erection|hard && nothing|not|cant|no|never|even|gone && now|anymore|since|used|pills
    ed came|started|since|problem|suddenly|issues|problems|now
    plumbing ~ stopped|dead|broken && sex|drive|wife|bed|bedroom|sexual
    love life|making|department & dead|gone|cant|problem|numb|trouble|stopped|nofeeling
    """),
    Signs(Flag.SEXUAL, "sexual function, perhaps", """
    soft all|again|anymore ~ time|now|days
    downthere && wet|hard|happens|respond+|react+|stand|stands|works|nothing|arous+ !numb
    cant come|cum|finish $|anymore|now|since|when|with !today|to|on|tomorrow|in|this|next|friday|monday|the|till|because|at|tonight
    libido|viagra|cialis|sildenafil
    """, sure=False),
)

NERVE_SIGNS = (*WEAKNESS, *BLADDER_BOWEL, *SADDLE, *SEXUAL)
