import { computedOptions, threeDesigns } from "../support/options-sheet";

/** Support of 1 a year and nothing else, so that its present value is the factor itself. */
const unit = { ...threeDesigns, "Support cost an array and year": [1, 1, 1], Arrays: [1, null, 1] };

describe("present values on the sheet of options agree with the tables of NIST Handbook 135 (1995), values from memory", () => {
  test.each([[0.03, 1, 0.97], [0.03, 5, 4.58], [0.03, 10, 8.53], [0.03, 20, 14.88], [0.03, 25, 17.41], [0.07, 5, 4.1], [0.07, 10, 7.02], [0.07, 20, 10.59]])(
    "the uniform present value factor at %d over %i years is %d",
    async (rate, years, factor) => {
      const shown = await computedOptions({ ...unit, "Discount rate": rate, Years: years, "Growth a year": 0 });
      expect(Number(shown["Support over the years"]![0]).toFixed(2)).toBe(factor.toFixed(2));
    },
  );

  test("the single present value factors at 3 % are 0.971, 0.863, 0.744 and 0.554 after 1, 5, 10 and 20 years: what one year more adds to the uniform factor", async () => {
    const uniform = async (years: number): Promise<number> =>
      years === 0 ? 0 : Number((await computedOptions({ ...unit, Years: years, "Growth a year": 0 }))["Support over the years"]![0]);
    const factors: string[] = [];
    for (const years of [1, 5, 10, 20]) factors.push(((await uniform(years)) - (await uniform(years - 1))).toFixed(3));
    expect(factors).toEqual(["0.971", "0.863", "0.744", "0.554"]);
  });

  test("energy whose price rises as fast as money earns is worth its years times one of them: the modified factor is the number of years", async () => {
    const shown = await computedOptions({ ...unit, "Rise of that price a year": 0.03 });
    expect(Number(shown["Energy over the years"]![0])).toBeCloseTo(5 * Number(shown["Energy a year"]![0]), 8);
  });
});
