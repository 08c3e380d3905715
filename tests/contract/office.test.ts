import { openHeadless } from "../../src/headless/open-headless";
import type { ClientBuild } from "../support/host-workbook/client-build";
import { hostWorkbook } from "../support/host-workbook/host-workbook";
import { contractFormulas, describePort } from "./port-contract";

const calculate = (formula: string) => contractFormulas[formula] ?? 0;

const builds: readonly ClientBuild[] = ["web", "Windows", "Mac", "tablet"];

for (const build of builds) {
  describePort(`the vendor's client for ${build}`, () => ({ port: hostWorkbook({ calculate, build }).port, hasTables: true }));
  describePort(`the vendor's client for ${build}, newer API sets`, () => ({ port: hostWorkbook({ calculate, build, apiSet: 18 }).port, hasTables: true }));
}

test.each(Object.entries(contractFormulas))("%s comes to what our engine computes, spilled cells too", async (formula, expected) => {
  const { port, dispose } = await openHeadless();
  await port.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells: [[{ formula }]] }]);
  expect((await port.read()).sheets[0]!.values).toEqual(Array.isArray(expected) ? expected : [[expected]]);
  dispose();
});
