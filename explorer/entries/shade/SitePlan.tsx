import { createMemo, createSignal, createUniqueId, For, Index, Show } from "solid-js";
import type { PanelGroup } from "../../../engine/scenario/panelGroup.ts";
import { displayUnit, inUnits, toDisplay } from "../../../engine/words/displayUnits.ts";
import { figure } from "../../../engine/words/numbers.ts";
import { boxFootprint, type PlanPoint } from "./boxFootprint.ts";
import { boxShadow, crownShadow, shadowOf } from "./groundShadow.ts";
import { leafLook } from "./leafLook.ts";
import { moduleFootprints } from "./moduleFootprints.ts";
import { placeLabels } from "./placeLabels.ts";
import {
  gridLines,
  isInView,
  type PlanFrame,
  type PlanView,
  planView,
  reachOf,
  viewBox,
  wholeSite,
  zoomed,
} from "./planView.ts";
import { type Move, moveWords, onSite, placeWords, type Thing } from "./thing.ts";

/** Lower than this the sun's shadows run off any sheet. */
const LEAST_SUN_DEG = 1;
const STEP_M = 0.5;
const STRIDE_M = 5;

interface SitePlanProps {
  /** Leaf of trees that shed it and of which nobody says how much is on. */
  readonly seasonShare: number;
  readonly things: readonly Thing[];
  /** Where the sun stands at the chosen hour. */
  readonly sun: { readonly azimuthDeg: number; readonly elevationDeg: number };
  /** Where each group faces at that hour. */
  readonly facing: (groupId: string) => { readonly tiltDeg: number; readonly azimuthDeg: number };
  readonly widthPx: number;
  readonly heightPx: number;
  readonly axisPx: number;
  /** A thing is on its way. */
  readonly onMove: (move: Move) => void;
  /** It has arrived for now: by a key (more may follow) or by letting go. */
  readonly onRest: (how: "key" | "drop") => void;
  readonly onCancel: () => void;
}

const xy = (view: PlanView, points: readonly PlanPoint[]) =>
  points.map((point) => `${view.x(point.eastM).toFixed(1)},${view.y(point.northM).toFixed(1)}`).join(" ");

