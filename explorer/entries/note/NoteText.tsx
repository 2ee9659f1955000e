import { createEffect } from "solid-js";

/**
 * A note as it is read; what it quotes can be asked about by click or Enter.
 * @param clean HTML that has been through the sanitiser
 */
export function NoteText(props: { clean: string; onWhy: (text: string) => void }) {
  let text!: HTMLDivElement;
  createEffect(() => {
    void props.clean;
    for (const figure of text.querySelectorAll<HTMLElement>(".live:not(.live-unknown)")) {
      figure.tabIndex = 0;
      figure.role = "button";
      figure.setAttribute("aria-label", `${figure.textContent}: where does it come from?`);
    }
  });
  const ask = (event: Event) => {
    const figure = (event.target as Element).closest<HTMLElement>(".live:not(.live-unknown)");
    if (figure === null) return;
    event.preventDefault();
    props.onWhy(figure.title);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the figures inside are the buttons
    <div
      ref={text}
      class="note-text"
      innerHTML={props.clean}
      onClick={ask}
      onKeyDown={(event) => (event.key === "Enter" || event.key === " ") && ask(event)}
    />
  );
}
