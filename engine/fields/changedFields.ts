import { type Difference, differences } from "../scenario/differences.ts";
import type { ScenarioInput } from "../scenario/scenario.ts";
import { type Path, pathOf, valueAt } from "./formPath.ts";
import { formSchema, inside, resolved, type SchemaNode } from "./formSchema.ts";

type Part = Record<string, unknown>;

/** Both documents, as written and filled in, so that a field left out still has a "was". */
export interface Sides {
  readonly base: ScenarioInput;
  readonly document: ScenarioInput;
  readonly baseFilled: object;
  readonly filled: object;
}

/** Something that holds fields: a part of the document, or an entry of a list. */
interface Holder {
  readonly names: readonly string[];
  readonly node: SchemaNode | undefined;
  readonly before: unknown;
  readonly after: unknown;
}

/** One field that differs, or one part that is told as a whole. */
export interface ChangedField {
  /** Path by names, ids inside lists: ["panels", "roof", "count"]. */
  readonly names: readonly string[];
  readonly key: string;
  readonly node: SchemaNode | undefined;
  readonly before: unknown;
  readonly after: unknown;
  /** What it lies in, the outermost first. */
  readonly parts: readonly Holder[];
}

/** All that differs directly inside one part. */
export interface ChangedPart extends Holder {
  readonly fields: readonly ChangedField[];
}

/** What differs between two documents, field by field, those of one part together. */
export function changedFields(sides: Sides): ChangedPart[] {
  const parts = new Map<string, Holder & { fields: ChangedField[] }>();
  for (const difference of differences(sides.base, sides.document)) {
    for (const { names, before, after } of spread(withUsual(difference, sides), sides)) {
      if (same(before, after)) continue;
      const field = fieldAt(names, before, after, sides);
      const part = field.parts.at(-1)!;
      const key = part.names.join(".");
      const known = parts.get(key) ?? { ...part, fields: [] };
      if (!known.fields.some((other) => other.key === field.key)) known.fields.push(field);
      parts.set(key, known);
    }
  }
  return [...parts.values()];
}

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);
const partOf = (value: unknown): Part => (typeof value === "object" && value !== null ? (value as Part) : {});

interface Found {
  readonly names: readonly string[];
  readonly before: unknown;
  readonly after: unknown;
}

function withUsual({ at, before, after }: Difference, sides: Sides): Found {
  const names = at.split(".");
  return { names, before: before ?? byNames(sides.baseFilled, names), after: after ?? byNames(sides.filled, names) };
}

/** A part or list that one side leaves out, as the single fields that differ. */
function spread(found: Found, sides: Sides): Found[] {
  const { before, after, names } = found;
  const isNamed = (value: unknown) =>
    Array.isArray(value) && value.every((item) => typeof partOf(item).id === "string");
  const isGroup = (value: unknown) => typeof value === "object" && value !== null && !Array.isArray(value);
  const lists = isNamed(before ?? []) && isNamed(after ?? []);
  if (!lists && !(isGroup(before) && isGroup(after))) return [found];
  const inner = differences({ of: before ?? [] }, { of: after ?? [] });
  return inner.map(({ at, ...each }) =>
    withUsual({ at: [...names, ...at.split(".").slice(1)].join("."), ...each }, sides),
  );
}

function byNames(document: unknown, names: readonly string[]): unknown {
  return names.reduce<unknown>((value, name) => {
    if (Array.isArray(value)) return value.find((item) => partOf(item).id === name) ?? value[Number(name)];
    return partOf(value)[name];
  }, document);
}

/** The schema along a path, that of the whole document first; of several kinds that of the kind that stands there. */
function nodesAlong(document: object, path: Path): (SchemaNode | undefined)[] {
  const nodes: (SchemaNode | undefined)[] = [formSchema()];
  for (const [depth, key] of path.entries()) {
    const holder = nodes.at(-1);
    const node = holder === undefined ? undefined : inside(holder, valueAt(document, path.slice(0, depth)), key);
    nodes.push(node === undefined ? undefined : ofItsKind(node, valueAt(document, path.slice(0, depth + 1))));
  }
  return nodes;
}

/** What is said of all kinds of a thing holds for each. */
function ofItsKind(node: SchemaNode, value: unknown): SchemaNode {
  const kind = resolved(node, value);
  if (kind === node) return node;
  const [ofAll, own] = [node.change, kind.change];
  const change = typeof ofAll === "object" && typeof own === "object" ? { ...ofAll, ...own } : (own ?? ofAll);
  return {
    ...kind,
    label: node.label ?? node.title ?? "",
    isWhole: node.isWhole === true,
    ...(change === undefined ? {} : { change }),
  };
}

function fieldAt(names: readonly string[], before: unknown, after: unknown, sides: Sides): ChangedField {
  const { base, document, baseFilled, filled } = sides;
  const holder = after === undefined ? base : document;
  const nodes = nodesAlong(holder, pathOf(holder, names));
  const whole = nodes.findIndex((node, depth) => depth > 0 && depth < names.length && node?.isWhole === true);
  const depth = whole < 0 ? names.length : whole;
  const holderAt = (length: number): Holder => {
    const there = names.slice(0, length);
    const was = byNames(base, there) ?? byNames(baseFilled, there);
    return {
      names: there,
      node: nodes[length],
      before: was,
      after: byNames(document, there) ?? byNames(filled, there),
    };
  };
  const parts = Array.from({ length: depth }, (_, length) => holderAt(length));
  const own = whole < 0 ? { names, node: nodes[depth], before, after } : holderAt(depth);
  return { ...own, key: names[depth - 1]!, parts };
}
