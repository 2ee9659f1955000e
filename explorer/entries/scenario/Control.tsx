import { For, Match, Show, Switch } from "solid-js";
import type { ScenarioInput } from "../../../engine/index.ts";
import { choiceLabel } from "./fieldWords.ts";
import { elementId, type Form, useForm } from "./formContext.ts";
import { type Path, pattern, valueAt } from "./formPath.ts";
import { numberPart, type SchemaNode } from "./formSchema.ts";
import { datesOf } from "./newItem.ts";
import { dayInWords, plainFigure, shownUnit, shownValue, toShown, toStored } from "./shownValue.ts";
import { TypedBox } from "./TypedBox.tsx";
import { arrowStep, typedQuantity, typedWithUnit } from "./typedQuantity.ts";

interface ControlProps {
  path: Path;
  node: SchemaNode;
  label: string;
  isOptional: boolean;
  isWrong: boolean;
  describedBy?: string | undefined;
}

const ASCII_MINUS = (text: string) => text.replaceAll("\u202f", "").replace("\u2212", "-");

/** The blank, list of choices or tick of one field; what it is follows from the field's schema. */
export function Control(props: ControlProps) {
  const form = useForm();
  const value = () => valueAt(form.document(), props.path);
  const choices = () => namedChoices(form, props.path);
  const is = (what: string) => controlOf(props.node, props.path, choices() !== null) === what;
  return (
    <Switch fallback={<WordBox {...props} />}>
      <Match when={is("fixed")}>
        <span class="fixed">{String(value() ?? props.node.const)}</span>
      </Match>
      <Match when={is("number")}>
        <NumberControl {...props} />
      </Match>
      <Match when={is("either")}>
        <EitherControl {...props} />
      </Match>
      <Match when={is("choice")}>
        <ChoiceBox
          {...props}
          choices={(props.node.enum ?? []).map((each) => ({
            value: each,
            words: choiceLabel(each, pattern(props.path)),
          }))}
        />
      </Match>
      <Match when={is("named")}>
        <ChoiceBox {...props} choices={choices() ?? []} />
      </Match>
      <Match when={is("tick")}>
        <ChoiceBox
          {...props}
          choices={[
            { value: true, words: "yes" },
            { value: false, words: "no" },
          ]}
        />
      </Match>
      <Match when={is("moment")}>
        <MomentBox {...props} />
      </Match>
      <Match when={is("weekdays")}>
        <WeekdayTicks {...props} />
      </Match>
    </Switch>
  );
}

function controlOf(node: SchemaNode, path: Path, isNamed: boolean): string {
  if (node.const !== undefined) return "fixed";
  if (isNamed) return "named";
  if (node.enum !== undefined) return "choice";
  if (node.anyOf !== undefined) return "either";
  if (node.quantity !== undefined || node.type === "number" || node.type === "integer") return "number";
  if (node.type === "boolean") return "tick";
  if (node.type === "array") return "weekdays";
  return path[0] === "time" ? "moment" : "words";
}

interface Choice {
  value: string | number | boolean;
  words: string;
}

/** Fields that name something that stands elsewhere in the document, and what there is to name. */
function namedChoices(form: Form, path: Path): Choice[] | null {
  const where = pattern(path);
  const document = form.document();
  const named = (items: readonly { id: string; name?: string | undefined }[] | undefined): Choice[] =>
    (items ?? []).map((item) => ({ value: item.id, words: item.name ?? item.id }));
  if (where === "gear[].use.station") return named(document.stations);
  if (where === "shedding[]") return [...named(document.stations), ...named(document.gear)];
  if (where === "knownDays[].date") return datesOf(document).map((date) => ({ value: date, words: dayInWords(date) }));
  return null;
}

/** What a selector can take in. */
export function selectorInputs(document: ScenarioInput): Choice[] {
  const items = [...(document.panels ?? []), ...(document.sources ?? [])];
  return [{ value: "solar", words: "all panels" }, ...items.map((item) => ({ value: item.id, words: item.name }))];
}

