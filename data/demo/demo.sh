#!/bin/sh
# demo.sh - one fish in the tank birch, from seeding its filter to disinfecting the tank, stage by stage.
#
# $HOLDWATER is the program, build/holdwater if not set; $HOLDWATER_DATA the folder data. Ends with
# status 0, when every question was answered, and every one that must not be answered was not.
#
# A stage begins with its heading. A new calculation gets its place in the stage it belongs to, at the
# hour when the keeper of birch would ask it, and one line of the logbook if it moves the story on.
set -eu

HOLDWATER=${HOLDWATER:-build/holdwater}
case $HOLDWATER in
/*) ;;
*/*) HOLDWATER=$PWD/$HOLDWATER ;;
esac
cd "${HOLDWATER_DATA:-data}/demo"

logbook=$(mktemp)
trap 'rm -f "$logbook"' EXIT
echo 'when,tank,calculation,inputs,results,cautions,note' >"$logbook"

# stage NAME LINE...: a heading.
stage() {
    printf '\n== %s ==\n' "$1"
    shift
    printf '%s\n' "$@"
}

# say LINE...: what happens next.
say() {
    printf '\n'
    printf '# %s\n' "$@"
}

# ask WORD...: shows the command, then its output.
ask() {
    printf '$ holdwater'
    printf ' %s' "$@"
    printf '\n'
    "$HOLDWATER" "$@"
}

# refused STATUS WORD...: a question that must not be answered; shows why, and the exit status.
refused() {
    expected=$1
    shift
    status=0
    ask "$@" 2>&1 || status=$?
    printf '(exit status %s)\n' "$status"
    test "$status" -eq "$expected"
}

# log WHEN WORD...: asks, and writes the line that stands alone into the logbook.
log() {
    when=$1
    shift
    line=$(ask "$@" --format log --when "$when")
    printf '%s\n' "$line"
    printf '%s\n' "$line" | tail -n +2 >>"$logbook"
}

printf '%s\n' 'The sea room, 2031. One fish is expected; it will live in birch, 110 L, until it is well.' \
    'tanks.csv has the volume, temperature and salinity of each tank.'

stage ready '2031-01-12. birch is clean and dry. How much water does it hold, and how salt is it?'

say 'Measured inside, filled to 36 cm; the filter takes the place of 5.2 L.' \
    'Results come first, then what was given and assumed, then what never to do and what to mind.'
ask volume --measured inside --length 80cm --width 40cm --depth 36cm --displaced 5.2L

say 'Held against a known addition: 9 g of sodium bicarbonate raised its alkalinity by 2.7 dKH.'
ask gauge --added 9g --reagent sodium-bicarbonate --rise 2.7dKH --only net

say 'How salt is it? A hydrometer marked 25C/25C.'
ask salinity --of sg --reading 1.0248 --reference 25C/25C --temp 25.5 --only salinity,density
log 2031-01-12T16:30+00:00 salinity --tank birch --tanks tanks.csv --of sg --reading 1.0248 \
    --temp 25.5 --reference 25C/25C --only salinity

say 'The old hydrometer has lost its leaflet. Without its reference temperatures it is no instrument.'
refused 2 salinity --of sg --reading 1.0248 --temp 25.5

say 'A hydrometer number typed as a salinity is refused: no number is better than a wrong one.'
refused 2 ammonia --tan 0.25 --ph 8.05 --temp 25.5 --salinity 1.0248 --medicine none

say 'Tap water for the next 25 L: the supplier says chloramine, 1.2 mg/L as Cl2.'
ask neutralise --volume 25L --chlorine 1.2 --chloramine yes --medicine none --only amount,ammonia_freed

say 'A batch of salt water in a barrel of 60 L: how much salt, by what its label says?'
ask saltmix --volume 60L --target 33 --label-mass 4kg --label-makes 106L --label-salinity 35

stage prove '2031-01-13 to 2031-02-21. Media from the filter of cedar seed the new one. Does it work?'

say 'The fish comes on 22 February. What is done on which day? A plan without medicine, to begin with.'
ask calendar --plan watch --from 2031-02-22 --tank birch --tanks tanks.csv

say 'A stock, so that a syringe doses what no scale can: 5 mL of it raise birch by 0.5 mg/L.'
ask concentrate --reagent ammonium-chloride --raises 0.5 --per 5mL --into 110L --make 250mL \
    --only mass,strength

say '2031-02-12, a month later. Ammonia for 2 mg/L, or four doses of the stock; no fish in the water.'
ask challenge --volume 110L --fish no --ph 8.1 --temp 25.5 --salinity 33 --alkalinity 2.6meq/L
log 2031-02-12T18:00+00:00 challenge --tank birch --tanks tanks.csv --fish no --only mass,reading_n

