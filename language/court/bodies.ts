export type PlayerNumber = 1 | 2 | 3 | 4 | 5;
/** `1`–`5` the offence, `X1`–`X5` the defence. */
export type BodyId = '1' | '2' | '3' | '4' | '5' | 'X1' | 'X2' | 'X3' | 'X4' | 'X5';
export const OFFENCE = ['1', '2', '3', '4', '5'] as const satisfies readonly BodyId[];
export const DEFENCE = ['X1', 'X2', 'X3', 'X4', 'X5'] as const satisfies readonly BodyId[];
