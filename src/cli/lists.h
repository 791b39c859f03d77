/* lists.h - the tables that a keeper can ask for. Each returns an exit status. */
#ifndef HW_LISTS_H
#define HW_LISTS_H

int list_units(int argc, char *argv[]);
int list_sources(int argc, char *argv[]);
int list_cautions(int argc, char *argv[]);
#endif
