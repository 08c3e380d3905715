import { containsAddress, formatAddress } from "../../../addressing";
import { gather, type Network, type PlanModel } from "../../../plan/model";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const gatewayMissing: Rule = {
  name: "gateway-missing",
  family: "addresses",
  weight: "warn",
  meaning: "A network has a gateway where a cluster is managed at a shared address in it, or where a host outside the networks of its site needs one to reach the arrays.",
  check: (model) => [...forClusters(model), ...forHosts(model)],
};

function forClusters(model: PlanModel): Remark[] {
  const told = new Set<Network>();
  return gather(model.rows("clusters"), (row): Remark[] => {
    const network = row.sharedAddress === "" ? null : model.networks.named(row.network);
    if (network?.isIp !== true || hasGateway(network) || told.has(network)) return [];
    told.add(network);
    const sentence = `${network.row.network} has no gateway, so the shared address of ${row.cluster} is reached from inside it only. Write its gateway.`;
    return [remarkAt(model, "networks", network.row, "gateway", sentence)];
  });
}

function forHosts(model: PlanModel): Remark[] {
  const portNetworks = new Set(model.ports.all().map(({ network }) => network));
  const told = new Set<Network>();
  return gather(model.rows("hosts"), (row): Remark[] => {
    // A host with several addresses is in a network of its site by one of them, or needs a gateway for the first.
    const [address, ...others] = model.hostPorts.addressesOf(row);
    if (address === undefined || row.site === "" || others.some((other) => model.networks.holding(row.site, other) !== null)) return [];
    const networks = model.networks.ofSite(row.site).filter((network) => network.prefix?.family === address.family);
    if (networks.length === 0 || networks.some(({ prefix }) => containsAddress(prefix!, address))) return [];
    const ways = networks.filter((network) => portNetworks.has(network));
    const first = ways[0];
    if (first === undefined || ways.some(hasGateway) || told.has(first)) return [];
    told.add(first);
    const sentence = `${row.host} (${formatAddress(address)}) is in no network of ${row.site}, and none with array ports has a gateway to it. Write one.`;
    return [remarkAt(model, "networks", first.row, "gateway", sentence)];
  });
}

function hasGateway({ gateway }: Network): boolean {
  return gateway !== "none" && gateway !== "blank";
}
