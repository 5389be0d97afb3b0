"""The weights of ``classifier``, in tenths of a log-odds. Written by tests/corpus/learn.py; not by hand."""

INTERCEPT = -13
WEIGHTS = """
-15 =phone
-14 =or ^+$
-13 =rounds =stick fine+$
-12 #+$ =before =first =flat =stretch =touch ^+a feel+it first+$
-11 =can =crease =· ^+is ^+not _·_ hip+crease in+# ·+$
-10 =do =glutes =lol ^+bar ^+just ^+right ^+stretch can+feel felt+my lol+$
-9 =heels =hips =moved =nothing =rounding =sorry =stayed =strap =tape =wall =with ^+my ^+stick ^+tight ^+went back+moved
-9 it+wont my+bad parallel+$ went+up
-8 =below =coach =day =easy =film =haha =parallel =past =pull =redo =rounded =squat =stops =the =used =video ^+in ^+stop
-8 ^+take ^+· down+$ ed_ feel+a flat+$ hip+turned i+can is+flat sorry+$ stop+for under+my
-7 ,+no =arch =bends =better =gym =hands =light =manage =please =power =recovered =rolled =see =set =shoes =stiff =tired
-7 ^+at ^+calf ^+hard ^+light ^+low ^+nothing ^+one ^+phone ^+strap back+rounds back+to cant+manage did+it er_ haha+$
-7 im+back is+good is+that it+in just+tight knee+bends left+knee recovered+$ right+back rounding+$ stretch+in that+stops
-7 ¿+$
-6 #+in =above =against =app =are =arms =bar =battery =behind =coming =could =didnt =find =good =great =healed =heel
-6 =held =high =keep =later =lets =long =monday =none =normal =oops =same =screen =sent =tell =thanks =thighs =tight
-6 =try =turned =work ^+about ^+app ^+battery ^+could ^+do ^+front ^+gave ^+go ^+lower ^+what _sh arch+of back+from
-6 back+now back+rounded before+my behind+my can+i cm+$ done+$ end+$ healed+$ is+down is+on is+the left+$ lifted+off
-6 lost+my me+a my+heels my+knees na_ none+$ power+went rounds+$ still+$ straight+up tell+$ thanks+$ touch+my used+to
-5 ,+good ,+healed =# =any =anymore =both =change =data =deeper =give =got =hand =hard =harder =have =higher =how =kept
-5 =lifts =limits =loose =march =morning =new =next =nice =off =open =pelvis =question =run =smooth =stance =straight
-5 =strong =town =tried =tucked =two =under =was =week =wifi =wrong =¿ ^+all ^+arm ^+crack ^+crushed ^+feeling ^+killed
-5 ^+locked ^+no ^+screen ^+sent ^+swap ^+the ^+tried ^+video _#_ _ba _ha _hu _lo _po _ye a+big above+$ ankle+feels
-5 anymore+$ battery+gave but+ok cant+find cant+tell data+$ day+$ do+i ey_ ff_ get+my give+me go+higher great+$ hold+on
-5 i+hold in+a in+march in+on inches+$ is+in is+up just+under left+is leg+is limits+me locked+out march+, my+data
-5 my+hand my+thighs ok+$ on+$ on_ one+$ over+my past+# phone+$ please+$ question+$ really+$ right+hip say+$ smooth+$
-5 something+is that+felt the+calf the+same tired+$ ty_ up+my went+ok ·+at
-4 =ankles =anything =as =be =box =brother =calf =calves =came =camera =cat =cm =depth =doms =dont =door =drops =easier
-4 =elbows =eleven =feet =filmed =form =further =go =gotta =hamstrings =inches =kg =knees =lifted =lifting =lights
-4 =looks =meant =mid =mirror =move =numbers =one =other =pause =picture =pressed =presses =pumped =quarter =repeat
-4 =results =sat =sec =send =session =shot =skip =slept =slow =spain =squats =step =stiffer =stretching =sunday =swap
-4 =sweaty =terrible =times =tipped =tomorrow =tucks =upright =usual =well =what =wide ^+after ^+again ^+back ^+be
-4 ^+been ^+by ^+can ^+coach ^+coming ^+couldnt ^+didnt ^+easy ^+elbows ^+every ^+feels ^+form ^+had ^+high ^+hips ^+how
-4 ^+legs ^+lets ^+next ^+on ^+pause ^+pelvis ^+power ^+skip ^+sure ^+try ^+two _ch _fi _gr _kn _le _na _ne _pa _st ala
-4 an_ any+stretch at+home back+pressed back+presses back+still be+right both+$ box+$ but+not came+off came+up cant+see
-4 cha che coach+says didnt+move dy_ err feels+loose for+the gave+it go+back gotta+go half+$ is+it it+did its+my kg+$
-4 killed+it knee+lifted last+rep light+went long+$ loose+$ low+$ me_ mirror+$ monday+$ moved+before my+brother my+hips
-4 my+lower my+phone my+results no+· normal+$ not+$ ow_ pass+$ pumped+$ results+$ right+knee round+$ run+$ same+as
-4 see+my session+$ sets+$ shoes+$ should+my six+$ spain+$ squat+$ squats+$ step+$ stopped+at stops+me straight+$
-4 stretch+at strong+$ sweaty+$ tape+$ th_ that+again the+door the+glutes then+squats think+so tight+in to+it to+the
-4 tomorrow+$ took+a try+again turned+$ twelve+$ up+on upright+$ ve_ wall+$ week+$ went+black went+off went+out went+to
-4 when+the with+my with+the ·+my
-3 #+# #+i ,+# ,+heel ,+i ,+recovered =am =angle =another =anywhere =awkward =broom =button =by =clearly =coffee =dark
-3 =dropped =dying =enough =explain =fine =five =flexible =forward =fridays =from =gap =garage =goes =half =height =im
-3 =instructions =itself =killed =late =level =longer =lost =lunch =mean =measure =messed =mondays =nah =number =once
-3 =only =pic =plate =plates =pulling =r =rack =runs =saturday =saturdays =say =setup =shaking =should =signal =sitting
-3 =solid =squatting =stable =stretchy =sure =thurs =thursday =tips =today =tonight =took =touching =towel =training
-3 =tuck =use =which =why =working =yeah =yep =yet =you =yup =zero ^+ankle ^+before ^+bum ^+cat ^+change ^+cracked ^+did
-3 ^+doms ^+enough ^+finished ^+give ^+gym ^+heel ^+im ^+knees ^+lying ^+messed ^+nah ^+nice ^+numbers ^+once ^+other
-3 ^+pass ^+popped ^+pulling ^+repeat ^+say ^+set ^+shot ^+should ^+slept ^+slow ^+snap ^+stiff ^+stopped ^+stretchy
-3 ^+weak ^+wobbly ^+wrong ^+yeah ^+yep ^+yup ^+zero _ag _al _br _bu _fr _he _ho _lea _ma _me _mi _mu _no _nop _pr _r_
-3 _ro _to _un a+bit a+quarter a+run a+sec a+touch ach against+my al_ all+good ank anywhere+$ at+my back+, back+first
-3 back+of back+one back+please back+tucks back+up bar+on before+the big+stretch bit+on brace+$ bur but+fine but+good
-3 calf+, cant+keep cant+say cked cked_ clearly+$ crushed+it dark+$ deep+$ do+it does+it down+now easy+$ eh_ ert est
-3 every+rep feels+awkward feels+fine feels+great felt+easy felt+nice film+$ filmed+it fold+$ ft_ gap+under gave+up gin
-3 go+, gone+, got+it got+to had+a hand+$ heels+$ heels+down height+$ held+$ high+$ hips+feel i+have in+front ish+$ ist
-3 it+a it+ok itself+$ ked ked_ keep+my killing+it knee+bent late+$ later+$ lea left+heel legs+like lifting+shoes
-3 light+is lo_ lt_ me+back messed+up more+$ morning+$ my+coach nic nice+$ no+trouble nop not+at not+· nto nto_ on+a
-3 one+more out+in out+of ove pe_ pelvis+tips phone+on plates+$ pp_ pressure+$ pulled+# ral ready+$ redo+$ res right+leg
-3 ron rou rounded+$ rounded+a rs_ sat+on saturday+$ sec+$ sent+$ set+up setup+$ sho should+i so+$ solid+$ stance+$ sto
-3 stop+here sunday+$ terrible+$ the+garage the+gym the+phone the+side the+tape the+video the+wall the+way this+$
-3 tight+behind time+$ tin to+get today+$ touch+$ tried+again umb ump under+$ up+the video+is warm+up was+# way+better
-3 wobbly+on work+$ yep+$ yes+$ yes+did yet+$
-2 !+$ #+deg #+for #+kg #+lb #+lbs #+m #+on #+r #+reps #+x ,+all ,+got ,+is ,+that ,+will =absolutely =arm =bed =belt
-2 =between =body =brace =brb =broke =broken =call =clean =clear =come =cracking =deg =dinner =dog =drifted =either
-2 =empty =end =far =flew =fri =fun =gives =gonna =hammies =hamstring =hit =hurry =ill =ish =issues =kids =last =lb =lbs
-2 =legs =link =m =mat =month =near =need =neither =on =out =paint =pls =pr =pressure =pulls =raised =rate =reps =seven
-2 =shoot =shoulders =sides =six =slower =small =socks =sofa =somewhere =square =squashed =stay =tail =test =than =them
-2 =three =time =toast =torn =touched =twice =uploading =warm =watch =weekend =who =wider =width =will =wink =without =x
-2 =y =yes =🔥 ^+absolutely ^+ankles ^+any ^+below ^+breathe ^+camera ^+chest ^+clean ^+cracking ^+dog ^+dont ^+dying
-2 ^+eleven ^+empty ^+felt ^+film ^+gap ^+gone ^+gonna ^+good ^+half ^+hamstrings ^+hands ^+heels ^+held ^+knackered
-2 ^+last ^+left ^+lifted ^+maybe ^+mondays ^+neither ^+normal ^+pop ^+pull ^+pulls ^+quarter ^+quit ^+rounds ^+same
-2 ^+shoulders ^+small ^+snapped ^+somewhere ^+tape ^+tomorrow ^+torn ^+weight ^+which ^+who ^+why ^+y _age _be _brb
-2 _brb_ _de _di _du _fle _flew _go _hel _hur _ki _kil _lean _li _m_ _mat _mat_ _ni _nu _num _ow _own _pai _par _pe _pl
-2 _pls _pls_ _pop _pr_ _rat _rate _ri _sa _sho _si _sk _sm _ta _yes _yess a+box a+good a+new a+strap a+week ache ad_
-2 after+dinner again+¿ against+the age agi air ake alan ale all+clear all+fine all+the am+$ and+fridays angle+$ anka
-2 anything+$ ar_ ara are+tight at_ ati back+lifted back+squat bad+in below+parallel bend+at better+than between+#
-2 between+sets bit+$ bit+of both+sides brb brb+$ brb_ burg butt+wink cal calf+feels can+you ce_ cm+and coming+up cor
-2 couldnt+say crack+on deg+$ der did+both didnt+feel didnt+get doesnt+· ds_ each+side ean eed eff ell empty+bar en_ end
-2 enough+$ ent ers es_ est_ ete every+monday ew_ feel+anything feels+a feels+tight feet+are ffi find+the first+then
-2 five+$ fle flew flew+up flew_ foot+, foot+¿ for+me for+now fri+$ from+sitting from+work ful fun+$ get+the ggi ging
-2 ging_ go+heavy good+set got+lower gym+$ hamstring+stretch hamstrings+are happy+$ hard+, hard+to hat have+a havent+got
-2 heart+rate heavy+$ heel+came heels+raised hel held+my hips+$ hur i+dont i+go i+had i+mean i+meant i+need i+use ica
-2 ick im+not im+so in+socks in+spain ind ing ing_ is+better is+broken is+straight is+this issues+$ it+on it+stayed
-2 it+the it+up it+went ive ive_ ix_ just+a kil knee+touched lan lar last+month lb+$ lbs+$ lean leg+day leg+goes
-2 legs+are lets+go level+$ level+with lew lew_ lis ll_ lon lower+back ls_ lunch+$ lying+down mas mat mat_ maybe+$ me+my
-2 min min+$ mondays+and month+$ moved+$ my+breath my+calves my+hamstring my+right my+shoes nce ne_ next+$ ng_ nka
-2 no+problem not+really not+yet nothing+$ now+$ num numbers+$ off+my ol_ on+it on+me one+was only+$ or+not ork ork_ orr
-2 ort ot_ ous ous_ over+the owe ower own pai par pee pen phone+is picture+$ pls pls+$ pls_ pm+$ pop pr+$ pr_ pro
-2 problem+$ pull+in r+# rack+is ram rat rate rate_ rb_ rea repeat+that right+up ris rk_ rn_ round+my rounds+at rty rty_
-2 same+$ screen+went send+$ she shot+it sick+$ side+$ skip+it slow+$ socks+$ sofa+$ square+$ st_ stab stay+down
-2 stayed+on sti stick+stayed stin stretch+behind sure+$ tab tai tape+measure ter ter_ the+camera the+hamstring the+knee
-2 the+link the+mat the+mirror the+picture the+right the+sofa the+top the+very thigh+stopped this+week thursday+$ ting
-2 tired+but to+# to+film to+hurt toes+fine torn+between touched+the tuck+$ uff uff_ und up+, uploading+$ urg us_ used+a
-2 ust very+bottom video+$ was+the wasnt+· well+$ wer what+is where+it width+$ wn_ wont+send wrong+, ye_ year+$ yes yess
-2 yesterday+$ ze_ ·+, ·+for ·+·
-1 #+am #+degrees #+ft #+ish #+kilos #+mins #+not #+pm #+seconds #+sets ,+always ,+charging ,+either ,+from ,+great
-1 ,+gym ,+im ,+normal ,+nothing ,+phone ,+redo ,+· =! =a =after =ago =all =always =away =aye =balance =berlin =best
-1 =big =blocked =break =breathing =bristol =burnt =busy =butt =changed =charging =count =crack =dawn =degrees =died
-1 =does =doorbell =drop =drum =effort =eh =else =evening =fast =filming =finish =folded =free =friday =friend =ft =full
-1 =fully =he =healthy =help =hinge =holiday =honest =hungry =idk =instead =kid =killer =kilos =lay =leave =leeds =less
-1 =london =look =loosened =lovely =low =lower =madrid =marked =min =mins =missed =nailed =nervous =never =no =nope =now
-1 =ok =pm =popping =pounds =puffing =pump =quads =quit =rather =ready =remind =reminders =report =ribs =rubbish =says
-1 =seconds =shop =shut =sick =slid =smashed =snapping =so =son =start =starting =stopped =stuff =sweet =thirty =this
-1 =till =top =tries =trouble =tuesday =twelve =uk =unsure =using =wait =weekends =weight =whats =workout =wow =ye
-1 =years =yesterday ^+# ^+around ^+aye ^+better ^+bit ^+breathing ^+burnt ^+doorbell ^+feet ^+full ^+got ^+hammies
-1 ^+help ^+hurry ^+idk ^+leave ^+london ^+lost ^+moved ^+nailed ^+new ^+nope ^+ok ^+paint ^+parallel ^+past ^+popping
-1 ^+r ^+remind ^+sat ^+short ^+smashed ^+sorry ^+spine ^+starting ^+strong ^+sweet ^+thighs ^+thirty ^+tired ^+tuesday
-1 ^+unsure ^+used ^+wait ^+wasnt ^+way ^+weekends ^+well ^+whats ^+where ^+will ^+wow ^+ye ^+yes _au _ay _aye _aye_
-1 _bala _bat _ber _berl _bre _brea _bri _bris _bur _bus _busy _cha _char _che _chee _coun _cr _cra _da _daw _dawn _die
-1 _died _doo _door _ef _eff _effo _eh _eh_ _el _els _else _fin _fini _fl _fo _ft _ft_ _fu _ful _full _gri _grin _hea
-1 _heal _holi _hun _hung _id _idk _idk_ _kill _kilo _kno _leav _lee _leed _lon _lond _loo _loos _lov _love _mad _madr
-1 _man _nai _nail _ner _nerv _pou _poun _qu _qui _rea _read _rem _remi _res _se _sha _shu _shut _sma _smas _sp _sto
-1 _stuf _sw _swe _swee _thir _tr _tri _trie _uk _uk_ _uns _unsu _up _wa _wai _wait _we _wea _wee _week _wh _wha _what
-1 _ye_ a+broom a+cold a+drum a+friend a+half a+hit a+side a+strong a+thing a+video above+parallel act adr adri adrid
-1 ady ady_ after+# after+the ail aile ailed ain ait ait_ ak_ akes alanc all+, all+over alt alth althy ame amp anc ance
-1 ance_ and+# and+no any+· are+long are+toast arg argi argin around+# arpe arpen as+a ash ashe ashed at+parallel ate_
-1 ath ath_ ativ ative ats ats_ ave ave_ awn awn_ ay_ aye aye_ back+pls back+· bala balan bat bbi bbis bbish bed+$ bel
-1 bell bell_ below+$ berl berli better+$ bis bish bish_ bit+above bit+tired bre brea break break+$ breath+and
-1 breathe+in breathe+out breathing+fine bri bris brist bristol+$ bro broken+$ burge bus busy busy+$ busy_ but+thats
-1 cal_ call+it camera+$ cant+open char charg charging+$ chee ches ck_ coach+$ come+up coun count cra crack+of daw dawn
-1 dawn_ day day_ degrees+$ did+# didnt+round die died died+$ died_ dk_ do+you does+the does+this doing+the doms+from
-1 doms+in don don_ doo door doorb dri drid drid_ dropped+my drum+$ ead eady eady_ eak eak_ eal ealt ealth eav eave
-1 eave_ eds eds_ eeds eeds_ eek eeke eeken een ees eet eet_ effo effor eh+$ ein ein_ either+side eke eken ekend ell_
-1 els else else_ emi emin emind ends ends_ ene ened ened_ enty enty_ erf erl erli erlin erv ervo ervou et_ far+$ fast+$
-1 feel+any feel+normal feeling+in feet+feel felt+more ffo ffor ffort film+haha filming+$ fin find+a fini finis for
-1 for+$ for+my fort fort_ from+the front+squat full full_ ger ger_ gne go+on good+$ good+stretch great+session gri grin
-1 grind gry gry_ ham han hands+$ har harg hargi harpe hats hats_ have+to hea head+$ heal healt hee heel+stayed help+me
-1 her her_ here+$ hes high+bar hinge+$ hips+are hir hirt hirty hit+the holi holid honest+$ hot how+do how+far how+long
-1 hun hung hungr hungry+$ hurry+up hut hut_ hy_ i+get i+squat i+tuck i+was ick_ ida iday iday_ idk idk_ ie_ ied ied_
-1 ies ies_ ign ile iled iled_ ill ille iller ilo ilos ilos_ im+# im+a im+dead im+done im+fine im+ready in_ ind_ ini
-1 inis inish ipp irt irty irty_ is+a is+fine is+rubbish is+there is+what ish ishe ista isto istol it+doesnt it+later
-1 it+wasnt it+with just+below just+came kend kends kes ket kill kille kilo kilos kilos+$ knee+, knee+at knees+feel kno
-1 lanc lance last+one last+set last+time lay+down le_ leav leave led led_ lee leed leeds leeds+$ leg+first legs+shaking
-1 ler ler_ let+me lid lida liday lifted+the lin_ little+$ little+above lle ller ller_ locked+itself lond londo
-1 long+does loos loose loosened+up los los_ lot+on lov love lovel lower+$ lse lse_ lth lthy lthy_ ly_ m+$ mad madr
-1 madri man mash mashe me+the mean+$ meant+# measure+$ mer mind mind_ mins+$ mis moved+first mpe mped mped_ mur
-1 my+hamstrings my+head nai nail naile nce_ nde nder ndo ndon ndon_ nds nds_ near+the ner ner_ nerv nervo never+·
-1 next+one next+week ngr ngry ngry_ nis nish nish_ no+not not not+# not+terrible not+this nothing+· now+, nsu nsur
-1 nsure nty nty_ number+$ numbers+are ny_ of+dawn of+work oli olid olida on+, on+all on+both ond ondo ondon one+sec ool
-1 ool_ oor oorb oorbe oos oose oosen ope or+front orb orbe orbel orn orn_ orre ort_ ose osen osene other+side oun ound
-1 ounds our ove_ ovel ovely ped ped_ phone+locked phone+number popping+to pou poun pound pounds+$ pull+behind
-1 pulling+in pump+$ qui r+$ rbe rbel rbell rde read ready reak reak_ rem remi remin remind+me report+$ reps+$ rge rger
-1 rger_ rgi rgin rging ric rica rid rid_ rie ries ries_ rin rind rist risto rli rlin rlin_ rolled+$ rom rounds+when rpe
-1 rpen rre rri rt_ rubbi rubbish+$ rut rvo rvou rvous ry_ se_ seconds+$ see+it sen sene sened set+done sha shed shed_
-1 shoes+on shot shot+up shu shut shut+$ shut_ side+when sides+$ sides+, sir sir_ sma smas smash smashed+it snap+, ss_
-1 stick+came stick+lost stiff+ankles stiff+as stol stol_ stop+the stopped+hurting stretch+to strong+pull stuf stuff
-1 stuff+$ sur sure sure_ swe swee sweet sy_ tak take take+$ tan te_ ted ted_ tell+from than+# that+ok that+set
-1 thats+all the the+chest the+evening the+heel the+level the+morning the+number the+numbers the+reminders the+shop
-1 the+squat the+stretch the+thigh the+warm then+$ ther ther_ there+$ there+a thing+that thir thirt this+one thy thy_
-1 tight+calves tight+hammies tings tiv tive tive_ tle tle_ to+go to+move to+parallel to+report to+stop tol tol_
-1 took+two top+$ tri trie tried+it tries trouble+$ tuf tuff tuff_ twice+a two+$ two+plates ubb ubbi ubbis uh_ uk+$ uk_
-1 ull ull_ umpe umped unc unds unds_ ung ungr ungry uns unsu unsur up+and urd urge urger urs urs_ use+the using+the usy
-1 usy_ vel vely vely_ ver ver_ vou vous vous_ wai wait wait_ wall+, wall+with was+no way+up wea wee week weeke
-1 weekends+only weet weet_ weight+on well+above went+over wha what whats where+do which+leg why+do with+a work+but x+#
-1 yes+, yin ying ying_ ·+anywhere ·+from ·+no ·+since ·+when
1 #+cm #+l ,+but ,+hurting ,+scared ,+stopping ,+thats ,+the .+knee .+pain =ants =bail =belly =bent =blowing =bolt
1 =bottom =bro =cheek =cotton =crawling =crushed =each =elbow =even =face =fell =finished =fml =get =god =happy =hasnt
1 =havent =hearts =jeez =knife =let =lie =lightning =lot =mad =mate =maybe =not =omg =outside =pass =position =quite
1 =racked =said =scared =sets =sideways =snapped =sock =somethings =still =stood =tbh =ten =very =water =wont =wood
1 =wool ^+both ^+cant ^+does ^+elbow ^+fell ^+ffs ^+fingers ^+fml ^+from ^+hasnt ^+have ^+havent ^+hot ^+jeez
1 ^+lightning ^+omg ^+pressure ^+quick ^+quite ^+racked ^+ready ^+shin ^+somethings ^+theres ^+tingles ^+twinge ^+warm
1 ^+weird ^+zing _bl _blo _blow _bro _bro_ _cot _cott _cou _craw _cru _crus _do _es _esp _je _jee _jeez _pu _ret _ru
1 _ski _sne _snee _th _thi _ths _thst _woo _wool _yo a+belt a+little a+lot a+pain actual+pain always+$ and+gave and+i
1 and+my and+now and+then and+wont ants+crawling are+numb argh+my arpi as+always ast atc atch awl awli awlin back+pain
1 back+started back+was bar+, big+toe bit+painful bit+tender black+$ blo bloody+hell blow blowi both+hips both+legs
1 bro+$ bro_ bum+cheek burning+down but+its but+the by+the calf+$ can+we cant+carry cant+pull chest+hurts chest+pain
1 cos+of cot cott cotto cotton+wool cou couldnt+get craw crawl cru crus crush deep+ache did+not didnt+· done+, down+leg
1 down+on down+there each+time early+, eez_ eeze esp ez_ eze feel+sick feeling+down feels+numb feet+$ ffs+my film+,
1 film+sent fine+, fli floor+$ floor+, floor+and for+today fuck+my getting+worse gh_ god+my going+down going+numb
1 gone+numb gone+to groin+$ harpi have+hurt have+tweaked hell+my here+, hip+joint hit+a hold+my hot+$ hot+, hot+burning
1 hst hurt+in hurt+it hurt+me hurt+myself hurt+when hurts+at hurts+in hurts+like hurts+my hurts+to i+do i+fold i+hurt
1 i+lift i+pulled i+sit i+stand i+stood i+strained i+tweaked im+going in+$ in+back in+both in+lower in+pain in+toes
1 injured+my inside+$ into+the is+$ is+bad is+like is+not is+screaming it+early it+goes it+hearts it+is it+just
1 it+really it+started it+was its+not ive+pulled ive+strained jee jeez jeez_ jesus+my just+now knee+and knee+goes
1 knee+hurts knee+locked knee+pain last+week left+, left+arm leg+$ leg+when leg+wont lie+down lift+my like+it like+its
1 like+mad like+that ling ling_ locked+and lot+$ loud+crack low lowi lowin mate+$ me+stop me+with muscle+$ muscle+spasm
1 my+disc my+feet my+shin my+toes n/10+pain nd_ neck+is nee neez neeze no+knee no+wait no+way not+sure not+the now+its
1 numb+patch of+# oh+god on+film on+my on+one one+spot os_ ott otto otton ouch+, ough_ out+, outside+of ow+my owi owin
1 owing pain+. pain+again pain+just pain+when pal parallel+but past+parallel pinch+in pop+in popped+out position+$
1 pulled+something put+weight quite+painful racked+it raw rawl rawli re_ really+bad really+hurt really+hurts ret
1 right+at right+now ro_ rolled+my rpi rush rushe sideways+$ since+# since+that since+the sit+bone ski sne snee sneez
1 so+bad something+go something+in something+pop something+sharp something+tear spa stab+in stabbing+in started+$ ste
1 stick+$ still+numb stood+up stopping+$ strained+something strong+pain tal tbh+$ that+$ thats+pain the+ankle the+fold
1 the+inside the+lower the+old the+shin the+start the+stick then+it then+my there+is theres+a theres+pain thi think+,
1 this+is this+time tho ths thst tight+as tingles+in tingling+down tingling+in to+bail to+be to+lie toes+went top+of tto
1 tton tton_ tweaked+something two+, ugh_ up+from ure ure_ urn ush ushe ushed ute_ was+bad we+stop when+knee win wing
1 wing_ wli wlin wling wobbly+and woo wool wool+$ wool_ yes+it zero+· ·+as ·+just ·+on
2 #+no ,+about ,+right .+right =actual =asleep =at =bend =bone =cap =carry =complained =cut =damn =deep =did =every
2 =feel =ffs =for =glute =grief =halfway =here =holding =home =horrible =huts =i =inside =isnt =it =jelly =jesus =kind
2 =kneecap =lift =lump =man =might =nasty =nearly =patch =pin =pinching =pop =raise =real =rip =shift =slipped =snap
2 =stabbed =straighten =stupid =suddenly =tailbone =that =thats =tightness =told =too =triggered =waist =we =whole =woke
2 =wrecked =zapped ^+ahhh ^+big ^+bloody ^+damn ^+getting ^+hamstring ^+jesus ^+l ^+little ^+might ^+only ^+pinching
2 ^+put ^+shit ^+slipped ^+stopping ^+that ^+thats ^+too ^+very _bas _ca _cap_ _com _comp _coug _ju _la _pat _patc _re
2 _stup a+muscle a+rip ache+in aine ained an+old and+its ankle+pain ap_ arm+feels at+the atch_ back+gone bar+$ bas
2 bone+$ but+ow but+painful but+toes came+down cant+lift cap+$ cap_ carry+on com comp compl complained+$ coug cough
2 cramped+up cramping+up dead+$ did+$ do+$ done+but down+below down+hard down+into eez ele ess_ feel+the feels+funny
2 feels+like feels+odd felt+it from+under front+$ gone+again good+, got+me halfway+$ has+gone have+pain head+is
2 heard+something heart+is hip+hurts hip+locked holding+the hurt+, hurt+my hurt+on hurting+a hurting+me hurts+, hurts+a
2 hurts+right hurts+too i+bend i+brace i+heard i+walk im+injured in+calf in+foot ine ined ined_ into+spasm is+#
2 is+giving is+gone is+hurting is+playing is+sore is+throbbing isnt+right it+$ it+to its+hurting ive+done just+did
2 just+done just+gave just+locked ken ken_ kneecap+$ knees+$ lai lain laine left+hip leg+tingles legs+went let+go
2 like+an like+hell lot+of lump+on lying+on me+grief me+to mpl mpla mplai my+big my+left my+tailbone my+thigh my+waist
2 ned ned_ no+, no+thanks of+my off+the oh+no old+man omp ompl ompla one+got one+hurts oug ough out+on pain+, painful+at
2 painful+to pains+in pat patc patch patch+on pid pid_ pinch+at pis pla plai plain ppi ppin pping pulled+a rep+$
2 right+down right+in sharp+pain shift+$ shin+$ shock+down si+joint sit+$ slipped+and something+$ something+move
2 sore+knee spasm+in stabbed+me stop+, stop+my strained+my stup stupi tailbone+$ tch_ test+$ that+hurts that+was
2 the+back the+bum the+hip the+last the+outside the+second theres+no thing+again think+ive think+something tingling+now
2 to+carry to+quit to+say to_ told+me too+much too+painful tup tupi tupid twinge+in ugh up+straight upi upid upid_
2 wall+to was+painful went+down went+into went+numb what+do without+pain zing+in 😖+😖
3 #+but #+maybe #+pain ,+bad ,+had ,+painful ,+stopped .+$ =again =ahhh =air =area =around =bailed =blurry =breathe
3 =catch =completely =doesnt =doing =dull =early =gets =hot =if =is =kicked =kinda =loud =night =odd =of =over =pinches
3 =properly =rucken =rush =saddle =second =shifted =shin =short =skipped =some =stabby =stopping =strange =take =there
3 =theres =to =toe =turn =twinged =vice =when ^+agony ^+bailed ^+burning ^+disc ^+dizzy ^+down ^+dull ^+gets ^+giving
3 ^+going ^+ive ^+leg ^+loud ^+neck ^+nerve ^+shoots ^+something ^+sore ^+stuck ^+threw ^+walking _ruc _ruck a+crack
3 a+pop a+sharp a+vice again+same all+tingly and+dizzy and+hot ard_ are+tingling area+feels back+again back+did badly+$
3 between+my bit+sore blurry+$ breathe+$ burning+in but+a cant+catch cant+put cant+turn cken cken_ deep+in did+a disc+is
3 dull+ache each+rep feel+faint foot+feels from+my gave+$ going+to heard+it heel+$ hell+$ hurt+at hurt+though hurts+now
3 hurts+on hurts+when into+my is+aching is+acting is+going it+go just+went killing+$ knee+just knees+are left+.
3 left+foot left+leg leg+turned les lift+it like+my me+$ me+in my+backs my+groin my+knee my+low myself+$ needles+$
3 night+$ no+my nope+, not+stretch of+a one+hurt out+again out+for ow+ow pain+now pain+than pins+and properly+$ pulled+i
3 rd_ ready+but really+badly right+# right+$ right+hurts right+one room+is ruc ruck rucke rucken+$ saddle+area same+pain
3 seized+up sharp+$ shit+my shoots+when so+much something+snapped spine+$ stand+up straighten+up that+hurt that+one
3 the+bottom the+groin the+joint the+pain think+im tight+, tight+and to+jelly to+sit to+stand toe+$ turned+to tweaked+my
3 twinge+on ucken up+after vice+$ way+$ weak+$ weird+$ went+tingly went+weak worse+$ wrong+$ ·+left
4 !+! #+and #+out ,+cant ,+felt ,+hurt ,+left ,+not ,+sharp =about =band =breath =clicked =dead =discomfort =exactly
4 =fuzzy =getting =hell =hold =id =injury =killing =l =locked =much =place =right =stop =sudden =wet =wobbly ^+cut
4 ^+deep ^+doesnt ^+groin ^+having ^+it ^+nearly ^+numb ^+old ^+pains ^+pinch ^+really ^+shooting ^+spasm ^+stab ^+there
4 ^+wet ^+wrist ^+zap ^+😭 _ab _l_ a+# a+stab a+sudden again+$ again+, all+of at+all back+$ back+hurts backs+gone bend+$
4 bent+over bum+to cant+bend cant+stand cm+, crushed+my did+my down+my down+to dropped+the electric+shock feel+fuzzy
4 feel+like felt+like fuzzy+$ go+down go+lower got+# hamstring+$ hard+on having+a hurting+now id+say is+killing is+numb
4 is+out is+tingling it+burns it+hurt it+shoots its+pain king king_ knee+gave left+# left+side leg+went legs+$ lift+$
4 lifted+$ lost+feeling low+back made+me move+$ my+bum my+foot my+legs my+sciatica not+ok of+pain off+$ ok+, one+is
4 over+$ pain+at pain+is pain+not place+$ pulled+up put+my screaming+$ shoots+down short+of skipped+$ snap+$ sore+in
4 spot+is started+hurting stop+i stopped+, stretch+$ sudden+$ tear+$ that+rep the+left the+low the+thing there+was
4 tight+$ time+i tingly+$ toes+$ toes+feel too+sore under+the up+$ up+now was+a wasnt+good went+from zap+down zing+$ 😭+$
5 #+, #+ouch #+right #+then ,+hip ,+hurts ,+my =aching =achy =an =bit =burning =chest =crunch =dodgy =double =duele
5 =felt =fire =having =head =in =into =its =ive =jab =little =niggle =nip =old =pins =playing =put =range =really
5 =screaming =seeing =shooting =shoulder =sit =tear =then =thing =walk =wrist =zap =😭 ^+cramp ^+feel ^+hip ^+knee ^+made
5 ^+me ^+numbness ^+painful ^+pulled ^+seeing ^+so ^+stabbing ^+still ^+swollen ^+tender ^+toes ^+woke a+snap a+stretch
5 achy+$ and+needles back+has back+on back+spasm back+wont because+of bum+$ burns+$ but+my ca_ cant+move chest+is
5 cramp+in crunch+$ end+of feels+dead felt+the fire+$ get+up got+a havent+been home+$ i+lifted i+think im+in in+the
5 is+paining is+spinning it+catches joint+$ just+cramped killing+me last+test leg+feels leg+gave locked+$ locked+up
5 me+duele numb+down numbness+in on+fire on+the pain+# range+$ rep+# seeing+double spot+on stand+$ stop+at than+a
5 the+leg the+range then+a think+i twinge+$ walk+$ yes+but ·+but
6 ,+back ,+knee ,+pain =ache =acting =because =bloody =bum =but =eyes =fainted =feeling =flared =grabbed =groin
6 =happened =heart =just =leg =more =oww =rep =shock =sleep =slight =started =threw =up =walking =wasnt ^+au ^+electric
6 ^+fuck ^+head ^+heart ^+hurting ^+like ^+muscle ^+oww ^+shoulder ^+slight ^+strained ^+think ^+tingly a+twinge a+zing
6 acting+up at+# back+just back+seized bad+$ breath+$ but+it came+over cant+breathe chest+$ fuck+$ gave+out
6 happened+again heard+a hip+$ hip+is i+cant i+felt in+bits it+throbs kin my+chest nearly+fainted no+feeling no+it
6 not+happy of+breath out+$ pain+in painful+on pass+out pinch+$ playing+up pop+$ pulled+my right+on sets+off spinning+$
6 stuck+on the+front the+spine threw+up to+hold to+my to+pass toes+are tweaked+it under+me 😣+$ 🤕+$
7 =, =aargh =and =aua =badly =bits =bruised =buckled =cramped =electric =everything =excruciating =foot =fuck =gave
7 =grabs =has =landed =made =numbness =owie =pee =shit =shoots =stuck =swollen =tender =whoa =yeowch ^+aargh ^+aua
7 ^+backs ^+bruised ^+cramping ^+everything ^+excruciating ^+hurts ^+injured ^+landed ^+more ^+oh ^+owie ^+rolled
7 ^+sharp ^+throbbing ^+tingling ^+whoa ^+yeowch a+second cant+get cant+straighten chest+feels excruciating+$ feel+my
7 feels+wrong felt+something foot+$ gave+way hip+says hold+the in+agony knee+$ knee+is leg+just my+ankle my+calf my+neck
7 my+spine not+feel owie+$ paining+$ round+the says+no seized+$ stop+$ that+wasnt the+foot tingling+$ use ut_ yeowch+$
8 =. =argh =giving =joint =muscle =my =needles =oh =spasming =spinning =stand =strained =think =toes =tore ^+argh ^+bad
8 ^+hammy ^+heard ^+its ^+ow ^+pins ^+tweaked _._ back+locked back+not back+out giving+me gone+$ injured+$ is+back
8 is+tight left+one my+hip not+good pain+on since+$ spasming+$ throbbing+$ went+$ 😖+$
9 =back =bad =bites =blacked =burns =feels =flare =hammy =mal =myself =nerve =pinchy =popped =pulled =weird =went =worse
9 =😖 =😣 =🤕 ^+sciatica ^+😖 ^+😣 ^+🤕 after+that agony+$ ankle+$ blacked+out cramp+$ dizzy+$ every+time foot+is funny+$ l+#
9 more+than neck+$ not+a when+i ·+that
10 =aches =au =catches =cramping =doi =faint =heard =pains =throbbing =throbs =tweaked ^+doi ^+hurt back+went faint+$
10 had+to in+my my+leg no+$ ouch+$ sore+$
11 =ankle =going =injured =me =neck =pinch =seized =spot =zing ^+ouch felt+a hurting+$ my+back spasm+$ the+bar
12 =backs =down =funny =paining =tingly numb+$ tingles+$
13 =cant =disc =gone =knee =sciatica =since =spasm =spine =stab =stabbing =tingles =twinge back+is down+the it+hurts
13 ow+$
14 =dizzy =hip =like =sharp painful+$
15 =tingling
16 =agony hurt+$
18 =ouch =sore ^+pain pain+$
19 =cramp hurts+$
20 =something
21 =ow
24 =hurting
25 =numb =painful
27 =hurts
28 =hurt
31 =pain
"""
