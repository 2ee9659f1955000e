import { readdirSync } from "node:fs";
import { posix } from "node:path";

/** Paths of all TypeScript files in some folders, from the top, with forward slashes. */
export function sourceFiles(folders: readonly string[]): string[] {
  return folders.flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: "utf8" })
      .map((name) => posix.join(folder, name.replaceAll("\\", "/")))
      .filter((path) => /\.tsx?$/.test(path) && !path.endsWith(".d.ts"))
      .sort(),
  );
}
