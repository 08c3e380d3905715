import type { PlanModel } from "../plan/model";
import { cablingPages } from "./cabling-pages";
import { capacityPages } from "./capacity-pages";
import { feedPages } from "./feed-pages";
import type { DrawingPage } from "./page";
import { rackPages } from "./rack-pages";
import { finishPages, type Made } from "./title-block";

/**
 * Draws a site on pages of A3, landscape: capacity, racks front and rear, feed loads, then the cabling with every port labelled.
 *
 * What the plan does not tell of has no page: none at all for a site that it does not name. Text is never smaller than 7 point.
 */
export function drawingPages(model: PlanModel, site: string, made: Made | null = null): readonly DrawingPage[] {
  const before = [...capacityPages(model, site), ...rackPages(model, site), ...feedPages(model, site)];
  const row = model.find("sites", site);
  return finishPages([...before, ...cablingPages(model, site, before.length)], row?.site ?? site, [row?.customer ?? "", row?.room ?? ""].filter((part) => part !== "").join(", "), made);
}
