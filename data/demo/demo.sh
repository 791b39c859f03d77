#!/bin/sh
# demo.sh - a morning in the sea room: four containers, four readings, what each of them means.
#
# $HOLDWATER is the program, build/holdwater if not set. Ends with status 0.
set -eu

HOLDWATER=${HOLDWATER:-build/holdwater}

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
