import { writeFile } from "node:fs/promises";
import { CallError } from "./callError.ts";

/** Writes a file that the call asked for. @throws CallError if it cannot be written */
export async function writeText(path: string, text: string): Promise<void> {
  try {
    await writeFile(path, text);
  } catch (error) {
    throw new CallError(
      `${path} could not be written (${(error as NodeJS.ErrnoException).code}); check the folder and its permissions.`,
    );
  }
}
