import { make } from "./make";

export type Checkbox = HTMLElement & { checked: boolean };

/** Makes a check box that a screen reader calls by `label`; `changed` is told whenever a person changes it. */
export function makeCheckbox(label: string, isChecked: boolean, changed: (isChecked: boolean) => void): Checkbox {
  const box = make("fluent-checkbox", { "aria-label": label }) as Checkbox;
  box.checked = isChecked;
  box.addEventListener("change", () => changed(box.checked));
  return box;
}
