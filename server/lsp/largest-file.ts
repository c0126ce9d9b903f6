/** Bytes. A thousand plays take half of it; what is larger is no text that a coach wrote, and is not read. */
export const largestFile = 2_000_000;
