import { createEffect, createMemo, createSignal, For, on, onCleanup, Show } from "solid-js";
import { wrapLongitudeDeg } from "../../../engine/angle.ts";
import { shadeVerdict } from "../../../engine/answers/shade/shadeWords.ts";
import { sunCsv } from "../../../engine/answers/shade/sunCsv.ts";
import type { Sunlight } from "../../../engine/answers/shade/sunlight.ts";
import { type TimeScale, timeScale } from "../../../engine/drawing/timeScale.ts";
import type { Change, Scenario } from "../../../engine/scenario/index.ts";
import { eventLeafShare } from "../../../engine/scenario/leafShareOf.ts";
import { prepareObstacles } from "../../../engine/shade/index.ts";
import { sunTrack } from "../../../engine/sky/sunTrack.ts";
import { fileName, saveFile } from "../../download/saveFile.ts";
import { makeWidth } from "../../parts/makeWidth.ts";
import { HourControl } from "./HourControl.tsx";
import { makeSunlight } from "./makeSunlight.ts";
import { ShadePatterns } from "./ShadePatterns.tsx";
import { ShadeTable } from "./ShadeTable.tsx";
import { SitePlan } from "./SitePlan.tsx";
import { SkyPlot } from "./SkyPlot.tsx";
import { SunStrip } from "./SunStrip.tsx";
import { compassPoint } from "./skyView.ts";
import { sunPath } from "./sunPath.ts";
import { changesOfMove, type Move, moveWords, thingsOf, withMove } from "./thing.ts";
import "./shade.css";

const PHONE_PX = 700;
/** Narrower than this the sky stands below the plan. */
const SIDE_BY_SIDE_PX = 960;
/** Keys that follow one another within this are one move. */
const KEYS_REST_MS = 700;
const QUARTER_MS = 900_000;

interface ShadeViewProps {
  readonly scenario: Scenario;
  /** Called once for each drag or run of keys, with what to change and its name: "old walnut 1.5 m east". */
  onChanges(changes: Change[], label: string): void;
  /** The page's ruler, so that the strip lies under it; without it the strip takes whole days as they fit. */
  readonly scale?: TimeScale;
}

