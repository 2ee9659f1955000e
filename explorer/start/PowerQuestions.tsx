import { Show } from "solid-js";
import {
  BACKUP,
  CHEMISTRY,
  CONTROLLERS,
  HOURS,
  KEENNESS,
  MODES,
  PLACING,
  RADIOS,
  ratedWOf,
} from "../../engine/start/index.ts";
import { choiceField, numberField, type StartFields } from "./startFields.tsx";
import { Question } from "./startParts.tsx";

/** Stations and how hard they work. */
export function OperatingQuestion({ fields }: { fields: StartFields }) {
  const { answers } = fields;
  return (
    <Question n={4} title="How hard will you operate?" says="Every station alike; they can differ later.">
      <div class="start-fields">
        {numberField(fields, "stations", "Stations", "", 0, 10, true)}
        {choiceField(
          fields,
          "radio",
          "Radio",
          Object.fromEntries(Object.entries(RADIOS).map(([key, radio]) => [key, radio.name])),
        )}
        {choiceField(fields, "mode", "Mode", MODES)}
        {numberField(fields, "transmitW", "Power", "W", 0.1, ratedWOf(answers.radio))}
        {choiceField(
          fields,
          "hours",
          "Somebody operates",
          Object.fromEntries(Object.entries(HOURS).map(([key, hours]) => [key, hours.words])),
        )}
        {choiceField(
          fields,
          "keenness",
          "Like this",
          Object.fromEntries(
            Object.entries(KEENNESS).map(([key, { words, sendingShare }]) => [
              key,
              `${words} (sends ${Math.round(sendingShare * 100)} %)`,
            ]),
          ),
        )}
      </div>
    </Question>
  );
}

/** Panels, bank, and what else charges. */
export function ChargingQuestion({ fields }: { fields: StartFields }) {
  const { answers } = fields;
  return (
    <Question
      n={5}
      title="What charges, and what keeps it?"
      says="A charged bank to begin with; LFP keeps a fifth back, lead half."
    >
      <div class="start-fields">
        {numberField(fields, "panels", "Panels", "", 0, 20, true)}
        {numberField(fields, "panelW", "Each", "W", 5, 600)}
        {choiceField(fields, "placing", "They stand", PLACING)}
        {choiceField(fields, "controller", "Controller", CONTROLLERS)}
        {choiceField(fields, "backup", "Besides", BACKUP)}
      </div>
      <div class="start-fields">
        {numberField(fields, "blocks", "Batteries, 12 V", "", 1, 8, true)}
        {numberField(fields, "blockAh", "Each", "Ah", 5, 600)}
        {choiceField(fields, "chemistry", "Kind", CHEMISTRY)}
      </div>
      <Show when={answers.backup === "generator"}>
        <p class="start-care">
          Run a generator outside, at least 6 m (20 ft) from anybody's shelter, exhaust pointing away, never in a tent
          or under an awning; have a carbon monoxide alarm where people sleep. Local rules come first.
        </p>
      </Show>
    </Question>
  );
}
