import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { type AddressInfo, createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Driven, type Found, KEYS } from "./driven.ts";
import { installPackages, isRoot, onPath } from "./findProgram.ts";
import { WAIT_MS } from "./waits.ts";

const PROGRAMS = ["WebKitWebDriver", "Xvfb"];
const PACKAGES = ["webkit2gtk-driver", "xvfb"];

/** The engine of phones and tablets, as GTK packages it: on PATH with a screen to draw on, or as root on Debian or Ubuntu the distribution's packages. */
export function findWebKit(): Found {
  const all = () => PROGRAMS.every((name) => onPath([name]) !== undefined);
  if (process.platform === "linux" && (all() || (installPackages("WebKit", PACKAGES) && all())))
    return { start: driveWebKit };
  return {
    why: `${PROGRAMS.join(" and ")} are not both on PATH, and ${PACKAGES.join(" and ")} could not be installed`,
  };
}

/** What an element is called in WebDriver's answers (W3C WebDriver, 12.1 "Elements"). */
const ELEMENT = "element-6066-11e4-a52e-4f735466cecf";

const BROWSER_ARGS = ["--automation", "--enable-write-console-messages-to-stdout=true"];

/** Starts WebKit's small browser on a screen that nobody sees, and drives it over WebDriver (W3C Recommendation, 2018). */
async function driveWebKit(): Promise<Driven> {
  const home = mkdtempSync(join(tmpdir(), "duskline-webkit-"));
  const started: ChildProcess[] = [];
  const start = (program: string, args: string[], env: NodeJS.ProcessEnv = process.env) => {
    const child = spawn(program, args, { env, stdio: ["ignore", "pipe", "ignore"] });
    child.stdout.setEncoding("utf8");
    started.push(child);
    return child.stdout;
  };
  const end = () => {
    for (const child of started.toReversed()) child.kill();
    rmSync(home, { recursive: true, force: true, maxRetries: 5 });
  };
  try {
    // It takes a number that is free, and says which.
    const [display] = (await once(start("Xvfb", ["-displayfd", "1", "-screen", "0", "1440x1000x24"]), "data")) as [
      string,
    ];
    const port = await freePort();
    const said = start("WebKitWebDriver", [`--port=${port}`], {
      ...process.env,
      DISPLAY: `:${display.trim()}`,
      GDK_BACKEND: "x11",
      HOME: home,
      LIBGL_ALWAYS_SOFTWARE: "1",
      // Its sandbox cannot be set up by root.
      ...(isRoot() ? { WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: "1" } : {}),
    });
    const complaints: string[] = [];
    said.on("data", (text: string) => {
      complaints.push(...text.split("\n").filter((line) => /^CONSOLE .*\b(ERROR|WARN)/.test(line)));
    });
    const session = await openSession(`http://127.0.0.1:${port}`);
    return { ...session, complaints, close: () => session.close().finally(end) };
  } catch (error) {
    end();
    throw error;
  }
}

async function openSession(url: string): Promise<Omit<Driven, "complaints">> {
  await answering(`${url}/status`);
  const { sessionId, capabilities } = (await command(url, "POST", "/session", {
    capabilities: { alwaysMatch: { "webkitgtk:browserOptions": { args: BROWSER_ARGS } } },
  })) as { sessionId: string; capabilities: { browserName: string; browserVersion: string } };
  const ask = (method: "GET" | "POST" | "DELETE", path: string, body?: unknown) =>
    command(url, method, `/session/${sessionId}${path}`, body);
  await ask("POST", "/timeouts", { script: WAIT_MS, pageLoad: WAIT_MS, implicit: WAIT_MS });
  const element = async (xpath: string) => {
    const found = await ask("POST", "/element", { using: "xpath", value: xpath });
    return (found as Record<typeof ELEMENT, string>)[ELEMENT];
  };
  const look: Driven["look"] = (at, ...given) =>
    ask("POST", "/execute/sync", { script: `return (${at})(...arguments)`, args: given }) as never;
  const type = async (xpath: string, text: string) => ask("POST", `/element/${await element(xpath)}/value`, { text });
  const press: Driven["press"] = async (...names) => {
    const keys = names.map((name) => (name in KEYS ? KEYS[name as keyof typeof KEYS] : name));
    const actions = [
      ...keys.map((value) => ({ type: "keyDown", value })),
      ...keys.toReversed().map((value) => ({ type: "keyUp", value })),
    ];
    await ask("POST", "/actions", { actions: [{ type: "key", id: "keyboard", actions }] });
  };
  const focus = async (xpath: string) => {
    await element(xpath);
    await look((path) => {
      const found = document.evaluate(path, document, null, XPathResult.FIRST_ORDERED_NODE_TYPE);
      (found.singleNodeValue as HTMLElement).focus();
    }, xpath);
  };
  return {
    name: `WebKit ${capabilities.browserVersion}`,
    goTo: async (to) => void (await ask("POST", "/url", { url: to })),
    look,
    async click(xpath) {
      const id = await element(xpath);
      await atRest(async () => JSON.stringify(await ask("GET", `/element/${id}/rect`)));
      await ask("POST", `/element/${id}/click`, {});
    },
    focus,
    async typeOver(xpath, text) {
      await focus(xpath);
      await press("Control", "a");
      await type(xpath, text);
    },
    press,
    give: async (xpath, path) => void (await type(xpath, path)),
    picture: async () => (await ask("GET", "/screenshot")) as string,
    pdf: null,
    downloads: null,
    close: async () => void (await ask("DELETE", "")),
  };
}

async function command(url: string, method: "GET" | "POST" | "DELETE", path: string, body?: unknown): Promise<unknown> {
  const response = await fetch(url + path, { method, ...(body === undefined ? {} : { body: JSON.stringify(body) }) });
  const { value } = (await response.json()) as { value: { error?: string; message?: string } | null };
  if (!response.ok) throw new Error(`${method} ${path}: ${value?.error}, ${value?.message}`);
  return value;
}

/** Waits until what is looked at is the same twice. */
async function atRest(look: () => Promise<string>): Promise<void> {
  for (let [before, now] = ["", await look()]; now !== before; [before, now] = [now, await look()])
    await new Promise((resolve) => setTimeout(resolve, 50));
}

async function answering(url: string): Promise<void> {
  for (let tries = WAIT_MS / 100; tries > 0; tries--) {
    if (
      await fetch(url).then(
        ({ ok }) => ok,
        () => false,
      )
    )
      return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`nothing answers at ${url}`);
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, "close");
  return port;
}
