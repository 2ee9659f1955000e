import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { HOSTING_FILES } from "../../explorer/hosting/hostingFiles.ts";
import { type DumbServer, dumbServer } from "./dumbServer.ts";
import { answerElsewhere, ELSEWHERE } from "./elsewhere.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { allWorkedOut, plain, settled } from "./openExplorer.ts";

const BUILT = "dist/explorer";
const PATH = "/club/tools/dusk line/".replaceAll(" ", "%20");

let browser: Browser;
let server: DumbServer | undefined;
let folder: string | undefined;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());
afterEach(async () => {
  await server?.stop();
  if (folder !== undefined) rmSync(folder, { recursive: true });
  server = undefined;
  folder = undefined;
});

const serve = async (from = BUILT) => {
  server = await dumbServer(from, decodeURIComponent(PATH));
  return `http://${new URL(server.url).host}${PATH}`;
};

/**
 * What a script of the page itself may not do. It lies beside the page: what a test evaluates there is exempt from the page's policy.
 * Port 9 of 127.0.0.2 stands for somebody else's server.
 */
const PROBE = `
  const outcome = async (work) => {
    try {
      await work();
      return "went through";
    } catch (error) {
      return error.name;
    }
  };
  const worker = (of) =>
    new Promise((resolve, reject) => {
      const made = new Worker(of);
      made.onmessage = resolve;
      made.onerror = () => reject(new Error("stopped"));
    });
  const form = document.createElement("form");
  form.action = "http://127.0.0.2:9/";
  document.body.append(form);
  (async () => ({
    eval: await outcome(() => eval("window.harmed = 'eval'")),
    function: await outcome(() => new Function("window.harmed = 'function'")()),
    fetch: await outcome(() => fetch("http://127.0.0.2:9/")),
    fetchData: await outcome(() => fetch("data:text/plain,x")),
    import: await outcome(() => import("data:text/javascript,window.harmed = 'import'")),
    worker: await outcome(() => worker(URL.createObjectURL(new Blob(["postMessage(1)"])))),
  }))().then((tried) => Object.assign(window, { tried, submit: () => form.submit() }));
`;

async function visit(url: string): Promise<{ context: BrowserContext; page: Page; complaints: string[] }> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, reducedMotion: "reduce" });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  await page.goto(url);
  return { context, page, complaints };
}

test("under a path of a server that knows nothing the page works, is put by, and comes back with the server gone", async () => {
  const url = await serve();
  const { page, complaints, context } = await visit(url);
  await settled(page);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  expect(await page.evaluate(async () => (await navigator.serviceWorker.ready).scope)).toBe(url);
  const beside = server!.asked.filter((asked) => !asked.startsWith(PATH));
  expect(beside).toEqual([]);
  const hidden = server!.asked.filter((asked) => Object.keys(HOSTING_FILES).some((name) => asked.endsWith(name)));
  expect(hidden).toEqual([]);
  const manifest = await page.evaluate(() => document.querySelector<HTMLLinkElement>("link[rel=manifest]")!.href);
  expect(manifest).toBe(`${url}manifest.webmanifest`);

  await server!.stop();
  await expect(fetch(url)).rejects.toThrow();
  await page.reload();
  await settled(page);
  await allWorkedOut(page);
  expect(plain(await page.locator("h1").textContent())).toMatch(/in \d+ of 100 skies/);
  await page.getByText("All kept in this browser").waitFor();
  await page.getByRole("link", { name: "Shelf" }).click();
  await page.getByRole("link", { name: "Autumn weekend in the walnut grove" }).waitFor();
  expect(page.url()).toBe(`${url}?shelf`);
  // The same page by its file's name, as hosts show it that list folders.
  await page.goto(`${url}index.html?new`);
  await page.getByRole("heading", { name: "A new notebook" }).waitFor();
  expect(complaints).toEqual([]);
  await context.close();
});

