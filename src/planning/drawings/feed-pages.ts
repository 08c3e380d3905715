import type { PlanModel, PlannedFeedLoad } from "../plan/model";
import { formatAmps, formatPercent, formatWatts } from "../text";
import { describeFeedLoads } from "./describe-feed-loads";
import { flow, titleOfPart, type Block } from "./flow";
import { body, faint, firm, line, medium, paragraph, rect, text, type Mark, type PageContent } from "./page";

const wide = body.right - body.left;
const blockHeight = 30;
const notesTop = body.bottom - 12;

const caution = "Planning figures from the watts in the plan. A licensed electrician and the local code decide what a circuit may carry.";

/** Draws what each feed of a site carries while every feed is up, and at worst after the loss of another one. */
export function feedPages(model: PlanModel, site: string): readonly PageContent[] {
  const loads = model.power.loadsAt(site);
  const most = Math.max(1, ...loads.map(({ worst }) => worst.share)) * 1.02;
  const unfed = model.power.unfedAt(site);
  const summary = describeFeedLoads(site, loads, unfed);
  const notes = `${caution}${unfed.length === 0 ? "" : ` On no feed yet, and in no bar: ${unfed.join(", ")}.`}`;
  const blocks = loads.map((load): Block => ({ height: blockHeight, draw: (top) => feedBlock(model, load, top, (share) => (share / most) * wide) }));
  return flow(blocks, body.top + 9, notesTop - 3).map((marks, at) => ({
    kind: "feeds",
    title: titleOfPart("Feed loads", at),
    summary,
    marks: [...legend(), ...marks, ...paragraph(body.left, notesTop, wide, notes).marks.slice(0, 3)],
  }));
}

function legend(): readonly Mark[] {
  const y = body.top + 3;
  return [
    rect(body.left, y - 2.6, 6, 3, "dark"), ...text(body.left + 8, y, 70, "while every feed is up"),
    rect(body.left + 90, y - 2.6, 6, 3, "hatch"), ...text(body.left + 98, y, 100, "at worst, after the loss of another feed"),
    rect(body.left + 200, y - 2.6, 6, 3, "alarm"), ...text(body.left + 208, y, 40, "more than the limit"),
    line([[body.left + 263, y - 3.4], [body.left + 263, y + 0.8]], firm), ...text(body.left + 267, y, 110, "what the feed may carry all the time"),
  ];
}

function feedBlock(model: PlanModel, { row, normal, worst }: PlannedFeedLoad, top: number, scaled: (share: number) => number): readonly Mark[] {
  const silent = model.power.silentOn(row);
  const post = body.left + scaled(1);
  const tooMuch = worst.ok ? "" : normal.ok ? "Too much once another feed is lost: " : "Too much already: ";
  const normally = `${formatWatts(normal.normalWatts)} and ${formatAmps(normal.worstAmps)} normally (${formatPercent(normal.share)})`;
  const atWorst = `at worst ${formatWatts(worst.worstWatts)} and ${formatAmps(worst.worstAmps)} (${formatPercent(worst.share)})`;
  return [
    line([[body.left, top], [body.right, top]], faint),
    ...text(body.left, top + 5.5, 190, row.source === "" ? row.feed : `${row.feed}, ${row.source}`, { size: medium, isBold: true }),
    ...text(body.left + 194, top + 5.5, wide - 194, `limit ${formatAmps(worst.limitAmps)}`, { size: medium, align: "right" }),
    rect(body.left, top + 9, scaled(normal.share), 5, normal.ok ? "dark" : "alarm"),
    rect(body.left, top + 14, scaled(worst.share), 5, worst.ok ? "hatch" : "alarm"),
    line([[post, top + 7.5], [post, top + 20.5]], firm),
    ...text(body.left, top + 24, 250, `${tooMuch}${normally}; ${atWorst}`),
    ...(silent.length === 0 ? [] : text(body.left + 254, top + 24, wide - 254, `Not in it, as their watts are not known: ${silent.join(", ")}`)),
  ];
}
