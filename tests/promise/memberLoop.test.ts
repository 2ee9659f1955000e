import { expect, test } from "vitest";
import { engineModules, parseModule } from "./engineModules.ts";
import { memberLoopFaults, memberLoopFunctions } from "./memberLoopFaults.ts";

test("what runs for every member and step rounds alike everywhere and allocates nothing", () => {
  const functions = memberLoopFunctions(engineModules());
  expect(functions.length).toBeGreaterThan(0);
  expect(functions.flatMap(memberLoopFaults)).toEqual([]);
});

function faultsIn(files: Record<string, string>): string[] {
  const modules = Object.entries(files).map(([path, text]) => [path, parseModule(path, text)] as const);
  return memberLoopFunctions(new Map(modules)).flatMap(memberLoopFaults);
}

test.each([
  "Math.exp(x)",
  "Math.log(x)",
  "Math.sin(x)",
  "Math.cos(x)",
  "Math.tan(x)",
  "Math.pow(x, 2)",
  "Math.atan2(x, 1)",
  "Math.hypot(x, 1)",
  "x ** 2",
  'Math["exp"](x)',
  "new Float64Array(1)",
  "Float64Array.of(x)",
  "({ x })",
  "[x]",
  "(() => x)()",
  "Date",
  "a.map(String)",
  "a.subarray(1)",
  // biome-ignore lint/suspicious/noTemplateCurlyInString: it is the text of a program
  "`${x}`",
])("in a step, %s would be refused", (expression) => {
  const step = `export function stepX(x: number, a: Float64Array) { return ${expression}; }`;
  expect(faultsIn({ "engine/bank/stepX.ts": step })).toHaveLength(1);
  expect(faultsIn({ "engine/bank/prepareX.ts": step })).toEqual([]);
});

test("statements that make iterators or change by a power would be refused", () => {
  const step = "export function stepX(x: number, a: number[]) { for (const b of a) x **= b; return x; }";
  expect(faultsIn({ "engine/bank/stepX.ts": step })).toHaveLength(2);
});

test("a function marked @memberLoop is held to it in any file, and so is what a step calls in another", () => {
  const marked = "/** Draws.\n * @memberLoop */\nexport function draw(x: number) { return Math.log(x); }";
  expect(faultsIn({ "engine/run/chance.ts": marked })).toHaveLength(1);
  expect(
    faultsIn({
      "engine/bank/stepX.ts":
        'import { taper as t } from "./taper.ts"; export function stepX(x: number) { return t(x); }',
      "engine/bank/taper.ts":
        "export const taper = (x: number) => half(x); function half(x: number) { return Math.exp(x); }",
    }),
  ).toHaveLength(1);
});

test("arithmetic on arrays that already exist passes, and a broken promise may be thrown in any words", () => {
  const step = `import type { Bank } from "./bank.ts";
    const TABLE = new Float64Array(3);
    /** Steps. */
    export function stepX(bank: Bank, i: number, out: Float64Array): void {
      if (!(out[i]! >= 0)) throw new EngineFault(\`step \${i}\`, { i });
      out[i + 1] = Math.max(0, Math.sqrt(out[i]! * TABLE[1]!) - (bank.fullWh as number) / 2);
    }`;
  expect(faultsIn({ "engine/bank/stepX.ts": step })).toEqual([]);
});
