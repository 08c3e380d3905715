import { saveFile } from "../elements/save-file";
import type { PaneContext } from "./view";

/** Copies a picture; where the program forbids the clipboard to its panes, the person can still save it. */
export function copyPng({ status }: PaneContext, title: string, render: () => Promise<Blob>): Promise<void> {
  return status.run("Copy the picture", async () => {
    const png = await render();
    try {
      await navigator.clipboard.write([new ClipboardItem({ "image/png": png })]);
      return { sentence: `${title} is copied; paste it where you need it.` };
    } catch {
      return { sentence: "Copying is not allowed to the pane here. Save the picture as a file instead.", waysOn: [{ label: "Save as PNG", run: () => saveFile(`${title}.png`, png) }] };
    }
  });
}
