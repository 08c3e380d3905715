import type { DiagramStep } from "./diagram-steps";
import { StateTable } from "./state-table";

/** Most parts of one state, and of one level's alike parts. */
const mostParts = 32;

/** Each 2^18 states of a level make a cell count once more: so large a table no longer fits into caches, and is found through slowly. */
const largeTable = 18;

/**
 * The states of one level of a decision diagram, and the step from it to the next.
 *
 * A state is a row of parts: that of the source, that of the sink (0 before each is taken up), then the others in descending order. A node that is
 * taken up touches each part as a whole, with the chance that at least one of its links there is up; parts that are alike are taken together, with
 * the binomial chance that it touches so many of them. Nothing is allocated for a state: this runs millions of times.
 */
export class DiagramLevel {
  up = 0;
  down = 0;
  open = 0;
  cells = 0;
  additions = 0;
  private states = new StateTable();
  private next = new StateTable();
  private step!: DiagramStep;
  private mostCells = 0;
  /** States, the heaviest first, and how many have been taken. */
  private order = new Int32Array(0);
  private taken = 0;

  // The parts of one state that the node may touch, alike ones together.
  private groups = 0;
  private readonly keys = new Int32Array(mostParts);
  private readonly sizes = new Int32Array(mostParts);
  /** By group, and in it by number: how likely the node touches so many of its parts. */
  private readonly chances = new Float64Array(mostParts * mostParts);
  // One outcome: the parts that stay as they are, and those of the ends.
  private readonly kept = new Int32Array(mostParts);
  private source = 0;
  private sink = 0;
  private joinsSource = false;
  private joinsSink = false;
  // What `look` found about one part: how it is written after the step, and how likely the node misses it and meets it.
  private part = 0;
  private missed = 0;
  private met = 0;

  constructor() {
    this.states.add(2, 1);
  }

  get count(): number {
    return this.states.count;
  }

  /** Takes up the next step, which may go on until so many cells have been written in all; with the heaviest states first, or as they stand. */
  begin(step: DiagramStep, mostCells: number, isHeaviestFirst: boolean): void {
    this.step = step;
    this.mostCells = mostCells;
    this.order = isHeaviestFirst ? heaviestFirst(this.states) : Int32Array.from({ length: this.count }, (_, state) => state);
    this.taken = 0;
    this.next.clear();
  }

  /** Goes on with the step until `turnEnds` cells have been written in all, and tells whether there is more to do. */
  expand(turnEnds: number): boolean {
    const { order, states } = this;
    for (; this.taken < order.length; this.taken += 1) {
      if (this.cells >= turnEnds) return true;
      const state = order[this.taken]!;
      if (this.cells < this.mostCells) this.expandState(state);
      // Out of work, perhaps in the middle of this state: all of it counts as open, what of it was settled too, which is the safe side.
      if (this.cells >= this.mostCells) this.open += states.weights[state]!;
    }
    return false;
  }

  end(): void {
    [this.states, this.next] = [this.next, this.states];
  }

  private expandState(state: number): void {
    const { step, states } = this;
    const weight = states.weights[state]!;
    const first = states.starts[state]!;
    const keptParts = this.gatherParts(first + 2, states.starts[state + 1]!);
    this.look(states.words[first]!);
    const { part: source, missed: missesSource, met: meetsSource } = this;
    this.look(states.words[first + 1]!);
    const { part: sink, missed: missesSink, met: meetsSink } = this;
    this.source = source;
    this.sink = sink;

    if (step.chance.down > 0) {
      this.joinsSource = this.joinsSink = false;
      this.finish(weight * step.chance.down, 0, this.keepFrom(0, keptParts));
    }
    for (let outcome = 0; outcome < 4; outcome += 1) {
      const isWithSource = (outcome & 1) === 1;
      const isWithSink = (outcome & 2) === 2;
      const share = weight * step.chance.up * (isWithSource ? meetsSource : missesSource) * (isWithSink ? meetsSink : missesSink);
      if (share === 0) continue;
      this.joinsSource = isWithSource || step.isSource;
      this.joinsSink = isWithSink || step.isSink;
      if (this.joinsSource && this.joinsSink) {
        this.up += share;
        this.additions += 1;
      } else {
        this.touch(0, share, step.unit + (isWithSource ? source : 0) + (isWithSink ? sink : 0), keptParts);
      }
    }
  }

