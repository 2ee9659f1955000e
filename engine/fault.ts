/** A promise of the engine is broken: our mistake, never the user's. The message says how to meet it again. */
export class EngineFault extends Error {
  override readonly name = "EngineFault";
}
