import { describeFeedLoads } from "../../planning/drawings";
import type { PlannedFeedLoad } from "../../planning/plan/model";
import { formatAmps, formatPercent, formatWatts } from "../../planning/text";
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
      label(1, y + 11, `${worst.ok ? "" : "! "}${row.feed}`, { look: "label strong", room: 130 }),
      label(pictureWidth - 1, y + 11, `limit ${formatAmps(worst.limitAmps)}`, { anchor: "end", look: "label soft" }),
      rect(1, y + 17, scaled(normal.share), barHeight, normal.ok ? "part used" : "part used alarm"),
      rect(1, y + 17 + barHeight, scaled(worst.share), barHeight, worst.ok ? "part redundancy" : "part used alarm"),
      line(post, y + 13, post, y + 17 + 2 * barHeight + 3, "post"),
      label(1, y + 17 + 2 * barHeight + 13, `${formatWatts(normal.normalWatts)} normal, ${formatWatts(worst.worstWatts)} worst: ${formatAmps(worst.worstAmps)}, ${formatPercent(worst.share)}`),
    ];
  });
  return { title: `Feed loads of ${site}`, summary: describeFeedLoads(site, loads, unfed), width: pictureWidth, height: top + loads.length * blockHeight, shapes, legend: looks };
}
