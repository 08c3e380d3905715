import { makeButton } from "../elements/button";
import { fill, make } from "../elements/make";
import type { Loading } from "../pane-host";
import type { PaneContext } from "./view";

/** Makes the dialog in which a person says whether the add-in loads with this workbook, and reads what that means for others. */
export function makeLoadingDialog({ status }: PaneContext, loading: Loading): { readonly element: HTMLDialogElement; readonly open: () => Promise<void> } {
  const state = make("p", { role: "status" });
  const turn = makeButton("Turn on", () => set(), { appearance: "primary" });
  const element: HTMLDialogElement = make(
    "dialog",
    { "aria-labelledby": "bay-loading" },
    make("h2", { id: "bay-loading" }, "Load with this workbook"),
    make("p", {}, "On: our functions answer as soon as this workbook is opened, before anybody opens the pane."),
    make("p", { class: "bay-caution" }, "The workbook then carries a mark. Whoever opens it where the add-in is not installed is told of an add-in that cannot be loaded."),
    make("p", {}, "Off: the cells keep the values they were saved with. Where they show #NAME?, open the pane and enter our formulas again."),
    state,
    make("div", { class: "bay-row" }, turn, makeButton("Close", () => element.close())),
  );
  let isOn = false;

  function tell(): void {
    fill(state, `It is ${isOn ? "on" : "off"} in this workbook.`);
    fill(turn, isOn ? "Turn off" : "Turn on");
  }

  const set = () =>
    status.run("Load with this workbook", async () => {
      await loading.turn(!isOn);
      isOn = !isOn;
      tell();
      return { sentence: isOn ? "The add-in loads with this workbook from now on. Save it." : "The add-in no longer loads with this workbook. Save it." };
    });

  const open = () =>
    status.run("Load with this workbook", async () => {
      isOn = await loading.isOn();
      tell();
      element.showModal();
      return null;
    });

  return { element, open };
}
