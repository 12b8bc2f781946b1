/* SPDX-License-Identifier: MIT */
/*
 * oilway completion SHELL: the script that makes a shell ask `oilway complete`. Each script only finds out
 * which words stand before the cursor, as they were meant, and how the shell wants the answers written.
 */
#include <stdio.h>
#include <string.h>

#include "cli/commands.h"

/*
 * Plain bash splits the line at the characters of COMP_WORDBREAKS, of which a port holds the colon and
 * --from=P the equals sign; it replaces only what stands behind the last such character that is not quoted,
 * or behind the quote that is still open. So the script reads the line itself, and takes off each answer what
 * bash will leave standing.
 */
static const char bash_script[] =
    "# oilway completion for bash: eval \"$(oilway completion bash)\"\n"
    "_oilway() {\n"
    "    local line=${COMP_LINE:0:COMP_POINT} words=() word= before= quote= begun= i c reply\n"
    "    for ((i = 0; i < ${#line}; i++)); do\n"
    "        c=${line:i:1}\n"
    "        if [[ $quote && $c == \"$quote\" ]]; then\n"
    "            quote= before=$word\n"
    "        elif [[ $quote == \\' || ( $quote && $c != \\\\ ) ]]; then\n"
    "            word+=$c\n"
    "        elif [[ $c == \\\\ ]]; then\n"
    "            ((i++))\n"
    "            word+=${line:i:1} begun=1\n"
    "        elif [[ $c == [\\\"\\'] ]]; then\n"
    "            quote=$c before=$word begun=1\n"
    "        elif [[ $c == [[:space:]] ]]; then\n"
    "            [[ $begun ]] && words+=(\"$word\")\n"
    "            word= before= begun=\n"
    "        else\n"
    "            word+=$c begun=1\n"
    "            [[ $COMP_WORDBREAKS == *\"$c\"* ]] && before=$word\n"
    "        fi\n"
    "    done\n"
    "    words+=(\"$word\")\n"
    "    COMPREPLY=()\n"
    "    while IFS= read -r reply; do\n"
    "        reply=${reply#\"$before\"}\n"
    "        [[ $quote ]] || printf -v reply %q \"$reply\"\n"
    "        COMPREPLY+=(\"$reply\")\n"
    "    done < <(\"${words[0]/#\\~/$HOME}\" complete -- \"${words[@]:1}\" 2>/dev/null)\n"
    "}\n"
    "complete -o default -F _oilway oilway\n";

/* Zsh keeps an open quote apart from the word, and quotes the answers by itself. */
static const char zsh_script[] =
    "#compdef oilway\n"
    "# oilway completion for zsh: eval \"$(oilway completion zsh)\"\n"
    "_oilway() {\n"
    "    local -a found\n"
    "    local word=${(Q)PREFIX} option=\n"
    "    found=(\"${(@f)$(${~words[1]} complete -- \"${(@Q)words[2,CURRENT-1]}\" \"$word\" 2>/dev/null)}\")\n"
    "    [[ $word == --*=* ]] && option=${word%%=*}= && compset -P '[^=]#='\n"
    "    [[ -n $found ]] && compadd -- \"${found[@]#$option}\" && return\n"
    "    _files\n"
    "}\n"
    "compdef _oilway oilway\n";

/* Fish gives the word as it was typed: quotes are taken away here, also one that is still open. */
static const char fish_script[] = "# oilway completion for fish: oilway completion fish | source\n"
                                  "function __oilway_complete\n"
                                  "    set -l words (commandline -opc)\n"
                                  "    set -l typed (commandline -ct)\n"
                                  "    for close in '' '\"' \"'\"\n"
                                  "        set -l word (string unescape -- \"$typed$close\")\n"
                                  "        and set typed $word\n"
                                  "        and break\n"
                                  "    end\n"
                                  "    oilway complete -- $words[2..-1] \"$typed\" 2>/dev/null\n"
                                  "end\n"
                                  "complete -c oilway -a '(__oilway_complete)'\n";

static cli_exit run_completion(cli_run *run)
{
    const char *shell = run->arguments[0];
    const char *script = strcmp(shell, "bash") == 0   ? bash_script
                         : strcmp(shell, "zsh") == 0  ? zsh_script
                         : strcmp(shell, "fish") == 0 ? fish_script
                                                      : NULL;
    if (script == NULL) {
        fprintf(stderr, "oilway completion: %s: bash, zsh or fish is wanted\n", shell);
        return CLI_COULD_NOT;
    }
    ow_text text = ow_text_new(&run->context);
    ow_text_add(&text, script);
    return cli_print(run, &text, CLI_YES);
}

const cli_command cli_completion = {
    .name = "completion",
    .arguments = "bash | zsh | fish",
    .summary = "a completion script for your shell",
    .least = 1,
    .most = 1,
    .uses = CLI_USES_OUTPUT | CLI_USES_HELP,
    .formats = "text",
    .run = run_completion,
};
