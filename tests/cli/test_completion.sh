#!/bin/sh
# The tab key in bash, zsh and fish themselves: each is given the beginning of a line, and what it makes of it is compared.
# A shell that is absent is named.
# Usage: test_completion.sh BUILD
set -eu
. tests/scratch.sh
mkdir "$scratch/bin" "$scratch/here" "$scratch/home"
ln -s "$build/holdwater" "$scratch/bin/holdwater"
PATH=$scratch/bin:$PATH
HOME=$scratch/home
export PATH HOME
cd "$scratch/here"
: >day.csv
checks=0

# compare SHELL: answers.txt against what is expected of it.
compare() {
    diff expected.txt answers.txt >&2 || { echo "test_completion: $1" >&2; exit 1; }
    checks=$((checks + $(wc -l <expected.txt)))
}

# LINE|what the line becomes, where only one thing can stand there
cat >lines.txt <<'END'
holdwater ammo|holdwater ammonia
holdwater ammonia --medi|holdwater ammonia --medicine
holdwater ammonia --medicine copper-a|holdwater ammonia --medicine copper-amine
holdwater ammonia --medicine=copper-a|holdwater ammonia --medicine=copper-amine
holdwater ammonia --only free,lon|holdwater ammonia --only free,long_ratio
holdwater ammonia --tan 600u|holdwater ammonia --tan 600ug/L
holdwater ammonia --temp 72:82:2F|holdwater ammonia --temp 72:82:2F
holdwater ammonia --rows d|holdwater ammonia --rows day.csv
holdwater ammonia --rows=d|holdwater ammonia --rows=day.csv
holdwater calendar --plan wat|holdwater calendar --plan watch
holdwater help bath str|holdwater help bath strength
holdwater sources emers|holdwater sources emerson1975
holdwater completion fi|holdwater completion fish
END
cut -d'|' -f2 lines.txt >expected.txt

# bash puts what it is given in place of what stands behind the last blank, '=' or ':'. It has compopt only while it waits
# for a key.
if command -v bash >/dev/null; then
    cat >try.bash <<'END'
compopt() { :; }
eval "$(holdwater completion bash)"
while IFS='|' read -r line want; do
    COMP_LINE=$line
    COMP_POINT=${#line}
    _holdwater
    [ ${#COMPREPLY[@]} -eq 1 ] || COMPREPLY=("${#COMPREPLY[@]} words")
    echo "${line%"${line##*[ =:]}"}${COMPREPLY[0]}"
done <lines.txt
complete -p holdwater >&2
END
    bash --noprofile --norc try.bash >answers.txt 2>said.txt
    grep -qx 'complete -F _holdwater holdwater' said.txt || { cat said.txt >&2; exit 1; }
    compare bash
    # keys pressed for a line that is longer: only what stands before the cursor counts
    bash --noprofile --norc -c 'compopt() { :; }; eval "$(holdwater completion bash)"
        COMP_LINE="holdwater amm --tan 3"; COMP_POINT=13; _holdwater; echo "${COMPREPLY[*]}"' >answers.txt
    echo ammonia >expected.txt
    compare bash
    cut -d'|' -f2 lines.txt >expected.txt
else
    echo 'skipped: completion in bash'
fi

if command -v fish >/dev/null; then
    # fish gives the last word as it becomes; the rest of the line stands
    cat >try.fish <<'END'
holdwater completion fish | source
while read -l -d '|' line want
    set -l offered (complete -C $line | string replace -r '\t.*' '')
    test (count $offered) -eq 1; or set offered (count $offered)" words"
    echo (string replace -r '[^ ]*$' '' -- $line)$offered
end <lines.txt
END
    fish --no-config try.fish >answers.txt
    compare fish
else
    echo 'skipped: completion in fish'
fi

# zsh as it stands at a terminal: the tab key is pressed, and the line is then quoted and run.
if command -v zsh >/dev/null && zsh -fc 'zmodload zsh/zpty' 2>/dev/null; then
    cat >try.zsh <<'END'
zmodload zsh/zpty
zpty shell 'zsh -f'
say() { zpty -w -n shell "$1" }
say $'PS1="READY> "; autoload -Uz compinit; compinit -u -d ../dump; eval "$(holdwater completion zsh)"; bindkey "^I" complete-word; echo is\\ up\n'
zpty -r -m shell out $'*\nis up*READY> *'
while IFS='|' read -r line want; do
    say "$line"$'\t'
    say $'\x01echo "<\x05>"\n'
    zpty -r -m shell out $'*\n<*>*READY> '
    print -r -- "$out" | sed -n 's/^<\(.*[^ ]\) *>.*/\1/p'
done <lines.txt
zpty -d shell
END
    TERM=dumb timeout 120 zsh -f try.zsh >answers.txt
    compare zsh
else
    echo 'skipped: completion in zsh'
fi
echo "$checks checks passed"
