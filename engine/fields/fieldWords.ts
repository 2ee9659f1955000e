import { formSchema, kindsOf, type SchemaNode } from "./formSchema.ts";

/** A name made from a field's own: "maxChargeA" is "Max charge". */
function spelled(key: string): string {
  const words = key.replace(/(?<=[a-z])(?:W|A|V|Ah|Wh|M|Deg|C|Share|Km|L|H|Ohm|Kg|Minutes|LPerH|PerH|PerK|M2|Ms)$/, "");
  const plain = words.replace(/([a-z0-9])([A-Z])/g, "$1 $2").toLowerCase();
  return plain.charAt(0).toUpperCase() + plain.slice(1);
}

/** What a field is called: its label, else the title of the part that it holds, else its own name spelled out. */
export function labelOf(node: SchemaNode | undefined, key: string): string {
  return node?.label ?? node?.title ?? spelled(key);
}

interface Names {
  /** By the whole place: "stations[].radio.ratedW". */
  readonly whole: ReadonlyMap<string, string>;
  /** By every end of it ("radio.ratedW", "ratedW"): what the fields so named are called, with a weight: how many, and a little for one that lies high. */
  readonly ends: ReadonlyMap<string, ReadonlyMap<string, number>>;
}

let names: Names | null = null;
let choiceNames: ReadonlyMap<string, string> | null = null;

function eachField(visit: (pattern: string, key: string, node: SchemaNode) => void): void {
  const walk = (node: SchemaNode, at: string): void => {
    for (const [key, field] of Object.entries(node.properties ?? {})) {
      const pattern = at === "" ? key : `${at}.${key}`;
      visit(pattern, key, field);
      walk(field, pattern);
    }
    for (const option of node.oneOf ?? []) walk(option, at);
    if (node.items !== undefined) walk(node.items, `${at}[]`);
  };
  walk(formSchema(), "");
}

function namesOfFields(): Names {
  const whole = new Map<string, string>();
  const ends = new Map<string, Map<string, number>>();
  eachField((pattern, key, node) => {
    const parts = pattern.split(".");
    const label = labelOf(node, key);
    whole.set(pattern, whole.get(pattern) ?? label);
    if (node.items?.label !== undefined) whole.set(`${pattern}[]`, node.items.label);
    for (const from of parts.keys()) {
      const name = parts.slice(from).join(".");
      const labels = ends.get(name) ?? new Map<string, number>();
      labels.set(label, (labels.get(label) ?? 1 / (1 + parts.length)) + 1);
      ends.set(name, labels);
    }
  });
  return { whole, ends };
}

/**
 * What a field is called on the page, by its place ("stations[].radio.ratedW") or the end of it; where fields differ, as most of
 * them are, and of as many those that lie least deep.
 */
export function fieldLabel(pattern: string): string {
  names ??= namesOfFields();
  const place = pattern.replace(/\[\]$/, "");
  const [most] = [...(names.ends.get(place) ?? [])].sort((a, b) => b[1] - a[1]);
  return names.whole.get(pattern) ?? names.whole.get(place) ?? most?.[0] ?? spelled(place.split(".").at(-1)!);
}

/**
 * A sentence of the engine with the format's own names turned into those of the page: “radio.ratedW”, “sendingShare”.
 * @param part the part that the sentence is about, whose fields are meant first
 */
export function withLabels(sentence: string, part?: SchemaNode): string {
  return sentence.replace(/\b(?:[a-z][A-Za-z0-9]*\.)*[a-z]+[A-Z][A-Za-z0-9]*\b/g, (name) => {
    const own = part?.properties?.[name];
    return `“${own === undefined ? fieldLabel(name) : labelOf(own, name)}”`;
  });
}

/** What the choices of a field, or the kinds of a thing, are called where that is not their own word. */
function choicesOf(node: SchemaNode): Readonly<Record<string, string>> {
  const kinds = kindsOf(node).length === 0 ? [] : node.oneOf!.map((option) => option.properties!.kind!.choices);
  return Object.assign({}, node.items?.choices, ...kinds, node.choices) as Record<string, string>;
}

/** Words that are called one and the same wherever they can be chosen. */
function namesOfChoices(): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  eachField((_, __, node) => {
    const words = [
      ...(node.enum ?? []),
      ...(node.const === undefined ? [] : [node.const]),
      ...(node.items?.enum ?? []),
    ];
    for (const word of [...words.map(String), ...Object.keys(node.choices ?? {})]) {
      const name = choicesOf(node)[word] ?? spelled(word).toLowerCase();
      found.set(word, (found.get(word) ?? name) === name ? name : spelled(word).toLowerCase());
    }
  });
  return found;
}

/** What a choice is called on the page. @param node the field, where it is known: a word may mean something else in one field */
export function choiceLabel(value: unknown, node?: SchemaNode): string {
  const word = String(value);
  choiceNames ??= namesOfChoices();
  return (node === undefined ? choiceNames.get(word) : choicesOf(node)[word]) ?? spelled(word).toLowerCase();
}
