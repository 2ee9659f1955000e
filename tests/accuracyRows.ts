import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import * as z from "zod";

/** Where truth tests leave what they measured; made anew by every `npm test`. */
export const TRUTH_FOLDER = ".cache/truth";

const AccuracyRow = z.object({
  /** What was compared, as a reader would say it. */
  what: z.string(),
  /** The published source on the other side of the comparison. */
  source: z.string(),
  /** Largest difference allowed, in `unit`. */
  tolerance: z.number(),
  /** Why the tolerance is what it is. */
  why: z.string(),
  /** Largest difference seen, in `unit`. */
  worst: z.number(),
  unit: z.string(),
  /** How many values were compared. */
  n: z.int().positive(),
});
export type AccuracyRow = z.infer<typeof AccuracyRow>;

/**
 * Reads the rows that truth tests recorded, in the order of their files' names.
 * @throws Error naming the file whose rows do not read
 */
export function accuracyRows(folder = TRUTH_FOLDER): AccuracyRow[] {
  if (!existsSync(folder)) return [];
  const files = readdirSync(folder).filter((name) => name.endsWith(".json"));
  return files.sort().flatMap((name) => {
    try {
      const content: unknown = JSON.parse(readFileSync(join(folder, name), "utf8"));
      return z.array(AccuracyRow).parse(Array.isArray(content) ? content : [content]);
    } catch (error) {
      throw new Error(`${join(folder, name)} holds no accuracy rows: ${String(error)}`);
    }
  });
}
