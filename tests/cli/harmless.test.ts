import { expect, test } from "vitest";
import { harmless } from "../../engine/cli/harmless.ts";

test("what a terminal obeys is spelled out, and JSON reads it as the same text", () => {
  // ECMA-48: ESC [ 2 J wipes the screen, 0x9B is CSI in one character; UAX 9: U+202E turns what follows round.
  expect(harmless("a\u001b[2Jb\u009b31mc\u202ed\re")).toBe("a\\u001b[2Jb\\u009b31mc\\u202ed\\u000de");
  expect(harmless("Füße\t20 %\n")).toBe("Füße\t20 %\n");
  const name = "a\u007fb\u009bc\u2066d";
  expect(JSON.parse(harmless(JSON.stringify({ name })))).toEqual({ name });
});
