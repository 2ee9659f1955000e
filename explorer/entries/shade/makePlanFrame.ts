import { createMemo, createSignal } from "solid-js";
import type { PlanPoint } from "../../../engine/answers/shade/boxFootprint.ts";
import { gridLines, isInView, type PlanFrame, planView, wholeSite, zoomed } from "./planView.ts";
import type { PairRoom } from "./shadeRoom.ts";
import type { Thing } from "./thing.ts";

/** What part of the site the plan shows: the whole until somebody zooms or pulls the ground. */
export function makePlanFrame(things: () => readonly Thing[], room: () => PairRoom) {
  const [frame, setFrame] = createSignal<PlanFrame | null>(null);
  // The frame stays while things move, or the ground would run away under the pointer.
  const [bounds, setBounds] = createSignal(things());
  const shown = createMemo(() => frame() ?? wholeSite(bounds(), room().widthPx, room().heightPx));
  const view = createMemo(() => planView(shown(), room().widthPx, room().heightPx));
  return {
    shown,
    view,
    lines: createMemo(() => gridLines(shown(), view())),
    zoom: (times: number) => setFrame(zoomed(shown(), times)),
    showAll(): void {
      setBounds(things());
      setFrame(null);
    },
    centre: ({ eastM, northM }: PlanPoint) => setFrame({ ...shown(), eastM, northM }),
    /** Brings a point into view that has left it. */
    follow({ eastM, northM }: PlanPoint): void {
      if (!isInView(view(), { eastM, northM })) setFrame({ ...shown(), eastM, northM });
    },
  };
}

export type ShownPlan = ReturnType<typeof makePlanFrame>;
