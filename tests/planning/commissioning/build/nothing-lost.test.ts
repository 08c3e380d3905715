import { liveThrough } from "../../../support/tab-life";

describe("nothing that people type is lost through five builds", () => {
  // scripts/live-through-builds.ts goes through as many as one asks for.
  test.each(Array.from({ length: 10 }, (_, index) => index))("with anything typed anywhere, rows copied, moved, sorted and deleted, plans changed and copies brought back (ten %i)", (ten) => {
    const lives = Array.from({ length: 10 }, (_, index) => liveThrough(ten * 10 + index, 5));
    expect(lives.flatMap(({ lost }) => lost)).toEqual([]);
    expect(lives.reduce((sum, { doubled }) => sum + doubled, 0)).toBe(0);
    expect(lives.reduce((sum, { typed }) => sum + Object.values(typed).reduce((all, one) => all + one, 0), 0)).toBeGreaterThan(100);
    expect(new Set(lives.flatMap(({ typed }) => Object.keys(typed))).size).toBeGreaterThan(10);
  });
});