test("two of them on one host keep out of each other's way", async () => {
  folder = mkdtempSync(join(tmpdir(), "duskline-"));
  for (const name of ["a", "b"]) cpSync(BUILT, join(folder, name), { recursive: true });
  const worker = join(folder, "b", "offlineWorker.js");
  writeFileSync(worker, readFileSync(worker, "utf8").replace(/"version":"[^"]+"/, '"version":"other"'));
  server = await dumbServer(folder, "/");
  const { page, context } = await visit(`${server.url}a/index.html?shelf`);
  const controlled = () => page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await controlled();
  await page.goto(`${server.url}b/index.html?shelf`);
  await controlled();
  const shelves = await page.evaluate(async () => {
    const names = (await caches.keys()).sort();
    return Promise.all(
      names.map(async (name) => [name, (await (await caches.open(name)).keys()).map(({ url }) => url)]),
    );
  });
  expect(shelves.map(([name]) => (name as string).split(" ")[1])).toEqual(["/a/", "/b/"]);
  for (const [name, urls] of shelves as [string, string[]][]) {
    const path = name.split(" ")[1]!;
    expect(urls.length).toBeGreaterThan(50);
    expect(urls.filter((url) => !new URL(url).pathname.startsWith(path))).toEqual([]);
  }
  await context.close();
});

test("without any header the page's own policy stops what was written into it, code made from text, and everything foreign", async () => {
  folder = mkdtempSync(join(tmpdir(), "duskline-"));
  cpSync(BUILT, folder, { recursive: true });
  const place = join(folder, "index.html");
  const written = [
    "<script>window.harmed = 'inline script'</script>",
    `<script src="http://127.0.0.2:9/foreign.js"></script>`,
    `<img src="data:image/png;base64,AAAA" onerror="window.harmed = 'inline handler'">`,
    `<img src="http://127.0.0.2:9/foreign.png">`,
    `<link rel="stylesheet" href="http://127.0.0.2:9/foreign.css">`,
    "<style>body { outline: 7px solid }</style>",
    `<iframe src="http://127.0.0.2:9/"></iframe>`,
    `<object data="http://127.0.0.2:9/"></object>`,
    `<script defer src="probe.js"></script>`,
    `<base href="http://127.0.0.2:9/">`,
  ];
  writeFileSync(join(folder, "probe.js"), PROBE);
  const html = readFileSync(place, "utf8");
  expect(html.indexOf("Content-Security-Policy")).toBeLessThan(html.indexOf("<script"));
  writeFileSync(place, html.replace("</body>", `${written.join("\n")}</body>`));
  const url = await serve(folder);
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.addInitScript(() => {
    const stopped: string[] = [];
    Object.assign(window, { stopped });
    addEventListener("securitypolicyviolation", ({ effectiveDirective }) => stopped.push(effectiveDirective));
  });
  const foreign: string[] = [];
  page.on("response", (response) => {
    if (!response.url().startsWith(url)) foreign.push(response.url());
  });
  await page.goto(`${url}?shelf`);
  await page.getByRole("heading", { name: "Notebooks on this shelf" }).waitFor();
  await page.waitForFunction(() => "tried" in window);
  // The browser tells of a navigation that then never comes, and whatever waits for the page waits for that: so it is the last thing.
  await page.evaluate(() => (window as unknown as { submit(): void }).submit());
  const tried = await page.evaluate(() => (window as unknown as { tried: Record<string, string> }).tried);
  expect(tried).toMatchObject({ eval: "EvalError", function: "EvalError", import: "TypeError", worker: "Error" });
  expect(tried).toMatchObject({ fetch: "TypeError", fetchData: "TypeError" });
  const stopped = () => page.evaluate(() => [...new Set((window as unknown as { stopped: string[] }).stopped)].sort());
  const directives = ["base-uri", "connect-src", "form-action", "frame-src", "img-src", "object-src", "script-src"];
  await expect
    .poll(stopped)
    .toEqual(
      expect.arrayContaining([...directives, "script-src-attr", "script-src-elem", "style-src-elem", "worker-src"]),
    );
  expect(await page.evaluate(() => (window as { harmed?: string }).harmed)).toBeUndefined();
  expect(await page.evaluate(() => getComputedStyle(document.body).outlineWidth)).not.toBe("7px");
  expect(foreign).toEqual([]);
  expect(page.url()).toBe(`${url}?shelf`);
  await context.close();
});

test("put into a frame of another page it shows nothing but a way to itself", async () => {
  const url = await serve();
  const page = await (await browser.newContext()).newPage();
  await page.setContent(`<iframe src="${url}?shelf" width="800" height="600"></iframe>`);
  const framed = page.frameLocator("iframe");
  await framed.getByRole("heading", { name: "duskline does not open inside another page." }).waitFor();
  expect(await framed.getByRole("link", { name: "Open it by itself" }).getAttribute("target")).toBe("_blank");
  expect(await framed.getByRole("button").count()).toBe(0);
  await page.context().close();
});

test("opened straight from its folder the page says why it does not start, and on a server it does not", async () => {
  const page = await (await browser.newContext()).newPage();
  const reason = page.getByText("Opened straight from a folder, this page does not start");
  await page.goto(pathToFileURL(join(BUILT, "index.html")).href);
  expect(await reason.isVisible()).toBe(true);
  await page.goto(await serve());
  await settled(page);
  expect(await reason.isVisible()).toBe(false);
  await page.context().close();
});

test("over plain http to another machine, where browsers hold much back, a notebook is kept all the same", async () => {
  const url = ELSEWHERE;
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  await answerElsewhere(context);
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  await page.goto(url);
  await settled(page);
  const held = () => [isSecureContext, "serviceWorker" in navigator, "clipboard" in navigator, "storage" in navigator];
  expect(await page.evaluate(held)).toEqual([false, false, false, false]);
  await page.getByText("All kept in this browser").waitFor();
  await page.getByLabel("Title of the notebook").fill("In the meadow");
  await page.getByLabel("Title of the notebook").press("Enter");
  await page.getByText("All kept in this browser").waitFor();
  await page.getByRole("button", { name: "Share link" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Copy" }).click();
  await page.getByText("so press Ctrl+C").waitFor();
  await page.goto(`${url}?shelf`);
  await page.getByRole("link", { name: "In the meadow" }).waitFor();
  expect(complaints).toEqual([]);
  await context.close();
});
