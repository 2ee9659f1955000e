import "../../engine/scenario/zonesHere.ts";
import { createMemo, createUniqueId, For, type JSX, lazy, Show, Suspense } from "solid-js";
import { createStore } from "solid-js/store";
import { schemaAt } from "../../engine/fields/formSchema.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { displayUnit, fromDisplay, toDisplay } from "../../engine/words/displayUnits.ts";
import { measured } from "../gear/ownMeasured.ts";
import { TypedBox } from "../parts/TypedBox.tsx";
import { arrowStep, typedQuantity, typedWithUnit } from "../parts/typedQuantity.ts";
import { WarningSign } from "../parts/WrongLines.tsx";
import { wrongInWords } from "../parts/wrongInWords.ts";
import { COMMON_GEAR, gearSays } from "./commonGear.ts";
import {
  BACKUP,
  CHEMISTRY,
  CONTROLLERS,
  defaultAnswers,
  HOURS,
  KEENNESS,
  MODES,
  PLACING,
  RADIOS,
  ratedWOf,
  SHADE,
  type StartAnswers,
  startScenario,
} from "./startScenario.ts";
import "./start.css";

// The outlines and the climate come only when a place is picked.
const PlaceMap = lazy(() => import("./PlaceMap.tsx"));

/** Keys of answers that are numbers. */
type NumberKey = { [Key in keyof StartAnswers]: StartAnswers[Key] extends number ? Key : never }[keyof StartAnswers];

/** The answers as they are being given. */
type Answers = { -readonly [Key in keyof Omit<StartAnswers, "gear">]: StartAnswers[Key] } & {
  gear: Record<string, number>;
};

/**
 * Six questions with an answer each from the start; any of them may be left as it is. Ends with a scenario.
 * @param props.today a date such as "2026-10-05", from which the weekend is counted; the clock's when left out
 */
