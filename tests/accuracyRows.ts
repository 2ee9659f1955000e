import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import * as z from "zod";
import type { SkippedRow, TruthRow } from "./truth/record.ts";

/** Where truth tests leave what they measured; written again by every `npm test`. */
export const TRUTH_FOLDER = ".cache/truth";

// A row may carry only finite numbers: NaN becomes null on its way through JSON, and is refused here.
const Row: z.ZodType<TruthRow | SkippedRow> = z.union([
  z.object({ what: z.string(), source: z.string(), skipped: z.string() }),
  z.object({
    what: z.string(),
    source: z.string(),
    tolerance: z.number(),
    why: z.string(),
    worst: z.number(),
    unit: z.string(),
    n: z.int().positive(),
  }),
]);

/**
 * Reads the rows that truth tests recorded, in the order of their files' names.
 * @throws Error naming the file whose rows do not read
 */
export function accuracyRows(folder: string = TRUTH_FOLDER): (TruthRow | SkippedRow)[] {
  if (!existsSync(folder)) return [];
  const files = readdirSync(folder).filter((name) => name.endsWith(".json"));
  return files.sort().flatMap((name) => {
    try {
      return z.array(Row).parse(JSON.parse(readFileSync(join(folder, name), "utf8")));
    } catch (error) {
      throw new Error(`${join(folder, name)} holds no accuracy rows: ${String(error)}`);
    }
  });
}
