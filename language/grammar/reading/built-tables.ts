import type { LineTables } from './line-tables.ts';

/** In what is shipped, the tables made by the build stand here (scripts/line-tables.ts); from source they are worked out at the first line. */
export const builtTables = (): LineTables | undefined => undefined;