function NumberControl(props: ControlProps) {
  const form = useForm();
  const node = () => numberPart(props.node);
  const unit = () => shownUnit(node());
  const value = () => valueAt(form.document(), props.path);
  const shown = (stored: unknown) =>
    typeof stored === "number"
      ? ASCII_MINUS(plainFigure(toShown(stored, node())))
      : stored === undefined || stored === null
        ? ""
        : String(stored);
  const commit = (text: string) => {
    if (text.trim() === "") {
      if (props.isOptional) form.clear(props.path);
      return;
    }
    const typed = typedQuantity(text, unit());
    const stored =
      typeof typed === "number" ? toStored(typed, node()) : typedWithUnit(text, node().quantity?.unit ?? "");
    form.set(props.path, stored ?? text);
  };
  const step = (direction: number, isLarge: boolean, text: string) => {
    const facts = node().quantity!;
    const from = typedQuantity(text === "" ? shown(valueAt(form.filled(), props.path)) : text, unit());
    if (typeof from !== "number") return;
    const limits = { unit: unit(), low: toShown(facts.low, node()), high: toShown(facts.high, node()) };
    const by = arrowStep(from, limits, node().type === "integer") * (isLarge ? 10 : 1);
    const to = Number(((Math.round(from / by) + direction) * by).toPrecision(10));
    form.set(props.path, toStored(Math.min(limits.high, Math.max(limits.low, to)), node()));
  };
  return (
    <>
      <TypedBox
        id={elementId(form, props.path)}
        label={unit() === "" ? props.label : `${props.label}, ${unit()}`}
        value={shown(value())}
        placeholder={props.isOptional ? shown(valueAt(form.filled(), props.path)) || "–" : undefined}
        describedBy={props.describedBy}
        isWrong={props.isWrong}
        room={Math.max(5, shown(value() ?? valueAt(form.filled(), props.path)).length)}
        isNumber={true}
        onCommit={commit}
        onStep={step}
      />
      <Show when={unit() !== ""}>
        <span class="unit">{unit()}</span>
      </Show>
    </>
  );
}

/** A number, or a word or nothing in its stead. */
function EitherControl(props: ControlProps) {
  const form = useForm();
  const value = () => valueAt(form.document(), props.path);
  const word = () => props.node.anyOf!.find((option) => option.const !== undefined)?.const;
  const hasNone = () => props.node.anyOf!.some((option) => option.type === "null");
  const mode = () => {
    const now = value();
    if (now === undefined) return "usual";
    return now === null ? "none" : now === word() ? "word" : "number";
  };
  const pick = (to: string) => {
    const facts = numberPart(props.node).quantity!;
    if (to === "usual") form.clear(props.path);
    else if (to === "none") form.set(props.path, null);
    else if (to === "word") form.set(props.path, word());
    else {
      const usual = valueAt(form.filled(), props.path);
      const middle = Math.min(facts.high, Math.max(facts.low, 20));
      form.set(props.path, typeof usual === "number" ? usual : middle);
    }
  };
  const usualWords = () => {
    const usual = valueAt(form.filled(), props.path);
    return usual === undefined ? "as usual" : `as usual (${shownValue(usual, props.node)})`;
  };
  return (
    <>
      <select
        class="box"
        id={mode() === "number" ? undefined : elementId(form, props.path)}
        aria-label={mode() === "number" ? `${props.label}, how` : props.label}
        aria-describedby={props.describedBy || undefined}
        onChange={(event) => pick(event.currentTarget.value)}
      >
        <Show when={props.isOptional || mode() === "usual"}>
          <option value="usual" selected={mode() === "usual"}>
            {usualWords()}
          </option>
        </Show>
        <Show when={word() !== undefined}>
          <option value="word" selected={mode() === "word"}>
            {choiceLabel(word())}
          </option>
        </Show>
        <Show when={hasNone()}>
          <option value="none" selected={mode() === "none"}>
            none
          </option>
        </Show>
        <option value="number" selected={mode() === "number"}>
          a figure
        </option>
      </select>
      <Show when={mode() === "number"}>
        <NumberControl {...props} isOptional={false} />
      </Show>
    </>
  );
}

function ChoiceBox(props: ControlProps & { choices: readonly Choice[] }) {
  const form = useForm();
  const value = () => valueAt(form.document(), props.path);
  const usual = () => {
    const filled = valueAt(form.filled(), props.path);
    const found = props.choices.find((choice) => choice.value === filled);
    return found === undefined ? "as usual" : `as usual (${found.words})`;
  };
  const isStrange = () => value() !== undefined && !props.choices.some((choice) => choice.value === value());
  const pick = (index: string) => {
    if (index === "") form.clear(props.path);
    else if (index !== "now") form.set(props.path, props.choices[Number(index)]!.value);
  };
  return (
    <select
      class="box"
      id={elementId(form, props.path)}
      aria-label={props.label}
      aria-invalid={props.isWrong ? "true" : undefined}
      aria-describedby={props.describedBy || undefined}
      onChange={(event) => pick(event.currentTarget.value)}
    >
      <Show when={props.isOptional || value() === undefined}>
        <option value="" selected={value() === undefined}>
          {props.path.at(-1) === "station" ? "any station" : usual()}
        </option>
      </Show>
      <Show when={isStrange()}>
        <option value="now" selected={true}>
          {String(value())}
        </option>
      </Show>
      <For each={props.choices}>
        {(choice, index) => (
          <option value={index()} selected={choice.value === value()}>
            {choice.words}
          </option>
        )}
      </For>
    </select>
  );
}

