import { layoutCapacity, layoutRack } from "../../planning/drawings";
import type { PlanModel } from "../../planning/plan/model";
import { makeButton } from "../elements/button";
import { fill, make } from "../elements/make";
import { drawCabling, layoutCabling } from "../pictures/cabling-graph";
import { drawCapacity } from "../pictures/capacity-bars";
import { renderPicture } from "../pictures/copy-picture";
import { drawPicture } from "../pictures/draw-picture";
import { drawFeedLoads } from "../pictures/feed-loads";
import type { Picture } from "../pictures/picture";
import { drawRack } from "../pictures/rack-elevation";
import { copyPng } from "./copy-png";
import type { PaneContext } from "./view";

interface PictureKind {
  readonly name: string;
  /** What there is one picture of: a rack, a site; one of the whole plan where there is nothing to choose. */
  readonly subjects: (model: PlanModel) => readonly string[];
  /** Null where the plan holds nothing to draw. */
  readonly draw: (model: PlanModel, subject: string) => Picture | null;
  readonly empty: string;
  readonly caution?: string;
}

const sitesOf = (model: PlanModel) => model.rows("sites").map(({ site }) => site);

const kinds: readonly PictureKind[] = [
  {
    name: "Capacity by pool",
    subjects: () => [],
    draw: (model) => {
      const pools = layoutCapacity(model);
      return pools.length === 0 ? null : drawCapacity(pools);
    },
    empty: "No array stands in the plan yet. Fill Arrays, then look again.",
  },
  {
    name: "Rack elevation",
    subjects: (model) => model.racks.all().map(({ rack }) => rack.rack),
    draw: (model, subject) => {
      const contents = model.racks.all().find(({ rack }) => rack.rack === subject);
      return contents === undefined ? null : drawRack(layoutRack(contents));
    },
    empty: "No rack stands in the plan yet. Fill Racks, then look again.",
    caution: "Planning figures. Anchor the rack and fill it from the bottom; lift as the plan says, drives out. Floor load and local codes decide.",
  },
  {
    name: "Feed loads",
    subjects: sitesOf,
    draw: (model, subject) => {
      const loads = model.power.loadsAt(subject);
      return loads.length === 0 ? null : drawFeedLoads(subject, loads, model.power.unfedAt(subject));
    },
    empty: "No feed with volts and breaker stands in the plan for this site. Fill Feeds, then look again.",
    caution: "Planning figures from the watts in the plan. A licensed electrician and the local code decide what a circuit may carry.",
  },
  {
    name: "Cabling",
    subjects: sitesOf,
    draw: (model, subject) => {
      const layout = layoutCabling(model, subject);
      return layout.runs.length === 0 ? null : drawCabling(layout);
    },
    empty: "Nothing is cabled here yet. Fill Switches and Ports, or propose the cabling.",
  },
];

/** Makes the part of the Plan view that shows the plan as pictures. */
export function makePicturesGroup(pane: PaneContext): { readonly element: HTMLElement; show(model: PlanModel): void } {
  const kindSelect = make("select", { "aria-label": "Picture", on: { change: () => redraw() } }, kinds.map(({ name }) => make("option", {}, name)));
  const subjectSelect = make("select", { "aria-label": "Of", on: { change: () => redraw() } });
  const figure = make("figure");
  const element = make("section", { class: "bay-group", hidden: true }, make("h2", {}, "Pictures"), make("div", { class: "bay-row" }, kindSelect, subjectSelect), figure);
  let shown: PlanModel | null = null;

  function redraw(): void {
    if (shown === null) return;
    const kind = kinds[kindSelect.selectedIndex] ?? kinds[0]!;
    const subjects = kind.subjects(shown);
    const chosen = subjects.includes(subjectSelect.value) ? subjectSelect.value : (subjects[0] ?? "");
    fill(subjectSelect, subjects.map((subject) => make("option", {}, subject)));
    subjectSelect.value = chosen;
    subjectSelect.hidden = subjects.length === 0;
    const picture = kind.draw(shown, chosen);
    if (picture === null) {
      fill(figure, make("p", {}, kind.empty));
      return;
    }
    const drawing = drawPicture(picture);
    fill(
      figure,
      drawing,
      picture.legend !== undefined && make("ul", { class: "bay-legend small" }, picture.legend.map(({ look, meaning }) => make("li", {}, swatch(look), meaning))),
      make("figcaption", { class: "small" }, picture.summary),
      kind.caution !== undefined && make("p", { class: "bay-caution small" }, kind.caution),
      make("div", { class: "bay-row" }, makeButton("Copy as PNG", () => copyPng(pane, picture.title, () => renderPicture(drawing)), { size: "small" })),
    );
  }

  return {
    element,
    show(model) {
      shown = model;
      element.hidden = model.rows("sites").length + model.rows("arrays").length + model.rows("racks").length === 0;
      if (!element.hidden) redraw();
    },
  };
}

function swatch(look: string): SVGElement {
  const box = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  box.setAttribute("viewBox", "0 0 16 10");
  box.setAttribute("aria-hidden", "true");
  const area = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  for (const [name, value] of Object.entries({ x: 0.5, y: 0.5, width: 15, height: 9, class: `part ${look}` })) area.setAttribute(name, String(value));
  box.append(area);
  return box;
}