/** The site from above, north up and to scale; everything on it can be moved by pointer, keys or buttons. */
export function SitePlan(props: SitePlanProps) {
  const clipId = createUniqueId();
  const [frame, setFrame] = createSignal<PlanFrame | null>(null);
  const [chosenKey, setChosenKey] = createSignal<string | null>(null);
  const [said, setSaid] = createSignal("");
  // The frame stays while things move, or the ground would run away under the pointer.
  const [bounds, setBounds] = createSignal(props.things);
  const shown = createMemo(() => frame() ?? wholeSite(bounds(), props.widthPx, props.heightPx));
  const view = createMemo(() => planView(shown(), props.widthPx, props.heightPx));
  const keys = createMemo(() => props.things.map((thing) => thing.key), [], {
    equals: (a, b) => a.length === b.length && a.every((key, i) => key === b[i]),
  });
  const byKey = createMemo(() => new Map(props.things.map((thing) => [thing.key, thing])));
  /** A thing by its key; it changes only when what it is made of does, so that the others are not drawn again. */
  const follower = (key: string) =>
    createMemo<Thing>((before) => byKey().get(key) ?? before, byKey().get(key)!, {
      equals: (a, b) => madeOf(a) === madeOf(b),
    });
  const lines = createMemo(() => gridLines(shown(), view()));
  const chosen = () => byKey().get(chosenKey() ?? "") ?? null;

  function go(thing: Thing, eastM: number, northM: number): void {
    props.onMove({ key: thing.key, eastM: onSite(eastM), northM: onSite(northM) });
  }

  function nudge(thing: Thing, east: number, north: number): void {
    const to = { eastM: onSite(thing.eastM + east), northM: onSite(thing.northM + north) };
    go(thing, to.eastM, to.northM);
    setSaid(`${thing.name}: ${moveWords(thing, to)}, now ${placeWords(to)}`);
    follow(to);
    props.onRest("key");
  }

  function follow(at: PlanPoint): void {
    if (!isInView(view(), at)) setFrame({ ...shown(), eastM: at.eastM, northM: at.northM });
  }

  function press(event: KeyboardEvent, thing: Thing): void {
    const ways: Record<string, [number, number]> = {
      ArrowLeft: [-1, 0],
      ArrowRight: [1, 0],
      ArrowUp: [0, 1],
      ArrowDown: [0, -1],
    };
    const way = ways[event.key];
    if (event.key === "Escape") props.onCancel();
    if (way === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    const far = event.shiftKey ? STRIDE_M : STEP_M;
    nudge(thing, way[0] * far, way[1] * far);
  }

  let grab: { pointer: number; x: number; y: number; from: PlanPoint; thing: Thing | null; moved: boolean } | null =
    null;

  function take(event: PointerEvent & { currentTarget: Element }, thing: Thing | null): void {
    if (event.button !== 0) return;
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    const from = thing ?? shown();
    if (thing !== null) setChosenKey(thing.key);
    grab = { pointer: event.pointerId, x: event.clientX, y: event.clientY, from, thing, moved: false };
  }

  function drag(event: PointerEvent): void {
    if (grab === null || grab.pointer !== event.pointerId) return;
    event.stopPropagation();
    const east = (event.clientX - grab.x) / view().pxPerM;
    const north = (grab.y - event.clientY) / view().pxPerM;
    // A hand that only taps trembles by a pixel or two.
    if (!grab.moved && Math.hypot(event.clientX - grab.x, event.clientY - grab.y) < 3) return;
    grab.moved = true;
    if (grab.thing !== null) go(grab.thing, grab.from.eastM + east, grab.from.northM + north);
    else setFrame({ ...shown(), eastM: grab.from.eastM - east, northM: grab.from.northM - north });
  }

  function letGo(event: PointerEvent): void {
    if (grab === null || grab.pointer !== event.pointerId) return;
    const { thing, from, moved } = grab;
    grab = null;
    if (thing === null || !moved) return;
    const now = byKey().get(thing.key);
    if (now !== undefined) setSaid(`${thing.name}: ${moveWords(from, now)}, now ${placeWords(now)}`);
    props.onRest("drop");
  }

  function drop(): void {
    if (grab?.thing) props.onCancel();
    grab = null;
  }

  const labels = createMemo(() => {
    const v = view();
    const names = props.things
      .filter((thing) => isInView(v, thing))
      .map((thing) => ({
        key: thing.key,
        text: "tree" in thing ? `${thing.name} ${inUnits(thing.tree.heightM, "m")}` : thing.name,
        short: thing.name,
        best: "beside" as const,
        x: v.x(thing.eastM),
        y: v.y(thing.northM),
        clearPx: "group" in thing ? reachOf(thing) * v.pxPerM * 0.8 + 6 : 9,
      }));
    // Panels first: they are what the page is about.
    names.reverse();
    const corner = { left: v.widthPx - 48, right: v.widthPx, top: 0, bottom: 56 };
    const spots = names.map(({ x, y }) => ({ left: x - 5, right: x + 5, top: y - 5, bottom: y + 5 }));
    const modules = props.things.flatMap((thing) => {
      if (!("group" in thing)) return [];
      const half = Math.max(5, reachOf(thing) * v.pxPerM * 0.7);
      const [x, y] = [v.x(thing.eastM), v.y(thing.northM)];
      const arrow = arrowPx(thing.group, v);
      const turn = (props.facing(thing.group.id).azimuthDeg * Math.PI) / 180;
      const [tipX, tipY] = [x + Math.sin(turn) * (arrow + 8), y - Math.cos(turn) * (arrow + 8)];
      return [
        { left: x - half, right: x + half, top: y - half, bottom: y + half },
        { left: tipX - 8, right: tipX + 8, top: tipY - 8, bottom: tipY + 8 },
      ];
    });
    const placed = placeLabels(names, viewBox(v), [corner, ...spots, ...modules]);
    return names.flatMap(({ key }, i) => (placed[i] ? [{ key, ...placed[i]! }] : []));
  });

  return (
    <div class="site-plan">
      <svg
        class="plan-drawing"
        width={props.widthPx + props.axisPx}
        height={props.heightPx + 26}
        role="application"
        aria-label="Site from above, north up. Tab to a thing, arrow keys move it half a metre, with Shift five."
      >
        <clipPath id={clipId}>
          <rect width={props.widthPx} height={props.heightPx} />
        </clipPath>
        <g transform={`translate(${props.axisPx} 0)`}>
          <rect
            class="plan-ground"
            x="0.5"
            y="0.5"
            width={props.widthPx - 1}
            height={props.heightPx - 1}
            onPointerDown={(event) => event.pointerType === "mouse" && take(event, null)}
            onPointerMove={drag}
            onPointerUp={letGo}
            onPointerCancel={drop}
          />
          <g clip-path={`url(#${clipId})`}>
            <svg class="plan-grid" aria-hidden="true">
              <For each={lines().eastM}>
                {(eastM) => <line x1={view().x(eastM)} x2={view().x(eastM)} y2={props.heightPx} />}
              </For>
              <For each={lines().northM}>
                {(northM) => <line y1={view().y(northM)} y2={view().y(northM)} x2={props.widthPx} />}
              </For>
            </svg>
            <Show when={props.sun.elevationDeg >= LEAST_SUN_DEG}>
              <svg aria-hidden="true">
                <For each={keys()}>
                  {(key) => {
                    const thing = follower(key);
                    return <GroundShadow thing={thing()} view={view()} sun={props.sun} />;
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
                    classList={{ "thing-chosen": chosenKey() === key }}
                    role="button"
                    tabIndex={0}
                    aria-label={`${thing().name}, ${kindWords(thing())}, ${placeWords(thing())}`}
                    data-key={key}
                    onFocus={() => {
                      setChosenKey(key);
                      if (grab === null) follow(thing());
                    }}
                    onKeyDown={(event) => press(event, thing())}
                    onPointerDown={(event) => take(event, thing())}
                    onPointerMove={drag}
                    onPointerUp={letGo}
                    onPointerCancel={drop}
                  >
                    <ThingShape thing={thing()} view={view()} facing={props.facing} seasonShare={props.seasonShare} />
                  </g>
                );
              }}
            </For>
            <svg class="plan-names" aria-hidden="true">
              <Index each={labels()}>{(label) => <path class="name-leader" d={label().leader} />}</Index>
              <Index each={labels()}>
                {(label) => (
                  <text
                    classList={{ "name-panels": label().key.startsWith("panels.") }}
                    x={label().x}
                    y={label().y}
                    text-anchor={label().anchor}
                  >
                    {label().text}
                  </text>
                )}
              </Index>
            </svg>
            <svg class="plan-north" aria-hidden="true" x={props.widthPx - 18} y="12">
              <path d="M0 34V2M-5 10L0 1L5 10" />
              <text x="-12" y="32" text-anchor="end">
                N
              </text>
            </svg>
          </g>
          <svg class="plan-scale" aria-hidden="true">
            <For each={lines().namedEastM.filter((eastM) => isBetween(view().x(eastM), 16, props.widthPx - 16))}>
              {(eastM) => (
                <text x={view().x(eastM)} y={props.heightPx + 20} text-anchor="middle">
                  {metres(eastM)}
                </text>
              )}
            </For>
            <Show when={props.axisPx > 0}>
              <For each={lines().northM.filter((northM) => isBetween(view().y(northM), 8, props.heightPx - 4))}>
                {(northM) => (
                  <text x="-8" y={view().y(northM) + 5} text-anchor="end">
                    {metres(northM)}
                  </text>
                )}
              </For>
            </Show>
          </svg>
        </g>
      </svg>
      <div class="plan-tools" style={{ "margin-left": `${props.axisPx}px` }}>
        <button type="button" class="tool" aria-label="Zoom in" onClick={() => setFrame(zoomed(shown(), 1 / 1.5))}>
          +
        </button>
        <button type="button" class="tool" aria-label="Zoom out" onClick={() => setFrame(zoomed(shown(), 1.5))}>
          −
        </button>
        <button
          type="button"
          class="tool tool-wide"
          onClick={() => {
            setBounds(props.things);
            setFrame(null);
          }}
        >
          Whole site
        </button>
        <Show
          when={chosen()}
          fallback={<span class="plan-chosen">Press a thing, or Tab to it; arrow keys move it.</span>}
        >
          {(thing) => (
            <>
              <span class="plan-moves">
                <For
                  each={
                    [
                      ["west", "←", -STEP_M, 0],
                      ["north", "↑", 0, STEP_M],
                      ["south", "↓", 0, -STEP_M],
                      ["east", "→", STEP_M, 0],
                    ] as const
                  }
                >
                  {([way, arrow, east, north]) => (
                    <button
                      type="button"
                      class="tool"
                      aria-label={`Move ${thing().name} half a metre ${way}`}
                      onClick={() => nudge(thing(), east, north)}
                    >
                      {arrow}
                    </button>
                  )}
                </For>
              </span>
              <span class="plan-chosen">
                <strong>{thing().name}</strong> {placeWords(thing())}
              </span>
            </>
          )}
        </Show>
      </div>
      <p class="unseen" role="status" aria-live="polite">
        {said()}
      </p>
    </div>
  );
}

