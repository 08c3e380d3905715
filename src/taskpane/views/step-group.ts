import { make } from "../elements/make";
import type { PaneContext } from "./view";

/** Makes the part of the Commission view that tells how a tab is filled one step at a time on a phone or tablet. */
export function makeStepGroup({ host }: PaneContext): HTMLElement {
  const { protocol, hostname, href } = new URL(host.stepAddress);
  const how = "Save the workbook with its tabs as an .xlsx file, send it to the phone, open this page there, and choose the file.";
  const isHere = hostname === "localhost" || hostname === "127.0.0.1";
  return make(
    "section",
    { class: "bay-group" },
    make("h2", {}, "Step by step on a phone or tablet"),
    make("p", {}, how, " It shows one step at a time, without a network once it is loaded."),
    make("p", {}, make("a", { href, target: "_blank", rel: "noopener" }, href)),
    isHere && make("p", { class: "bay-caution small" }, "This address is this machine's alone: a phone cannot reach it. Put the site on an https address of your firm; see Installing in the help."),
    !isHere && protocol !== "https:" && make("p", { class: "bay-caution small" }, "A phone opens the page from an https address alone. Put the site on one; see Installing in the help."),
    make("p", { class: "soft small" }, "The file that the phone gives back comes in below."),
  );
}
