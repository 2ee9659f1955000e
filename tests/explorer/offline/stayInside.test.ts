import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { isInside } from "../../../explorer/offline/stayInside.ts";

test("the local server serves what lies in its folder, and nothing that a link or a path leads to outside", async () => {
  const top = mkdtempSync(join(tmpdir(), "duskline-served-"));
  const served = join(top, "served");
  mkdirSync(join(served, "assets"), { recursive: true });
  for (const path of ["index.html", "assets/a.js"]) writeFileSync(join(served, path), "x");
  writeFileSync(join(top, "secret.txt"), "x");
  writeFileSync(join(top, "served-beside.txt"), "x");
  symlinkSync(join(top, "secret.txt"), join(served, "link.txt"));
  symlinkSync(top, join(served, "up"));
  symlinkSync(join(served, "index.html"), join(served, "home.html"));
  for (const url of ["/", "/index.html?x=1#y", "/assets/a.js", "/home.html", "/not-there.js"])
    expect(await isInside(served, url), url).toBe(true);
  for (const url of ["/link.txt", "/up/secret.txt", "/up", "/../secret.txt", "/%2e%2e/secret.txt", "/../served-beside.txt", "/%ff", "/a%00b"])
    expect(await isInside(served, url), url).toBe(false);
}); // biome-ignore format: lists of addresses