/** How far from a group's middle its arrow begins. */
const arrowPx = (group: PanelGroup, view: PlanView) => group.module.lengthM * view.pxPerM * 0.5 + 3;
const isBetween = (value: number, low: number, high: number) => value > low && value < high;
const metres = (value: number) => {
  const shown = figure(toDisplay(value, "m"));
  return value > 0 ? `+${shown}` : value === 0 ? `0 ${displayUnit("m")}` : shown;
};

const madeOf = (thing: Thing) => ("tree" in thing ? thing.tree : "box" in thing ? thing.box : thing.group);

function kindWords(thing: Thing): string {
  if ("tree" in thing) return `tree ${inUnits(thing.tree.heightM, "m")} high`;
  if ("box" in thing) return `box ${inUnits(thing.box.heightM, "m")} high`;
  return thing.group.count === 1 ? "one panel" : `${thing.group.count} panels`;
}

function GroundShadow(props: { thing: Thing; view: PlanView; sun: SitePlanProps["sun"] }) {
  const shape = createMemo(() => {
    const { thing, view, sun } = props;
    const { azimuthDeg, elevationDeg } = sun;
    if ("box" in thing) {
      return <polygon class="ground-shadow" points={xy(view, boxShadow(thing.box, azimuthDeg, elevationDeg))} />;
    }
    if (!("tree" in thing)) return null;
    const crown = crownShadow(thing.tree, azimuthDeg, elevationDeg);
    const neck = shadowOf(thing, thing.tree.crownBaseM, azimuthDeg, elevationDeg);
    const [x, y] = [view.x(crown.eastM), view.y(crown.northM)];
    return (
      <>
        <line
          class="trunk-shadow"
          x1={view.x(thing.eastM)}
          y1={view.y(thing.northM)}
          x2={view.x(neck.eastM)}
          y2={view.y(neck.northM)}
          stroke-width={Math.max(1.4, thing.tree.trunkRadiusM * 2 * view.pxPerM)}
        />
        <ellipse
          class="ground-shadow"
          cx={x}
          cy={y}
          rx={crown.acrossM * view.pxPerM}
          ry={crown.alongM * view.pxPerM}
          transform={`rotate(${crown.bearingDeg} ${x} ${y})`}
        />
      </>
    );
  });
  return <>{shape()}</>;
}

