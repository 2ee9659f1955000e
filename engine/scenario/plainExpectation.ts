import type * as z from "zod";

const KINDS: Readonly<Record<string, string>> = {
  string: "text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  object: "a group of fields",
  record: "a group of fields",
};

/**
 * What a schema expects where it has no words of its own, for `safeParse(value, { error: plainExpectation })`: "must be a number", which
 * completes a sentence that begins with the field. Zod's own words are a programmer's.
 */
export function plainExpectation(issue: z.core.$ZodRawIssue): string {
  switch (issue.code) {
    case "invalid_type": {
      const kind = KINDS[issue.expected] ?? "of another kind";
      return issue.input === undefined ? `is missing and must be ${kind}` : `must be ${kind}`;
    }
    case "too_small":
      return `must ${lengthOrSize(issue.origin, `at least ${issue.minimum}`)}`;
    case "too_big":
      return `must ${lengthOrSize(issue.origin, `at most ${issue.maximum}`)}`;
    case "invalid_value":
      return `must be ${issue.values.map((value) => JSON.stringify(value)).join(" or ")}`;
    case "unrecognized_keys":
      return `has fields that are not known here: ${issue.keys.join(", ")}`;
    case "invalid_union":
      return "is of no kind that is known here";
    default:
      return "is not what belongs here";
  }
}

function lengthOrSize(origin: string, bound: string): string {
  if (origin === "string") return `have ${bound} characters`;
  return origin === "array" ? `have ${bound} entries` : `be ${bound}`;
}
