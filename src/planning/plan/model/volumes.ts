import { bytes, exactFraction, type Bytes } from "../../quantity";
import { foldName, splitNames } from "../../text";
import type { PlanRow } from "../read";
import type { Capacity, PoolContents } from "./capacity";
import { gather } from "./gather";
import { groupBy } from "./group-by";
import { once, oncePer } from "./once";
import type { PlanRows } from "./plan-rows";

/** What the volumes of a pool take of it, those whose size is known. */
export interface PoolDemand {
  readonly contents: PoolContents;
  /** What the pool gives to hosts; null where that is not known. */
  readonly given: Bytes | null;
  /** Volumes of which all is set aside, with their snapshots. */
  readonly full: Bytes;
  /** What hosts were told that they have, thin volumes too, with their snapshots. */
  readonly promised: Bytes;
  /** How many times what it gives a pool with thin volumes promises; null where nothing is thin, or what it gives is not known. */
  readonly promisedTimes: number | null;
}

/** A row of Access, and the hosts that it means. */
export interface Opening {
  readonly row: PlanRow<"access">;
  readonly hosts: readonly PlanRow<"hosts">[];
  readonly writes: boolean;
}

/** What the volumes of a plan take, and which hosts open them. */
export class Volumes {
  constructor(private readonly rows: PlanRows, private readonly capacity: Capacity) {}

  /** Names, without case, the groups that a host is in. */
  private readonly groupsOf = oncePer(({ groups }: PlanRow<"hosts">): readonly string[] => splitNames(groups).map(foldName));

  /** Lists the pools that have volumes with what these take of them. */
  readonly demands = once((): readonly PoolDemand[] =>
    gather(this.capacity.pools(), (contents): PoolDemand[] => {
      const volumes = this.rows.rowsWith("volumes", "pool", contents.pool.pool);
      if (volumes.length === 0) return [];
      const known = volumes.flatMap((row) => (row.size === null ? [] : [{ isThin: isThin(row), bytes: withSnapshots(row, row.size) }]));
      const sum = (some: typeof known): Bytes => bytes(some.reduce((total, one) => total + one.bytes, 0n));
      const [given, promised] = [this.capacity.toHosts(contents), sum(known)];
      const promisedTimes = given === null || given === 0n || !volumes.some(isThin) ? null : Number(promised) / Number(given);
      return [{ contents, given, full: sum(known.filter((one) => !one.isThin)), promised, promisedTimes }];
    }),
  );

  /** Finds the hosts that a name of the column Host or group means: the host of that name, or those in the group; none where nothing has the name. */
  readonly hostsOf = oncePer((name: string): readonly PlanRow<"hosts">[] => {
    const host = this.rows.find("hosts", name);
    return host === null ? (this.groups().get(foldName(name)) ?? []) : [host];
  });

  /** Lists the rows of Access about a volume. */
  readonly openingsOf = oncePer((volume: string): readonly Opening[] =>
    this.rows.rowsWith("access", "volume", volume).map((row) => ({ row, hosts: this.hostsOf(row.to), writes: row.right !== "read" })),
  );

  /** The hosts of every group, by its name without case. */
  readonly groups = once((): ReadonlyMap<string, readonly PlanRow<"hosts">[]> => {
    const members = gather(this.rows.rows("hosts"), (host) => this.groupsOf(host).map((group) => ({ group, host })));
    return new Map([...groupBy(members, ({ group }) => group)].map(([group, some]) => [group, some.map(({ host }) => host)]));
  });

  /** Lists the groups in which any of these hosts is, each with all its hosts. */
  readonly groupsWith = oncePer((hosts: readonly PlanRow<"hosts">[]): readonly (readonly PlanRow<"hosts">[])[] =>
    [...new Set(hosts.flatMap((host) => this.groupsOf(host)))].map((group) => this.groups().get(group) ?? []),
  );

  /** Tells whether all of these hosts are in one group, and so made to open one volume together. */
  readonly areOneGroup = oncePer((hosts: readonly PlanRow<"hosts">[]): boolean => {
    const [first, ...others] = hosts;
    return first === undefined || this.groupsOf(first).some((group) => others.every((other) => this.groupsOf(other).includes(group)));
  });
}

function isThin({ provisioning }: PlanRow<"volumes">): boolean {
  return provisioning === "thin";
}

function withSnapshots({ snapshotShare }: PlanRow<"volumes">, size: Bytes): bigint {
  const { numerator, denominator } = exactFraction(snapshotShare ?? 0);
  return size + (size * numerator + denominator - 1n) / denominator;
}
