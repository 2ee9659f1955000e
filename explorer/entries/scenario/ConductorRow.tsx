import { Show } from "solid-js";
import { fieldLabel } from "../../../engine/fields/fieldWords.ts";
import { type Path, pattern, valueAt } from "../../../engine/fields/formPath.ts";
import type { SchemaNode } from "../../../engine/fields/formSchema.ts";
import { elementId, problemsAt, useForm } from "../../parts/formContext.ts";
import { Control } from "./Control.tsx";
import { FieldRow } from "./FieldRow.tsx";

type Cable = { awg?: string; mm2?: number; oneWayM?: number };

/** Cross-sections sold, beside the wire gauges nearest to them. */
const NEAREST: readonly (readonly [string, number])[] = [
  ["18", 0.75],
  ["16", 1.5],
  ["14", 2.5],
  ["12", 4],
  ["10", 6],
  ["8", 10],
  ["6", 16],
  ["4", 25],
  ["2", 35],
  ["1/0", 50],
  ["2/0", 70],
  ["3/0", 95],
  ["4/0", 120],
];

/** A conductor by its wire gauge or its cross-section; changing over takes the nearest size sold. */
export function ConductorRow(props: { path: Path; node: SchemaNode }) {
  const form = useForm();
  const cable = () => (valueAt(form.document(), props.path) ?? valueAt(form.filled(), props.path) ?? {}) as Cable;
  const inMm = () => cable().mm2 !== undefined && cable().awg === undefined;
  const key = () => (inMm() ? "mm2" : "awg");
  const label = () => fieldLabel(pattern([...props.path, "awg"]));
  const problems = () => problemsAt(form, [...props.path, key()], false);
  const switchTo = (isMm: boolean) => {
    if (isMm === inMm()) return;
    const { awg, mm2, ...rest } = cable();
    const gauge = NEAREST.find(([name]) => name === awg) ?? NEAREST[4]!;
    const nearest = NEAREST.reduce((best, each) =>
      Math.abs(each[1] - (mm2 ?? 6)) < Math.abs(best[1] - (mm2 ?? 6)) ? each : best,
    );
    form.set(props.path, isMm ? { ...rest, mm2: gauge[1] } : { ...rest, awg: nearest[0] });
  };
  return (
    <FieldRow path={[...props.path, key()]} node={props.node.properties![key()]!} isOptional={false} label={label()}>
      <Show when={!inMm()}>
        <span class="unit">AWG</span>
      </Show>
      <Control
        path={[...props.path, key()]}
        node={props.node.properties![key()]!}
        label={label()}
        isOptional={valueAt(form.document(), props.path) === undefined}
        isWrong={problems().length > 0}
        describedBy={`${elementId(form, [...props.path, key()], "wrong")} ${elementId(form, [...props.path, key()], "why")}`}
      />
      <button
        type="button"
        class="act"
        aria-label={`${label()}: give it in ${inMm() ? "AWG" : "mm²"}`}
        onClick={() => switchTo(!inMm())}
      >
        {inMm() ? "in AWG" : "in mm²"}
      </button>
    </FieldRow>
  );
}
