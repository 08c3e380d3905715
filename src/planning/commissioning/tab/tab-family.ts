import { longestSheetName, sameSheetName } from "../../../sheet";
import { uncarried } from "../record";
import type { TabReading } from "./tab-reading";

/** The tabs of one job in a workbook, by the part they play. */
export interface TabFamily {
  /** The tab in use; null before the first build. */
  readonly current: TabReading | null;
  /** Tabs of earlier builds that are still there, and what a failed build has left: newest first. */
  readonly others: readonly TabReading[];
  /** Copies that people made: they are left alone. */
  readonly copies: readonly TabReading[];
  /** Number of the next build. */
  readonly nextBuild: number;
}

/** What a tab is called once another build has taken its place. */
const isEarlierName = / before \d+( \d+)?$/;

/** Tells by name and visibility whether a sheet may be more than the tab of an earlier build, at which nobody but the next build looks. */
export function mayBeInUse({ name, visible }: { readonly name: string; readonly visible: boolean }): boolean {
  return visible || !isEarlierName.test(name);
}

/**
 * Tells which tab of a job is the one in use.
 *
 * It is the whole one of the highest build that is not hidden; of two the one that has the job's name, else the first. A hidden one is
 * taken only where all are hidden, because people hid them. This tells it from whatever a failed build left behind: a new tab stays
 * hidden until it is whole, and the old one is hidden only after that.
 */
export function tabFamily(tabs: readonly TabReading[], jobId: string, jobName: string): TabFamily {
  const own = tabs.filter((tab) => tab.jobId === jobId);
  const whole = own.filter((tab) => tab.whole);
  const shown = whole.filter((tab) => tab.visible);
  const current = best(shown.length > 0 ? shown : whole, jobName);
  const rest = own.filter((tab) => tab !== current);
  const isCopy = (tab: TabReading): boolean => tab.visible && tab.whole && !isEarlierName.test(tab.sheet);
  return {
    current,
    others: rest.filter((tab) => !isCopy(tab)).sort((a, b) => b.build - a.build),
    copies: rest.filter(isCopy),
    nextBuild: own.reduce((most, { build }) => Math.max(most, build), 0) + 1,
  };
}

/** The tab in use of a job, and other tabs in sight that may as well be. */
interface TabInFile extends Pick<TabFamily, "copies"> {
  readonly tab: TabReading;
}

/** Finds the tab in use of every job among the tabs of a file, which may be without its plan; of a job none of whose tabs is whole the first. */
export function tabsInUse(tabs: readonly TabReading[]): TabInFile[] {
  const ids = [...new Set(tabs.map(({ jobId }) => jobId))];
  return ids.map((id) => {
    const { current, copies } = tabFamily(tabs, id, "");
    return { tab: current ?? tabs.find(({ jobId }) => jobId === id)!, copies };
  });
}

function best(tabs: readonly TabReading[], jobName: string): TabReading | null {
  const rank = (tab: TabReading): number => tab.build * 2 + (sameSheetName(tab.sheet, jobName) ? 1 : 0);
  return tabs.reduce<TabReading | null>((found, tab) => (found === null || rank(tab) > rank(found) ? tab : found), null);
}

/**
 * Tells whether an earlier tab can go: nothing in it that was not carried, no picture, comment or note on it, and nothing that cannot be read.
 *
 * A tab of an earlier release does not say which of its texts are people's: it stays. So does one whose notes the host does not count.
 */
export function isSpent(earlier: TabReading, current: TabReading): boolean {
  const { records, snags, elsewhere } = uncarried(earlier, current);
  return earlier.places.layout !== "earlier" && !earlier.mayHoldNotes && records.length + snags.length + elsewhere.length + earlier.faults.length + earlier.attachments === 0;
}

/** Makes a sheet name of a job's name and an ending, cut to the longest a sheet may have, that no sheet has yet. */
export function sheetNameWith(jobName: string, ending: string, taken: readonly string[]): string {
  for (let number = 1; ; number += 1) {
    const tail = number === 1 ? ` ${ending}` : ` ${ending} ${number}`;
    // The cut may go through a pair of surrogates, and half of one is no character.
    const name = `${jobName.slice(0, longestSheetName - tail.length).replace(/\p{Cs}$/u, "").trimEnd()}${tail}`;
    if (!taken.some((one) => sameSheetName(one, name))) return name;
  }
}
