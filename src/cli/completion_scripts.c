/* completion_scripts.c - what each shell must be told once. All of them ask the program. */
#include "cli/completion.h"

#include <string.h>

const char *const completion_shells[] = {"bash", "zsh", "fish", NULL};

/* The line is parted at blanks alone: bash itself parts words at '=' and ':' as well, and puts back
 * the part behind the last of them. */
static const char bash[] =
    "# For bash: eval \"$(holdwater completion bash)\"\n"
    "_holdwater() {\n"
    "    local -a words\n"
    "    local line=${COMP_LINE:0:COMP_POINT} kind word what put\n"
    "    read -ra words <<<\"$line\"\n"
    "    case $line in *[[:blank:]]) words+=('') ;; esac\n"
    "    put=${words[-1]}\n"
    "    put=${put%\"${put##*[=:]}\"}\n"
    "    COMPREPLY=()\n"
    "    {\n"
    "        read -r kind\n"
    "        while IFS=$'\\t' read -r word what; do\n"
    "            COMPREPLY+=(\"${word#\"$put\"}\")\n"
    "        done\n"
    "    } < <(\"${words[0]}\" completion next \"${words[@]:1}\" 2>/dev/null)\n"
    "    case $kind in\n"
    "    files)\n"
    "        compopt -o filenames\n"
    "        while IFS= read -r word; do\n"
    "            COMPREPLY+=(\"$word\")\n"
    "        done < <(compgen -f -- \"${words[-1]#\"$put\"}\")\n"
    "        ;;\n"
    "    esac\n"
    "    case ${COMPREPLY[0]} in *=) compopt -o nospace ;; esac\n"
    "}\n"
    "complete -F _holdwater holdwater\n";

static const char zsh[] =
    "#compdef holdwater\n"
    "# For zsh, after compinit: eval \"$(holdwater completion zsh)\"; or as a file _holdwater\n"
    "# in a folder of $fpath.\n"
    "_holdwater() {\n"
    "    local -a said offered told ending\n"
    "    said=(\"${(@f)$(${words[1]} completion next \"${(@Q)words[2,CURRENT-1]}\" \"$PREFIX\" "
    "2>/dev/null)}\")\n"
    "    offered=(\"${(@)said[2,-1]%%$'\\t'*}\")\n"
    "    told=(\"${(@)said[2,-1]/$'\\t'/  }\")\n"
    "    [[ ${offered[1]} == *= ]] && ending=(-S '')\n"
    "    if (( ${#said} > 1 )); then\n"
    "        compadd \"${(@)ending}\" -l -d told -- \"${(@)offered}\"\n"
    "    fi\n"
    "    if [[ ${said[1]} == files ]]; then\n"
    "        [[ $PREFIX == --*=* ]] && compset -P '*='\n"
    "        _files\n"
    "    fi\n"
    "}\n"
    "if [[ ${funcstack[1]} == _holdwater ]]; then\n"
    "    _holdwater \"$@\"\n"
    "else\n"
    "    compdef _holdwater holdwater\n"
    "fi\n";

static const char fish[] =
    "# For fish: holdwater completion fish | source\n"
    "function __holdwater_next\n"
    "    set -l words (commandline -opc)\n"
    "    set -l word (commandline -ct)\n"
    "    set -l said ($words[1] completion next $words[2..-1] \"$word\" 2>/dev/null)\n"
    "    if test \"$said[1]\" = files\n"
    "        set -l file (string replace -r -- '^--[^=]*=' '' \"$word\")\n"
    "        set -l put (string match -r -- '^--[^=]*=' \"$word\")\n"
    "        for path in (__fish_complete_path \"$file\")\n"
    "            echo \"$put$path\"\n"
    "        end\n"
    "    end\n"
    "    string join -- \\n $said[2..-1]\n"
    "end\n"
    "complete -c holdwater -f -a '(__holdwater_next)'\n";

const char *completion_script(const char *shell)
{
    static const char *const scripts[] = {bash, zsh, fish};
    for (size_t i = 0; completion_shells[i]; i++) {
        if (strcmp(completion_shells[i], shell) == 0) {
            return scripts[i];
        }
    }
    return NULL;
}
