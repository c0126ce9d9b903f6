/** What the reference consists of: paths below docs/ and the text of each file. */
export type Files = readonly (readonly [path: string, text: string])[];

/** Where pictures lie, below docs/. Everything in there is written by the reference. */
export const drawn = 'drawn';
