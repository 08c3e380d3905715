import { make } from "./make";

/** Hands a file to the person, as the place in which the page lives does that: most put it among the downloads. */
export function saveFile(name: string, file: Blob): void {
  const address = URL.createObjectURL(file);
  make("a", { href: address, download: name }).click();
  // The browser reads it after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
