import { make, type Child } from "./make";

interface ButtonOptions {
  /** primary: the one thing to do here; subtle: a side path. */
  readonly appearance?: "primary" | "subtle";
  readonly size?: "small";
  /** What a screen reader says where the text alone says too little. */
  readonly label?: string;
  readonly icon?: true;
  readonly slot?: string;
}

/** Makes a button. Its role stands in an attribute too, for tools that see attributes only. */
export function makeButton(content: Child, run: (() => unknown) | null, { appearance, size, label, icon, slot }: ButtonOptions = {}): HTMLElement {
  return make("fluent-button", { role: "button", appearance, size, slot, "aria-label": label, "icon-only": icon, on: run === null ? {} : { click: () => void run() } }, content);
}
