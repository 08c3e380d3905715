import * as capacity from "../../src/functions/capacity";
import { cellAnswer } from "../support/cell-answer";

const { usable, breakdown, layout, schemes, mixed, drivesfor, efficiency, survives, convertsize, sizetext, drivebytes, endurance, effective, demand, runway, expansion, poolroom } = capacity;

describe("an answer in a cell", () => {
  test.each<[string, () => unknown, unknown]>([
    ["USABLE", () => usable("RAID 6", 12, 4), 40],
    ["USABLE with spares, reserve and unit", () => usable("RAID 60 8+2", 24, "3.84TB", 2, "10%", "TiB"), 55.296e12 / 2 ** 40],
    ["USABLE of a sum that shows as 3.3", () => usable("none", 1, 1.1 + 2.2), 3.3],
    ["USABLE of cells that arrive as 1×1 ranges and entities", () => usable([["RAID 6"]], [[12]], { type: "Double", basicValue: 4 }), 40],
    ["MIXED", () => mixed("RAID 6", [["Drive size"], [4], [4], [""], ["8 TB"], [8], [4]], 1), 8],
    ["MIXED in a row", () => mixed("RAID 10", [[8, 4, 8, 4]]), 12],
    ["DRIVESFOR", () => drivesfor("RAID 6", 40, 4, 1, "20%", 0.8), 19],
    // 20 drives in two groups of 8+2 beside 2 spares and 2 left over: 64 TB a chassis, so 200 TB take four.
    ["DRIVESFOR in whole chassis", () => drivesfor("RAID 60 8+2", 200, 4, 2, 0, 1, 24), 96],
    ["SIZETEXT", () => sizetext("40 TB", "TiB", 2), "36.37 TiB"],
    ["SIZETEXT to the byte", () => sizetext(4.000000000001), "4.000000000001 TB"],
    ["SIZETEXT of nothing", () => sizetext(0, "GB"), "0 GB"],
    ["SIZETEXT of what no decimal shows", () => sizetext("1 GB", "TB", 2), "0.00 TB"],
    ["DRIVEBYTES of a solid-state drive", () => drivebytes("15.36 TB", 512, "flash"), 15_362_991_415_296],
    ["ENDURANCE", () => endurance("3.84 TB", 1, "3.84 TB"), 5],
    ["ENDURANCE of a few drives behind pairs", () => endurance(4, 1, "4 TB", 3, 2, 4), 6],
    ["ENDURANCE by terabytes written: rated years do not count", () => endurance(4, "7300 TB", "2 TB", 1, 1, 3), 10],
    ["EFFICIENCY", () => efficiency("8+2"), 0.8],
    ["EFFICIENCY of one group", () => efficiency("RAID 5", 4), 0.75],
    ["SURVIVES", () => survives("RAID 60 8+2", 20), 2],
    ["SURVIVES at best", () => survives("RAID 60 8+2", 20, "BEST"), 4],
    ["CONVERTSIZE", () => convertsize("12 TiB"), 13.194139533312],
    ["CONVERTSIZE in a unit", () => convertsize(1, "GiB"), 931.3225746154785],
    ["DRIVEBYTES", () => drivebytes(8, 4096), 8_001_563_222_016],
    ["EFFECTIVE", () => effective(40, "3:1", "80%"), 96],
    ["DEMAND", () => demand(10, "20%", 3), 17.28],
    ["RUNWAY", () => runway(10, 0.2, 21.6, 0.8), 3],
  ])("%s", (_name, call, answer) => {
    expect(call()).toBe(answer);
  });

  test("BREAKDOWN has a header, six lines, and shares of raw", () => {
    expect(breakdown("RAID 6", 12, 4, 2, 0.25)).toEqual([
      ["Line", "TB", "TiB", "Share"],
      ["Raw", 48, 48e12 / 2 ** 40, 1],
      ["Spare drives", 8, 8e12 / 2 ** 40, 8 / 48],
      ["Outside a group", 0, 0, 0],
      ["Redundancy", 8, 8e12 / 2 ** 40, 8 / 48],
      ["Reserve", 8, 8e12 / 2 ** 40, 8 / 48],
      ["Usable", 24, 24e12 / 2 ** 40, 0.5],
    ]);
  });

  test("LAYOUT names spares and leftovers, and leaves blank what they lack", () => {
    expect(layout("RAID 60 8+2", 24, 2)).toEqual([
      ["Group", "First drive", "Last drive", "Data", "Redundancy"],
      [1, 1, 10, 8, 2],
      [2, 11, 20, 8, 2],
      ["Spares", 21, 22, "", ""],
      ["Outside a group", 23, 24, "", ""],
    ]);
    expect(layout("8+2", 12)[1]).toEqual(["Spread", 1, 12, 8, 2]);
  });

  test("SCHEMES compares those of a range in its order, else the common ones", () => {
    expect(schemes(12, 4, 0, [["Scheme"], ["RAID 10"], [null], ["RAID 6"]])).toEqual([
      ["Scheme", "Usable TB", "Usable TiB", "Efficiency", "Always survives", "At best survives", "Write cost"],
      ["RAID 10", 24, 24e12 / 2 ** 40, 0.5, 1, 6, 2],
      ["RAID 6", 40, 40e12 / 2 ** 40, 10 / 12, 2, 2, 6],
    ]);
    expect(schemes(12, 4).map((row) => row[0])).toContain("triple parity");
  });

  test("DEMAND answers a range of years in its own shape", () => {
    expect(demand(10, 0.2, [["Years"], [0], [""], [2]])).toEqual([["Demand TB"], [10], [""], [14.4]]);
    expect(demand(10, 0.2, [[1, 2]])).toEqual([[12, 14.4]]);
  });

  test("EXPANSION has a row a year", () => {
    expect(expansion(30, 0.2, 40, 10, 2, 0.8)).toEqual([
      ["Year", "Demand TB", "Capacity TB", "Steps bought", "Fill"],
      [1, 36, 50, 1, 0.72],
      [2, 43.2, 60, 1, 0.72],
    ]);
  });

  test("POOLROOM answers in one row", () => {
    expect(poolroom([["Name", "Usable", "Used"], ["A", 40, 30], ["B", "40 TB", 10], ["C", 40, 0]], "a", 0.8)).toEqual([
      ["Can be removed", "Must move TB", "Free room TB", "Fill afterwards"],
      [true, 30, 54, 0.5],
    ]);
  });

  test("a range of ten thousand rows is read whole", () => {
    expect(mixed("none", Array.from({ length: 10_000 }, () => [4]))).toBe(40_000);
    expect((demand(10, 0.2, Array.from({ length: 10_000 }, (_, row) => [row % 50])) as unknown[]).length).toBe(10_000);
  });
});

