/** Flow that no sum of capacities of a graph reaches. */
export const unlimited = 1_000_000_000;

/**
 * Directed network whose greatest flow is found by Dinic's algorithm (Soviet Mathematics Doklady 11, 1970).
 *
 * Arcs lie in pairs: arc `i ^ 1` runs the other way. On networks of unit capacities it takes at most about arcs times the square root of
 * nodes.
 */
export class FlowNetwork {
  private readonly head: Int32Array;
  private readonly nextArc: Int32Array;
  private readonly target: Int32Array;
  private readonly room: Int32Array;
  private readonly depth: Int32Array;
  private arcs = 0;

  constructor(
    private readonly nodes: number,
    pairs: number,
  ) {
    this.head = new Int32Array(nodes).fill(-1);
    this.depth = new Int32Array(nodes);
    this.nextArc = new Int32Array(2 * pairs);
    this.target = new Int32Array(2 * pairs);
    this.room = new Int32Array(2 * pairs);
  }

  /** Adds an arc of `capacity` from `a` to `b`, and one of `back` the other way; answers the number of the first. */
  addArc(a: number, b: number, capacity: number, back = 0): number {
    this.addHalf(a, b, capacity);
    this.addHalf(b, a, back);
    return this.arcs - 2;
  }

  /** Gives an arc more capacity. */
  widen(arc: number, capacity: number): void {
    this.room[arc]! += capacity;
  }

  /** Answers the flow on an arc that was added without capacity the other way. */
  flowOn(arc: number): number {
    return this.room[arc ^ 1]!;
  }

  private addHalf(a: number, b: number, capacity: number): void {
    this.target[this.arcs] = b;
    this.room[this.arcs] = capacity;
    this.nextArc[this.arcs] = this.head[a]!;
    this.head[a] = this.arcs++;
  }

  /** Sends as much flow as goes from `source` to `sink`, and answers how much. */
  maximise(source: number, sink: number): number {
    let flow = 0;
    while (this.layer(source)[sink] !== -1) {
      const current = this.head.slice();
      for (let sent = this.augment(source, sink, current); sent > 0; sent = this.augment(source, sink, current)) flow += sent;
    }
    return flow;
  }

  /** Numbers the nodes by their distance from `source` over arcs with room; -1: out of reach. */
  layer(source: number): Int32Array {
    const { depth, head, nextArc, target, room } = this;
    depth.fill(-1);
    depth[source] = 0;
    const queue = new Int32Array(this.nodes);
    queue[0] = source;
    for (let read = 0, written = 1; read < written; read += 1) {
      const node = queue[read]!;
      for (let arc = head[node]!; arc !== -1; arc = nextArc[arc]!) {
        const next = target[arc]!;
        if (room[arc]! > 0 && depth[next] === -1) {
          depth[next] = depth[node]! + 1;
          queue[written++] = next;
        }
      }
    }
    return depth;
  }

  /** Sends flow along one path of the layers and answers how much; 0 where none is left. `current` keeps each node's first arc untried. */
  private augment(source: number, sink: number, current: Int32Array): number {
    const { depth, nextArc, target, room } = this;
    const path: number[] = [];
    for (let node = source; node !== sink; ) {
      const arc = current[node]!;
      if (arc === -1) {
        const back = path.pop();
        if (back === undefined) return 0;
        node = target[back ^ 1]!;
        current[node] = nextArc[current[node]!]!;
      } else if (room[arc]! > 0 && depth[target[arc]!] === depth[node]! + 1) {
        path.push(arc);
        node = target[arc]!;
      } else {
        current[node] = nextArc[arc]!;
      }
    }
    const sent = path.reduce((least, arc) => Math.min(least, room[arc]!), unlimited);
    for (const arc of path) {
      room[arc]! -= sent;
      room[arc ^ 1]! += sent;
    }
    return sent;
  }
}
