import { make } from "./make";

/** How long the browser may take to begin reading what it saves. */
const milliseconds = 60_000;

/** Hands a file to the browser to save; a program may forbid that to its panes, and does not say so. */
export function saveFile(name: string, file: Blob): void {
  const address = URL.createObjectURL(file);
  make("a", { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), milliseconds);
}
