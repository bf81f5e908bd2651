/**
 * Has the parser of Svelte files tell the compiler what it makes of every component from the start, instead of at each component anew:
 * the types of all files are worked out once, in a third of the time. It looks for this word when it is loaded, so this comes before it.
 */
process.env.SVELTE_ESLINT_PARSER_EXPERIMENTAL_TS_SYS_HOOK = '1';
