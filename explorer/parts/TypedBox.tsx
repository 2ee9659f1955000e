import { createEffect, createSignal, on } from "solid-js";

/**
 * A box that keeps what is typed until it is left or Enter is pressed, and only then says so. Escape gives back what
 * stood there.
 */
export function TypedBox(props: {
  id: string;
  label: string;
  /** What stands there, as text; empty where nothing is written. */
  value: string;
  placeholder?: string | undefined;
  describedBy?: string | undefined;
  isWrong?: boolean | undefined;
  /** Characters it has room for. */
  room: number;
  isNumber?: boolean | undefined;
  isLong?: boolean | undefined;
  onCommit(text: string): void;
  onStep?: ((direction: number, isLarge: boolean, typed: string) => void) | undefined;
}) {
  const [text, setText] = createSignal(props.value);
  createEffect(on(() => props.value, setText, { defer: true }));
  const commit = () => {
    if (text() !== props.value) props.onCommit(text());
    // What was refused or came to the same stands again as it was.
    queueMicrotask(() => setText(props.value));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "Enter" && !props.isLong) {
      event.preventDefault();
      commit();
    } else if (event.key === "Escape" && text() !== props.value) {
      event.stopPropagation();
      setText(props.value);
    } else if ((event.key === "ArrowUp" || event.key === "ArrowDown") && props.onStep !== undefined) {
      event.preventDefault();
      props.onStep(event.key === "ArrowUp" ? 1 : -1, event.shiftKey, text());
    }
  };
  const shared = () => ({
    id: props.id,
    "aria-label": props.label,
    "aria-invalid": props.isWrong ? ("true" as const) : undefined,
    "aria-describedby": props.describedBy || undefined,
    placeholder: props.placeholder,
    autocomplete: "off" as const,
    spellcheck: props.isLong === true,
    onInput: (event: InputEvent & { currentTarget: HTMLInputElement | HTMLTextAreaElement }) =>
      setText(event.currentTarget.value),
    onBlur: commit,
    onKeyDown,
  });
  return props.isLong ? (
    <textarea class="box box-long" rows="3" value={text()} {...shared()} />
  ) : (
    <input
      class="box"
      classList={{ "box-number": props.isNumber === true }}
      type="text"
      inputmode={props.isNumber ? "decimal" : "text"}
      style={{ width: `calc(${props.room}ch + 20px)` }}
      value={text()}
      onFocus={(event) => props.isNumber && event.currentTarget.select()}
      {...shared()}
    />
  );
}