export function StartQuestions(props: { onDone(document: ScenarioInput): void; today?: string }) {
  const today = () => props.today ?? new Date().toISOString().slice(0, 10);
  const [answers, setAnswers] = createStore<Answers>(defaultAnswers(today()));
  const made = createMemo(() => startScenario({ ...answers, gear: { ...answers.gear } }, measured.measured()));
  const read = createMemo(() => readScenario(made()));
  const problems = () => {
    const result = read();
    return result.ok ? [] : result.problems;
  };
  const id = createUniqueId();

  const number = (
    key: NumberKey,
    label: string,
    unit: string,
    low: number,
    high: number,
    isWhole = false,
  ): JSX.Element => (
    <Blank label={label}>
      <TypedBox
        id={`${id}-${key}`}
        label={unit === "" ? label : `${label}, ${displayUnit(unit)}`}
        value={String(toDisplay(answers[key], unit))}
        room={5}
        isNumber={true}
        isWrong={!(Number(answers[key]) >= low && Number(answers[key]) <= high)}
        describedBy={`${id}-${key}-range`}
        onCommit={(text) => {
          const shown = typedQuantity(text, displayUnit(unit));
          const typed = typeof shown === "number" ? fromDisplay(shown, unit) : typedWithUnit(text, unit);
          if (typeof typed === "number" && typed >= low && typed <= high)
            setAnswers(key, isWhole ? Math.round(typed) : typed);
        }}
        onStep={(direction, isLarge) => {
          const by = arrowStep(answers[key], { unit, low, high }, isWhole) * (isLarge ? 10 : 1);
          setAnswers(
            key,
            Number(Math.min(high, Math.max(low, (Math.round(answers[key] / by) + direction) * by)).toPrecision(10)),
          );
        }}
      />
      <span class="unit">{displayUnit(unit)}</span>
      <span class="unseen" id={`${id}-${key}-range`}>
        from {toDisplay(low, unit)} to {toDisplay(high, unit)}
      </span>
    </Blank>
  );
  const choice = <Key extends keyof StartAnswers>(
    key: Key,
    label: string,
    choices: Readonly<Record<string, string>>,
  ): JSX.Element => (
    <Blank label={label}>
      <select
        class="box"
        aria-label={label}
        onChange={(event) => {
          setAnswers(key as "mode", event.currentTarget.value as never);
          if (key === "radio") setAnswers("transmitW", ratedWOf(answers.radio));
        }}
      >
        <For each={Object.entries(choices)}>
          {([value, words]) => (
            <option value={value} selected={answers[key] === value}>
              {words}
            </option>
          )}
        </For>
      </select>
    </Blank>
  );
  const moment = (key: "start" | "end", label: string): JSX.Element => (
    <Blank label={label}>
      <input
        class="box"
        type="datetime-local"
        aria-label={label}
        value={answers[key]}
        onChange={(event) => {
          const typed = event.currentTarget.value.slice(0, 16);
          if (/^(19|2\d)\d\d-/.test(typed)) setAnswers(key, typed);
        }}
      />
    </Blank>
  );
  const gearCount = (gear: string, by: number) =>
    setAnswers("gear", gear, (now) => Math.min(20, Math.max(0, (now ?? 0) + by)));

  return (
    <form
      class="start"
      aria-label="Six questions"
      onSubmit={(event) => {
        event.preventDefault();
        if (read().ok) props.onDone(made());
      }}
    >
      <p class="start-lead">
        Six questions, each with an answer already. Change what is different with you, then work it out.
      </p>
      <Question n={1} title="Where?" says="Click the map or use the arrow keys on it; or type the position.">
        <Suspense fallback={<p class="map-wait">The map is on its way …</p>}>
          <PlaceMap
            latitudeDeg={answers.latitudeDeg}
            longitudeDeg={answers.longitudeDeg}
            elevationM={answers.elevationM}
            onMove={(latitudeDeg, longitudeDeg) => setAnswers({ latitudeDeg, longitudeDeg })}
          />
        </Suspense>
        <div class="blanks">
          <Blank label="Name of the place">
            <TypedBox
              id={`${id}-name`}
              label="Name of the place"
              value={answers.placeName}
              room={20}
              onCommit={(text) => text.trim() !== "" && setAnswers("placeName", text.trim().slice(0, 200))}
            />
          </Blank>
          {number("latitudeDeg", "Latitude", "°", -90, 90)}
          {number("longitudeDeg", "Longitude", "°", -180, 180)}
          {number("elevationM", "Height above the sea", "m", -450, 6000)}
        </div>
      </Question>
      <Question n={2} title="When?" says="By the local clock of the place, at most 60 days.">
        <div class="blanks">
          {moment("start", "Begins")}
          {moment("end", "Ends")}
        </div>
      </Question>
      <Question
        n={3}
        title="What gear comes along?"
        says="Besides the radios. Draws are usual ones, or what you measured of yours on the gear shelf."
      >
        <ul class="gear">
          <For each={COMMON_GEAR}>
            {({ gear, usual }) => (
              <li class="gear-line" classList={{ "gear-in": (answers.gear[gear.id] ?? 0) > 0 }}>
                <label class="weekday gear-name">
                  <input
                    type="checkbox"
                    checked={(answers.gear[gear.id] ?? 0) > 0}
                    onChange={(event) =>
                      setAnswers("gear", gear.id, event.currentTarget.checked ? Math.max(1, usual) : 0)
                    }
                  />
                  {gear.name}
                </label>
                <span class="gear-says">{gearSays(gear, measured.of(gear.id)?.working)}</span>
                <span class="gear-count">
                  <button
                    type="button"
                    class="count-act"
                    aria-label={`Fewer: ${gear.name}`}
                    disabled={(answers.gear[gear.id] ?? 0) === 0}
                    onClick={() => gearCount(gear.id, -1)}
                  >
                    −
                  </button>
                  <output aria-label={`How many: ${gear.name}`}>{answers.gear[gear.id] ?? 0}</output>
                  <button
                    type="button"
                    class="count-act"
                    aria-label={`More: ${gear.name}`}
                    onClick={() => gearCount(gear.id, 1)}
                  >
                    +
                  </button>
                </span>
              </li>
            )}
          </For>
        </ul>
      </Question>
      <Question n={4} title="How hard will you operate?" says="Every station alike; they can differ later.">
        <div class="blanks">
          {number("stations", "Stations", "", 0, 10, true)}
          {choice(
            "radio",
            "Radio",
            Object.fromEntries(Object.entries(RADIOS).map(([key, radio]) => [key, radio.name])),
          )}
          {choice("mode", "Mode", MODES)}
          {number("transmitW", "Power", "W", 0.1, ratedWOf(answers.radio))}
          {choice(
            "hours",
            "Somebody operates",
            Object.fromEntries(Object.entries(HOURS).map(([key, hours]) => [key, hours.words])),
          )}
          {choice(
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
      <Question
        n={5}
        title="What charges, and what keeps it?"
        says="A charged bank to begin with; LFP keeps a fifth back, lead half."
      >
        <div class="blanks">
          {number("panels", "Panels", "", 0, 20, true)}
          {number("panelW", "Each", "W", 5, 600)}
          {choice("placing", "They stand", PLACING)}
          {choice("controller", "Controller", CONTROLLERS)}
          {choice("backup", "Besides", BACKUP)}
        </div>
        <div class="blanks">
          {number("blocks", "Batteries, 12 V", "", 1, 8, true)}
          {number("blockAh", "Each", "Ah", 5, 600)}
          {choice("chemistry", "Kind", CHEMISTRY)}
        </div>
        <Show when={answers.backup === "generator"}>
          <p class="start-care">
            Run a generator outside, at least 6 m (20 ft) from anybody's shelter, exhaust pointing away, never in a tent
            or under an awning; have a carbon monoxide alarm where people sleep. Local rules come first.
          </p>
        </Show>
      </Question>
      <Question
        n={6}
        title="Where is the shade?"
        says="Trees as seen from the panels; leaves by the month. You can draw your own later."
      >
        <fieldset class="shade">
          <legend class="unseen">Shade</legend>
          <For each={Object.entries(SHADE)}>
            {([value, words]) => (
              <label class="weekday">
                <input
                  type="radio"
                  name={`${id}-shade`}
                  checked={answers.shade === value}
                  onChange={() => setAnswers("shade", value as StartAnswers["shade"])}
                />
                {words}
              </label>
            )}
          </For>
        </fieldset>
      </Question>
      <div class="start-end" aria-live="polite">
        <For each={problems()}>
          {(problem) => (
            <p class="wrong">
              <WarningSign /> {wrongInWords(problem, undefined, schemaAt(made(), problem.path), null).sentence}
            </p>
          )}
        </For>
      </div>
      <p class="start-go">
        <button type="submit" class="go" disabled={!read().ok}>
          Work it out
        </button>
      </p>
    </form>
  );
}

function Question(props: { n: number; title: string; says: string; children: JSX.Element }) {
  return (
    <section class="question" aria-label={props.title}>
      <header>
        <h2>
          <span class="question-n">{props.n}</span> {props.title}
        </h2>
        <p>{props.says}</p>
      </header>
      <div class="question-answer">{props.children}</div>
    </section>
  );
}

function Blank(props: { label: string; children: JSX.Element }) {
  return (
    <div class="start-blank">
      <span class="start-label" aria-hidden="true">
        {props.label}
      </span>
      <span class="start-value">{props.children}</span>
    </div>
  );
}
