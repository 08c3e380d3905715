import { fill, make, type Child } from "./make";

/** Shows a panel in a place and brings its heading into sight, with the keys there, so that it is read aloud. */
export function showPanel(place: HTMLElement, title: string, ...content: readonly Child[]): void {
  const heading = make("h3", { tabindex: -1 }, title);
  fill(place, make("div", { class: "bay-panel" }, heading, content));
  heading.focus({ preventScroll: true });
  heading.scrollIntoView();
}
