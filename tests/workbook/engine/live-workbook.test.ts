import { openHeadless } from "../../../src/headless/open-headless";

test("whoever reads while somebody else waits for the formulas waits too", async () => {
  const { port, settle, dispose } = await openHeadless();
  try {
    await port.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells: [[{ value: 2 }, { formula: "=A1*21" }]] }]);
    const [, { sheets }] = await Promise.all([settle(), port.read(["Sheet1"])]);
    expect(sheets[0]!.values).toEqual([[2, 42]]);
  } finally {
    dispose();
  }
});
