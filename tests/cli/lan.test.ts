import { spawnSync } from "node:child_process";
import { isIPv4 } from "node:net";
import type { NetworkInterfaceInfo } from "node:os";
import { stripVTControlCharacters } from "node:util";
import jsQR from "jsqr";
import { expect, test } from "vitest";
import { lanAddresses } from "../../engine/cli/lanAddresses.ts";
import { lanWords } from "../../engine/cli/lanWords.ts";
import { terminalQr } from "../../engine/cli/terminalQr.ts";

const URL_OF_LAPTOP = "http://192.168.178.24:4173/";

const at = (address: string, internal = false): NetworkInterfaceInfo =>
  ({ address, internal, family: isIPv4(address) ? "IPv4" : "IPv6" }) as NetworkInterfaceInfo;

/** What stands in a terminal as a picture: each letter 4 × 8 dots, drawn parts in one shade and the ground in the other. */
function photographed(text: string, drawn: number, ground: number) {
  const lines = stripVTControlCharacters(text).split("\n");
  const [width, height] = [Math.max(...lines.map((line) => line.length)) * 4, lines.length * 8];
  const dots = new Uint8ClampedArray(width * height * 4);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const letter = lines[Math.floor(y / 8)]![Math.floor(x / 4)];
      const isUpper = y % 8 < 4;
      const isDrawn = letter === "█" || letter === (isUpper ? "▀" : "▄");
      dots.fill(isDrawn ? drawn : ground, (y * width + x) * 4, (y * width + x) * 4 + 3);
      dots[(y * width + x) * 4 + 3] = 255;
    }
  }
  return { dots, width, height };
}

/** What jsQR, a reader that shares nothing with the writer, makes of it; codes in the wrong shades are not tried for. */
function read(text: string, drawn: number, ground: number): string | undefined {
  const { dots, width, height } = photographed(text, drawn, ground);
  return jsQR(dots, width, height, { inversionAttempts: "dontInvert" })?.data;
}

test("the code in the terminal is read by another program, white on black as it is drawn", () => {
  expect(read(terminalQr(URL_OF_LAPTOP, false), 255, 0)).toBe(URL_OF_LAPTOP);
  expect(read(terminalQr(URL_OF_LAPTOP, true), 255, 0)).toBe(URL_OF_LAPTOP);
  // On a light terminal without colours the shades change places, which some readers refuse: so colours are set where they can be.
  expect(read(terminalQr(URL_OF_LAPTOP, false), 0, 255)).toBeUndefined();
  expect(
    terminalQr(URL_OF_LAPTOP, true)
      .split("\n")
      .every((line) => line.startsWith("\x1b[97;40m")),
  ).toBe(true);
});

test("four light modules stand round the code", () => {
  const lines = terminalQr(URL_OF_LAPTOP, false).split("\n");
  for (const line of lines.slice(0, -1)) expect(line).toMatch(/^████.*████$/);
  expect(lines[0]).toMatch(/^█+$/);
  expect(lines[1]).toMatch(/^█+$/);
});

test("addresses are those that a phone on the same network can open, what programs made for themselves last", () => {
  const interfaces = {
    lo: [at("127.0.0.1", true), at("::1", true)],
    docker0: [at("172.17.0.1")],
    wlan0: [at("192.168.178.24"), at("fe80::1")],
    eth1: [at("169.254.3.4")],
    usb0: [at("172.20.10.3")],
    gone: undefined,
  };
  expect(lanAddresses(interfaces)).toEqual(["192.168.178.24", "172.20.10.3", "172.17.0.1"]);
  expect(lanAddresses({ lo: [at("127.0.0.1", true)] })).toEqual([]);
});

test("what is said holds every address, the first as a code, and what plain http does not give", () => {
  const said = lanWords([URL_OF_LAPTOP, "http://10.0.0.5:4173/"], false);
  expect(said).toContain(`${URL_OF_LAPTOP} or http://10.0.0.5:4173/`);
  const code = said.split("\n").filter((line) => /^[█▀▄ ]+$/.test(line) && line.trim() !== "");
  expect(read(code.join("\n"), 255, 0)).toBe(URL_OF_LAPTOP);
  for (const lacking of ["without this machine", "installed", "when room gets short", "copied by hand"]) {
    expect(said).toContain(lacking);
  }
});

test("--lan and --host together are refused in a sentence", () => {
  const { stderr, status } = spawnSync(
    process.execPath,
    ["--import", "tsx", "engine/cli/start.ts", "--lan", "--host", "10.0.0.5"],
    { encoding: "utf8" },
  );
  expect(stderr).toBe("--lan serves on every address of this machine; leave --host out, or --lan.\n");
  expect(status).toBe(2);
});
