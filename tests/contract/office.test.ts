import type { ClientBuild } from "../support/host-workbook/client-build";
import { hostWorkbook } from "../support/host-workbook/host-workbook";
import { describePort } from "./port-contract";

const builds: readonly ClientBuild[] = ["web", "Windows", "Mac", "tablet"];

for (const build of builds) {
  describePort(`the vendor's client for ${build}`, () => ({ port: hostWorkbook({ build }).port, hasTables: true }));
  describePort(`the vendor's client for ${build}, newer API sets`, () => ({ port: hostWorkbook({ build, apiSet: 18 }).port, hasTables: true }));
}
