import { read } from '../court/sources.ts';

/** When a screen is legal, in every book. */
export const legalScreen = read('A screener stands still with both feet on the floor when contact occurs: FIBA 33.7, NBA 12B-III, NCAA 4-35, NFHS 4-40');
