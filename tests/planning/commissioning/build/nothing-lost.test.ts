import { liveThrough } from "../../../support/tab-life";

describe("nothing that people type is lost through five builds", () => {
  // scripts/live-through-builds.ts goes through ten times as many.
  test.each(Array.from({ length: 10 }, (_, index) => index))("with anything typed anywhere, rows copied, moved, sorted and deleted, plans changed and copies brought back (hundred %i)", (hundred) => {
    const lives = Array.from({ length: 100 }, (_, index) => liveThrough(hundred * 100 + index, 5));
    expect(lives.flatMap(({ lost }) => lost)).toEqual([]);
    expect(lives.reduce((sum, { doubled }) => sum + doubled, 0)).toBe(0);
    expect(lives.reduce((sum, { typed }) => sum + Object.values(typed).reduce((all, one) => all + one, 0), 0)).toBeGreaterThan(1000);
    expect(new Set(lives.flatMap(({ typed }) => Object.keys(typed))).size).toBeGreaterThan(20);
  });
});