function ThingShape(props: { thing: Thing; view: PlanView; facing: SitePlanProps["facing"]; seasonShare: number }) {
  const shape = createMemo(() => {
    const { thing, view } = props;
    const [x, y] = [view.x(thing.eastM), view.y(thing.northM)];
    if ("tree" in thing) {
      const { crownRadiusM, trunkRadiusM } = thing.tree;
      const r = crownRadiusM * view.pxPerM;
      return (
        <>
          <circle class="thing-reach" cx={x} cy={y} r={Math.max(14, r)} />
          <circle class="leaf-ground" cx={x} cy={y} r={r} />
          <circle class={`thing-shape leaf-${leafLook(thing.tree, props.seasonShare)}`} cx={x} cy={y} r={r} />
          <circle class="trunk" cx={x} cy={y} r={Math.max(3, trunkRadiusM * view.pxPerM)} />
        </>
      );
    }
    if ("box" in thing) {
      return (
        <>
          <circle class="thing-reach" cx={x} cy={y} r={14} />
          <polygon class="thing-shape wall" points={xy(view, boxFootprint(thing.box))} />
        </>
      );
    }
    const { tiltDeg, azimuthDeg } = props.facing(thing.group.id);
    const turn = `translate(${x} ${y}) rotate(${azimuthDeg})`;
    const fromPx = arrowPx(thing.group, view);
    return (
      <>
        <circle class="thing-reach" cx={x} cy={y} r={14} />
        <For each={moduleFootprints(thing.group, tiltDeg, azimuthDeg)}>
          {(corners) => <polygon class="thing-shape module" points={xy(view, corners)} />}
        </For>
        <Show when={tiltDeg > 0.5}>
          <path class="module-faces" transform={turn} d={`M0 ${-fromPx}v-13m-4 6l4 -7l4 7`} />
        </Show>
      </>
    );
  });
  return <>{shape()}</>;
}