  /** Tells the parts of a state that the node may touch from those it leaves alone, and answers how many the latter are. */
  private gatherParts(first: number, end: number): number {
    const { words } = this.states;
    let kept = 0;
    this.groups = 0;
    for (let word = first; word < end; ) {
      const part = words[word]!;
      let size = 1;
      while (word + size < end && words[word + size] === part) size += 1;
      word += size;
      this.look(part);
      if (this.met === 0) {
        kept = this.keep(this.part, size, kept);
        continue;
      }
      this.keys[this.groups] = this.part;
      this.sizes[this.groups] = size;
      for (let many = 0, choices = 1; many <= size; many += 1) {
        this.chances[this.groups * mostParts + many] = choices * power(this.met, many) * power(this.missed, size - many);
        choices = (choices * (size - many)) / (many + 1);
      }
      this.groups += 1;
    }
    return kept;
  }

  private look(part: number): void {
    const { touches, kept, moves } = this.step;
    let met = 0;
    let missed = 1;
    for (const { shift, mask, chances } of touches) {
      const chance = chances[(part >>> shift) & mask]!;
      met += missed * chance.up;
      missed *= chance.down;
    }
    let moved = part & kept;
    for (const { from, mask, to } of moves) moved += ((part >>> from) & mask) << to;
    this.part = moved;
    this.met = met;
    this.missed = missed;
  }

  /** Lets the node touch any number of the parts of group `group` and of those behind it; `joined` is what it holds together so far. */
  private touch(group: number, weight: number, joined: number, kept: number): void {
    if (group === this.groups) {
      this.finish(weight, joined, kept);
      return;
    }
    const size = this.sizes[group]!;
    const key = this.keys[group]!;
    for (let many = 0; many <= size && this.cells < this.mostCells; many += 1) {
      const share = weight * this.chances[group * mostParts + many]!;
      if (share > 0) this.touch(group + 1, share, joined + many * key, this.keep(key, size - many, kept));
    }
  }

  /** Writes the parts of the groups from `group` on behind the `kept` that stay, and answers how many there are then. */
  private keepFrom(group: number, kept: number): number {
    let all = kept;
    for (let index = group; index < this.groups; index += 1) all = this.keep(this.keys[index]!, this.sizes[index]!, all);
    return all;
  }

  /** Writes a part so many times behind the `kept` that stay; one that leads nowhere is left out. */
  private keep(part: number, times: number, kept: number): number {
    if (this.leadsNowhere(part)) return kept;
    const all = kept + times;
    for (let place = kept; place < all; place += 1) this.kept[place] = part;
    return all;
  }

  private leadsNowhere(part: number): boolean {
    return (part & (part - 1)) === 0 && (part & ~this.step.lastLinks) === 0;
  }

  /** Adds an outcome to the states of the next level, or to what is settled. */
  private finish(weight: number, joined: number, kept: number): void {
    const { step, next } = this;
    const { draft } = next;
    const source = this.joinsSource ? joined : this.source;
    const sink = this.joinsSink ? joined : this.sink;
    this.additions += 1;
    this.cells += (kept + 3) * (1 + (next.count >> largeTable));
    if ((source === 0 && step.hasSource) || (sink === 0 && step.hasSink)) {
      this.down += weight;
      return;
    }
    draft[0] = source;
    draft[1] = sink;
    let length = 2;
    for (let index = 0; index < kept; index += 1) length = insert(draft, length, this.kept[index]!);
    if (!this.joinsSource && !this.joinsSink && !this.leadsNowhere(joined)) length = insert(draft, length, joined);
    next.add(length, weight);
  }
}

/** Puts a part into its place among those of a draft, the largest first, and answers how long the draft is then. */
function insert(draft: Int32Array, length: number, part: number): number {
  let place = length;
  for (; place > 2 && draft[place - 1]! < part; place -= 1) draft[place] = draft[place - 1]!;
  draft[place] = part;
  return length + 1;
}

/** Multiplies out: the exponents are small, and the operator takes ten times as long. */
function power(base: number, exponent: number): number {
  let product = 1;
  for (let factors = exponent; factors > 0; factors -= 1) product *= base;
  return product;
}

/** Orders the states of a table by weight, the heaviest first, to within a factor of two. */
function heaviestFirst({ count, weights }: StateTable): Int32Array<ArrayBuffer> {
  // The exponent of a weight as a 32-bit float, by which states fall into 256 drawers.
  const exponents = new Uint32Array(Float32Array.from(weights.subarray(0, count)).buffer);
  const next = new Int32Array(257);
  for (let state = 0; state < count; state += 1) next[256 - (exponents[state]! >>> 23)]! += 1;
  for (let drawer = 1; drawer <= 256; drawer += 1) next[drawer]! += next[drawer - 1]!;
  const order = new Int32Array(count);
  for (let state = 0; state < count; state += 1) {
    const drawer = 255 - (exponents[state]! >>> 23);
    order[next[drawer]!] = state;
    next[drawer]! += 1;
  }
  return order;
}
