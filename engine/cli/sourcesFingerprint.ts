import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";

/** Folders and files that the build is made from. */
const SOURCES = [
  "engine",
  "explorer",
  "scenarios",
  "package-lock.json",
  "package.json",
  "vite.config.ts",
  "vite.node.config.ts",
  "tsconfig.base.json",
];

/** A fingerprint of everything that the build is made from, by content: the same files give the same text wherever they lie. */
export function sourcesFingerprint(): string {
  const hash = createHash("sha256");
  const visit = (path: string): void => {
    if (statSync(path).isDirectory()) {
      for (const name of readdirSync(path).sort()) visit(join(path, name));
    } else hash.update(path.replaceAll("\\", "/")).update("\0").update(readFileSync(path));
  };
  for (const path of SOURCES) if (existsSync(path)) visit(path);
  return hash.digest("hex");
}