describe("an optional argument that is omitted, empty or \"\" means its default", () => {
  test.each([[undefined], [null], [""], [" "]])("%p", (blank) => {
    expect(usable("RAID 6", 12, 4, blank, blank, blank)).toBe(40);
    expect(drivesfor("RAID 6", 40, 4, blank, blank, blank)).toBe(12);
    expect(efficiency("8+2", blank)).toBe(0.8);
    expect(survives("RAID 10", 8, blank)).toBe(1);
    expect(drivebytes(4, blank, blank)).toBe(4_000_787_030_016);
    expect(drivesfor("RAID 6", 40, 4, blank, blank, blank, blank)).toBe(12);
    expect(sizetext(4, blank, blank)).toBe("4 TB");
    expect(endurance(4, 1, 4, blank, blank, blank)).toBe(5);
    expect(effective(40, 2, blank)).toBe(80);
    expect(schemes(12, 4, blank, blank).length).toBeGreaterThan(3);
  });
});

test("a sentence keeps to 160 characters in the last cell of a sheet too", () => {
  const rows = Array.from({ length: 1_048_576 }, (_, row) => [null, row === 1_048_575 ? "no scheme at all, but a text of more than forty letters" : null]);
  expect(cellAnswer(() => schemes(12, 4, 0, rows))).toMatch(/^#VALUE! .{150,160}$/);
});

describe("what cannot be answered says why and what to write", () => {
  test.each<[() => unknown, string]>([
    [() => usable("RAID 60", 12, 4), '#VALUE! scheme "RAID 60" lacks its groups. Give the group shape, such as RAID 60 8+2.'],
    [() => usable(8 + 2, 12, 4), '#VALUE! scheme is 10, not text. Put the scheme in quotes: "8+2".'],
    [() => usable("RAID 6", 12.5, 4), "#VALUE! drives is 12.5. Write a whole number from 1 to 100000, such as 12."],
    [() => usable("RAID 6", -12, 4), "#VALUE! drives is -12. Write a whole number from 1 to 100000, such as 12."],
    [() => usable("RAID 6", 0, 4), "#VALUE! drives is 0. Write a whole number from 1 to 100000, such as 12."],
    [() => usable("RAID 6", "", 4), "#VALUE! drives is blank. Write a whole number from 1 to 100000, such as 12."],
    [() => usable("RAID 6", "twelve", 4), '#VALUE! drives is the text "twelve". Write a whole number from 1 to 100000, such as 12.'],
    [() => usable("RAID 6", 12, 4, 12), "#VALUE! spares is 12 of 12 drives, which leaves none for data. Write fewer spares than drives."],
    [() => usable("RAID 6", 12, "4 Tb"), '#VALUE! driveSize "4 Tb" is in bits. Write it in bytes, with a capital B.'],
    [() => usable("RAID 6", 12, 4, 0, 20), "#VALUE! reserve is 20, which means 2000%. Write 20% or 0.2."],
    [() => usable("RAID 6", 12, 4, 0, 0, "Tb"), '#VALUE! unit "Tb" is in bits. Write it in bytes, with a capital B.'],
    [() => usable("RAID 6", [[12], [13]], 4), "#VALUE! drives is a range of several cells. Ask for each: =MAP(A2:A9,LAMBDA(x,BAY.USABLE(\"RAID 6\",x,4)))."],
    [() => usable("RAID 6", 12, "#DIV/0!"), '#VALUE! driveSize holds "#DIV/0!". Mend that cell first.'],
    [() => schemes(12, 4, 0, [["RAID 6"], ["RAID 66"]]), '#VALUE! schemes row 2 "RAID 66" is not a scheme. Write one such as "RAID 6", "RAID 60 8+2", "3 copies" or "8+2".'],
    [() => mixed("RAID 6", [["Size"], [4], [""], ["big"]]), '#VALUE! driveSizes row 4 "big" is not a size. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    [() => mixed("RAID 6", [[4, ""], [4, 4]]), '#VALUE! driveSizes row 1 column 2 is blank. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    [() => mixed("RAID 6", [[4], ["#N/A"], [4]]), '#VALUE! driveSizes row 2 holds "#N/A". Mend that cell first.'],
    [() => mixed("RAID 6", [[4], [4], [4]]), "#VALUE! driveSizes count 3 is too few: RAID 6 needs at least 4. Write 4 or more."],
    [() => mixed("RAID 6", [[""]]), '#VALUE! driveSizes is blank. Give a range with the size of every drive, such as 4 or "960 GB".'],
    [() => drivesfor("mirror", 40, 4), "#N/A target 40 TB is out of reach of mirror with up to 4 drives. Write a smaller target or larger drives."],
    [() => drivesfor("RAID 6", 40, 4, 0, 0, 0), "#VALUE! fill is 0. Write a number above 0 and at most 1, such as 0.2."],
    [() => drivesfor("RAID 60 8+2", 40, 4, 2, 0, 1, 8), "#VALUE! bays 8 less 2 spares is too few: RAID 60 8+2 needs at least 10. Write 12 or more."],
    [() => drivesfor("RAID 6", 40, 4, 0, 0, 1, 12.5), "#VALUE! bays is 12.5. Write a whole number from 0 to 100000, such as 24."],
    [() => drivesfor("mirror", 40, 4, 0, 0, 1, 24), "#VALUE! bays 24 is too many: mirror takes at most 4. Write RAID 10 (pairs, space of 12 drives) or 3 copies (space of 8)."],
    [() => usable("mirror", 24, 4), "#VALUE! drives 24 is too many: mirror takes at most 4. Write RAID 10 (pairs, space of 12 drives) or 3 copies (space of 8)."],
    [() => usable("RAID 6", 12, 4000), '#VALUE! driveSize is 4000, and a bare number is TB. No drive is that large: write it with its unit, such as "960 GB".'],
    [() => mixed("RAID 6", [[4], [4000], [4], [4]]), '#VALUE! driveSizes row 2 is 4000, and a bare number is TB. No drive is that large: write it with its unit, such as "960 GB".'],
    [() => sizetext(4, 2), '#VALUE! unit is 2. Write a unit in quotes, such as "TB" or "TiB".'],
    [() => sizetext(4, "TB", 1.5), "#VALUE! digits is 1.5. Write a whole number from 0 to 20, such as 2."],
    [() => sizetext(""), '#VALUE! size is blank. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    [() => drivebytes(4, 512, "ssd"), '#VALUE! kind is "ssd". Choose "disk" or "flash".'],
    [() => endurance(4, 7000, 4), '#VALUE! driveWritesADay is 7000. Give drive writes a day up to 100, or the terabytes written as text, such as "7000 TB".'],
    [() => endurance(4, "1 a day", 4), '#VALUE! driveWritesADay is the text "1 a day". Write a number above 0 and at most 100, such as 1.'],
    [() => endurance(4, "7000 Tb", 4), '#VALUE! driveWritesADay "7000 Tb" is in bits. Write it in bytes, with a capital B.'],
    [() => endurance(4, 0, 4), "#VALUE! driveWritesADay is 0. Write a number above 0 and at most 100, such as 1."],
    [() => endurance(4, "", 4), "#VALUE! driveWritesADay is blank. Write a number above 0 and at most 100, such as 1."],
    [() => endurance(4, 1, 0), '#VALUE! dailyWrites 0 is less than one byte. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    [() => efficiency("RAID 6"), "#VALUE! drives is blank or 0, and the share of RAID 6 depends on it. Write the number of drives, such as 12."],
    [() => survives("RAID 10", 8, "worst"), '#VALUE! failureCase is "worst". Choose "always" or "best".'],
    [() => drivebytes(4, 520), "#VALUE! sector is 520. Choose 512 or 4096."],
    [() => effective(40, 0), "#VALUE! reduction is 0. Write a number from 1 to 1000, such as 3."],
    [() => demand("", 0.2, 3), '#VALUE! used is blank. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    [() => demand(10, "-100%", 3), '#VALUE! yearlyGrowth is "-100%". Write a number above -1 and at most 5, such as 0.2.'],
    [() => demand(10, 0.2, [[1], ["x"]]), '#VALUE! years row 2 is the text "x". Write a number from 0 to 100, such as 3.'],
    [() => demand(10, 0.2, [[""], [""]]), "#VALUE! years is blank. Write a number of years, such as 3, or a range of them."],
    [() => demand(10, 0.2, Array.from({ length: 100_001 }, () => [1])), "#VALUE! years has 100001 rows. Give at most 100000."],
    [() => runway(10, 0, 40), "#N/A yearlyGrowth is 0, so the capacity never fills. Write a growth above 0, such as 20%."],
    [() => expansion(10, 0.2, 40, 0, 5), '#VALUE! step 0 is less than one byte. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    [() => expansion(10, 0.2, 40, 4, 1.5), "#VALUE! years is 1.5. Write a whole number from 1 to 100, such as 5."],
    [() => poolroom([["A", 40, 50]], "A"), "#VALUE! members row 1 used 50 is more than its usable 40. Write what is used of it."],
    [() => poolroom([["A", 40]], "A"), '#VALUE! members row 1 used is blank. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
    [() => poolroom([["A", 40, 0]], ""), "#VALUE! remove is blank. Write a name."],
  ])("%#: %s", (call, shown) => {
    expect(cellAnswer(call)).toBe(shown);
  });
});
