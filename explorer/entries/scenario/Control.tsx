import { Match, Switch } from "solid-js";
import { choiceLabel } from "../../../engine/fields/fieldWords.ts";
import { type Path, valueAt } from "../../../engine/fields/formPath.ts";
import type { SchemaNode } from "../../../engine/fields/formSchema.ts";
import { useForm } from "../../parts/formContext.ts";
import { ChoiceBox } from "./ChoiceBox.tsx";
import { namedChoices } from "./choices.ts";
import type { ControlProps } from "./controlProps.ts";
import { EitherControl } from "./EitherControl.tsx";
import { MomentBox } from "./MomentBox.tsx";
import { NumberControl } from "./NumberControl.tsx";
import { WeekdayTicks } from "./WeekdayTicks.tsx";
import { WordBox } from "./WordBox.tsx";

/** The box, list of choices or tick of one field; what it is follows from the field's schema. */
export function Control(props: ControlProps) {
  const form = useForm();
  const value = () => valueAt(form.document(), props.path);
  const choices = () => namedChoices(form.document(), props.path, props.node);
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
            words: choiceLabel(each, props.node),
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
