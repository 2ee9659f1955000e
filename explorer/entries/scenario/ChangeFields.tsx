import { createMemo, createSignal, Index, Show } from "solid-js";
import { changesInWords } from "../../../engine/fields/changesInWords.ts";
import { changeAdd, changeAway, type Path, valueAt } from "../../../engine/fields/formPath.ts";
import type { SchemaNode } from "../../../engine/fields/formSchema.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import { elementId, problemsAt, useForm } from "../../parts/formContext.ts";
import { TypedBox } from "../../parts/TypedBox.tsx";
import { WrongLines } from "../../parts/WrongLines.tsx";

type Written = { at: string; to?: unknown; add?: unknown; remove?: true };

/** The changes that make a variant: each in words, and as it is written at expert depth. */
export function ChangeFields(props: { path: Path; node: SchemaNode }) {
  const form = useForm();
  const changes = () => (valueAt(form.document(), props.path) ?? []) as Written[];
  const words = createMemo(() => {
    const applied = applyChanges(form.document(), changes() as Change[]);
    return applied.ok ? changesInWords(changes() as Change[], form.document(), applied.document as never) : [];
  });
  const move = (index: number, by: number) => {
    const moved = [...changes()];
    moved.splice(index + by, 0, ...moved.splice(index, 1));
    form.set(props.path, moved);
  };
  const remove = (index: number) => {
    const away = changeAway(form.document(), [...props.path, index]);
    if (away !== null) form.commit([away]);
  };
  return (
    <div class="changes">
      <p class="changes-words">{words().length === 0 ? "Nothing differs yet." : `${words().join("; ")}.`}</p>
      <Show when={form.isExpert()}>
        <ol class="short-lines">
          <Index each={changes()}>
            {(change, index) => (
              <li class="short-line change-line">
                <ChangeLine path={[...props.path, index]} change={change()} name={`Change ${index + 1}`} />
                <span class="line-acts">
                  <button
                    type="button"
                    class="act"
                    disabled={index === 0}
                    aria-label={`Earlier: change ${index + 1}`}
                    onClick={() => move(index, -1)}
                  >
                    ↑
                  </button>
                  <button
                    type="button"
                    class="act"
                    disabled={index === changes().length - 1}
                    aria-label={`Later: change ${index + 1}`}
                    onClick={() => move(index, 1)}
                  >
                    ↓
                  </button>
                  <button
                    type="button"
                    class="act"
                    disabled={changes().length <= 1}
                    aria-label={`Remove: change ${index + 1}`}
                    onClick={() => remove(index)}
                  >
                    remove
                  </button>
                </span>
              </li>
            )}
          </Index>
        </ol>
        <button
          type="button"
          class="act"
          aria-label="Add: change"
          onClick={() =>
            form.commit([
              changeAdd(
                form.document(),
                props.path,
                { at: "bank.blockAh", to: form.document().bank.blockAh },
                form.filled(),
              ),
            ])
          }
        >
          add a change
        </button>
      </Show>
      <WrongLines path={props.path} problems={problemsAt(form, props.path, true)} />
    </div>
  );
}

function ChangeLine(props: { path: Path; change: Written; name: string }) {
  const form = useForm();
  const [unread, setUnread] = createSignal("");
  const deed = () => (props.change.remove === true ? "remove" : props.change.add !== undefined ? "add" : "to");
  const value = () => props.change.to ?? props.change.add;
  const pick = (to: string) => {
    const { at } = props.change;
    form.set(props.path, to === "remove" ? { at, remove: true } : { at, [to]: value() ?? 1 });
  };
  const write = (text: string) => {
    try {
      const read = JSON.parse(text) as unknown;
      setUnread("");
      form.set(props.path, { at: props.change.at, [deed()]: read });
    } catch {
      setUnread(
        `“${text.slice(0, 40)}” cannot be read; write a number, a text in "quotes", or a whole part in braces. The old value stays.`,
      );
    }
  };
  const describedBy = () => (unread() === "" ? undefined : elementId(form, props.path, "unread"));
  return (
    <>
      <TypedBox
        id={elementId(form, [...props.path, "at"])}
        label={`${props.name}, place`}
        value={props.change.at}
        room={24}
        isWrong={problemsAt(form, props.path, true).length > 0}
        onCommit={(at) => form.set([...props.path, "at"], at.trim())}
      />
      <select
        class="box"
        aria-label={`${props.name}, what happens there`}
        onChange={(event) => pick(event.currentTarget.value)}
      >
        <option value="to" selected={deed() === "to"}>
          becomes
        </option>
        <option value="add" selected={deed() === "add"}>
          is given
        </option>
        <option value="remove" selected={deed() === "remove"}>
          is taken out
        </option>
      </select>
      <Show when={deed() !== "remove"}>
        <TypedBox
          id={elementId(form, [...props.path, "to"])}
          label={`${props.name}, value`}
          value={JSON.stringify(value())}
          room={16}
          isLong={typeof value() === "object"}
          isWrong={unread() !== ""}
          describedBy={describedBy()}
          onCommit={write}
        />
      </Show>
      <Show when={unread() !== ""}>
        <p class="wrong" id={elementId(form, props.path, "unread")}>
          {unread()}
        </p>
      </Show>
    </>
  );
}