say 'A day later: ammonia is gone, a little nitrite is not. Has the filter passed?'
ask verdict --volume 110L --start-tan 2 --tan 0 --nitrite 0.5 --hours 24 \
    --only passed,cleared,hours_to_clear
log 2031-02-13T18:00+00:00 verdict --tank birch --tanks tanks.csv --start-tan 2 --tan 0 --nitrite 0.5 \
    --hours 24 --only passed,cleared

say '2031-02-20: challenged again, and read a day later. Nitrate agrees. What does it carry?'
ask verdict --volume 110L --start-tan 2 --tan 0 --nitrite 0 --hours 24 --nitrate-rise 9 --protein 48%
log 2031-02-21T18:00+00:00 verdict --tank birch --tanks tanks.csv --start-tan 2 --tan 0 --nitrite 0 \
    --hours 24 --nitrate-rise 9 --protein 48% --only passed,working_feed

say 'The fish that is to come weighs 240 g. What will it ask of that filter?'
ask bioload --volume 110L --biomass 240g --protein 45% --capacity 220mg/d --ph 8.1 --temp 25.5 \
    --salinity 33

say 'Out with the nitrate, 60 mg/L by now. How much water until 10?'
ask change --volume 110L --share 50% --now 60 --goal 10 --only after,share_needed,times_needed

printf '\n%s\n' '2031-02-22. A bag comes off the boat.'

say 'It reads 6 mg/L, pH 6.9 as it is opened, 8.1 after air. What does opening it do, how far is birch?'
ask bag --tan 6 --ph-bag 6.9 --ph-open 8.1 --temp 23 --salinity 31 --tank-temp 25.5 --tank-salinity 33
log 2031-02-22T16:40+00:00 bag --tan 6 --ph-bag 6.9 --ph-open 8.1 --temp 23 --salinity 31 \
    --tank-temp 25.5 --tank-salinity 33 --only free_bag,free_open,times_worse

say 'birch is set to the salinity of the bag beforehand, and the fish moved without the bag water.'

stage watch '2031-02-23. The fish is here. Readings every day, before and after food.'

say 'The first evening, no medicine. The kit reads 0.25 mg/L as N; the meter says pH 8.05.'
ask ammonia --tan 0.25 --ph 8.05 --temp 25.5 --salinity 33 --medicine none
log 2031-02-23T20:10+00:00 ammonia --tank birch --tanks tanks.csv --tan 0.25 --ph 8.05 --medicine none \
    --only free,long_ratio

say 'How far from the limit for days is that, if the kit is good to 0.05 and the pH meter to 0.1?'
ask ammonia --tan 0.25+-0.05 --ph 8.05+-0.1 --temp 25.5 --salinity 33 --medicine none --only long_ratio

say 'The nitrite kit counts the ion, and reads 0.1 mg/L.'
ask nitrite --nitrite 0.1 --basis ion --salinity 33
log 2031-02-23T20:15+00:00 nitrite --tank birch --tanks tanks.csv --nitrite 0.1 --basis ion --only as_n

say 'Ammonia to prove the filter once more? There is a fish in the water: withheld.'
refused 3 challenge --volume 110L --fish yes

stage treat '2031-03-01. Spots. The veterinarian says copper (an amine), 0.45 mg/L, 0.4 to 0.5 by its label.'

say 'The stock holds 2 mg/mL. All at once is too fast.'
ask dose --volume 110L --kind copper-amine --salinity 33 --floor 0.4 --ceiling 0.5 --target 0.45 --strength 2mg/mL \
    --only step_amount,level_after

say 'In four steps over four days: the day, the amount, the level after each.'
ask dose --volume 110L --kind copper-amine --salinity 33 --floor 0.4 --ceiling 0.5 --target 0.45 --strength 2mg/mL \
    --steps 4 --days 4
log 2031-03-01T18:00+00:00 dose --tank birch --tanks tanks.csv --kind copper-amine --salinity 33 --floor 0.4 \
    --ceiling 0.5 --target 0.45 --strength 2mg/mL --steps 4 --days 4 --only step_amount,step_every,level_after

say 'A little more to be safe? Above the ceiling no dose is given.'
refused 3 dose --volume 110L --kind copper-amine --salinity 33 --floor 0.4 --ceiling 0.5 --now 0.45 --target 0.55 \
    --strength 2mg/mL

say 'The last step went in twice: 12.4 mL at 0.34 mg/L. Where is the level, and what brings it back?'
ask dose --volume 110L --kind copper-amine --salinity 33 --floor 0.4 --ceiling 0.5 --now 0.34 --added 12.4mL \
    --strength 2mg/mL --only level_after,share_back
