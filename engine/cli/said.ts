/** What the command line has of the world it is called from: where it says what it says, and whom it may ask. */
export interface Said {
  /** Takes one text at a time, with nothing in it that a terminal obeys. */
  readonly print: (text: string) => void;
  readonly complain: (sentence: string) => void;
  /** Told how far the work is, 0…1. */
  readonly progress: (share: number) => void;
  /** Standard input, from its beginning. */
  readonly input: () => AsyncIterable<Uint8Array>;
  /** Told of a file that is not whole yet, and of null once it is: who ends the program meanwhile takes it away. */
  readonly drafting: (path: string | null) => void;
  /** Puts a question to the person at the keyboard and waits for a line; null where nobody sits there. */
  readonly ask: ((question: string) => Promise<string>) | null;
}
