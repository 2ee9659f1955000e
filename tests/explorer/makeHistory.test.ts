import { expect, test } from "vitest";
import { makeHistory } from "../../explorer/notebook/makeHistory.ts";

function history() {
  const clock = { ms: 0 };
  return { clock, it: makeHistory("a", () => clock.ms) };
}

test("keys typed into one field are one step; a pause or another field starts the next", () => {
  const { clock, it } = history();
  it.edit("name", "ab");
  clock.ms = 500;
  it.edit("name", "abc");
  clock.ms = 5000;
  it.edit("name", "abcd");
  it.edit("other", "x");
  const seen: string[] = [];
  while (it.canUndo()) {
    it.undo();
    seen.push(it.now());
  }
  expect(seen).toEqual(["abcd", "abc", "a"]);
});

test("redo brings back what undo took, until something new is written", () => {
  const { it } = history();
  it.edit("name", "b");
  it.undo();
  expect(it.before()).toBe("b");
  it.redo();
  expect(it.now()).toBe("b");
  it.undo();
  it.edit("name", "c");
  expect(it.canRedo()).toBe(false);
  it.redo();
  expect(it.now()).toBe("c");
});

test("leaving a field ends its step", () => {
  const { it } = history();
  it.edit("name", "b");
  it.settle();
  it.edit("name", "c");
  it.undo();
  expect(it.now()).toBe("b");
});
