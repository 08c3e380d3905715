import type { ChosenFile } from "./pane-host";

/** Lets the person choose a file of one of the kinds, such as ".xlsx", from this machine; null when nothing was chosen. */
export function chooseFile(kinds: readonly string[]): Promise<ChosenFile | null> {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = kinds.join(",");
  return new Promise((resolve, reject) => {
    input.addEventListener("cancel", () => { resolve(null); });
    input.addEventListener("change", () => {
      const file = input.files?.[0];
      if (file === undefined) resolve(null);
      else file.arrayBuffer().then((bytes) => { resolve({ name: file.name, bytes: new Uint8Array(bytes) }); }, reject);
    });
    input.click();
  });
}
