/** A call that cannot be carried out. Its message is a sentence for the person who typed it; the process ends with 2. */
export class CallError extends Error {}
