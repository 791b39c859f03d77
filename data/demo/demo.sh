#!/bin/sh
# demo.sh - a day in the sea room: a morning of readings, an afternoon with all calculations.
#
# $HOLDWATER is the program, build/holdwater if not set. Ends with status 0.
set -eu

HOLDWATER=${HOLDWATER:-build/holdwater}
DATA=${HOLDWATER_DATA:-data}/demo

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

# free WORD...: one bare number.
free() {
    "$HOLDWATER" ammonia --format value --only free_nh3 --digits 3 "$@"
}

printf '%s\n' 'The sea room, 2031-03-05, 06:40. Lights off, thermometers and test kits out.'

say 'alder, 75 L, day 3, no medicine. The kit reads 0.25 mg/L as N; the meter says pH 8.05.' \
    'The whole answer once: results, inputs as used, cautions, sources.'
ask ammonia --tan 0.25 --ph 8.05 --temp 25.5 --salinity 34 --medicine none

say 'birch, 110 L, day 4 of copper (an amine). Its kit counts ammonium, NH4, and reads 0.8.' \
    'How far from the limits? Which total, in the basis of the kit, reaches the one for days?'
ask ammonia --tan 0.8 --basis nh4 --ph 8.2 --temp 78F --salinity 33 --medicine copper-amine \
    --only free_nh3,long_ratio,short_ratio,tan_long

say 'thimble, 12 L, a dip with dye. The dye hides the colour, so the sample was diluted 4 times;' \
    'diluted it reads 0.05 mg/L as N. Can that be trusted?'
ask ammonia --tan 0.05 --dilution 4 --ph 8.1 --temp 25 --salinity 33.5 --medicine dye \
    --only free_nh3,long_ratio

say 'thimble again, rinsed, and filled with fresh water for a dip. There other limits hold.'
ask ammonia --tan 0.1 --ph 7.9 --temp 25 --salinity 0 --medicine none \
    --only free_nh3,long_ratio,short_ratio

say 'cedar, 190 L, an old filter, no fish yet. The same question with the working.'
ask ammonia --tan 0.2 --ph 7.9 --temp 25 --salinity 34 --medicine none --work --only free,long_ratio

say 'A hydrometer number typed as a salinity is refused: no number is better than a wrong one.'
refused 2 ammonia --tan 0.25 --ph 8.05 --temp 25.5 --salinity 1.0264 --medicine none

say 'One line for each tank: free ammonia in mg NH3/L.'
printf '%-8s %s\n' alder "$(free --tan 0.25 --ph 8.05 --temp 25.5 --salinity 34)"
printf '%-8s %s\n' birch "$(free --tan 0.8 --basis nh4 --ph 8.2 --temp 78F --salinity 33)"
printf '%-8s %s\n' thimble "$(free --tan 0.05 --dilution 4 --ph 8.1 --temp 25 --salinity 33.5)"
printf '%-8s %s\n' cedar "$(free --tan 0.2 --ph 7.9 --temp 25 --salinity 34)"

say 'birch is the worst. If its pH meter reads 0.1 too low, how many times the limit is it then?'
ask ammonia --tan 0.8 --basis nh4 --ph 8.3 --temp 78F --salinity 33 --medicine copper-amine \
    --format value --only long_ratio

printf '\n%s\n' 'The same day, 13:30. The readings of the day are in a file; one row of it is wrong.'

say 'Every row answered; the thermometer of thimble was read in the wrong unit.'
rows_status=0
ask ammonia --rows "$DATA/readings.csv" --only free,long_ratio || rows_status=$?
test "$rows_status" -eq 1

say 'cedar is readied for new fish. How much water does it hold? Measured inside, rock in it.'
ask volume --measured inside --length 100cm --width 50cm --depth 39.5cm --displaced 7.5L

say 'Held against a known addition: 16 g of bicarbonate raised it by 84.2 mg/L.'
ask gauge --added 16g --rise 84.2mg/L

say 'How salt is it? A hydrometer marked 25C/25C, read in warmer water.'
ask salinity --of sg --reading 1.0252 --reference 25C/25C --temp 78F

say 'A hydrometer whose reference nobody knows is no instrument.'
refused 2 salinity --of sg --reading 1.0252 --temp 78F

say 'A batch of salt water in a barrel of 60 L: how much salt, by what its label says?'
ask saltmix --volume 60L --target 34 --label-mass 4kg --label-makes 106L --label-salinity 35

say 'birch has lost water to the air and stands at 36.2. Salt is not what it lacks.'
ask saltmix --volume 108L --salinity 36.2 --target 34 --why evaporated --only top_up

say 'Tap water for the next batch of salt water: the supplier says chloramine, 1.2 mg/L as Cl2.'
ask neutralise --volume 25L --chlorine 1.2 --chloramine yes --medicine none --only amount,ammonia_freed

say 'Does the filter of cedar work? Ammonia for 2 mg/L, no fish in the water.'
ask challenge --volume 190L --fish no --ph 8.1 --temp 25 --salinity 33.5 --alkalinity 2.6meq/L

say 'A stock for the days after: 5 mL of it raise cedar by 0.5 mg/L.'
ask concentrate --reagent ammonium-chloride --raises 0.5 --per 5mL --into 190L --make 250mL

say 'In birch there are fish. The dose is withheld.'
refused 3 challenge --volume 110L --fish yes

say 'cedar, a day later: ammonia is gone, a little nitrite is not. Has the filter passed?'
ask verdict --volume 190L --start-tan 2 --tan 0 --nitrite 0.5 --nitrite-basis ion --hours 24 \
    --nitrate-rise 8

say 'What counts against that nitrite?'
ask nitrite --nitrite 0.5 --basis ion --salinity 33.5

say 'birch, at night: the power is off. Air first; then, how long would the oxygen last?'
ask oxygen --temp 78F --salinity 33 --oxygen-now 6.1 --volume 110L --biomass 240g

say 'birch: a quarter of the water must go, the copper must stay at 0.18 mg/L.'
ask change --volume 110L --share 25% --now 0.18 --keep 0.18 --floor 0.15 --strength 1mg/mL

say 'Before that: would changing a quarter of it do harm, with the ammonia in it?'
ask blend --volume 110L --share 25% --tan 0.2 --ph 7.7 --alkalinity 5dKH --temp 25.5 --salinity 33 \
    --fresh-ph 8.2 --fresh-alkalinity 7dKH --fresh-temp 25.5 --fresh-salinity 33

say 'birch again: its alkalinity is down, and there is a little ammonia. What would bicarbonate do?'
ask buffer --volume 110L --alkalinity 5dKH --target 6dKH --ph 7.7 --temp 25.5 --salinity 33 --tan 0.2

say 'A fish with ammonia burns: a dye bath in thimble, matched with the water that it comes from.'
ask bath --volume 12L --strength 1%wv --target 6mg/L --temp 25 --source-temp 25.4 \
    --salinity 33.5 --source-salinity 33 --ph 8.1 --source-ph 8.0

say 'alder is emptied, stripped and brushed; bleach for 75 L of fresh water in it.'
ask disinfect --volume 75L --strength 5%

say 'What goes into the logbook: lines that stand alone.'
ask bath --volume 12L --strength 1%wv --target 6mg/L --format log --when 2031-03-05T15:10+00:00 \
    --only dye,level
ask ammonia --tank birch --tanks "$DATA/tanks.csv" --tan 0.3 --ph 8.11 --format log \
    --when 2031-03-05T19:35+00:00 --only free,long_ratio
