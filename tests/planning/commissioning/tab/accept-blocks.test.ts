import { withoutAccepted } from "../../../../src/planning/commissioning/record";
import { acceptBlocks, forgedCells, readTab } from "../../../../src/planning/commissioning/tab";
import { figureLabels } from "../../../../src/planning/commissioning/tab/twin-cells";
import { builtTab, columnsOf, computed, withBlocks, withCells } from "../../../support/filled-tab";
import { problemOf } from "../../../support/sentence";

const sheet = builtTab();
const tab = readTab(sheet)!;
const act = { by: "x".repeat(300), reason: "Agreed" };
const item = (fact: string) => ({ row: 5, sentence: fact, fact });

describe("accepting what is as it is", () => {
  test("writes one snag with a line a fact, the whole name and the reason, and nothing else", () => {
    const facts = ["Result of No. 3 T-11 holds no formula any more.", "The line of progress shows “1” where “2” is right."];
    const after = computed(withBlocks(sheet, acceptBlocks(sheet, tab, facts, act)));
    const { snags, elsewhere } = readTab(after)!;
    expect(snags.map(({ typed }) => typed)).toEqual([
      { about: null, foundWrong: facts.join("\n"), mender: null, byWhen: null, foundAgain: null, closed: "Accepted", by: act.by, note: "Agreed" },
    ]);
    expect(elsewhere).toEqual([]);
    expect(withoutAccepted([...facts.map(item), item("Another one.")], { snags })).toEqual([item("Another one.")]);
  });

  test("takes a fact with a line break in it, as people put into the names of steps, for one", () => {
    const fact = "No. 3 T-11\nupper expects something else than the plan.";
    const after = computed(withBlocks(sheet, acceptBlocks(sheet, tab, [fact, "Another one."], act)));
    expect(withoutAccepted([item(fact), item("Another one.")], readTab(after)!)).toEqual([]);
  });

  test("takes 480 facts at once, and refuses more than a cell takes before anything is written", () => {
    const facts = Array.from({ length: 1000 }, (_, index) => `Result of No. ${index + 1} T-11 holds no formula any more.`);
    const most = facts.findIndex((_, index) => facts.slice(0, index + 1).join("\n").length > 32_767);
    expect(acceptBlocks(sheet, tab, facts.slice(0, most), act)).toHaveLength(4);
    const sentence = `${most + 1} things are too many to accept at once. Build "North hall" again first.`;
    expect(problemOf(() => acceptBlocks(sheet, tab, facts.slice(0, most + 1), act)).sentence).toBe(sentence);
    expect(most).toBeGreaterThan(480);
  });

  test("is refused where no row for snags is blank: one that somebody began, or wrote beside, is not", () => {
    const columns = columnsOf(tab);
    const rows = sheet.values.flatMap((line, row) => (line[columns.key!] === "#snag" ? [row] : []));
    const full = computed(withCells(sheet, ...rows.map((row, index) => [row, index % 2 === 0 ? columns.step! : columns.witness!, "x"] as const)));
    expect(problemOf(() => acceptBlocks(full, readTab(full)!, ["One."], act)).sentence).toBe('Tab "North hall" has no blank row for snags left. Build it again, which adds some.');
  });
});

test("a column of people's own that is called as a figure above the steps hides none of them", () => {
  const row = sheet.values.findIndex((line) => line.includes(figureLabels.next));
  const column = sheet.values[row]!.indexOf(figureLabels.next);
  const forged = withCells(sheet, [tab.headerRow, 60, figureLabels.next], [row + 1, column, "all done"]);
  expect(forgedCells(forged, readTab(forged)!)).toEqual([expect.objectContaining({ row: row + 1, column, fact: `${figureLabels.next} holds no formula any more.` })]);
});
