import { randomBytes } from "node:crypto";
import { realpath, rename, rm, stat, writeFile } from "node:fs/promises";
import { CallError } from "./callError.ts";
import { OutputError } from "./outputError.ts";

/** What the caller allows, and what must stay whatever is allowed. */
export interface WriteChoice {
  /** Whether a file that is there may be replaced. */
  readonly force: boolean;
  /** Files that the answer was worked out from; none of them is ever written over. */
  readonly inputs: readonly string[];
}

/**
 * Refuses a file that must not be written: one that is there already, unless the caller says otherwise, and one that was read, whatever is said.
 * @throws CallError
 */
export async function requireRoom(path: string, { force, inputs }: WriteChoice): Promise<void> {
  const there = await whatIs(path);
  if (there !== null && (await Promise.all(inputs.map(whatIs))).some((input) => input?.key === there.key))
    throw new CallError(`${path} is what the answer is worked out from and is not written over; name another file.`);
  if (there?.isFile === true && !force)
    throw new CallError(`${path} is there already; name another file, or write --force to replace it.`);
}

/**
 * Writes a file that the call asked for: whole, or not at all.
 * @param drafting told of the file that is not whole yet, and of null once it is
 * @throws CallError where the file must not or cannot be written; OutputError where the disk is full or breaks off
 */
export async function writeText(
  path: string,
  text: string,
  choice: WriteChoice,
  drafting: (path: string | null) => void,
): Promise<void> {
  await requireRoom(path, choice);
  const there = await whatIs(path);
  try {
    // A pipe or a device takes the text as it comes; a file is put in place once it is whole.
    if (there !== null && !there.isFile) return await writeFile(path, text);
    const target = there === null ? path : await realpath(path);
    const draft = `${target}.${randomBytes(4).toString("hex")}.part`;
    try {
      drafting(draft);
      await writeFile(draft, text, { flag: "wx" });
      await rename(draft, target);
    } finally {
      await rm(draft, { force: true });
      drafting(null);
    }
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "ENOSPC" || code === "EDQUOT" || code === "EFBIG")
      throw new OutputError(
        `There is no room for ${path}, and nothing of it was kept; free some or name another disk.`,
      );
    if (code === "EPIPE") throw new OutputError(`${path} was closed before all of it was written.`);
    throw new CallError(`${path} could not be written (${code}); check the folder and its permissions.`);
  }
}

async function whatIs(path: string): Promise<{ key: string; isFile: boolean } | null> {
  try {
    const { dev, ino, ...found } = await stat(path, { bigint: true });
    return { key: `${dev}:${ino}`, isFile: (found.mode & 0o170000n) === 0o100000n };
  } catch {
    return null;
  }
}
