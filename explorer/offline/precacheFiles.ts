import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Plugin } from "vite";
import { HOSTING_FILES } from "../hosting/hostingFiles.ts";
import { OFFLINE_WORKER } from "./offlineFile.ts";

/** Scripts that few names of places or people need; the system's own letters stand in for them. */
export const SELDOM_LETTERS = /canadian-aboriginal|vietnamese/;

/** Vite plugin: tells the service worker which files make up the page, and gives the whole of them a version. */
export function precacheFiles(): Plugin {
  let publicDir = "";
  return {
    name: "precache-files",
    apply: "build",
    configResolved(config) {
      publicDir = config.publicDir;
    },
    generateBundle: {
      order: "post",
      handler(_, bundle) {
        const worker = bundle[OFFLINE_WORKER];
        if (worker?.type !== "chunk") throw new Error(`The build has no ${OFFLINE_WORKER}.`);
        const contents = new Map<string, string | Uint8Array>();
        for (const [name, file] of Object.entries(bundle)) {
          if (name === OFFLINE_WORKER || name in HOSTING_FILES || SELDOM_LETTERS.test(name) || name.endsWith(".map"))
            continue;
          contents.set(name, file.type === "chunk" ? file.code : file.source);
        }
        for (const name of readdirSync(publicDir)) contents.set(name, readFileSync(join(publicDir, name)));
        const files = [...contents.keys()].sort();
        const hash = createHash("sha256");
        for (const name of files) hash.update(name).update(contents.get(name)!);
        const version = hash.digest("hex").slice(0, 16);
        const told = worker.code.replace("PRECACHED", `(${JSON.stringify({ version, files })})`);
        if (told === worker.code) throw new Error(`${OFFLINE_WORKER} has no place for the list of files.`);
        worker.code = told;
      },
    },
  };
}
