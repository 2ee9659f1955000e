/** The answer could not be written whole: the disk is full, or whoever read it went away. Ends the program with code 4. */
export class OutputError extends Error {}
