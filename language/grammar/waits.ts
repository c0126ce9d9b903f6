// The words that open a wait.

/** As the grammar has them: `once 4 is set`. */
export const BEGINS_A_WAIT: ReadonlySet<string> = new Set(['once', 'when', 'as', 'after', 'as soon as', 'while']);
/** What goes on until then has its wait behind it. */
export const WAITS: ReadonlySet<string> = new Set([...BEGINS_A_WAIT, 'until']);
/** Those of which the deed is over, so that what follows comes after it. */
export const ENDS_OF_DEEDS: ReadonlySet<string> = new Set(['once', 'when', 'after', 'as soon as']);
/** And those that coaches say besides. */
export const WAITS_AS_SAID: ReadonlySet<string> = new Set([...WAITS, 'whilst', 'whenever', 'till', 'before']);
