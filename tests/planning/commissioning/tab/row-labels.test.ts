import { rowLabels, slotHeaders } from "../../../../src/planning/commissioning/tab/row-labels";
import { sealLine, snagOf, stepRecord } from "../../../support/job-records";

test("rows are named by what stands in them, and by their number as the sheet counts it", () => {
  const nameOf = rowLabels({ steps: [stepRecord({ row: 10, no: "1" })], snags: [snagOf({ row: 20 })], orphans: [stepRecord({ row: 30 })], seals: [sealLine({ row: 40 })] });
  expect([10, 20, 30, 40, 50].map(nameOf)).toEqual(["No. 1 S-1 array 1", "the snag in row 21", "the kept record in row 31", "the seal in row 41", "row 51"]);
});

test("a row of a grid names the columns of its slots by their steps, any other row has those of the tab", () => {
  const slot = (place: number) => ({ place, rowKey: "slots:[]", signKey: "", head: "" });
  const headers = slotHeaders({ steps: [stepRecord({ row: 9 }), stepRecord({ row: 10, slot: slot(0) }), stepRecord({ row: 10, stepId: "S-2", slot: slot(1) })] });
  expect([...headers.keys()]).toEqual([10]);
  expect([...headers.get(10)!.values()]).toEqual(["Expected S-1", "Found S-1", "Expected S-2", "Found S-2"]);
});
