import { momentOf } from "../../actions/moment";
import { issueOffer, readCustomersFile, readOffer, readWithOffers, type CustomersFile, type OfferToIssue } from "../../actions/offers";
import { readPlanSheets } from "../../actions/read-plan";
import { issuedOffers, lastIssued, planCosts } from "../../planning/offer";
import { PlanModel, type Offer } from "../../planning/plan/model";
import { cellText, type PackBlock } from "../../planning/printouts";
import { cellArea } from "../../sheet";
import { makeButton } from "../elements/button";
import { fill, make } from "../elements/make";
import { propose } from "../elements/preview";
import { saveFile } from "../elements/save-file";
import { showPanel } from "../elements/show-panel";
import type { PaneContext } from "./view";

/** The part of the Plan view that issues offers. */
export interface QuoteGroup {
  readonly element: HTMLElement;
  readonly show: (model: PlanModel) => Promise<void>;
}

/** Makes the part of the Plan view that takes costs from the price list, issues offers of the quote, and makes the customer's files of them. */
export function makeQuoteGroup(pane: PaneContext, refresh: () => Promise<void>): QuoteGroup {
  const { port, host, status } = pane;
  const [offers, place] = [make("ul"), make("div")];
  const costs = make("div", { class: "bay-row" }, makeButton("Take costs from the price list …", takeCosts));
  const element = make(
    "section",
    { class: "bay-group", hidden: true },
    make("h2", {}, "Offers"),
    make("p", {}, "Rows of Quote with the same Offer are sent out together. What is issued stands on a sheet of its own, in values, without costs and margins; an earlier revision stays."),
    costs,
    offers,
    place,
  );

  function takeCosts(): Promise<void> {
    return propose(pane, place, {
      title: "Take costs from the price list",
      read: readPlanSheets,
      planner: () => (workbook) => planCosts(new PlanModel(workbook)),
      nothing: "Quote has every cost as the price list has it. A row is found there by its Part, or by its Item where Part is blank.",
      written: refresh,
    });
  }

  const look = (name: string): Promise<void> =>
    status.run("Issue an offer", async () => {
      const shown = await readOffer(port, name, momentOf(host.now(), "").madeAt);
      const { printout, revision, sheet } = shown;
      showPanel(
        place,
        `${printout.title}, as it would be sent out`,
        make("p", {}, `${printout.standing} It would stand on the sheet ${sheet.name}, and Quote would say revision ${revision}.`),
        make("div", { class: "bay-scroll", tabindex: 0, role: "region", "aria-label": printout.title }, printout.blocks.map(showBlock)),
        make("div", { class: "bay-row" }, makeButton(`Issue revision ${revision}`, () => issue(shown), { appearance: "primary" }), makeButton("Leave it as it is", () => fill(place))),
      );
      return null;
    });

  const issue = (shown: OfferToIssue): Promise<void> =>
    status.run("Issue an offer", async () => {
      const sheet = await issueOffer(port, shown);
      fill(place);
      await refresh();
      await port.apply([{ kind: "select", sheet, area: cellArea({ row: 0, column: 0 }) }]);
      return { sentence: `${shown.printout.title} stands on the sheet ${sheet}. Its file for the customer is made with the buttons beside it.` };
    });

  const give = (title: string, name: string, ending: string, bytesOf: (file: CustomersFile) => Promise<Blob>): Promise<void> =>
    status.run(title, async () => {
      const file = await readCustomersFile(port, name);
      const saved = `${file.sheet.name}${ending}`;
      saveFile(saved, await bytesOf(file));
      return { sentence: `${saved} is among your downloads. It holds the offer, and nothing else of this workbook.` };
    });
  const givePdf = (name: string): Promise<void> =>
    give("Customer's PDF", name, ".pdf", async ({ printout }) => {
      const { writePrintout } = await import(/* webpackChunkName: "pdf" */ "../../pdf/write-printout");
      return new Blob([await writePrintout(printout)], { type: "application/pdf" });
    });
  const giveWorkbook = (name: string): Promise<void> =>
    give("Customer's workbook", name, ".xlsx", async ({ sheet }) => new Blob([await host.writeWorkbook([sheet])], { type: workbookType }));

  function showOffer({ name, rows }: Offer, last: number): HTMLElement {
    const issued = last === 0 ? "not issued yet" : `revision ${last} is issued`;
    const small = (text: string, run: () => unknown): HTMLElement => makeButton(text, run, { size: "small", label: `${text} ${name}` });
    const files = last === 0 ? [] : [small("Customer's PDF", () => givePdf(name)), small("Customer's workbook", () => giveWorkbook(name))];
    return make(
      "li",
      { class: "bay-step" },
      make("strong", {}, name),
      make("span", { class: "small soft" }, `${rows.length} ${rows.length === 1 ? "row" : "rows"}, ${issued}`),
      make("div", { class: "bay-row" }, small("Issue …", () => look(name)), files),
    );
  }

  return {
    element,
    show: async (model) => {
      const found = model.quote.offers();
      element.hidden = found.length === 0 && model.rows("prices").length === 0;
      costs.hidden = model.rows("prices").length === 0;
      const issued = found.length === 0 ? [] : issuedOffers(await readWithOffers(port));
      fill(offers, found.map((offer) => showOffer(offer, lastIssued(issued, offer.name)?.revision ?? 0)));
    },
  };
}

const workbookType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** Shows a block as a list: the pane is too narrow for its columns. */
function showBlock({ title, note, headers, lines }: PackBlock): HTMLElement {
  return make(
    "div",
    {},
    make("h4", {}, title),
    note !== "" && make("p", { class: "small soft" }, note),
    make(
      "ul",
      { class: "bay-list" },
      lines.map(([first = "", ...cells]) => {
        const said = cells.flatMap((cell, at) => (cell === "" ? [] : [`${headers[at + 1]!} ${cellText(cell)}`]));
        return make("li", {}, make("strong", {}, cellText(first)), make("div", { class: "small" }, said.join(" · ")));
      }),
    ),
  );
}
