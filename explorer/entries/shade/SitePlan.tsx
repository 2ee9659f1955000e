import { createMemo, createUniqueId, For, Show } from "solid-js";
import { makePlanFrame } from "./makePlanFrame.ts";
import { type MoveReports, makePlanHand } from "./makePlanHand.ts";
import { PlacedNames } from "./PlacedNames.tsx";
import { PlanGrid, PlanScale } from "./PlanGrid.tsx";
import { PlanShadow } from "./PlanShadow.tsx";
import { PlanShape } from "./PlanShape.tsx";
import { PlanTools } from "./PlanTools.tsx";
import { planNames } from "./planNames.ts";
import { type Facing, kindWords, type SunPlace } from "./planThing.ts";
import type { PairRoom } from "./shadeRoom.ts";
import { placeWords, type Thing } from "./thing.ts";

/** Lower than this the sun's shadows run off any sheet. */
const LEAST_SUN_DEG = 1;

/** The site from above, north up and to scale; everything on it can be moved by pointer, keys or buttons. */
export function SitePlan(
  props: MoveReports & {
    things: readonly Thing[];
    /** Leaf of trees that shed it and of which nobody says how much is on. */
    seasonShare: number;
    /** Where the sun stands at the chosen hour, and where each group faces then. */
    sun: SunPlace;
    facing: Facing;
    room: PairRoom;
  },
) {
  const clipId = createUniqueId();
  const keys = createMemo(() => props.things.map((thing) => thing.key), [], {
    equals: (a, b) => a.length === b.length && a.every((key, i) => key === b[i]),
  });
  const byKey = createMemo(() => new Map(props.things.map((thing) => [thing.key, thing])));
  /** A thing by its key; it changes only when what it is made of does, so that the others are not drawn again. */
  const follower = (key: string) =>
    createMemo<Thing>((before) => byKey().get(key) ?? before, byKey().get(key)!, {
      equals: (a, b) => madeOf(a) === madeOf(b),
    });
  const plan = makePlanFrame(
    () => props.things,
    () => props.room,
  );
  const hand = makePlanHand(
    plan,
    () => props,
    (key) => byKey().get(key),
  );
  const { drag, letGo, drop } = hand.pointer;
  const { view, lines } = plan;
  const names = createMemo(() => planNames(props.things, view(), props.facing));
  return (
    <div class="site-plan">
      <svg
        class="plan-drawing"
        width={props.room.widthPx + props.room.axisPx}
        height={props.room.heightPx + 26}
        role="application"
        aria-label="Site from above, north up. Tab to a thing, arrow keys move it half a metre, with Shift five."
      >
        <clipPath id={clipId}>
          <rect width={props.room.widthPx} height={props.room.heightPx} />
        </clipPath>
        <g transform={`translate(${props.room.axisPx} 0)`}>
          <rect
            class="plan-ground"
            x="0.5"
            y="0.5"
            width={props.room.widthPx - 1}
            height={props.room.heightPx - 1}
            onPointerDown={(event) => event.pointerType === "mouse" && hand.take(event, null)}
            onPointerMove={drag}
            onPointerUp={letGo}
            onPointerCancel={drop}
          />
          <g clip-path={`url(#${clipId})`}>
            <PlanGrid lines={lines()} view={view()} />
            <Show when={props.sun.elevationDeg >= LEAST_SUN_DEG}>
              <svg aria-hidden="true">
                <For each={keys()}>
                  {(key) => {
                    const thing = follower(key);
                    return <PlanShadow thing={thing()} view={view()} sun={props.sun} />;
                  }}
                </For>
              </svg>
            </Show>
            <For each={keys()}>
              {(key) => {
                const thing = follower(key);
                return (
                  // biome-ignore lint/a11y/useSemanticElements: SVG has no button of its own
                  <g
                    class="thing"
                    classList={{ "thing-chosen": hand.chosenKey() === key }}
                    role="button"
                    tabIndex={0}
                    aria-label={`${thing().name}, ${kindWords(thing())}, ${placeWords(thing())}`}
                    data-key={key}
                    onFocus={() => hand.choose(thing())}
                    onKeyDown={(event) => hand.press(event, thing())}
                    onPointerDown={(event) => hand.take(event, thing())}
                    onPointerMove={drag}
                    onPointerUp={letGo}
                    onPointerCancel={drop}
                  >
                    <PlanShape thing={thing()} view={view()} facing={props.facing} seasonShare={props.seasonShare} />
                  </g>
                );
              }}
            </For>
            <PlacedNames labels={names()} look={({ key }) => (key.startsWith("panels.") ? "name-panels" : undefined)} />
            <svg class="plan-north" aria-hidden="true" x={props.room.widthPx - 18} y="12">
              <path d="M0 34V2M-5 10L0 1L5 10" />
              <text x="-12" y="32" text-anchor="end">
                N
              </text>
            </svg>
          </g>
          <PlanScale lines={lines()} view={view()} hasSide={props.room.axisPx > 0} />
        </g>
      </svg>
      <PlanTools
        plan={plan}
        hand={hand}
        chosen={byKey().get(hand.chosenKey() ?? "") ?? null}
        axisPx={props.room.axisPx}
      />
      <p class="unseen" role="status" aria-live="polite">
        {hand.said()}
      </p>
    </div>
  );
}

const madeOf = (thing: Thing) => ("tree" in thing ? thing.tree : "box" in thing ? thing.box : thing.group);
