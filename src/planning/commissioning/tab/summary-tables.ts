import { groupBy, topUnit, type PlanModel } from "../../plan/model";
import type { PlanRow } from "../../plan/read";
import { ampsOf, foldName, formatKilograms, formatPercent, roundTo, terabytesOf } from "../../text";
import type { Cell } from "../../../sheet";
import type { ExpandedJob } from "../job";
import { fact, figure, summaryTable, type SummaryRow } from "./summary-row";

/** Lists the addresses of the arrays, a row for each port and network with the controllers side by side, then those of their clusters. */
export function addressTable({ places: { arrays } }: ExpandedJob, model: PlanModel): SummaryRow[] {
  const lines = [...arrays.flatMap((array) => portLines(array, model)), ...clusterLines(arrays, model)];
  const controllers = [...new Set(arrays.flatMap((array) => model.rowsWith("ports", "array", array.array).map(({ controller }) => controller)))];
  const columns = [
    { label: "Addresses", from: "no", to: "stepId" },
    { label: "Port and network", from: "step", to: "step" },
    { label: `Controller ${controllers[0] ?? ""}`, from: "subject", to: "result" },
    { label: `Controller ${controllers.slice(1).join(", ")}`, from: "expected", to: "expected" },
  ] as const;
  return summaryTable(columns, lines);
}

function portLines({ array }: PlanRow<"arrays">, model: PlanModel): Cell[][] {
  const ports = model.rowsWith("ports", "array", array);
  const [first, ...others] = new Set(ports.map(({ controller }) => controller));
  const lines = new Map<string, PlanRow<"ports">[]>();
  for (const port of ports) {
    const line = `${foldName(port.port)} ${foldName(port.network)}`;
    lines.set(line, [...(lines.get(line) ?? []), port]);
  }
  return [...lines.values()].map((line) => {
    const { port, network } = line[0]!;
    const addressOf = (controller: string | undefined): string => line.find((one) => one.controller === controller)?.address ?? "";
    const rest = others.map((controller) => (others.length > 1 ? `${controller} ${addressOf(controller)}` : addressOf(controller)));
    return [fact(array), fact(`Port ${port} · ${networkFacts(network, model)}`), fact(addressOf(first)), fact(rest.join("\n"))];
  });
}

function networkFacts(name: string, model: PlanModel): string {
  const network = model.find("networks", name);
  const facts = network === null ? [] : [network.prefix, network.gateway && `gateway ${network.gateway}`, network.vlan === null ? "" : `VLAN ${network.vlan}`];
  return [name, ...facts].filter((text) => text !== "").join(", ");
}

function clusterLines(arrays: readonly PlanRow<"arrays">[], model: PlanModel): Cell[][] {
  const clusters = new Set(arrays.map(({ cluster }) => cluster).filter((name) => name !== ""));
  return [...clusters].map((cluster) => {
    const address = model.find("clusters", cluster)?.sharedAddress ?? "";
    return [fact(cluster), fact("Shared address of the cluster"), fact(address), fact("")];
  });
}

/** Says where each array stands, how it is lifted and from which feeds it is supplied. */
export function positionTable({ places: { arrays } }: ExpandedJob): SummaryRow[] {
  const columns = [
    { label: "Rack positions", from: "found", to: "found" },
    { label: "Rack", from: "unit", to: "expectedBefore" },
    { label: "Units", from: "recheckedBy", to: "recheckedBy" },
    { label: "Lift", from: "by", to: "by" },
    { label: "Lift by", from: "witness", to: "witness" },
    { label: "Feed A", from: "done", to: "done" },
    { label: "Feed B", from: "note", to: "note" },
  ] as const;
  const lines = arrays.map(({ array, rack, bottomUnit, units, liftKg, liftBy, feedA, feedB }) =>
    [
      array,
      rack,
      bottomUnit === null ? "" : `${bottomUnit}–${topUnit(bottomUnit, units)}`,
      liftKg === null ? "" : formatKilograms(liftKg),
      liftBy,
      feedA,
      feedB,
    ].map(fact),
  );
  return summaryTable(columns, lines);
}

/** Says how much each feed of the arrays carries, normally and at worst, and whether that is within its limit. */
export function feedTable({ places: { arrays } }: ExpandedJob, model: PlanModel): SummaryRow[] {
  const columns = [
    { label: "Feed loads (local code decides)", from: "found", to: "found" },
    { label: "Normal W", from: "unit", to: "expectedBefore" },
    { label: "Worst W", from: "recheckedBy", to: "recheckedBy" },
    { label: "Worst A", from: "by", to: "by" },
    { label: "Limit A", from: "witness", to: "witness" },
    { label: "Share at worst", from: "done", to: "note" },
  ] as const;
  const lines = model.power.loadsOf(arrays).map(({ worst: { feed, normalWatts, worstWatts, worstAmps, limitAmps, share, ok } }): Cell[] => [
    fact(feed),
    figure(roundTo(0, normalWatts)),
    figure(roundTo(0, worstWatts)),
    figure(ampsOf(worstAmps)),
    figure(ampsOf(limitAmps)),
    ok ? fact(`${formatPercent(share)}, within the limit`) : { value: `${formatPercent(share)}: over the limit`, style: "alarm" },
  ]);
  return summaryTable(columns, lines);
}

/** Says what the arrays of this job add to each pool: what hosts can store of it, the usable capacity that is made of, and how much may be filled. */
export function poolTable({ places }: ExpandedJob, model: PlanModel): SummaryRow[] {
  const columns = [
    { label: "Capacity by pool, here", from: "found", to: "found" },
    { label: "To hosts TB", from: "unit", to: "expectedBefore" },
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
      fact(arrays.map(({ array }) => array).join(", ")),
    ];
  });
  return summaryTable(columns, lines);
}
