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
    expect(table.out).toMatch(/Compressor fridge, 30 to 45 L +– +4 A \(3 to 5\) +– \/ 3\.6/);
    const { gear, ...head } = JSON.parse(duskline("gear", "compressor", "fridge", "--measured", path, "--json").out);
    expect(head).toEqual({ format: "duskline-gear-list", version: 1, atV: 13.8 });
    expect(gear).toHaveLength(1);
    expect(gear[0].measured).toEqual({ gear: "fridge", working: 3.6 });
    writeFileSync(path, '{"format":"duskline-gear","version":1,"measured":[{"gear":"zeppelin"}]}');
    expect(duskline("gear", "fridge", "--measured", path).code).toBe(1);
  } finally {
    rmSync(folder, { recursive: true });
  }
  expect(duskline("gear", "zeppelin").out).toMatch(/Nothing on the shelf/);
  expect(duskline("gear").code).toBe(2);
  expect(duskline("gear", "fan", "--measured", "nowhere.json").code).toBe(2);
});

test("gear takes no variant and says so", () => {
  const { code, err } = duskline("gear", "fan", "--variant", "meadow");
  expect(code).toBe(2);
  expect(err).toMatch(/'--variant'.*Known here: --measured, --json, --help/);
});
