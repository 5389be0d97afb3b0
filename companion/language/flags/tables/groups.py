"""Words that stand for each other in the patterns of flags.

In a pattern: ``a|b`` either word · ``<group>`` any word of a group · ``x?`` may be left out · ``~`` up to three words with no denial among
them · ``$`` the end of a clause · ``,`` a comma · ``¿`` a question mark · ``a & b`` both in one clause, in any order · ``!x`` not where x
comes next · ``word+`` with its regular endings · ``-> x`` read as x.
Words are written small and without apostrophes ("cant"). All wording is the project's own (choice, no source).
"""

SIGN_WORDS = {
    "i": "i im ive id iam i'm me",
    "my": "my the this that a an his her mine one both left right lower upper inner outer whole own me",
    "feel": "feel feels felt feeling feelings feelin sense sensation sensations",
    "cant": "cant couldnt cannot",
    # Unable, or nearly so.
    "hardly": """cant couldnt cannot barely hardly struggle+ hard harder difficult difficulty difficulties trouble unable tough
        impossible diffculty scarcely tricky strain+""",
    "trouble": "trouble troubles problem problems issue issues difficulty difficulties bother grief hassle complaint complaints",
    "odd": """weird odd off funny strange wrong iffy dodgy different changed peculiar queer unusual abnormal altered fuzzy patchy muted
        dull weirdly unfamiliar fucked messed shot buggered knackered bad worse terrible awful erratic""",
    "lost": "lost losing lose loses loss less reduced gone missing decreased fading faded diminished vanished disappeared no zero",
    # Where the legs are.
    "leg": "leg legs foot feet toe toes ankle ankles knee knees thigh thighs calf calves shin limb limbs quad quads legg",
    "oneleg": "leg foot forefoot toe toes ankle thigh calf limb shin bigtoe",
    "weak": """weak weaker weakness weakening weakened feeble floppy floppier limp lifeless powerless useless paralysed paralyzed
        paralysis numbandweak unresponsive strengthless""",
    "obeys": """work works working worked move moves moving respond responds responding lift lifts lifting obey obeys obeying listen
        listens listening support supports supporting cooperate cooperating function functions functioning carry carries carrying""",
    # Passing urine and stool.
    "pee": "pee+ wee weeing weed wees urinate+ urine widdle+ tinkle+ piss+ slash whizz bladder waterworks wizz wazz",
    "poo": """poo poos pooing pooed poop+ crap crapping stool stools bowel bowels bm defecate+ shit shitting shite faeces feces defacate
        turd""",
    "go": """pee+ wee weeing urinate+ widdle+ tinkle+ piss pissing slash whizz wazz poo poos pooing poop+ crap crapping shit shitting
        defecate+ jimmy""",
    "toilet": "toilet loo bathroom bog dunny restroom lavatory lav potty ladies gents commode washroom john crapper khazi",
    "organ": "bladder bowel bowels waterworks plumbing sphincter continence urethra",
    "clothes": """pants trousers shorts leggings underwear undies knickers jeans boxers briefs bed sheets mattress trackies joggers
        kecks seat""",
    # Between the legs.
    "crotch": """crotch saddle perineum taint gooch grundle privates private genitals genital genitalia penis dick cock willy willie
        todger knob pecker balls ballsack nuts testicles testicle testes nads scrotum sack vagina vaginal vag fanny pussy vulva labia
        clit clitoris ladybits nethers undercarriage downthere anus anal arsehole asshole bumhole butthole backpassage rectum rectal
        ringpiece junk tackle manhood groin groins pubic pubes loins minge foof foofoo hoohah hooha ladyparts betweenlegs crack wiping
        vajayjay johnson nob crutch bits intimate parts privatearea crown""",
    "seat": "seat bum bums buttock buttocks butt arse ass bottom backside rear rump behind cheeks tush tail",
    "numb": """numb numbness numbed numbish number numby tingle+ tingly tinglin pinsandneedles deadness deadened dead anaesthetised
        anesthetized anaesthetic frozen sleeping dentist novocaine novocain asleep cottonwool nofeeling insensitive desensitised
        desensitized senseless feelingless unfeeling""",
    # Sexual function.
    "sex": "sex sexual sexually intercourse intimacy intimate lovemaking shagging bedroom shag",
    "erection": """erection erections erect hardon hardons boner boners stiffy semi orgasm orgasms orgasming climax+ ejaculate+
        ejaculation cum cumming aroused arousal wank wanking masturbate+ masturbation""",
    # The heart and the breath.
    "chest": "chest breastbone sternum ribcage chests breast",
    "tight": """tight tightness tightening tighten tightens tightened pressure pressing heavy heaviness crush+ squeeze+ squash+
        constricted constricting constriction weight band elephant vice clamp+ gripping pain pains painful hurt+ hurty ache+ achy aching
        sharp stabbing stab+ burning discomfort twinge+ uncomfortable cramp+ spasm+ sore soreness tightly clench+ stabby pang pangs""",
    "dizzy": "dizzy dizziness lightheaded lightheadedness woozy wooziness giddy giddiness faint faintness fainty vertigo swimmy",
    "flutter": """flutter+ skip+ miss+ jump+ irregular irregularly funny weird weirdly odd oddly crazy erratic erratically uneven flip+
        flop+ stutter+ palpitate+ palpitating haywire thud+ somersault+ missed""",
    "race": "racing race races raced pounding pound+ thump+ hammer+ bang+ beating fast galloping going",
    # Clinicians, and what they say.
    "clinician": """doctor doctors dr doc docs gp physio physios physiotherapist pt physical therapist surgeon surgeons consultant
        specialist chiro chiropractor osteo osteopath nurse midwife hospital cardiologist neurologist orthopod ortho orthopaedic
        orthopedic rheumatologist medic clinician clinic neurosurgeon oncologist paramedic paramedics physician obgyn gynae obstetrician
        urologist podiatrist pharmacist rheumy radiologist registrar gynaecologist kine kinesiologist kinesio kinesitherapist doktor
        arzt osteopaths professional professionals ob gyn orthopedist obstetrics er hospitals team""",
    "said": """said says say saying told tells tell telling advised advises advise advising warned warns warning ordered orders wants
        wanted recommended recommends reckons reckoned insists insisted suggested suggests thinks banned forbade forbids forbidden
        instructed asked has had got put gave given set limited restricted allow allows signed""",
    "load": """fold folds lift lifts lifting lifted squat squats squatting bend bends bending stretch stretching stretches deadlift+
        load loading weights weight train training exercise exercises exercising gym twist twisting carry carrying barbell bar heavy
        strain straining workout sport sports running impact strenuous flex flexing""",
    # Other people.
    "person": """dad dads father fathers mum mums mom moms mother mothers wife wifes wives husband husbands hubby partner partners gf
        girlfriend girlfriends bf boyfriend boyfriends fiance fiancee son sons daughter daughters kid kids child children brother
        brothers sister sisters bro sis cousin cousins uncle uncles aunt aunts auntie aunty nan nans nana gran grans granny grandma
        grandmas grandad grandads granddad grandpa grandfather grandmother friend friends colleague colleagues neighbour neighbours
        neighbor boss dog dogs cat client clients missus mrs teammate flatmate roommate housemate nephew niece mil fil stepdad stepmum
        stepson ex twin grandson granddaughter toddler cow horse babys coworker teacher student""",
    "number": "one two three four five six seven eight nine ten a 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 24 28 30 35 40 50 60",
    "teens": "13 14 15 16 17 thirteen fourteen fifteen sixteen seventeen fourtheen fiveteen sixten sevnteen",
    # What follows a number that is no age.
    "unit": """cm cms mm m metre metres meter meters in inch inches ft foot feet kg kgs kilo kilos lb lbs pound pounds stone st deg degs
        degree degrees s sec secs second seconds min mins minute minutes hour hours hrs am pm left right l r reps rep sets set percent %
        weeks week wks wk months month days day times x stones minutes' past to into out off away short over under above below / plus
        kgs. pounds. bar plates plate miles km steps k of""",
    "kids": "8 9 10 11 12 ten eleven twelve",
    "any": """40 45 48 50 52 55 58 60 62 65 68 70 72 74 75 76 78 80 82 84 85 86 88 90 92 95 98 100 105 110 120 130 1 2 3 4 5 6 7 8 9 10
        11 12 13 14 15 16 18 20 25 30""",
    "lose": """lost losing lose loosing lossing loses loss dropped dropping drop drops down shed shedding loose gone fell falling
        melting melted disappearing vanishing shrinking went lightened""",
}
