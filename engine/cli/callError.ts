/** The command was called wrongly: the caller reads the sentence and tries again. Ends the program with code 2. */
export class CallError extends Error {}
