import { NOTEBOOK_VERSION } from "./notebook.ts";

type Document = Record<string, unknown>;

/** What turns a notebook of version N into one of version N + 1, by N. */
export type Migrations = Readonly<Record<number, (document: Document) => Document>>;

/** There is only one version so far; the next one adds a step here and never alters an older one. */
const MIGRATIONS: Migrations = {};

/**
 * Brings a document to the version that this program writes. One of a newer version is left as it is and refused.
 */
export function migrateNotebook(
  value: unknown,
  migrations: Migrations = MIGRATIONS,
  newest: number = NOTEBOOK_VERSION,
): { ok: true; document: unknown } | { ok: false; sentence: string } {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    return { ok: false, sentence: "The file holds no notebook: a notebook is one JSON object." };
  }
  let document = value as Document;
  if (document.format !== "duskline-notebook") {
    return { ok: false, sentence: 'The file is no notebook: its format should be "duskline-notebook".' };
  }
  let { version } = document;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return { ok: false, sentence: "The notebook does not say its version, a whole number." };
  }
  if (version > newest) {
    return {
      ok: false,
      sentence: `The notebook was written by a newer duskline (version ${version}; this one reads up to ${newest}). It is left as it is: open it with that one.`,
    };
  }
  while ((version as number) < newest) {
    const step = migrations[version as number];
    if (step === undefined)
      return { ok: false, sentence: `Notebooks of version ${String(version)} can no longer be read.` };
    version = (version as number) + 1;
    document = { ...step(document), version };
  }
  return { ok: true, document };
}
