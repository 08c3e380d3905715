import { splitFeedPhase } from "../../../../src/planning/resilience";

describe("the lines of a feed, L1 to L3 as IEC 60445 names them (from memory)", () => {
  test.each([
    ["A/L2", "A", "L2"],
    ["  Row 3 / l1 ", "Row 3", "L1"],
    ["A/L1-L2", "A", "L1-L2"],
    ["A/L2-L1", "A", "L1-L2"],
    ["A/L3 - L2", "A", "L2-L3"],
    ["A/l1-l3", "A", "L3-L1"],
    ["A/B/L3-L1", "A/B", "L3-L1"],
  ])("%s hangs on %s, %s", (text, feed, phase) => {
    expect(splitFeedPhase(text)).toEqual({ feed, phase });
  });

  test.each(["A", "A/L4", "A/L1-L1", "A/L1L2", "/L1", "A/L1-", "PDU/7"])("%s is the name of a feed", (text) => {
    expect(splitFeedPhase(text)).toEqual({ feed: text, phase: null });
  });
});
