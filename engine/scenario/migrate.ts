import type { Problem } from "./problem.ts";
import { SCENARIO_VERSION } from "./scenario.ts";

/**
 * Brings a document of an older version to the present one, step by step; there is only one version so far. A document
 * of a newer version is refused, because reading half of it would be worse than not reading it.
 */
export function migrate(document: unknown): { ok: true; document: unknown } | { ok: false; problems: Problem[] } {
  const version =
    typeof document === "object" && document !== null ? (document as { version?: unknown }).version : undefined;
  if (typeof version !== "number" || version <= SCENARIO_VERSION) return { ok: true, document };
  const message = `version is ${version}, and this program reads up to version ${SCENARIO_VERSION}; get a newer duskline. The document was left as it is.`;
  return { ok: false, problems: [{ code: "newer-version", path: ["version"], message }] };
}
