/** What a caller may want to do while particles run. */
export interface LearnHooks {
  /** Called with how many particles have run since the beginning of the part at hand. */
  readonly progress?: (done: number) => void;
  /** Comes back when whoever shares the thread has had its turn. */
  readonly pause?: () => Promise<void>;
  /** @returns true once the work is not wanted any more */
  readonly isCancelled?: () => boolean;
}

/** The work is not wanted any more. */
export class LearnCancelled extends Error {
  override readonly name = "LearnCancelled";
}

const PARTICLES_BETWEEN_PAUSES = 40;

/** Lets others have their turn now and then. @throws LearnCancelled once the work is not wanted any more */
export async function breathe(hooks: LearnHooks, done: number): Promise<void> {
  if (done % PARTICLES_BETWEEN_PAUSES !== 0) return;
  hooks.progress?.(done);
  await hooks.pause?.();
  if (hooks.isCancelled?.() === true) throw new LearnCancelled("the work was cancelled");
}