/** Who gets the sun: the strip on the ruler, the site from above, and the sky as one panel group sees it. */
export function ShadeView(props: ShadeViewProps) {
  const box = makeWidth();
  const [move, setMove] = createSignal<Move | null>(null);
  const [light, setLight] = createSignal<Sunlight | null>(null);
  const [hasFailed, setFailed] = createSignal(false);
  const [hourMs, setHourMs] = createSignal<number | null>(null);
  const [groupId, setGroupId] = createSignal<string | null>(null);
  const [isTableOpen, setTableOpen] = createSignal(false);
  /** The site as it is drawn: the document's, with what is on its way. */
  const site = createMemo(() => withMove(props.scenario, move()));
  const [isStale, setStale] = createSignal(true);

  const workshop = new Worker(new URL("./sunlightWorker.ts", import.meta.url), { type: "module" });
  const sun = makeSunlight(workshop, (scenario, now) => {
    if (now !== null) setLight(now);
    setFailed(now === null);
    setStale(scenario !== site());
  });
  onCleanup(() => workshop.terminate());
  createEffect(() => {
    const scenario = site();
    setStale(true);
    sun.ask(scenario);
  });

  // A new document holds the move already, or has thought better of it.
  createEffect(
    on(
      () => props.scenario,
      () => setMove(null),
      { defer: true },
    ),
  );

  let rest: ReturnType<typeof setTimeout> | undefined;
  function report(): void {
    clearTimeout(rest);
    const to = move();
    if (to === null) return;
    const from = thingsOf(props.scenario).find((thing) => thing.key === to.key);
    const changes = from === undefined ? [] : changesOfMove(from, to);
    if (from === undefined || changes.length === 0) setMove(null);
    else props.onChanges(changes, `${from.name} ${moveWords(from, to).replaceAll("\u202f", " ")}`);
  }
  onCleanup(report);
  function onMove(next: Move): void {
    const before = move();
    if (before !== null && before.key !== next.key) report();
    setMove(next);
  }
  function onRest(how: "key" | "drop"): void {
    clearTimeout(rest);
    if (how === "drop") report();
    else rest = setTimeout(report, KEYS_REST_MS);
  }

  const isPhone = () => box.width() < PHONE_PX;
  const axisPx = () => (isPhone() ? 0 : 64);
  const labelsPx = () => (box.width() >= 1100 ? 214 : 192);
  const scale = createMemo(() => {
    const now = light();
    if (now === null) return null;
    return props.scale ?? timeScale(now.ruler, isPhone() ? null : Math.min(864, box.width() - 64 - labelsPx()));
  });
  const isSideBySide = () => box.width() >= SIDE_BY_SIDE_PX;
  const roomPx = () => box.width() - (isPhone() ? 32 : 64 + 24);
  const skyAxisPx = () => (isPhone() ? 0 : 36);
  const planPx = () => (isSideBySide() ? Math.round(roomPx() * 0.485) : roomPx() - skyAxisPx());
  const skyPx = () => (isSideBySide() ? roomPx() - planPx() - 20 - skyAxisPx() : roomPx() - skyAxisPx());
  const heightPx = () => (isPhone() ? 300 : 320);

  const things = createMemo(() => thingsOf(site()));
  const obstacles = createMemo(() => prepareObstacles(site().obstacles, eventLeafShare(props.scenario)));
  const groups = createMemo(() => props.scenario.panels.filter((group) => group.count > 0));
  const looker = () =>
    site().panels.find((group) => group.id === groupId() && group.count > 0) ?? groupsNow()[0] ?? null;
  const groupsNow = () => site().panels.filter((group) => group.count > 0);
  const longitudeDeg = () => wrapLongitudeDeg(props.scenario.place.longitudeDeg);
  const ruler = createMemo(() => light()?.ruler ?? null, null, {
    equals: (a, b) => a?.zone === b?.zone && a?.startMs === b?.startMs && a?.endMs === b?.endMs,
  });
  const paths = createMemo(() => {
    const { latitudeDeg } = props.scenario.place;
    return (ruler()?.days ?? []).map((day) => sunPath(latitudeDeg, longitudeDeg(), day.startMs, day.endMs));
  });
  /** Until somebody chooses: the sun's highest on the middle day, at a full quarter of an hour. */
  const usualMs = createMemo(() => {
    const now = light();
    if (now === null) return 0;
    const path = paths()[paths().length >> 1];
    if (path === undefined || path.ms.length === 0) return now.startMs;
    let best = 0;
    path.elevationDeg.forEach((deg, i) => {
      if (deg > path.elevationDeg[best]!) best = i;
    });
    return Math.round(path.ms[best]! / QUARTER_MS) * QUARTER_MS;
  });
  const ms = () => {
    const now = light();
    const wanted = hourMs() ?? usualMs();
    return now === null ? wanted : Math.min(now.startMs + now.steps * now.stepMs, Math.max(now.startMs, wanted));
  };
  const sunNow = createMemo(() => {
    const track = sunTrack(props.scenario.place.latitudeDeg, longitudeDeg(), Float64Array.of(ms()));
    return { azimuthDeg: track.azimuthDeg[0]!, elevationDeg: track.elevationDeg[0]! };
  });
  const sunWords = () => {
    const { azimuthDeg, elevationDeg } = sunNow();
    if (elevationDeg <= 0) return "the sun is down";
    return `sun ${Math.round(elevationDeg)}° up in the ${compassPoint(azimuthDeg)}`;
  };
  const day = () => {
    const days = ruler()?.days ?? [];
    const found = days.findIndex((each) => ms() < each.endMs);
    return found < 0 ? Math.max(0, days.length - 1) : found;
  };
  const facing = (id: string) => {
    const now = light();
    const group = now?.groups.find((each) => each.id === id);
    if (now === null || group === undefined) return { tiltDeg: 0, azimuthDeg: 0 };
    const step = Math.min(now.steps - 1, Math.max(0, Math.floor((ms() - now.startMs) / now.stepMs)));
    return { tiltDeg: group.tiltDeg[step]!, azimuthDeg: group.azimuthDeg[step]! };
  };
  const choose = (wanted: number) => setHourMs(Math.round(wanted / QUARTER_MS) * QUARTER_MS);

  return (
    <div class="shade" classList={{ "shade-phone": isPhone(), "shade-stale": isStale() }} ref={box.ref}>
      <ShadePatterns />
      <Show
        when={light()}
        fallback={
          <p class="shade-verdict">
            {hasFailed()
              ? "The sun's hours cannot be worked out for these times and this place."
              : "Looking for the sun…"}
          </p>
        }
      >
        {(now) => (
          <>
            <p class="shade-verdict">{shadeVerdict(now())}</p>
            <div class="shade-head">
              <h3>Who sees the sun, clear sky</h3>
              <p class="shade-how">
                height: share of the beam; solid: open; hatched: in part; line: panel dark; dots: sun behind it or panel
                away
              </p>
              <span class="shade-acts">
                <button
                  type="button"
                  class="act"
                  aria-expanded={isTableOpen()}
                  onClick={() => setTableOpen(!isTableOpen())}
                >
                  Table
                </button>
                <button
                  type="button"
                  class="act"
                  onClick={() => saveFile(`${fileName(props.scenario.name)}-sun.csv`, "text/csv", sunCsv(now()))}
                >
                  CSV
                </button>
              </span>
            </div>
            <Show when={scale()}>
              {(time) => (
                <SunStrip
                  light={now()}
                  scale={time()}
                  isPhone={isPhone()}
                  axisPx={axisPx()}
                  labelsPx={labelsPx()}
                  chosenMs={ms()}
                  onChoose={choose}
                />
              )}
            </Show>
            <Show when={isTableOpen()}>
              <div class="shade-inset">
                <ShadeTable light={now()} />
              </div>
            </Show>
            <div class="shade-inset">
              <HourControl light={now()} ms={ms()} onChoose={choose} sunWords={sunWords()} />
            </div>
            <div class="shade-pair" classList={{ "shade-side-by-side": isSideBySide() }}>
              <div style={{ width: isSideBySide() ? `${planPx() + axisPx()}px` : undefined }}>
                <h3 class="shade-inset">Site from above: drag a tree or a panel</h3>
                <SitePlan
                  things={things()}
                  seasonShare={eventLeafShare(props.scenario)}
                  sun={sunNow()}
                  facing={facing}
                  widthPx={planPx()}
                  heightPx={heightPx()}
                  axisPx={axisPx()}
                  onMove={onMove}
                  onRest={onRest}
                  onCancel={() => setMove(null)}
                />
              </div>
              <Show when={looker()}>
                {(group) => (
                  <div classList={{ "shade-inset": !isSideBySide() }}>
                    <h3>As {group().name} sees it</h3>
                    <SkyPlot
                      scenario={site()}
                      obstacles={obstacles()}
                      light={now()}
                      paths={paths()}
                      day={day()}
                      eye={{ eastM: group().at.eastM, northM: group().at.northM, upM: group().at.heightM }}
                      name={group().name}
                      sun={sunNow()}
                      widthPx={skyPx()}
                      heightPx={heightPx()}
                      axisPx={skyAxisPx()}
                    />
                    <Show when={groups().length > 1}>
                      <div class="shade-look">
                        <span class="shade-how">Look from</span>
                        <For each={groups()}>
                          {(each) => (
                            <button
                              type="button"
                              class="act"
                              aria-pressed={each.id === group().id}
                              onClick={() => setGroupId(each.id)}
                            >
                              {each.name}
                            </button>
                          )}
                        </For>
                      </div>
                    </Show>
                  </div>
                )}
              </Show>
            </div>
            <p class="shade-how shade-inset">
              Thick line: open sun. Dashes: through leaves. Thin: kept off. Hairlines: the event's other days. The
              closer the dots, the less a crown lets through. Panels do not shade one another here, and the ground is
              level.
            </p>
          </>
        )}
      </Show>
    </div>
  );
}