log 2031-03-04T18:20+00:00 dose --tank birch --tanks tanks.csv --kind copper-amine --salinity 33 --floor 0.4 \
    --ceiling 0.5 --now 0.34 --added 12.4mL --strength 2mg/mL --only level_after,share_back

say 'The evening of that day the kit reads 0.25. Since copper the filter does 40 % of what it did.' \
    'What will it be at noon, if the fish is fed as before?'
ask ahead --volume 110L --tan 0.25 --feed 2.5g --protein 48% --cleared-from 2 --cleared-to 0 \
    --cleared-in 24h --left 40% --hours 18 --ph 8.1 --temp 25.5 --salinity 33
log 2031-03-04T18:30+00:00 ahead --tank birch --tanks tanks.csv --tan 0.25 --feed 2.5g --protein 48% \
    --cleared-from 2 --cleared-to 0 --cleared-in 24h --left 40% --hours 18 --ph 8.1 \
    --only tan_then,hours_to_limit

say 'A tenth of the water is changed for the copper; an hour later the kit shows 0.45.' \
    'A bath in formalin is spoken of, 150 ppm. Of what? It is not guessed.'
refused 2 dose --volume 12L --kind formalin --temp 25.5 --target 150ppm
ask dose --volume 12L --kind formalin --temp 25.5 --formalin-basis solution-mg --target 150 \
    --only step_amount,solution_ul,solution_mg,formaldehyde,oxygen_used

stage emergency '2031-03-05, day 4 of copper. 12:15: the fish is at the surface.'

say 'The kit counts ammonium, NH4, and reads 0.8; pH 8.1, copper 0.45. What first, and how much?'
ask emergency --tan 0.8 --basis nh4 --ph 8.1 --medicine copper-amine --tank birch --tanks tanks.csv \
    --alkalinity 2.4meq/L --new-ph 8.1 --new-alkalinity 2.4meq/L --now 0.45 --keep 0.45 --ceiling 0.5 \
    --strength 2mg/mL
log 2031-03-05T12:18+00:00 emergency --tan 0.8 --basis nh4 --ph 8.1 --medicine copper-amine --tank birch \
    --tanks tanks.csv --alkalinity 2.4meq/L --new-ph 8.1 --new-alkalinity 2.4meq/L --now 0.45 --keep 0.45 \
    --ceiling 0.5 --strength 2mg/mL --only share_needed,water_needed,add_liquid,binder_allowed

say 'How far from the limits is that? Does the kit read at all with that copper?'
ask ammonia --tan 0.8 --basis nh4 --ph 8.1 --temp 25.6 --salinity 33 --medicine copper-amine \
    --only free_nh3,long_ratio,short_ratio,tan_long
log 2031-03-05T12:20+00:00 ammonia --tank birch --tanks tanks.csv --medicine copper-amine --tan 0.8 --basis nh4 --ph 8.1 \
    --only free,long_ratio

say '40 L are changed, and the copper must stay: what does the new water hold?'
ask change --volume 110L --take 40L --now 0.45 --keep 0.45 --kind copper-amine --salinity 33 --floor 0.4 \
    --ceiling 0.5 --strength 2mg/mL
log 2031-03-05T12:50+00:00 change --tank birch --tanks tanks.csv --take 40L --now 0.45 --keep 0.45 \
    --kind copper-amine --salinity 33 --floor 0.4 --ceiling 0.5 --strength 2mg/mL --only add_liquid,lowest

say 'A binder for the ammonia? Copper held by an amine is in the water: withheld.'
refused 3 binder --volume 110L --tan 0.62 --medicine copper-amine --agent label --label-liquid 5mL \
    --label-per 40L --label-binds 1

say 'alder next door has no medicine in it and reads 0.25: there the label may be followed.'
ask binder --volume 75L --tan 0.25 --medicine none --agent label --label-liquid 5mL \
    --label-per 40L --label-binds 1 --only liquid,bound,release_from,release_to

say 'The ascorbic acid on the shelf, for the chloramine of 36 L of tap water? Withheld: sources disagree.'
refused 3 neutralise --volume 36L --chlorine 1.2 --chloramine yes --medicine copper-amine \
    --agent ascorbic-acid
ask neutralise --volume 36L --chlorine 1.2 --chloramine yes --medicine copper-amine \
    --only amount,ammonia_freed

say 'The evening of a sour tank: pH 7.4, alkalinity 1 meq/L, 0.3 mg/L. A quarter of fresh sea water?' \
    'The total falls, and the free ammonia rises: more than before, and more again when it is aired.'
