import { createComputed, createRoot } from "solid-js";
import { expect, test } from "vitest";
import type { Want } from "../../engine/answers/asked.ts";
import type { Answer, Desk, Orders, Report } from "../../explorer/results/desk.ts";
import { makeResults } from "../../explorer/results/makeResults.ts";
import { EXAMPLE } from "./exampleRun.ts";

const want = (key: string): Want => ({
  key,
  kind: "forecast",
  documents: [EXAMPLE],
  choices: {},
  seed: "1",
  members: 1000,
});
const picture = (name: string): Answer => ({ ok: true, picture: { name } });

function workbench() {
  const posted: Orders[] = [];
  const desk: Desk = { postMessage: (orders) => posted.push(orders), onmessage: null, onerror: null };
  const results = createRoot(() => makeResults(desk));
  const say = (data: Report) => desk.onmessage!({ data: [data] } as unknown as MessageEvent<Report[]>);
  const asked = () => posted.at(-1)!.wants.map(({ key }) => key);
  return { posted, results, say, asked, desk };
}

test("only what is missing is asked for, and what is known by its content is not asked for again", () => {
  const { results, say, asked, posted } = workbench();
  results.want([want("a"), want("b")]);
  expect(asked()).toEqual(["a", "b"]);
  say({ say: "answer", key: "a", answer: picture("a"), whole: true });
  results.want([want("a"), want("c")]);
  expect(asked()).toEqual(["c"]);
  say({ say: "answer", key: "c", answer: picture("c"), whole: true });
  say({ say: "idle", round: posted.at(-1)!.round });
  const rounds = posted.length;
  results.want([want("a")]);
  expect(posted).toHaveLength(rounds);
  expect(results.isIdle()).toBe(true);
});

test("the last good result stays, stale, until a coarse one and then the whole one arrive", () => {
  const { results, say } = workbench();
  results.want([want("old")]);
  say({ say: "answer", key: "old", answer: picture("old"), whole: true });
  expect(results.find("slot", "old")).toMatchObject({ result: { name: "old" }, stale: false, progress: null });
  results.want([want("new")]);
  expect(results.find("slot", "new")).toMatchObject({ result: { name: "old" }, stale: true });
  say({ say: "progress", key: "new", done: 50, of: 1000 });
  expect(results.find("slot", "new").progress).toEqual({ done: 50, of: 1000 });
  say({ say: "answer", key: "new", answer: picture("coarse"), whole: false });
  expect(results.find("slot", "new")).toMatchObject({ result: { name: "coarse" }, stale: false });
  expect(results.find("slot", "new").progress).not.toBeNull();
  say({ say: "answer", key: "new", answer: picture("whole"), whole: true });
  expect(results.find("slot", "new")).toMatchObject({ result: { name: "whole" }, progress: null });
});

test("problems stand beside the last good result; stopping drops the work and going on takes it up", () => {
  const { results, say, asked } = workbench();
  results.want([want("good")]);
  say({ say: "answer", key: "good", answer: picture("good"), whole: true });
  results.find("slot", "good");
  results.want([want("bad"), want("later")]);
  const problems = [{ code: "x", path: [], message: "Wrong." }];
  say({ say: "answer", key: "bad", answer: { ok: false, problems }, whole: true });
  expect(results.find("slot", "bad")).toMatchObject({ result: { name: "good" }, stale: true, problems });
  results.stop();
  expect(asked()).toEqual([]);
  expect(results.isIdle()).toBe(true);
  expect(results.isStopped()).toBe(true);
  results.goOn();
  expect(results.isStopped()).toBe(false);
  expect(asked()).toEqual(["later"]);
});

test("a desk that stops is said in a sentence", () => {
  const { results, desk } = workbench();
  results.want([want("a")]);
  desk.onerror!({ message: "out of memory" } as ErrorEvent);
  expect(results.find("slot", "a").problems[0]!.message).toMatch(/has stopped \(out of memory\)/);
});

test("what is said at one time is taken in at once, in its order, and worked out again once", () => {
  const { results, desk } = workbench();
  results.want([want("a"), want("b")]);
  let runs = 0;
  createRoot(() =>
    createComputed(() => {
      results.find("slot", "a").result;
      results.find("other", "b").result;
      runs++;
    }),
  );
  const data: Report[] = [
    { say: "answer", key: "a", answer: picture("coarse"), whole: false },
    { say: "answer", key: "b", answer: picture("b"), whole: true },
    { say: "answer", key: "a", answer: picture("a"), whole: true },
    { say: "idle", round: 1 },
  ];
  desk.onmessage!({ data } as unknown as MessageEvent<Report[]>);
  expect(results.known("a")).toMatchObject({ name: "a" });
  expect(results.known("b")).toMatchObject({ name: "b" });
  expect(results.isIdle()).toBe(true);
  expect(runs).toBe(2);
});

test("what reads a result is not worked out again by every word of progress; what shows progress is", () => {
  const { results, say } = workbench();
  results.want([want("a")]);
  say({ say: "answer", key: "a", answer: picture("a"), whole: false });
  const runs = { result: 0, progress: 0 };
  createRoot(() => {
    createComputed(() => {
      results.find("slot", "a").result;
      runs.result++;
    });
    createComputed(() => {
      results.find("slot", "a").progress;
      runs.progress++;
    });
  });
  for (const done of [100, 200, 300]) say({ say: "progress", key: "a", done, of: 1000 });
  expect(runs).toEqual({ result: 1, progress: 4 });
  say({ say: "answer", key: "a", answer: picture("b"), whole: true });
  expect(runs).toEqual({ result: 2, progress: 5 });
});
