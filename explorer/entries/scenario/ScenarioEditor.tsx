import { createSignal, For, Show } from "solid-js";
import { formSchema } from "../../../engine/fields/formSchema.ts";
import { type FormGroup, formGroups } from "../../../engine/fields/groups.ts";
import { FormProvider } from "../../parts/formContext.ts";
import { GroupHead } from "./GroupHead.tsx";
import { type FormOf, makeScenarioForm } from "./makeScenarioForm.ts";
import { AnyField } from "./ObjectFields.tsx";
import "./scenario.css";

/** The form of a scenario: groups at the left with a line each, and the fields of one group as ruled lines. */
export function ScenarioEditor(props: FormOf) {
  const groups = formGroups();
  const [current, setCurrent] = createSignal(groups[0]!.name);
  const [isExpert, setExpert] = createSignal(false);
  const form = makeScenarioForm(props, isExpert);
  const fieldsId = `${form.prefix}-group`;
  const isThere = (group: FormGroup) =>
    group.name !== "Variants" || isExpert() || (props.document.variants ?? []).length > 0;
  return (
    <FormProvider value={form}>
      <div class="scenario-form">
        <div class="form-groups">
          <For each={groups}>
            {(group, index) => (
              <Show when={isThere(group)}>
                <GroupHead
                  group={group}
                  of={props}
                  row={index() + 1}
                  isCurrent={current() === group.name}
                  fieldsId={fieldsId}
                  onChoose={() => setCurrent(group.name)}
                />
                <Show when={current() === group.name}>
                  <section class="group-fields" id={fieldsId} aria-label={group.name}>
                    <div class="columns">
                      <h3>{group.name}</h3>
                      <span>Value</span>
                      <span>Allowed, usual boxed</span>
                      <span>Why</span>
                      <span>{props.base === undefined ? "" : "Was"}</span>
                    </div>
                    <For each={group.keys}>
                      {(key) => (
                        <AnyField
                          path={[key]}
                          node={formSchema().properties![key]!}
                          isOptional={formSchema().required?.includes(key) !== true}
                        />
                      )}
                    </For>
                  </section>
                </Show>
              </Show>
            )}
          </For>
        </div>
        <p class="depth">
          <button type="button" class="act" aria-pressed={isExpert()} onClick={() => setExpert(!isExpert())}>
            {isExpert() ? "Show the plain fields" : "Show every field"}
          </button>
        </p>
      </div>
    </FormProvider>
  );
}
