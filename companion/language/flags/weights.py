"""The weights of ``classifier``: fortieths of a log-odds for any flag (under ""), sixths for each.

Written by tests/corpus/learn.py; not by hand.
"""

FLAG_WEIGHTS = {
    "": (-77, """
-27 ^+no
-19 ^+· t_
-18 #+#
-17 ·+, ¿+$
-16 do+i of+the
-15 ^+can ^+not _de it+in
-14 #+and .+$ =bar ^+# ^+back ^+every _bar_ _mov now+$
-13 #+, ^+how _fi _s is+# left+$ to+#
-12 ,+all ^+in ^+nothing ank bar_ dri her_ mov pain+$ tap ull
-11 =give =good =· ^+didnt ^+never _fil _hu _· _·_ a+week all+$ ara fin give_ good_ nch rid years+ago ·_
-10 #+march =can =or ^+$ _bar _cal _can_ _fin _mea _move _or_ _read _set _tap ha han i+dont mea mind red_ set ter_
-9 =cm =fine =hurt =¿ ^+feels ^+felt ^+stop ^+that _cm _cm_ _fine _gi _pai _ses _sess _wall _¿ _¿_ ance_ and+# ap
-9 chest+up e_ emin emind ers es ess fi fine fine_ gi giv hee hurt_ im+in ist last+year lunge nge numb+from ove_ ow_
-9 remin sess sessi sy time+$ urt_ wall y_ ¿_
-8 =end =garage =gym =heels =madrid =meant =wall ^+about ^+chest ^+dead ^+do ^+it _app _cha _end_ _gar _gara _giv _gym_
-8 _hee _heel _hi _lo _lun _madr _ne _nor _pain _pho _pop _se adri adrid ago+, ak_ arag arage are_ back+to box+$
-8 cant+tell ch_ down+$ drid drid_ ds_ eant eant_ eet_ el_ etc etch feel+my gar gara garag gym_ ha_ has+· heel heels
-8 iday k_ keep+my lun madr madri meant med_ move nders nds numbe o_ pop rage rage_ ram retc retch rid_ right+$ rp rst
-8 stret tell+$ the+# the+bottom the+evening the+floor the+morning the+right today+$ tret tretc ty unge unt up urt ute
-8 wall_ ym_
-7 ,+nothing =between =feet =legs =phone ^+couldnt ^+cutting ^+dog ^+foot ^+half ^+only ^+pulled ^+what _b _ba _cry
-7 _drin _feet _film _give _gl _gol _good _kne _legs _mad _phon _pl _plat _re _remi _t _tape _than _vi about+# adr
-7 all+fine am+$ ape_ at+# ate_ bis can+i cha cm cm_ cry ddi ddin dding ders do_ doctor+said doesnt+hurt done+$ drin
-7 drink eak_ ean elt_ essi essio feet feet_ ff film first+$ give gol good got+it hank hing hing_ hone_ hu i+had ilm
-7 in+madrid ips ips_ is+the itio ition ket leg+$ ll lol+$ m_ nch_ nds_ nic no+pain on+to oor_ or_ pain pe_ phon phone
-7 rag reak reak_ remi str stretch+$ sure sure_ tape than thank ther_ ues umbe umber umpe wa ween_ went+to
-6 #+am #+pm #+x ,+just ,+long ,+lost =always =as =checked =coach =early =kill =lifted =limits =minute =pm =remind
-6 =sessions =set =skip =so =tape =training =wants =wife ^+did ^+doesnt ^+go ^+same ^+stick ^+weight _alw _alwa _ap _as_
-6 _bro _coa _coac _crea _cu _earl _h _hur _hurt _is _ket _kil _kill _knee _lift _ma _ni _nic _nice _ph _pic _pm _pm_
-6 _qu _rem _rou _sat _set_ _sha _sle _so_ _stic _tha _twe _ty _wif a+stretch ach ach_ ack_ ah aha aha_ ains ala alan
-6 alwa alway ame anks ap_ ashe aye bar bb been+lifting bel between+# bro cal can+feel cat cleared+me coac coach cor
-6 crea ct_ derst ds ecke ecked ees end_ ered ered_ ers_ erst for+a for+the for+today fri fted fted_ hanks hecke hon
-6 hone hurt i+hold i+meant i+stopped iday_ iff_ ifted igh imits inch kil kill kill_ kip_ knee late lb leg+day lifte lli
-6 lm_ loc lock lor lowe lower lwa lway lways med min min_ mind_ mits mits_ mpe nap nches nge_ nges nges_ ngle_ nice nks
-6 no+tingling not+numb nute_ oac oach oach_ olid on+# op_ or ork ork_ ount_ out+$ pai pic plat plate pm_ qua r+# rack
-6 red rem remind+me ren rk_ set_ sha sho sions skip_ so_ stick sts sts_ sy_ ta_ tape_ tes test+$ tha that+was the+bike
-6 the+calf the+gym the+new the+tape to+it to+the twe upr wants ward_ way ways ways_ weeks+$
-5 #+not ,+nobody =balance =brb =break =calf =do =film =fold =four =go =haha =hand =held =hips =his =hour =inches =lets
-5 =lower =lunges =move =nine =number =one =painful =picture =plates =quads =real =rep =rounding =run =shoes =shot
-5 =skipped =stayed =stick =stretch =thanks =till =tired =video ^+before ^+bum ^+dont ^+leg ^+pause ^+phone ^+sitting
-5 ^+skip ^+tap ^+tight ^+yes _a _abo _bala _bot _brb _brb_ _calf _dep _do_ _four _free _fri _go_ _gran _gym _hah _haha
-5 _han _hand _hel _held _hips _his _his_ _inch _lets _loc _lock _loos _lowe _lung _man _mean _meas _na _one_ _pau _pict
-5 _pres _pull _rac _rep_ _roun _run_ _scor _scre _sho _shoe _sis _sist _skip _slo _slow _smo _son _spa _sti _stop _till
-5 _tir _tire _vid _vide _wal _wed _wide _wife _wob _wobb _work a+big a+minute a+year abo acte acted ainf ainfu alanc
-5 anks_ any ape arch arch_ ashed asu asur ativ ative aus ause ayed ayed_ bala balan bed+$ before+the ble_ bot bou brb
-5 brb+$ brb_ break break+$ breath+and but+they calf calf+$ calf_ cel cr cra cre creen d_ dad+had deo deo_ dep ding
-5 ding_ do+this doctor+says dr dy_ eal_ easu easur eave eet eld eld_ ella end end+$ ends ends_ epe etch_ fil film_
-5 fold_ four four_ free ful full garage+is gged gged_ ghe give+me gl gle_ good+$ got+up gran grand gym had+my had+· hah
-5 haha haha_ hand hand_ hel held held_ hig high hips hips_ his his_ hit+# hoe hoes hoes_ hold+on hour_ how+far hur
-5 hurt+$ i+can i+did i+pee ict ictu ictur ideo ideo_ ids_ ighe ilm_ in+a in+· infu inful inge ippe ipped is+a is+my
-5 it+wont kip kippe know+$ lanc lance lates lift lifting+shoes lig ligh light ll_ llin lling loos loose lung lut lute
-5 madrid+for me+a me+anymore mean meas measu min+$ minute+$ mme move_ mped mped_ my+doctor n_ nday ndays never+had nfu
-5 nful nful_ nine nine_ nk nks_ no+$ not+$ not+me not+yet nts nts_ obb obbl oke ome_ one+$ one+sec oos oose orm ou ount
-5 ous_ over+$ p_ pa_ painf pau ped_ pict pictu plates+$ pm problem+$ pull quads quatt rack_ rain rd_ read real_ reen
-5 reen_ rent ret rie right+side ro rong rong_ rounding+$ rter_ rtin rting run_ sat scor scre scree sessions+$ shoe
-5 shoes shot_ sist siste sitio skip slo slow smo so+im son+is sorry+$ spa squat+days st staye still+at stop
-5 stopped+when ta tak take_ taye tayed that+right the+end the+side thing tif tir tire tired tomorrow+$ uads uads_ uar
-5 uatt uit ull_ umped under+my ung unges unt_ usi ute_ vel vide video ward way+down wed wide wob wobb wobbl years+$
-5 yes+, zer ·+on
-4 #+cm #+lb ,+always ,+now ,+ready =app =are =bench =box =camera =count =dad =data =day =depth =drink =easy =evening
-4 =felt =glutes =gonna =great =happy =holiday =it =knees =lb =lost =mat =min =mondays =moved =nice =none =open =outside
-4 =pass =pause =pelvis =pinch =piss =planned =program =question =ready =rounded =sat =screen =send =session =shorts
-4 =sister =slow =some =start =stiff =stop =ten =wedding =weekends =wrong =years ^+around ^+by ^+dad ^+disc ^+ill ^+l
-4 ^+last ^+lifted ^+nope ^+numbers ^+ok ^+pelvis ^+two ^+weak ^+wife _any _app_ _are_ _beg _benc _bet _bis _bisc _box_
-4 _char _chec _clu _co _cont _cr _cra _crac _dad_ _data _day_ _dept _did _dri _ear _eas _easy _elb _elbo _felt _ful
-4 _full _glu _glut _gonn _grea _gri _gy _ham _he _hig _high _hol _holi _hou _it_ _kett _lb_ _leg _lost _marr _mat_
-4 _min_ _mond _movi _mu _nei _nin _nine _non _none _outs _pa _paus _pla _prog _qua _ques _rea _resu _sat_ _scr _sen
-4 _send _ser _shoo _slee _sna _snap _so _sore _stif _stro _tail _ten_ _tim _time _tor _tra _tuc _tuck _tue _tw _twea
-4 _unc _usu _usua _wedd _wid _wron a+bit a+box a+break a+cold a+good a+lot a+night a+· ady ady_ affi after+# ains_ alli
-4 always+have amer amera and+a and+fri and+still anything+$ app_ are+good are+my are+you arke arl arly arly_ arp
-4 as+ever asy asy_ at+all ata_ ater_ au ause_ ay beg benc bench bet bisc biscu book camer can_ cant+see ce_ char chec
-4 check cki clu cm+$ coun count crac crack cted cted_ cui cuit dad_ data data+$ data_ day day+$ days+$ dept depth did
-4 din dy eady eady_ eal earl early easy easy+$ easy_ ect_ edd eddi eddin ees_ ega el elb elbo elbow elvis enc ench
-4 ench_ enty enty_ epth epth_ era_ err esse esu ettl ettle eveni ever+$ feeling+it felt felt_ ffe floor+$ for+# frida
-4 friday+# friday+at fully ges ges_ gge gh ghs ghs_ glu glut glute go+$ gone+, gonn gonna gra gram gram_ grea great gri
-4 gs gs_ haha+$ ham happy has+a have+it hec heck here+, hirt holi holid hoot horse+, horts hurt+to i+give i+skipped
-4 i+squat i+train ibl ible ible_ ida iff ights ille im+a im+back im+good in+$ in+here inch_ io_ ire ired ired_ is+in
-4 is+there iscui ista ister it+went its kends kett kettl kne knees lack_ lank_ lanne last+rep lb_ lbo lbow lear leave
-4 leeds lel lel_ lets+go lic lick lida liday like+an lled lled_ locke lose lost lost+# lost+my lost_ lt_ lunges+$ lutes
-4 lvi lvis lvis_ mad marr marri mat_ mbe mber meant+# mer mera mera_ mist mm mond monda movi mu mur my+data my+hand
-4 my+heel my+sister my+thighs nce_ nche nees nees_ nei never+been nice_ nin nna no+numb no+numbness no+problem non none
-4 none_ normal+$ not+really nothing+now nty nty_ ny off+my off+with ogr ogra ogram olida on+a onday one+more ong ong_
-4 onn onna onna_ ooke oor open_ oppi oppin orm_ ose oth ott ouch_ ounde oundi our out+in out+of outs outsi ov over+my
-4 ovi ovin oving paus pause ped pelvis+tips pen_ pho piss_ pp_ press prog progr pth pth_ quar quat ques quest
-4 question+$ r_ race ram_ rand rate+# re_ ready+$ reat_ ree reps+$ resse resu rida riday rite rite_ rns rns_ rog rogr
-4 rogra rok roke roke_ rou roun round rro saddle+for said+$ sat+on sat_ scr scui scuit sdays sec+$ send send_ set+$
-4 shoo shoot should+i since+$ since+i six+$ slow_ sna snap some_ sore squat start started+$ sti stif stiff still+$
-4 stop_ sua sual tail tart tart_ tchi tchin tea terr than+# thanks+$ the+fold the+garage the+next the+sofa the+wall
-4 then+$ think+so tice_ tick_ tiff tiff_ tim time tonight+, top_ tsi tsid tside tuc tuck tue twea tweak two+weeks ua
-4 uat ucke uest uesti ully ully_ unded undi undin unti up+$ urns urns_ usu usua usual utsi utsid ved ved_ veni venin
-4 vis_ wedd weddi weight+for wen went wid wif wife_ with+the wobbly+on wron wrong ya years you+said yre yre_ ·+no
-3 #+after #+i #+l #+now #+of #+on #+r #+seconds ,+back ,+fine ,+good ,+ive ,+my ,+still .+the =above =angle =anything
-3 =battery =belt =bike =bottom =broom =crashed =crying =death =deeper =desk =discs =doctor =does =done =drinking =dying
-3 =ego =else =erection =every =face =flight =form =fully =guess =hamstring =hate =hey =is =job =join =later =lisbon
-3 =locked =lol =loose =lot =lovely =lunch =making =mid =mirror =missed =mon =morning =murder =need =neutral =new =no
-3 =normal =numbers =once =parallel =pins =please =point =pop =popping =pr =pressed =private =pulled =quarter =quick
-3 =rack =rain =reached =read =reminders =results =same =sec =sets =she =shop =shoulders =signal =sitting =six =slipped
-3 =socks =somewhere =sore =space =stance =starting =stroke =sure =tap =tea =thighs =thing =tight =tips =toddler =touch
-3 =traffic =tue =understand =until =usual =wanted =who =wide =will =wobbly =yeah =yep =york ^+all ^+ankle ^+asleep ^+at
-3 ^+battery ^+bones ^+calf ^+crushed ^+enough ^+fall ^+feeling ^+friday ^+front ^+going ^+gone ^+hard ^+heart ^+hey
-3 ^+hit ^+hold ^+isnt ^+its ^+kids ^+left ^+low ^+lower ^+mon ^+mondays ^+move ^+my ^+next ^+off ^+other ^+peeing
-3 ^+people ^+power ^+r ^+racing ^+sat ^+shot ^+somewhere ^+spine ^+stopped ^+take ^+wait ^+well ^+yep _abov _add _angl
-3 _ank _ankl _anyt _batt _belt _bik _bike _book _bott _broo _bus _cat _cav _cave _cou _coun _cow _cre _cryi _deat _del
-3 _desk _din _dinn _done _doo _door _dril _dro _drop _dyi _dyin _eg _ego _ego_ _elev _er _fat _fav _favo _fing _flat
-3 _flig _floo _form _gue _gues _hate _heal _hey _hey_ _hour _inc _is_ _je _job _job_ _k _laug _lear _lisb _lol _lol_
-3 _lot_ _lunc _maki _mee _meet _mess _mid_ _milk _mirr _mon_ _mur _murd _n _nap _neu _neut _new_ _no_ _norm _noth _o
-3 _onc _once _open _ow _own _para _park _pel _pelv _pins _plan _ple _plea _poin _pop_ _popp _pr_ _pum _pump _quar _quic
-3 _r _rack _rain _reac _rep _ro _sam _same _sec_ _sets _shar _she_ _sitt _six_ _sl _sn _sof _spac _spot _squa _sure
-3 _tap_ _tea_ _tex _thir _tips _todd _ton _traf _trai _tue_ _typ _unt _unti _us _w _warm _watc _wear _who _who_ _wro
-3 _ya _yeah _yep _yep_ _yor _york a+min a+new able_ about+ten abov above ace_ ached act_ afet aff affic after+a agi ago
-3 aig ain_ aini ainin alf allel alw am am+i ams and+have and+no and+thats angl angle ank_ ankl ankle anne anned
-3 any+pain any_ anyt anyth ar_ aral arall ard_ are+# aring arked arn arned arrie arti artin as+i at+it ata ath ath_
-3 athe ather baby+is back+and back+now back+stayed bad+$ bad+back bar+, batt batte bbly bbly_ before+my bell belt belt_
-3 bers bers_ better+$ ble bo bon_ boo bott botto bottom+$ bov bove bove_ box_ broo broom bumpe burg bus but+ok
-3 but+thats came+back cant+get cav cave chest+, chin clinic+$ come+up comf count+$ cow cros cross cryi cryin crying+$
-3 cte days days_ dd ddler deat death deepe del der desk desk_ did+it did+not dinn dinne discs dl dler dler_ does+the
-3 does+this does_ doing+the dom done done_ dont+have dont+know doo door dril drill ead eah eah_ eans eans_ eari earin
-3 earn earne ears ears_ eating+like eav ec_ eepe eeper eer eff effo ego ego_ eith eithe ele elev ells ells_ else+$
-3 else_ elvi emi enin ening eper eper_ ept er_ erection+, ersta ese ese_ esk esk_ essa essag essed estio ests ests_
-3 esul esult eting eut eutr eutra evening+$ ewh ewhe ewher face_ fat fav favo feel+a feel+it feels+tight felt+my fet
-3 ffi ffic_ fic_ fine+$ fing finge flat flat+$ fle flig fligh floo floor fold+$ form_ fort_ freez fri+# from+the gh_
-3 give+up glutes+$ gnal gnal_ going+to gonna+· got+to great+$ gue gues guess guess+$ hai hair hair_ har harp hat hate
-3 hate_ he heal heat highs hip hop_ hor hour how+do i+could i+guess i+know i+missed i+said ich ich_ icki ide ids ied
-3 ied_ ighs ighs_ igna ignal ilk illed ilo ils ils_ im+fine im+just imi imm in+new inches+$ inder inger ings ings_ inin
-3 ining ins_ inst instead+$ ints ints_ inu inut inute irro irror is+good is_ isb isbo isbon iscs iscs_ iscu iste istr
-3 ithe ither its+# izz january+, job job_ join_ just+a just+came just+went kilos+$ knee+$ lank lasse last+one last+time
-3 later laug laugh lders learn leas lease led led_ lee left+# left+is legs+are let+me lets lets_ lim lisb lisbo
-3 little+$ lla llel llel_ lo_ lol_ long+does loor lot+$ lovel lower+$ lower+back lts lts_ lu lunc lunch lw maki makin
-3 mark mas mas_ mat mbers mean+, mee meet mess messa mew mewh mewhe mf mid_ milk minde mins+$ minut mirr mirro mirror+$
-3 misse mon_ mondays+and moved much+$ murd murde my+balance my+ego my+heels my+hips my+knees my+phone my+ribs nai nap_
-3 napp nc ndi need+a need_ nel neut neutr new+rack new+york next+$ nkl nkle norm norma not+at nothi nse nse_ nta ntil
-3 ntil_ numb+on nute nyt nyth nythi obbly obl oble oddl oddle off+$ oint oint_ oks oks_ olf omew omewh omf oms on+,
-3 on+holiday once once_ onda one+leg oni ood_ ook ooks ooks_ oom oose_ open or+anything ormal orts orts_ othi othin
-3 ottom ous oved oved_ ovel ovely paint para paral parallel+$ park pause+for pelv pelvi pers phone+$ pins pins_
-3 pinsandneedles+in plea pleas pm+$ poin point pop_ popp poppi pott power+went pr_ pres pro program+$ pulle pum pump
-3 quads+$ quart quic quick quick+$ ra raf raff raffi rai rain_ raini ral ralle rashe rav reac reach reached+the read_
-3 reat rect redo reez ress resul right+back rink rive rm_ rmal rmal_ rnt ron room ror ror_ ross ross_ round+$ rpe rror
-3 rror_ rsta rstan rubbish+$ run safet sam same same+as same_ saturday+# sb sbo sbon sbon_ scs scs_ sec_ ses sets sets_
-3 shar sharp she_ shop_ signa sion siti sitt sitti six_ sle slipped+off so+i socks socks+$ sof sol somew sore+from
-3 sore_ spac space spot squa squatting+$ ssio ssion stab stabl stanc stea stead ster_ stic stio stion stl stop+for stra
-3 stro strok strong+$ stuff+$ sual_ sults taki takin tanc tance tap_ tape+$ tar tarti tea_ tead tes_ test tex
-3 the+camera the+car the+cold the+day the+knee the+loo the+mat the+number the+phone the+quads the+question the+shop
-3 there+, thing+$ think+$ think+im thir thirt this+test tight+in till+the tingling+no tips tips_ to+bed to+do todd
-3 toddl toilet+, toilet+and tom_ ton too+long took+the top tr tra traf traff tried+again trok troke try_ tt ttery ttom
-3 ttom_ tue_ twice+a two+years typ uart uarte uary uary_ ue uess uess_ ugh_ uick uick_ uit_ ulle ulled ults ults_ until
-3 up+, up+and upl ur_ urd urder urnt usin utr utra utral utti uttin vate_ vell vely vely_ walking+$ wanted+to warm
-3 warm+up watc watch wea weake wear week+$ weekends+only weights+$ well+$ when+my who who_ wide_ wife will_ wro yeah
-3 yeah_ year+$ yep yep_ yor york york_ you+$ ys_ ·+and ·+from ·+i ·+of ·+or
-2 #+december #+deg #+each #+for #+inches #+ish #+kilo #+out #+sec #+sharp #+then #+times ,+gone ,+lovely ,+or ,+out
-2 ,+same ,+tried ,+¿ =about =ankles =any =anywhere =arch =arent =arm =backs =began =bent =berlin =best =better =blowing
-2 =both =buckets =bum =by =calves =cancel =cat =chair =chilling =clinic =coffee =control =core =could =counting =couple
-2 =crack =crease =cutting =december =deg =did =didnt =died =doms =door =drills =dropping =drops =easier =effort =elbows
-2 =eleven =falling =falls =filmed =fingers =five =flat =flexible =floor =forward =free =friday =fridays =front =fusion
-2 =grass =hard =hasnt =healed =healthy =her =hes =home =hurting =instead =ish =itself =january =jeans =july =kick
-2 =kneel =leave =level =lifting =lifts =lights =load =lose =man =manage =meeting =monitor =near =neither =never
-2 =nothing =painless =paint =park =past =pic =plank =practice =proper =pumped =quit =rate =redo =repeat =restrictions
-2 =rounds =rubbish =salt =say =scar =sciatica =seconds =seven =sharp =shoot =shooting =single =sleep =slept =snapped
-2 =sofa =son =spain =squatting =stable =steady =strap =stuff =terrible =tests =them =these =timer =times =tingling
-2 =toast =tomorrow =town =try =tuck =tues =tuesdays =tweaked =twinge =uncle =wagon =ward =watching =wearing =which
-2 =wider =wink =workout =works =yes =zero ^+after ^+are ^+away ^+bar ^+been ^+belt ^+big ^+breath ^+breathe ^+cancel
-2 ^+cat ^+change ^+chilling ^+crack ^+does ^+doms ^+dying ^+elbows ^+eleven ^+feet ^+fingers ^+gave ^+getting ^+gonna
-2 ^+gym ^+havent ^+help ^+hip ^+hips ^+is ^+jeans ^+knee ^+leave ^+lets ^+lifting ^+light ^+lol ^+mum ^+need ^+neither
-2 ^+new ^+painful ^+paint ^+please ^+popping ^+push ^+quarter ^+saturday ^+sciatica ^+screen ^+should ^+something
-2 ^+sorry ^+started ^+stiff ^+strap ^+strong ^+this ^+toilet ^+tried ^+tue ^+tuesday ^+tweaked ^+video ^+wall ^+way
-2 ^+went ^+when ^+where ^+which ^+who ^+will ^+with ^+wobbly ^+wrong ^+zero _ab _abou _any_ _anyw _arc _arch _aren
-2 _arm_ _aw _bega _begi _ben _bent _ber _berl _bes _best _bett _boo _boot _bos _both _bou _bum_ _burn _by_ _calv _cat_
-2 _cath _cel _cell _chan _chee _clea _cloc _clos _cof _coff _comp _core _coup _cram _cutt _dat _dea _dece _dee _deep
-2 _def _deg_ _deli _dia _did_ _didn _died _dod _dodg _dom _doms _dy _easi _ef _eff _effo _ere _erec _exac _exc _excu
-2 _fac _face _fair _fall _feb _fis _fiv _five _fla _fle _fol _fold _forw _fou _fr _fre _frid _frie _fron _fusi _gal
-2 _gall _gla _glas _gras _hams _hard _hasn _her_ _hes _hes_ _hip _hold _hom _home _hum _hun _hung _inst _int _ish _ish_
-2 _itse _janu _jea _jean _jel _jell _jo _joi _join _jul _july _kn _lad _lau _lb _leav _let _limi _link _lis _lit _loo
-2 _lose _lot _lu _man_ _mana _mark _minu _mir _moni _morn _musc _neig _neit _nev _neve _no _ope _past _pic_ _pinc _plac
-2 _posi _prac _que _race _rate _redo _reg _repe _rid _run _rus _saf _safe _salt _satu _say_ _sci _scia _sens _shak
-2 _shop _shor _sing _slep _sofa _sol _son_ _spai _spl _spli _stab _star _stea _stu _stuf _sy _tel _tell _ter _terr _tes
-2 _test _text _them _thes _thig _tig _tigh _toa _toas _tod _town _tru _try_ _twen _twis _uncl _vie _view _vo _wag _wago
-2 _ward _what _whic _wink _wors _wr _y _yes_ _yo _yu _ze _zer _zero a+couple a+diet a+horse a+meeting a+pain a+wee ab_
-2 abou about above+$ aced aced_ acker actic ading afe after+$ after+that against+my agin agon agon_ aigh aight ain ainl
-2 ainle aled aled_ alf_ alke all+clear all+normal all+week allin alt alt_ althy alves amb amst amstr anag anage anc
-2 ancel and+back and+down and+fridays and+got and+kg and+not ans_ ants ants_ anua anuar any+stretch anymore+. anyw
-2 anywh anywhere+$ app aren arent arm arme arne arp_ arpe as+soon as_ ased ased_ asie asier ast_ at+my atchi ater atica
-2 atte atti attin atu atur aturd augh ave away+# ays_ back+from back+moved back+rounded back+started bar+$ bar+and bbe
-2 bbi bbis bbish bbl be+right because+my because+of bega began begi begin behind+on bell_ ben bent bent_ berl berli bes
-2 best best_ bett bette bish bish_ bit+on blowi boot bos both both_ bour bout bout_ bows bows_ brace breathe+out bru
-2 bum_ bur burge but+good but+not butt+wink cale calv calve can+lift can+we cann cant+erection cant+find cant+make
-2 car+park care_ carrying+the cat_ catch+the cath cel_ cell cemb cembe chair ched chee chees chest+and chilling+on ciat
-2 ciati ckets cle_ clea clini cloc clock clos close cm+and coa cof coff coffe comp compl conds cont contr coo core
-2 core_ corr could+be couldnt+get coup coupl cow_ cram cramp ctic ctice cup cuse cutt cutti dark+$ dat ddl ddle
-2 dead+tired dece decem dee deep def deg+$ deg_ deli dent depth+$ diagnosed+with did+# did_ didn didnt didnt+feel died
-2 died_ dist dit dm do do+you dod dodg does+it doms doms_ dont+feel door_ drop drops dt dyi dyin dying each each+$
-2 each_ eadi eadin eale ealed easi easie eate eave_ ece ecem ecemb edo_ ee eeke eeken eese eeti eetin effor egan egan_
-2 egin eh_ eighb eit eke eken ekend eles eless eleve elv eme empty+bar end+the ene ened ened_ enough+$ enti eo_ ep_
-2 epea epeat ere erec erect erli erlin ero ero_ erri errib et_ etie eties etin eve evel_ even every+other every+tuesday
-2 eway exa exac exact exc excu excus exib exibl ext fa_ fac face face+is fair fall falli falls feb fee_ feel+any
-2 feels+a feet+$ fere ffee ffee_ ffo ffor ffort fic filme fine+, fis fiv five five_ fla flat_ flex flexi fol fold
-2 foot+, foot+slipped forw forwa forward+$ fou fr fre free_ frid frie frien from+now from+sitting from+work fron front
-2 front+of front+squats fte fusi fusio fy gains gal gall gan gan_ gap+under garage+$ gave+it gave+up ged ged_ ger gers
-2 gers_ get+my ghb ghbo ghbou ghed ghed_ givi givin gla glas go+back go_ gon_ good+session good+set gr gras grass gym+,
-2 had+any had+it hak hams hamst hamstring+$ happened+, hard hard_ harp_ hasn hasnt hat_ have+a hb hbo hbou hbour heale
-2 heart+rate heels+$ heep hees heese help+me hem_ hese hese_ hich hich_ hilli hip+crease hips+feel hol hold home home_
-2 hoot_ hooti horse+$ hort hot_ hours+before huf huff hum hung hurt+at hurti i+cant i+need i+quit i+thought i+work ian_
-2 iatic ic_ ica_ ick_ icti idays idd ide_ idnt idnt_ iend iend_ if+anything ifi ifte ighb ighbo ill_ illi illin ilme
-2 ilmed im+dead im+late im+left im+ready imer imer_ imit in+on inche ind_ iners inge_ ingli ini inic inic_ inl inle
-2 inles ins inste ions ions_ ious_ irl is+broken is+normal is+ok is+rubbish is+this is+where ish+$ iss_ isse issed isto
-2 istol it+a it+did it+used itor itor_ itr its+just its+the its_ itse itsel itself+$ itti ittin janu janua jea jean
-2 jeans jel jell jo joi join jul july july_ ka_ kend kick_ kille kilo+$ kipp knee+bent kneel kou kout kout_ kw lam lar_
-2 last+month late_ later+$ lau lbows lbs+$ lder leav lept lept_ lev leven lew lew_ lexi lexib lia liat liati lifted+$
-2 lifti limi limit lin_ ling lini linic link lke llar lle lmed lmed_ load load_ lol lond loor_ lose_ lost+count lowi
-2 lowin lthy lthy_ lus lves lves_ madrid+until make+it mal_ mana manag mar marke mat+, me+again me+back me+the meeti
-2 mer_ mes_ mins mins_ minu mir mon+wed monit morn morni morning+! morr morro move+$ moved+$ ms mst mstr mstri musc
-2 muscl my+coach my+core my+depth my+feet my+glutes my+hamstrings my+knee my+mate my+son my+squat nag nage nage_ nappe
-2 ncel ncel_ ncl ncle ncle_ nder ndo near_ nee neel neel_ neig neigh neit neith nev neve never never+· new_ nger ngers
-2 ngli nglin nic_ night+, nit nito nitor nkles nles nless nna_ no+, no+pinsandneedles no+trouble none+$ nope+$ not+sure
-2 not+that noth now+on nst nstea nsw ntr ntro ntrol nua nuar nuary numbness+$ nyw nywh nywhe oa oad oad_ oas oast oast_
-2 ocke ocked ocks ocks_ ode ode_ oes_ of+# of+salt ofa ofa_ offe offee oic oice oice_ oids oids_ ok+¿ om_ omorr ompl
-2 oms_ on+· ondi onds onds_ one+was onit onito onsi ontr ontro oom_ oop oops oops_ ooti ootin oper_ ord_ ori orko orkou
-2 orma orni ornin orro orrow orse orse_ orwar osit ositi otin oting ough_ oulde ounti oup oupl ouple our_ out ows ows_
-2 pain+free painful+to painl park+, park_ past past+# past_ peat peat_ pers_ phone+is physio+told pic_ pinc pinch
-2 pinch+of plank planned+$ ple pli plit posi posit pot pri problems+since pul pumpe put+the quit_ ra_ rac rack+$
-2 rack+is raig raigh ral_ rall ramp ras rass_ rate_ rb_ rch rch_ rder_ readi ready recti redo_ reeze ref reminders+$
-2 rep+$ repe repea restrictions+$ rger_ ribl rible ric ricti ride_ rien riend righ right rill rills rink_ rist rit rk
-2 rke rko rkou rkout rlin_ rned rned_ roc roids rol_ ront ront_ room_ rope rope_ roppi rops rops_ roug rough rp_ rri
-2 rrib rribl rso rst_ rter rti rubbi rwar rward ry_ s_ saf safe salt salt_ satu satur say_ says+# scar_ scia sciat scl
-2 scle screen+$ se_ see+it see+my sen sens session+$ sg shak sharp+$ sheep shop shor short shot+from sick+$ sick+of sie
-2 sier sier_ singl sitting+in skip+# skipp slee slep slept slipped+$ slipped+on snapp sofa sofa_ something+is soon+as
-2 spai spain spain+$ spl spli split squat+, squat+day sses sses_ sta stable+$ star steady+$ step+$ sto stol stol_ stopp
-2 stopped+at stops+me strap stretch+in strin stu stuf stuff sul sult sur sure+$ take take+$ take+me tea+$ tead_ teady
-2 tel tell ten+years ter terri terrible+$ tests tests+$ text th+$ than+last that+i that+one that+stops thats+the
-2 the+bad the+door the+hamstring the+lights the+mirror the+plank the+program the+stretch the+test the+third the+video
-2 the+wagon the+ward the+wife them them_ these thig thigh this+one this+take tica_ tice tig tigh tight timer times+a
-2 tine_ tired+$ tl tle tm to+film to+see toa toas toast tod toes+$ tol_ tomor ton_ too+much took+me topp tor tor_ town
-2 town_ trac tract traig trap_ tres tried+it trin tring trol trol_ try+$ tse tsel tself tter tter_ tti ttin tting tto
-2 tuck_ tues_ tuesday+# tuf tuff tuff_ turd turda twen twent twing twis twist two+$ ty_ type+$ uatti ub ubbi ubbis uch_
-2 ucked ucket uct ues_ ulde ulder uly uly_ uncl uncle unde under+$ uni until+# untin up+at up+first ups ur urda urday
-2 uring urth urti urtin usc uscl uscle use_ usual+$ utes utes_ uts utt vel_ vere vered very_ ves ves_ video+$ vie vis
-2 vit vou wag wago wagon wal walke wante was+# was+$ way+$ weari wed+fri week+, weeke weight+$ went+black went+out
-2 went+up what what+is when+do where+do whic which wider wife+has winge wink wink_ wist worko wors worse+$ wr ws ws_
-2 xac xact xc xcu xcus xcuse xibl xible yep+$ yes_ yo you+a yu zer_ zero zero_ zz ·+a ·+as ·+here ·+last ·+lol ·+off
-2 ·+over ·+with ¿+,
-1 !+$ !_ #+but #+ft #+min #+mins #+no #+pain #+reps #+right #+sets #+today #+without ,+a ,+chest ,+goes ,+gym ,+normal
-1 ,+not ,+on ,+only ,+slept ,+sweating ,+thanks ,+the ,+this ,+what ,+where ,+will =! =absolutely =accidents =across
-1 =against =ages =ankle =answer =army =ass =away =awkward =back =bad =bare =barefoot =bedroom =bird =bit =bloods =boss
-1 =bought =breakfast =broke =broomstick =brother =brutal =bumped =burnt =burpees =bus =button =bye =chalk =change
-1 =close =college =course =cracked =delivery =dentist =diagnosed =dieting =dinner =doing =dorm =dot =downstairs =drill
-1 =drop =dry =either =enough =excuse =explain =feeling =first =flew =flow =food =footy =forever =forgot =fri =friend
-1 =froze =ft =full =fun =get =giving =gotta =grab =grip =hall =hammies =hang =he =hell =here =herniated =hi =hold
-1 =holding =honest =hungover =hungry =ignore =jelly =k =keep =kept =kg =killed =kilo =knee =laugh =laughing =lead =lean
-1 =light =little =loo =many =measure =mins =monday =mostly =muscle =nights =nobody =normally =now =numbness =office
-1 =old =oops =own =paddock =pe =peeing =people =pick =plan =plate =pls =popped =pre =press =presses =pressure =problem
-1 =problems =pulling =pulls =pump =putting =r =reminder =reps =rough =rugby =rush =saturday =saturdays =sauce =see
-1 =sent =shaking =sheep =shirt =show =side =sides =sleeping =smashed =smell =snap =soft =soon =soreness =standing
-1 =steps =stopped =stopping =straight =stretching =strong =student =sweating =sweaty =tailbone =take =taking =texting
-1 =thank =thirty =those =through =tingle =toilet =tonight =too =took =touched =train =tucks =twinges =type =typing
-1 =upright =upstairs =usually =wait =walking =watch =water =wear =wed =weigh =weights =went =what =whats =while =whole
-1 =width =wifi =work =worse =wouldnt =x =yard =you =yup ^+absolutely ^+ankles ^+app ^+be ^+below ^+body ^+both
-1 ^+breathing ^+bumped ^+butt ^+bye ^+camera ^+coming ^+cracked ^+cut ^+done ^+easy ^+empty ^+end ^+everything ^+film
-1 ^+finished ^+glutes ^+good ^+gotta ^+groin ^+hand ^+hands ^+heel ^+heels ^+held ^+herniated ^+hi ^+idk ^+if ^+keep
-1 ^+kicked ^+killed ^+legs ^+might ^+nan ^+nice ^+oops ^+parallel ^+period ^+physio ^+popped ^+pressure ^+pull
-1 ^+pulling ^+put ^+putting ^+quads ^+reached ^+remind ^+repeat ^+retired ^+right ^+rounds ^+say ^+send ^+shooting
-1 ^+shoulders ^+show ^+sick ^+skipped ^+smashed ^+sore ^+squat ^+stairs ^+start ^+stretch ^+sure ^+taking ^+thirty
-1 ^+thursday ^+toes ^+tomorrow ^+tuesdays ^+used ^+warm ^+watch ^+water ^+wiping ^+wouldnt ^+yup _! _!_ _abs _abso _ac
-1 _acr _acro _ages _ang _ans _answ _appe _are _arm _army _as _ass _ass_ _awa _away _awk _awkw _bad _bad_ _bat _bedr
-1 _bel _betw _bird _bit_ _blan _blok _boss _boug _box _br _brok _brot _brut _bur _burp _bus_ _bye _bye_ _c _ca _cam
-1 _came _carp _chai _chal _cle _clin _cor _cour _cous _dau _daug _dec _deg _dent _des _diag _disa _doct _dog _doi _doin
-1 _dot _dot_ _drag _dry _dry_ _dun _dunn _ei _eit _eith _el _ele _els _else _eno _enou _ev _eve _ex _exa _exp _expl _ey
-1 _eye _fee _firs _flew _flex _flow _food _fri_ _fro _ft _ft_ _fun_ _fur _gai _gain _get_ _gir _girl _givi _goo _gott
-1 _grip _grow _hall _hamm _he_ _hell _help _here _hi_ _inte _inti _jan _jum _jump _k_ _ke _kep _kept _kg _kg_ _kilo
-1 _lab _lead _lean _lif _lig _ligh _lim _litt _loa _load _loo_ _los _mak _many _mar _mat _mil _mind _mins _mos _most
-1 _muc _mum _napp _nep _nigg _nop _note _now_ _num _offi _ol _old _old_ _one _oo _oop _oops _ouc _ouch _own_ _ox _par
-1 _pe_ _peei _penc _peo _peop _pi _pin _pis _piss _pls _pls_ _po _poi _pre_ _puf _puff _pul _putt _quad _r_ _real _reps
-1 _rete _ride _roug _rug _rugb _rush _sal _sau _sauc _scar _scra _see_ _sent _sh _shir _shou _sid _side _ski _smas
-1 _smoo _sno _snow _soft _soo _soon _sor _sq _squ _stay _step _sum _sund _supe _taki _tea _thos _thur _to _toi _toil
-1 _tom _tomo _toni _too_ _took _trie _tues _type _typi _uni _upr _upri _ups _upst _v _van _vis _visi _wed_ _wen _went
-1 _wha _whil _whol _widt _wifi _word _x_ _yar _yard _yes _you_ _yup _yup_ a+belt a+side a+step a+wall above+parallel
-1 abso absol ac accidents+$ ace acki ackin acks_ acr acro acros addo addoc adly adly_ adm admi ages ages_ agg agn agno
-1 agnos ago+i ago_ ail_ ailed ainst ait_ akf akfa akfas alar alen alend all all+my all_ allo amin amm ammi ammie ams_
-1 and+then andi andin andl ange_ angle+$ anis answ answe anyo anyon appea appi appin are+dead are+tight are+toast aref
-1 arefo arket army army_ arpen arri artm artme as+usual ash asi asses asure at at+about at+home at+the att atten auc
-1 auce auce_ augh_ aughi aved aved_ avou avour avy avy_ away away+from away_ awk awkw awkwa ay_ back+$ back+at
-1 back+feels back+first back+lifted back+one back+rounds back+stays back+still back_ bad_ bar+is bare+feet bare_ baref
-1 barefoot+$ bat bedr bedro belt+is bent+$ better+than betw betwe between+sets betweenlegs+is bik bike bike_ bird bird_
-1 bit+$ bit+stiff bit_ blan blank blem blem_ blems blok bloke bly bly_ bn bne bnes bness book_ boss boss_ both+$
-1 both+legs both+sides bottom+, boug bough bour_ bow box brace+$ breathing+fine brok broke brot broth brua bruar brut
-1 bruta bso bsol bsolu bucke burn burnt burp burpe bus_ but+fine butto by+accident ca_ came+up can+you cancer+,
-1 cant+feel car_ carp carpe carry+on catching+my cem chai chal chalk change+$ change+my change+the chen ches_ chi ching
-1 cil cit cket ckin cking cks_ cle clear cles cles_ clin coach+$ colle coming+$ cond cou cour cours cous cousi crat
-1 cratc creas cree ctor_ cuf cuff cuse_ dau daug daugh day+tomorrow day+¿ day_ ddo ddoc ddock dea dead+on dec
-1 december+$ deep+$ deg degrees+$ deliv denti dents depth+is dere dered ders_ diag diagn did+the didnt+come didnt+hurt
-1 died+$ dies dieti diffe dig disa disap disco diti dle dly dly_ dmi do+the dock dock_ doct docto dog doi doin doing
-1 doms+in don_ door+$ dor dorm_ dot dot_ down+in down+when down+with downs dra drag dragg dro droo droom dropp
-1 dropped+my dth dth_ dun dunn eake eakf eakfa ealt ealth eare eas ease ease_ east_ eath_ eati eatin eaty eaty_ ebru
-1 ebrua ed edo edr edro edroo eel_ eels eels_ een_ eep_ efoo efoot ege_ egi egs egs_ egu egul egula eigh_ either+side
-1 elet eliv elive elli ellin ello_ elly elly_ elp else elt em_ emen ement ems ems_ enci encil enes eness enou enoug
-1 entis eopl eople epp erection+for erf erv es_ esses essu essur esti estl estr estri etchi etw etwe etwee ety ety_ ev
-1 even_ every+rep ew_ ewa ews ews_ exi ext_ exti extin fas fast fast_ favou febru fed fed_ feel+$ feels+fine
-1 feels+loose felt+the fen_ feren ffed ffed_ ffer ffere ffic ffice fi_ fice fice_ film+$ fine+now firs first five+$
-1 flew flew+up flew_ fli flow flow_ food food_ footy for+an for+life forev forgo form fort free+$ fri_ friday+to
-1 fridays+at fro from+bench from+friday from+lunges from+tuesday from+under froze+$ ft fti ftin fting fts fts_ full_
-1 fun+$ fun_ fur gb gby gby_ get+a get+the ghi ghin ghing ghte ghter gin ging ging_ gir girl gle gli glin gling gna gno
-1 gnore gnos gnose go+on goo good+stretch got+an got+my gott gotta gotta+go gov gove gover grab_ grip grip_ grow gry
-1 gry_ gth gular had+trouble hake haki hakin halk halk_ hall hall_ hamm hammi hand+$ hands+$ hang+on hang_ hangi hank_
-1 harder+than hats hats_ have+been have+to healt heavy+$ heel+$ heel+came heep_ height+$ hell hell_ help hes_ hi_ hic
-1 hile hile_ hin_ hips+$ hips+are hirt_ hirty hold_ holdi holding+the home+from houl hould how+many hrou hroug hte hter
-1 hun hungo hungr hungry+$ hurs hursd hurt+, hut i+measure i+only i+see i+tested i+was i+wish iagn iagno iat iate iated
-1 ictio ider ider_ idk+$ idt idth idth_ ien ier ier_ ieti ietin iew iew_ if+i iffe iffer ifi_ ifti iftin ifts ifts_
-1 ilbon ilet ilet_ ilo_ im+honest im+not im+so ime ime_ imes_ in+# in+and in+bed in+both in+front ind ine_ inea inges
-1 inst_ inter intim into+my ip_ ires ires_ irr irst irst_ irt_ irty irty_ is+better is+down is+dying is+flat is+like
-1 is+on is+weak is+· isa isap isapp isco isi it+lifts it+longer it+to ita itin iting ito ix_ jan jelly jum jump k+$
-1 keep_ ken kep kept kept_ ket_ kf kfa kfas kfast kg kg_ kilo kilo_ knee+, knee+touched knee_ knees+$ ko ku kwa kwar
-1 kward kwo lab lad_ lain_ lan lan_ lann lass lat lbon lbone lde ldi ldin lding lead lead_ lean lean_ leb leed leep
-1 leepi left+foot left+heel leg+first leg+wont lege lege_ legs legs_ lem lem_ lems lems_ lend lep less less_ lete leve
-1 level+$ lex lf_ lift+$ lift+the lifted+off lifting+my lifts lifts+itself like+$ like+a like+that limit+on lips lips_
-1 litt littl little+above liver lleg llege llo_ lm loa loadi locked+$ lok loke lon lone lone_ loo_ loods look+$ los low
-1 low+bar lp_ lsa lunch+$ lutel mally many many_ march+$ mash mashe mate mate_ mbi mbin mbing mbli mblin mbn mbne mbnes
-1 me+after mell mell_ messed+up mie mies mies_ mit mmi mmie mmies moni months+ago moo moot mooth mostl mou move+#
-1 move+on move+the mpa mper mpt msti mstic muc mum mum+has my+# my+arm my+brother my+calf my+calves my+form my+life
-1 my+lower my+next my+reminders my+tailbone my+toes myself+in nci ncil nday_ ndl nee_ nep nest_ new+one next+week nging
-1 ngle ngo ngov ngove ngr ngry ngry_ niate nice+$ nich nigg niggl nish_ nkle_ nned nned_ nno no+accidents no+back
-1 no+shooting no+twinges noon_ nop nore nore_ nosed not+even not+feeling not+hurt not+in not+painful note nothing+else
-1 nothing+hurts nothing+like nothing+sharp nou noug nough nst_ nstai nste nswe nswer nter ntim ntima ntis ntist nto_
-1 num number+$ numbers+$ numbn numbness+in nwa nyo nyon oadi oadin oblem octor of+lunges off offi offic og oilet ok
-1 oke_ ol_ old_ oldi oldin olleg olu olut olute omor omst omsti on+my on+that one+, one+out one+¿ onig onigh only+$
-1 only+when oo_ oods oods_ ooms oomst oon_ oorb oors ooty ooty_ opl ople ople_ or+# or+not oren orene orev oreve orgo
-1 orgot orre orw orwa ory ory_ ose_ osed osed_ ostl ostly oth_ other+leg oti otta otta_ otto oty oty_ ourse ousi ousin
-1 out+, out+from out+when over+, ower owns ownst oze_ pace_ paddo painful+$ painful+just pains partm pause+$
-1 pause+until pd pear peei peein pees pees_ pel pen penc penci peo peop peopl pert ph phe phone+locked phone+on pick_
-1 pine piss pl plan plan+$ plan_ plank+$ plann please+$ pls pls+$ pls_ pm+instead po_ poi point+is poppe port port_
-1 ppea ppear pped pped_ pre_ pressure+$ prig prigh priv probl ps_ pst psta pstai puf puff pull+in pulli pulls pump_
-1 putt putti quads+are rab_ racke racti ragg rap_ rass ratc ratch rato rator rdays reakf real rease redo+$ ree_ refo
-1 refoo regu regul rene renes rent_ reps reps+, reps_ res ressu restr results+$ reve rever rger rgi rgo rgot rgot_ rica
-1 rice rice_ rick rict ride ried ried_ ries ries_ right+, rill_ rinki rip_ ris rked rked_ rket rket_ rli rlin rm rmall
-1 rme rmy rmy_ rnt_ robl roble roid rom rooms ros roth rothe rounded+$ rounded+a rounds+$ row_ roze_ rpee rpees rpen
-1 rrie rried rrow rrow_ rsd rsda rsday rthe rtm rtme rtmen rty rty_ ruar ruary rugb rugby runk runk_ rush rush_ rust
-1 ruta rutal rvo rwa sag sal sap sapp sappe sauc sauce say+that says+$ scle_ scra scrat scu see+the see_ sem seme
-1 sent+$ sent_ set+, set+on set+up sets+$ shake shaki shir shirt shoes+on shot shou shoul should+my show_ side+$ sides
-1 sides+$ sil sio sk_ ski skip+the skip+this sleep slipp slow+$ smas smash smashed+it smell smoo smoot snap_ sno snow
-1 soft soft_ solu solut something+$ soo soon soon_ sor soren spine sq squ sse ssed ssed_ ssi ssur ssure stay stays+flat
-1 step steps stiff+$ stm stma stop+all stop+here stop+texting stop+the stor story stretch+, stri stric stron stude
-1 suall sum sund sunda supe super sweating+buckets sweaty+$ swer swer_ tab tabl tailb tailbone+$ tandi tay tches
-1 ten+days ten_ tep teps teps_ tery tery_ test_ texti texting+me than+i thank+you thanks+for that+, that+again
-1 that+felt that+set thats+it the+ankle the+app the+baby the+bar the+bus the+dentist the+flow the+hall the+last
-1 the+level the+plates the+rest the+set the+team the+timer the+va the+very the+whole the+yard then+squats then+the thes
-1 thigh+stopped thing+, this+app this+week thos those three+days throu through+the thur thurs thy thy_ tica tick till
-1 till_ tima time+i time_ timer+$ times tin_ ting_ tingling+$ tist tist_ tive tive_ tma tme tmen tment to+end to+keep
-1 to+kill to+lift to+saturday to+say toes+fine toil toile toilet+all tomo tomorrow+, toni tonig too_ took took+my took_
-1 toppe toppi tory tory_ trai train train+$ training+$ tral_ trap trict trie tro tron trong trouble+$ trouble+starting
-1 ts tta_ tte ttl ttle tton_ tty tucks tude tuden tues tup tweaked+my twee tween two+plates two+sessions type type_
-1 typi typin ub_ ubb uched uck ucks ucks_ uden udent ue_ uffe uffed ugb ugby ugby_ ughi ughin ughte ule ulli ullin ulls
-1 ulls_ umb umbi umbin umbn umbne ump unc unda unday undr ungo ungov ungr ungry up+# up+my upe uper uple uple_ upp upri
-1 uprig upright+$ upst upsta urger urnt_ urpe urpee urr urry urry_ urs ursd ursda urse urse_ ush_ ushi usio usion uta
-1 utal utal_ utel utely utte utter utto utton van very+bottom vet view view_ vin visi vour wait_ walki wall+$ wall+,
-1 wall+one wall+with wall+¿ was+harder was+out was+the watch+says we+do weak weak+sauce wear_ weati weaty wed_
-1 weekend+, ween well+above went+$ went+numb went_ wer_ wha what+do what+does what_ whats wher where where+i which+day
-1 which+leg whil while whol whole whole+time why+do widt width wife+says wifi wifi_ will+do with+an with+me with+my wkw
-1 wkwa wkwar wns wnst wnsta word work work+, work_ worse xib xt_ xti xtin xting yar yard yard_ year+, yed yed_ yes yl
-1 ym yon you+ask you+keep you_ ype ype_ ypi ypin yping ythi ythin yup yup_ yw ywh ywhe ywher ·+after ·+nurse ·+when
1 #+$ #+degrees #+kg #+lbs #+more #+pounds #+years #+¿ ,+before ,+body ,+doc ,+feel ,+healed ,+heel ,+hes ,+in ,+is
1 ,+lasts ,+more ,+one ,+that ,+then ,+theyd ,+wasnt .+also .+i .+im .+it .+leg .+like =ache =actually =already =also
1 =ants =aortic =around =arteries =asked =aspirin =ate =band =basement =basically =bath =before =bigtoe =blue
1 =bodyweight =bones =breast =breathe =broken =burning =buy =buzzing =call =cardiologist =cardiomyopathy =carrying
1 =caught =cheeks =christmas =church =class =climax =clock =clopidogrel =clothes =cold =consultant =cottonwool =daughter
1 =deadlifts =deep =degrees =diet =difficult =disappear =dizzy =dodgy =drip =driving =dull =dvt =each =ears =ejection
1 =em =emergency =everyone =everything =everywhere =exercise =exist =failed =failure =fainting =fall =far =fat =feel
1 =feverish =finish =fire =fit =folded =footdrop =fraction =function =fuzzy =gas =gasping =gate =god =grey =hadnt
1 =hamstrings =hands =hangs =heavier =height =hole =husband =idea =idk =incontinent =infection =injections =injury
1 =issue =issues =joke =joking =kidney =kids =kilos =know =knowing =lasts =lazy =less =lightheaded =limited =limp =line
1 =listen =literally =live =loads =long =losing =lying =make =mate =matters =maybe =mean =middle =midstream =mild =mri
1 =much =my =nerve =nope =notice =nursing =of =ok =only =pacemaker =perineum =permanently =physio =pinched =pissed
1 =place =postpartum =pounding =purpose =raise =rang =rather =red =removed =ribs =rivaroxaban =rub =running =saddle
1 =safe =scared =scrotum =scuffing =secondary =shakes =shes =shin =shine =shoulder =sign =skin =slipping =somehow
1 =someone =something =sometimes =spare =specialist =spells =spondylolisthesis =squat =squeeze =stabbing =started
1 =starts =stenosis =steroid =steroids =stomach =stone =street =such =summer =sun =surgery =svt =sweat =swimmy =tablet
1 =tampon =temperature =theyre =theyve =thick =thin =thinner =thinning =throwing =time =tipped =tmi =today =towel
1 =tractor =truck =trust =turned =twelve =underneath =urinate =ute =vision =wanna =was =we =weaker =wednesday =weird
1 =were =white =wifes =wiped =without =wk =woozy =word =worked =world =worried =wrist =young ^+clopidogrel ^+consultant
1 ^+could ^+dizzy ^+due ^+everyone ^+found ^+funny ^+goodbye ^+having ^+hot ^+life ^+newborn ^+nofeeling ^+numb ^+odd
1 ^+on ^+one ^+peed ^+shed ^+sir ^+slip ^+so ^+spinal ^+spondylolisthesis ^+standing ^+takes ^+temp ^+tingly ^+told
1 ^+trouble ^+va ^+was ^+wet ^+wifes ^+you _ache _acti _aga _agai _ale _alen _alo _alon _alr _alre _als _also _ants _ao
1 _aor _aort _aro _arou _arr _ask _aske _asp _aspi _ate _ate_ _au _bac _back _bas _basi _bath _bed _bee _bef _befo _bic
1 _bigt _ble _blow _blu _blue _bod _body _bra _brak _bre _brea _bump _buy_ _buz _buzz _call _cap _catc _caug _chat _chil
1 _chu _chur _ci _clop _cold _cot _cott _cras _craw _crum _cut _dad _day _dead _degr _den _don _dres _driv _dru _dul
1 _dull _dv _dvt _dvt_ _eac _each _ears _edg _edge _eja _ejac _eje _ejec _em_ _emb _emba _eme _emer _eq _equ _equi _es
1 _even _far _far_ _fat_ _fel _fit_ _fli _flo _forb _forc _fore _fort _froz _func _fus _fuz _fuzz _g _ga _gas _gas_
1 _gasp _gat _gate _god _god_ _gra _ha _hadn _hal _hap _happ _har _hat _hei _heig _hus _husb _ide _idea _idk _idk_ _impo
1 _infe _iss _issu _it _joke _joki _kidn _kids _know _l _la _late _laz _lazy _le _les _less _lev _leve _limp _live _long
1 _losi _lov _love _lyi _lyin _mate _may _mayb _mes _midd _mids _mild _miss _mr _mri _mri_ _much _my_ _myo _myoc _nig
1 _nobo _noo _noon _nu _nur _nurs _occ _of_ _off _ok_ _onl _only _ot _oth _othe _out _pas _pati _pen _pick _plu _por
1 _pow _powe _pp _pun _pur _purp _quit _rai _rang _rath _reck _red_ _remo _resp _reti _rh _rhe _rheu _rib _ribs _riv
1 _riva _rub _rub_ _runn _sac _sadd _sco _scro _scu _scuf _sec _sect _shee _shes _sign _skin _sli _smal _sne _snee _soc
1 _sock _som _some _sop _soph _spar _spec _spi _spin _spor _spr _spra _stat _ster _stom _ston _stri _suc _such _summ
1 _sun_ _sup _sv _svt _svt_ _swi _swim _tai _tak _tamp _te _teac _th _thic _thro _tip _tipp _tmi _tmi_ _toda _toe _touc
1 _towe _trac _trea _truc _trus _twel _un _up _ute _ute_ _ve _wa _wai _wait _wann _want _was_ _we_ _weig _weir _wher _wi
1 _wil _will _wit _with _wk_ _wooz _worl _wra _wrap _wri _writ _x _z a+bad a+clot a+day a+dvt a+fortnight a+half
1 a+ladder a+pacemaker a+stone abb abbi abbin ably ably_ about+not abs ac_ accident+on acem acema ache_ acher achi achin
1 across+the acti actio acu acul acula add addl addle aded aded_ adin adio adn adnt adnt_ afe_ aga agai again again+$
1 again+, against+the ail aile ailu ailur ainte ainti aise_ ait aki akin aking alise alist all+numb alls alls_ alon alr
1 alre alrea already+$ also also_ ame_ amp ampo ampon an+ablation an+hour ana and+aspirin and+cant and+cracked and+didnt
1 and+hot and+it and+landed and+now and+weak and+· andle ane_ anen anent ang_ angs angs_ anin anke anna anna_ ans
1 anymore+$ ao aor aort aorti aortic+valve aper aper_ ards ards_ arean arg arki arkin arou aroun arox aroxa arryi artb
1 arte arted arz as+always asem aseme asic asica ask aske asked asn asnt asnt_ aspin aspir assed assi assin asts asts_
1 asty asty_ at+school ated ated_ athe_ athi athin athy athy_ atie atien ator ator_ ature aug avie avier avo awl ax_ ayb
1 aybe aybe_ azy azy_ bac back back+has back+is back+of back+thing bar+at bas basem basi basic bath bath_ bbin bbing
1 be+able be+better be+doing beats+$ because+i because+im because+the bed+, bee been+thinking bef befo befor before+it
1 below+parallel bic bigt bigto bio blade bles blet_ blin bling blood+thinner blood+thinning blow blu blue blue_ body+is
1 body_ bodyw bodyweight+$ both+hands bothe brak brake brea bs_ buckets+, buckl bug bum+, bum+cheeks bump burn_ burni
1 but+my buy_ buz buzz buzzi by+itself by+my by_ ca call_ cally cancer+of cant+control cant+empty cant+finish
1 cant+orgasm cant+stop cape cared carri catc catch caug caugh cc ccy cec cect cecto cema cemak cert chang chat che_
1 cheek chen_ cher chil chill chu chur churc ciali cis cise cise_ ckle_ ckled cko ckon cks clima clop clopi
1 clopidogrel+and clot+$ cloth cold cold+$ cold_ colla comes+out const consu consultant+said conti cos cotto
1 couldnt+tell cracked+my crap cras crash craw crawl crotu crum ctor ctur cture cu cuffi culat cult_ cut dad daily+$
1 dark+thoughts dary dary_ day+# day+, days+, days+i dd_ ddle_ dea_ dead dead+, deep_ degr degre dent_ dern derne des
1 dew dewa dge dgy dgy_ did+that didnt+do didnt+notice diet_ dieting+$ diol diolo diom diomy disc+at disce dizzy+and dk
1 dk_ dne dney dney_ dni dnis dniso do+anything do+one dodgy doesnt+come dog+and dogr dogre doing+anything done+.
1 done+but dont+shine down+to dres dress drip_ driv drivi dron drop_ dropped+# dst dstr dstre dull dull_ during+sex
1 during+the dvt dvt_ dylo dylol dyw dywe dywei ea each+day each+time eali ealis eartb eavie ebr ebra ecko eckon ecr edg
1 edge edn edni ednis eds eds_ eeds eeds_ eele eeled eeli eelin efor efore eg egr egre egree eho ehow ehow_ eig eigh eir
1 eird eird_ eja ejac ejacu eje ejec eject ejection+fraction ela eled eled_ elin eling ello elve elve_ emak emake emba
1 embar emer emerg emov emove empe emper ency ency_ endr endro ener enosi enough+of enough+to ensa ensat entl ently ents
1 ents_ env eone eone_ eop eph eq equ equi eral erall erati eratu erc erci ercis erection+since erent erg erge ergen
1 ering eris erish ermi erne ernea eroi eroid erve eryo eryon eryw erywh esa esar esare esd esda esday esi esis_ esp
1 espo espon este ester ethi ethin etim etime etra eum_ euma eumat evel ever_ everi every+# every+time every+week
1 everyone+says ewe exerc exert exist+$ eyes+and eyr eyre eyre_ eyv eyve eyve_ faile failu fall_ far_ fat_ fec fect
1 fecti feel+him feel_ feeli fel felt+like fes fes_ fir fire_ fit_ flo folde footd for for+two forb forc force fore_
1 fortnight+ago friday+, froz froze fu func funct fus fuz fuzz fuzzy ga_ gas_ gasp gaspi gate gate_ gave+me gave+out
1 genc gency gery gery_ gest getting+up getting+worse ggl ghth ghthe ghtn gio gn_ god god_ goes+$ goes+down going+,
1 going+on gon gone+from gone+numb gree grees grel grel_ grey_ groin+$ gth_ gtoe gtoe_ gulat gym+$ h_ had+that hadn
1 hadnt hakes half+$ handl hands hang hangs happ happened+before hard+$ has+me have+an have+the havent+changed
1 havent+had having+to heart+$ heart+failure heart+keeps heavi heek heeks heig heigh hell+$ here+anymore hers hers_ hesi
1 hesis heum heuma heyr heyre heyv heyve hi hick hick_ high_ hine hine_ hinni hip+on hit+$ hite_ ho_ hock hold+me
1 hold+the home+$ hoo hos hot+$ hout hout_ how+long hr_ hrowi hru hter_ hth hthe hthea htn hurc hurch hurt+my hus husb
1 husba i+didnt i+gave i+get i+keep i+messed i+nofeeling i+sat i+took i+use i+used i+wash i+wasnt ial_ iali ialis ibs
1 ibs_ ica icall ice ice+and ice_ ick id+be idea idea_ idew idewa idk idk_ idne idney idog idogr idst idstr if+it ifes
1 ifes_ ift igg ight ight_ ighth ightn ign_ igto igtoe ild_ ilos ilos_ ilur ilure im+going im+with ima imax imax_ imite
1 immy immy_ imp_ impo in+church in+it in+january in+last in+this inat inate inent ineu ineum infe infec ink_
1 inner+thigh inner+thighs inside+me inside+of inte intin inus inus_ iol iolo iolog iom iomy iomyo ion iped iped_ ipper
1 ir_ ire_ irin_ is+dead is+gone is+new is+still is+weird is+what isc isce iscec ish_ ishe ished isone issue isth isthe
1 isti istin istm istma it+on it+wasnt it_ ital ital_ itera itho ithou its+been its+like ivar ivaro ive+a ive+been ivery
1 iz izzy_ ił jac jacu jacul january+$ joke joke_ joki jokin joking+$ jury jury_ just+dont keep+the ker_ kidn kidne kids
1 kids+$ kids_ killing+myself kilos kin_ kind+of kl kled kled_ kles kles_ kn know know_ knowi kon lade lass_ lasts lat_
1 late+$ lay_ laz lazy lazy_ lded lded_ lder_ le leaking+$ leg+had leg+just leg+keeps lendr level lid_ lies lies_ lif
1 lifting+for lights+went like+it like+my like+sitting like+someone like+the like+this like+to like+when lima limax
1 limited+me limp limp_ line_ ling_ lippi lise list_ listh liti litis lki lkin lking lly lly_ lo loads lock_ loli lolis
1 long+$ long+time loo lopi lopid los_ lost+the loth lothe lov love lp lr lre lrea lread ls lse_ lso lso_ lta ltan ltant
1 lumbi lure lure_ lyi lyin lying mach mach_ mak make_ mal man man_ mane manen march+, mate+$ mato max max_ may mayb
1 maybe mb me+and me+at me+not me+when mean+i mean_ meho mehow ment_ meo meon meone merg merge mest meste meth methi
1 meti metim midd middl mids midst mil mild mild_ minutes+$ mis mite mited mmy_ month+, months+$ more+$ more+than mpera
1 mple mplet mpon mpon_ mpr mri mri_ ms_ much much_ muscle+and my+arms my+ass my+backside my+bike my+bladder my+blood
1 my+crotch my+daughter my+disc my+ears my+eyes my+food my+gp my+husband my+inner my+inr my+pants my+pelvis my+shin
1 my+spine my+wrist myoc myoca myop myopa myself+and myself+last nan nct ncti nctio nda ndary ndern ndle ndr ndro ndron
1 ndylo ne_ neat neath ned ned_ neez nent_ nentl nerve neum_ never+happened nfe nfec nfect ng nger_ ngi ngl ngs ngs_
1 ning niso njury nk_ no+idea no+squats no+straining nobo nobod nofeeling+downthere nofeeling+during nofeeling+in
1 nofeeling+when noon nope_ nosi nosis not+from not+on not+the nothing+comes nowi nowin nsat nsati nsul nsult nten nto
1 numb+and numb+both numb+in nurs nursi nut nv nwo nwoo nwool oads oads_ oat obi obo obod obody oca ocar ocard occy oda
1 oday oday_ odgy odgy_ odyw odywe of+both of+chest of+me of+weight off+me off+without oga oga_ ogrel oh ok+$ oken oken_
1 ola old olde olded olis olist olla omac omach omeh omeho omeo omeon ometh ometi omo omple omyo omyop on+$ on+blood
1 on+fire on+purpose on+thinners one+flight one+foot onl only only+did only+thing only_ ons_ onst onsu onsul onti ontin
1 onw onwo onwoo oon ootd ootdr ooth_ ooz oozy oozy_ opat opath oper oph opid opido orb orbi orce orge orke orked orks
1 orks_ orld orld_ oro orr orri orti ortic ostp ostpa otd otdr otdro othes otton otu otum otum_ oun oung_ ouse over+and
1 owed owed_ owel_ own oze ozy ozy_ pac pacem pain+# pain+, pain+at pants+at paper+$ parallel+, pare_ parki path pathy
1 pati patie pear_ pec pee+and pells perin perm permi pet pick pid_ pido pidog pir piri pirin pisse plet plete point+of
1 pos pose pose_ postp pow powe power power+in pp predn privates+, privates+is prof ps pull+up pun pur purp purpo
1 push+hard pushing+$ quad quat_ quit radio raine rak rake rally rash rassi rate rath rathe rather+not rati ratu ratur
1 rawl rbi rbo rce rci rcis rcise rda rday rdiol rdiom reali really+weak rean rean_ recko redn redni rees rees_ reet
1 reet_ rel_ remo remov reps+. resp respo rete reti rey_ rgen rgenc rgery rhe rheu rheum ria rial rial_ ribs ribs_ rig
1 right+. right+since rinat rineu rings ripp rish rish_ ristm rivar rivaroxaban+$ rivi rivin rki rkin rl_ rld rld_ rly
1 rly_ rma rmane rmi rnea rneat ro_ rof roh roid_ roken roni roo rop_ ropp rotu rotum rous rowi rowin rox roxa roxab roz
1 roze rpo rpos rpose rr rryi rryin rs rsin rsing rt_ rtb rteri rtic rtic_ rua rub rub_ rug runn runni running+a runs+in
1 rust_ rve ryi ryin rying ryo ryon ryone ryw rywh rywhe sac sack sack_ sadd saddl safe_ sage said+# said+my sare sarea
1 sati satio sau says+no sba sban sband scan+$ scare scec scect sche sco scro scrot scuf scuff seat+$ sed sed_ semen
1 sensa sensation+is shee shin_ shine shing shoes+$ sica sical sidew sign sign_ since+friday since+monday since+sunday
1 since+thursday since+wednesday since+yesterday sio_ sir sir_ six+weeks sk ske sked sked_ skin skin_ sleep+and sma smal
1 small snee sneez so+the soc sock sofa+$ som some some+days someh someo sone sone_ sop soph sore+$ sorry+, sorry+to
1 spar spare spinal+stenosis sping spir spiri spondylolisthesis+grade spor sport spra squats+, ssage ssue ssue_ ssues
1 stabb stan stand+$ stand+, stand+on stant started+last stat sten_ steno stenosis+$ stent+$ step_ steps+$ stero
1 steroid+tablets steroids+for sth sthe sthes stmas stom stoma stone stop+it stpar stree stren strength+in stru suc such
1 such_ sue sue_ sues sues_ sulta summ summe sun+dont sun_ sunday+$ sup sv svt svt_ swi swim swimm tabb tabbi take+a tam
1 tamp tampo tand_ tant_ tarte tarts tdr tdro tdrop teac teach tell+if tell+when tempe temperature+$ tenc teno tenos
1 tep_ tera teral terie tero teroi test+and testi th thats+new thats+not thats+what the+basement the+bath the+bathroom
1 the+chest the+counter the+dog the+injury the+inside the+kids the+lower the+middle the+moment the+pee the+point
1 the+privates the+seat the+squat the+squats the+sun the+surgeon the+thigh the+toes the+ute the+water the+way
1 the+weather the+weight the+word thea thead them+$ then then+i then_ thes_ thesi they+said theyr theyv thic thick
1 thigh+$ thin_ thinking+of thinner+for thinners+for this+anymore this+thing this+time thm tho_ thought+about
1 thoughts+about thout tien tight+$ time+, tin tingles+in tipp tippe tiptoe+on tired+of tmas tmas_ tmi tmi+but tmi_ tne
1 tni to+a to+be to+feel to+hold to+look to+my to+pee to+push to+start to+use toda today today+because toes+on tom toma
1 tomac tone tone_ tonw tonwo took+it tou touc touch towe towel tpar tpart treet tren tria trial truck trus trust tten
1 tten_ ttle_ ttonw tuall tub_ tuesd tured turne twel twelv twice+this two+stents uad ual ual_ uat_ uce_ uckl uckle ude
1 uesd uesda ugg uic uin ular ular_ ulate uli ulta ultan um_ umat umato umba umme ummer un_ unch unch_ unct uncti unne
1 unni unnin up+off up+since urc urch urch_ ured ured_ urge+to uri url urne urned urp urpo urpos ursi ursin ury ury_ us_
1 usb usba usban use+the used+to ush uz uzz uzzi uzzin uzzy uzzy_ varo varox vat vate veri veris very veryo veryw vier
1 vier_ ving ving_ visio vor vy vy_ wai wait walk+, walking+to wann wanna want wards warfarin+$ warning+$ was+dead
1 was+in was+not was+told was+wet was_ way+, way+and way+up we_ weak+, weak+since weat_ wednesday+$ wee+$ weekend+$
1 weeks+, weig weigh weight+on weight+without weir weird wel_ welv welve went+over were were_ wet+myself what+it
1 whats+the when+im where+im where+it where+the wifes wil will wim wimm wimmy wipe+$ wiped wit with with+a witho wk_
1 wks+$ wont+hold wool wool_ wooz woozy word_ worke works worl world would+be wra wrap wrapp wri writ wt x+# xerc xerci
1 xert xin xing xing_ xist_ yb ybe ybe_ ycle_ years+back yesterday+, ylol yloli yn yoc yoca yocar yop yopa yopat ysio_
1 ythm yv yve yve_ ywe ywei yweig z_ zing zing_ zo zzi zzin zzing zzy ·+in ·+the
2 #+a #+f #+hours #+hrs #+last #+mg #+to ,+, ,+but ,+by ,+didnt ,+for ,+from ,+havent ,+hit ,+i ,+its ,+like ,+sorry
2 ,+two ,+warfarin .+# .+left .+no =ablation =abscess =accident =aches =advised =af =again =all =along =anticoagulant
2 =appetite =april =arms =at =backpassage =backside =ball =beats =become =belly =bowels =brace =breathless =bridge
2 =called =capped =car =cardiac =carry =catch =comes =compression =concrete =consciousness =couldnt =daily =dead
2 =department =deserve =down =drive =due =during =edoxaban =elephant =elses =fainted =family =few =finished =folds
2 =forbid =fortnight =from =funny =gave =gives =havent =having =hear =hill =hope =hours =hrs =infarct =inner =irregular
2 =june =kicked =killing =kinda =kitchen =knocked =laminectomy =leaked =letters =lie =look =lumbar =lymphoma =matter
2 =meaning =medical =mg =minutes =miss =missus =moment =month =nah =needing =noticed =off =orgasm =osteo =osteoporosis
2 =oven =pain =pants =paper =patient =penis =period =playing =poison =post =power =pregnant =prolapse =properly =push
2 =pushed =quiet =quite =rat =remission =replaced =rods =runs =second =seem =sensation =shift =shivery =showed =showing
2 =sick =sir =sizes =slip =sophomore =spinal =spring =stent =stents =stool =stops =strain =strength =sudden =survivor
2 =switched =tackled =takes =teacher =team =temp =then =there =thermometer =theyd =thigh =think =thinned =three =ticker
2 =tightness =toe =tooth =touching =triple =tripped =trousers =tuesday =tumble =tumour =unalive =urge =vertebra =waiting
2 =wanting =warning =way =weak =weekend =well =when =where =wipe =worth =wrote ^+better ^+bigtoe ^+bladder ^+blood
2 ^+bone ^+brittle ^+c ^+compression ^+hernia ^+jaw ^+knocked ^+nah ^+pain ^+penis ^+rat ^+saddle ^+since ^+slipped
2 ^+surgeon ^+there ^+they ^+thinking ^+thought ^+tired ^+too ^+tooth ^+tripped ^+unalive ^+wee ^+week ^+weird ^+why
2 _abla _absc _ach _actu _af_ _air _all _all_ _angi _apr _apri _arms _at_ _band _bare _bea _bec _beco _big _bit _blo
2 _bowe _bri _brid _bug _bul _bum _by _capp _car_ _card _cau _ce _clim _col _com _come _d _dai _dail _dam _depa _dese
2 _dif _diff _doe _does _drip _due _due_ _dur _duri _edo _edox _ej _elep _exe _exer _exi _exis _fail _fam _fami _few
2 _few_ _fire _fl _fres _from _fu _fun _funn _gav _gave _gr _gre _guy _half _havi _hil _hill _hole _hon _hone _hope _hos
2 _hrs _hrs_ _imp _inco _inf _infa _inj _inje _inn _inne _ins _ir _irr _irre _june _kic _kick _kit _kitc _lami _lan
2 _land _lie _lie_ _list _lum _lumb _ly _lym _lymp _make _mal _mas _mast _medi _mg _mg_ _mid _min _mom _mome _mor _mot
2 _nah _nah_ _new _nigh _noti _now _off_ _ok _oka _op _oper _org _orga _ort _orth _oven _pal _pan _pap _pape _pass _pea
2 _peac _peni _perf _perm _phy _phys _plum _pois _poor _post _pred _priv _prol _put _quie _ra _rat_ _repa _rig _rod
2 _rods _rol _roll _runs _seco _seem _shif _shin _shiv _sic _sick _sir _sir_ _six _sla _soak _sob _spel _sque _stre
2 _supp _swe _swea _take _talk _team _then _ti _tile _toe_ _toot _top _tre _tumb _tumm _tumo _twin _una _unal _und _unde
2 _urg _urge _ut _wan _warn _way _way_ _wei _wel _well _wer _were _when _wido _win _wip _wipe _wort _wrot _ye _you _youn
2 a+car a+disc a+stent a+sudden a+tumble a+tumour abla ablat able about+it absc absce accident+in aches aci acin acing
2 ack ackp ackpa acksi actua adli adlif advis af af_ ag age ai aily aily_ ained ainer aiti aitin ale alis all+night alle
2 alled allet ally ally_ along alp am+# am+in ami amil amily amine amp_ an+accident and+had and+ive and+think and+wait
2 ande anded ane ang ange anic aning anket anu appen appet apr apri april aps apse apse_ apy apy_ arb arc arct arct_ ard
2 ardia ardio area+is ari arms arms_ arni arnin aro arro arrow arry_ arts arts_ artu artum ary ary_ as+well ase_ ask_
2 asleep+$ asm_ asp aspi assa assag asse aste aster at+practice at_ ating ato atri atter aul avent away+and ays ba backp
2 backpassage+$ band band_ bar+on bare barr be+dead be+fine bea beats bec beco becom been+able been+on being+alive belly
2 belly+gets between+the bid_ bit+odd bits bits_ blat blati bles_ blets blo boa boar board bones bowe bowel br bra_ bre
2 breat brid bridg brill bsc bsce bsces bul bum but+i but+it but+the c+section cal_ calle came+over can+hear cancer+$
2 cant+keep cant+pull cap capp cappe carry+the catch+my ced ced_ cep cess cess_ cher_ chest+$ chest+feels cia cial cing
2 cing_ cio ciou cious cke cked cked_ cker_ ckp ckpa ckpas cksi cksid clim come+$ come_ comes coming+down coming+in
2 coming+out compr compression+fracture concr cond_ conda consc cot cott couldnt+go cret crete ctu ctua ctual cula cus
2 dai dail daily date date_ dead_ deadl depa depar dese deser dia diac diac_ dica dical didnt+even diet+$ disc+,
2 disease+$ disease+, dle_ dli dlif dlift do+any doc+said doc+says doe does does+not done+# dont+get dont+see dont+think
2 down+on down_ dox doxa doxab drip dru due due_ dur duri durin dvis dvise dw dyl ea_ eade eaded eadl eadli eak eaker
2 ean_ eani eanin eathl eavi eavin ebra_ eca ecau eci ecia ecial eco ecom ecome econ econd edica edox edoxa eed_ eem
2 eem_ eep eepi eepin eeze_ egn egna egnan eh either+$ ej elep eleph ell elo els elses ema emis emiss emp_ eng enis
2 enis_ eopo eopor epai epair epart epha ephan epin eping erapy erection+$ erfo erfor erine eriod erly erly_ ermo ermom
2 eryt eryth eser eserv esh estin et ete_ eter eter_ etit etite ett ever evi ew exe exer exis exist exp expl expla eyd
2 eyd_ eze_ f+$ fail fam fami famil farc farct fee feed feel+like feeling+in fell+in fell+on fer few few_ ff_ fibr fibri
2 fini fire flat+on floor+test folds folds+$ for+$ for+air for+no for+this fore fortn fracture+t fres fresh from from+#
2 from+my from_ fun funn funny ga gain_ gasm gasm_ gat gav gave gave+birth gave+way gave_ get+up ghtne gina gina_ gis
2 gist gist_ gives gn gnan gnant gone+to got got+me got+tackled gt gulan gun gun_ guy gy had+cancer had+to half hange
2 hant hant_ has+no has+nofeeling haven havent+· havi havin hc head+on heade hear_ heart+is hed_ hei hen herm hermo hern
2 hey_ heyd heyd_ hif hift hift_ high+school hil hill_ hink_ hir hiv hive hiver hles hless hold+my hom homa homa_ homo
2 homor hones hope_ hot hours howed howi howin hree hree_ hri hrow hrs hrs_ htne htnes hump hurts+$ hy_ hys hysi hysio
2 i+failed i+fell i+got i+havent i+lie i+might i+push i+run i+sit i+stop i+think i+want i+went i+wipe iac iac_ ian ibr
2 ibri ibril iced iced_ icked icker ics ics_ id id+never id+rather ides ides_ ido idow ient ient_ iet if+the ife_ ig_
2 ild iled iled_ iling ill illa illat illy illy_ ilu imes in+chest in+high in+july in+may in+remission inal_ inco incon
2 inda inda_ inde inec inect ined ined_ inen inf infarct+$ infection+, ingle inj inje injec inned inner inted iod iod_
2 iousn ipe ipe_ irin irre irreg irs irt is+really ise_ ised ised_ ish isio ision ison_ issin issus isten it it+$
2 it+goes it+is it+out it+was itc itch ite_ its+getting its+gone its+numb ivat ivate ive+had iver ives ives_ ivin iving
2 ivo ivor ivor_ izes izes_ je je_ jecti june june_ keep+weight ken_ kend_ kg+$ kic kick kicke killi kind+$ kinda kit
2 kitc kitch kitchen+$ kle kp kpa kpas kpass ksi ksid kside ky lace laced lack lami lamin land landed+on lanke lant_
2 lap_ lapse las last+set lato lator layi layin ld_ ldn ldnt ldnt_ lds lds_ leake leg leph lepha ler_ let_ lf lid lie_
2 like+its like+nothing lip_ lippe liste lit lit_ llat llet llet_ lls lls_ logi logis look+at look_ losi losin
2 losing+weight lost+a lost+consciousness lot_ lpi lses lses_ lt lue lumba lym lymp lymph mac mast may+$ mba mbar_ mble_
2 me+, me+for meani meaning+to medi men ment mete meter mg mg_ mid might+do mily mily_ minec ming ming_ miss_ missu mit_
2 mmy mn momen moment+$ momet months+, morning+$ mot mph mpho mphom mpo mpre mpres my+ankle my+butt my+last my+left
2 my+leg my+right myo nah nah_ nali naliv nant nant_ nat nched nco ncon ncont ncr ncre ncret ncy ncy_ nd nda_ ndin nding
2 ndy_ ndyl nearly+went nect necto needi needing+the nent ner_ ners ners_ nest net neum new nf nfarc ngt ngth_ nig nis_
2 nish nishe nj nje njec nject nket nly nly_ no+appetite no+reason no+warning nocke not+allowed not+been noti now now+.
2 nsc nsci nscio nth_ nti ntine nting ntl ntly ntly_ nur nutes oak oar oard oard_ occ oct octo odd+, ods ods_ ody of
2 of+being of+them of+this of_ off_ ogi ogis ogist oile ois oiso oison oka olap olaps olds olds_ olle ollo ollow olo
2 olog ologi omen oment omes omes_ omete omore ompr ompre on+and on+it on+saturday on+warfarin on_ oncr oncre ond_ ondar
2 ondyl one_ onest only+# ons onsc onsci onth_ ook_ oot oot_ ope_ opera operl opho ophom opo opor oporo oppe orch orch_
2 org orga orgas orman oron oros orosi orrie ors orth_ ortho ortn ortni os_ osin osing osteoporosis+$ other+day ouche
2 ouchi ouldn ound oung ouser ousn ousne out+cold out+the out_ over_ ow owels owi owin owing pace pair pal pan pants pap
2 pape paper pari partu passa pe peac peci pecia peed peed_ pell penis per_ perf perfo perio perl perly pes pes_ peti
2 petit pha phan phant phoma phomo phy phys physi pid pina pinal plac place plas playi ple_ plu plum plumb pois poiso
2 poor poro poros post post_ ppen ppet ppeti pred pregn pril pril_ pring priva privates+$ prol prola properly+$
2 properly+, pse pse_ purpose+$ push_ pushe put put+a put+in put+me queez quie quiet quite raci racin rail rang rang_
2 rapp rappe rapy rapy_ rat+poison rat_ rbe rbel rbell rbid_ rct rct_ rday_ rder rdia rdiac rdio rdo re reason+$ reath
2 rec regn regna reh remis rep_ repa repai resh ressi rest+$ rete_ rfo rfor rform rga rgas rgasm rge_ rib right+in ril
2 ril_ rilla rim rina ring_ riod riod_ ripl riple riv rivat rive_ rks rks_ rmo rmom rmome rms rms_ rods rods_ rola rolap
2 roll roppe rosi rosis rote rote_ rouse rreg rregu rse rse_ rted rted_ rtho rtni rtnig rtu rtum rtum_ runs runs_ rv
2 rvivo rw ryth rythi sage_ said+i says+i says+my sces scess scio sciou sec seco secon second+$ sect secti seem seem+to
2 seem_ sers sers_ sh sh_ she shed+$ shif shift shin shiv shive shivery+$ showi sic sick sick_ side+, side+of since+last
2 since+my since+tuesday since+two sion_ sis sit+on six sizes sl sla sleep+$ slip_ sm_ snes sness so+much soak sob somet
2 sopho spec speci spel spell spina sque squee ssu ssus ssus_ start+$ steo_ steop ster stf stin sting stly stly_ stood
2 stool stop+$ stop+, stopped+$ stops strai sudden+$ supp survivor+$ sus sus_ swea sweat switched+off t+# tablets+$ tai
2 takes tal_ talk tan tant tc tch tche tched tchen td team team_ tell+the temp_ ten+minutes tents teo_ teop teopo terin
2 ters ters_ th+grade that+$ that+normal the+backpassage the+blood the+clot the+crotch the+deadlift the+heart the+hill
2 the+ice the+kitchen the+missus the+pain the+paper the+roof the+saddle the+same the+scan the+strength the+tap then+my
2 there+is therm theyd thi thles three throw thump ti ticed ticke ticker+is tics tics_ tie tient ties ties_ tile tile_
2 tinen ting tite tite_ tn tnes tness tnig tnigh to to+go to+hurt to+not to+sit to+sleep to+· today+i told+me told+not
2 told+to too+late tood tood_ tool tool_ toot tooth tooth+abscess tors tre tree tric tried+to tripl triple+bypass
2 tripped+over trous trying+$ tt_ tta tteri tual tumm tummy tumo tumou twin two+days two+months uch uche uchi uchin ud_
2 udd ude_ ueez ueeze ugh uie uiet uiet_ uite uite_ ulan ulant ulat uldn uldnt uls umbar umm ummy una unal unali under
2 under+me une_ ung_ unk unk_ unny unny_ uns uns_ up+anymore up+to up_ uppe upper urge_ urina urn used used_ users usn
2 usne usnes utc utch utch_ uts_ uy v_ ver_ veryt vise vised vivo vivor vor_ vt vt_ waiti walk+$ wan want+to wanti
2 warfarin+, warn warni was+going wb wbo we weat weather+, week+and wei weight+, weight+and weight+is weight+limit wels
2 wels_ went+grey whe when when+the when_ why+$ wido widow wig wip wipe wipe_ wis wish+i wish+id without+doing
2 without+me work+$ working+$ worri wort worth wrot wrote xis xist xp xpl xpla xplai xt ye_ ylo ymp ymph ympho you youn
2 young yp ysi ysio zes zes_ zzy_
3 !+! #+at #_ ,+$ ,+been ,+cant ,+doctors ,+eating ,+got ,+im ,+landed ,+left ,+thats ,+they ,+wont .+not =# =a =able
3 =air =alive =an =apixaban =asleep =attack =avoid =barbell =beat =bend =bending =bits =bladder =breastbone =bug
3 =bulging =bumhole =bun =bunch =burden =butt =came =changed =check =coming =coronary =crash =cut =d =dabigatran =damp
3 =dark =density =disease =doctors =downthere =eating =fitted =for =gets =goes =half =heparin =hernia =hip =hit
3 =honestly =hoping =icd =ill =inr =just =last =lately =lbs =left =lift =limit =living =lungs =melanoma =mine =must
3 =myeloma =myself =nearly =neck =newborn =night =nowhere =odd =ones =operated =over =palpitations =pars =part =passed
3 =patch =peed =per =pill =pills =poo =pradaxa =put =quad =radiation =really =roof =saw =scoliosis =sexual =sheets
3 =sixteen =skipping =slid =stars =still =straining =suicidal =surgeon =sweats =swollen =tablets =teeth =that =the
3 =tiptoe =touches =trimester =trying =turning =twice =unexplained =use =wasnt =weakness =week =why =worry =yesterday
3 ^+born ^+dabigatran ^+gp ^+horse ^+nearly ^+night ^+nurse ^+pars ^+pinsandneedles ^+pradaxa ^+sex ^+still ^+teeth
3 ^+turn _# _#_ _a_ _able _adv _advi _air_ _ali _aliv _am _an_ _ano _api _art _arte _asl _asle _att _atta _av _avo _avoi
3 _bab _baby _bann _barb _bell _bits _blee _bo _bow _bug_ _bulg _bumh _bun_ _bunc _burd _can _car _carr _comi _coro _cru
3 _cut_ _d_ _dab _dabi _damp _dar _dark _dens _die _dise _disk _drib _dut _eati _em _en _fini _fit _fitt _flip _for_
3 _gets _goe _goes _gon _got _gro _gymn _has _hep _hepa _hip_ _hit _hit_ _ho _hopi _hr _icd _icd_ _il _ill _ill_ _inr
3 _inr_ _jok _ju _jus _just _keep _ki _knoc _las _last _lat _lbs _lbs_ _lef _left _lett _lin _lite _livi _matt _mela
3 _mine _moto _must _mye _myel _myse _nec _neck _newb _nob _nowh _oc _odd_ _on _ones _ou _palp _pant _pars _part _patc
3 _peed _per_ _play _poo_ _pra _prad _pro _put_ _res _roof _saw _saw_ _sca _scan _scol _scoo _sep _sept _sexu _shr _soa
3 _stil _sto _sud _sudd _surv _swo _swol _tal _tee _teet _that _the_ _thu _tin _tipt _trim _trou _tryi _twi _twic _u
3 _une _unex _unw _use_ _ver _vert _war _wasn _wate _weak _week _whe _why _why_ _year _yest _za a+bunch a+burden a+heart
3 a+temperature a+weight a_ abi abig abiga abl able+to aby act acto actor adax adaxa adder adia adiat adv advi aem
3 after+my agu agul agula air aise ak akes_ akn akne aknes aky aky_ alive+$ all+day all+good all+of alpi alpit alv alve
3 amo and+cold and+couldnt anni anom anoma antic antin apixa apped arbe arbel ardi ark around+the arry ase asl asle
3 aslee astb astbo asti astic at+l at+night ately athl athle atra atran atta attac avoi avoid aw ax axa axa_ ayi ayin
3 aying baby back+by back+got back+went back+when bad+disc ball_ bann barb barbe be+here beat_ bed bend_ bendi ber_ biga
3 bigat bit bladd blee bleed blet blood+thinners bod body bone+density bones+are born+$ bra bril bs bug_ bulg bulgi bumh
3 bumho bun+in bun_ bunc bunch burd burde butt_ bye bye_ call came+off came_ cancer+# cant+hold cant+lift card cardi
3 carry cd cd_ ces chemo+$ chest+when cida cidal cin coag coagu col coli colio control+of coro coron cov crotch+$ cru
3 ctio ction ctom ctomy ctors cult cum cut_ cy_ cyc cycl cycle dab dabi dabig dal dal_ dam damp damp_ dark dark_ dax
3 daxa daxa_ day+now dden_ dder dder_ dens densi density+is des_ dge_ diat diati die diffi dio disc+$ dise disea disk dn
3 doctor+has doctors+orders down+and down+at down+my downt drib dribb dropped+the duc dut dvi eakn eakne eall eally
3 eastb ebo eck ectio ecto ectom edic edu eek_ eeth eeth_ eets eets_ eft eft_ egg ek_ elan elano elom eloma eni eno ensi
3 ensit ent eo eon_ epari epi eps eps_ era erap erate erda erday eres eres_ erma ert_ erte erteb erve_ ery esel estly
3 eta etal ete eth eth_ etr eum event everything+went ewb ewbo ewbor exu exua exual far+$ fe_ feels+dead fell+down
3 fell+out fer_ fever+$ fficu ficu ficul finis fit fitt fitte flip floor+, fo for_ fri+$ gatr gatra geon_ gets gets_
3 ghts ghts_ gly gly_ gne go+up goe goes goes_ going+down gre gro gto gul gula gymn gymna half_ has has+gone have+gone
3 have+no he_ heart+attack heck_ heet heets help+$ hem hen_ hep hepa hepar hera herap heres heu hill hit+me hit+my hit_
3 hl hle hold+, hope hopi hopin hot+and hou hours+$ hro hts hts_ i+couldnt i+feel i+hurt i+look i+must i+stood ial ibb
3 ibbl ical_ icd icd_ icida ico icoa icoag icu icul icult idal idal_ idg idge idge_ iet_ iffi iffic igat igatr ili
3 im+eating im+sitting imest imit_ imp in+march ina_ iner ingl inis inish inki inkin inr inr_ into+the ior_ ios iosi
3 iosis iot ioth iothe ip ipt ipto iptoe iri is+$ is+coming is+no is+not is+swollen is+too isea iseas isk ison issio
3 issu it+does it+feels itat itati itche iter itted ittl ittle ity ity_ iva ivi ixa ixab ixaba ixte ixtee jec ject jok
3 ju jus just just+doesnt just+had just_ ka ked ked_ keep kins kippi knes kness knoc knock know+what ky_ lac lad ladd
3 ladde laine landed+flat lano lanom laps last last_ lately+$ lati latio lay lbs lbs_ ld lef left left_ leg+has leg+is
3 len let lett lette lgi lgin lging lie like+# lio lios liosi lipp lite liter livi livin llow_ log loma loma_ long
3 loo+and lost+control low_ lpit lpita lse lti lum lungs maker matt matte mbar mbl mble me+$ me+out mean+$ medic mela
3 melan metal mh mho mhol mhole might+as mine_ miss missi mna mnas mone moto motor must must_ my+groin my+heart my+shoes
3 my+trousers my_ mye myel myelo myse mysel na nar nary nary_ nas nast nate nate_ nce ndy ne nearl neck neck_ need nen
3 nestl newb newbo nex nexp nexpl nia night+sweats nio nior nior_ nki nkin nking nne nner nners nny nny_ no+diet nob noc
3 nock nom noma noma_ nos nothing+$ nothing+, nothing+to notic now+i nowh nowhe nr nr_ nsity nthe nther ntico
3 numb+betweenlegs nw oag oagu oagul obe ober ober_ odd_ off+the oft oft_ oid oiled oin oin_ oing oing_ ok_ olio olios
3 ollen omi omy_ on+light on+me on+monday on+tuesday onar onary onc one+side oney oof oof_ oone oote op opin oping orc
3 ord orders+$ ore_ orn orona orry orry_ otc otch othe other otic otice oto otor oug ough oul ounte ovem oven+$ over
3 over+# over+in over+the owel owh owhe owher ownt ownth oxa oxab oxaba oz palp palpi pant par parin pars pars+fracture
3 pars_ part part_ patc patch peni pera perat peri period+is pills pit pita pitat pixa pixab plant play poo_ prad prada
3 pto ptoe ptoe_ put_ quee racto rada radax radia rais raise ran_ rap rash_ rat rated ray ray_ rco rcu rcum rd rden
3 rden_ rdi ready+to reall ream ream_ rep rew ri ribb ribbl ridg ridge right+foot rime rimes rip riva rnia_ rnin rning
3 rod rol rom_ ronar roof roof_ rs_ rteb rtebr rvi rviv ryt sa_ sar saturday+$ saw saw+stars saw_ scan sce school+$ scol
3 scoli scoo seas sease sep sept sex+feels sexu sexua sharp+pain shed shed_ sheet shr sing sitting+on sixte sli slid_
3 sne soa son_ sort+of spin spine+$ ssin ssing stai stair stairs+$ stars started+with stati stb stbo stbon sted sted_
3 sterd stil still still+numb stood+up stre strea su sud sudd sudde surv survi sw sweats+and swo swol swoll tack_ tain
3 tair tairs tars tars_ tbo tbon tbone tebr tebra teet teeth tent_ terd terda teri tet tetr tf that that+before that+is
3 that_ the the+chair the+flu the+gate the+oven the+sheets the+stairs the+toilet the+train the+· thera think+i
3 thinking+about thinners+$ thle thoughts+again thro thu tico ticoa tion_ tions tip tipt tipto tis tly tly_ to+carry
3 tomy tomy_ tors_ tran_ tream trim trime tripp trou tryi tryin ts_ ttac ttack tters tum_ tumb tumbl turni turning+# twi
3 twic twice twice+today u_ uches uck_ udde udden uee ug_ ulg ulgi ulgin umbl umble umh umho umhol ump_ umps umps_ und
3 unex unexp ungs ungs_ unn unte unw up+from urden urv urvi urviv us use ushe ushed utt_ uy_ ve vem ven_ vent_ vert
3 verte viv void void_ was+operated wasn wasnt wate water way+to wbor wborn weakn weats week week_ weeks+ago well+be
3 went+down what+i why why_ wic wice wice_ with+something wnt wnth wnthe woll wolle woo wor worry xa_ xte xtee xteen xu
3 xua xual xual_ yc ycl ycle yd yd_ year yelo yelom yest yeste ymn ymna ymnas yr ysel yself ze ze_ zy ¿+¿
4 #+. #+months #+s ,+can ,+cancer ,+squat .+chest =afib =am =anus =anymore =arse =baby =balls =bed =been =brittle =bump
4 =but =bypass =coumadin =dont =ended =ending =even =expecting =fifteen =floppy =flu =found =going =goodbye =gp =had
4 =happens =have =head =heart =hot =inside =keeps =kind =kms =like =loss =mam =mi =might =months =more =nie =november
4 =op =orders =our =raises =rear =reason =ring =sex =short =shots =shower =sort =stairs =stand =stay =t =tbh =theres
4 =tingles =tingly =twins =urine =warfarin =waterworks =weeks =weight =wish =woke =your ^+burning ^+doing ^+dropped
4 ^+expecting ^+id ^+kms ^+mam ^+nie ^+nobody ^+numbness ^+short ^+theres ^+wish _abl _afi _afib _ai _am_ _anti _anu
4 _anus _anym _apix _ars _arse _bed_ _been _bend _bi _blad _bloo _bor _brit _but _but_ _con _cons _coum _disc _dont _dow
4 _down _dre _ende _endi _feel _fif _fift _flop _flu _flu_ _fo _foo _foun _goi _goin _gp _gp_ _had_ _head _her _hern
4 _hot _hot_ _insi _its _ja _jun _kee _km _kms _kms_ _kno _lea _leu _leuk _lik _like _liv _look _loss _mam _mam_ _mel
4 _meta _mi_ _mig _migh _more _mys _nee _need _nie _nie_ _not _nov _nove _nut _od _odd _op_ _os _ost _oste _our _our_
4 _pac _pat _peri _pus _push _rad _radi _rais _rear _red _repl _ri _ring _ru _sex_ _she _sit _siz _size _sme _smel _sort
4 _spe _spo _stai _stan _ste _suic _sur _sw _t_ _tab _tabl _tac _tack _tam _tb _tbh _tbh_ _thre _til _ting _trip _tro
4 _tur _turn _vir _walk _was _whi _wis _wish _wok _woke _your a+sec ablet aby_ ackl ackle adde adin_ afib afib_
4 after+this age_ airs airs_ ais aises alm an an_ and+its and+the anged anus anus_ anym anymo apix arfa arfar arin ars_
4 arse arse_ art_ ason_ at+rest atc atch atel aterw ati atr ats ats_ ave_ avin aving bab baby_ back+. back+did
4 back+hurts balls been been_ bend bh bh_ blad bloo blood bon breas breath+$ bri brit britt bu bump_ but but_ by+the
4 called+it came+out cant+pee car carr cau ce changed+$ cid co com come comi comin concu cons couldnt+feel cuss db dby
4 dbye dbye_ dden de de_ dg die+$ din_ done+with dont dont_ down dre dv eart_ ectin ed_ edin eding ee_ eedi eedin eek
4 eeps eeps_ eg_ ek eliquis+$ els_ emb embe ember emia emia_ ende ended endi ending+it ens ens_ ente ep epla eplac erat
4 erd erin erman ern erni ernia ert erw erwo erwor ets ets_ euk every+day ex_ eye fari farin feel+the feels+numb felt+it
4 fif fift fifte file file_ flop flopp flu flu_ foo foot+up foot_ foun found ft_ ftee fteen gas ge_ geo geon gg gles
4 gles_ goi goin going gone+$ goodb gor got_ gp gp_ grade+# had+a had+an had_ have_ havent+been here here+$ here_ herni
4 hip_ hole_ hort_ hots hots_ hower hre ht hud i+do i+go i+lift i+should i+tried i+walk i+wont iatio ib ical icid icke
4 icks icks_ ie if+you iftee iga ike ike_ ilin im+under in+november inc ingly ink inne insi insid int int_ ior iple
4 iple_ irs_ ises ises_ iso iss issi ist_ it+, it+all it+just it+ok itis itis_ itte ive+got ixi jun just+want kee keeps
4 kes_ ki kicked+in kind_ king king_ km kms kms_ kno lapp last+night latel le_ left+, left+arm len_ leu leuk lg lift_
4 lifting+$ lik like like_ lip list lk llen llen_ llo llow long_ lood look lopp loppy loss loss_ lu_ lumb lve madi madin
4 make mam mam_ me me+in me+to meta mig migh might might+be mom mome mos most my+foot my+head my+hip my+kids my+privates
4 my+weight myself+at ncu ncus ncuss ndar nde ner new+this next+month ng_ nged nged_ ngles ngly ngly_ nh nia_ nie nie_
4 nigh night nle nni nnin nning no+squat not nothing+happens nov nove novem november+$ nsid nside nsit nths nths_ ntin
4 nym nymo nymor odb odby odbye oes of+living of+nowhere off+a oil ok+, ole ole_ omet omin oming omy on on+eliquis
4 on+friday on+the on+thursday oncu oncus one+of onths oodb oodby opi oppy oppy_ orn_ ort_ orth ost_ oste osteo otch_
4 ots ots_ oumad ovemb oven_ owe oxi pain_ pecti pee pee_ pens pens_ phom pix por ppens pper pper_ ppy ppy_ pr
4 pregnant+$ pt push quit+$ radi rders rea rear rear+ended rear_ reast reck repl repla rfa rfar rfari rgeo rgeon rgy
4 rgy_ rine_ rittl rnia roi rona rry_ rsi rth_ rwo rwor rwork saddle+area sday_ sex_ shi short+of shots sing_ siz size
4 slapp slipped+disc sme smel sn so son sort sort_ spi stand stay_ steo stoo suic suici tackl tand tatio tay_ tbh tbh+$
4 tbh_ teb teo terw terwo thats+all the+big the+doctor the+front the+groin the+hip the+rack the_ there+$ theres+a thl
4 thre ths ths_ til_ tingl tio tion tis_ to+bend to+check to+die to+live to+stop today+, tonight+$ too tops tops_ trea
4 trip tua turn twins uc uce uf uff ug uici uicid uk ult_ umad umadi up+on urgeo urin urine urni urnin uss ust_ uti
4 valve+$ var vemb vembe vid_ warfa was was+fine weeks weight+loss well well_ wh whi wing_ wins wins_ wish wish_ wl wok
4 woke woke+up woke_ wol wont+be wont+lift x_ xe xer ye yel ymo ymor ymore your your_ yse zy_
5 #+m #+this #+wks ,+had ,+started ,+went ,+· =almost =barely =birth =blacked =bone =cant =chemo =chest =chestpain
5 =chills =clot =covid =crotch =doesnt =dr =eat =eliquis =foot =fracture =freshman =getting =got =groin =ice =jaw
5 =landed =lines =lovenox =low =nofeeling =pee =positive =pt =s =said =school =shed =spine =stood =they =thinking
5 =thinners =turn =valve =wake =wet =winded =wks =wont =xarelto =yet ^+almost ^+blacked ^+broke ^+feel ^+i ^+like ^+lost
5 ^+pt ^+ready ^+three _af _alm _almo _ant _ar _bal _be _beat _bir _blac _bon _bone _byp _bypa _cab _cant _chem _cli
5 _cov _covi _crot _dic _dr_ _eat_ _eli _eliq _foot _gett _go _got_ _groi _had _ice _ice_ _jaw _jaw_ _low_ _marc _mon
5 _my _nof _nofe _ord _orde _pace _pee_ _poo _pt _pt_ _pu _redu _roo _s_ _sai _said _say _sc _scho _shed _shi _sixt _sp
5 _sta _sui _surg _tic _tick _use _val _valv _wak _wake _warf _wet _wet_ _wh _whit _wind _wks _wks_ _won _wont _worr _xa
5 _xar _xare _yet _yet_ ad_ adi ae afi after+the aid aid_ aine aker aker_ aliv alive almo almos alve_ and and+im ann
5 anymore+, api arelt arely arf arr art as+the ash_ barbell+$ barel beat bed_ betweenlegs+$ bir bl blac black
5 blacked+out broke+my but+im byp bypa bypas cab cancer+at cant cant_ chem chemo chest+hurts cho choo chool ck ckl ckle
5 clot_ covi covid crotc cs ct ctin cting cul da_ der_ did+a disc doc+$ doesn dow downthere+$ dr_ due+in eaki eakin eam
5 eam_ east eats eats_ educ eeks eeks_ een eight eks eks_ elf_ eli eliq eliqu elto elto_ emo_ enox enox_ eon epar epl
5 ere_ eri eshm eshma esn esnt esnt_ estp estpa etti ettin ex faint+$ fib_ foot foot+is g_ gett getti groi groin had
5 happe harm head_ hemo hemo_ hest_ hestp hills hinki hite hman hman_ hole hool hool_ hop hurt+myself hy i+eat i+just
5 i+take ib_ ile_ ills ills_ ily ily_ im+on im+only in+the ina inded iner_ ines ines_ ing ing_ inn ion_ ippi ippin iq
5 iqu iqui iquis irth_ is+fine is+tingling it+normal ited ited_ itiv itive its+new itt ive_ ixt ize ja jaw jaw_ kt lacke
5 lande lant left+leg leg+, leg+gave life+$ lines liq liqu liqui living+$ lmo lmos lmost lom lop lot loven lto lto_ lur
5 mar_ marc me+on mia mia_ mine most_ my+bones my+bottom mys na_ nd_ nder_ nec ness ness_ new+$ ney ney_ no+barbell
5 no+gym no+lifting no+more nof nofe nofee nox nox_ numb+lol nurse+said nus nus_ oesn oesnt of+breath ofee ofeel off+,
5 oid_ om ome ona ones_ oo orde order ors_ ot ot_ ote_ ould ould_ out+after out+on oveno ovid ovid_ pas passed+out pat
5 pill_ pin pine_ ping ping_ pla po poo pra pt_ pu pus py py_ quis quis_ ract rb rde redu reduc relt relto rely rely_
5 reshm rf ring ritt roin roin_ rotc rotch round+my rth rts rts_ ruc ruck ruck_ sai said said+no said_ say sca scho
5 schoo self_ shm shma shman sit+$ sitiv sixt spe spo stent stopped+working stp stpai sui surg surge tal tat the+foot
5 the+other the+shed ther they_ this+back tic tic_ til tit to+$ to+get too+$ took+a tpai tpain ture_ turn+# turn_ uff_
5 ui uis uis_ ula uld uld_ ult umar umar_ un une urge user ut val valv valve ve_ veno venox vent vic vice vice_ wak wake
5 wake+up wake_ walk warf wet wet_ whit white wind winde wks wks_ won wont wont_ worr xar xare xarel year+# yet yet_ yi
5 ypa ypas ypass ys ·+at ·+for ·+is ·+now
6 #+weeks ,+l =area =being =blood =born =btw =c =days =faint =grade =hurts =if =its =leaking =leg =life =out =preggo
6 =privates =scan =seat =up =wee =year ^+first ^+have ^+preggo ^+under _area _ban _bei _bein _birt _born _bt _btw _btw_
6 _c_ _ch _chir _conc _cro _days _dis _f _fa _fell _grad _grey _have _hea _hop _if _if_ _its_ _kin _kind _leg_ _life
6 _line _mont _out_ _over _reas _rin _sav _sch _sea _seat _slid _spon _sten _ta _the _tho _thr _tr _tum _up_ _ur _uri
6 _urin _va _wee_ _wk _wou _woul aba aban aban_ actur after+i ake ale_ alk ano anti appe are area_ around+my as aso ason
6 ass atch_ aw_ back+in back+pain bal bei bein being big birt birth bt btw btw+$ btw_ by+a came+down can chir chiro ck_
6 cli conc coum couma crot cse cti cy di did+$ do+not down+the eart easo eason edi eed eggo eggo_ ei ein eing eing_ en
6 ent_ epa er erm feels+like fell fell+off for+me from+a ggo ggo_ ght go+to grad grade grey gu gy_ had+back have have+#
6 head heart her hey hiro hma howe hurts if_ ife ift_ ik il_ im im+sick infa infar ipl ir iro irth is+it just+turned
6 kind ks_ leaki left+side leg_ les li life life_ live live_ lk_ lood_ lve_ ma ma_ me_ melt mi_ mon mont month mps mps_
6 my+back my+· nfa nfar nis nl nor_ nsi nted nted_ ob_ ock_ of+my oma ondy ones ont_ onth orl ort osi osis osis_ ost
6 ought oum ouma out+for pondy ppe pregg quad_ qui ractu rade rade_ rea_ reaso regg reggo rey rine rman rry rz s+# sav
6 scan_ sch se sea seat seat_ see+a ses_ showe since+the sity sity_ snt snt_ squat+$ stpa tati tch_ ted ted_ tem tent
6 test+, than+the the+bed the+time think+about toe toe_ tol tpa tuesday+$ ture turned+# tw_ uad_ ud ught under+# urn_
6 urts urts_ ust vates ven wee_ wi wk wou woul would xab xaba xaban year_ yin ying ying_ you+know zi zin ·+all
7 #+in ,+no =betweenlegs =die =disc =feels =fever =gone =has =hs =im =in =not =on =round =says =sit =thoughts =til =to
7 =under =would =yr ^+came ^+long _ball _bun _clo _clot _da _di _die_ _fe _fra _get _gone _has_ _hs_ _im_ _in_ _not_
7 _on_ _pee _per _pil _pill _says _sex _show _sit_ _stoo _tem _temp _thi _thou _til_ _to_ _tri _yr _yr_ ada ade_ am_
7 and+my ar arin_ as+a baby+$ back+surgery ban_ be bi bit+of bone bone_ bor bun chest+is clo clot con cro cto dead+$
7 den_ die_ disc_ doc ect eenl eenle emo emp endin enle enleg ess_ ey_ fe feels fib fra fract friday+$ get go gone gone_
7 got+the has_ hea hin hink hinne hip+$ hm ho hs_ i+have ic ici if il im_ in+year ino isc_ ite ive ks la les_ lift+my
7 line ly_ mo_ myself+$ nded nded_ next+year nleg nlegs not+# not_ ns ob od oe oe_ ol ool_ ote passe pil pill pon pond
7 rc rest rt ru says says_ sex show sis_ sit sit_ so+far spon spond squats+$ sten teen teen_ temp the+shower there think
7 time+now to_ tp tran tu tur ughts um under+the up+the up+tomorrow vi weenl win yr_
8 #+next #+th ,+it ,+right =doc =f =fell =minor =rest =since =th =told =walk =want ^+the ^+up _bla _cl _doc _doc_ _eat
8 _f_ _frac _ge _hav _hear _ic _j _m _met _mino _ob _ov _ove _pre _sa _sin _sinc _slap _st _th_ _tol _told _wo a+minor
8 actu age+, ago+$ aint_ alk_ and_ are+numb area at+work ball born_ burning+up by can+do chest ci cl dar dic dis doc_
8 ear eck_ ecti est est_ eu feel fell_ for+it frac had+the hav hear hest hinn hit houg hough how ie_ ile ince ince_ inor
8 inor_ is ke_ knee+to know+how l_ liv low+back m+# mel mino minor my nn not+to nt nte oc_ oll oma_ os per pre ran rest_
8 rni sa self sinc since slap slid sp tac the+leg the+weekend thinn thou thoug thr told told_ tri ul uma urg ver want_
8 wel xi yet+$
9 #+days ,+# ^+ive ^+woke _age _al _canc _fai _fain _fev _feve _hs _im _in _pr _preg _ther _they _we a+baby acke ade ali
9 ant_ arel ast atio ation born canc cance days+ago dde den eat elf ell_ enl f_ fai fain faint fev feve fever for+good
9 hes hs i_ io is+tight ise ly mb_ mo mp_ ncer night+$ nt_ nth numb+$ oi one oven preg reas reg rge rin_ rot sc_ sel st_
9 tack tb ten that+ok they thin tho tum umb_ walk_ wee
10 #+is =ive ^+cancer ^+fell _ag _an _at _bu _e _ed _ive _ive_ _leak _rest _wee aint all+the bla ches eat_ em en_ lap
10 leak mi more more_ nes_ ont ool ox pain+in pass pi rel rn rn_ tee th_ this+morning ut_
11 =and =be =cancer =i =m =numb ^+got _and _and_ _be_ _che _du _i_ _m_ _mi _pe acked al ancer av avi cer cer_ che da ded
11 ded_ ear_ ge ia_ is+that ix l+# mp ncer_ ni not+· numb_ ound_ rg sin und_ when+i
12 =age =id _age_ _bl _id_ ars b_ be_ far in+my ine ke no oc ss ss_ xa
13 =l _l_ _thin ec hr i+am ia met no+· rad rin sc te va years+old
14 =me ^+age ^+had _ches _id _iv _me_ _si _su ab ant ban du ey fa got+a id_ im+# ste the+back
15 ._ =. _. _._ _me is+numb kin old+$ wo
16 ad last+week ·+$
17 and+i c_ nes si
20 iv
35 ·+·
"""),
    "anticoagulants": (-5, """
-4 =i =· ing_ one_
-3 =in =no =up _can _in_ _no_ _not _up_ ack_ ight ion_ ive_ ting
-2 =, =. =a =and =back =cant =heart =is =ive =just =l =me =not =numb =off =out =this =to _and _bac _bon _car _dis _fee
-2 _hav _hea _is_ _ive _jus _me_ _num _off _out _the _to_ _wor ain_ all_ and_ ant_ art_ ave_ ays_ back bone cant ches
-2 disc eart eel_ een_ ell_ est_ feel ght_ hear hink his_ just nes_ not_ numb off_ old_ ould out_ ring this umb_ ver_
-1 =about =again =age =ago =all =almost =are =as =at =baby =be =bed =been =before =bit =bone =bones =born =btw =but
-1 =bypass =c =came =cancer =chemo =chest =couldnt =days =dead =did =disc =do =doesnt =down =f =feel =feels =fell =fever
-1 =fine =foot =friday =from =getting =go =going =gone =good =got =grade =had =half =have =hip =hit =id =if =im
-1 =infection =it =its =kg =left =leg =lift =like =lol =long =lost =m =march =minor =month =my =never =night =nofeeling
-1 =nothing =now =of =old =one =only =over =pee =pregnant =purpose =reason =s =said =says =school =shot =spine =stairs
-1 =steroid =sunday =th =that =the =think =thinking =three =time =today =told =too =two =under =valve =way =weeks
-1 =weight =went =wet =when =wks =wont =work =x _abo _aga _age _ago _all _alm _any _are _art _as_ _at_ _bab _bal _be_
-1 _bea _bed _bee _bef _bet _bit _bla _bor _bre _btw _bur _but _byp _cam _cha _che _chi _com _con _cor _cro _dea _did
-1 _do_ _doe _don _dow _dri _eat _ere _fai _fel _fev _fin _fir _fli _flo _foo _fou _fri _fro _go_ _goi _gon _goo _got
-1 _gra _had _hal _har _hip _hit _hol _hur _id_ _if_ _im_ _inf _it_ _its _jun _kee _kg_ _kid _kil _kno _lan _lat _lea
-1 _lef _leg _let _lif _lik _liv _lol _lon _los _low _man _met _min _mis _mon _my_ _nev _new _nig _nof _now _of_ _old
-1 _one _onl _ost _ove _pac _pal _par _pee _per _pin _pos _pre _pro _pur _rea _rep _res _sai _sat _say _sca _sch _sco
-1 _sec _shi _sid _six _ski _spi _spo _squ _ste _str _stu _sui _sun _sur _tam _tem _tes _th_ _tha _thu _tim _tod _tol
-1 _tra _tri _tro _tur _two _und _val _wal _wan _way _wea _wee _wei _wen _wet _wha _whe _wit _wks _won _wou _yea abou
-1 aby_ acti ade_ agai age_ ago_ aid_ aint airs alf_ aliv ally almo alve ame_ ance ange any_ appe arch ard_ ardi are_
-1 area arri arry ars_ ase_ ash_ ason ass_ atch ate_ ath_ atio atur baby beat been befo ber_ bit_ blac ble_ body born
-1 bout brea btw_ but_ bye_ bypa came can_ canc car_ card carr cer_ chem choo cide clea come conc coul cted ctom day_
-1 days ddle dead ded_ der_ did_ ding dle_ dnis dnt_ does down ean_ ear_ ears easo eat_ eath eck_ ecto edni eeks eeli
-1 eels eep_ efor eft_ egna eigh eing eks_ elin els_ emo_ end_ ent_ eps_ erat ere_ erec erni eroi eryt esnt ess_ estr
-1 etti fain fect fell feve fine foot fore frac frid from ftin gain ged_ gett gnan goin gone good got_ grad had_ half
-1 hang hat_ have hed_ hemo hen_ here hern hes_ hest high hing hip_ hit_ hold hool hot_ how_ hree hurs hurt icid ick_
-1 icke ics_ iday ide_ ies_ ift_ ifti igh_ ike_ ime_ ind_ infe ink_ inki inor int_ inte ired irs_ isc_ ish_ itis its_
-1 ity_ iver keep ker_ king lack ldnt leak lear left leg_ les_ lift like ling list live lmos lol_ long lost lve_ mia_
-1 mino miss mit_ mont most nal_ nant ncer nday nded nder ndin need ness neve new_ nfec nged nia_ nigh niso nkin nly_
-1 nofe nor_ now_ nted nth_ oday ody_ oes_ oesn ofee oid_ oing oke_ oma_ ome_ omy_ ondy ones ong_ only ont_ onth ool_
-1 oot_ oper oppe ork_ orn_ orse ort_ orti ose_ osis ost_ oste othi otic ough ound over own_ pain part pass ped_ pee_
-1 pera peri pine plan ple_ pond pose pped pred preg purp quat ract rade rain rch_ rden real reas reat rect red_ redn
-1 ree_ regn rep_ rest rict rida rly_ rnia roid roun rpos rry_ rse_ rth_ ryth said says scar scho sday sed_ shed side
-1 sing sion sis_ snt_ sone spin spon squa ssed stai stan steo ster stoo stpa stri suic sund surg tack tair tand tch_
-1 teen temp tero test the_ ther thes thig thou thre thur tick time tion tire tis_ toda toe_ told tomy too_ trai tric
-1 trip trou ttin ture turn two_ ught uici uld_ uldn und_ unda unde urde ure_ urge urin urpo used valv vent walk want
-1 way_ weak week weig went wet_ what when wife with wks_ wont work woul year ying ypas ythi
1 =# =afib =after =another =anticoagulant =because =called =clopidogrel =cracked =dad =daily =doctor =easy =for =gets
1 =giving =hour =last =medicine =mg =more =poison =rat =see =shower =slipped =something =started =stent =stopping
1 =taking =thats =thinned =thinner =thinning =til =took =twice =was =week =which =yes =¿ _afi _aft _ano _bec _beg _ble
1 _bri _cal _cle _cou _cra _dad _dai _day _doc _eas _eve _fal _las _mg_ _mor _pea _poi _rat _see _sha _sho _spe _sto
1 _tab _tic _til _too able afib afte aily alle anot arte ast_ asy_ ause beca bell blee blet call caus chec cine cked
1 clop crac ctor dad_ dail dici doct dogr each easy ecau edic elli enin ethi even fib_ flut for_ forg fter get_ gets
1 gist givi hats havi heck hich howe hrow ich_ icin idog ill_ inni ins_ ions ise_ ist_ ked_ lant last late leed let_
1 lled lly_ logi lopi lutt mato medi meth min_ ner_ ning nned nnin octo ogis ogre oiso olog ons_ opid oppi peac pell
1 per_ pido pois pper pres prof rack rat_ rel_ rom_ rted see_ shav son_ spel star tabl taki tart tent tica til_ took
1 tor_ twic ulat use_ user ute_ utte ven_ was_ whic wice yes_
2 =aspirin =belly =bruise =day =dvt =edoxaban =evening =every =heparin =injections =lovenox =must =pill =rivaroxaban
2 =shots =so =stop =tablet _asp _bel _bru _dvt _edo _hep _jan _lov _mar _med _mus _pil _riv _so_ _sup _use _yes ane_
2 arox aspi bril brui doxa dvt_ edox elly enox epar erin ery_ grel gula hepa hots ilin irin ivar love marc must nox_
2 ook_ pari pill piri ran_ rcum riva roxa ruis shot spir stop supp top_ tran uise ulan varo veni veno very
3 =apixaban =blood =coumadin =dabigatran =eliquis =pradaxa =take =thinners =warfarin =xarelto _ant _blo _dab _eli _inj
3 _pra _tak _thi _xar abig adax adin agul ake_ anti arel arfa atra axa_ biga bloo coag dabi daxa din_ eliq elto ers_
3 fari gatr icoa igat inje inne iqui ixab ject liqu lood lto_ madi mar_ ners njec nner ntic oagu ood_ oven oxab pixa
3 prad quis rada relt rfar take thin thro tico uis_ umad umar xare
4 =clot =on _api _on_ _war aban apix arin coum hinn lot_ ots_ ouma warf xaba
5 =inr _clo _inr ban_ clot inr_ rin_
7 _pla
8 _sav
"""),
    "bladder_bowel": (-6, """
-4 =# _che _hea _per _wan
-3 =be =heart =off =on =says =want _be_ _foo _leg _lif _off _on_ ead_ eart eath ecti eigh foot hear ish_ oes_ off_ oot_
-3 reat says want
-2 =, =about =breath =cancer =chest =do =fell =fever =foot =how =in =left =leg =legs =of =one =said =sex =side =so =take
-2 =walk =weeks =weight _abo _aro _bar _bet _bur _die _dis _do_ _doc _eat _ere _fai _fal _fev _goo _han _how _in_ _ins
-2 _lef _liv _of_ _one _ove _par _pla _res _sai _sat _sch _sex _so_ _ste _sur _swe _tin _tou _wal _wip _wor _wou _yea
-2 abou aid_ ain_ aint airs aker alf_ alk_ ance ard_ arm_ arou ars_ ath_ ban_ blac bone bout brea canc cer_ ches cked
-2 ckin clea clot ctio ded_ disc eat_ eati eeks eel_ eep_ eft_ egs_ eks_ erec erfo ery_ ess_ est_ fall fell feve form
-2 hest hink hinn how_ ick_ ide_ ife_ ight ingl inne insi irs_ ker_ left leg_ legs les_ lift live lls_ look ment mia_
-2 ncer ner_ nner nsid one_ ood_ ook_ oor_ over ower perf ping plan reas rect rfor rin_ ryin said scho sex_ side spin
-2 stai swea tair they ting tion touc tter very ving walk weat weig wer_ woul year ying
-1 =a =ache =again =age =ago =air =alive =am =ankle =any =apixaban =area =arms =around =as =asleep =away =awkward =back
-1 =bad =bar =basement =bedroom =being =belt =bending =better =betweenlegs =birth =bits =black =blacked =blood =bones
-1 =born =both =box =breathe =bug =burning =by =bypass =calf =can =change =christmas =clean =cleared =climax =clot
-1 =clothes =cold =come =concrete =could =counter =covid =crotch =cut =dad =dark =day =dead =diet =disc =doc =doctor
-1 =dropped =dull =during =easy =eat =eating =eliquis =em =erection =everyone =exercise =eyes =face =fainting =fall =fat
-1 =feel =few =finish =floor =flu =folded =for =fuzzy =gave =goes =good =got =grey =groin =had =half =hand =he =head
-1 =heel =hernia =him =hit =hoping =horse =hot =hurts =i =im =inside =into =jaw =joking =june =kg =kill =kind =kms =knee
-1 =l =ladder =lie =life =lift =lifting =like =live =living =look =lose =losing =low =lower =march =may =me =message
-1 =middle =might =mind =miss =month =my =nearly =newborn =next =nobody =normal =numb =o =ok =op =orgasm =our =over
-1 =paper =passed =period =permanently =physio =pills =pinsandneedles =positive =pounding =power =pradaxa =pregnant
-1 =pull =pulled =purpose =reason =rep =rest =rivaroxaban =run =s =saddle =safe =sat =saturday =saw =school =seat
-1 =second =see =sizes =skin =sleep =slid =slipped =spine =spring =stairs =stand =stent =stents =step =still =stone
-1 =strain =strong =summer =surgeon =surgery =sweats =tablets =taking =tampon =temp =tested =them =theres =they =theyve
-1 =thigh =thinking =thinner =thinners =thoughts =three =til =tingly =tired =toes =told =tomorrow =tonight =took =touch
-1 =touching =training =tried =trust =trying =tumble =turned =under =use =valve =ward =warfarin =warm =washing =water
-1 =weaker =went =what =why =wife =wiping =wish =with =wont =woozy =worked =world =would =wouldnt =year =years =yet _aga
-1 _ago _air _ali _am_ _ank _ano _ant _api _app _are _arm _arr _as_ _asl _awa _awk _bad _bal _bei _bir _ble _bod _bon
-1 _boo _bor _bot _bra _bre _bri _buc _bug _by_ _byp _car _chi _chr _cli _col _cov _cra _cro _cru _cut _dad _dar _dea
-1 _dre _dry _dul _dur _eas _edg _eja _eli _els _em_ _end _exa _exe _exi _eye _fac _fat _fel _few _fin _fir _flu _fol
-1 _fra _fre _fri _fuz _gav _giv _goe _gra _gre _gro _gym _had _hal _har _has _he_ _hee _her _him _hit _hop _hor _hot
-1 _im_ _imp _inf _inj _jaw _jun _kee _kg_ _kic _kid _kil _kms _kne _lad _leu _lie _lik _lim _lin _los _lov _low _lum
-1 _mal _man _mat _may _me_ _med _mel _met _mig _mil _mon _my_ _nea _nex _noo _num _ok_ _op_ _org _ost _our _pac _pal
-1 _pap _pas _pen _phy _pil _pin _pou _pow _pra _pul _pur _qua _qui _rac _rea _rep _riv _rou _rub _sad _saf _saw _say
-1 _sca _sco _scr _sea _sec _sen _set _sha _shi _shr _sid _six _siz _ski _sle _sma _sof _sor _spi _spo _spr _squ _sti
-1 _sui _sum _tab _tai _tak _tal _tam _tem _tes _thi _tic _til _tip _tir _toe _tol _tom _ton _too _tru _try _tur _typ
-1 _use _val _war _wen _wha _why _wif _win _wis _won _woo _yet _you aban ace_ acem acin acke actu acul adax addl ade_
-1 adin afe_ agai ago_ agul aile aky_ ale_ aliv alls alve ampo andn anen ange ankl anti any_ aper apix apse arch ardi
-1 area arel arfa ark_ arly arms arox arri arry ary_ asem ash_ ashi asle asm_ ason aspi ass_ asy_ athl atio ats_ atte
-1 atur aty_ ave_ away awkw axa_ bad_ ball bar_ base bedr bein belt bend bett betw birt bits blee blet bloo bly_ body
-1 born both box_ brac buck bug_ burn butt bypa calf can_ card care carr chan che_ chec ched chin choo chri cing cise
-1 cle_ clim coag cold comp conc cond coun covi cret crot crum ctom ctur cula cut_ dad_ dal_ dark daxa dead dge_ diet
-1 dles dnee doc_ droo dull duri eare earl ears easo east easy eats eavi eck_ econ ecto edge edle edro eedl een_ eenl
-1 egna ejac eliq else emen emia emp_ end_ endi enle entl eon_ epar erat erci eres erin erio erma erni ert_ eryo eryt
-1 essa ete_ etin ette etwe ever ewbo exer exis ext_ eyes eyve face fail fain fari fat_ feel few_ fib_ fini floo flop
-1 flu_ fold for_ frac frid ftin ful_ fuzz gain gasm gave geon gery ghts ging gle_ gles glin gly_ gnan goes good got_
-1 grab grey groi gula had_ half hand hard head heav heck hed_ heel hem_ hern hes_ hey_ heyv high hill him_ hip_ hirt
-1 hit_ hive hool hopi hors hot_ howe hree hris hrow hts_ hurt hysi icid icoa iddl idge ids_ ied_ ier_ iet_ ifti igh_
-1 ike_ ile_ ills ily_ imax ina_ ind_ ing_ inis ink_ insa inst int_ inti into iod_ ion_ ions ious ipin iqui irin irth
-1 isc_ ise_ ist_ istm itch ite_ ith_ itis itiv ivar iver ivin ixab izes jacu jaw_ joki june keep kick kill kilo kin_
-1 king kinn kms_ knee knoc kwar lace lant laps lati lded lean lear leed leep ler_ less lets lett leuk lid_ lie_ life
-1 like lima limp line ling liqu livi lkin llow lood loor lopp losi loth love lowe lve_ mal_ mane marc mas_ mate max_
-1 may_ mble medi mer_ midd migh mind mmer mont morr most mple mpon nant ncre nded ndne nds_ near nee_ ners nes_ ness
-1 newb next ngle ngly nia_ nish nkle nleg nnin nock noon nsan nted nter nth_ ntic ntly nto_ numb oagu ocke octo ody_
-1 oft_ oid_ oin_ okin olla oma_ ome_ omor omy_ oncr ond_ ones ong_ onig ons_ onth oon_ oozy ope_ opin oppe oppi orga
-1 orke orld orn_ orro orse osed osin osis osit oste otch ote_ oth_ othe ots_ ould ound ount out_ oven ovid oxab ozy_
-1 pace pape part ped_ pera peri perm phys pine pins pixa plac ple_ pon_ pond port pose posi poun powe pped prad preg
-1 prin psed pull purp quad quat quis raci rack ract rada rcis rder rea_ red_ ree_ regn rent rep_ res_ rest rey_ rfar
-1 rgas rgeo rger ridg ried ring riod rist riva rked rld_ rly_ rman rms_ rned rnia roin rom_ rong ropp rotc roun row_
-1 rowi roxa rpos rrow rth_ run_ runk runn rust ryon ryth sadd safe sand sat_ satu saw_ scar seat seco see_ seme sens
-1 ses_ shak shav shin shiv shot show sio_ sion sis_ siti sixt size slee slid smal son_ sort spon spor spri squa stan
-1 stay stea sted sten steo stil stio stma ston stpa stro suic summ surg tabl tack taki talk tamp tch_ tche tead ted_
-1 teen temp tep_ tetr the_ them thes thig thin thle thre tic_ tick tico tile till tis_ tive tly_ tmas tmen tnes toe_
-1 toes told tomo tomy tone toni took tor_ tral tran tren trie trip tron trus tryi tten tum_ tumb turd ture turn twee
-1 uad_ uchi uck_ uckl uici uis_ ulat uld_ ulle umb_ umbl umme ump_ une_ unk_ unte urda ure_ urn_ urne urni urpo urts
-1 used ushe utch utti uzzy valv varo ved_ veri ves_ vid_ ward warf warm wash watc way_ wbor week ween well went what
-1 why_ wife wipe wipi wish wkwa wont wooz worl xaba xerc xist yes_ yet_ ypas ysio ythm yve_ zes_ zzy_
1 =accident =aches =ages =all =already =always =and =anything =asking =backpassage =backs =backside =basically =because
1 =been =belly =bent =bit =bum =bus =called =came =car =caught =college =couldnt =deadlift =difficult =doctors =doesnt
1 =down =drop =drops =either =even =feeling =felt =flared =found =full =gas =going =gotta =hadnt =happened =happening
1 =hear =hell =help =hole =hour =hrs =ill =is =it =joke =just =kinda =know =knowing =late =lazy =little =loads =loo
1 =lost =make =marks =mean =midstream =min =mins =monday =morning =night =normally =notice =noticed =nurse =old =once
1 =only =out =pads =paining =post =press =pressure =properly =push =pushing =right =say =sheets =short =should =sir
1 =sitting =skid =slow =smell =spare =started =starts =stop =stopped =stops =straight =straining =stuff =tap =tell =ten
1 =that =then =thing =things =though =thought =through =thursday =time =to =toilet =towel =trouble =trousers =twice
1 =underwear =until =urinate =wasnt =where =will =without =wks =yesterday _age _all _alr _alw _and _any _ask _bac _ban
1 _bat _bee _bow _box _bus _cam _can _cau _cha _clo _cou _day _did _dif _don _dor _dru _eit _emb _far _fit _fla _fou
1 _ful _get _goi _hap _hel _hrs _ill _is_ _it_ _its _jok _jus _lan _lat _lau _laz _lit _loo _mak _mea _min _mor _mus
1 _nig _nur _onc _onl _out _pai _plu _ran _run _sir _slo _soa _spa _tap _tea _tel _to_ _toi _tow _tum _twi _unt _wai
1 _wat _wks _yes ache ackp adnt ads_ ady_ ages ags_ aini air_ alis ally alre alwa and_ anyt appy are_ arin arks art_
1 arts asic aski assa atch ate_ ated ater ays_ azy_ back basi bath been bent bing bit_ blem bum_ bus_ call came car_
1 caug caus cher ckpa cks_ cksi cles cloc coll come comi cons coul cult day_ ddle derw diff ding dle_ dock dorm drag
1 drin dstr each eady eake eali eam_ ean_ eeli eets ege_ eith elf_ elin elly elp_ els_ emba ened enin ents erda ere_
1 erly ers_ erwe esnt essi essu eter etti fast feed felt ffic ficu find flar forg foun full gas_ ges_ give goin gott
1 hadn happ heet hell help hen_ her_ hing houg hout hrou hrs_ hurs iate iced ich_ icks icul idst iffi ilet ill_ ime_
1 imes inda ined ings inin isse issi ithe itho itti joke just kid_ kpas ksid lare lass laug lazy lege let_ lipp lise
1 litt lleg lly_ lock loo_ lose lost lrea lumb lway make mark mbin mean mell melt mids min_ ming mins mmy_ mond morn
1 nate nce_ nda_ nday ned_ nent ngs_ ning nly_ nna_ nowi ntil ntin nurs nyth oads ock_ oesn oke_ old_ olle omin once
1 only ool_ open oper orni ost_ otic otta oubl ough padd pads pare pene peni perl plum post ppen ppin pres rass read
1 real ream ress rick righ rink rnin robl rop_ rope rops rote roub roug rsda rts_ rwea say_ sday self sers shee shop
1 sica sing sir_ sitt skid slip slow snt_ soak spar ssur stin stri stuf sure tap_ teac tell ten_ tent terd that then
1 thur tice toil top_ tops tors towe trai trea tric tta_ ttin tuff tumm twic uble ught ult_ umbi ummy unny unti urge
1 ursd urse use_ user ush_ ust_ uts_ wasn wel_ wher wice wks_ yest ythi
2 =. =bathroom =bed =bowels =cant =chair =comes =coming =constipated =couch =damp =days =didnt =empty =ever =excuse
2 =flow =gonna =hold =hours =incontinent =ive =leaked =missus =need =needing =never =new =now =own =patch =peed =seem
2 =start =stool =takes =times =urge =urine =warning =wearing =weird =wk =yr _abl _acc _bed _com _dam _dra _emp _exc _gon
2 _hav _hol _hos _inc _ive _kno _nev _new _now _old _own _pad _pan _pat _pro _pus _que _ret _tim _tro _urg _wea _wk_
2 _yr_ able acks akes akin amp_ ank_ ants arni athr augh bed_ blin bowe cant chai clos couc cuse damp days dent der_
2 didn dnt_ eari edin eedi eem_ eird empt ent_ enti esse excu flow gonn hair have hold hort hroo iati idnt iled inat
2 inco ine_ inen ipat ippi ird_ issu know lack low_ mess mpty ncon neve noti now_ nsti ntio omes onna onst onti ops_
2 ose_ ours owel own_ patc pate peed poop prop pty_ push rete rge_ rine seem shor ssin ssus stip sus_ thou thro time
2 tipa tool ugh_ urs_ ushi warn wate ways weir wels work xcus
3 =able =control =havent =no =pants =runs =waterworks _bla _con _dri _hou _nee _no_ _pis _sla _sme _sto acci adde aked
3 aven ble_ ccid cide dder drib ench erwo hour ibbl iden kes_ ladd nch_ need new_ ntro nts_ oile ontr orks pant ribb
3 rina rol_ runs rwor smel ssed star stoo stop tart terw tine trol trou uns_ vent wear
4 =bladder =go =leaking =peeing =poo _go_ _lea _mes _uri blad cont eaki eed_ eein eing mes_ peei piss poo_ rks_ urin
5 _wee _wet leak
6 =pee =wee =wet =· _pee _poo pee_ wee_ wet_
"""),
    "cancer_bone": (-7, """
-4 ing_
-3 =cant =i =me =no =up _hea _me_ _no_ _up_ _wee ant_ cant disc est_ feel old_
-2 =# =. =an =be =chest =disc =gone =has =heart =im =l =leg =numb =this =to =year _an_ _be_ _blo _clo _dis _don _fee
-2 _foo _gon _has _im_ _leg _lif _num _sto _str _to_ _wit and_ art_ ches ctio day_ ded_ der_ down eart ecti eel_ ell_
-2 ght_ has_ hear here hest his_ ight isc_ ive_ leg_ lift ling nner numb ont_ ood_ ould pass ped_ rin_ sten ted_ this
-2 ting umb_ ver_ week with work
-1 =, =a =ablation =afib =age =ago =all =am =and =around =arteries =as =baby =because =behind =bit =blood =both
-1 =breastbone =but =by =bypass =came =can =clot =coumadin =days =dead =did =do =doesnt =done =dont =down =eat =edoxaban
-1 =eliquis =feel =feels =fell =fever =few =foot =fracture =go =got =grade =havent =hit =horse =id =infection =it =ive
-1 =keep =kg =laminectomy =landed =last =left =life =lift =lol =lost =lower =m =month =myself =nearly =neck =never =new
-1 =night =nofeeling =not =of =ok =old =one =ones =only =op =over =pee =preggo =pregnant =put =right =rods =s =school
-1 =scoliosis =second =section =shots =so =spinal =started =stenosis =still =sunday =surgery =svt =th =that =the =then
-1 =there =theres =thermometer =thing =thinner =thinners =today =told =too =tumble =turn =twins =under =valve =walk
-1 =warfarin =way =weeks =weird =went =wet =with =wont =work =would =x =xarelto =yesterday _abl _afi _aga _ago _all _am_
-1 _and _ant _any _api _aro _art _as_ _bab _bar _bec _bed _beh _ben _bet _bit _bla _bot _bra _bre _bul _bum _bur _bus
-1 _but _by_ _byp _cal _car _chi _col _com _con _cur _day _dea _deg _did _die _do_ _doe _dow _eas _eat _edo _eli _fai
-1 _fel _fev _few _fir _flo _flu _fus _get _go_ _goo _got _gra _har _her _hit _hol _hop _hur _id_ _inf _it_ _ive _jun
-1 _kee _kg_ _kil _kno _lam _lan _las _lat _lea _lef _lin _liv _loa _lol _los _min _mis _mor _mus _mys _nea _nec _nev
-1 _new _nig _nof _not _of_ _ok_ _old _one _onl _op_ _ove _pac _pai _par _pas _pee _per _pin _pla _poi _pra _pro _put
-1 _rea _res _rig _rod _sav _sch _sco _sep _she _shi _sho _sit _six _ski _sli _so_ _som _spi _spo _squ _sta _sti _sud
-1 _sui _sun _svt _tem _th_ _tho _thu _tic _tig _til _tin _tod _tol _too _tra _tri _tur _twi _use _val _wal _wan _war
-1 _way _wea _wen _wet _wip _won _wor _wou _xar _yes _you aban abla aby_ ace_ ack_ adde adin afib agai ago_ ain_ aint
-1 airs aker ale_ alf_ all_ alle alve ame_ amin ande ang_ anti apix appe apse ard_ ardi area arel arfa arin arou arry
-1 arte ash_ ast_ astb atel ath_ ause aven ays_ baby ban_ bar_ beca bed_ behi bell bend ber_ bit_ blat ble_ bloo body
-1 born both bra_ brac brea bump burn but_ bypa call card care carr caus cect chan choo cked clot coli coll come conc
-1 coul coum ctor days dden dder dead den_ dent did_ din_ dnt_ doct does done dont doxa drop ead_ ean_ ear_ eat_ eath
-1 ecau eck_ edox eeks eeli eels een_ eep_ eft_ eggo egna ehin eing eird eks_ elf_ elin eliq els_ elto ely_ embe end_
-1 enos ent_ enti epla erda ere_ eres erie erin erma ermo erni ers_ esnt ess_ este etal eter even ever fain fari fect
-1 fell feve few_ fib_ floo foot form gain ged_ ger_ gery ggo_ gone good got_ grad groi gula hang herm hern hes_ hift
-1 hind hink hit_ hone hool hope hors hots houg howe hurt ice_ icid ick_ icke ics_ ide_ iet_ ife_ ift_ ifte ike_ ills
-1 inal inec infe ingl ink_ int_ iosi ippe iqui irs_ isce issu ith_ iver ked_ keep ker_ kilo king know lace ladd lami
-1 land laps last late lati ldnt leak led_ left les_ let_ life line lios lipp liqu live lled lly_ load lock lol_ lood
-1 loor lost lot_ lowe lto_ lumb lve_ madi make mbar mber mble mete mine more most myse nal_ nce_ nded ndin near neck
-1 nect need ner_ ners ness neum neve new_ nfec nger ngle nigh ning nly_ nofe nosi not_ nted nth_ nts_ ock_ octo oday
-1 ods_ ody_ oes_ oesn ofee oing olap olio ome_ omet ond_ ondy only ons_ ool_ oone oot_ ope_ oper ops_ ore_ ork_ orma
-1 orn_ orse orwa ost_ oth_ otic ots_ ouma oung out_ oven over ower own_ oxab pace pain park pee_ peri pina plac plas
-1 pond pped preg pres prol put_ quat quis rade rday regg regn relt repl res_ ress rest rfar rger righ riva rman rmom
-1 rned rnia rnin rods roin rola rry_ rse_ rted rter rts_ ryth scar scec scho scol sday sect sed_ self sept shif shin
-1 show side sing sixt slid slip snt_ some son_ spon squa stai stan star stbo step stic stil stly stoo stop stre sudd
-1 suic sund surg svt_ tack tair tal_ tand tart tati tbon tch_ teen tely temp teno tent ter_ terd teri the_ then thes
-1 thin thou thro tic_ tick tics tigh til_ till tion tly_ toda told too_ tor_ trai tran ttin tumb turn twin udde ugh_
-1 ught uici uis_ uld_ uldn umad unda ure_ urge urne use_ used valv ven_ vent ving walk want ward warf way_ weir went
-1 wer_ wet_ wing wins wont woul xaba xare yes_ yest ying youn ypas ysel ythi
1 =are =bad =ball =breast =clear =cut =daily =dexa =diagnosed =disease =doc =dr =finished =for =friday =from =gym =had
1 =kind =long =lungs =matters =mg =moment =monday =months =nothing =off =osteo =osteopenia =patient =pill =removed =reps
1 =said =says =secondary =shot =sleeping =spring =steroid =sure =survivor =tablets =taking =they =theyre =thin =third
1 =time =took =type =wait =was =what =when =while =years _aci _ale _bad _cha _cor _cro _cut _dai _dec _dex _dia _dr_
1 _fal _fri _gla _had _hav _kid _let _lon _lun _mal _mat _mg_ _mom _off _pat _rub _sai _spr _ste _sur _tab _tea _typ
1 _ute _wai _was _wat _wha _whe _yea able ache ade_ agno aid_ aily ait_ akin alen alk_ alls are_ ars_ aste atch atie
1 atio ats_ atte bad_ blet can_ cher chin clea cond cut_ cycl dail dary dexa diag dise doc_ dron each ears ebra econ
1 emov endr enia eope erte ery_ exa_ eyre fall fini for_ free frid from ghte gnan gnos gym_ had_ hats have hen_ her_
1 hey_ heyr high hile hin_ hing hird hot_ hter iagn iday ient ies_ ile_ ily_ ime_ inis ioth iple isea ishe issi ittl
1 ivor lass lear lend lets lls_ lone long lung matt ment miss mome mond move nant ndro ney_ ngs_ nic_ nish nned nose
1 noth nths off_ oke_ omen ong_ open orti osed osis othi oved pati peni prin ree_ remo reps rida ries roni rteb rubb
1 rus_ rviv said says seas seco shed shot sion sis_ spri ssio sure surv tabl taki tchi teac tebr teo_ ths_ tien ties
1 tle_ took ttle type ubbi ump_ umpe und_ unds ungs ured urvi uter vert very vivo vor_ wait was_ what when whil ycle
1 year ype_ yre_
2 =brittle =broke =density =every =falls =found =have =its =kidney =lymphoma =on =osteoporosis =remission =scan
2 =steroids =thats =theyve =thigh =thinned _bri _bro _cru _den _fou _its _lum _lym _on_ _pel _rhe _sca _tum _ver apy_
2 ave_ bly_ brit brok coug crum dens dney elvi emis ensi eopo erap euma eyve foun hera heum heyv homa idne ids_ igh_
2 ist_ its_ ity_ kidn lump lymp mato mpho ndar nsit oids opor oros othe ound our_ pelv phom poro rapy red_ remi rheu
2 ritt roke rosi scan sity ster take teop they thig umat umbl watc ymph yve_
3 =bone =fine =hip =melanoma =myeloma =radiation =tumour =· _hip _mel _mye _ost _pre _rem _tak _wri adia anom diat dnis
3 edni elan elom eroi fine hip_ iati ine_ ison lano loma mela meta mour myel niso noma oid_ onda one_ oste redn rist
3 roid sone steo tero tumo umou yelo
4 _che _fin _rad ets_ mia_ nes_ ones pred radi ses_
5 =big =bones =c =cancer =chemo _big _bon _can _leu ance big_ bone canc cer_ chem emia emo_ hemo ins_ leuk ncer
6 _met kins oma_
8 _tam
"""),
    "chest": (-6, """
-5 =#
-4 =leg _leg foot leg_ oot_
-3 =back =be =foot =it =numb _bac _be_ _dis _doc _foo _it_ _num _pee _yea back ctio ecti ell_ ers_ ine_ numb per_ umb_
-3 weig year
-2 =, =. =a =am =attack =cancer =disc =doc =dont =fell =hit =if =its =knee =now =pee =test =toes =told =want =weight
-2 =years _am_ _are _att _ben _bet _cha _clo _cro _dea _eat _goo _hav _hit _if_ _its _kne _lif _loo _new _now _per _rig
-2 _shi _sor _spi _sur _tak _tin _toe _tol _tri _wan _wea _wee _wei able ance are_ ass_ atta ave_ body canc card cer_
-2 chin day_ dead disc doc_ dont ead_ ear_ eed_ eep_ eigh eing elf_ ere_ ets_ fail fell ged_ have hed_ here hit_ hot_
-2 ide_ ies_ inne ippe isc_ ist_ ive_ ivin ked_ knee let_ lly_ more ncer nee_ nes_ oin_ ones ont_ ool_ ore_ ould ped_
-2 pee_ pped pper preg rin_ rse_ self step tack ther they toes told ttac uld_ urge ving want
-1 =about =accident =again =age =ago =anus =anymore =are =around =as =asleep =aspirin =avoid =baby =bad =being =belly
-1 =bent =better =betweenlegs =bladder =bones =born =both =bottom =bridge =bug =bum =bun =bypass =c =cardiac =chair
-1 =check =chemo =chills =clinic =coming =control =coumadin =crotch =cut =dead =diagnosed =diet =disease =do =doctor
-1 =dodgy =doesnt =downthere =dr =drops =due =eat =eating =eliquis =empty =ended =ever =expecting =failed =failure
-1 =fever =finished =fitted =flow =flu =friday =from =gave =go =gone =good =gp =grade =groin =hands =happened =has =have
-1 =head =hear =heel =here =hip =hole =home =horse =hospital =hot =hours =icd =ice =id =ill =im =infarct =infection
-1 =inside =joking =just =keep =kms =knocked =l =landed =late =lately =lb =leaking =let =life =lifting =living =loo
-1 =look =lot =march =me =mi =might =minor =missus =monday =months =more =muscle =must =my =myself =need =never =new
-1 =night =no =nofeeling =normally =nothing =notice =noticed =numbness =odd =off =old =on =once =op =open =oven =pants
-1 =paper =patient =peed =peeing =permanently =physio =point =poo =pregnant =privates =problem =right =roof =s =saddle
-1 =said =saturday =scan =school =seat =sensation =sex =shivering =should =since =sixteen =so =sorry =specialist =spine
-1 =spring =squats =start =stent =step =steps =stood =stool =stop =straight =sudden =suicidal =surgery =sweats =tablets
-1 =take =taking =temp =ten =than =that =there =they =theyve =thick =thinking =thinner =thoughts =through =til =till
-1 =tingling =toilet =too =tried =trying =twice =twins =until =va =valve =wait =wake =warfarin =warm =water =weak
-1 =weather =wee =weekend =weeks =well =wet =whats =where =why =wipe =wiping =wish =working =would =year =yet =you _abl
-1 _abo _abs _acc _adv _aga _ago _alo _ank _ant _anu _any _api _aro _art _as_ _asl _asp _avo _bab _bad _bei _big _blo
-1 _bod _bon _bor _bot _box _bri _bru _bug _bul _bum _bun _bur _byp _cab _cal _can _car _cel _chi _cle _com _cut _deg
-1 _den _dia _die _do_ _dod _doe _don _dr_ _dra _dre _dri _dru _due _edo _eli _els _emb _emp _end _ere _exp _fal _fev
-1 _fit _fol _for _fra _fro _ful _gav _giv _go_ _gon _got _gp_ _gro _had _han _har _has _hat _hee _her _hip _hom _hop
-1 _hor _hos _hot _hou _icd _ice _id_ _ill _im_ _imp _inf _inj _ins _int _jan _jok _jun _jus _kid _kin _kms _lan _las
-1 _lat _lb_ _lea _let _leu _lim _lin _liv _los _lot _lov _lum _man _mar _may _me_ _mea _med _mes _met _mi_ _mig _mor
-1 _mus _my_ _mys _nee _nev _no_ _nob _nof _not _nov _odd _off _old _on_ _onc _op_ _ope _ord _ost _pac _pap _pat _phy
-1 _pil _pis _pla _plu _poi _poo _pos _pri _pro _pum _qua _rad _rea _rol _sad _sai _sca _sch _scr _sea _sex _sha _she
-1 _sin _six _sla _sli _so_ _soa _spo _spr _ste _sto _str _sud _sui _tab _tam _tel _tem _ten _tha _thi _toi _tom _too
-1 _tou _tru _try _tum _twi _unt _uri _use _va_ _val _vir _war _wel _wet _why _wil _wip _wis _wit _wou _yet _you aban
-1 abou aby_ acci ace_ achi adde addl adli advi agai age_ agno ago_ agul aid_ aigh aile ailu aine ait_ ake_ aker alis
-1 aliv allo ally alon alve ande ands anen ange ant_ ante ants anus anym apix appe arch arct ardi area arfa arin arou
-1 arri arte ary_ ase_ ash_ asle asnt assi ast_ asti ate_ ated atel ates atie ator atte atur avoi ays_ baby bad_ ball
-1 ban_ bein bell bend bent ber_ bett betw bike ble_ blem blet bloc bnes born both bott bout brac brid bril brui bug_
-1 bum_ bun_ butt bypa call can_ ccid ced_ cell chai chec ched chem chil choo cial cida cide cks_ cle_ clea clin clot
-1 coag comi conc cont coul coum crot ctin ctom ctor ctur cut_ dal_ dden dder den_ dent ders dgy_ diac diag diet din_
-1 dise dlif dnt_ doct dodg does drib driv drop due_ each eadl eak_ eaki eam_ ean_ ease eat_ ecia eck_ edin edox eedi
-1 eein eeke eeks eel_ eeli een_ eenl egna eken eks_ elin eliq elly els_ else ely_ emba embe emia emo_ emp_ empt end_
-1 ende endi ened enle ensa enti entl erat erec erni ery_ esnt este ete_ etin etra etwe expe eyve fall farc fari fect
-1 feel feve ffer fib_ fibr fitt flow flu_ fold fore frac from ftin ful_ full gain gave ger_ gery ght_ ghts gist gles
-1 gnan gnos gone good grad grel groi hair han_ hand has_ hat_ heck heel hemo hey_ heyv hick high hill hink hinn hip_
-1 hirt hive hole home hone hool hors hosp houg hour hrou hts_ hysi iac_ iagn iali iati ibri icd_ iced icid ick_ icks
-1 icoa idal iday iden ids_ ied_ ient ier_ ifti igh_ iled ilet ilin illa ills ilur ily_ imes ina_ inal ince infa infe
-1 ingl inic inki inor insi ion_ ipe_ ipin iqui ired ise_ isea ised ishe issi issu ital itis its_ itte ivat iver ixte
-1 ject joki just keep kend kes_ kilo kinn kins kms_ ladd land lant last late lati lato ldnt leak leep lem_ ler_ lets
-1 leuk life lift line ling lini lipp liqu list live livi llar llat lled lock logi loo_ look lopp losi lot_ love lumb
-1 lure lve_ madi mall mane marc mbar mber mbin mbne mean medi mes_ mia_ migh mine ming mino mome mond mont mpty musc
-1 must myse nal_ nant ncy_ ndar nday nder nect ned_ need nent ners neum new_ ney_ nfar nfec ngli nia_ nic_ nigh nkin
-1 nleg nner nnin nobo nofe noon nor_ nose noth noti nsat nsid nsta nthe nths ntic ntil ntly nto_ ntro nts_ nus_ nymo
-1 oagu oble obod occy ock_ ocke octo odd_ odgy ody_ oesn ofee off_ oft_ ogis oid_ oile oint okin old_ olde ole_ olog
-1 oma_ omet omin omy_ once onda ondy onth ontr ood_ oof_ ook_ oon_ ooth open oppe orde orki orn_ orry orse orwa ose_
-1 osed osis ospi oste otch oth_ othi otic ots_ otto ough ouma our_ ours oven owel ownt pace pape part patc pati peci
-1 pect peed peei pen_ pene peni pera peri perm phys pill pine piri plan ple_ plum poin pond poo_ port prin priv prol
-1 pty_ pump quad quat quis rade radi raig rass rct_ rday rder rdia rdio real rect red_ regn rfar rger rida ried ries
-1 righ rill rine ripp ritt riva rkin rks_ rned rnin robl roid roin rol_ roll rom_ roof ropp rops rotc roug rous rter
-1 rth_ ruis rus_ ryin sadd sage said sati satu scan scho scle seas seat sect sens sex_ shak shed shiv shot side sinc
-1 sing sio_ sis_ sixt skin slap slee slip snt_ sorr sort spec spir spit spon spor spri squa ssag ssin ssus stay sted
-1 steo stic stoo stra stre stri stud sudd suic sult surg sus_ tabl take taki tal_ tant tart teen tell tely temp ten_
-1 tep_ teps tes_ tetr than thic thin thou ths_ tic_ tice tico tien ties til_ tis_ tly_ toe_ toil tom_ tomo tomy too_
-1 tood touc trai tral tran tric trie trip trol tryi tted ttin ttom tum_ turd ture twee twic uary uats udde uff_ ught
-1 uici uis_ uise ulat uldn ulta umad umbi umbn ump_ unds unk_ unti urda ure_ urne urni urs_ uscl user ust_ valv vate
-1 vent ver_ veri void warf warm wate weak wee_ week ween well wet_ what why_ wice will wins wipe wipi wish with wnth
-1 wool woul xaba xpec xtee yet_ ymor you_ ypas ysel ysio ythm yve_
1 =ache =aches =across =actually =almost =already =an =any =away =basement =beat =beats =bed =bit =blacked =breastbone
1 =breathless =brother =came =cant =catch =church =climb =collapsed =counter =dark =dizzy =doing =done =down =dull
1 =during =effort =enough =even =every =everywhere =exert =fainting =far =finish =flat =flight =flip =food =for =found
1 =front =fuzzy =get =happens =headed =heavy =hold =how =hurts =idea =idk =is =kitchen =lads =legs =lightheaded =little
1 =low =make =middle =miss =nearly =normal =not =o =over =park =pounding =practice =pressure =pull =push =quit =rack
1 =rang =reason =reps =ribs =round =saw =say =scared =sec =seconds =set =shoulder =showed =sick =single =skipping =slid
1 =slow =some =stand =stars =starting =stents =still =stopping =sweating =swimmy =thats =thing =things =tho =throwing
1 =time =today =training =turn =under =vision =walk =wall =ward =was =when =while =wife =· _ach _acr _aft _alm _alr _an_
1 _ans _awa _bed _bit _buc _cam _cat _chu _cru _des _diz _doi _dro _dul _dur _eff _eno _fla _fou _fuz _gas _ger _get
1 _gra _hal _hol _how _ide _idk _is_ _jum _kit _kno _lit _low _mid _nea _ove _pai _pou _puf _que _reg _rep _rib _roo
1 _rou _sac _saw _say _sec _sen _sic _siz _ski _slo _sob _som _spe _sta _sti _swe _swo _the _tic _tod _tre _tur _vis
1 _wai _wed _whe _wif _woo abbi acke acro afte ague airs ale_ alf_ alk_ almo alre ame_ and_ answ aper ard_ ared arly
1 artb arti asem ason aspi astb athl atio ats_ avin avy_ away base bit_ bles box_ brot buck burn cant care catc che_
1 chen chur cing cker cket clim cond cons cros crus ctic ctua ddle dea_ dizz dle_ doin done dull duri eagu earl easo
1 east eats eavy econ ecto eeze effo egul enou ens_ ente ents erin ert_ eryw essu far_ ffor flat flig flip flut food
1 for_ fort foun frid fron fter fuzz germ gest get_ ghth gle_ glin grab gue_ head hile hles hold how_ howe hrow hthe
1 hurc ibs_ ice_ icke ics_ iddl idea idge idk_ ight ike_ ill_ imb_ ime_ immy ines inti ions irin irs_ isio iss_ itch
1 ited ittl izzy jump ker_ ket_ kets king kipp kitc knes know lade lads lat_ lder leag less lid_ limb lip_ litt lkin
1 llap lmos lrea lump lutt lyin mble midd mmy_ most mped mpin nded ndin near nny_ not_ noug nswe oday oing oke_ olle
1 onds oned ons_ oom_ oone oppi ort_ oss_ ost_ ouch over owed owin park pass pell pens poun ppin pres psed puff quit
1 rack rang ray_ rds_ reas regu reps ress ribs ridg rly_ ront ross roth rowi rtin rts_ rush rywh sack saw_ say_ sec_
1 seco sed_ seme sent set_ show sick size slow some son_ spel ssur stai stbo stil stio sure swea swer swim tair tars
1 tbon tch_ ted_ tern the_ thea thle tho_ tick tile till tion tle_ toda topp trea ttle tual tumb turn uall ucke uit_
1 ular ulde ull_ ult_ umbl umpe umpi und_ undi urch urse urts ute_ utte uzzy visi wait walk wall was_ way_ weat wer_
1 whil wife wimm wing yed_ ywhe zes_ zing
2 =after =black =chestpain =consciousness =couch =ears =elephant =felt =floor =funny =gasping =goes =half =know =lie
2 =like =lungs =lying =mins =out =pain =palpitations =racing =run =sat =sit =spells =stairs =then =ticker =up =waiting
2 =watch =woke =woozy _col _dar _ear _edg _ele _epi _eve _exe _fli _fri _fun _goe _hur _kee _lie _lig _lik _lun _lyi
2 _mak _mis _out _pas _pul _qui _ran _res _run _sat _set _sho _sit _squ _tal _thu _up_ _wal _wat _whi _wok ache acin
2 aded ain_ aiti alki ang_ ark_ asse atch athe aty_ beat came ciou coll couc coun dark dge_ eade edge eezi elep ells
2 elt_ ence epha estp exer ezin felt floo funn gasp ges_ goes half hant heav hen_ hite hurt inde indi int_ inut ious
2 ips_ itin leph lie_ like loor lse_ lung mal_ mins minu moni ngs_ nsci nten ntin nute oes_ onsc oor_ oozy ope_ ound
2 ount ousn out_ ozy_ phan ping pita raci read rest room rown run_ sat_ scio shoe sit_ skip snes ssed stin stpa stru
2 sts_ talk tenc then ting tpai uch_ ungs unne unny unte urn_ usne very watc wed_ when whit woke wooz xert yes_ ying
2 yre_ zzy_
3 =breathe =eyes =faint =fainted =grey =heart =jaw =passed =tight =went =winded _arm _bea _cou _eye _flo _hea _jaw _min
3 _pal _rac _tig _wen _win alpi arm_ art_ ath_ ckin ded_ ess_ esti eyes hear inte itat jaw_ ligh lpit ness nted pain
3 palp rey_ sque tati tigh ueez vice went wind
4 =arm =breath _bla _fai _gre air_ blac eart eath grey quee
5 =air =chest _air _bre _che brea est_ hest lack reat
6 aint ches fain
"""),
    "fall": (-9, """
-5 =#
-3 =, =for =i =ive =to _can _che _ive _not _to_ _yea ant_ ess_ est_ feel for_ ing_ ive_ they tion
-2 =all =be =cant =chest =disc =heart =im =in =is =leg =like =lost =no =not =numb =they =twice =with =years =· _all _are
-2 _be_ _bla _cou _did _dis _don _fee _for _has _hav _im_ _in_ _is_ _leg _lif _lik _los _no_ _num _pee _thi _tim _twi
-2 _wal _wea _whe _wit aint art_ ave_ blac cant ches ctio disc dnt_ ears eart ecti eel_ eigh els_ ere_ ery_ ets_ ever
-2 fain have hen_ here hest hey_ ick_ isc_ ith_ king lack leg_ like lls_ lost ness not_ numb oing old_ one_ ont_ ost_
-2 pass self sis_ snt_ thin time twic umb_ ust_ very weak when wice with year
-1 =about =after =again =almost =and =are =as =baby =bed =before =behind =betweenlegs =big =blacked =bladder =blood
-1 =bones =both =bun =bypass =c =calf =called =cancer =cardiac =changed =chemo =clot =consciousness =control =couldnt
-1 =cut =daily =dead =did =didnt =do =doc =doctor =doesnt =dont =each =eat =eliquis =every =faint =fainted =falls =feel
-1 =feels =felt =fever =fine =fire =flu =foot =found =gave =get =go =goes =going =groin =gym =had =half =has =have
-1 =havent =here =hold =home =hoping =hot =id =if =ill =inr =it =just =keep =know =l =lately =left =let =lift =lifting
-1 =lol =might =minutes =month =more =myself =nearly =never =new =nofeeling =normally =now =of =op =operated =oven
-1 =pants =passed =patch =pee =peed =pill =pills =positive =pulled =purpose =put =round =run =s =said =same =saw =says
-1 =scan =seat =set =sick =since =sit =sixteen =spinal =squat =started =still =stopped =surgery =take =tell =ten =test
-1 =th =than =that =them =theres =think =thinners =three =till =time =times =today =toilet =told =too =tractor =trousers
-1 =two =up =valve =walk =wall =ward =warning =way =weak =wee =weight =well =when =wife =wont =would =year =yes =you
-1 _abo _alm _and _ant _any _api _arm _arr _as_ _att _bab _bed _bef _beh _ben _big _bir _blo _bod _bor _bre _bri _bur
-1 _byp _cal _chi _clo _com _cut _dai _dar _dea _do_ _doc _doe _dri _dro _eac _eat _eli _ere _fai _fev _fin _fit _flu
-1 _foo _fou _fra _gav _get _go_ _goe _goi _gra _gym _had _hal _her _hol _hom _hop _hot _id_ _if_ _ill _inf _inj _inr
-1 _it_ _its _jus _kee _kin _lat _lef _lig _loc _lol _loo _mak _man _mar _mig _min _mon _mys _nea _nee _nev _new _nob
-1 _nof _nor _now _of_ _one _op_ _ope _pan _pas _pen _per _pil _pis _poo _pro _pur _put _res _rou _run _sai _sam _saw
-1 _say _sca _sch _sea _sec _set _sex _sho _sic _sin _sit _six _spo _sti _sto _str _sur _tak _tea _tel _tem _ten _tes
-1 _th_ _tha _tig _tin _tod _toe _toi _tol _tra _tri _tro _two _up_ _use _val _wan _war _was _wat _way _wei _wel _wif
-1 _win _won _wou _you aban able abou aby_ ace_ ach_ acto actu ads_ age_ aid_ aily ain_ ake_ aker akin alf_ alls ally
-1 almo alve ance and_ anti ants any_ apix ardi are_ arin arly arm_ arni ars_ arte asse asty ated atel ater atio ats_
-1 aven baby ban_ bed_ befo behi big_ birt blad bloo bly_ body born both bout brea bun_ burn bypa calf call can_ canc
-1 card carr ced_ cer_ chan chem chin ciou clot cons cont coul ctom ctor cut_ dail dark ddle dead diac did_ didn ding
-1 dle_ doc_ doct does dont drop each eak_ ean_ ear_ earl eath ecto eed_ eeli eels eenl eet_ efor eft_ egs_ ehin eing
-1 elf_ elin eliq elt_ ely_ emo_ end_ enle erat erec eres erni ers_ esnt etal ette fect felt feve fib_ fine fire flu_
-1 foot foun ftin gave gery get_ ght_ ghts gnan goes goin grey groi gym_ had_ half han_ hang has_ hat_ hear hem_ hemo
-1 hern hes_ high hind hing hink hinn hite home hopi hot_ hree hts_ iac_ idnt ies_ ife_ ift_ ifti igh_ ight ilet ill_
-1 ills ily_ ime_ imes inal ince ind_ inde ine_ infe ingl inne inr_ int_ inte inut ion_ ious iqui ird_ ire_ irth ish_
-1 iss_ issi itch itiv its_ ivin ixte just keep ker_ kind knes know late ldnt lear left legs lift ligh ling liqu live
-1 llin lly_ lmos lol_ lood look lot_ lue_ lumb lve_ marc mbar mes_ meta migh minu mome mont more most myse nal_ nast
-1 nce_ ncer nder ndin nds_ near need ner_ ners nes_ neve new_ nfec ngle ngs_ nia_ nleg nly_ nned nner nnin nobo nofe
-1 norm noti nsci nth_ ntro nts_ nute oble obod octo oday ody_ oes_ oesn ofee oile oin_ oma_ ome_ omy_ ondy ones ons_
-1 onsc onth ontr ood_ oot_ opin ops_ orma orn_ ort_ ose_ osis osit oth_ otic ouch ould ound our_ ouse ousn out_ oven
-1 owel pant patc pee_ peed pera peri pina ping piss ple_ pond pose posi ppin preg prob purp put_ quis ract rain rate
-1 rdia rdio rect red_ ree_ reet ress rest rger ried ries rin_ rkin rly_ rmal rnia roin rol_ rous rpos rrie rted run_
-1 said same saw_ says scan scar scho scio seat sers set_ shot sick sinc sing sit_ siti sixt snes son_ spin spon stan
-1 star sten stic stil stre sty_ surg take tand tart tati tche teen tell tely temp ten_ tent tes_ test than that them
-1 ther thig thir tice tick tigh til_ till ting tive tly_ toda toil told tomy too_ topp tor_ trac tran tree trol trou
-1 ture two_ uat_ uckl uff_ uis_ uld_ uldn ulle und_ ure_ urge urin urpo urse use_ user usne utes valv ved_ ven_ vent
-1 ving wall want ward warn wate way_ weat wee_ weig well what wher whit wife wont woul xaba xtee yes_ yone you_ ypas
-1 ysel ythi
1 =a =accident =against =asleep =backs =bar =between =bike =boot =box =bruised =bunch =bus =butt =by =caught =chair
1 =collapsed =concrete =cracked =crash =days =dog =ever =failed =first =friday =good =got =ground =hard =how =hurting
1 =idea =into =knee =knocked =literally =low =m =message =neck =night =other =playing =properly =pull =quite =rear
1 =saturday =shivering =shower =skid =slid =slipped =small =so =sorry =stairs =step =steps =stop =straight =sunday
1 =tackled =tailbone =this =top =tumble =went =yesterday _acc _asl _bad _bal _bar _bik _bon _box _bru _bul _bun _by_
1 _cau _cel _cha _cli _col _cro _cru _day _dec _dog _dow _fac _got _how _ide _int _kne _kno _lit _low _mor _mot _nec
1 _nig _oth _ove _pal _pra _rig _sat _she _sli _sma _so_ _spa _ste _sun _tac _tip _too _top _tum _ute _wen _wor _yes
1 acci ackl acks adde aigh ailb aile ains air_ airs ale_ alk_ all_ ang_ ante asle assi ast_ atur augh ayin bing ble_
1 boar bone boot box_ brui bump bunc bus_ caug ccid cell chai cide ckle clim coll crac cras cret crus days dder dea_
1 dent dog_ down eek_ emen epla eps_ eral erda erin erly essa este ete_ etti face fail firs frid got_ grou hair hand
1 her_ his_ hive hock houl how_ howe hurt ice_ iday idea iden ilbo ile_ iled ink_ inst into irs_ irst isio isse iter
1 kid_ kled knee ladd lant lar_ layi lbon lder len_ lett lid_ limb lite llap llar lled llen lyin mbin mble miss moto
1 mped nch_ ncre nday neck nee_ ning noon nst_ oard occy ock_ ocke oncr oom_ oon_ orbi ore_ ork_ othe otor over ower
1 own_ perl pill plas play pper rack raig rall rang rash rear res_ rete rida rnin room ropp rst_ rtin ruis rush satu
1 sed_ shed shiv shou skid slid sorr spar ssed stai step ster sund tail tair tep_ teps tera terd tern this thro tumb
1 turd ucke ught uise uite ulde ull_ umbl umpe unch unda unk_ urda urti ushe ute_ utt_ utte ver_ veri walk week went
1 wer_ yest ying
2 =at =bathroom =came =down =ended =gate =hardon =hip =kicked =ladder =landed =last =me =missed =morning =off =on =over
2 =roof =t =the =took =tuesday =ute =week =work _at_ _ban _bat _cam _car _con _cra _end _fli _gat _har _hat _hea _hip
2 _hur _kic _lad _lan _las _me_ _off _on_ _rin _rol _roo _sco _sid _ski _sor _spi _the _thr _til _tue ack_ acke alle
2 ame_ ande ange ardo ash_ ass_ ate_ athr bath bike came ded_ don_ ende esda flip gate ged_ hard hip_ hroo icke ked_
2 kick knoc land last led_ morn ned_ nged nock off_ oft_ olle oned oof_ ook_ oote orni pped rday rdon reck rink roll
2 roof rse_ scoo sday side sion ssio tack the_ thre took top_ tues uesd
3 =ago =back =fall =head =hit =horse =ice =onto =sore _ago _bac _bus _fal _fri _hit _hor _ice _ont ago_ ard_ back cked
3 cuss day_ ead_ eck_ fall head hit_ hors ippe lipp ncus nded nto_ oncu onto orse ped_ sore sted tile
4 =car car_ conc
5 =fell _fel ell_ fell
"""),
    "fever": (-4, """
-4 =i =in _in_ one_ ting
-3 =a =my =no =to _can _che _eve _my_ _no_ _not _to_ _was _yea ant_ ast_ ere_ est_ here mont onth ould out_ year
-2 =after =arm =be =by =cant =chest =disc =every =feels =had =heart =it =last =left =leg =me =months =never =nofeeling
-2 =numb =off =on =out =was _aft _are _arm _be_ _blo _bre _by_ _car _clo _cou _did _dis _don _ere _fai _fel _for _had
-2 _hea _her _it_ _las _lea _lef _leg _lif _me_ _nev _nof _num _off _on_ _one _out _pee _pla _pre _pro _sec _sho _sta
-2 _ste _tak _tha _twi _use _whe afte age_ aint ake_ arin ars_ art_ atio bone cant ches cked ded_ dnt_ eart eels eft_
-2 els_ erec fain fter had_ hear hest imes isc_ ive_ ked_ last left leg_ lift ned_ nes_ neve nofe nths numb ofee off_
-2 ont_ ore_ ost_ rect rin_ sed_ sis_ snt_ that thou ths_ time umb_ was_
-1 =! =# =. =about =af =afib =age =ago =air =almost =also =an =anymore =are =area =asking =at =baby =bad =before =being
-1 =betweenlegs =black =blood =bones =born =both =breath =btw =c =cancer =clot =come =couldnt =daily =dark =day =dead
-1 =did =didnt =doc =doesnt =doing =done =dont =downthere =dull =eating =eliquis =enough =erection =everything =f =faint
-1 =fell =first =floppy =foot =found =friday =from =function =gave =go =gone =groin =half =hard =has =havent =heavy
-1 =here =hip =hit =how =id =if =ive =kg =l =landed =late =leaking =life =lift =like =limp =lines =little =living =lol
-1 =lost =m =might =month =more =muscle =myself =nearly =neck =new =next =not =nothing =of =ok =old =one =only
-1 =osteoporosis =over =pain =palpitations =past =pee =peeing =people =pills =plan =pregnant =privates =problem
-1 =properly =put =right =roof =s =said =sat =saturday =say =scan =seat =section =side =sit =sixteen =slid =so
-1 =sometimes =sore =sorry =spinal =spine =squat =stairs =stopped =suicidal =take =test =th =than =that =the =there
-1 =thing =thinking =thoughts =three =tight =time =toilet =told =tonight =too =took =trimester =trying =turning =twice
-1 =twins =use =valve =wake =wall =warfarin =way =weak =wee =weeks =weird =wet =when =wipe =wish =without =wks =woke
-1 =wont =work =would =xarelto =year =years =yes =yet =you =· _abl _abo _acc _af_ _afi _age _ago _air _alm _als _an_
-1 _ank _ano _any _arr _art _ask _at_ _bab _bad _bar _bea _bec _bef _bei _bel _bet _big _bon _bor _bot _bru _btw _bul
-1 _bum _byp _cal _cla _cle _cli _con _cut _dai _dar _day _dea _die _doc _doe _doi _dow _dri _dro _dul _eat _eli _end
-1 _eno _exp _fal _far _fin _fla _flo _foo _fou _fra _fri _fro _fun _gav _go_ _gon _gra _gro _guy _hal _har _has _hip
-1 _hit _hol _how _id_ _if_ _inj _int _ive _jan _jun _kee _kg_ _kil _kno _lan _lat _let _leu _lik _lim _lit _liv _lol
-1 _lon _loo _los _low _lum _mak _mar _met _mig _min _mot _mus _mys _nea _nec _nee _new _nex _nob _of_ _ok_ _old _onl
-1 _ost _ove _pac _pai _pal _par _pas _pat _peo _per _pil _pin _pis _pra _pri _pul _pus _put _qua _res _sai _sat _sav
-1 _say _sca _sch _sea _sex _shr _sid _sit _six _siz _ski _sli _so_ _sob _sor _spi _spo _squ _sto _stu _sui _sur _tac
-1 _th_ _thi _tho _tig _til _tim _tin _toi _tol _tra _tri _tro _try _tur _uri _val _wai _wak _wal _wan _wat _way _wee
-1 _wei _wet _whi _wif _wip _wis _wks _wok _won _xar _yes _yet _you aban able abou aby_ acem ack_ ackl acti actu adde
-1 ade_ ads_ afib ago_ agul aid_ aily air_ airs aker alf_ aliv alk_ all_ alls almo alpi also alve ance ande ange ants
-1 anym appe ardi are_ area ared arel arfa ark_ arly arry ase_ aski aspi ass_ asse atch ate_ ated ater ates ath_ athl
-1 atin atri aved aven avy_ ays_ baby bad_ ban_ bar_ beco befo bein bell ber_ betw blac ble_ blem bloo born both bout
-1 brea btw_ bulg butt bypa canc car_ card carr ced_ cer_ chem choo cida cide ckle cle_ clea clot coag coll come cond
-1 cont coul coum crot ctin ctom ctor ctur dail dal_ dark dder ddle dead den_ dent did_ didn ding disc dle_ doc_ doct
-1 does doin done dont down drop dull eak_ eaki ean_ ear_ earl ears ease eat_ eave eavy eck_ ecom ecto eed_ eein eeks
-1 eenl eep_ efor egna egs_ eigh eing eird eks_ elf_ eliq elto ely_ emen emia end_ enle enou eopl eopo epla erly erni
-1 eryt esnt esti etim etwe ext_ fall fari fell fib_ firs flop foot fore fort foun frac frid from func gave ged_ ghts
-1 ging gnan gone grad groi gula half han_ hard has_ hat_ hats heav hed_ hemo hen_ hern hes_ high hinn hip_ hit_ hold
-1 hone hool houg hout how_ hree hts_ ial_ icid icke icoa idal iday ide_ idnt ied_ ies_ ife_ ight ike_ ile_ ilet ily_
-1 ime_ imp_ inal ine_ ines infa ings inki inne ins_ int_ inte ions ipe_ ippe iqui ird_ irin irs_ irst iss_ issi ist_
-1 itat itho ittl ity_ ivat ivin ixte ject keep ker_ king lace lack ladd lan_ land lat_ late ldnt leak lear leav led_
-1 leep legs lem_ less let_ lett leuk lid_ life like limp lipp liqu litt live livi lmos lol_ long lood look lopp lost
-1 lot_ love low_ lpit lso_ lto_ lve_ lyin make mal_ marc mbar mes_ mest meti mia_ migh mmy_ more most musc myse nal_
-1 nant nce_ ncer ncti nded ndyl near neck need ner_ ners new_ next nfar ngs_ nkin nleg nly_ nner nobo not_ noth noti
-1 noug nted nth_ nthe ntic ntin nto_ nts_ nymo oagu oble obod ocke octo oes_ oesn oile oin_ oke_ oma_ omor omy_ ondy
-1 ones ong_ onig only ons_ oof_ ool_ oom_ oot_ oper ople opor oppy ops_ ork_ orma orn_ oros ort_ osis oste othe othi
-1 ots_ ouma oven over ower own_ ownt oxab pace pain palp part pass past pect pee_ peei peop per_ peri perl pill pina
-1 pine ping piss pita plac plan ple_ pond poro post ppin ppy_ preg priv prob prop pull push put_ quad quat quis ract
-1 rday rea_ reas ree_ regn relt repl rest rfar rida ried righ rime rine rink riva rman rnia robl roin rom_ roof room
-1 rope rosi rown rrow rry_ rse_ rst_ rth_ ryth said sat_ satu say_ scan scho scle sday seat sect self ses_ shed show
-1 side sing sion sit_ sixt size skin slee slid son_ sore sorr spin spon squa ssed sses ssin stai stan star sten steo
-1 ster stic stoo stop stra suic surg tack tair take tand tati tch_ ted_ teen tely tent teop ter_ ters tes_ than the_
-1 thes thin thle thre tice tick tico tigh tle_ tly_ toil told tomy toni too_ took top_ topp tor_ trai tran trim trou
-1 tryi ttin ttle tum_ turd turn twee twic twin uat_ uff_ ught uici uis_ ulat uld_ uldn ull_ unct urda urge urin urn_
-1 uscl use_ used user ust_ utti valv vate ved_ ven_ vent ves_ ving wait wake walk wall want warf way_ weak wee_ week
-1 ween weig weir wer_ wet_ when wher wice wife wins wipe wish wks_ wnth woke wont work woul xaba xare xtee yes_ yet_
-1 ying ymor you_ ypas ysel ythi ythm
1 =, =abscess =ache =again =all =and =as =been =bit =can =do =dog =drip =evening =feeling =having =head =hurts =is
1 =kidney =mam =mate =monday =now =op =positive =quite =really =red =reps =running =scare =shivering =stomach =sweaty
1 =swollen =tested =they =this =through =tooth =under =weather =went _abs _aga _all _and _ant _as_ _bee _but _cel _cha
1 _clu _com _cro _do_ _dog _ear _fre _han _hav _hur _is_ _kid _mam _mat _mis _op_ _red _rig _she _sin _sme _som _spe
1 _swo _ton _tou _und _wen absc ach_ ache achi agai aky_ and_ anke anti asti asty athe ats_ atur aty_ ave_ been bit_
1 blan body bsce cell cess che_ chin comi dney dog_ eall eaty eepi eezi ells enin epin erin ezin feel free gain gles
1 hand havi head hey_ his_ hrou hrow hurt ics_ idne ift_ ill_ ingl inus ish_ issu itiv kes_ kets kidn lank len_ les_
1 llen lue_ mach mam_ mate mell ming miss mond morn nast nday nder nds_ ngle nket nnin nus_ oid_ omac ome_ omin onda
1 ooth oppe orni orry ose_ osit oth_ otic ouch our_ owin posi quit real reps rip_ roug rowi rryi rts_ runn ryin sces
1 siti smel some sted stom sty_ swol teri ther they this tive toma toot touc trea tten tter ture uch_ ugh_ uite unde
1 unni ure_ urts veni ward went woll zing
2 =am =antibiotics =body =but =cold =coming =degrees =feverish =hands =have =home =ice =ill =lie =missus =moment
2 =morning =shakes =sheets =something =teeth =temperature =think =throwing =touch =up =ward =warm =well _ach _am_ _bed
2 _bod _boo _bur _deg _fee _fir _gas _hom _ice _ill _lie _mas _mom _rec _soa _str _tee _thr _tre _typ _up_ _war _wel
2 _wit akes ands atte biot but_ ckon cold ctio day_ degr eats ecko ecti ees_ eeth eets egre empe erat eris eth_ ethi
2 ets_ gree hake heet hift hink home ibio ilin ink_ ioti lie_ liti mast ment meth mper nia_ ntib ody_ omen ors_ pera
2 ratu reck rees rish rly_ shee shif shin soak ssus stro sus_ teet thro tibi tics tmen veri vers warm wing with worr
3 =bed =bug =burning =chills =covid =feel =fire =shivery =sweats =thermometer =today =with _bug _chi _col _cov _got _mal
3 _poo _sha _swe _tod _unw _vir bed_ bug_ burn chil covi eel_ ell_ ermo eter ever fire herm hill hive illi ills ire_
3 ith_ iver lls_ mete moni neum nigh ning oday ovid rmom rnin rus_ shak shiv stre swea toda urni ver_ vid_ weat
4 =flu =got =night =sick =temp _flu _inf _nig _sic emp_ fect flu_ got_ ick_ infe itis mome mps_ nfec omet rep_ sick tis_
4 well
5 =fever =hot =infection _fev _hot _shi feve hot_
6 _tem temp
7 _mon
"""),
    "heart_history": (-7, """
-5 ing_
-4 =· day_
-3 =im =no =to _can _day _dis _im_ _no_ _not _to_ _wee ant_ ate_ disc ight ting week
-2 =. =at =be =blood =cancer =cant =disc =just =l =leg =like =not =numb =of =this =up _at_ _be_ _bon _clo _fee _foo _jus
-2 _kno _leg _lif _lik _mon _num _of_ _pre _rat _sec _spi _sta _stu _thi _thu _up_ _wor age_ ance ast_ bloo canc cant
-2 dnt_ eeks een_ eks_ ell_ ess_ ever feel foot ght_ his_ ike_ ine_ isc_ just king leg_ like lood ncer ning not_ numb
-2 oid_ old_ oma_ one_ ont_ osis ound ping rate sis_ spin ster ther thin this ture umb_ ust_ ven_ ver_ went yes_ ying
-1 =accident =age =all =and =apixaban =are =arm =back =bad =beats =because =bed =been =better =big =birth =bone =bones
-1 =by =c =came =capped =carrying =chemo =clot =cold =couldnt =daily =dark =day =days =didnt =dizzy =do =doctor =dont
-1 =down =due =dvt =enough =erection =even =evening =eyes =f =faint =feel =feels =fell =fever =fish =foot =fracture
-1 =gave =go =going =gone =goodbye =grade =half =havent =head =heavy =hip =hit =hot =how =i =if =infection =is =its
-1 =july =kg =know =last =life =lol =lost =lower =m =me =mg =month =more =my =myeloma =myself =nearly =neck =nerve
-1 =never =night =nofeeling =november =old =on =out =over =own =pain =pars =pee =place =plan =pounding =quit =racing
-1 =reason =rest =rivaroxaban =rods =s =said =say =scoliosis =sec =sit =skipping =slow =spinal =spine =started =stenosis
-1 =steroid =stops =th =the =then =theres =think =time =took =tuesday =turn =twice =warfarin =way =we =week =weeks
-1 =weight =went =without =wks =would =yes =yesterday _acc _age _all _and _ant _any _api _are _arm _bac _bad _ban _bar
-1 _bea _bec _bed _bee _big _bir _bla _blo _bot _bra _bre _bri _bum _by_ _cam _cap _cau _cha _che _cla _cle _con _cou
-1 _cro _cut _dai _dar _dea _del _die _diz _do_ _doe _don _dow _dri _dro _due _dvt _ear _eno _equ _ere _eve _eye _far
-1 _fel _fev _fis _fre _fun _fus _gav _go_ _goi _gon _gra _gro _gym _hal _hap _har _hip _hit _hot _hou _how _hur _if_
-1 _inj _is_ _its _jul _jum _jun _kee _kg_ _kid _kil _las _lat _leu _lim _lol _los _low _lum _mar _me_ _met _mg_ _mid
-1 _min _mis _mor _my_ _mye _mys _nea _nec _ner _nev _new _nig _nof _nov _old _on_ _ost _out _ove _own _pai _pas _pee
-1 _per _pin _pos _pou _pra _qui _rac _rad _rea _rec _rem _res _riv _rod _sai _sat _say _sca _sch _sco _set _shi _sit
-1 _ski _sli _slo _sor _spo _squ _sto _str _tak _tem _th_ _tha _the _tho _til _tim _tin _tra _tue _tum _tur _twi _ver
-1 _wan _war _way _we_ _wei _wen _wks _wou _yes _you acci acin acke actu ade_ adin aid_ aily ain_ aint air_ ake_ akin
-1 alf_ aliv ame_ and_ ange anti any_ apix apse ard_ are_ area arfa arin ark_ arly arm_ arri asnt ason atel ath_ atic
-1 atin ats_ augh ause aven avy_ ays_ back bad_ band bar_ beca bed_ been bett big_ birt body bone brea brok butt bye_
-1 came capp caus ccid chem choo cide cing cked ckon clea clot cold coli cond coul coum cted ctom ctor ctur dail dark
-1 days dbye ddle dead ded_ deli den_ dent didn ding dizz dle_ doct does dont down drop due_ dvt_ ead_ ean_ ear_ earl
-1 easo eath eati eats eavy ebra ecau eck_ ecko econ ecto eed_ eek_ eel_ eeli eels eep_ eigh eing elf_ elin eliv elle
-1 elom els_ ely_ emia emo_ enin enos enou eps_ equi erda ere_ erec eres erin erma erni eroi erte erve esda este ets_
-1 ette even eyes fain fari fect fell feve fish fore ftin gave ging goin gone grad half hang happ head heav hemo hen_
-1 her_ here hern hes_ hing hink hip_ hit_ hold hool hot_ houg hour hout how_ howe hump hurt iati ice_ ics_ ide_ iden
-1 idnt ids_ ife_ ift_ ifti ile_ ill_ ills ily_ ime_ imes inal ines infe ingl inje ink_ ins_ int_ ions iosi ippi ird_
-1 irth ish_ ison isse itho its_ ivar iver ixab izzy july jump ked_ keep kilo kipp know lack lan_ laps lass late ldnt
-1 lear led_ les_ lets leuk life lift lios lipp live llin lls_ lly_ lol_ loma lost low_ lowe man_ mbar meta miss mit_
-1 mmy_ moni mont most move myel myse nal_ ndar nday nded ndin near neck need ner_ nerv nes_ ness neum neve ney_ nfec
-1 nged nia_ niat nigh nish njec nned nofe nosi noth noug nove nth_ nto_ octo odby ods_ ody_ oes_ ofee oile oing oke_
-1 olio olle ome_ omy_ onda ondy ones ons_ onth oodb ook_ oot_ ops_ ore_ ork_ orry ort_ ost_ oste oth_ othe otic ots_
-1 ould ouma oung out_ oved ovem oven over ower own_ pain pars pee_ pill pina pine pixa pond poun ppen ppin pred preg
-1 pres quat quit raci rade radi rain ran_ rday reas reat reck rect rep_ ress rest rfar rin_ rine riti riva rly_ rman
-1 rnia rnin rods roid roke roun roxa rryi rteb rted rth_ rts_ rve_ ryin said say_ scho scol sday sec_ seco sect sed_
-1 self shed shot show side sing sion sit_ sixt skip slid slip slow snt_ sone spon squa ssed ssio star steo stop stri
-1 take tart tati tch_ tebr teen tely temp teno terd tero ters tes_ the_ then thes thou thri thro thum tice tics til_
-1 time tle_ tomy took tops trai tran tric ttin ttle tues turn twic uck_ uesd ugh_ uit_ ulat uldn ult_ uly_ und_ undi
-1 ure_ urin urn_ use_ used varo vemb veni vert very want warf way_ weig wer_ wice wing wks_ work woul yelo yest youn
-1 ysel zzy_
1 =ablation =about =after =aortic =aspirin =box =chest =clinic =comes =diagnosed =did =disease =failure =floor =from
1 =got =has =in =irregular =it =kind =lot =mild =muscle =now =once =one =only =open =our =pacemaker =patient =problem
1 =put =replaced =see =since =six =so =specialist =still =tablet =ten =test =thick =thinners =ticker =tonight =too
1 =triple =va =weak =which =years _abl _abo _aft _aor _asp _bic _box _bro _bur _cal _cli _dia _edo _fai _fit _fla _flu
1 _for _goo _got _has _hav _imp _in_ _inf _irr _it_ _jan _lad _lea _let _lot _mak _men _mil _mus _now _onc _onl _our
1 _pat _put _rin _see _sin _six _so_ _sur _ten _tes _ton _tri _va_ _vir _wid _win abla able abou ace_ aced acem afte
1 agno ailu aky_ ale_ alis all_ allo anic ante aort ase_ asty atie ave_ blat ble_ blem bloc bout burn call carr cema
1 ched cial cle_ clin diag did_ dise eak_ ears ease ecia edox egul emak ent_ ente epla ery_ flat floo forg from fter
1 get_ gnos got_ grel has_ have hich hick hinn hirt iagn iali ich_ icke idow ient ild_ ilin ilur ince ined inic iple
1 ippe irre isea itis itte kins lad_ lant lar_ leak lem_ line lini llar lock loor lure mal_ mild musc nce_ ners nic_
1 nner nose nted nter oble ock_ ocke olla omes once oned onig only ood_ oone oor_ open orti osed our_ ours oxab pati
1 peci pen_ per_ piri plas ple_ pper put_ ral_ rdio red_ regu repl res_ ries ripl rned robl roug rreg rry_ rtic rus_
1 rviv scle seas see_ sinc six_ smal son_ spec spir sses stil sty_ surv tche ten_ teri tery test thea thic thir tic_
1 tick tien ties tis_ toni too_ trip tter uary ular urne urse urvi uscl whic wido year
2 =arteries =attack =ball =cardiac =cardiomyopathy =carry =coronary =dodgy =edoxaban =fitted =for =good =had =have
2 =infarct =ive =let =ring =runs =svt =two =was _art _att _bal _cor _doc _dod _fra _had _her _ive _myo _ope _par _pum
2 _rep _run _sep _spr _svt _tab _tic _two _was _whi aili arct arte athy ator atri atta ball ber_ bril cker coro dgy_
2 diac diom diti dodg doxa embe epai erie est_ etra fail farc ffer fitt flut for_ frac gina good had_ hite hock iac_
2 ial_ ies_ ina_ iomy ired ite_ ject lati lato lay_ let_ lutt mber myoc myop nary ngin ocar odgy omyo onar opat oron
2 pair park path play pump ract ray_ rct_ rdia repa rkin rona runs ryth sept svt_ tabl tack ter_ tetr thy_ ttac tted
2 two_ uffe uns_ utte was_ whit yoca yopa
3 =an =doc =ejection =fraction =icd =stents _an_ _ang _arr _car _eje _hea _icd acti aker angi arry ary_ ass_ doc_ ejec
3 ents fibr ged_ ibri icd_ illa llat long make ned_ nste nts_ ong_ rill rter tral
4 =bypass =heart =long =stent =they _byp _lon _pac _ste ardi art_ bypa card eart hear hey_ infa ker_ nfar pass they ypas
4 ythm
5 =af =afib =valve _af_ _afi _val afib alve lve_ mia_ pace sten tent valv
6 =mi =x _cab _mi_ fib_
"""),
    "pregnancy": (-6, """
-3 =a =me =my =no =off =to _che _eve _me_ _my_ _no_ _off _to_ _yea ear_ ell_ ever off_ ont_ ver_ year
-2 =. =at =cancer =car =chest =day =doctor =dont =down =every =from =got =heart =i =it =ive =l =leg =new =not =numb =of
-2 =on =since =· _at_ _bon _but _can _con _dis _doc _don _dow _dri _ere _fro _got _hea _inf _it_ _ive _leg _los _not
-2 _num _of_ _on_ _pee _pro _rep _sin _sta _ste _tur _wei _whe _yes ade_ ain_ ance ars_ art_ bone canc cer_ ches ctor
-2 day_ der_ disc doct dont down ears eart een_ ere_ erec erin ess_ feel from got_ hat_ hear hen_ hest ice_ ill_ ince
-2 ive_ king leg_ ling nce_ ncer new_ not_ now_ numb oing one_ out_ over own_ rect ring rly_ rom_ sinc sion snt_ spin
-2 that they thou tor_ ttin turn umb_ urni
-1 =# =, =about =again =age =air =alive =an =any =area =because =bed =been =bigtoe =bit =blood =bones =breath =burning
-1 =but =cant =chemo =climax =cold =couldnt =covid =crash =dabigatran =daily =dead =diet =disc =do =doesnt =dog =doing
-1 =done =dropped =ejection =eliquis =erection =faint =feels =fell =fever =fine =floor =foot =fraction =getting =go
-1 =going =gp =grade =groin =gym =half =has =have =heavy =here =hernia =hit =hold =hot =how =id =if =infection =inr =its
-1 =keep =kg =kicked =kilos =kitchen =know =last =lately =lbs =less =life =like =living =lost =m =march =minor =more
-1 =nearly =never =next =night =nofeeling =now =only =over =pee =peed =people =perineum =pills =privates =right =same
-1 =school =secondary =shed =shivering =sixteen =sorry =spine =stairs =still =stone =stop =suicidal =tablets =take =that
-1 =there =they =theyve =thinners =three =til =time =today =toes =told =trust =turning =twice =under =valve =warfarin
-1 =was =weekend =weight =well =went =wet =what =when =while =wish =without =woke =wont =work =x =xarelto =year =years
-1 =yes =yesterday =yr _abl _abo _acc _aga _age _air _ali _an_ _ang _ant _any _awa _bac _bar _bec _bed _bee _ben _bet
-1 _bit _bla _blo _bul _bur _cal _chi _cle _cli _clo _col _com _cou _cov _cra _cro _dab _dad _dai _dea _die _do_ _doe
-1 _dog _doi _eje _eli _epi _exe _fai _fal _fee _fel _fin _flu _foo _fra _fre _fri _go_ _goi _gp_ _gre _gro _gym _hal
-1 _han _has _her _hit _hol _hot _how _hur _id_ _if_ _inj _inr _its _kee _kg_ _kid _kil _kin _kit _las _lbs _les _let
-1 _lik _liv _loo _low _lum _mal _mar _met _min _mus _nea _nev _nex _nig _nob _nof _now _onl _ost _pai _pal _par _pas
-1 _peo _pil _pla _pri _rad _rat _rea _res _rig _sam _sav _sch _she _shi _sho _sid _sit _siz _ski _sli _spe _spi _spo
-1 _sto _stu _sui _sur _swe _tab _tak _tem _tha _thi _tho _thr _tic _til _tim _tin _tod _toe _tol _tro _tru _tum _und
-1 _uri _use _val _wal _wan _war _was _wat _wea _wel _wen _wet _wha _whi _wif _wis _wit _wok _won _wor _xar _you _yr_
-1 aban abig able abou ack_ acti adin ads_ agai age_ agul aily aine aint air_ airs ake_ akin alf_ aliv alk_ all_ ally
-1 alve and_ ange angi anti ants any_ arch ard_ ardi arel arfa arin arly arm_ ary_ ase_ ash_ aspi ass_ asse ast_ asti
-1 atch ated atel ates ath_ athe atra ats_ atur ause avy_ away back ban_ bar_ beca bed_ been bend biga bigt bike bit_
-1 blac ble_ blem blet bloo bout burn but_ bye_ cant car_ card caus chem chen chil choo cida cide clim clot coag cold
-1 come conc cons coum covi cras ctom cuss dabi dail dal_ dary dden ddle dead ded_ den_ dent diet dle_ dnt_ does dog_
-1 doin done driv drop ead_ earl eat_ eath eavy ecau eck_ ecto eeke eeli eels eep_ egs_ eigh eing ejec eken elf_ elin
-1 eliq els_ elto ely_ emo_ end_ endi ent_ ents eopl epai erda ers_ esnt etra ets_ etti eum_ exer ext_ eyve fain fall
-1 fari fect fell fine fini foot frac gain gatr gett ghts goin grad grey groi gtoe gula gym_ half has_ hats have hemo
-1 hern hesi hey_ heyv high hile hill hing hinn hit_ hive hock hold hone hool houg hout howe hree hts_ hurt iati icid
-1 icke icoa idal iden ies_ iet_ igat igh_ igto ike_ ile_ ills ilos imax ime_ ina_ ind_ ine_ iner ineu infa infe ing_
-1 ingl inis inje inne inor inr_ int_ ions ippe iqui ired irin irs_ isc_ ise_ issi issu ist_ itho itis its_ ivat ixte
-1 ject keep kend ker_ kilo kitc know lack lass last lati lbs_ ldnt leak led_ legs les_ let_ lets life like lima liqu
-1 livi lkin lls_ lood los_ lost lot_ low_ lto_ man_ marc max_ ment mes_ mia_ mino mome more most ncus ndar nded nder
-1 ndin nds_ near ned_ need ner_ ners ness neum neve next nfar nfec nge_ ngin nia_ nigh nish njec nly_ nner nobo nofe
-1 nor_ nste nted ntic ntin nts_ oagu oble obod oday oes_ oesn ofee oid_ oin_ oke_ oma_ omet omor omy_ oncu onda ondy
-1 ones only ons_ ool_ oor_ oot_ ope_ ople ork_ orry ort_ ose_ osis oste oth_ othe ough ouma ound ovid ower oxab pain
-1 pair pass ped_ pee_ peed peop phom pill pine ping pita ple_ pond pped pres priv prob prop quis ract rade radi rash
-1 ray_ rch_ rday rea_ reat reck ree_ relt repa rest rfar ries righ rin_ rine riva rive rnia rnin robl roin rope ropp
-1 roun rts_ rust same scho sed_ self ses_ shiv show sis_ sixt size sorr spon ssio stai stan sten steo sthe stil stin
-1 ston stre sts_ stud suic surg swea tabl tair take tand tch_ ted_ teen tely temp tent terd tes_ ther thes thin thre
-1 thro tic_ tico til_ till time tis_ toda toe_ toes told tomy tone top_ tral tren trou trus tter ture twic uch_ ugh_
-1 uici uis_ ulat uldn unde ure_ urge urin urn_ use_ used valv vate ved_ vid_ walk warf was_ wate weak weat weig well
-1 went wer_ wet_ what when wher whil wice wing wish with woke wont xaba xare xtee yed_ yes_ yest ythi yve_
1 =along =are =big =came =can =carry =caught =could =cut =daughter =emergency =feverish =five =flat =fortnight =found
1 =gave =gets =giving =havent =her =hes =him =home =im =in =is =knee =lift =little =maybe =missed =nothing =november
1 =nurse =nursing =ok =positive =post =pushed =put =say =scan =shot =six =somehow =sore =spring =started =stopped =sure
1 =tested =than =think =third =thursday =too =trying =tuesday =two =we _alo _big _ble _boo _cam _cau _chu _cut _dau _dro
1 _eme _fiv _fla _fol _for _fou _gav _gir _giv _goo _hav _hes _him _hom _im_ _in_ _is_ _kne _lit _mat _may _new _nov
1 _ok_ _ope _pel _pin _pus _put _say _sca _sep _squ _thu _tri _try _tue _twe _two _we_ _wer aini alon ater ave_ aven
1 avin aybe big_ blee came care caug cond cut_ daug east econ eek_ ehow elvi embe emer ency ept_ erat eren erge eris
1 esda est_ feed five flat fold forc fort foun ful_ gave genc gets ghte girl givi han_ heav hes_ him_ hink hird home
1 hter hurs ick_ icks ied_ ier_ ings inin ion_ isse itiv ittl ity_ knee lat_ leav leed lift litt lly_ mate mayb meho
1 merg morn ncy_ nee_ nove ocke old_ omeh ong_ ood_ ook_ oper orce ore_ orni ors_ ortn osit othi ovem part pelv pera
1 posi prin push put_ quat rain ran_ rati rent rgen ried rish rown rsda rsin rted rtni say_ scan seco sept shot sing
1 siti six_ sore spri squa ssed star ster stra tal_ tart than thir thur tick tive tle_ tnig too_ topp trai tran tryi
1 ttle tues tum_ two_ uesd ught uld_ unk_ ursd urse ursi ushe ust_ vemb veri ving were ybe_ zing
2 =ago =am =belly =c =carrying =days =eating =family =good =having =july =knocked =lie =lol =month =old =one =or
2 =postpartum =preggo =second =son =squat =straining =th =theres =took =trimester =week _ago _am_ _bel _car _eat _fam
2 _far _gra _jul _kno _lat _lie _lol _mis _nur _old _one _or_ _ove _per _son _sti _th_ _too _twi acin ago_ amil ant_
2 area arri artu ate_ atin augh ays_ bell ber_ born can_ cing ctio days ean_ eati eave eavi edin eedi eggo elly ered
2 eres esar este fami ggo_ good havi ife_ ily_ imes ink_ july knoc late lie_ live lol_ long mest mily nes_ ning nock
2 nth_ nurs ober ond_ orn_ ostp peri raci rean regg res_ rime rrie rryi rtum sare scar sday son_ stic stpa ter_ tern
2 tetr ting tion took tpar tric trim uat_ uly_ way_ wife ying
3 =! =birth =delivery =expecting =far =late =lines =might =months =newborn =period =section =test =twins =way _bir _bra
3 _bum _del _exp _mid _mig _mon _tes _way arry birt brac bump cks_ ctin deli eliv erio ewbo expe far_ gnan ines ins_
3 iod_ irth iver migh mont newb nths onth oven pect post riod rth_ ryin test ths_ twin ump_ wbor wins xpec
4 =bun =due =oven =pregnant =so =up =weeks =wks _bun _due _lin _pos _sec _so_ _up_ _wee _wks bun_ carr due_ ecti eeks
4 egna eks_ line nant regn ven_ week wks_
5 _pre preg sect
6 =baby _bab aby_ baby
8 uff_
"""),
    "restriction": (-11, """
-3 =i =in =is _in_ _is_ _los and_ ive_
-2 =# =, =a =and =cant =if =ive =just =like =lost =on =since =up =when _and _can _foo _get _if_ _ive _jus _lik _now _on_
-2 _sin _sta _the _thi _up_ _whe _wit _yea ars_ cant day_ ecti ere_ feel foot here ife_ ike_ ince just like ling lost
-2 nce_ now_ one_ sinc ther thin when with year
-1 =. =able =about =again =ago =all =am =an =anymore =are =as =being =bit =breath =broke =but =cancer =chest =come
-1 =couldnt =day =days =dead =didnt =disease =do =down =erection =every =exist =feels =fell =foot =for =get =getting
-1 =going =gone =got =had =has =have =heart =here =hot =id =im =it =its =l =last =left =leg =life =lol =losing =more
-1 =muscle =my =myself =nearly =night =now =numb =of =ok =old =one =osteoporosis =pain =pee =pregnant =school =slipped
-1 =so =started =still =sure =surgery =take =tell =thats =the =them =there =they =thinned =this =time =today =toes
-1 =twice =two =urge =valve =walk =week =weekend =well =went =what =with =without =work =year =years =you _abl _abo _ago
-1 _all _am_ _an_ _are _as_ _bec _bei _bet _bit _bla _blo _bon _bre _bri _bro _but _cha _clo _col _com _cou _cru _day
-1 _dea _did _die _dis _do_ _dow _dro _eat _ere _eve _exi _fai _fal _fee _fel _fre _gla _goi _gon _goo _got _had _her
-1 _hit _hot _id_ _im_ _inj _it_ _its _jok _kno _las _lat _lea _lef _leg _liv _lol _loo _mid _min _mis _mor _my_ _mys
-1 _nea _new _nig _nob _num _of_ _ok_ _old _one _pai _pee _pla _pre _rea _sca _sch _sec _shi _sli _so_ _som _sor _ste
-1 _sti _tak _tel _thr _tim _tod _toe _too _tur _two _urg _use _val _wat _wea _wel _wen _wha _wor _wou _wri _yes _you
-1 aban able abou ach_ age_ ago_ ain_ aint ake_ aker akin aliv alk_ all_ ally alve ame_ ance anin ant_ anti anym arly
-1 arry art_ arte ase_ ass_ atch ath_ atin atio ave_ ban_ bein ber_ bit_ ble_ blem bloo bly_ bone born bout brea bril
-1 brok but_ canc carr cer_ ches choo cked cle_ clot come cond coul crum days dead ded_ didn diet dise down drop ead_
-1 ean_ eani earl ears eart ease eat_ eath eati econ eek_ eeke eeli eels een_ eft_ egna eing eken elf_ elin ell_ els_
-1 ely_ enti eopo eps_ erat erec erin ery_ ess_ ets_ etti ever exis fain fell for_ gery get_ gett gnan goin gone good
-1 got_ had_ has_ hats hear hed_ hem_ hen_ her_ hest hey_ high hing hink hinn his_ hool hot_ hout ick_ idnt igh_ ilin
-1 ill_ ime_ ind_ ingl inne int_ ion_ ippe isea ish_ ith_ itho its_ ject ked_ kend ker_ king lad_ last late left leg_
-1 life lipp live lls_ lly_ lol_ long lood losi lve_ make man_ miss more musc myse nant ncer nded near need nes_ nigh
-1 ning nish nner nny_ nobo nto_ numb nymo oble obod oday oes_ oke_ okin oma_ ome_ omet ones ong_ ood_ ook_ ool_ oot_
-1 oper opor oppe ore_ ork_ orn_ oros osin osis ost_ othe ough own_ pain pass pee_ peri ping pond poro preg prob rday
-1 reas reat rect regn rely rge_ rger rin_ rine rist rly_ rnin robl roke rosi roun rry_ rted ryin ryth scho scle seas
-1 seco self shed sing sion sis_ slip some son_ spon star stil sure tack take tart tati ted_ teen tell teop ter_ that
-1 the_ them this thou thre time tire toda toe_ toes tter turn twic two_ uch_ ugh_ ught uld_ umb_ umbl und_ ure_ urin
-1 urn_ uscl use_ ust_ valv ved_ very ving way_ weak well went what wice wife work woul xaba xist ying ymor you_ ysel
1 =advised =against =any =avoid =baby =back =barbell =bodyweight =check =deep =degrees =doesnt =dont =exercise =fine
1 =floor =folds =forbid =forward =fracture =gym =havent =heavy =him =hip =hospital =kg =kids =lbs =lift =limited =load
1 =loading =may =monday =must =never =nothing =nurse =off =or =osteo =out =over =parallel =post =pounds =pulled =put
1 =running =she =sir =sitting =spare =specialist =squatting =strain =straining =supposed =team =ten =than =then =till
1 =to =until =walking =weight =wks _ang _avo _bab _ban _bar _bod _chi _con _dee _doe _don _exe _fit _flo _fol _for _guy
1 _gym _ham _hea _him _hip _hos _kg_ _kid _kne _lay _lbs _may _nev _nur _off _or_ _ort _out _ove _pos _pou _pro _pul
1 _put _rec _rep _sig _sir _spe _spo _sup _tea _ten _to_ _top _unt _wei _wks aby_ acem actu aini ains alis alki anne
1 any_ aral arbe ardi ate_ athl ats_ atti aven avoi avy_ baby bann barb bell bid_ card chec cial cise ckon cons ctur
1 cula deep degr dnt_ does dont dvis dywe eam_ eavi eavy ecia eck_ ecko eep_ ees_ egre eigh emen epai erci ers_ esnt
1 esti exer fine floo fold forw frac gist gle_ gree gym_ han_ heck him_ hip_ hosp iali ids_ ier_ ift_ ine_ ings inin
1 inst ised ital ited kids knee lay_ lbs_ ldnt lds_ lel_ les_ list lkin llel logi loor max_ may_ mite mond must ned_
1 neel neve nned nnin nst_ ntil nurs oad_ oadi odyw oesn off_ ogis oid_ olds olog ont_ oor_ ops_ ort_ orth orwa osed
1 ospi ote_ othi over pair para peci ped_ pita pose post poun pped ppos pril pull put_ ract rall rbel rcis rdio reck
1 rees repa ril_ ring rse_ rtho ruck runn rwar sed_ she_ sign sir_ sitt snt_ spec spit stin stra stre stru supp tant
1 team ten_ teo_ than then thle tho_ tic_ tops trin truc uatt uck_ uldn ulle unds unni unti uppo urse vent ver_ vice
1 vise void ward wks_ xerc ywei
2 =by =cardiologist =clear =clinic =consultant =doing =kilo =lb =light =me =op =orders =past =physio =pt =rest =shouldnt
2 =squat =squats =stretch =surgeon =til =weeks =· _adv _by_ _cli _doi _dut _kil _lb_ _lig _loa _me_ _med _op_ _ord _pas
2 _phy _pt_ _rat _str _sur _tra advi aine appe cal_ chir clin ders ding diol doin edic eeks eks_ end_ eon_ estr etch
2 forb heav hiro houl hysi ical ile_ ilo_ iner inic iolo ise_ ist_ kilo ligh lini load ltan medi ndin ner_ nic_ nsul
2 ons_ onsu orbi orde past phys port prof rate rbid rder red_ retc rict shou sio_ spor sult surg tret tric uat_ uats
2 ulta urge weig ysio
3 =bend =bending =capped =cleared =doctor =gp =limit =not =says =told _cap _gp_ _lif _lim _say _squ _til _tol ared ays_
3 capp ctor doct eare endi geon imit limi mit_ not_ octo old_ quat rain rgeo says squa stri til_ ting told tor_ trai
4 =doc =lifting =no =said _ben _cle _doc _no_ _not _res _sai aid_ bend clea doc_ ftin ifti lear lift rest said
"""),
    "saddle": (-8, """
-6 =#
-4 _sex
-3 =a =chest =i =leg =sex =· _hea _leg ches est_ hest ing_ leg_ ning ore_ sex_
-2 =, =at =down =fell =for =go =got =heart =him =im =no =now =off =orgasm =to =up _any _at_ _bla _car _che _com _con
-2 _dis _eve _fai _fin _foo _for _get _go_ _got _hap _her _him _hol _im_ _mis _nee _no_ _off _org _ove _pee _poo _pre
-2 _pus _sho _spi _sta _ste _sto _to_ _tri _up_ _wee asm_ ble_ der_ disc eart eed_ eigh eing ever fain fell foot for_
-2 gasm got_ happ hear him_ hinn ied_ ish_ ive_ ked_ miss more off_ old_ ood_ oot_ orga ose_ out_ own_ rain rgas ried
-2 ring stop they thin tter urin ust_ very ving weig work
-1 =. =about =abscess =accident =ache =again =am =an =anymore =anything =baby =back =bad =be =bed =been =before =being
-1 =belt =big =bladder =blood =body =breath =by =c =came =can =cancer =car =climb =come =coming =control =cut =damp
-1 =disc =doctor =due =during =easy =eat =empty =every =faint =fever =fine =finish =floor =foot =found =from =gave =get
-1 =getting =going =good =ground =happening =he =head =here =hip =hold =hole =how =husband =id =infection =ive =june
-1 =just =keeps =l =landed =last =late =lazy =left =life =lift =lifting =living =lost =love =make =me =mean =mind
-1 =missed =missus =moment =month =more =need =needing =new =nurse =of =ok =on =once =only =op =or =out =over =pee
-1 =peeing =period =pregnant =push =really =ribs =said =says =school =section =sexual =sick =sixteen =someone =spine
-1 =stairs =stop =straining =sudden =swollen =take =temp =th =they =think =thinking =thinners =this =tight =today =toes
-1 =told =took =tooth =tried =trouble =under =valve =walk =wall =want =warfarin =was =wasnt =waterworks =weak =week
-1 =weeks =weight =were =wet =whats =why =with =wont =work =would =wouldnt =year =yet _abo _acc _ach _aga _age _am_ _an_
-1 _ank _arm _ask _bab _bad _ban _bar _be_ _bea _bed _bee _bef _bei _bel _big _blo _bod _bon _boo _bor _bra _bre _bri
-1 _bun _bur _by_ _cal _cam _can _chi _cli _clo _col _cra _cut _dam _die _doc _doe _dri _due _dur _eas _eat _eja _emp
-1 _exe _fal _fev _flo _fou _fra _gav _goi _gra _had _he_ _hip _how _hur _hus _id_ _inf _int _ive _jus _kee _kid _lan
-1 _las _lat _laz _lea _lef _let _lif _lin _liv _los _lov _low _mak _mar _me_ _mea _mes _met _min _mom _mon _mor _mov
-1 _new _now _nur _of_ _ok_ _on_ _onc _onl _op_ _or_ _ost _out _pal _rea _res _rib _sai _say _sca _sch _sec _she _sic
-1 _sig _six _siz _sli _sma _sme _soo _spo _squ _str _stu _sud _sui _sur _swe _swo _tak _tem _th_ _thi _thr _tig _tim
-1 _tod _toe _tol _too _tro _tur _twi _unw _val _wai _wal _wan _wed _wei _wer _wet _why _wit _won _wor _wou _wro _yea
-1 _yet aban able abou absc aby_ acci ach_ ack_ acke acti acul adde ade_ agai aid_ ain_ aini ake_ aker akin aky_ aliv
-1 alk_ alve ame_ amp_ ance ande ant_ anti anym anyt appe aral ardi arfa arry ars_ art_ asnt aspi asse ast_ asy_ ated
-1 athe atin ator atur aty_ ays_ azy_ baby bad_ ban_ band bar_ bed_ been befo bein belt ber_ big_ blad blem blin bloo
-1 bone born bout bra_ brea bsce burn cal_ came can_ canc car_ card ccid cer_ cess chan che_ chem choo cide cked cks_
-1 clim come comi cond cont crap crus ctin ctio ctom cula cut_ dal_ damp day_ dden dder den_ diet ding doct does drib
-1 due_ duri eak_ eall easy eati eck_ econ ecti ecto edin eedi eein eek_ eeps eezi efor eft_ egna ejac embe emp_ empt
-1 enin ent_ eone erat erio erwo ery_ esda ets_ ette etti even exer exua ezin fall fari fect feed feve fine floo fore
-1 foun frac from gain gave ged_ get_ gett ght_ ghts gnan goin good grou hang head heav hemo her_ hey_ hink hip_ his_
-1 hive hold hool houl how_ hts_ hurt husb iati ibbl ibs_ ical ice_ icke iden ife_ ift_ ight ills ily_ imb_ imes ind_
-1 ines infe inin ink_ inki inte inti iod_ ions ippe irin isc_ ise_ isse issu ite_ ith_ ittl iver ivin ixte jacu june
-1 just keep ker_ king lack ladd land late lati lazy leak lear led_ left len_ life lift limb line list live livi llen
-1 llin lly_ lood loor lost lot_ love lve_ make marc mbar mber mean meon mes_ mess mia_ mind ming mome moni mont move
-1 mpty nant nce_ ncer nded ndin nds_ ned_ need ners nes_ new_ nfec ngs_ nia_ nigh nish nkin nly_ nned now_ nted nth_
-1 ntin nto_ ntro nurs nymo nyth octo oday oes_ oing oke_ olle oma_ ome_ omen omeo omin omy_ once ondy one_ ones ong_
-1 only ons_ onth ontr oone oor_ ooth ops_ orch ork_ orks orn_ osis oss_ ost_ oste othe oubl ove_ oven over ower owin
-1 oxab para pee_ peei pill pine pita plan ple_ pond poop ppen ppin preg prob pty_ push quee ran_ rap_ rch_ rday reac
-1 read reat ree_ regn rfar ribb ribs ries rin_ riod rked rks_ rly_ robl rol_ rom_ rong roub rous rts_ rush rwor said
-1 says sban sces scho sday seco sect sexu shed shiv shou show sick sign sion sis_ sixt size smel snt_ son_ soon spin
-1 spon sque ssed ssus star stay sten steo step ster stre sudd surg sus_ swea swol take tart teen temp tent terw this
-1 thou thre thro tigh til_ time tion tle_ toda toe_ toes told tomy took toot topp tor_ trai trie trol trou ttle ture
-1 turn ual_ uble udde ueez uff_ ught ulat uld_ une_ unne ure_ urge urn_ urse usba ush_ ushi utte valv ven_ vent ver_
-1 veri vice walk wall want warf was_ wasn way_ weak weat week wer_ were wet_ why_ wing with woll wont woul xaba xtee
-1 xual year yet_ ying ymor ythi
1 =air =all =ants =anus =around =as =balls =between =bike =bumhole =buttock =buzzing =chair =cheeks =clean =days =dead
1 =doing =dr =dropped =dull =elses =erection =feeling =folded =front =fuzzy =gone =hand =hard =in =injection =its =jeans
1 =know =lasts =less =loo =look =might =near =never =normal =nothing =noticed =pants =part =patch =perineum =pinched
1 =pinsandneedles =place =put =quiet =reps =right =round =scrotum =shine =side =sit =skin =sleep =sofa =sorry =sort
1 =still =stool =straight =strange =sun =tea =tested =that =thick =thighs =thing =tingling =tingly =toilet =top =touch
1 =tractor =underneath =usually =warm =wearing =weekend =weird =well =which =x =you _abs _air _all _ant _anu _aro _as_
1 _bal _bik _ble _buz _cou _cru _day _dea _den _doi _dow _dr_ _dry _dul _els _fol _fuz _ger _gon _han _has _in_ _its
1 _jea _jun _les _loo _lot _med _mig _mil _nea _nev _nor _nov _nut _pan _par _pat _put _qui _reg _rig _rou _sat _scr
1 _sid _sle _sof _sor _sun _tac _tea _tes _tex _tha _tic _toi _top _use _usu _was _wel _whe _woo _you ache ackl acto
1 ague aigh aine alis alls andn ange ans_ anus appy apse are_ arou arri ash_ asts ath_ atic avy_ ball bike bumh buzz
1 carr chai ched chee cher chin ckle clea days dead dent dern dic_ dles dly_ dnee dnt_ doin down dull eali eans edic
1 edle eedl eeke eird eken else elt_ end_ erne ess_ essi este eum_ fold fron fuzz germ ghs_ gle_ glin gly_ gone gue_
1 hair hand hat_ hed_ heek hich hick hift hine iage iced ich_ ick_ ides iet_ ifte igh_ ighs ike_ ilet inch ineu inje
1 inne insa insi ion_ ised itiv jean kend kin_ kle_ know laps lded ldnt lean let_ lise lkin loo_ look lses mal_ medi
1 mhol migh nche ndne near neat ner_ neum neve nge_ ngli ngly njec nner nny_ norm noti nsan nsid nts_ nus_ ock_ ofa_
1 oile olap olde orma ort_ othi otic otum pant pare patc peni pinc pins pper ppy_ prol psed put_ quie raig rang rds_
1 reps riag righ rmal rnea rola roll ront ropp rotu roun rria rse_ rubb sand scro sed_ ses_ shif shin sit_ siti sofa
1 sorr sort stat sted stic stil stoo stra sual sun_ tack tea_ ter_ test text that thes thic tic_ tice till tock toil
1 tool trac tran ttoc tub_ tum_ uall uiet uldn ull_ umho ums_ und_ used usua utto uzzi uzzy warm wear weir well whic
1 wool word you_ zzin zzy_
2 =area =asleep =betweenlegs =bits =bottom =bum =butt =couldnt =crotch =dentist =downstairs =downthere =felt =if =is
2 =nofeeling =odd =paper =penis =private =privates =saddle =sat =tampon =tell =there =thigh =tingles =touching =towel
2 =undercarriage =used =wash =washing =where =whole =wipe _are _asl _bet _bit _bot _but _cro _har _if_ _is_ _nof _pai
2 _pap _pen _per _pin _rol _sad _tai _tam _tel _tow _und _vag _wat _who addl air_ ampo ants aper area ashi asle ater
2 ates bits bott bum_ coul ddle derc dle_ eeli eenl eep_ egs_ elin enis enle enti erca ere_ erin esia esth felt gles
2 hard hers hesi high hing ide_ ipe_ legs ling mpon nder ness ngle nis_ nleg nofe nsta nthe ntis odd_ ofee otch otto
2 owel owns ownt pain pape per_ ping pon_ rcar rea_ rotc sadd sat_ sent sia_ side sthe tamp tch_ tell tes_ ting tist
2 tom_ towe ttin ttom uchi unde unk_ utt_ wash wate wel_ wher whol wnst wnth
3 =feel =feels =inner =numbness =sensation =sitting =water =wiping _fee _inn _odd _pri _sen _tou betw bnes butt crot
3 eat_ eel_ eels els_ ensa etwe here hole ipin its_ itti ivat leep les_ mbne nsat ole_ ouch peri priv rine riva sati
3 sitt slee ther thig touc twee umbn vate ween wipe wipi
4 =groin =seat _bum _gro _sea _sit _tin feel groi ingl oin_ roin seat sens
5 =numb _num _wip numb umb_
"""),
    "self_harm": (-6, """
-7 =#
-5 =,
-4 ent_ lift
-3 =but =leg =lift _but _che _cou _dow _fee _foo _leg _pee _pre _say ays_ but_ ches coul down ecti feel foot hen_ hinn
-3 inne ion_ led_ leg_ nner now_ old_ tion work
-2 =bit =blood =chest =couldnt =doc =down =feel =foot =had =has =heart =is =loo =now =numb =pregnant =says =since =thats
-2 =told =two =when =work _ask _ben _bit _bla _blo _bre _can _clo _doc _fel _got _had _has _hav _hea _hol _is_ _kno _los
-2 _now _num _poo _sin _ste _sti _str _thr _tol _two _und _wal _wee _wei _wet _whe _yea _yes aban alk_ all_ ard_ ars_
-2 art_ ass_ ban_ bend bit_ ble_ bloo bone brea clot ctio ctor day_ ded_ disc dnt_ doc_ eart eat_ eein eel_ egna eigh
-2 ell_ els_ ery_ est_ gnan had_ has_ have hear hed_ hest hin_ ift_ ight ince ine_ ise_ ldnt let_ ling loo_ lood lot_
-2 nant ned_ ning nts_ numb oes_ oile oot_ ork_ ped_ pped preg reat regn ring riva rnin says sed_ shed side sinc spin
-2 stai stre tair take thro til_ ting told two_ uldn umb_ unde walk weig when xaba year
-1 =able =ago =air =all =almost =am =and =anymore =are =arteries =as =asked =asking =baby =bathroom =bed =before =behind
-1 =belly =bend =bending =betweenlegs =birth =blacked =bladder =body =bones =breath =bum =burning =by =bypass =calf
-1 =cancer =chemo =chills =clot =clothes =comes =control =covid =dabigatran =daily =deep =disc =doctors =doing
-1 =downthere =during =easy =eat =eliquis =ever =every =expecting =faint =far =feels =fell =felt =fever =finished =floor
-1 =flu =footdrop =found =from =get =getting =goes =gone =got =gp =groin =happened =hard =have =havent =heavy =hill =hip
-1 =hold =horse =hospital =hot =in =inside =its =kicked =kilos =kitchen =knee =know =l =late =lifting =loads =lol =long
-1 =losing =lost =lot =lovenox =low =lower =make =middle =minor =missus =months =morning =new =nofeeling =noticed
-1 =numbness =off =ok =orders =osteoporosis =out =over =pants =pee =peeing =physio =playing =poo =privates =problem
-1 =push =put =right =rivaroxaban =round =saddle =said =sat =say =school =seem =shed =short =shots =shouldnt =sick =side
-1 =sitting =sixteen =so =spine =squat =squatting =stairs =started =steroid =still =strain =sudden =take =tested =th
-1 =the =then =they =thin =thinner =thinners =though =three =til =times =tiptoe =today =toes =toilet =touch =triple
-1 =trying =tuesday =turned =twice =under =until =used =valve =walk =walking =warfarin =water =weak =wee =week =weeks
-1 =weight =weights =weird =went =wet =which =why =wifes =wipe =wiping =worried =year =years =yes =yesterday =yet =¿
-1 _abl _acc _ach _act _age _ago _air _all _alm _am_ _and _ant _are _art _as_ _bab _bal _bat _bed _bef _beh _bel _big
-1 _bir _bod _bon _bot _bow _bul _bum _bus _by_ _byp _car _cha _chi _cle _cli _col _com _con _cov _cra _cro _cru _dab
-1 _dai _dee _den _dis _doe _doi _dra _dri _dur _eat _eli _emp _ere _exp _fac _fai _fal _fev _fla _fli _flo _flu _fou
-1 _fra _fre _fri _fro _get _gir _goe _gon _gp_ _gre _gro _gym _hap _hil _hip _hor _hos _hot _in_ _inj _ins _its _jun
-1 _kic _kit _kne _lat _lea _leu _lim _lin _loa _lol _lot _lov _mak _met _mid _mon _mus _nea _new _nof _nov _off _ok_
-1 _ost _out _pac _pai _pal _pan _par _pat _phy _pin _pos _pra _pri _pul _pus _qui _rac _rai _rec _res _rin _rol _rou
-1 _rub _run _sad _sai _sat _sco _sea _sec _sen _sha _she _shi _shr _sic _sid _sig _sit _six _siz _ski _sli _so_ _soa
-1 _spe _spi _sta _sud _sur _swe _tak _tem _ten _ter _th_ _the _tin _tip _tod _toe _toi _tou _try _tue _tum _tur _twi
-1 _unt _uri _val _wai _war _wat _wea _wen _whi _why _win _wip _yet abig able aby_ acem ach_ ache ack_ acke acti acto
-1 actu adde addl adin ago_ agul aid_ aily aint air_ aise ake_ aker ale_ alis alki alle allo almo alve ame_ ance and_
-1 ange anti ants anym appe ardi are_ area arel arfa arin arox arri arro arte aske aski asnt asy_ atch ated ater athr
-1 atra atti atur augh ave_ aven avy_ ayin baby ball bath bed_ befo behi bell ber_ betw biga birt blac blad blem bnes
-1 both box_ bum_ bump butt bypa calf canc card catc ced_ cer_ ched chem chen chil chin chir choo cing ckin ckon clea
-1 coag come cond cont coum covi crot ctin ctom ctur dabi dail dden dder ddle deep dent ders diet dle_ does doin drag
-1 drin drop duri each eak_ eali ears easy eath eavy ecko econ ecto eek_ eeks eeli eels eem_ een_ eenl efor egs_ ehin
-1 eird eks_ elin eliq elly elt_ embe emia emo_ empt ened enle enox ents eopo eps_ erat erda erec erie erin ermi erni
-1 eroi ers_ esda ess_ este esti etwe even expe fain fall far_ fari fell felt fes_ feve fib_ floo flu_ forb fore foun
-1 frac frid from ftin gatr ged_ get_ gett ght_ ghte ging girl glin goes gone got_ groi gula happ havi heav hemo hern
-1 hey_ hich high hill hind hiro hive hold hole hool hors hort hosp hot_ hots hree hroo hrow hysi iati ical ice_ iced
-1 ick_ icoa iddl ide_ iden iet_ ifes ifti igat igh_ ike_ ile_ iled ilet ilos imit inal ing_ ingl inor ins_ insi inst
-1 inte ions ipe_ ipin iple ippe ipto iqui ird_ irth isc_ issi issu ist_ ital itch ited itis itiv its_ itti ittl ivar
-1 ivat ixte ker_ kick kilo kitc kle_ knee knoc know lack ladd lant late lay_ layi leak lean lear legs lem_ les_ leuk
-1 limi lipp liqu lise lkin lled lmos load lol_ long loor los_ losi lost loth love low_ lowe lse_ lve_ make mar_ mbne
-1 ment mes_ mia_ midd min_ mino mont morn nal_ nce_ ncer nche ndar nded nder near nee_ ners nes_ ness new_ nged ngs_
-1 nia_ nleg nny_ nock nofe nor_ nose noti nox_ nsid nter nthe nths ntic ntil ntro nymo oads oagu oble ocke octo oday
-1 ofee off_ oft_ oid_ oke_ ole_ olle oma_ omes omy_ ond_ onda ondy ong_ onth ontr ool_ oom_ oor_ ootd oper opor oppe
-1 orbi ore_ orma orni oros ors_ orse osin osis ospi ost_ oste otdr oth_ othe otic ots_ ouch ouma oven ovid owel ower
-1 own_ ownt oxab pace pain pant part pect pee_ peei pene peni per_ pera peri phys pina pine pita play pond poo_ poop
-1 poro post ppen ppin prac pres priv ptoe push put_ quat quis quit ract rain rais ran_ rday reck rect rep_ ress rest
-1 rfar righ rin_ rink ripl rly_ rnia robl roid roin rol_ roll rom_ room rop_ ropp rosi roxa rse_ rter rts_ rus_ ryin
-1 sadd said sat_ say_ sday seco sect seem shav shee shin shiv shor sick sign sing sio_ sion sis_ siti sitt sixt size
-1 sked skin slip snt_ spit spon ssed ssio ssus star sted steo ster stil stpa stra sudd surg sus_ swea tack tal_ tart
-1 tati tch_ tche tdro ted_ teen temp tent teop terd teri term tero tes_ that the_ then thes thre ths_ tic_ tice tico
-1 tipt tis_ tive tle_ toda toe_ toes toil tomy tor_ tors touc trai tran trea trip trol tryi ttle tues tum_ turn twee
-1 twic uall uat_ uatt udde uesd uff_ ugh_ uis_ ull_ umar umbn ump_ ums_ und_ urin urni used user ush_ valv varo vate
-1 ven_ veno vent veri vid_ wait warf wate ways weak weat wee_ week ween weir went wer_ wet_ wher whic why_ wice wing
-1 wipe wipi wnth xpec xtee yes_ yest yet_ ying ymor ypas ysio ythm zing
1 =arms =around =away =back =been =born =brother =bruised =carry =check =die =died =disappear =done =dont =driving
1 =drops =easier =em =enough =everyone =everything =exist =family =feet =finish =fixing =for =giving =god =going =good
1 =hand =he =head =her =hes =hit =honestly =hour =how =hurt =into =it =just =keep =kill =kinda =lads =letters =lie
1 =longer =made =march =matter =mean =message =might =miss =more =much =mum =need =next =night =nights =nobody =only
1 =own =people =permanently =purpose =rather =set =sleep =sometimes =squats =stay =stood =strong =sunday =tablets
1 =taking =than =theres =theyd =thing =think =this =till =time =tired =tonight =too =took =unalive =urge =use =wake
1 =weekend =were =whats =will =with =wont =worry =worth =wrote =you _any _aro _awa _bar _bea _bee _bor _bro _bru _cab
1 _cat _dro _em_ _eno _exi _fam _far _fin _fix _god _goi _har _he_ _hes _hit _hon _how _it_ _jok _jus _kin _lad _let
1 _lie _loo _mad _mat _mig _min _muc _mum _nee _nex _nic _noo _onl _ove _own _pas _peo _pis _pun _pur _see _set _sho
1 _sle _som _sor _spo _sun _tel _tha _thi _tir _tom _ton _too _tri _una _urg _van _wak _was _wer _wha _wif _wit _wro
1 ably ady_ ague airs ally amil anen ank_ ante any_ arch arm_ arms arou asie ason asse aste avin been body brot brui
1 chec den_ die_ died disa done dont eady easi easo eck_ eds_ eeke eep_ eet_ eing eken end_ endi enou entl eopl eres
1 erma eryo eryt essa estl etim exis ext_ eyd_ fami feet find fixi foll for_ givi god_ goin grad han_ hand heck her_
1 hes_ heyd his_ hit_ hone houl how_ hurt ill_ ills ime_ inda ink_ int_ into irs_ isap iss_ iste ite_ ith_ iver ixin
1 just ked_ kend kill kind king lads lets lett lie_ llow lls_ made mane matt meti migh mily mone much mum_ nali nda_
1 ndin need nent nest next ney_ nish nly_ nna_ nnin noon noug ollo ome_ omet omor oner ones oney onge onig only ont_
1 ook_ oon_ ople orri orry ort_ ote_ ows_ pear peop perm pes_ pill ping plat port pose ppea purp quad rath rch_ read
1 reas res_ rge_ ried rivi rman rms_ rong rops rote roth rpos rrow rry_ rted ruis ryon ryth sage sapp scho scra set_
1 shot shou sier some sort spor ssag sses stly stro sund taki tay_ tell ters this thou time tire tomo toni too_ tood
1 took tron ture uad_ uats uise umbe unal unda unds ure_ urpo urt_ very wake way_ were what wife with wont worr wort
1 wrot xing xist you_ ythi
2 =. =about =alive =an =better =bridge =burden =dead =dog =ending =gets =goodbye =here =hoping =joking =kids =me =mind
2 =myself =no =once =pills =point =really =safe =should =soon =suicidal =thoughts =to =tomorrow =tried =wife =wish
2 =would =wouldnt =· _abo _aga _ali _an_ _bet _bri _cut _die _dog _don _gla _goo _her _kid _lif _me_ _mes _mys _nig _no_
2 _onc _ord _pil _poi _put _saf _soo _tho _to_ _who _wis _won _wor abou afe_ agai ain_ anni ant_ ary_ aved bett bout
2 brid burd bye_ cida dal_ dbye dead der_ dge_ dog_ ead_ eall eepi elf_ epin ere_ ets_ farm gain gets hopi houg icke
2 idal idge ids_ ied_ ier_ ind_ inki joki kids lad_ lann mess mind morr myse nkin ntly nto_ odby oint once one_ oodb
2 oone ope_ opin orde orro ose_ ould out_ over poin rden real ridg safe self shes soon stay than thin tly_ trie ttin
2 uary ught urde ved_ wish ysel
3 =again =being =go =if =kms =live =living =of =putting =see =thinking =want =world _bei _bur _dea _end _go_ _if_ _kms
3 _nob _of_ _pic _rea _sui _wou aliv bein ette ghts good gun_ hink hope hts_ icid ies_ ish_ ive_ kms_ livi look nigh
3 nobo obod okin orld ough pick putt rder ries rld_ see_ suic tter uici uld_ worl woul yone
4 =do =plan _do_ _liv _pla _sav _wan ivin lan_ live utti ving want
5 =be =i =id =life _be_ _hop _id_ life plan
6 ife_
"""),
    "sexual": (-7, """
-5 =# =·
-4 =a =i
-3 =foot =go =on =there _foo _go_ _on_ _pee _wip art_ der_ ers_ foot ive_ oot_ ound ting
-2 =. =bladder =do =down =feels =from =heart =hold =in =infection =left =my =pee =saddle =said =to =want =wee =wipe _are
-2 _bet _blo _bot _bre _bum _car _che _clo _con _do_ _flo _fro _hea _her _hol _in_ _inf _kno _lef _leg _lif _mor _my_
-2 _nee _poo _pre _pus _sad _sai _say _sec _sho _sit _str _the _thi _to_ _und _wal _wan _war _was _wea adde addl aid_
-2 area arin ars_ ath_ betw blad brea butt cer_ ches cont dder ddle dle_ ear_ eart eath eed_ eels een_ eep_ eft_ egs_
-2 eigh els_ ere_ erin ery_ est_ etwe fect from have hear hold ice_ ine_ infe ing_ ipe_ ject ladd leak left legs let_
-2 nder ned_ need nfec ning oile old_ out_ own_ pee_ peri ping push reat rin_ rnin rom_ roun sadd said sect self ster
-2 tati tch_ ter_ ther they top_ twee uall und_ unde ving want wee_ ween weig wipe ying
-1 =about =accident =actually =ages =air =along =am =an =anything =are =area =around =baby =balls =bathroom =been =being
-1 =bend =between =betweenlegs =bigtoe =bike =birth =blood =bone =bones =both =bottom =breath =bum =butt =by =c =cancer
-1 =chest =clot =cold =comes =coming =constipated =control =crotch =diet =disc =doctor =dog =doing =done =each =ejection
-1 =em =empty =every =face =faint =feeling =fell =fever =finished =five =floor =for =fraction =front =full =funny =goes
-1 =gonna =got =groin =had =happened =hasnt =have =heparin =here =hip =hit =holding =horse =hot =id =if =incontinent
-1 =injections =inner =ive =jeans =joke =keep =kind =kms =knee =know =l =late =leaked =leaking =leg =legs =lie =lift
-1 =living =lol =loo =losing =march =months =morning =much =myself =need =next =odd =of =off =ok =only =out =over =pads
-1 =paining =paper =peed =peeing =penis =period =place =poo =pregnant =privates =properly =push =put =really =rest
-1 =right =round =run =says =seat =section =sensation =sick =side =sit =sitting =skin =slipped =so =sore =spring =squats
-1 =stairs =start =still =stood =stool =stop =stops =stuff =suicidal =sunday =tampon =tell =temp =th =than =then =they
-1 =thighs =thin =thing =think =thinner =til =till =tiptoe =today =toes =toilet =told =too =towel =tuesday =twice =two
-1 =under =underneath =up =urge =use =usually =vagina =valve =walk =warfarin =was =waterworks =way =weak =weight =whats
-1 =where =wiping =without =wks =worth =would =years =yesterday =yet _abl _abo _acc _age _air _alo _am_ _an_ _ank _ant
-1 _arr _bab _bal _ban _bar _bat _bee _bei _ben _big _bik _bir _bit _bla _ble _bod _bri _bur _by_ _cal _chi _cle _col
-1 _cra _cro _die _dif _dog _doi _don _dow _dre _dri _dro _dry _eac _eas _eat _eje _em_ _emp _end _exe _fac _far _fev
-1 _fiv _for _fra _fre _goe _got _gra _gro _had _har _has _hav _hep _hip _hit _hor _hot _id_ _if_ _inc _inn _ive _jea
-1 _jok _jun _kee _kid _kil _kin _kms _kne _las _lau _lie _liv _lol _loo _mat _met _mid _min _mot _muc _mus _mys _nea
-1 _nex _nob _nur _odd _of_ _off _ok_ _onl _out _ove _pad _pal _pap _pin _pis _pos _pra _pri _pro _puf _pul _put _qui
-1 _reg _rep _rig _rou _run _sca _sch _sea _see _sen _sha _shi _sic _sid _six _siz _ski _sla _sli _so_ _spe _spi _spo
-1 _spr _squ _ste _sti _sto _stu _suc _sui _sun _sur _swe _tac _tal _tam _tel _tem _ter _tes _th_ _tho _thu _tic _tig
-1 _til _tin _tip _tod _toe _toi _tol _too _tow _tru _try _tue _twi _two _typ _up_ _urg _uri _usu _vag _val _vir _wat
-1 _way _wee _wei _wer _whi _wks _wou _yea _yes _yet aban able ably abou aby_ acci ace_ ache ackl actu ade_ ads_ ages
-1 agin aine aint air_ airs aked akes akin aliv alk_ alki all_ alls ally alon alve ame_ ampo ans_ anti ants anyt aper
-1 arch ardi are_ arel arfa arm_ arry artu ary_ ase_ ass_ atch ated ater ates athe athr atin atio ats_ aty_ augh ave_
-1 aven avin ays_ baby ball ban_ bar_ bath been bein bell bend ber_ bigt bike birt bloc bloo bly_ body born both bott
-1 bout bum_ burn canc car_ card carr ccid cher choo cida cide ckle cks_ clea cloc clos clot cold comi cons coum crot
-1 ctom ctor ctua dal_ ded_ dent dern diet diff doct dog_ doin done down drib drop eak_ eake eaki eall eam_ ean_ eans
-1 ears ease east eat_ eck_ ecto eein eenl egna eing ejec elf_ ell_ elly emp_ empt ence endi ened enis enle ensa ente
-1 eps_ erda erio erly erne erwo ess_ essi este ets_ ever exer ext_ face fain fari feve five floo for_ frac fron ful_
-1 funn ged_ ges_ ghs_ ght_ ghts gina gnan goes gonn got_ groi gtoe gula had_ han_ hasn hepa her_ here hern hers hes_
-1 hest hey_ high hin_ hink hinn hip_ hit_ hole hool hors hot_ houg houl hout hroo hts_ hurs ibbl icid icke idal iden
-1 ids_ ies_ iet_ ift_ igh_ ighs ight igto ilet ill_ ills ina_ inal inch inco ind_ indi inen inje ink_ inki inne ins_
-1 int_ iod_ ipat ipin ippe ipto ired irs_ irth isc_ iss_ isse ist_ iste ite_ itho itti ivat iver ivin jean joke keep
-1 ker_ kes_ kin_ kind king kle_ kms_ knee know lace lack lant last lat_ laug ldin lear leep leg_ les_ lets lie_ lift
-1 limb lipp list live livi lkin llin lls_ lol_ loo_ lood loor lose losi lot_ lve_ marc mia_ ming morn most mpon mpty
-1 much myse nal_ nant ncer nche ncon nday nded nds_ near neat nee_ nes_ nest neum next nged nia_ nis_ njec nkin nleg
-1 nna_ nner nny_ nobo nsat nsti nted nten nths ntic ntin nto_ ntro nts_ nurs nus_ nyth obod ock_ octo oday odd_ ody_
-1 off_ oin_ oke_ okin ole_ olle oma_ omes omin omy_ ondy ones only onna onst onti ontr ool_ oor_ oper ops_ orn_ orni
-1 orri orse orth ose_ osed osin osis otch oth_ othe ots_ otto ough ouma our_ oven over owel pads pape pari pass pate
-1 peed peei pene per_ perl pinc piss pita plac pon_ poo_ preg prin priv prop ptoe pty_ puff pull put_ quat ract rang
-1 rday rea_ real reas red_ regn rest rfar rge_ ribb righ rina rine riod rist riva rly_ rms_ rnea rnia roin rol_ ront
-1 rope rotc rrie rse_ rth_ rts_ rtum run_ rwor ryin sati says scar scho sday seat sens ses_ shak shed shin shot shou
-1 show sick sion sis_ sit_ sitt sixt size skin slee slid slip son_ sore spin spri squa ssed ssio stai sten stic stil
-1 stip stoo stre stuf sual suic sund surg swea tack tair talk tamp tche teen tell temp terd terw tes_ test than then
-1 thig thou thro ths_ thur tick tigh til_ till tine tipa tipt tle_ toda toe_ toes toil told tom_ tomy too_ tood tool
-1 tops towe tran trea tric trol tter ttin ttle ttom tual tues tuff tum_ ture twic two_ uats uch_ uesd uff_ ugh_ ught
-1 uici uld_ ull_ ult_ unda undi unny urge use_ ush_ ust_ usua utt_ vagi valv vate vent ver_ veri very walk warf was_
-1 wate way_ weak wear weat wel_ were wice wing wipi wks_ worr wort woul xaba year yes_ yest yet_ ysel ythm zing
1 =anymore =asked =at =awkward =back =bad =bed =before =below =belt =came =can =change =days =dead =deadlift =downstairs
1 =either =else =even =ever =everything =first =function =going =good =happening =head =hurt =injury =is =isnt =it =its
1 =lately =literally =long =lost =message =month =new =numb =old =ones =pain =past =permanently =problem =problems =rub
1 =single =sir =someone =sorry =stand =standing =started =sudden =ten =things =this =through =time =times =took =touch
1 =touching =training =we =wednesday =wife =with =wont =work =worked _act _ask _at_ _att _awk _bac _bad _bef _bon _but
1 _cam _cou _dea _did _doc _dul _eit _els _equ _fai _fir _fla _fun _goi _hap _inj _is_ _isn _it_ _lea _let _lit _lov
1 _man _mas _mes _mis _new _num _old _one _pil _pla _red _res _rub _sir _tri _use _we_ _wed _wha _whe _wil _won _wro
1 ach_ acti adli ags_ aile and_ andi anen ant_ anym arte aske ast_ atel ator atte awkw back bad_ bed_ befo belo belt
1 blem bone call came ched chin clim days dead den_ disc dlif dnes dnt_ dull eadl edne educ eel_ efor eith elow else
1 ely_ ems_ ency enin ent_ entl eone epar equi eral eryt essa fini firs fore func goin hang happ hen_ his_ hrou ical
1 ick_ ied_ ife_ iled ime_ imes ings inis inju inti ions irst isnt iter ith_ ithe jury kwar late lati ldnt led_ lem_
1 lems ling lite lly_ lost love lse_ mane mast meon mess miss more ncti ncy_ ndin nesd new_ nge_ nish njur noti now_
1 nsta nter nth_ ntly numb nymo oble ocke omeo ons_ ood_ orch ore_ ork_ orke orks orma orry otic ours ouse owns past
1 pen_ perm pill plan pond pped ppen prob rall redu ried ring rks_ rman robl rong room rous rst_ rted rub_ sage sed_
1 sica sing sir_ sked sorr spon ssag stop ted_ tely tenc tera that thin this tice tile tnes took tten uche uchi uldn
1 ulle umb_ unct urin urt_ ury_ ward wedn what will wkwa wnst wont ymor
2 =bedroom =but =cant =climax =couldnt =department =did =doc =does =doesnt =during =erections =failed =feel =finish
2 =fortnight =get =he =hell =husband =inside =love =may =missing =nie =no =noticed =now =pill =reach =same =sexual
2 =since =tmi =tried =used =what =when =wifes _blu _can _dep _dic _dur _eja _get _gir _gon _he_ _hel _hon _hus _imp _ins
2 _int _loc _may _nie _no_ _not _per _sam _sin _sud _tim _tmi _wor acul anke artm band bedr blan but_ cant ced_ come
2 coul cted cula dden depa did_ doc_ droo duri ecte edro eeli ejac elin esnt espo exua fail feel fes_ fort get_ girl
2 gone hat_ hell hing hone husb iced ifes imax impo ince insi ion_ isco ise_ issi issu jacu ket_ lank lett lima lue_
2 max_ may_ ment nce_ nect ner_ nie_ nigh nket nsid oesn ome_ oom_ orm_ ortn ove_ part reac resp rkin rtme rtni same
2 sban sexu sinc snt_ ssin stan sudd tand tent time tmen tmi_ tnig trie ual_ udde ulat usba when wher xual
3 =as =come =day =gone =him =limp =nofeeling =nothing =nowhere =orgasm =stopped =working =¿ _as_ _bed _day _doe _him
3 _lim _nof _org _pen _sof _tou _wif ane_ asm_ does ecti erfo form gasm him_ imp_ ked_ limp nofe noth nowh ofee oft_
3 oner oney oon_ oppe orga orki othi ouch owhe perf rfor rgas tion topp touc used wife work
4 =erection _now ctio ead_ end_ rked
5 =sex _ere _sex erec rect sex_
7 _cli
"""),
    "spine_history": (-8, """
-4 =im _im_
-3 =no =not =to _no_ _to_ _wee day_ ent_ ght_ ing_ not_ week
-2 =. =am =cancer =cant =heart =i =is =it =like =numb =the =up =valve =week _am_ _can _che _day _dow _fee _is_ _it_ _leg
-2 _lik _mon _not _num _sta _thi _up_ _val alve ance ant_ art_ ays_ canc cant cer_ ches cked ctio ded_ eart ecti eek_
-2 est_ ever feel hear here ight ike_ ked_ king like lve_ ncer ned_ ning now_ numb oma_ one_ ont_ ood_ ore_ ould ound
-2 pass tent the_ thin ting tion umb_ ust_ valv
-1 =, =a =after =age =all =almost =an =and =at =attack =baby =be =because =bed =being =big =bit =blood =bones =brittle
-1 =but =by =bypass =came =chemo =chest =coronary =daily =day =days =dexa =did =doesnt =dont =down =due =enough =f =feel
-1 =feels =fever =flat =foot =for =get =go =going =groin =havent =head =here =hip =hit =hurt =ice =id =if =just =kg
-1 =landed =left =leg =life =lol =lost =m =march =melanoma =month =months =myself =new =night =nofeeling =now =on =only
-1 =osteoporosis =pain =pee =physio =radiation =ring =says =shower =since =so =sore =started =stents =still =svt =take
-1 =th =thats =this =thoughts =til =took =tuesday =turn =under =want =weeks =weight =went =what =when =while =wish
-1 =without =wks =wont =work =would =yesterday _acc _aft _age _ale _all _alm _an_ _and _any _api _at_ _att _bab _bal
-1 _bar _be_ _bec _bei _ben _bet _big _bir _bit _bla _bod _bre _bri _bum _but _by_ _byp _cam _car _cha _chi _cle _cli
-1 _clo _col _cor _cru _dai _den _dex _did _doc _doe _don _due _eno _eve _fai _fev _fir _foo _for _fou _get _go_ _goi
-1 _goo _gro _hav _hea _hip _hit _hur _ice _id_ _if_ _inf _jun _jus _kee _kg_ _kne _kno _lan _lat _lef _lif _liv _loa
-1 _lol _los _mar _mel _min _mis _mor _mys _new _nig _nof _nov _now _on_ _onl _ove _pac _pai _pal _pas _pee _pen _per
-1 _pin _pla _pra _pre _rad _rea _rem _rin _rou _run _say _sec _sep _shr _sin _six _ski _so_ _sor _squ _sto _str _stu
-1 _svt _tak _tea _tem _th_ _tha _the _tho _thr _til _too _tri _tue _tur _und _wal _wan _war _wea _wei _wen _wha _whe
-1 _whi _wis _wit _wks _won _wou _yea _yes aban aby_ acke acti adde adia afte aily aint air_ ake_ aker alen aliv all_
-1 alle almo ame_ and_ ande ange anom apix appe arch ardi area arin arm_ arte ary_ ass_ ate_ ats_ atta atur augh ause
-1 aven avin baby ban_ beca bed_ bein bell bend ber_ big_ birt bit_ bloo bly_ body bone brea brit but_ bypa came car_
-1 card carr caus chem chil clea clot coll cond coro ctor dail days dder ddle dent der_ dexa diat did_ ding dle_ dnt_
-1 does dont down dron drop due_ ead_ ear_ ears ecau eeks eel_ eeli eels eep_ eft_ eigh eing eks_ elan elf_ elin ell_
-1 els_ embe emo_ endr enou ents eopo eps_ erda ere_ erin ers_ esda esnt ess_ este ets_ exa_ fain feve flat foot for_
-1 fort fter ged_ get_ ghts goin good groi hat_ hats head hed_ hemo hen_ her_ hes_ hest high hile hin_ hink hinn hip_
-1 his_ hit_ hot_ houg hout how_ hts_ hurt ick_ icke ide_ iden ife_ ift_ igh_ ile_ ill_ ily_ ince ink_ inne ins_ ions
-1 ippi irth ish_ isio issi ist_ itho ittl ity_ iver ivin just keep ker_ knee ladd land lano lat_ late ldnt lear left
-1 leg_ lend let_ life line ling live lled lls_ lly_ lmos load lol_ lood lost lump make man_ marc max_ mber mela mia_
-1 miss mont more morn myse nary nce_ nday nded nder ndin ndro nds_ need ners new_ ney_ nic_ nigh nly_ nned nner nofe
-1 noma noug nted nth_ nths nto_ oad_ octo ody_ oes_ oesn ofee oin_ oing old_ omet onar only ons_ onth ook_ oot_ open
-1 opor oppe ops_ orni oron oros othe ough oven oxab pace pain pect pee_ perm phom ping plan ple_ poro ppin preg prob
-1 rack radi rch_ rday reas rest ries rin_ ritt riva rkin rly_ rnin roin rona rosi roun rse_ rted rter rth_ rts_ rus_
-1 says sday self sept shed side sinc sio_ snt_ son_ sore squa ssed star ster stil stop stra svt_ tack take tart tch_
-1 teen temp teop ter_ terd test that ther this thou thro ths_ tick til_ till tle_ took trai tran ttac tter ttin ttle
-1 tues turn uesd ugh_ ught uld_ uldn umbl umpe und_ unde unds unk_ urn_ urt_ use_ ven_ vent ver_ very walk want warf
-1 weig what when whil wish with wks_ wont woul xaba year yest ying ypas ysel ysio
1 =again =antibiotics =are =bedroom =been =bone =broke =c =compression =consultant =cut =degenerative =drip =epidural
1 =fast =flared =forward =from =gave =has =heavy =herniated =in =injection =ive =kid =kind =low =mean =microdiscectomy
1 =nerve =one =operated =osteo =out =post =scan =scare =sciatica =shaved =slid =spondylolisthesis =surgeon =t =ten =them
1 =they =theyre =things =tumour =two =vertebra _ank _are _ban _bee _bow _bra _cal _cau _cur _epi _equ _fas _fro _gav
1 _gym _has _hau _in_ _inj _ive _kin _mea _met _mic _ner _occ _ope _out _par _pro _sca _sci _sco _sha _shi _twe _twi
1 _two _win ace_ age_ ands ars_ ast_ asti atic ativ ator aved avy_ band bedr been biot bra_ brac can_ care ciat comp
1 cons coug crod cut_ dege drip droo dura dylo eavy edro egen ener eon_ epid equi erve esis espo essi eyre fall fast
1 flar forw from gave gene geon gymn has_ haul hem_ hesi hey_ heyr hift hing howe iate ibio ica_ ical icro ics_ idur
1 ifte ina_ ings inje inte ion_ ioti ippe isth ive_ kid_ kind lare lato led_ lid_ lipp liti loli losi low_ ltan mean
1 micr mnas most mour mpre nast nera nerv nes_ ngs_ nia_ njec nsul nter ntib nts_ odis oke_ olis ompr ones onsu oom_
1 oper orn_ orwa osin ower own_ pera pidu pres pril ral_ rati red_ resp ress rgeo ril_ ring rip_ riti rodi rom_ rve_
1 rwar scan scia shav shif show sica sing sthe stic sult tant tchi ted_ teo_ them thes thri tibi tica tics trus two_
1 ulat umou ural ved_ ward watc wer_ ylol ymna yre_
2 =# =bad =bulging =fracture =fusion =had =hernia =laminectomy =lower =mri =ones =pars =prolapse =scoliosis =showed
2 =slipped =stenosis =surgery =twice =va =was =· _bad _blo _bur _fac _had _lam _lum _mos _mri _sur _va_ _ver _was ack_
2 amin apse are_ arri arro ated bad_ bar_ blow burn cect coli ebra enos erat erte etal face fusi gery ging had_ heal
2 iati inec iosi isce itis lami laps lgin lios lowe meta mine mri_ ndyl nect niat nosi oint olap olio osis owed owin
2 pars prol pse_ ract rate rger rola rowi rrow rteb scec scol sed_ sion surg tebr teno they tis_ twic ulgi ulta ure_
2 ured urge usio vert was_ wed_ wice wing
3 =back =discs =lumbar =neck =rods =slip =spinal _bac _bro _bul _fra _har _her _low _nec _one _rod _scr _sli actu back
3 brok bulg ctom ctur eck_ ecto erni frac hern inal ine_ iscs lip_ lumb mbar nal_ neck ods_ omy_ pina rnia rods roke
3 scs_ sis_ slip tomy ture umba used
4 =op =spine _fus _op_ _spi _spo ase_ disk ondy pine pond spin
5 =disc =s _sch erma isc_ rman spon
6 _dis disc
7 =l
"""),
    "under_18": (0, """
-5 ing_
-4 =l =no =on _no_ _on_
-3 =. =ago =back =had =it =me =of =the =up _ago _bac _che _dis _fee _for _had _hea _it_ _me_ _num _of_ _the _up_ ago_
-3 ays_ back day_ disc ecti ever feel had_ ion_ king nce_ numb one_ sed_ ted_ ter_ the_ ting tion ver_
-2 =a =all =at =cancer =cant =chest =disc =due =feel =for =from =got =heart =is =ive =leg =like =now =numb =out =says
-2 =since =when =wont _all _any _at_ _can _car _cle _cou _day _dea _die _doc _dow _due _eve _fai _fin _fra _fro _got
-2 _is_ _ive _leg _lik _los _not _now _out _ove _pre _pro _put _say _sho _sin _spi _spo _ste _sur _tak _wee _wei _whe
-2 _won aban ack_ ain_ ake_ aliv all_ ance ant_ art_ ban_ canc cant cer_ ches clea ctio ctom dead ding dnt_ due_ ead_
-2 eart ecto eel_ ent_ erni ery_ ets_ for_ frac from ght_ gone got_ hear hen_ hest ife_ ight ike_ ily_ ince ine_ isc_
-2 led_ leg_ like ling mia_ ncer now_ oma_ omy_ ont_ ore_ ould ound out_ pass ped_ pped ract red_ rin_ ring rom_ ryin
-2 says sinc sis_ spin sten tent they tomy ttin ture uld_ umb_ ure_ very week when wont xaba
-1 =! =about =afib =after =again =alive =an =anymore =are =as =baby =bad =because =bed =been =birth =blood =bone =both
-1 =broke =burden =by =bypass =c =carrying =chemo =clear =cleared =cold =consultant =coumadin =covid =dabigatran =daily
-1 =day =days =dead =didnt =die =diet =doc =doctor =doesnt =done =down =downthere =dvt =eating =eliquis =even =every
-1 =expecting =faint =fainted =family =feels =fell =fever =fine =finished =foot =fortnight =found =fracture =gave =get
-1 =gone =good =goodbye =groin =havent =her =hernia =hes =hip =hot =how =id =if =ill =inr =kilos =kind =laminectomy
-1 =late =lb =lbs =leaking =left =life =limp =lines =living =long =lost =lymphoma =mean =melanoma =mg =mi
-1 =microdiscectomy =might =morning =my =myeloma =myself =neck =never =new =night =nofeeling =not =nothing =once =one
-1 =orders =osteoporosis =over =pain =pars =pee =postpartum =pradaxa =preggo =put =remission =reps =rivaroxaban =said
-1 =say =scan =see =shivery =sick =slipped =somehow =spinal =spine =spondylolisthesis =stents =suicidal =sure =survivor
-1 =t =take =temp =ten =there =they =thinners =this =to =today =toes =told =took =triple =trying =twice =unalive =until
-1 =valve =wake =walk =warfarin =way =weeks =weight =weird =well =went =wet =where =wife =wish =with =wks =work =would
-1 =x =xarelto =yes =you _abo _afi _aft _aga _air _ali _an_ _ant _api _are _as_ _bab _bad _bec _bed _bee _bel _ben _bet
-1 _big _bla _blo _bod _bon _bot _bre _bul _bum _bur _by_ _byp _cab _cha _chi _clo _com _con _cov _dab _dai _deg _did
-1 _doe _don _dro _dvt _eat _eli _exp _fal _fam _far _fel _fev _flo _flu _foo _fus _gav _get _gon _goo _gro _hav _hes
-1 _hip _hol _hon _hot _how _hur _id_ _if_ _ill _inf _inr _kee _kil _kin _kno _lam _lb_ _lbs _lef _let _leu _lim _lin
-1 _lit _lon _loo _lym _mea _mel _met _mg_ _mi_ _mic _mig _mis _mon _mor _my_ _mye _myo _mys _nec _nev _new _nig _nob
-1 _nof _nur _onc _one _ord _ost _pac _pai _par _pas _pat _pee _phy _pil _pin _pla _pos _pra _rad _rat _rea _rem _rep
-1 _res _riv _sai _sav _sca _see _shi _shr _sic _sit _ski _sli _som _sor _sta _sto _str _sui _tem _tes _thi _tho _thr
-1 _tim _tin _to_ _tod _toe _tol _too _tri _try _twi _una _unt _val _wai _wak _wal _war _was _wat _way _wel _wen _wet
-1 _wha _wif _wis _wit _wks _wor _wou _xar _yes abig able abou aby_ ace_ acke actu adax adin afib afte agai agul aid_
-1 aily aine aint air_ airs aker akin ale_ alk_ ally alve ame_ amil amin anke anom anti ants anym apix appe apse apy_
-1 arct ardi are_ area ared arel arfa arin arox arri arry artu ase_ aspi asse ast_ atch ate_ ated ater ath_ athe athl
-1 atin atio atra ats_ augh ause ave_ aven axa_ baby bad_ beca bed_ been bell bend biga blan bloo body bone both bout
-1 brea brok bulg burd burn bye_ bypa car_ card carr caus cect chem chil cida cked cker clot coag cold come cons coul
-1 coum covi crod ctin ctor ctur dabi dail dal_ daxa days dbye ded_ den_ ders didn die_ diet din_ doc_ doct does done
-1 down drop dvt_ dylo eaki ean_ eare ease east eat_ eath eati ecau eck_ edin eedi eeks eeli eels eep_ ees_ eft_ eggo
-1 ehow eing eird eks_ elan elf_ elin eliq ell_ elle elom els_ elt_ elto emia emis emo_ emp_ end_ ents eopo eps_ erap
-1 ered erin erma esar esis esnt ess_ est_ este ette etti even expe fain fami farc fari feed fell feve fib_ fine fini
-1 foot fort foun fter gain gatr gave get_ ggo_ ghts ging good groi gula have heal hemo hera here hern hes_ hesi hey_
-1 hill hing hinn hip_ his_ hive homa hot_ houg houl how_ howe hts_ hurt hysi ial_ ice_ icid ick_ icoa icro idal ide_
-1 idnt ids_ ied_ ies_ iet_ igat ile_ ills ilos imes imp_ inal ind_ inec iner ines infa ingl inis inki inne inr_ ins_
-1 int_ inte ions ioth iple ippe ips_ iqui ird_ irs_ isce ishe ison ist_ isth itch ith_ itis ittl ivar ive_ iver ivin
-1 ivor ked_ ker_ kets kilo kind know lack lami lank lano laps late lbs_ ldnt leak left les_ let_ lett leuk life limp
-1 line lipp liqu list livi lls_ lly_ loli loma long lood los_ lost lot_ low_ ltan lto_ lve_ lymp madi make mar_ mate
-1 max_ mean meho mela mes_ meta micr migh mily mine more morn mpho mps_ myel myoc myse nal_ nali ncy_ ndin ndyl neck
-1 nect ner_ nes_ nest neve new_ nfar nia_ niat nigh nish nket nkin nner nobo nofe noma nose not_ noth nsul nted nthe
-1 ntic ntil ntin nts_ nurs nymo oagu obod ocar octo oday odby odis ody_ oes_ oesn ofee oin_ oke_ olis ome_ omeh omet
-1 once ondy ones ong_ ons_ onsu ood_ oodb ook_ oot_ opor oppe orde ork_ orma orni oros ortn osis oste ostp oth_ othi
-1 ouma oven over ovid ower own_ ownt ows_ oxab pace pain pars part pect pee_ peri phys pill pina pine ping plan ple_
-1 pond poro post prad preg prof prol put_ quis rada radi rain ran_ rapy rcum rden rder rean reas reat reck ree_ regg
-1 relt remi repl reps rest rfar ried ries rine ripl riva rman rnia rodi roin roke rosi roun roxa rry_ rryi rse_ rtni
-1 rts_ rtum rviv said sare say_ scan scec sect see_ self shiv shou show sick side sing sion slip snt_ some son_ spon
-1 ssed sses steo ster sthe stly stop stpa stre suic sult sure surv take tal_ tant tati tch_ tche temp ten_ teop tes_
-1 test ther thes thin this thle thou thre thro tic_ tico time tis_ tle_ tly_ tnig toda toes told took tor_ tpar trai
-1 tran trip tryi tter ttle tum_ twic uch_ uck_ ught uici uis_ ulat uldn ulta umad umar unal und_ unti urde urvi used
-1 user usio ust_ utti valv varo ven_ vent vid_ ving vivo vor_ wait wake walk warf way_ weig weir well went wer_ wet_
-1 what wher wice wife wish with wks_ wnth work woul xare xpec yelo yes_ ying ylol ymor ymph yoca you_ ypas ysel ysio
1 =, =be =btw =buy =class =college =dad =enough =go =gonna =hell =here =in =june =kid =lift =live =lol =mam =march =mom
1 =mum =nearly =november =only =s =secondary =so =sophomore =that =thing =think =young =yr _be_ _bro _btw _buy _cla _dor
1 _eno _go_ _gra _in_ _liv _loc _lol _lot _mam _may _mid _min _mom _nea _onl _sco _sig _so_ _sop _und _use _yr_ ads_
1 arch arly ars_ born btw_ buy_ can_ cket clas coll cott dad_ dary ddle der_ dle_ dorm earl ege_ eigh embe enou ert_
1 four gonn hat_ hed_ hell her_ hink homo hone ift_ ill_ itio june ket_ kid_ lass lat_ lege ler_ lleg lol_ mam_ mber
1 mom_ mum_ nder near ners nly_ noug nove omor only onna opho orm_ orn_ ost_ ote_ othe otto ovem pril rch_ ril_ rly_
1 rnin sign sity soph stan tand that uff_ ums_ unde une_ ung_ urn_ use_ vemb
2 =almost =am =born =can =doing =drive =fifteen =freshman =grade =half =hs =kg =lifting =may =middle =minor =ok =old
2 =rack =school =sign =sixteen =still =student =stuff =summer =til =turn =turned =turning =under =use =wk =years =· _alm
2 _am_ _ano _bor _dad _doi _dri _fif _fre _hal _hs_ _kg_ _lif _mum _ok_ _old _per _rac _sch _sti _sum _ten _til _wk_
2 _you ade_ alf_ almo dent doin driv ear_ ears eshm fift fres ftee ftin gest grad half hman iddl ifte ifti ign_ inor
2 ior_ ixte lift lmos man_ may_ mer_ midd mino mit_ mmer most ndar nior nor_ oing ool_ oung rack rade resh rive rned
2 ses_ shed shma stil stud stuf summ til_ till tude tuff uden umme urne urni xtee youn
3 =brother =next =shed =year =yet _jun _nex _she _six _stu _yea _yet brot choo een_ ermi ext_ hool next perm roth scho
3 sixt year yet_
4 _tur age_ teen turn
5 =age =im =m =th _age _im_ _th_
7 =# =f
"""),
    "weakness": (-7, """
-5 =#
-4 =im _che _im_ ion_
-3 =a =feel _bre _dis _hea _num _pee art_ brea ches eart eath feel hest numb tion
-2 =, =arm =be =cancer =chest =fell =heart =if =in =life =numb =of =pee =said =want _bac _be_ _bla _clo _doc _her _hur
-2 _if_ _in_ _kno _liv _mis _of_ _pla _rea _sai _sca _spi _sto _tin _wan _wei _you aid_ ance arm_ ath_ back bone came
-2 canc cer_ ding disc ear_ eeli een_ eigh elin ell_ ere_ ers_ ets_ ever fell hed_ here ill_ ingl ist_ life live ncer
-2 out_ pee_ reat rin_ said sed_ spin ssed ted_ thin till ting uff_ umb_ ure_ want
-1 =aches =af =again =air =alive =also =am =anything =around =asleep =back =backside =bathroom =been =belly =betweenlegs
-1 =big =bike =birth =bladder =blood =bones =breath =bruise =burning =by =bypass =came =car =climb =clot =cold =comes
-1 =crotch =daily =didnt =diet =disc =doc =doctor =dont =downthere =dropped =during =dvt =eat =eating =empty =erection
-1 =fainted =feeling =fever =first =flow =flu =for =fracture =go =got =grey =groin =half =have =head =here =hit
-1 =hospital =hot =how =hurt =i =ice =id =idea =injury =inner =inside =jaw =kids =kilos =know =landed =leaking =live
-1 =living =lol =long =lower =lungs =make =mate =me =might =mind =myself =needing =next =nie =night =nofeeling =nowhere
-1 =numbness =only =op =orders =orgasm =out =passed =peed =poo =pregnant =privates =really =ribs =ring =runs =saddle
-1 =safe =says =scan =school =seat =see =sex =shed =should =sick =sides =six =skid =sleeping =slid =something =spinal
-1 =spine =stars =still =stops =stuff =swollen =tablets =takes =th =they =thinking =thinners =this =tight =till =time
-1 =tingles =tingling =tmi =told =too =two =until =valve =wake =warfarin =waterworks =wearing =wee =weeks =weight =weird
-1 =wet =when =wifes =winded =wipe =wish =without =would =xarelto =year =yesterday =yet =you _ach _af_ _aga _age _air
-1 _ali _als _am_ _ant _are _aro _asl _ban _bea _bee _bel _bet _bik _bir _blo _bod _bon _bra _bur _by_ _byp _cam _car
-1 _cel _chi _cle _cli _col _con _cro _cut _dai _die _dow _dri _dro _dur _dvt _eas _eat _els _emp _ere _eve _exp _eye
-1 _far _fee _fel _fev _fif _fit _flu _for _fou _fra _ful _fus _go_ _got _gra _gro _gym _hav _hit _hos _hot _how _ice
-1 _id_ _ide _inf _inn _ins _jan _jaw _jun _kid _kin _lan _las _lau _lea _leu _lig _loa _lol _lon _loo _los _lun _mak
-1 _mar _mat _me_ _mea _med _met _mid _mig _mon _mys _nee _nex _nie _nig _nof _onl _op_ _ord _org _ost _out _pad _par
-1 _pas _per _pil _pin _poo _pre _pri _pro _puf _que _rad _rib _rin _roo _run _sad _saf _say _sch _sco _sea _sex _shi
-1 _sho _sic _six _ski _sle _sli _som _spe _spo _squ _sti _sui _sur _swe _swo _tac _tak _th_ _thi _thr _tic _tig _tmi
-1 _tol _too _tro _tum _tur _twi _two _unt _uri _val _wak _war _was _wat _wet _whe _wil _win _wip _wis _wit _woo _xar
-1 _yet aban acci ace_ acem ache ack_ acks actu adde addl ade_ afe_ agai age_ aily aint ake_ akin ale_ aliv alle also
-1 alve ame_ ande anti anyt aper ard_ ardi are_ ared arel arfa arin arou arri arro ary_ ash_ asle asm_ aspi ass_ ast_
-1 asti ate_ ater athe athr atin atio ats_ atte aty_ ball ban_ barr been bell betw big_ bike birt blac blad blem blet
-1 bloo bnes body born box_ bra_ brui burn bye_ bypa call car_ card ccid cell chan chem choo cide cker cksi clin clot
-1 cold cons coum crot ctio ctom ctor ctur cuss dail dder ddle dea_ ded_ des_ dge_ didn diet dney doc_ doct dont down
-1 drib duri dvt_ ead_ eaki eall eam_ ean_ east eat_ eati eats eck_ ecti ecto edin eed_ eedi eein eeks eel_ eenl eep_
-1 eepi egna eing eird eks_ elf_ else elto emia empt endi enle ent_ enti epar epin erda erec erfo erin erwo est_ esti
-1 ethi ette etwe ext_ fain fari fes_ feve fib_ fift firs flow flu_ for_ forb form frac full gain gasm geon ges_ ghts
-1 gles glin gnan got_ grey groi gula gun_ half have head hear hemo her_ hey_ hink his_ hit_ hole hool hope hort hosp
-1 hot_ houl hout hroo hts_ hurt ibs_ ical ice_ icid idea iden ides idge idne idnt ids_ ies_ iet_ ife_ ifes ifte ills
-1 ilos ily_ imb_ ime_ imit inal ine_ ing_ ings inju inki insi int_ inte ions ipe_ ird_ irin irst irth isc_ ish_ ishe
-1 iss_ ital ite_ ited itho itis ittl ivat ive_ iver jaw_ jury ked_ kidn kids king know ksid lack ladd land last leak
-1 leep len_ les_ lets lett leuk lid_ limi line liti livi llen llow load lol_ lood los_ lot_ low_ lowe lse_ lso_ lto_
-1 lumb lung lve_ make mal_ marc mbar mber mbne mean medi ment meth mia_ migh mind miss mont most mpty myse nant nch_
-1 ncus nded ned_ need ners nes_ next ney_ ngle ngli ngs_ nia_ nic_ nie_ ning njur nkin nleg nly_ nofe noon nowh nsid
-1 nsta nted nthe ntil ntin ntio nts_ nyth oble ock_ ocke octo ofee oin_ okin old_ ole_ olle oma_ omes omet omor omy_
-1 oncu ondy ones oney only ons_ onth ood_ ool_ oom_ oone oppe ops_ orde orga orks orry orth orwa ose_ osis ospi ost_
-1 oste otch ote_ otto ouch ough ould ouma ound our_ oven owel owhe owin ownt oxab pace pari part pass ped_ peed per_
-1 perf peri pill pina pine ping pita plan plum pond poo_ pped preg priv prob pty_ puff quat quee rack radi ran_ rder
-1 real ream reas rect ree_ regn relt res_ rey_ rfar rfor rgas rgeo ribs ridg rine riva rks_ rman robl roin room ropp
-1 rotc row_ rrow rry_ rst_ rth_ rts_ ruis runs rwor ryth sadd safe says scan scar scho seat see_ self sex_ shed shor
-1 shot shou sick sing sion sis_ six_ skid skin slee slid snt_ some son_ spit spon squa ssin ssio star sten steo ster
-1 stic stil stop stpa stuf suic sure surg swea swol tack take tal_ tars tati teen tent ter_ terd ters terw thes they
-1 this thou thro tic_ tick tigh tis_ tle_ tmi_ told tomy too_ top_ tops trea tric trou tter ttle tuff tum_ ture turn
-1 twee two_ ual_ ught uici uise umbn und_ ungs uns_ unti urge urin urn_ urni urt_ ury_ usio valv vate ved_ ver_ veri
-1 very wake warf wate wear weat wee_ ween weig weir wet_ when wher will wind wing wipe wish with wnth woll xaba xare
-1 yest yet_ ying you_ ypas ysel ythi zzy_
1 =. =away =bad =because =become =behind =boot =both =bum =but =calf =can =cant =carrying =catch =come =coming =could
1 =did =do =doing =dragging =each =em =ended =every =falls =feels =felt =fine =fire =flat =flight =flop =floppy =force
1 =friday =from =gas =getting =giving =going =hadnt =hands =has =help =hip =hold =into =ive =joke =just =keeps =kitchen
1 =lads =lazy =let =limp =low =monday =much =nearly =normally =noticed =now =one =press =pushing =quad =quit =raise
1 =rest =retired =round =scuffing =she =shower =sort =spring =stairs =stand =stays =step =strange =strength =strong
1 =sudden =tested =than =the =them =there =thigh =thinner =times =tired =tried =trust =way =why =wk =work =worse
1 =wouldnt =years =¿ _alo _arm _awa _bar _bec _beh _ben _big _bot _buc _bum _but _cal _can _cat _cur _do_ _doi _dru _eac
1 _em_ _exa _fal _fin _fli _fol _fro _get _goi _had _han _hap _has _hel _hip _int _its _ive _jok _jum _jus _kic _kil
1 _kit _lad _laz _lif _lim _mic _mov _muc _nea _not _one _oth _pai _qui _ret _rou _scr _scu _sid _sla _sob _sta _stu
1 _sud _tes _tha _tir _tru _use _vis _way _why _wk_ _wor ach_ adnt ads_ aggi ags_ aili air_ aise alf_ alon ands arly
1 ator ause ave_ away azy_ bad_ bar_ beca beco behi ble_ boot both buck bum_ but_ calf cant catc caus chen cial come
1 comi coul crap craw cuff day_ dden den_ did_ doin drop each eari earl ears eavi ecau ecia ecom eels eeps ehin elly
1 elp_ els_ ende engt eps_ esda etir etti fail fall felt ffin fine fing fire flat flig fold forc fort from gas_ ger_
1 gett ggin ging givi goin gth_ hadn han_ hand happ has_ help hem_ high hind hip_ hold howe iced ick_ iday ied_ igh_
1 imes imp_ inje into ire_ ired ise_ iste ject joke jump just keep ker_ kick kilo kitc lads lapp laps lazy led_ let_
1 limp llap lly_ lop_ mall mes_ mond mple much nday nder nds_ near nger ngth nigh njec noti ober oing oke_ ome_ omin
1 one_ ong_ ont_ ope_ oppy orce oth_ otic pain peci post ppen ppin prin quit ragg rail rais rawl rce_ reet reti rida
1 ried rip_ ripp rly_ rom_ rong runk rust sack scra scuf she_ shee shin show sibl spec spri stan step stre stro sudd
1 swit tand tays ten_ tep_ test than them thig tice tree trie trip tron trus ttin uad_ uch_ uck_ udde uffi uit_ ump_
1 ung_ unk_ use_ ush_ ushi ust_ visi week why_ witc wors
2 =ankle =arms =bar =bigtoe =done =footdrop =fortnight =gate =gave =gives =heel =injection =kilo =lift =pain =power
2 =pull =push =right =thing =tiptoe =toe =under =up =upstairs =walking =weaker =weakness =week =wont =· _ank _dra _flo
2 _gat _gav _hee _jel _pow _pul _pus _qua _rai _rig _she _str _swi _tip _tri _up_ _ups _won airs aker akne alki ally
2 ankl arms bigt bly_ cycl done eake eakn eek_ eet_ gate gave give gtoe heel ift_ igto ilo_ ipto irs_ itch ives jell
2 kle_ knes lift lkin lopp nkle ootd ortn otdr ove_ ower powe ppy_ psta ptoe pull push quad reng righ rms_ rop_ rtni
2 slap stai tair tche tdro tipt tire tnig tren uckl ull_ upst ves_ way_ wer_ wont ycle
3 =left =side =walk =weak _giv _lef _wal alk_ drag eak_ eft_ egs_ flop left legs oes_ walk
4 =knee =legs =toes _kne _wea knee nee_ toe_ toes weak
5 =foot _foo _toe foot oot_
7 =leg _leg leg_
"""),
    "weight_loss": (-8, """
-4 day_
-3 =be =i =my =the _be_ _doc _fee _hea _leg _lif _my_ _the feel ning the_
-2 =ago =days =do =doc =feel =foot =has =heart =in =late =leg =me =myself =numb =thinking =up =want _ago _bre _car _che
-2 _com _cou _day _do_ _for _got _her _in_ _me_ _num _one _pee _pre _rig _sta _sur _up_ _wal _wee ack_ ago_ ake_ ant_
-2 art_ ate_ brea ches ctio days der_ disc doc_ eart ecti eel_ els_ ere_ est_ este foot has_ hear here hest hink ion_
-2 its_ leg_ lift live lly_ myse nigh numb old_ oot_ ough ould rnin stop ther thro tor_ umb_ ysel
-1 =a =about =afib =after =age =alive =almost =am =an =anymore =at =baby =back =bad =because =bed =before =being =better
-1 =bit =blood =born =bowels =breathless =came =cancer =capped =carry =carrying =chest =chills =clinic =clot =coming
-1 =couldnt =daily =dead =did =disc =doctor =doesnt =dog =doing =downthere =easier =even =everything =expecting =f
-1 =fainting =far =feels =felt =fever =finished =flat =floor =for =fracture =go =got =groin =had =have =having =here
-1 =hit =hot =id =if =im =inner =it =its =joking =just =kms =knee =knowing =l =last =left =legs =life =lift =lifting
-1 =limit =live =lol =long =lying =m =mean =might =morning =never =next =night =nobody =nofeeling =of =old =one =ones
-1 =only =or =out =over =pee =physio =post =pregnant =put =quiet =really =right =s =said =second =see =slid =so
-1 =something =spine =squat =stairs =still =surgeon =sweating =take =tell =temp =tested =th =that =then =there =they
-1 =thigh =think =thinners =thoughts =through =til =times =to =today =toilet =told =until =valve =walk =walking
-1 =warfarin =was =way =weaker =wee =weeks =weird =went =wet =when =with =wks =wont =yesterday =you _abl _abo _afi _aft
-1 _age _ali _alm _am_ _an_ _ant _are _aro _at_ _bab _bac _bad _bar _bea _bed _bef _bei _bet _bit _bla _blo _bor _bow
-1 _bro _bum _bur _but _byp _cam _cap _chi _cle _cli _cro _dai _dea _dis _doe _dog _doi _dri _dul _ere _exi _fai _far
-1 _fel _fev _fir _fla _flo _foo _fra _fre _fri _giv _go_ _goo _gra _gro _had _hap _har _has _hit _hot _hou _hur _id_
-1 _if_ _im_ _inf _inn _it_ _its _jus _kin _kms _kne _las _lat _lef _let _leu _lig _lim _lit _lol _lon _low _lyi _may
-1 _mid _mig _min _mys _nea _nev _nex _nig _nob _nof _nur _of_ _old _onl _or_ _org _ost _out _ove _pac _pai _par _pas
-1 _per _phy _pil _pla _pos _pro _pus _put _qui _rep _res _run _sai _sat _sch _sco _sec _see _sex _shi _sho _sid _sit
-1 _so_ _som _sor _spe _spi _spo _squ _ste _stu _swe _tab _tak _tel _tes _th_ _tha _tho _tic _tig _til _tim _tin _to_
-1 _tod _toi _tol _tra _tri _tur _und _unt _use _val _wai _war _way _wea _wen _wet _whe _whi _win _wks _won _wor _wou
-1 _yes _you aban able abou aby_ actu adde ade_ afib afte age_ aid_ aily ain_ aint air_ airs aker akin alf_ alis aliv
-1 alk_ alki all_ ally almo alve ance anym ard_ area ared arfa arin arou arry ars_ arts ary_ ase_ asie aspi ass_ asse
-1 ast_ ated ater ath_ athl atio ats_ augh ause ave_ avin baby back bad_ ban_ bar_ beat beca bed_ befo bein bell ber_
-1 bett bit_ ble_ blet bloo born bout bowe bulg burn butt bypa came can_ canc capp car_ carr caus cer_ chil cked clea
-1 clin cons cont coul ctin ctom ctor ctur dail dder ddle dead did_ ding dle_ doct does dog_ doin drin dull ead_ eake
-1 eall ear_ easi eath ecau econ ecto eein eeks eeli eels efor eft_ egs_ eing eird eks_ elf_ elin emia emp_ end_ endi
-1 eon_ erda erec erin erma erni eryt esda esnt ess_ ethi ets_ ette even exis expe ext_ fain far_ fari felt feve fib_
-1 flat floo for_ fore frac fter ftin gasm geon gnan good got_ groi gula had_ happ hard havi head hen_ hey_ high hill
-1 hip_ hit_ hive hles hot_ houg hour hrou hurt hysi ice_ icid icke ide_ ife_ ift_ ifti ile_ ilet ill_ illi ills ily_
-1 imes imit ind_ ine_ iner inic ink_ inti ions ior_ ippe ird_ irs_ isc_ ise_ ish_ ishe issi ist_ ith_ itis itti ittl
-1 ive_ iver joki just ker_ kill kind kms_ knee ladd last lat_ late ldnt leak lear led_ leep left legs let_ leuk lid_
-1 life ligh limi ling lini lmos lol_ long lood loor lve_ lyin make mber mes_ meth mia_ migh mit_ morn most nant ncer
-1 nday nded nder ndin near ned_ nee_ ness neve next nic_ nior nly_ nnin nobo nofe nowi nthe ntil nurs nymo obod octo
-1 oday oes_ oesn ofee oid_ oile oin_ okin olle oma_ omet omy_ ond_ ondy ong_ only ons_ ont_ ood_ oone oor_ oper ops_
-1 ore_ orga orn_ orni ort_ orth osis oste ound ours over owel ower ownt ows_ pace pain part pass pect pee_ per_ peri
-1 phys pill pine pita pond post preg push put_ quat quie ract rain rday real reat rect rest rfar rgas rgeo righ rin_
-1 rine riva rly_ rman roin roke roug roun rry_ rryi rth_ rts_ ryth said sday seco see_ self ses_ shiv side sier sio_
-1 sion sis_ sixt skip slee some spin spon squa ssed ssin stai stan sted sten steo stil stoo stpa stre suic sure surg
-1 swea tabl tair tal_ tand teen tell terd ters tes_ test that then they thig thle tic_ tigh til_ till time tion tis_
-1 tle_ toda toil told tomy top_ topp tops trai tran trip tter ttle ture turn uat_ uch_ ugh_ ught uici uiet uld_ uldn
-1 ulle und_ unde unti ure_ urge urin urn_ urs_ use_ used ust_ valv ved_ ven_ ver_ veri very ving wait wake walk warf
-1 was_ weak weat wee_ week weir wels went wer_ wet_ when wind wks_ wnth wont woul xaba xist xpec yes_ yest ymor you_
-1 ypas ysio
1 =! =and =another =anything =appetite =asked =asking =away =become =becoming =big =body =bunch =by =cant =change =coach
1 =didnt =done =dont =face =falling =falls =food =getting =going =gym =hasnt =havent =honestly =horse =idea =itself =ive
1 =joke =june =kg =kilo =know =lately =less =look =lot =man =matter =meaning =missus =mom =moment =month =more =no =own
1 =pounds =ribs =say =scale =showing =sick =single =six =skin =sudden =summer =temperature =them =this =tired =too
1 =trousers =truck =two =unexplained =wasnt =what =wifes =worried _and _ano _any _app _awa _bec _beg _big _bod _bra _bun
1 _by_ _chu _clo _coa _din _eas _eve _fou _goi _gon _hon _hor _ide _ive _kg_ _les _lot _man _mat _mel _mon _nee _no_
1 _own _pou _pun _rib _scr _sic _sin _sli _sud _sum _ter _thr _tir _tro _tru _two _une _usu _wed _wha _wit ach_ ads_
1 ale_ alli alls and_ anot anti anyt aske aski asti atel atte aven big_ bra_ bunc cant chin ckin coac dden dea_ den_
1 didn dinn disa diti done dont ease east ely_ empe ent_ estl etit etti expl fes_ food gett gle_ goin gym_ hasn hed_
1 hem_ hing hinn hirt his_ hors howi ibs_ ick_ idea idnt ifes igh_ ilo_ ined ing_ inni ired isap issu itio itse joke
1 june kin_ lain lean ler_ les_ less lkin llar look lose man_ matt melt ment mer_ mmer mom_ mome mont mper need ner_
1 nexp nge_ ngle nny_ nted nth_ ntin nyth oach olla ollo omen ones onth ope_ oppi orri orse our_ ouse own_ pear peti
1 plai poun ppea ppet ppin rap_ ratu ribs ring rope rous rrie ruck sapp say_ sers shin show sick six_ sked slid snt_
1 ssus stat ster stin stly sual sudd summ sus_ tely term tery them this thou tire tite too_ trap trou truc tsel ttin
1 two_ uck_ udde umme une_ unex unt_ user usua utti vent wasn way_ ways what with worr xpla ying ythi
2 =bulking =buy =changed =dieting =down =dropped =dropping =eating =ever =fat =from =gone =how =keep =lose =losing =loss
2 =now =off =people =reason =shed =thin =thinner =wanting =weigh =well =why =without _bel _bul _buy _cha _dec _don _dow
2 _dro _fal _fat _fro _get _how _loo _mom _now _off _peo _say _sca _she _ski _sma _unw _was _wel _why alle ame_ ante
2 asnt ason aste atin away beco bulk buy_ cale clot des_ down easo eati ecom eep_ elt_ eopl etin fall fat_ four from
2 ged_ ght_ ghts gone hin_ hout how_ hts_ ides ied_ ieti inki inne itho king kinn lad_ losi loss mall nged nkin nner
2 now_ off_ ole_ ople oppe ose_ osin oss_ peop ple_ ried rom_ runk ryin scal sing smal son_ ulki unch unk_ want well
2 why_
3 =belt =clothes =hole =kilos =lb =lbs =ring =same =sizes =stone =three =trying =weights _ask _kee _kil _lb_ _lbs _rin
3 _sam _try ange belt chan drop hang hes_ hole hree iet_ ight ilos izes keep lbs_ los_ loth ost_ othe reas ree_ ropp
3 same ston thes thre ting tone tryi zes_
4 =diet =lost =weight _die _eat _hol _los _siz _wei diet eat_ eigh kilo lost rink size skin
5 =eat _shr weig
9 =·
"""),
}
