import { createSignal } from "solid-js";
import type { PlanPoint } from "../../../engine/answers/shade/boxFootprint.ts";
import type { ShownPlan } from "./makePlanFrame.ts";
import { type Move, moveWords, onSite, placeWords, type Thing } from "./thing.ts";

/** How far an arrow key moves a thing, and with Shift. */
export const STEP_M = 0.5;
const STRIDE_M = 5;
/** A hand that only taps trembles by a pixel or two. */
const TREMBLE_PX = 3;

/** What is told of a thing that is moved. */
export interface MoveReports {
  /** A thing is on its way. */
  readonly onMove: (move: Move) => void;
  /** It has arrived for now: by a key (more may follow) or by letting go. */
  readonly onRest: (how: "key" | "drop") => void;
  readonly onCancel: () => void;
}

interface Grab {
  readonly pointer: number;
  readonly x: number;
  readonly y: number;
  readonly from: PlanPoint;
  /** Null for the ground. */
  readonly thing: Thing | null;
  moved: boolean;
}

/** Moves things by pointer, keys and buttons, and the ground by pointer; `said` is what became of it. */
export function makePlanHand(plan: ShownPlan, reports: () => MoveReports, thingOf: (key: string) => Thing | undefined) {
  const [chosenKey, setChosenKey] = createSignal<string | null>(null);
  const [said, setSaid] = createSignal("");
  let grab: Grab | null = null;

  const say = (thing: Thing, from: PlanPoint, to: PlanPoint) =>
    setSaid(`${thing.name}: ${moveWords(from, to)}, now ${placeWords(to)}`);

  function go(thing: Thing, { eastM, northM }: PlanPoint): PlanPoint {
    const to = { eastM: onSite(eastM), northM: onSite(northM) };
    reports().onMove({ key: thing.key, ...to });
    return to;
  }

  function nudge(thing: Thing, east: number, north: number): void {
    const to = go(thing, { eastM: thing.eastM + east, northM: thing.northM + north });
    say(thing, thing, to);
    plan.follow(to);
    reports().onRest("key");
  }

  function press(event: KeyboardEvent, thing: Thing): void {
    const ways: Record<string, [number, number]> = {
      ArrowLeft: [-1, 0],
      ArrowRight: [1, 0],
      ArrowUp: [0, 1],
      ArrowDown: [0, -1],
    };
    const way = ways[event.key];
    if (event.key === "Escape") reports().onCancel();
    if (way === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    const far = event.shiftKey ? STRIDE_M : STEP_M;
    nudge(thing, way[0] * far, way[1] * far);
  }

  function take(event: PointerEvent & { currentTarget: Element }, thing: Thing | null): void {
    if (event.button !== 0) return;
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    const from = thing ?? plan.shown();
    if (thing !== null) setChosenKey(thing.key);
    grab = { pointer: event.pointerId, x: event.clientX, y: event.clientY, from, thing, moved: false };
  }

  function drag(event: PointerEvent): void {
    if (grab === null || grab.pointer !== event.pointerId) return;
    event.stopPropagation();
    const [right, down] = [event.clientX - grab.x, event.clientY - grab.y];
    if (!grab.moved && Math.hypot(right, down) < TREMBLE_PX) return;
    grab.moved = true;
    const { thing, from } = grab;
    const { pxPerM } = plan.view();
    const [east, north] = [right / pxPerM, -down / pxPerM];
    if (thing !== null) go(thing, { eastM: from.eastM + east, northM: from.northM + north });
    else plan.centre({ eastM: from.eastM - east, northM: from.northM - north });
  }

  function letGo(event: PointerEvent): void {
    if (grab === null || grab.pointer !== event.pointerId) return;
    const { thing, from, moved } = grab;
    grab = null;
    if (thing === null || !moved) return;
    const now = thingOf(thing.key);
    if (now !== undefined) say(thing, from, now);
    reports().onRest("drop");
  }

  function drop(): void {
    if (grab?.thing) reports().onCancel();
    grab = null;
  }

  /** The keyboard's focus has come to a thing, or a pointer's. */
  function choose(thing: Thing): void {
    setChosenKey(thing.key);
    if (grab === null) plan.follow(thing);
  }

  return { chosenKey, said, nudge, press, choose, take, pointer: { drag, letGo, drop } };
}

export type PlanHand = ReturnType<typeof makePlanHand>;
