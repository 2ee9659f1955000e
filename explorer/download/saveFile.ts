/** Hands a text or a picture over as a file; nothing leaves the machine. */
export function saveFile(name: string, kind: string, content: string | Blob): void {
  const url = URL.createObjectURL(new Blob([content], { type: kind }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** "Autumn weekend in the grove" as "autumn-weekend-in-the-grove". */
export function fileName(name: string): string {
  const plain = name.normalize("NFKD").toLowerCase();
  return plain.replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "") || "plan";
}
