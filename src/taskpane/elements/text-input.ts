import { make, type Attributes } from "./make";

/** A field for one line of text, with its label. */
export type TextInput = HTMLElement & { value: string };

/** Makes a field for one line of text. */
export function makeTextInput(label: string, attributes: Attributes = {}): TextInput {
  return make("fluent-text-input", attributes, label) as TextInput;
}
