/** `npm start`: builds what has changed, prints the example's verdict, and serves the explorer: to this machine only, or to its network when asked. */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { networkInterfaces } from "node:os";
import { parseArgs } from "node:util";
import { lanAddresses } from "./lanAddresses.ts";
import { lanWords } from "./lanWords.ts";
import { sourcesFingerprint } from "./sourcesFingerprint.ts";

const EXAMPLE = "scenarios/walnut-grove.json";
const BUILT = ["dist/explorer/index.html", "dist/duskline.js", "dist/index.js"];
/** What the last build was made from. */
const RECORD = ".cache/built-from";

const HELP = `npm start -- [--port N] [--lan | --host ADDRESS] [--no-open] [--rebuild]

  --port N        serve on this port (4173 when left out)
  --lan           serve to the local network too, and draw the address as a QR code
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
  const addresses = options.isLan ? lanAddresses(networkInterfaces()) : [];
  if (options.isLan && addresses.length === 0) {
    throw new Error("--lan: this machine is on no network; join one (a phone's hot spot will do) and start again.");
  }
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
  console.log(`\nThe explorer is at ${[...local, ...(options.isLan ? [] : network)].join(" and ")}  (Ctrl-C stops it)`);
  const [first, ...others] = addresses.map((address) => `http://${address}:${new URL(local[0]!).port}/`);
  if (first !== undefined) console.log(`\n${lanWords([first, ...others], process.stdout.hasColors?.() ?? false)}`);
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
      lan: { type: "boolean" },
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
  const isLan = values.lan === true;
  if (isLan && values.host !== undefined) {
    throw new Error("--lan serves on every address of this machine; leave --host out, or --lan.");
  }
  const open = values["no-open"] !== true && hasBrowser();
  return { port, host: isLan ? "0.0.0.0" : values.host, isLan, open, rebuild: values.rebuild === true };
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
