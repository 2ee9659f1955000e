/** What was met on the way through a log: how often, and on which line first. */
export interface MeterTally {
  readonly add: (code: string, line: number) => void;
  readonly get: (code: string) => { readonly rows: number; readonly line: number } | undefined;
}

export function makeMeterTally(): MeterTally {
  const met = new Map<string, { rows: number; line: number }>();
  return {
    add(code, line) {
      const before = met.get(code);
      if (before === undefined) met.set(code, { rows: 1, line });
      else before.rows++;
    },
    get: (code) => met.get(code),
  };
}
