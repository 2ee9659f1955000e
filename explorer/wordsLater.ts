import { fileURLToPath } from "node:url";
import type { Plugin } from "vite";
import { readingSchema } from "../engine/learn/readingSchema.ts";
import { scenarioInputSchema } from "../engine/scenario/scenarioSchema.ts";

const engine = (path: string) => fileURLToPath(new URL(`../engine/${path}`, import.meta.url)).replaceAll("\\", "/");

/** Where schemas are, of which nobody reads the meta before the first answer. */
const SCHEMAS = [engine("scenario/"), engine("learn/reading.ts")];
/** What reads all of it, for forms and for whoever puts a document in words. */
const READERS = [
  { file: engine("scenario/scenarioSchema.ts"), name: "scenarioInputSchema", schema: scenarioInputSchema },
  { file: engine("learn/readingSchema.ts"), name: "readingSchema", schema: readingSchema },
];

/** A field's range says the rest; what it comes to in JSON Schema is for editors. */
const bare = (_: string, value: unknown) =>
  typeof value === "object" && value !== null && "quantity" in value
    ? { ...value, description: undefined, minimum: undefined, maximum: undefined }
    : value;

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
}
type Call = Node & { readonly callee: Node & { readonly object?: Node; readonly property?: { name?: string } } };

/**
 * Vite plugin: what a schema says in its meta (label, meaning, how a change reads) is no part of reading a scenario, so it is left out of
 * the files with which a scenario is read, and what the meta comes to is worked out here and fetched with the form. Without this plugin
 * the page does the same, with some kilobytes more before its first answer.
 */
export function wordsLater(): Plugin {
  return {
    name: "words-later",
    apply: "build",
    transform(code, id) {
      const file = id.split("?")[0]!;
      const reader = READERS.find((each) => each.file === file);
      if (reader !== undefined) {
        const text = JSON.stringify(JSON.stringify(reader.schema(), bare));
        return { code: `export const ${reader.name} = () => JSON.parse(${text});`, map: null };
      }
      if (!SCHEMAS.some((place) => file.startsWith(place)) || !code.includes(".meta(")) return null;
      return { code: withoutMeta(code, this.parse(code) as unknown as Node), map: null };
    },
  };
}

/** The code with every `schema.meta(…)` as plain `schema`. */
export function withoutMeta(code: string, program: Node): string {
  const gone: [from: number, to: number][] = [];
  const visit = (node: unknown): void => {
    if (typeof node !== "object" || node === null) return;
    const call = node as Call;
    if (call.type === "CallExpression" && call.callee.property?.name === "meta") {
      gone.push([call.callee.object!.end, call.end]);
      visit(call.callee.object);
    } else for (const inner of Object.values(node)) visit(inner);
  };
  visit(program);
  return gone.sort((a, b) => b[0] - a[0]).reduce((text, [from, to]) => text.slice(0, from) + text.slice(to), code);
}
