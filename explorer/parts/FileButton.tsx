/** A button that asks for a file; the same file can be chosen twice in a row. */
export function FileButton(props: { words: string; accept: string; onFile: (file: File) => void }) {
  return (
    <label class="act file-label">
      {props.words}
      <input
        type="file"
        accept={props.accept}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = "";
          if (file !== undefined) props.onFile(file);
        }}
      />
    </label>
  );
}
