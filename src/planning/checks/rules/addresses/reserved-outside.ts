import { formatPrefix, meetsBlock } from "../../../addressing";
import { gather } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const reservedOutside: Rule = {
  name: "reserved-outside",
  family: "addresses",
  weight: "warn",
  meaning: "What a network keeps back in Reserved lies in it: else nothing is kept back, and what was meant is handed out.",
  check: (model) =>
    gather(model.networks.all(), ({ row, prefix, reserved }): Remark[] => {
      if (prefix === null || (reserved ?? []).every((block) => block.first.family === prefix.family && meetsBlock(prefix, block))) return [];
      return [remarkAt(model, "networks", row, "reserved", `Reserved of ${row.network} names addresses outside ${formatPrefix(prefix)}, which keeps nothing back. Write some of it.`)];
    }),
};
