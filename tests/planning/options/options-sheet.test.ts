import { mostDesigns, capacityOfDesign, planOptions, readOptions, limitTerabytes } from "../../../src/planning/options";
import type { SheetPlan } from "../../../src/sheet";
import { computedOptions, filledOptions, threeDesigns } from "../../support/options-sheet";
import { modelOf } from "../../support/plan-model";
import { lookFaults } from "../../support/sheet-look";

const rowOf = ({ rows }: SheetPlan, label: string) => rows.find((row) => row[0]?.value === label)!;

describe("the sheet of options", () => {
  test("can be read: every style is there and no text is faint", () => {
    expect(lookFaults(planOptions(modelOf({})))).toEqual([]);
  });

  test("has what is typed in yellow and nothing else, the needs once and the designs in columns", () => {
    const plan = planOptions(modelOf({}));
    const yellow = plan.rows.flatMap((row) => {
      const count = row.filter(({ style = "" }) => style.startsWith("input")).length;
      return count === 0 ? [] : [[row[0]!.value, count]];
    });
    expect(yellow).toContainEqual(["Data now", 1]);
    expect(yellow).toContainEqual(["Scheme", mostDesigns]);
    expect(yellow).not.toContainEqual(["Usable to hosts", expect.anything()]);
    expect(new Set(Object.entries(plan.styles).flatMap(([name, { fill }]) => (name.startsWith("input") ? [fill] : [])))).toEqual(new Set(["#fff3c4"]));
  });

  test("takes the fill limit from Settings, and bays, units and watts from Models by formulas that people may type over", () => {
    const plan = planOptions(modelOf({ settings: [{ setting: "Fill limit", value: "85%" }], models: [{ model: "Elm 24", bays: 24, units: 4, watts: 450 }] }));
    expect(rowOf(plan, "Fill limit")[1]!.value).toBe(0.85);
    expect(rowOf(plan, "Drives an array")[2]!.formula).toMatch(/^=IFERROR\(IF\(INDEX\(Models!\$C\$5:\$C\$2004,MATCH\(C\d+,Models!\$A\$5:\$A\$2004,0\)\)="",/);
    expect(rowOf(planOptions(modelOf({})), "Drives an array")[1]!.formula).toBeUndefined();
  });

  test("writes each figure as a formula of native functions and ours that names the cells it follows from, and is blank while one of them is", async () => {
    expect(rowOf(planOptions(modelOf({})), "Price a TB to hosts")[2]!.formula).toMatch(/^=IF\(OR\(C\d+="",C\d+=""\),"",BAY\.UNITPRICE\(C\d+,C\d+\)\)$/);
    const shown = await computedOptions({});
    expect(shown["Usable to hosts"]).toEqual([null, null, null, null]);
    expect(shown["Cost over the years"]).toEqual([null, null, null, null]);
  });
});

describe("three designs from one set of needs", () => {
  let shown: Awaited<ReturnType<typeof computedOptions>>;

  beforeAll(async () => {
    shown = await computedOptions(threeDesigns);
  });

  test("show what hosts can store, worked by hand: 22 drives in two groups of 8+2 leave 16 times 12 TB, one parity of twelve 16 TB drives leaves 11", () => {
    expect(shown["Usable an array"]).toEqual([192, 192, 176, null]);
    expect(shown["Usable to hosts"]!.slice(0, 3)).toEqual([192, 192, 176]);
  });

  test("buy as many arrays as the data at the end wants, or as many as were asked for", () => {
    // 60 TB growing by 20 % for 5 years are 60 times 2.48832: at most 80 % of 192 TB, which is 153.6; two copies need two arrays.
    expect(shown["Data at the end"]![0]).toBeCloseTo(149.2992, 10);
    expect(shown["Arrays counted"]!.slice(0, 3)).toEqual([1, 2, 1]);
  });

  test("say when each is full: 60 TB growing by 20 % reach 140.8 TB after ln(140.8/60)/ln 1.2 years", () => {
    expect(shown["Full after years"]![2]).toBeCloseTo(Math.log(140.8 / 60) / Math.log(1.2), 10);
    expect(shown["Full in"]![2]).toBe(2031);
  });

  test("say which does not meet what was asked for, as a word beside the figure", () => {
    expect(shown["Against that accepted"]!.slice(0, 3)).toEqual(["within", "within", "above"]);
    expect(shown["Against those wanted"]![2]).toBe("too few");
  });

  test("cost what the arrays cost, and energy and support in today's money", () => {
    expect(shown.Price!.slice(0, 3)).toEqual([42_000, 78_000, 18_000]);
    // 450 W for 8760 hours at 0.25, with half as much again for cooling.
    expect(shown["Energy a year"]![0]).toBeCloseTo(1478.25, 8);
    const rise = 1.01 / 1.03;
    expect(shown["Energy over the years"]![0]).toBeCloseTo(1478.25 * [1, 2, 3, 4, 5].reduce((sum, year) => sum + rise ** year, 0), 6);
    expect(shown["Cost over the years"]![1]).toBeCloseTo(78_000 + Number(shown["Energy over the years"]![1]) + Number(shown["Support over the years"]![1]), 6);
  });

  test("are priced with the margin as a row of the quote is, in the decimals of the currency: 42,000 / 0.7 and 18,000 / 0.7", async () => {
    const priced = await computedOptions({ ...threeDesigns, Margin: 0.3 });
    expect(priced["Price an array"]!.slice(0, 3)).toEqual([60_000, 55_714.29, 25_714.29]);
    expect(priced.Price!.slice(0, 2)).toEqual([60_000, 111_428.58]);
    expect((await computedOptions({ ...threeDesigns, Margin: 0.3, Currency: "JPY" }))["Price an array"]!.slice(0, 3)).toEqual([60_000, 55_714, 25_714]);
  });

  test("hold the same capacity in the rows and the picture as in the cells", () => {
    const { needs, designs } = readOptions(filledOptions(threeDesigns));
    const figures = designs.map((design) => capacityOfDesign(needs, design));
    expect(figures.map(({ arrays }) => arrays)).toEqual(shown["Arrays counted"]!.slice(0, 3));
    expect(figures.map(({ toHosts }) => Number(toHosts) / 1e12)).toEqual(shown["Usable to hosts"]!.slice(0, 3));
    figures.forEach(({ fullAfterYears }, at) => expect(fullAfterYears).toBeCloseTo(Number(shown["Full after years"]![at]), 10));
    expect(limitTerabytes(needs, figures[0]!.toHosts)).toBeCloseTo(153.6, 10);
  });
});

test("a design in which nothing grows is never full, and an unreadable scheme is an error in its own column alone", async () => {
  const shown = await computedOptions({ ...threeDesigns, "Growth a year": 0, Scheme: ["RAID 60", "RAID 6", "RAID 5"] });
  expect(shown["Full in"]!.slice(1, 3)).toEqual(["never", "never"]);
  expect(shown["Usable to hosts"]![0]).toMatchObject({ error: "#VALUE!" });
});

describe("what the sheet says that cannot be read", () => {
  const refused = (inputs: Record<string, unknown>): string => {
    try {
      readOptions(filledOptions({ ...threeDesigns, ...inputs } as typeof threeDesigns));
      return "read";
    } catch (thrown) {
      return (thrown as Error).message;
    }
  };

  test.each<[Record<string, unknown>, string]>([
    [{ "Data now": null }, "Data now is empty. What hosts store today: TB as a number, or text such as 40 TiB."],
    [{ "Data now": "60 Tb" }, 'Data now "60 Tb" is in bits. Write it in bytes, with a capital B.'],
    [{ Margin: 1.2 }, "Margin is 1.2: is it 120% or 1.2%? Write a number from 0 to 1, or a percentage."],
    [{ "Cost an array": [1, -5, 1] }, "Cost an array of Two arrays, mirrored is -5. Write a number from 0 to 1000000000000, such as 450."],
    [{ "Spares an array": [0.5, 2, null] }, "Spares an array of One large array 0.5 is no count. Write a whole number."],
    [{ Years: 0 }, "Years is 0. Write a whole number from 1 to 50, such as 5."],
    [{ Years: 2.5 }, "Years 2.5 is no count. Write a whole number."],
    [{ "Begins on": "31.5.2026" }, 'Begins on "31.5.2026" is no date. Write it as 2026-05-31.'],
    [{ Scheme: ["RAID 6", "RAID 7", "RAID 5"] }, "Scheme of Two arrays, mirrored"],
    [{ Design: [null, null, null] }, "No design on the sheet Options has a name."],
    [{ Design: ["Large", "large", "Small"] }, 'Two designs are called "large". Give each a name of its own.'],
  ])("%j is refused with a sentence", (inputs, sentence) => {
    expect(refused(inputs)).toContain(sentence);
  });

  test("is read by the text at the left, whatever rows people put between", () => {
    const workbook = filledOptions(threeDesigns);
    const sheet = workbook.sheets.at(-1)!;
    const moved = { sheets: [{ ...sheet, values: [...sheet.values.slice(0, 6), ["our own line"], ...sheet.values.slice(6)] }] };
    expect(readOptions(moved)).toEqual(readOptions(workbook));
  });
});
