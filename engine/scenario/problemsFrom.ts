import { distance } from "fastest-levenshtein";
import * as z from "zod";
import type { Problem } from "./problem.ts";

type Path = readonly PropertyKey[];

function valueAt(document: unknown, path: Path): unknown {
  let value = document;
  for (const key of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}

/** The path as a person would say it: list entries by their id where they have one. */
export function spokenPath(document: unknown, path: Path): string {
  const parts = path.map((key, depth) => {
    if (typeof key !== "number") return String(key);
    const entry = valueAt(document, path.slice(0, depth + 1));
    const name = typeof entry === "object" && entry !== null ? (entry as { id?: unknown }).id : undefined;
    return typeof name === "string" ? name : String(key + 1);
  });
  return parts.length === 0 ? "The document" : parts.join(".");
}

function shown(value: unknown): string {
  if (typeof value === "number" || typeof value === "boolean" || value === null) return String(value);
  if (typeof value === "string") return `"${value.length > 60 ? `${value.slice(0, 57)}…` : value}"`;
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : `a list of ${value.length}`;
  return typeof value === "object" ? "a group of fields" : `a ${typeof value}`;
}

interface JsonSchema {
  properties?: Record<string, JsonSchema>;
  items?: JsonSchema;
  anyOf?: JsonSchema[];
  oneOf?: JsonSchema[];
}

/** The field names that the schema allows at a path, whatever the kind of thing there. */
function namesAt(schema: JsonSchema, path: Path): string[] {
  const options = [schema, ...(schema.anyOf ?? []), ...(schema.oneOf ?? [])];
  const [key, ...rest] = path;
  if (key === undefined) return options.flatMap((option) => Object.keys(option.properties ?? {}));
  return options.flatMap((option) => {
    const next = typeof key === "number" ? option.items : option.properties?.[String(key)];
    return next === undefined ? [] : namesAt(next, rest);
  });
}

function nearest(name: string, names: readonly string[]): string | null {
  const ranked = names.map((known) => ({ known, steps: distance(name.toLowerCase(), known.toLowerCase()) }));
  ranked.sort((a, b) => a.steps - b.steps);
  const best = ranked[0];
  return best !== undefined && best.steps <= Math.max(2, name.length / 3) ? best.known : null;
}

function knownNames(schema: z.ZodType, path: Path): string[] {
  const json = z.toJSONSchema(schema, { io: "input", unrepresentable: "any", reused: "inline" }) as JsonSchema;
  return [...new Set(namesAt(json, path))];
}

function unknownField(document: unknown, path: Path, key: string, schema: z.ZodType): Problem {
  const names = knownNames(schema, path);
  const meant = nearest(key, names);
  const where = path.length === 0 ? "the document" : spokenPath(document, path);
  const remedy = meant === null ? `known here: ${names.join(", ")}.` : `did you mean ${meant}?`;
  const value = shown(valueAt(document, [...path, key]));
  return {
    code: "unknown-field",
    path: [...path, key].map(plain),
    message: `There is no field "${key}" (here ${value}) in ${where}; ${remedy}`,
  };
}

function plain(key: PropertyKey): string | number {
  return typeof key === "number" ? key : String(key);
}

/**
 * Turns what zod found into sentences, one for each thing that is wrong. A schema's own message is the expectation
 * ("a number from 1 to 5000 Ah (…)"); field and value are added here.
 */
export function problemsFrom(document: unknown, error: z.ZodError, schema: z.ZodType): Problem[] {
  const problems = error.issues.flatMap((issue): Problem[] => {
    const path = issue.path.map(plain);
    const where = spokenPath(document, issue.path);
    const value = valueAt(document, issue.path);
    if (issue.code === "unrecognized_keys")
      return issue.keys.map((key) => unknownField(document, issue.path, key, schema));
    if (issue.code === "custom" && issue.params?.expectation !== true)
      return [{ code: "contradiction", path, message: `${where}: ${issue.message}.` }];
    const isGroup = issue.code === "invalid_type" && issue.expected === "object" && issue.message.startsWith("Invalid");
    const allowed = isGroup ? `a group of fields (${knownNames(schema, issue.path).join(", ")})` : issue.message;
    if (value === undefined) return [{ code: "missing", path, message: `${where} is missing; give ${allowed}.` }];
    return [{ code: "not-allowed", path, message: `${where} is ${shown(value)} but must be ${allowed}.` }];
  });
  const refused = problems.filter((problem) => problem.code === "not-allowed");
  const leadsTo = (path: Problem["path"], other: Problem["path"]) => path.every((key, depth) => other[depth] === key);
  const isEcho = ({ code, path, message }: Problem) =>
    code === "contradiction" &&
    refused.some(
      (other) =>
        leadsTo(path, other.path) ||
        (leadsTo(path.slice(0, -1), other.path) &&
          message.split(/[^\d.e+-]+/).includes(String(valueAt(document, other.path)))),
    );
  // A contradiction with a value that is refused anyway says nothing new. A number that is neither whole nor in range
  // fails twice with one and the same sentence.
  return problems.filter(
    (problem, i) => !isEcho(problem) && problems.findIndex((other) => other.message === problem.message) === i,
  );
}
