import { buildTabs } from "../src/actions/build-tabs";
import { loadSample } from "../src/actions/load-sample";
import { hostWorkbook } from "../tests/support/host-workbook/host-workbook";
import { moment } from "../tests/support/commissioning-plan";
async function main() {
  const book = hostWorkbook({ calculate: () => "" });
  await loadSample(book.port);
  const mark = () => console.log(book.exchanges().map((e) => `${e.actions}a ${e.bytes}b ${e.answerBytes}r`).join(" | "));
  mark();
  for await (const { outcome } of buildTabs(book.port, moment)) { console.log(JSON.stringify(outcome).slice(0, 150)); console.log(book.exchanges().slice(-6).map((e) => `${e.actions}a ${e.bytes}b ${e.answerBytes}r`).join(" | ")); }
  const n = book.exchanges().length;
  for await (const { outcome } of buildTabs(book.port, moment)) { if (!outcome.built) throw new Error(outcome.sentence) }
  console.log("rebuild", book.exchanges().slice(n).map((e) => `${e.actions}a ${e.bytes}b ${e.answerBytes}r`).join(" | "));
  console.log(book.sheetNames());
}
void main();
