import { open, readdir, realpath, stat } from "node:fs/promises";
import { basename, dirname, isAbsolute, join, relative, sep } from "node:path";
import { nearestName } from "../nearestName.ts";
import { CallError } from "./callError.ts";
import type { Said } from "./said.ts";

/** Files are read whole; anything larger is none of ours. */
const LARGEST_FILE_BYTES = 10_000_000;

/** What stands for standard input where a file is named. */
export const STANDARD_INPUT = "-";

/** What may be read, and whom to tell. */
export interface CallChoice extends Pick<Said, "input" | "progress"> {
  /** Whether a scenario may name a weather file outside its own folder: the caller has said so. */
  readonly weatherAnywhere: boolean;
}

/** What one call is answered with: its files, each read once, and whom to tell how far the work is. */
export interface CallContext extends Pick<Said, "progress"> {
  /** @param path a file, or `-` for standard input; @throws CallError in a sentence where it cannot be read */
  readonly textOf: (path: string) => Promise<string>;
  /** Why a scenario may not have a file's weather; null where it may. */
  readonly whyNotBeside: (path: string, name: string) => Promise<string | null>;
  /** Files that were read so far: what the answer is worked out from. */
  readonly read: () => readonly string[];
}

/** Where a file lies that a scenario names; never standard input. */
export function besideOf(path: string, name: string): string {
  const beside = isAbsolute(name) ? name : join(dirname(path), name);
  return beside === STANDARD_INPUT ? `.${sep}${beside}` : beside;
}

export function makeCallContext({ weatherAnywhere, input, progress }: CallChoice): CallContext {
  const texts = new Map<string, Promise<string>>();
  return {
    progress,
    textOf: (path) => {
      const text = texts.get(path) ?? (path === STANDARD_INPUT ? inputText(input()) : fileText(path));
      texts.set(path, text);
      return text;
    },
    read: () => [...texts.keys()].filter((path) => path !== STANDARD_INPUT),
    whyNotBeside: (path, name) => whyNotBeside(path, name, weatherAnywhere),
  };
}

async function inputText(input: AsyncIterable<Uint8Array>): Promise<string> {
  return new TextDecoder().decode(await wholeOf(input, "Standard input"));
}

async function fileText(path: string): Promise<string> {
  try {
    const { size } = await stat(path);
    if (size > LARGEST_FILE_BYTES) {
      throw new CallError(
        `${path} has ${(size / 1e6).toFixed(1)} MB; files of up to 10 MB are read. Is it the right file?`,
      );
    }
    const file = await open(path, "r");
    try {
      return new TextDecoder().decode(await wholeOf(file.createReadStream({ autoClose: false }), path));
    } finally {
      await file.close();
    }
  } catch (error) {
    if (error instanceof CallError) throw error;
    const code = (error as NodeJS.ErrnoException).code;
    if (code === "ENOENT") throw new CallError(`There is no file ${path}; ${await likelyFile(path)}`);
    if (code === "EISDIR") throw new CallError(`${path} is a folder; name a file in it.`);
    if (code === "EACCES") throw new CallError(`${path} may not be read by you; check its permissions.`);
    throw new CallError(`${path} could not be read (${code}); check the name and the folder.`);
  }
}

/** Reads to the end, or gives up past the bound: a device or a pipe does not say how long it is, and may have no end. */
async function wholeOf(chunks: AsyncIterable<Uint8Array>, name: string): Promise<Buffer> {
  const kept: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of chunks) {
    kept.push(chunk);
    length += chunk.length;
    if (length > LARGEST_FILE_BYTES)
      throw new CallError(`${name} does not end within 10 MB, and no more is read. Is it the right file?`);
  }
  return Buffer.concat(kept);
}

/** More names than this are not looked through. */
const MOST_NAMES = 5_000;

/** What a file that is not there is probably called. */
async function likelyFile(path: string): Promise<string> {
  try {
    const names = (await readdir(dirname(path))).slice(0, MOST_NAMES);
    const name = basename(path);
    const meant = nearestName(name, names) ?? names.find((each) => each.startsWith(`${name}.`));
    if (meant !== undefined) return `did you mean ${join(dirname(path), meant)}?`;
  } catch {
    // Nor is there the folder.
  }
  return "check the name and the folder.";
}

/** A scenario may come from a stranger, and reads no more than lies beside it. */
async function whyNotBeside(path: string, name: string, isAllowedAnywhere: boolean): Promise<string | null> {
  const beside = besideOf(path, name);
  try {
    if (!(await stat(beside)).isFile())
      return "which is no regular file; name a file with one line of weather per hour.";
    if (isAllowedAnywhere || isInside(relative(await realpath(dirname(path)), await realpath(beside)))) return null;
  } catch {
    // That it is not there is said when it is read; where it would lie matters all the same.
    if (isAllowedAnywhere || isInside(relative(dirname(path), beside))) return null;
  }
  return "which lies outside the scenario's folder; put the file beside the scenario, or allow it with --weather-anywhere.";
}

const isInside = (way: string) => way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way);
