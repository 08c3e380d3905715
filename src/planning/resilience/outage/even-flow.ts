import { noAnswer } from "../../text";
import { FlowNetwork } from "../paths/flow-network";

/** Groups that are alike: so many of them, of so many members each, each of which may lose so many. */
export interface GroupKind {
  readonly groups: number;
  readonly size: number;
  /** Infinity for members that take no data with them. */
  readonly tolerance: number;
}

/**
 * Finds how many members of each kind of group each domain takes: row by kind, column by domain. `rooms` have room for all.
 *
 * The order of aims: the loss of any one domain leaves the largest slack to the group that is worst off (below 0: it loses data, and nothing
 * better can be had); then the fullest domain holds as few as can be, and the squares of what the domains hold add up to the least.
 *
 * A slack of s means that a domain takes at most tolerance − s members of a group, and groups that are alike share a domain's members
 * evenly, so that a flow from kinds to domains has as much room as they have together. The largest slack is searched for; then the domains
 * are filled level by level, each time as far as the flow goes. As the cost of a further member of a domain grows with its level, this is
 * the primal-dual method for a flow of least cost (Ford and Fulkerson 1957, from memory). The loads it finds are the least squares, and
 * no other loads have a lower fullest domain, or fewer domains as full (Frank and Murota on decreasing minimisation, from memory).
 *
 * Past a fixed amount of work, the same on every machine, it refuses: groups of hundreds of sizes over thousands of domains, or
 * thousands of domains of which one holds nearly all.
 */
export function evenFlow(kinds: readonly GroupKind[], rooms: readonly number[]): number[][] {
  const members = kinds.reduce((sum, { groups, size }) => sum + groups * size, 0);
  const arcs = kinds.length * rooms.length;
  if (arcs > mostArcs) throw tooMuchWork(rooms);
  let slack = -Math.max(0, ...kinds.map(({ size }) => size));
  let tooMuch = Math.min(members, ...kinds.map(({ tolerance }) => tolerance));
  while (slack + 1 < tooMuch) {
    const between = Math.floor((slack + tooMuch) / 2);
    if (new PlacementFlow(kinds, rooms.length, between).fill(rooms) === members) slack = between;
    else tooMuch = between;
  }

  const flow = new PlacementFlow(kinds, rooms.length, slack);
  for (let level = 1, placed = 0; placed < members; level += 1) {
    if (level * arcs > mostWork) throw tooMuchWork(rooms);
    placed += flow.fill(rooms.map((room) => (room >= level ? 1 : 0)));
  }
  return flow.loads();
}

/** Most ways from a kind of group to a domain, and most looks at them: about a second. */
const mostArcs = 500_000;
const mostWork = 5_000_000;

function tooMuchWork({ length }: readonly number[]): Error {
  return noAnswer("members", null, `members take too long to place over ${length} domains of such unlike room, in such groups. Give fewer members or domains.`);
}

/** A flow from a source over kinds of groups and domains to a sink. */
class PlacementFlow {
  private readonly network: FlowNetwork;
  private readonly arcs: readonly (readonly number[])[];
  private readonly exits: readonly number[];
  private readonly source: number;
  private readonly sink: number;

  constructor(kinds: readonly GroupKind[], domains: number, slack: number) {
    const domainAt = (domain: number): number => kinds.length + domain;
    this.source = kinds.length + domains;
    this.sink = this.source + 1;
    this.network = new FlowNetwork(this.sink + 1, kinds.length + kinds.length * domains + domains);
    kinds.forEach(({ groups, size }, kind) => this.network.addArc(this.source, kind, groups * size));
    this.arcs = kinds.map(({ groups, size, tolerance }, kind) => {
      const most = groups * Math.max(0, Math.min(size, tolerance - slack));
      // The arc added last is tried first: of domains that are as good as each other, the first takes more.
      return Array.from({ length: domains }, (_, place) => this.network.addArc(kind, domainAt(domains - 1 - place), most)).reverse();
    });
    this.exits = Array.from({ length: domains }, (_, domain) => this.network.addArc(domainAt(domain), this.sink, 0));
  }

  /** Gives the domains so much more room, sends what can be sent, and answers how much that is. */
  fill(rooms: readonly number[]): number {
    this.exits.forEach((arc, domain) => this.network.widen(arc, rooms[domain]!));
    return this.network.maximise(this.source, this.sink);
  }

  loads(): number[][] {
    return this.arcs.map((arcs) => arcs.map((arc) => this.network.flowOn(arc)));
  }
}
