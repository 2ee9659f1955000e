import { createMemo, Show } from "solid-js";
import { shadeVerdict } from "../../../engine/answers/shade/shadeWords.ts";
import type { Change, Scenario } from "../../../engine/scenario/index.ts";
import { eventLeafShare } from "../../../engine/scenario/leafShareOf.ts";
import { makeWidth } from "../../parts/makeWidth.ts";
import { HourControl } from "./HourControl.tsx";
import { makeSiteLight } from "./makeSiteLight.ts";
import { makeSiteMove } from "./makeSiteMove.ts";
import { makeSunHour } from "./makeSunHour.ts";
import { ShadePatterns } from "./ShadePatterns.tsx";
import { SitePlan } from "./SitePlan.tsx";
import { SkyOfGroup } from "./SkyOfGroup.tsx";
import { SunStripBlock } from "./SunStripBlock.tsx";
import { shadeRoom } from "./shadeRoom.ts";
import { thingsOf } from "./thing.ts";
import "./shade.css";

/** Who gets the sun: the strip on the ruler, the site from above, and the sky as one panel group sees it. */
export function ShadeView(props: {
  scenario: Scenario;
  /** Called once for each drag or run of keys, with what to change and its name: "old walnut 1.5 m east". */
  onChanges(changes: Change[], label: string): void;
}) {
  const box = makeWidth();
  const room = createMemo(() => shadeRoom(box.width()));
  const move = makeSiteMove(
    () => props.scenario,
    (changes, label) => props.onChanges(changes, label),
  );
  const { light, hasFailed, isStale } = makeSiteLight(move.site);
  const hour = makeSunHour(() => props.scenario, light);
  const things = createMemo(() => thingsOf(move.site()));
  return (
    <div class="shade" classList={{ "shade-phone": room().isPhone, "shade-stale": isStale() }} ref={box.ref}>
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
            <SunStripBlock
              name={props.scenario.name}
              light={now()}
              room={room().strip}
              chosenMs={hour.ms()}
              onChoose={hour.choose}
            />
            <div class="shade-inset">
              <HourControl light={now()} ms={hour.ms()} onChoose={hour.choose} sunWords={hour.sunWords()} />
            </div>
            <div class="shade-pair" classList={{ "shade-side-by-side": room().isSideBySide }}>
              <div style={{ width: room().isSideBySide ? `${room().plan.widthPx + room().plan.axisPx}px` : undefined }}>
                <h3 class="shade-inset">Site from above: drag a tree or a panel</h3>
                <SitePlan
                  things={things()}
                  seasonShare={eventLeafShare(props.scenario)}
                  sun={hour.sun()}
                  facing={hour.facing}
                  room={room().plan}
                  onMove={move.onMove}
                  onRest={move.onRest}
                  onCancel={move.onCancel}
                />
              </div>
              <SkyOfGroup
                site={move.site()}
                light={now()}
                hour={hour}
                room={room().sky}
                isInset={!room().isSideBySide}
              />
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
