import { foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const switchesOnOneFeed: Rule = {
  name: "switches-on-one-feed",
  family: "resilience",
  weight: "warn",
  meaning: "No one feed, and no one source, takes all switches of a site with it.",
  check: (model) =>
    [...model.groupBy("switches", "site").values()].flatMap((switches): Remark[] => {
      if (switches.length < 2) return [];
      const last = switches.at(-1)!;
      const column = last.feedA === "" ? "feedB" : "feedA";
      const feed = common(switches.map((row) => model.power.feedsOf(row).map((one) => one.feed)));
      if (feed !== null) return [remarkAt(model, "switches", last, column, `All switches of ${last.site} hang on ${feed} alone: when it fails no array is reached. Put one on another feed.`)];
      const source = common(switches.map((row) => model.power.feedsOf(row).map((one) => one.source)));
      if (source === null) return [];
      const sentence = `All switches of ${last.site} hang on ${source} alone: when it fails no array is reached. Put one on another source.`;
      return [remarkAt(model, "switches", last, column, sentence)];
    }),
};

/** Finds the one name on which every list hangs alone; null where there is none, or a list or a name in it is blank. */
function common(lists: readonly (readonly string[])[]): string | null {
  const first = lists[0]![0] ?? "";
  return first !== "" && lists.every((list) => list.length > 0 && list.every((name) => foldName(name) === foldName(first))) ? first : null;
}