ask blend --volume 110L --share 25% --tan 0.3 --ph 7.4 --alkalinity 1meq/L --temp 25.5 --salinity 33 \
    --new-ph 8.2 --new-alkalinity 2.4meq/L --new-temp 25.5 --new-salinity 33
log 2031-03-05T18:40+00:00 blend --tank birch --tanks tanks.csv --share 25% --tan 0.3 --ph 7.4 \
    --alkalinity 1meq/L --new-ph 8.2 --new-alkalinity 2.4meq/L --new-temp 25.5 --new-salinity 33 \
    --only tan_after,free_before,free_after,free_aired

say 'From which share on does it fall? Asked backwards; and by all shares, as a table.'
ask blend --volume 110L --solve share --for free_after=0.0034 --tan 0.3 --ph 7.4 --alkalinity 1meq/L \
    --temp 25.5 --salinity 33 --new-ph 8.2 --new-alkalinity 2.4meq/L --new-temp 25.5 \
    --new-salinity 33 --only free_before,free_after,free_aired
ask blend --volume 110L --share 10%:90%:40% --tan 0.3 --ph 7.4 --alkalinity 1meq/L --temp 25.5 \
    --salinity 33 --new-ph 8.2 --new-alkalinity 2.4meq/L --new-temp 25.5 --new-salinity 33 \
    --only free_before,free_after,free_aired

say 'The alkalinity is down, and there is ammonia in the water. What would bicarbonate do?'
ask buffer --volume 110L --alkalinity 2.8dKH --target 4dKH --ph 7.4 --temp 25.5 --salinity 33 --tan 0.3 \
    --only mass,ph_after,free_before,free_after,free_aired

say 'In the evening 0.30 as N. The veterinarian has added an antibiotic.'
log 2031-03-05T19:35+00:00 ammonia --tank birch --tanks tanks.csv --tan 0.3 --ph 8.11 \
    --medicine copper-amine,antibiotic --only free,long_ratio

say 'At night the power is off. Air first; then, how long would the oxygen last?'
ask oxygen --temp 78F --salinity 33 --oxygen-now 6.1 --volume 110L --biomass 240g
log 2031-03-05T23:20+00:00 oxygen --tank birch --tanks tanks.csv --oxygen-now 6.1 --biomass 240g \
    --only percent,hours

stage rescue '2031-03-06. Its gills are burned: a dye bath in the bucket thimble, 12 L.'

say 'What to pour of the 1 % stock, and how well does the bath match the water the fish comes from?'
ask bath --volume 12L --strength 1%wv --target 4mg/L --temp 25 --source-temp 25.4 \
    --salinity 33.5 --source-salinity 33 --ph 8.1 --source-ph 8.05
log 2031-03-06T09:40+00:00 bath --tank birch --tanks tanks.csv --volume 12L --strength 1%wv --target 4mg/L \
    --temp 25 --salinity 33.5 --only dye,level

say 'The dye hides the colours of the kit: the sample was diluted 4 times, and reads 0.05.'
ask ammonia --tan 0.05 --dilution 4 --ph 8.1 --temp 25 --salinity 33.5 --medicine dye \
    --only free_nh3,long_ratio

say 'The burns need longer: dye in alder, which has no filter. How high do full doses climb?'
ask course --volume 75L --biofilter no --strength 1%wv --target 3mg/L --doses 4

say 'In birch there is a filter. There the course is withheld.'
refused 3 course --volume 110L --biofilter yes --strength 1%wv --target 3mg/L --doses 4

stage close '2031-04-12. The fish is well and gone to its tank. birch is closed.'

say 'Out with the copper, by carbon and by water: how many changes of a half until 0.01 mg/L?'
ask change --volume 110L --share 50% --now 0.43 --goal 0.01 --only after,share_needed,times_needed

say 'Emptied, stripped, brushed, rinsed, filled with fresh water. Bleach of 5 %, and what takes it out.'
ask disinfect --volume 110L --strength 5%
log 2031-04-13T10:00+00:00 disinfect --tank birch --tanks tanks.csv --strength 5% --only bleach,thiosulfate

stage record 'What was written down of it. Every line stands alone.'

say 'The readings of a day in a file: every row is answered but one, whose thermometer was in Fahrenheit.'
rows_status=0
ask ammonia --rows readings.csv --only free,long_ratio || rows_status=$?
test "$rows_status" -eq 1

say 'Is the ammonia of birch creeping? Three readings of one day are no trend, and the answer says so.'
ask trend --rows readings.csv --tank birch --of tan --limit 0.8 --when 2031-03-05T21:00

say 'The logbook of birch and its fish.'
cat "$logbook"
