import { fileName, saveFile } from "../download/saveFile.ts";

/** Saves what an entry shows as a table; out of reach while nothing is known. */
export function CsvButton<Result>(props: {
  /** Of the scenario; it begins the file's name, and `what` ends it. */
  name: string;
  what: string;
  result: Result | null;
  csv: (result: Result) => string;
}) {
  return (
    <button
      type="button"
      class="act no-print"
      disabled={props.result === null}
      onClick={() => saveFile(`${fileName(props.name)}-${props.what}.csv`, "text/csv", props.csv(props.result!))}
    >
      CSV
    </button>
  );
}
