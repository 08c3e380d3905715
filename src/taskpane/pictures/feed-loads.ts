import { splitFeed, type PlanIndex, type PlannedFeedLoad } from "../../planning/plan/model";
import { label, line, pictureWidth, rect, type Picture, type Shape } from "./picture";

const top = 6;
const blockHeight = 60;
const barHeight = 9;
const looks = [
  { look: "used", meaning: "while every feed is up" },
  { look: "redundancy", meaning: "at worst, after the loss of another feed" },
];

/** Draws two bars a feed, as shares of what it may carry all the time: while all is well, and at worst; a post marks the limit. */
export function drawFeedLoads(site: string, loads: readonly PlannedFeedLoad[], unfed: readonly string[]): Picture {
  const most = Math.max(1, ...loads.map(({ worst }) => worst.share)) * 1.04;
  const scaled = (share: number) => (share / most) * (pictureWidth - 2);
  const post = 1 + scaled(1);
  const shapes: Shape[] = loads.flatMap(({ row, normal, worst }, at) => {
    const y = top + at * blockHeight;
    return [
      label(1, y + 11, `${worst.ok ? "" : "⚠ "}${row.feed}`, { look: "label strong", room: 130 }),
      label(pictureWidth - 1, y + 11, `limit ${amps(worst.limitAmps)} A`, { anchor: "end", look: "label soft" }),
      rect(1, y + 17, scaled(normal.share), barHeight, normal.ok ? "part used" : "part used alarm"),
      rect(1, y + 17 + barHeight, scaled(worst.share), barHeight, worst.ok ? "part redundancy" : "part used alarm"),
      line(post, y + 13, post, y + 17 + 2 * barHeight + 3, "post"),
      label(1, y + 17 + 2 * barHeight + 13, `${Math.round(normal.normalWatts)} W normal, ${Math.round(worst.worstWatts)} W worst: ${amps(worst.worstAmps)} A, ${percent(worst.share)}`),
    ];
  });
  return { title: `Feed loads of ${site}`, summary: describeFeedLoads(site, loads, unfed), width: pictureWidth, height: top + loads.length * blockHeight, shapes, legend: looks };
}

/** Says in words what the feeds of a site carry. */
export function describeFeedLoads(site: string, loads: readonly PlannedFeedLoad[], unfed: readonly string[]): string {
  const each = loads.map(
    ({ row, normal, worst }) =>
      `${row.feed} carries ${amps(normal.worstAmps)} A, at worst ${amps(worst.worstAmps)} A of ${amps(worst.limitAmps)} A (${percent(worst.share)})${worst.ok ? "" : normal.ok ? ": too much once another feed is lost" : ": too much already"}.`,
  );
  return `${site}: ${each.join(" ")}${unfed.length === 0 ? "" : ` On no feed yet, and in no bar: ${unfed.join(", ")}.`}`;
}

/** Lists the feeds whose loads belong to a site, in the order of their rows. */
export function feedLoadsOf(site: string, loads: readonly PlannedFeedLoad[]): readonly PlannedFeedLoad[] {
  return loads.filter(({ row }) => row.site.toLowerCase() === site.toLowerCase());
}

/** Names devices of a site that draw power but hang on no feed of the plan: their load is in no bar. */
export function unfedDevices(index: PlanIndex, site: string): readonly string[] {
  const devices = [...index.rowsWith("arrays", "site", site).map((row) => ({ row, name: row.array })), ...index.rowsWith("switches", "site", site).map((row) => ({ row, name: row.switch }))];
  return devices.filter(({ row }) => [row.feedA, row.feedB].every((text) => index.find("feeds", splitFeed(text).feed) === null)).map(({ name }) => name);
}

function amps(current: number): string {
  return (Math.round(current * 10) / 10).toString();
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
