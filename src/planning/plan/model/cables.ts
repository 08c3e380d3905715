import { foldName } from "../../text";
import type { PlanRow } from "../read";
import { groupBy } from "./group-by";
import type { HostPorts } from "./host-ports";
import { once } from "./once";
import type { PlanRows } from "./plan-rows";
import type { Power } from "./power";
import type { Wiring } from "./wiring";

/** What is at the two ends of a cable. */
interface Ends {
  readonly from: string;
  readonly to: string;
}

/** A cable that the plan asks for. */
export interface PlannedCable extends Ends {
  /** port: from a port of an array or host to one of a switch; link: a row of Links; power: from a supply to its feed. */
  readonly kind: "port" | "link" | "power";
}

/** Names the end of a cable at a switch, as its label does; the switch alone where nobody says its port. */
export function switchEnd(name: string, port: string): string {
  return name === "" || port === "" ? name : `${name} port ${port}`;
}

/** A cable and its row in Cables. */
interface Laid {
  readonly cable: PlannedCable;
  readonly row: PlanRow<"cables">;
}

/**
 * The cables of a plan, and the rows of Cables that stand for them.
 *
 * A row stands for the cable of both its ends; else, where the plan has changed since, for the only one left with one of them.
 */
export class Cables {
  /** Lists every cable that is known from end to end: of ports of arrays, then of hosts, then links, then cords of arrays, shelves and switches. */
  readonly all = once((): readonly PlannedCable[] => [...this.ofPorts(), ...this.ofLinks(), ...this.ofSupplies()]);

  private readonly matched = once(() => this.match());

  private readonly byCable = once(() => new Map(this.matched().laid.map(({ cable, row }) => [cable, row])));

  constructor(
    private readonly rows: PlanRows,
    private readonly wiring: Wiring,
    private readonly hostPorts: HostPorts,
    private readonly power: Power,
  ) {}

  /** Finds the row that stands for a cable; null where there is none. */
  rowOf(cable: PlannedCable): PlanRow<"cables"> | null {
    return this.byCable().get(cable) ?? null;
  }

  /** Lists the cables without a row. */
  unlisted(): readonly PlannedCable[] {
    return this.all().filter((cable) => !this.byCable().has(cable));
  }

  /** Lists the cables whose row says another end than the plan. */
  moved(): readonly Laid[] {
    return this.matched().laid.filter(({ cable, row }) => bothEnds(cable) !== bothEnds(row));
  }

  /** Lists the rows that say ends and stand for no cable of the plan. */
  lost(): readonly PlanRow<"cables">[] {
    return this.matched().lost;
  }

  private ofPorts(): PlannedCable[] {
    const known = this.wiring.all().filter(({ row, to }) => to !== null && row.switchPort !== "");
    return [...groupBy(known, ({ cable }) => cable).values()].map(([first]) => ({ kind: "port", from: first!.label, to: switchEnd(first!.to!.switch, first!.row.switchPort) }));
  }

  /** A host whose ports are cabled is told by those, not by its links. */
  private ofLinks(): PlannedCable[] {
    const isEnd = (name: string): boolean => this.rows.find("switches", name) !== null || this.hostPorts.isByLinksAlone(name);
    return this.rows.rows("links").filter(({ from, to }) => isEnd(from) && isEnd(to)).map(({ from, to }) => ({ kind: "link", from, to }));
  }

  private ofSupplies(): PlannedCable[] {
    return this.power.devices().flatMap(({ row, name }) =>
      ([["A", row.feedA], ["B", row.feedB]] as const).flatMap(([supply, feed]): PlannedCable[] =>
        this.power.feedNamed(feed) === null ? [] : [{ kind: "power", from: `${name} supply ${supply}`, to: `feed ${feed}` }],
      ),
    );
  }

  private match(): { readonly laid: readonly Laid[]; readonly lost: readonly PlanRow<"cables">[] } {
    const laid: Laid[] = [];
    let rows = this.rows.rows("cables").filter(({ from, to }) => from !== "" || to !== "");
    let cables = rows.length === 0 ? [] : this.all();
    const pair = (keyOf: (ends: Ends) => string, most: number): void => {
      const wanted = groupBy(cables, keyOf);
      const taken = new Set<Ends>();
      for (const [key, own] of groupBy(rows, keyOf)) {
        const found = key === "" ? [] : (wanted.get(key) ?? []);
        if (Math.max(own.length, found.length) > most) continue;
        own.slice(0, found.length).forEach((row, at) => {
          laid.push({ cable: found[at]!, row });
          taken.add(row).add(found[at]!);
        });
      }
      rows = rows.filter((row) => !taken.has(row));
      cables = cables.filter((cable) => !taken.has(cable));
    };
    pair(bothEnds, Infinity);
    pair(({ from }) => foldName(from), 1);
    pair(({ to }) => foldName(to), 1);
    return { laid, lost: rows };
  }
}

/** Makes one text of the ends of a cable, without case, whichever of them is written first. */
function bothEnds({ from, to }: Ends): string {
  return [foldName(from), foldName(to)].sort().join("\n");
}
