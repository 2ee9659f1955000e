import { For } from "solid-js";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { InstallAct } from "../offline/InstallAct.tsx";
import { UnitsChoice } from "../parts/UnitsChoice.tsx";

/** Numbers of skies to choose from. */
const MEMBERS = [100, 300, 1000, 3000];

/** The foot of the sheet: what chance is drawn from, and the units. */
export function SheetFoot(props: { notebook: Notebook; onChange(next: Notebook): void }) {
  return (
    <footer class="sheet-foot">
      <label>
        Seed
        <input
          type="text"
          maxLength={60}
          value={props.notebook.seed}
          onChange={(event) => {
            const seed = event.currentTarget.value.trim();
            if (seed === "") event.currentTarget.value = props.notebook.seed;
            else props.onChange({ ...props.notebook, seed });
          }}
        />
      </label>
      <label>
        Skies drawn
        <select onChange={(event) => props.onChange({ ...props.notebook, members: Number(event.currentTarget.value) })}>
          <For each={[...new Set([...MEMBERS, props.notebook.members])].sort((a, b) => a - b)}>
            {(members) => (
              <option value={members} selected={members === props.notebook.members}>
                {members}
              </option>
            )}
          </For>
        </select>
      </label>
      <UnitsChoice />
      <InstallAct />
      <p>The same seed draws the same skies and the same people. Nothing leaves this machine.</p>
    </footer>
  );
}
