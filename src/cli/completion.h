/* completion.h - what a shell offers when the tab key is pressed. */
#ifndef HW_COMPLETION_H
#define HW_COMPLETION_H

/* `completion SHELL` prints what that shell needs; `completion next WORD...` is what it then asks:
 * what the last of the words, which stand after the program's name, may become. The first line
 * says "files" where names of files may stand there, too, else "words"; each further line is a word
 * and, after a tab, what it is. `commands` are the words that are no calculations; NULL ends the
 * list. An exit status. */
int completion_run(int argc, char *argv[], const char *const commands[]);

/* The script of a shell, or NULL. */
const char *completion_script(const char *shell);

/* The shells that have one; NULL ends the list. */
extern const char *const completion_shells[];
#endif
