/** A promise of the engine is broken: our mistake, never the user's. The message says how to meet it again. */
export class EngineFault extends Error {
  override readonly name = "EngineFault";
}

/** A broken promise about one member of an ensemble. */
export class MemberFault extends EngineFault {
  constructor(seed: string, member: number, what: string) {
    super(`member ${member} of seed "${seed}": ${what}`);
  }
}
