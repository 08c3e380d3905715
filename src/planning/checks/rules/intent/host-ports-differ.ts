import { formatAddress, isSameAddress } from "../../../addressing";
import { gather, type PlanModel } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { cutSentence, foldName, quote } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const hostPortsDiffer: Rule = {
  name: "host-ports-differ",
  family: "intent",
  weight: "warn",
  meaning: "Where the table Host ports has rows of a host, its row in Hosts and its Links say nothing else: paths and cabling follow from Host ports.",
  check: (model) =>
    gather(model.rows("hosts"), (row): Remark[] => (model.hostPorts.of(row).length === 0 ? [] : [...addressesOf(model, row), ...namesOf(model, row), ...linksOf(model, row)])),
};

/** A host without addresses in Hosts leaves them to Host ports. */
function addressesOf(model: PlanModel, row: PlanRow<"hosts">): Remark[] {
  const [short, told] = [model.hostPorts.shorthandOf(row), model.hostPorts.addressesOf(row)];
  if (short.length === 0) return [];
  const extra = short.find((address) => !told.some((other) => isSameAddress(address, other)));
  if (extra !== undefined) {
    return [remarkAt(model, "hosts", row, "address", cutSentence(`${formatAddress(extra)} is in no row of ${row.host} in Host ports, which are what counts. Add it there, or take it out here.`))];
  }
  const lacking = told.find((address) => !short.some((other) => isSameAddress(address, other)));
  if (lacking === undefined) return [];
  return [remarkAt(model, "hosts", row, "address", cutSentence(`${formatAddress(lacking)} of ${row.host} in Host ports is not here. Write all of its addresses, or none.`))];
}

function namesOf(model: PlanModel, row: PlanRow<"hosts">): Remark[] {
  const names = model.hostPorts.of(row).map(({ row: port }) => port.initiatorName);
  if (row.initiatorName === "" || names.some((name) => name === "" || foldName(name) === foldName(row.initiatorName))) return [];
  return [remarkAt(model, "hosts", row, "initiatorName", cutSentence(`Every row of ${row.host} in Host ports has another initiator name. Write one of those here, or none.`))];
}

function linksOf(model: PlanModel, row: PlanRow<"hosts">): Remark[] {
  if (model.hostPorts.of(row).every(({ to }) => to === null)) return [];
  const cabled = new Set(model.hostPorts.of(row).map(({ to }) => to));
  return (["from", "to"] as const).flatMap((own) => {
    const other = own === "from" ? "to" : "from";
    return model.rowsWith("links", own, row.host).flatMap((link): Remark[] => {
      const end = model.find("switches", link[other]);
      if (end === null || cabled.has(end)) return [];
      const sentence = `No port of ${row.host} in Host ports is cabled to ${quote(end.switch)}, so this link does not count. Add the port there, or take the link out.`;
      return [remarkAt(model, "links", link, other, cutSentence(sentence))];
    });
  });
}
