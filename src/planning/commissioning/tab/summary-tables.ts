import { groupBy, topUnit, type PlanModel } from "../../plan/model";
import type { PlanRow } from "../../plan/read";
import { ampsOf, foldName, formatKilograms, formatPercent, roundTo, terabytesOf } from "../../text";
import type { Cell } from "../../../sheet";
import type { ExpandedJob } from "../job";
import { fact, figure, summaryTable, type SummaryRow } from "./summary-row";

/** Lists the addresses of the arrays, a row for each port with the controllers in their order, then those of their clusters. */
export function addressTable({ places: { arrays } }: ExpandedJob, model: PlanModel): SummaryRow[] {
  const ports = arrays.flatMap((array) => model.rowsWith("ports", "array", array.array));
  const controllers = [...new Set(ports.map(({ controller }) => controller))];
  const columns = [
    { label: "Addresses", from: "no", to: "step" },
    { label: "Network", from: "subject", to: "subject" },
    { label: `Controller ${controllers.join(" · ")}`, from: "result", to: "expected" },
  ] as const;
  return summaryTable(columns, [...arrays.flatMap((array) => portLines(array, controllers, model)), ...clusterLines(arrays, model)]);
}

function portLines({ array }: PlanRow<"arrays">, controllers: readonly string[], model: PlanModel): Cell[][] {
  const lines = groupBy(model.rowsWith("ports", "array", array), ({ port, network }) => `${foldName(port)} ${foldName(network)}`);
  return [...lines.values()].map((line) => {
    const { port, network } = line[0]!;
    const addresses = controllers.map((controller) => line.find((one) => one.controller === controller && one.address !== "")?.address ?? "–");
    return [fact(`${array}, port ${port}`), fact(network), fact(addresses.join(" · "))];
  });
}

/** Says what the networks are in which the arrays have ports. */
export function networkTable({ places: { arrays } }: ExpandedJob, model: PlanModel): SummaryRow[] {
  const columns = [
    { label: "Networks", from: "found", to: "unit" },
    { label: "Prefix", from: "expectedBefore", to: "recheckedBy" },
    { label: "Gateway, VLAN", from: "by", to: "note" },
  ] as const;
  const names = new Set(arrays.flatMap((array) => model.rowsWith("ports", "array", array.array)).map(({ network }) => network).filter((name) => name !== ""));
  const lines = [...names].map((name) => {
    const network = model.find("networks", name);
    return [name, network?.prefix ?? "", both(network?.gateway ? `gateway ${network.gateway}` : "", network?.vlan ? `VLAN ${network.vlan}` : "")].map(fact);
  });
  return summaryTable(columns, lines);
}

function clusterLines(arrays: readonly PlanRow<"arrays">[], model: PlanModel): Cell[][] {
  const clusters = new Set(arrays.map(({ cluster }) => cluster).filter((name) => name !== ""));
  return [...clusters].map((name) => {
    const cluster = model.find("clusters", name);
    return [fact(`${name}, shared address`), fact(cluster?.network ?? ""), fact(cluster?.sharedAddress ?? "")];
  });
}

/** Says where each array stands, the unit lowest down first, how heavy it is to lift and from which feeds it is supplied. */
export function positionTable({ places: { arrays } }: ExpandedJob, model: PlanModel): SummaryRow[] {
  const columns = [
    { label: "Rack positions", from: "found", to: "unit" },
    { label: "Rack, units", from: "expectedBefore", to: "recheckedBy" },
    { label: "Lift", from: "by", to: "by" },
    { label: "Feeds A, B", from: "witness", to: "note" },
  ] as const;
  const lines = arrays.map(({ array, rack, bottomUnit, units, liftKg, feedA, feedB }) =>
    [
      array,
      both(rack, bottomUnit === null ? "" : `${bottomUnit}–${topUnit(bottomUnit, units, model.find("racks", rack))}`),
      liftKg === null ? "" : formatKilograms(liftKg),
      both(feedA, feedB),
    ].map(fact),
  );
  return summaryTable(columns, lines);
}

function both(one: string, other: string): string {
  return [one, other].filter((text) => text !== "").join(", ");
}

/** Says how much each feed of the arrays carries, normally and at worst, and whether that is within its limit. */
export function feedTable({ places: { arrays } }: ExpandedJob, model: PlanModel): SummaryRow[] {
  const columns = [
    { label: "Feed loads (local code decides)", from: "found", to: "unit" },
    { label: "Normal W", from: "expectedBefore", to: "expectedBefore" },
    { label: "Worst W", from: "recheckedBy", to: "recheckedBy" },
    { label: "Worst A", from: "by", to: "by" },
    { label: "Limit A", from: "witness", to: "witness" },
    { label: "Of limit at worst", from: "done", to: "note" },
  ] as const;
  const lines = model.power.loadsOf(arrays).map(({ worst: { feed, normalWatts, worstWatts, worstAmps, limitAmps, share, ok } }): Cell[] => [
    fact(feed),
    figure(roundTo(0, normalWatts)),
    figure(roundTo(0, worstWatts)),
    figure(ampsOf(worstAmps)),
    figure(ampsOf(limitAmps)),
    ok ? fact(`${formatPercent(share)}, within`) : { value: `${formatPercent(share)}: over`, style: "alarm" },
  ]);
  return summaryTable(columns, lines);
}

/** Says what the arrays of this job add to each pool: what hosts can store of it, the usable capacity that is made of, and how much may be filled. */
export function poolTable({ places }: ExpandedJob, model: PlanModel): SummaryRow[] {
  const columns = [
    { label: "Capacity by pool, here", from: "found", to: "unit" },
    { label: "To hosts TB", from: "expectedBefore", to: "expectedBefore" },
    { label: "Usable TB", from: "recheckedBy", to: "recheckedBy" },
    { label: "Fill limit", from: "by", to: "by" },
    { label: "To fill TB", from: "witness", to: "witness" },
    { label: "Arrays", from: "done", to: "note" },
  ] as const;
  const sets = places.arrays.flatMap((array) => model.capacity.setsOf(array)).filter(({ pool }) => pool !== "");
  const lines = [...groupBy(sets, ({ pool }) => pool)].map(([name, own]) => {
    const arrays = [...new Set(own.map(({ array }) => array))];
    const capacities = arrays.map((array) => model.capacity.partIn(array, model.find("pools", name)));
    const total = capacities.every((one) => one !== null) ? capacities.reduce((sum, { usable }) => sum + usable, 0n) : null;
    const contents = model.capacity.pools().find(({ pool }) => foldName(pool.pool) === foldName(name));
    const toHosts = contents === undefined ? total : model.capacity.partToHosts(contents, arrays);
    const limit = contents?.pool.fillLimit ?? null;
    return [
      fact(name),
      figure(toHosts === null ? null : terabytesOf(toHosts)),
      figure(total === null ? null : terabytesOf(total)),
      fact(limit === null ? "" : formatPercent(limit)),
      figure(toHosts === null || limit === null ? null : roundTo(2, (Number(toHosts) / 1e12) * limit)),
      fact(arrays.length === places.arrays.length ? "all of this tab" : arrays.map(({ array }) => array).join(", ")),
    ];
  });
  return summaryTable(columns, lines);
}
