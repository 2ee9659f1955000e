import { createSignal } from "solid-js";

/** Where a meter's log is chosen or dropped. */
export function LogDrop(props: {
  /** Whether the entry has a log already. */
  hasLog: boolean;
  onFile: (file: File) => void;
}) {
  const [isOver, setOver] = createSignal(false);
  const words = () => (props.hasLog ? "Take another log" : "Choose a meter's log");
  const take = (file: File | undefined) => file !== undefined && props.onFile(file);
  /** Whether files are being dragged, which then do not go to the page. */
  const isTaken = (event: DragEvent) => {
    if (event.dataTransfer?.types.includes("Files") !== true) return false;
    event.preventDefault();
    event.stopPropagation();
    return true;
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the same is done by the button for a file inside it
    <div
      class="log-drop"
      classList={{ "log-over": isOver() }}
      onDragOver={(event) => isTaken(event) && setOver(true)}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        if (!isTaken(event)) return;
        setOver(false);
        take(event.dataTransfer?.files[0]);
      }}
    >
      <label class="act file-label">
        {words()}
        <input
          type="file"
          accept=".csv,.tsv,.txt,text/csv,text/plain"
          aria-label={words()}
          onChange={(event) => {
            take(event.currentTarget.files?.[0]);
            event.currentTarget.value = "";
          }}
        />
      </label>
      <span class="log-hint">
        {props.hasLog
          ? "or drop it here."
          : "or drop it here: a table with titles over its columns (CSV). It stays on this machine; only the days of the event are kept, in this notebook."}
      </span>
    </div>
  );
}
