import { createSignal, For, Show } from "solid-js";
import type { PackingPicture } from "../../../engine/answers/packing/packingPicture.ts";
import { totalHead } from "../../../engine/answers/packing/packingWords.ts";
import { freeId } from "../../../engine/packing/ownedCsv.ts";
import { MOST_OWNED, OWNED_KINDS, type OwnedKind, type OwnedThing } from "../../../engine/packing/ownedThing.ts";
import { OwnedActs } from "./OwnedActs.tsx";
import { OwnedForm } from "./OwnedForm.tsx";
import { OwnedRow } from "./OwnedRow.tsx";
import { setOfTicks } from "./setOfTicks.ts";

/** What a thing of a kind begins as. */
const NEW: Readonly<Record<OwnedKind, Omit<OwnedThing, "id" | "kind" | "count">>> = {
  battery: { name: "Battery, 100 Ah", chemistry: "lfp", blockAh: 100 },
  panel: { name: "Folding panel, 120 W", ratedW: 120 },
  controller: { name: "Controller, 20 A", maxChargeA: 20 },
  generator: { name: "Generator and can", chargerA: 20, fuelL: 5 },
  lead: { name: "Lead, 25 m", lengthM: 25, awg: "10" },
};

interface ListProps {
  things: readonly OwnedThing[];
  /** Whether it is a list of the entry's own, rather than what the scenarios hold. */
  isOwn: boolean;
  name: string;
  /** The answer for just this list. */
  picture: PackingPicture | null;
  /** The set that is looked at; null for the proposal. */
  asked: number | null;
  onAsk: (key: number | null) => void;
  onPut: (things: readonly OwnedThing[], label: string) => string | null;
}

/** What the club has, as the list that one ticks: the ticks are the set that is looked at. */
export function OwnedList(props: ListProps) {
  const [opened, setOpened] = createSignal<string | null>(null);
  const [said, setSaid] = createSignal("");
  const report = () => props.picture?.report ?? null;
  const seen = () =>
    report()?.sets?.find(({ key }) => key === props.asked) ??
    report()?.frontier.find(({ key }) => key === props.asked) ??
    report()?.proposed ??
    report()?.nearest ??
    null;
  const tick = (thing: number, count: number) => {
    const [sets, from] = [report()?.sets ?? null, seen()];
    if (sets === null || from === null) return false;
    const set = setOfTicks(sets, props.things, from, thing, count);
    setSaid(set === null ? `There is no set like that: ${whyNone(props.things[thing]!)}.` : "");
    if (set !== null) props.onAsk(set.key);
    return set !== null;
  };
  const add = (kind: OwnedKind) => {
    const id = freeId(NEW[kind].name, new Set(props.things.map((thing) => thing.id)));
    const why = props.onPut([...props.things, { ...NEW[kind], id, kind, count: 1 }], "thing added");
    setSaid(why ?? "");
    if (why === null) setOpened(id);
  };
  const put = (thing: OwnedThing | null, id: string) => {
    const next = props.things.flatMap((each) => (each.id !== id ? [each] : thing === null ? [] : [thing]));
    const why = props.onPut(next, thing === null ? "thing taken off the list" : "what the club has");
    setSaid(why ?? "");
    if (thing === null) setOpened(null);
  };
  return (
    <div class="packing-owned">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section class="wide" tabIndex={0} aria-label="What the club has">
        <table class="packing-table">
          <caption class="unseen">What the club has; ticked is what the set that is looked at takes</caption>
          <thead>
            <tr>
              <th scope="col">What the club has</th>
              <th scope="col">have</th>
              <th scope="col">take</th>
              <th scope="col">{totalHead("mass")}</th>
              <th scope="col">{totalHead("minutes")}</th>
              <th scope="col">{totalHead("money")}</th>
              <th scope="col" class="packing-words">
                whose
              </th>
            </tr>
          </thead>
          <tbody>
            <For each={props.things.map((thing) => thing.id)}>
              {(id) => {
                const place = () => props.things.findIndex((thing) => thing.id === id);
                return (
                  <Show when={props.things[place()]}>
                    {(thing) => (
                      <OwnedRow
                        thing={thing()}
                        take={seen()?.take[place()] ?? null}
                        canTick={(report()?.sets ?? null) !== null}
                        isOpen={opened() === id}
                        onTick={(count) => tick(place(), count)}
                        onOpen={() => setOpened(opened() === id ? null : id)}
                      />
                    )}
                  </Show>
                );
              }}
            </For>
            <For each={props.picture?.fitted ?? []}>
              {(name) => (
                <tr>
                  <th scope="row" class="packing-fitted">
                    {name}
                  </th>
                  <td />
                  <td>fitted</td>
                  <td colSpan={4} />
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </section>
      <Show when={props.things.find((thing) => thing.id === opened())}>
        {(thing) => (
          <OwnedForm thing={thing()} onPut={(next) => put(next, thing().id)} onClose={() => setOpened(null)} />
        )}
      </Show>
      <p class="wrong" role="status">
        {said()}
      </p>
      <OwnedActs
        things={props.things}
        isOwn={props.isOwn}
        name={props.name}
        kinds={props.things.length < MOST_OWNED ? OWNED_KINDS : []}
        onAdd={add}
        onTake={(things) => {
          setOpened(null);
          return props.onPut(things, "list taken in");
        }}
      />
    </div>
  );
}

const whyNone = ({ kind }: OwnedThing) =>
  kind === "battery"
    ? "a bank takes at least one battery, all of one chemistry and voltage"
    : kind === "lead" || kind === "controller"
      ? "leads and controllers follow the panels"
      : "it cannot be set up so";
