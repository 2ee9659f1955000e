import type { JSX } from "solid-js";

/** One of the questions, with what is to be known for it. */
export function Question(props: { n: number; title: string; says: string; children: JSX.Element }) {
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

/** A label and the field beside it. */
export function StartField(props: { label: string; children: JSX.Element }) {
  return (
    <div class="start-field">
      <span class="start-label" aria-hidden="true">
        {props.label}
      </span>
      <span class="start-value">{props.children}</span>
    </div>
  );
}
