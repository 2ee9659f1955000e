import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { duskline } from "./duskline.ts";

test("gear prints the shelf as a table and as JSON, with what was measured beside it", () => {
  const folder = mkdtempSync(join(tmpdir(), "duskline-"));
  try {
    const path = join(folder, "mine.json");
    writeFileSync(path, '{"format":"duskline-gear","version":1,"measured":[{"gear":"fridge","working":3.6}]}');
    const table = duskline("gear", "fridge", "--measured", path);
    expect(table.code).toBe(0);
    expect(table.out).toMatch(/Compressor fridge, 30 to 45 L +fridge +– +4 A \(3 to 5\) +– \/ 3\.6/);
    const { gear, ...head } = JSON.parse(duskline("gear", "compressor", "fridge", "--measured", path, "--json").out);
    expect(head).toEqual({ format: "duskline-gear-list", version: 1, atV: 13.8, near: [] });
    expect(gear).toHaveLength(1);
    expect(gear[0].measured).toEqual({ gear: "fridge", working: 3.6 });
    const odd = '"measured":[{"gear":"fridge","working":320}]';
    const own = '"own":[{"id":"winch","name":"Mast winch","unit":"A","working":28,"use":"whenStaffed","share":0.01}]';
    writeFileSync(path, `{"format":"duskline-gear","version":1,${odd},${own}}`);
    const asked = duskline("gear", "winch", "--measured", path);
    expect(asked).toMatchObject({
      code: 1,
      err: expect.stringMatching(/320 A is 80 times .* or confirm all with --confirm/),
    });
    expect(duskline("gear", "winch", "--measured", path, "--confirm").out).toMatch(/Mast winch .* 28 A/);
    writeFileSync(path, '{"format":"duskline-gear","version":1,"measured":[{"gear":"zeppelin"}]}');
    expect(duskline("gear", "fridge", "--measured", path).code).toBe(1);
  } finally {
    rmSync(folder, { recursive: true });
  }
  expect(duskline("gear", "zeppelin").out).toMatch(/Nothing on the shelf/);
  expect(duskline("gear", "frige").out).toMatch(/answers to "frige"; near it:\n\n[\s\S]*Compressor fridge/);
  expect(duskline("gear").code).toBe(2);
  expect(duskline("gear", "fan", "--measured", "nowhere.json").code).toBe(2);
});

test("gear takes no variant and says so", () => {
  const { code, err } = duskline("gear", "fan", "--variant", "meadow");
  expect(code).toBe(2);
  expect(err).toMatch(/'--variant'.*Known here: --measured, --confirm, --json, --output, --force, --help/);
});
