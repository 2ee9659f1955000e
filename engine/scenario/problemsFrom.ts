import * as z from "zod";
import { nearestName } from "../nearestName.ts";
import type { Problem } from "./problem.ts";
import { MOST_PROBLEMS, moreProblems } from "./problemList.ts";
import { clipped, shown } from "./shown.ts";

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
  const parts: string[] = [];
  let value = document;
  for (const key of path) {
    value = valueAt(value, [key]);
    const name = typeof value === "object" && value !== null ? (value as { id?: unknown }).id : undefined;
    const isEntry = typeof key === "number";
    parts.push(clipped(!isEntry ? String(key) : typeof name === "string" ? name : String(key + 1)));
  }
  return parts.length === 0 ? "The document" : parts.join(".");
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

/** Building a schema's description takes longer than reading most documents, so each is built once. */
const jsonSchemas = new WeakMap<z.ZodType, JsonSchema>();

function knownNames(schema: z.ZodType, path: Path): string[] {
  let json = jsonSchemas.get(schema);
  if (json === undefined) {
    json = z.toJSONSchema(schema, { io: "input", unrepresentable: "any", reused: "inline" }) as JsonSchema;
    jsonSchemas.set(schema, json);
  }
  return [...new Set(namesAt(json, path))];
}

function unknownField(document: unknown, path: Path, key: string, schema: z.ZodType): Problem {
  const names = knownNames(schema, path);
  const meant = nearestName(key, names);
  const where = path.length === 0 ? "the document" : spokenPath(document, path);
  const remedy = meant === null ? `known here: ${names.join(", ")}.` : `did you mean ${meant}?`;
  const value = shown(valueAt(document, [...path, key]));
  return {
    code: "unknown-field",
    path: [...path, key].map(plain),
    message: `There is no field "${clipped(key)}" (here ${value}) in ${where}; ${remedy}`,
  };
}

function plain(key: PropertyKey): string | number {
  return typeof key === "number" ? key : String(key);
}

/** An issue that is about a value; unknown fields come many to an issue and are handled by themselves. */
interface Finding {
  readonly issue: z.core.$ZodIssue;
  readonly kind: "contradiction" | "missing" | "not-allowed";
}

function findingOf(document: unknown, issue: z.core.$ZodIssue): Finding {
  if (issue.code === "custom" && issue.params?.expectation !== true) return { issue, kind: "contradiction" };
  return { issue, kind: valueAt(document, issue.path) === undefined ? "missing" : "not-allowed" };
}

function inWords(document: unknown, { issue, kind }: Finding, schema: z.ZodType): Problem {
  const path = issue.path.map(plain);
  const where = spokenPath(document, issue.path);
  if (kind === "contradiction") return { code: kind, path, message: `${where}: ${issue.message}.` };
  const isGroup = issue.code === "invalid_type" && issue.expected === "object" && issue.message.startsWith("Invalid");
  // What a change brings may be anything; zod has no words for what is not even JSON, such as NaN in a value from a program.
  const isJson = issue.code === "invalid_union" && issue.message.startsWith("Invalid");
  const allowed = isGroup
    ? `a group of fields (${knownNames(schema, issue.path).join(", ")})`
    : isJson
      ? "something that JSON can hold"
      : issue.message;
  if (kind === "missing") return { code: kind, path, message: `${where} is missing; give ${allowed}.` };
  const found = shown(valueAt(document, issue.path));
  return { code: kind, path, message: `${where} is ${found} but must be ${allowed}.` };
}

const pathKey = (path: Path) => path.map((key) => `${typeof key}:${String(key)}`).join("\n");

/**
 * Tells which contradictions only echo a value that is refused anyway: those about something that holds it, and those about
 * something beside it whose sentence repeats it.
 */
function makeEchoes(document: unknown, issues: readonly z.core.$ZodIssue[]): (finding: Finding) => boolean {
  /** Numbers that were refused at a place or beneath it, as sentences write them. */
  const refused = new Map<string, Set<string>>();
  const noteRefused = (key: string, value: unknown) => {
    const values = refused.get(key) ?? new Set();
    if (typeof value === "number") values.add(String(value));
    refused.set(key, values);
  };
  for (const issue of issues) {
    if (issue.code === "unrecognized_keys" || findingOf(document, issue).kind !== "not-allowed") continue;
    const value = valueAt(document, issue.path);
    for (let depth = 0; depth <= issue.path.length; depth++) noteRefused(pathKey(issue.path.slice(0, depth)), value);
  }
  return ({ issue, kind }) => {
    if (kind !== "contradiction") return false;
    if (refused.has(pathKey(issue.path))) return true;
    const beside = refused.get(pathKey(issue.path.slice(0, -1)));
    return beside !== undefined && issue.message.split(/[^\d.e+-]+/).some((word) => beside.has(word));
  };
}

/**
 * Turns what zod found into sentences, one for each thing that is wrong, fifty at most and then their number. A schema's own
 * message is the expectation ("a number from 1 to 5000 Ah (…)"); field and value are added here. Takes time in proportion to
 * what was found.
 */
export function problemsFrom(document: unknown, error: z.ZodError, schema: z.ZodType): Problem[] {
  const isEcho = makeEchoes(document, error.issues);
  const problems: Problem[] = [];
  let more = 0;
  // A number that is neither whole nor in range fails twice with one and the same sentence.
  const said = new Set<string>();
  for (const issue of error.issues) {
    const room = MOST_PROBLEMS - problems.length;
    if (issue.code === "unrecognized_keys") {
      for (const key of issue.keys.slice(0, room)) problems.push(unknownField(document, issue.path, key, schema));
      more += Math.max(0, issue.keys.length - room);
      continue;
    }
    const finding = findingOf(document, issue);
    const what = `${pathKey(issue.path)}\n${issue.message}`;
    if (said.has(what) || isEcho(finding)) continue;
    said.add(what);
    if (room > 0) problems.push(inWords(document, finding, schema));
    else more++;
  }
  return more > 0 ? [...problems, moreProblems(more)] : problems;
}
