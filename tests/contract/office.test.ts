import { mockWorkbook } from "../support/mock-workbook/mock-workbook";
import { contractFormulas, describePort } from "./port-contract";

const calculate = (formula: string) => contractFormulas[formula] ?? 0;

describePort("the spreadsheet host", () => ({ port: mockWorkbook({ calculate }).port, hasTables: true }));
describePort("a spreadsheet host with newer API sets", () => ({ port: mockWorkbook({ calculate, apiSet: 18 }).port, hasTables: true }));
