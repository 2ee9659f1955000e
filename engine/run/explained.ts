/** One number on the way to the answer, with the arithmetic that gave it. */
export interface ExplainedNumber {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** How it comes from the numbers above it, each by its name; empty where it is looked up or stated. */
  readonly how: string;
}

export function explained(name: string, value: number, unit: string, how = ""): ExplainedNumber {
  return { name, value, unit, how };
}
