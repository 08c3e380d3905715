import { named, text } from "../column";
import { table } from "../table";

export const hosts = table("Hosts", "One row a host that uses the arrays of its site.", {
  host: text("Host", "Name of the host.", named),
  site: text("Site", "Where it is.", { from: "sites" }),
  initiatorName: text("Initiator name", "iSCSI qualified name of its initiator."),
  address: text("Address", "Its addresses, one in each data network it uses, with commas between."),
  groups: text("Groups", "Groups that it is in, with commas between: the hosts of a group open the same volumes together.", { since: 4 }),
});
