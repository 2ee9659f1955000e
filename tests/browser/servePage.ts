import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build, preview } from "vite";
import solid from "vite-plugin-solid";

export interface ServedPage {
  readonly url: string;
  close(): Promise<void>;
}

/** Builds a page that has one part of the explorer alone on it, into no folder of the project, and serves it. */
export async function servePage(folder: "keeperPage" | "scenarioPage" | "shadePage"): Promise<ServedPage> {
  const outDir = mkdtempSync(join(tmpdir(), "duskline-page-"));
  const settings = {
    root: fileURLToPath(new URL(folder, import.meta.url)),
    configFile: false as const,
    base: "./",
    logLevel: "error" as const,
    plugins: [solid()],
    worker: { format: "es" as const },
    build: { outDir, emptyOutDir: true, chunkSizeWarningLimit: 2000 },
    preview: { host: "127.0.0.1" },
  };
  await build(settings);
  const server = await preview(settings);
  return {
    url: server.resolvedUrls!.local[0]!,
    close: async () => {
      await server.close();
      rmSync(outDir, { recursive: true, force: true });
    },
  };
}
