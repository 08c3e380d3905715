import { make } from "../taskpane/elements/make";

/** The pane's place on the page, which folds away. */
export interface FoldingPane {
  readonly element: HTMLElement;
  /** Shows the pane, or folds it away. */
  readonly button: HTMLElement;
  fold(away: boolean): void;
  /** True where the pane is shown and leaves no room for the cells. */
  covers(): boolean;
}

/** Screens on which the pane covers the cells; page.css says the same. */
const small = matchMedia("(max-width: 600px), (max-width: 900px) and (max-height: 600px)");

/** Lets the pane fold away; on a small screen it is folded until somebody asks for it. */
export function makeFoldingPane(element: HTMLElement): FoldingPane {
  const button = make("button", { type: "button", "aria-controls": element.id, on: { click: () => { fold(!element.hidden); } } }, "Pane");
  const fold = (away: boolean) => {
    element.hidden = away;
    button.setAttribute("aria-expanded", String(!away));
    button.title = away ? "Show the pane beside the cells" : "Fold the pane away";
  };
  fold(small.matches);
  small.addEventListener("change", ({ matches }) => { fold(matches); });
  return { element, button, fold, covers: () => small.matches && !element.hidden };
}
