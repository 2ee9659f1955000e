import { createEffect, createSignal, on } from "solid-js";

/**
 * Which of a list of proposals is meant, and the keys that move there: the editable combobox with a list, of the ARIA Authoring Practices (W3C).
 * @param proposals what is proposed now
 * @param pick takes one of them
 */
export function makeCombobox<T>(proposals: () => readonly T[], pick: (proposal: T) => void) {
  const [isOpen, setOpen] = createSignal(false);
  const [active, setActive] = createSignal(-1);
  createEffect(on(proposals, () => setActive(-1), { defer: true }));
  const shown = () => isOpen() && proposals().length > 0;
  const take = (proposal: T | undefined) => {
    if (proposal === undefined) return;
    setOpen(false);
    setActive(-1);
    pick(proposal);
  };
  const move = (by: number) => {
    const count = proposals().length;
    if (count === 0) return;
    setActive(isOpen() ? (active() + by + (active() < 0 && by < 0 ? 1 : 0) + count) % count : by > 0 ? 0 : count - 1);
    setOpen(true);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.isComposing) return; // letters of another script are still being put together
    if (event.key === "ArrowDown") move(1);
    else if (event.key === "ArrowUp") move(-1);
    else if (event.key === "Enter") take(shown() ? proposals()[Math.max(0, active())] : undefined);
    else if (event.key === "Escape" && shown()) {
      setOpen(false);
      setActive(-1);
      event.stopPropagation();
    } else return;
    event.preventDefault();
  };
  return { shown, active, setOpen, take, onKeyDown };
}
