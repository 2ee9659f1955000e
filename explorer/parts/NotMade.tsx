import { Show } from "solid-js";
import "./notMade.css";

/** Why an edit was not made, where it is seen from anywhere on the sheet. */
export function NotMade(props: { why: string | null; onClose: () => void }) {
  return (
    <div role="alert" class="not-made no-print">
      <Show when={props.why}>
        {(why) => (
          <p>
            <span class="wrong">{why()}</span>
            <button type="button" class="act" onClick={() => props.onClose()}>
              Close
            </button>
          </p>
        )}
      </Show>
    </div>
  );
}