/** Local date and time; a year that is still being typed is not yet a date. */
function MomentBox(props: ControlProps) {
  const form = useForm();
  const value = () => String(valueAt(form.document(), props.path) ?? "");
  return (
    <input
      class="box box-moment"
      type="datetime-local"
      id={elementId(form, props.path)}
      aria-label={props.label}
      aria-invalid={props.isWrong ? "true" : undefined}
      aria-describedby={props.describedBy || undefined}
      value={value()}
      onChange={(event) => {
        const typed = event.currentTarget.value.slice(0, 16);
        if (/^(19|2\d)\d\d-/.test(typed) && typed !== value()) form.set(props.path, typed);
      }}
    />
  );
}

function WeekdayTicks(props: ControlProps) {
  const form = useForm();
  const all = () => (props.node.items?.enum ?? []) as string[];
  const chosen = () => (valueAt(form.document(), props.path) as string[] | undefined) ?? all();
  const toggle = (day: string) => {
    const next = all().filter((each) => chosen().includes(each) !== (each === day));
    if (next.length === 0 || next.length === all().length) form.clear(props.path);
    else form.set(props.path, next);
  };
  return (
    <fieldset class="weekdays">
      <legend class="unseen">{props.label}</legend>
      <For each={all()}>
        {(day) => (
          <label class="weekday">
            <input type="checkbox" checked={chosen().includes(day)} onChange={() => toggle(day)} />
            {choiceLabel(day)}
          </label>
        )}
      </For>
    </fieldset>
  );
}

const CLOCK = /^[0-2]?\d[:.h]?\d\d$/;

/** "9:30", "0930" and "9" as the clock writes them: "09:30", "09:00"; anything else as it was typed. */
export function typedClock(text: string): string {
  const bare = text.trim().replace(/h$/i, "").trimEnd();
  if (/^\d{1,2}$/.test(bare)) return `${bare.padStart(2, "0")}:00`;
  if (!CLOCK.test(bare)) return text.trim();
  const digits = bare.replace(/\D/g, "").padStart(4, "0");
  return `${digits.slice(0, 2)}:${digits.slice(2)}`;
}

function clockStep(text: string, direction: number, isLarge: boolean): string {
  const [h, m] = typedClock(text).split(":").map(Number);
  const minute = (h ?? 0) * 60 + (m ?? 0);
  const by = isLarge ? 60 : 15;
  const to = Math.min(1440, Math.max(0, (Math.round(minute / by) + direction) * by));
  return `${String(Math.floor(to / 60)).padStart(2, "0")}:${String(to % 60).padStart(2, "0")}`;
}

function WordBox(props: ControlProps) {
  const form = useForm();
  const value = () => String(valueAt(form.document(), props.path) ?? "");
  const isClock = () => props.node.pattern?.includes("24:00") === true;
  const isLong = () => (props.node.maxLength ?? 0) > 1000;
  const commit = (text: string) => {
    if (text.trim() === "" && props.isOptional) form.clear(props.path);
    else form.set(props.path, isClock() ? typedClock(text) : text.trim());
  };
  const usual = () => valueAt(form.filled(), props.path);
  return (
    <TypedBox
      id={elementId(form, props.path)}
      label={props.label}
      value={value()}
      placeholder={
        props.isOptional ? (typeof usual() === "string" && value() === "" ? String(usual()) : "–") : undefined
      }
      describedBy={props.describedBy}
      isWrong={props.isWrong}
      room={isClock() ? 5 : props.path.at(-1) === "name" || props.path.at(-1) === "at" ? 26 : 16}
      isLong={isLong()}
      onCommit={commit}
      onStep={
        isClock()
          ? (direction, isLarge, typed) => form.set(props.path, clockStep(typed, direction, isLarge))
          : undefined
      }
    />
  );
}
