"""Real words and names that CMUdict lacks and a made-up word could be taken for.

Made by computation over every form that `made_up.py` can build: those used at
least once in some thirty million words of English (wordfreq 3.1.1, Zipf value 1.5 or
more) and those in a second dictionary (misaki 0.9.4); a few added by hand.
"""

from __future__ import annotations

_LIST = """
    baff baft bap bapt bep bilf bist bith blad blam blash blatch bleb blet blist blit blizz blod
    blon blub blut bosk brap brash breg brid brist brug brung brusk busk cag casp chab chaft
    chapt chast cheb ched chep chid chod chom chud chuff chut clatch cled cletch clun colp crang
    creb cred cret crig crit crub cruft crunt crut cruth cuss daff dand deg dept dilf disp dist
    dit drad draff drant drat dreck dreg dretch drib drisk driss drom drub drung drunt dunt dup
    famp fank fash feg fep fid filf fip fletch flitch flob flub flump fom frack frag frand frap
    frass frat fress frib frid friss frit frug frust fub fud fug fum funt fup gand gank glack
    gleb gled gleg glid glist glub glug glump gom gop gost gramp grank grap grat grep gret grift
    grond grot grug gub gud guff gunk gup hab hant hask hasp heff hest hetch hib hig hilf hish
    hond hosp jad jaff jag jasp jast jep jid jilf jit jom jum jund jup keb ked kesh kith leb lig
    lilf lith lond lub lud lunk lup luss lut maff mazz meb mep miff mip mipt mub mult mump mung
    mup muzz nand nant nasp natch neb nid nilf nish nith nog nosh nuff nug nump nung nup nust
    pab pag pamp pank peb ped pelf pib pid piff pilf pish plap plash plast platch pleb plitch
    plon pluff pob prad prag pram prang pred preg prig pritch prod prot prunt prut pud pum
    putsch reb reft rept resp rezz rilf risp rond rusk saff saft sask satch sath seb sesh shet
    shizz shub shud shump siff sish sitch slad slamp slan slank slask slatch slath slep slish
    slitch slock slod slub slunk smad smap smat smatch smed smeg smitch smolt smush snab snash
    sneb sneck snib snick snit snock snod snum sog sont soth spad spaff spag spam spass spat
    spelt spesh spet spetch spiff spig splad splat splatch splet spliff splish splosh splotch
    splunk sposh sprack sprad sprank spret sprit sprod sprog sprug sprunt sprush spug stad steg
    stetch stog stom ston stosh strad strag stramp stran strass strath strid strig stritch
    strond strop stross strug struth stug suff supt susp sust sut swack swad swag swash swelt
    swit swizz tast tazz teff tep tetch thag thant thep thesp thess thet thetch thid thig thiss
    thit thoft thrack thram thrang thrap thrid thrip thrist throck thrum thung tib tilf tisk
    tiss titch trad trag trank trass trat treb treg tret trid triss trock troft trog trond trub
    trud truff trug trum trun trung trush tud tum tump tup vab vad vag vam vant vap vash veb ved
    vep vib vid viff vilf vith vob vod vog vom vug vult vum vung weft weg welf wep wib wid wilf
    wom womp woth wub wud wup wust yab yad yag yamp yash yat yatch yed yesh yick yiff yig yilf
    yit yob yock yod yog yont yosh yud yug yut zab zad zat zeb zet zilf zit zod zot zum zun
"""
REAL_WORDS = frozenset(_LIST.split())
