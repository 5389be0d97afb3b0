"""Thoughts of killing or harming oneself, of not wanting to live, of being a burden: said straight out, and quietly.

The wording is the project's own (choice, no source). What is said of a set ("those squats made me want to die") is
taken out in ``context``.
"""

from companion.language.flags.flag import Flag
from companion.language.flags.tables.signs import Signs

MIND = (
    Signs(Flag.SELF_HARM, "killing or harming oneself, straight out", """
    kill|killing|killed|kil|end|ending|hang|hanging|top|topping|off|offing|shoot|shooting|drown|drowning|gas|gassing|unalive|unaliving|
        poison|poisoning|suffocate|electrocute|murder|murdering|stab|stabbing|starve ~ myself|meself|mysel|myslef !time|some|slack
    kms|suicidal|suicide|suicides|suicidial|unalive|suisidal|sucidal|selfharm|selfharming|selfharmed|parasuicide
    harm|harming|harmed|injure|injuring|punish|punishing|burn|burning|burnt|scratch|scratching|bite|biting|hit|hitting|punch|punching ~
        myself|meself & want|wanna|urge|urges|again|thoughts|thinking|feel|started|been|keep|night|purpose|cope|deserve|back|to|might|could|
        could
    cut|cuts|cutting|cutted|slit|slitting|slash|slashing ~ myself|wrist|wrists|arms|veins !shaving|some|slack|off|short|a|back|while|on|
        from|with|by|opening
    hurt|hurting ~ myself & want|wanna|urge|urges|thoughts|thinking|thought|feel|feeling|purpose|deliberately|scared|afraid|might|tempted|
        plan|gonna|will|deserve
    do|doing|done something stupid|silly|daft|drastic
    might|could|scared|afraid|going|want|gonna|wanna ~ do ~ to myself
    what|that i ~ might|could|may|will|would ~ do to myself
    end|ending|finish|finishing|take|taking|took|end|terminate|quit|stop ~ life|lives|existence !in|better
    thinking|thought|thoughts|plan|planning|planned|want|wanna|ready|consider|considering|tempted|going|gonna|just|decided|how|going ~ end|
        ending ~ it|things|everything|all !set|on|well|with|plank|here
    overdose|overdosed|overdosing|od
    took|take|taking|swallow|swallowed|swallowing|necked|neck|taken|saved|saving|stockpile|stockpiled|stockpiling|hoard|hoarding|counted|
        counting|bottle|down ~ pills|tablets|paracetamol|bottle|meds|pack|them !for|daily|blood|before & all|too|lot|many|purpose|whole|
        stash|enough|end|up|much
    pills|tablets|paracetamol ~ saved|stash|stashed|stockpiled|hoarded|ready|lined|purpose|enough|end
    jump|jumping|jumped|step|stepping|walk|walking|drive|driving|swerve|swerving|throw|crash|crashing|run|running|lie|lying & bridge|cliff|
        train|trains|tracks|traffic|roof|balcony|tree|lorry|truck|wall|sea|oncoming|building|ledge|window|river|platform|railway & myself|
        under|off|front|into|of|want|think|thinking|thought|feel|from|onto
    thinking|think|thought|thoughts|want|wanna|feel|plan|imagine|imagining ~ about|of|to|like ~ jump|jumping|hanging|overdosing|drowning|
        crashing|swerving !squat|in|rope|ship|lunge|ahead|box|jacks|back|off|up|on|straight|to
    saying|said|say|writing|wrote ~ goodbye|goodbyes|farewell|farewells
    attempt|attempted|attempts|tried ~ suicide|life|kill|end|overdose
    giving|give|gave|given ~ stuff|things|possessions|belongings|dog|cat|everything ~ away
    planning|planned|plan|worked|know|decided|thought|thinking ~ how|when|where ~ to|ill|id ~ go|end|die|do !deeper|lower|heavier|gym|squat|
        train|bird
    nothing|nobody|noone|little|no|anything ~ left? ~ to live for
    thinking|think|thought|thoughts && bridge|train|trains|tracks|pills|rope|noose|cliff|traffic|overdose|edge && about|it|jump|every|
        sometimes|often
    i want out $
    might|may ~ well ~ be dead|gone
    rather|well|better ~ be dead|gone|buried
    wont|not|doesnt|dont ~ matter|needing|need|be|bother ~ after|soon|anymore|longer|here && week|tonight|tomorrow|long|it|soon|numbers|
        stuff|weekend !rep|set|today
    not exist|existing
    better|happier|off|easier && widow|widower|orphan|orphans|funeral|gone|without|dead|insurance && me|i|im|id|shes|theyd|hes|she|kids|
        wife|husband|family|they
    if && wasnt|werent|not|isnt && id|i|i'd ~ be|have gone|dead|ended|done|over|finished|already && dog|kids|wife|cat|family|mum|daughter|
        son|husband|children|her|him|them
    not safe ~ myself|alone|with|from|home|tonight
    """, thing=True, own=False),
    Signs(Flag.SELF_HARM, "not wanting to live", """
    dont|dunno|not|no|never|doesnt|didnt|cant|stopped|lost|lose|losing|hardly|barely|hate|sick|tired|fed|done|enough|finished|bored|give|
        gave|giving|given|had|over|through|without|longer|more ~ want|wanna|wish|will|wanting|of|reason|reasons|point|deserve|see|purpose|
        strength|like|up|with|desire|energy|interest|motivation|need ~ to|in|for|on|of|be ~ live|living|life|alive|exist|existing|existence|
        livin|survive !room|in|with
    dont|not|cant|wont|cannot|hate ~ want|wanna|wish|see|like|deserve|bear|stand|face|cope|enjoy|fancy|think ~ live|living|life|alive|exist|
        existing|being|existence !room
    tired|sick|exhausted|weary|fed|bored|done|finished|enough|over ~ living|life|alive|existing|existence|livin|breathing
    dont|not|no|cant|nothing|isnt|hardly|never|aint|wasnt|hard|harder|struggle+|few|lost|whats|what ~ point|reason|reasons|worth|purpose|
        left|sense|value|use|need ~ to|in|for|of|me|being|it|on ~ live|living|life|alive|going|stay|staying|exist|existing|here|anymore|
        carry|carrying|go|continue|anything|wake|waking|get|getting !over|down|deeper|lower|heavier|further|rep|the|low|doing|deep|test|up
    reason|reasons|point ~ live|alive|living|exist|stay|staying|existing
    life|living|existence|existing|alive ~ not|isnt|no|aint|doesnt|hardly|never ~ worth|point|living|matter|value|meaning
    not|isnt|aint|hardly ~ worth ~ living|being|life|alive|it|going|here !the|buying|measuring|doing|money|redoing
    want|wanna|wanted|wish|wishing|wished|rather|like|ready|hope|hoping|pray|praying|wants|prefer|deserve|hoped|should|ought|love|longing|
        think|thinking|better|wouldnt|mind|dont|care|welcome|time ~ to|i|id|was|be|if|of|about|were|me|by ~ die|dying|dead|died|die !here|
        bug|stop|lift|straight|on|laughing|tired
    wish|wishing|wished|hope|hoping|pray|rather|prefer ~ i|id|it|we ~ never|not|wasnt|werent|hadnt|wouldnt|didnt|dont|would|could|not ~
        exist|born|here|alive|wake|existed|around|woken|be|woke|breathing !at|stronger|able
    never|not|hadnt ~ been born|alive
    dont|not|never|wouldnt|cant|didnt|wont|without|hope|stop|isnt ~ want|wanna|care|wish|mind|like|hope|plan|to|wanted|if|hoping|expect|
        planning|planned|know ~ wake|waking|woken|woke|be|being|exist|existing|stay|staying ~ up|here|around|alive|anymore|more|tomorrow|
        morning|world|earth|planet|any !work|early|weights|too|at|late|on|all|down|in|that
    sleep|asleep|bed|night|go ~ never|not|dont|forever|wont|without ~ wake|waking|woke|wakeup
    not|never|dont|didnt|wouldnt|no|without ~ wake|waking|woken ~ up|again|ever & wish|hope|want|mind|care|rather|if|pray|sleep|just|be|ok|
        good|fine|easier|nice|anymore|ever
    if|wouldnt|dont|not|cared|wish ~ i|a|got|get|care|mind|if|something ~ died|die|dead|hit|bus|killed|car|truck|lorry|crashed|gone|
        disappeared|disappear !set|rep|phone|battery|garage & i|me|care|matter|mind|notice|miss|wish|wouldnt|better|over|fine
    not|dont|stop|stopping|no|never|without|wont|isnt ~ be|being|exist|existing|am|around ~ around|exist|here|existing|alive ~ anymore|any|
        much|longer|more|tomorrow|for|by|soon|choice|at|exist|exists|existing !today|work|this|next|yet|tomorrow
    not being|existing around|here|alive|exist|born
    disappear|vanish|disappearing|vanishing ~ forever|good|completely|all|from|world|notice|never
    want|wanna|wish|like|could|need|rather|just ~ to|i|could ~ disappear|vanish|dissapear|disapear !from
    no|nobody|noone|none|nothing|who|wouldnt|one|wont|not ~ would|will|wouldnt|one|even|care|miss|notice|cares|missing|cry ~ if|me|when|
        that|i|was ~ gone|died|dead|disappeared|die|left|disappear|miss|here|around|vanished|wasnt|werent|me|exist|existed|dies !pain
    nobody|noone|no|who|wont ~ one|would|will|wouldnt|even ~ miss ~ me !rep|set|lift
    if|when|once|until|till|after ~ i|im|id|ive ~ gone|dead|died|die|wasnt|werent|not|no|disappear|disappeared|vanished & better|easier|
        happier|care|cares|miss|notice|wonder|fine|relief|relieved|free|over|favour|favor|matter|family|kids|everyone|longer|money|
        insurance|dog|world|already|cry
    done|finished|through|enough|over|tired|sick ~ with|of ~ life|living|everything|world|existing|existence|being|all !wall|test|left|
        right|side|one|set|that|this|the|for|day|today|done|sets
    had|ive enough ~ of ~ life|living|everything|world|all|being|existing
    death|dead|dying|die ~ would|is|sounds|seems|only|easier|better|be ~ relief|easier|better|way|answer|option|nice|peaceful|peace|escape|
        good|out|welcome|than !lift|stop|bug|set
    better|easier|best|happier ~ off|to|if|be|when ~ dead|gone|die|died|death|dying|grave !squat|stop|lift
    better|easier|happier|best|fine|good|nicer|freer ~ off|without|if|place|life|world|be|for ~ without|i|im|me ~ me|gone|wasnt|werent|
        around|dead|die|died|here|not|disappeared !telling
    doesnt|dont|didnt|not|wouldnt|no|never|without|isnt ~ need|needs|want|wants|miss|love|better|notice ~ me ~ in|around|here|anymore|alive|
        it !to
    world|everyone|everybody|family|wife|husband|kids|people|they|parents|mum|dad|friends|shes|hes|theyd|partner|life|lives ~ better|
        happier|easier|fine|relieved|best|freer|cheaper|good ~ off|without|if|life|widow|i|when|me !sleep|reps|coaching
    """, thing=False, own=False),
    Signs(Flag.SELF_HARM, "a burden, no way out", """
    burden|burdens|burdening
    i|im|just|feel|being|am|such|only|like|always|become|becoming|all ~ deadweight|burden|liability|waste|useless|worthless !of|kg|plate &
        everyone|everybody|family|people|them|space|him|her|others|anyone|life|wife|husband|kids|burden|breath|air|oxygen|kids|world|person|
        human
    waste of space|oxygen|air|breath|skin
    i|im|all|just ~ do|am|ever|bring|cause|only ~ cost|drag|hurt|make|cause|weigh|bring|ruin|disappoint|let ~ everyone|wife|family|them|
        people|kids|husband|her|him|everybody & down|money|misery|life|pain|trouble|all|time|miserable|do
    doing|do|be ~ them|everyone|everybody|family|world ~ favour|favor
    cant|cannot|couldnt|dont ~ do|go|take|cope|carry|live|face|keep|stand|bear|continue|deal|handle ~ on|anymore|any|this|it|life|like|
        living|with|longer|tomorrow & anymore|more|longer|life|living|like|pain|world|tomorrow|existing !test|plank|set|reps|hold|squat|
        position
    cant|cannot|dont|couldnt|not ~ face|cope|bear|stand ~ another|life|day|tomorrow|living|life|being|anymore|world|morning|existing
    not|dont|no|never|cant ~ sure|know|think|see|longer|want|wanna|energy|strength ~ i|id|to|want|if|can|for ~ keep|carry|carrying|go|going|
        continue|fight|fighting|here|make|be|want|live|alive|making !test|set|squat|squatting|lifting|training|with|train|the|gym|this|
        deeper|lower|down|it
    want|wanna|need|wish|just|hoping ~ it|everything|all|the|this|pain|life ~ to|be|all|stop|over|end|go ~ over|stop|end|away|finished !set|
        burpees
    wont|not|dont|longer|much ~ be|think|plan|around|am|here ~ around|here|much|for|alive ~ much|longer|anymore|to|long|by|christmas|next|
        soon|see|tomorrow|alive|for !today|week|class|session|available|because|work|at|weekend|free|next|monday|tuesday
    thoughts ~ of|about ~ death|dying|die|harming|hurting|ending|end|suicide|killing|not|self|jumping|hanging
    dont|not|didnt|never ~ deserve ~ live|alive|be|exist|breathe|here|breathing|life
    worth more dead
    """, thing=False, own=False),
    Signs(Flag.SELF_HARM, "thoughts, by name", """
    dark|black|bad|intrusive|scary|horrible|ugly|evil|suicidal|worst|darkest|nasty thoughts|place|thought|places|headspace
    thoughts ~ of|about ~ death|dying|die|harming|hurting|ending|end|suicide|killing|not|self|jumping|hanging
    """, own=False),
    Signs(Flag.SELF_HARM, "perhaps", """
    cant|cannot|dont ~ go|carry|keep ~ on|going|this !set|sets|reps|rep|today|arms|because|cos|test
    cant|cannot|couldnt ~ do|take|cope|face|stand|bear ~ this|it|life|anything|with|everything ~ anymore|longer|more
    i|me|id|myself && die|died|dying|death|suicide|suicidal|noose|overdose|funeral|afterlife !set|stop|lift|bug|squats|laughing
    cant|cannot|couldnt ~ live|carry|exist|continue|go ~ like|this|anymore|on ~ this|like|anymore|way !today|set
    nothing|what|anything|something|little ~ to look|live forward|for
    nobody|noone needs|wants|loves|likes me
    should|shouldve|couldve have? died
    ending things|it|everything $|myself|all|for
    burn|burning|burnt|burned myself $|again|with !oven|hob|pan|sun
    cutting again !for|on|at
    look|looking|looked|stare|staring|think|thinking|eyeing|walk|walked|drive|drove ~ at|about|to|onto|off|of|over|into ~ bridge|cliff|
        tracks|railway|pills|knives|rope|tree|edge|road !box|camera|gym
    world|life|earth ~ isnt|not|wasnt ~ for|made|meant ~ me
    <i>|have|got|made a plan $ !to
    last|final message|text|goodbye
    writing|wrote|written|write|left a|my note|letter $|and|to|for
    shouldnt|shouldn|wasnt|not|isnt ~ be|meant|supposed|deserve ~ alive|here|living|exist|born
    think|thinking|thought ~ death|dying
    kill|killing|killed && me|myself|want|thinking|thoughts
    life && over|pointless|worthless|done|finished|sick|tired|hate|end|ending|empty|useless|meaningless|worth|enough|point|reason|anymore
    alive|living|exist|existing && dont|not|no|tired|hate|sick|done|why|hard|anymore|hurts|reason|point|cant
    nobody|noone|everyone|everybody|world|family|kids|wife|they|people && better|happier|easier|miss|notice|care && without|gone|dead|if
    no|whats|not|nothing|little ~ point|worth|reason|purpose ~ anymore|going|carrying|me|being|trying
    want|wanna|wanted ~ to? die
    nobody|noone|no ~ one|would|will|even ~ cares|care|notice|miss !form|depth|squat|about|rep
    done|finished ~ with ~ everything|life|world|all|people
    harm|harming|hurt|hurting|cut|cutting|punish|punishing myself !some|slack
    go|going|gone|drift|slip|fade ~ to sleep|away|quietly|peacefully ~ forever|never|and|not
    dying|die|death|dead ~ appeal+|attractive|tempting|sounds|good|nice|comfort
    """, sure=False, thing=True, own=False),
)
