/** `npm start`: builds what has changed, prints the example's verdict, and serves the explorer to this machine only. */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { sourcesFingerprint } from "./sourcesFingerprint.ts";

const EXAMPLE = "scenarios/walnut-grove.json";
const BUILT = ["dist/explorer/index.html", "dist/duskline.js", "dist/index.js"];
/** What the last build was made from. */
const RECORD = ".cache/built-from";

const HELP = `npm start -- [--port N] [--host ADDRESS] [--no-open] [--rebuild]

  --port N        serve on this port (4173 when left out)
  --host ADDRESS  serve on this address (127.0.0.1 when left out: this machine only)
  --no-open       do not open a browser
  --rebuild       build even where nothing has changed`;

try {
  await start();
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 2;
}

async function start(): Promise<void> {
  const options = readOptions();
  if (options === null) return console.log(HELP);
  await buildWhereChanged(options.rebuild);
  // A verdict that the command line cannot give is said there, in its own words, and is no reason to withhold the page.
  spawnSync(process.execPath, ["dist/duskline.js", "trace", EXAMPLE], { stdio: "inherit" });
  const { preview } = await import("vite");
  const { port, host, open } = options;
  const server = await preview({
    logLevel: "error",
    preview: {
      ...(host === undefined ? {} : { host }),
      ...(port === undefined ? {} : { port, strictPort: true }),
      open,
    },
  });
  const { local = [], network = [] } = server.resolvedUrls ?? {};
  console.log(`\nThe explorer is at ${[...local, ...network].join(" and ")}  (Ctrl-C stops it)`);
  for (const signal of ["SIGINT", "SIGTERM"] as const) {
    process.on(signal, () => void server.close().then(() => process.exit(0)));
  }
}

/** @returns null where help is asked for; @throws Error in a sentence */
function readOptions() {
  const { values } = parseArgs({
    options: {
      port: { type: "string" },
      host: { type: "string" },
      "no-open": { type: "boolean" },
      rebuild: { type: "boolean" },
      help: { type: "boolean" },
    },
  });
  if (values.help === true) return null;
  const port = values.port === undefined ? undefined : Number(values.port);
  if (port !== undefined && !(Number.isInteger(port) && port >= 1 && port <= 65_535)) {
    throw new Error(`--port is "${values.port}" but must be a whole number from 1 to 65535, such as 8080.`);
  }
  const open = values["no-open"] !== true && hasBrowser();
  return { port, host: values.host, open, rebuild: values.rebuild === true };
}

/** Whether somebody sits at this machine: a browser that opens on a server helps nobody. */
function hasBrowser(): boolean {
  if (process.env.CI !== undefined || !process.stdout.isTTY) return false;
  return process.platform !== "linux" || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}

async function buildWhereChanged(isAsked: boolean): Promise<void> {
  const now = sourcesFingerprint();
  const before = existsSync(RECORD) ? readFileSync(RECORD, "utf8") : "";
  if (!isAsked && before === now && BUILT.every((file) => existsSync(file))) return;
  console.log("Building the explorer and the command line: some ten seconds, and only when something has changed …");
  const { build } = await import("vite");
  await build({ logLevel: "error" });
  await build({ configFile: "vite.node.config.ts", logLevel: "error" });
  mkdirSync(".cache", { recursive: true });
  writeFileSync(RECORD, now);
}
