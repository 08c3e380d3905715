import { openHeadless } from "../../../src/headless/open-headless";
import { planSetUp } from "../../../src/planning/plan/set-up";

test("a pool says what hosts can store in it: the sum of its arrays, half of it where there are two copies, nothing where an array is not known", async () => {
  // 12 drives of 4 TB under RAID 6 with a spare: (12 - 1 - 2) x 4 = 36 TB.
  const array = { drives: 12, driveSize: "4 TB", scheme: "RAID 6", spares: 1 };
  const rows = {
    pools: [{ pool: "plain" }, { pool: "copies", acrossArrays: "2 copies" }, { pool: "open" }],
    arrays: [
      { array: "a", pool: "plain", ...array }, { array: "b", pool: "plain", ...array },
      { array: "c", pool: "copies", ...array }, { array: "d", pool: "copies", ...array },
      { array: "e", pool: "open", ...array }, { array: "f", pool: "open" },
    ],
  };
  const { port, dispose } = await openHeadless();
  try {
    await port.apply(planSetUp({ sheets: [] }, rows).map((plan) => ({ kind: "add-sheet", plan })));
    const { values } = (await port.read(["Pools"])).sheets.find(({ name }) => name === "Pools")!;
    const at = values[3]!.indexOf("To hosts");
    expect(values.slice(4, 8).map((line) => line[at])).toEqual([72, 36, null, null]);
  } finally {
    dispose();
  }
});
