import { fileURLToPath } from "node:url";
import type { Plugin } from "vite";
import { scenarioInputSchema } from "../engine/scenario/scenarioSchema.ts";

/** Where schemas are, of which nobody reads the meta before the first answer. */
const SCHEMAS = fileURLToPath(new URL("../engine/scenario/", import.meta.url)).replaceAll("\\", "/");
/** What reads all of it, for the form and whoever puts a document in words. */
const READER = `${SCHEMAS}scenarioSchema.ts`;

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
      if (file === READER) {
        const text = JSON.stringify(JSON.stringify(scenarioInputSchema()));
        return { code: `export const scenarioInputSchema = () => JSON.parse(${text});`, map: null };
      }
      if (!file.startsWith(SCHEMAS) || !code.includes(".meta(")) return null;
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
