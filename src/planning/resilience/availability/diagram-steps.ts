import { inParallel, impossible, type Chance } from "./chance";
import { eliminationOrder } from "./elimination-order";
import type { ClassChange, OrderStep } from "./exchangeable-places";
import type { TwoTerminalNetwork } from "./two-terminal-network";

/**
 * How the places of the frontier are written: a part of the network is one number, in which each class of places that may be exchanged has a
 * field that says how many of them the part holds. Parts that grow together are added.
 */
interface Field {
  readonly shift: number;
  readonly mask: number;
  /** Places in the class, and links to come from each. */
  readonly size: number;
  readonly open: number;
}

/** Links of the node taken up to the places of one field. */
export interface Touch {
  readonly shift: number;
  readonly mask: number;
  /** Chance that at least one link to a part is up, by how many of these places the part holds. */
  readonly chances: readonly Chance[];
}

/** A field that lies elsewhere after a step. */
export interface FieldMove {
  readonly from: number;
  readonly mask: number;
  readonly to: number;
}

/** One node taken up: it is up or down, and its links to the places before it lead to each part or do not. */
export interface DiagramStep {
  readonly chance: Chance;
  readonly isSource: boolean;
  readonly isSink: boolean;
  readonly touches: readonly Touch[];
  /** Bits of the fields that stay where they are, and the fields that move; the others have no links to come. */
  readonly kept: number;
  readonly moves: readonly FieldMove[];
  /** The node as a part of its own, written as after the step; 0 where it has no links to come. */
  readonly unit: number;
  /** Units of the fields whose places have one link to come: alone in its part, such a place leads nowhere. */
  readonly lastLinks: number;
  /** Whether each end has been taken up before or in this step. */
  readonly hasSource: boolean;
  readonly hasSink: boolean;
}

/** Bits of a part. */
const wordBits = 31;

/** Lays out the steps of a decision diagram, or answers null where its frontier is too wide for the bits of a part. */
export function planSteps(network: TwoTerminalNetwork): DiagramStep[] | null {
  const forwardLinks = new Int32Array(network.nodes.length);
  const steps: DiagramStep[] = [];
  let fields: ReadonlyMap<number, Field> = new Map();
  let hasSource = false;
  let hasSink = false;
  const order = eliminationOrder(network);
  for (const { changes } of order) for (const { node } of changes) forwardLinks[node]! += 1;
  for (const step of order) {
    const { node } = step;
    const layout = layFields(fields, step, forwardLinks[node]!);
    if (layout === null) return null;
    const isSource = node === network.source;
    const isSink = node === network.sink;
    hasSource ||= isSource;
    hasSink ||= isSink;
    steps.push({
      chance: network.nodes[node]!,
      isSource,
      isSink,
      touches: touchesOf(fields, step.changes, network),
      kept: layout.kept,
      moves: layout.moves,
      unit: step.entering === 0 ? 0 : unitOf(layout.fields.get(step.entering)!),
      lastLinks: [...layout.fields.values()].reduce((units, field) => (field.open === 1 ? units | unitOf(field) : units), 0),
      hasSource,
      hasSink,
    });
    fields = layout.fields;
  }
  return steps;
}

function unitOf({ shift }: Field): number {
  return 1 << shift;
}

function touchesOf(fields: ReadonlyMap<number, Field>, changes: readonly ClassChange[], { links }: TwoTerminalNetwork): Touch[] {
  const linkOf = new Map(changes.map(({ before, link }) => [before, link]));
  return [...linkOf].map(([member, link]) => {
    const { shift, mask, size } = fields.get(member)!;
    const chances = [impossible];
    while (chances.length <= size) chances.push(inParallel(chances[chances.length - 1]!, links[link]!.chance));
    return { shift, mask, chances };
  });
}

interface FieldLayout {
  readonly fields: ReadonlyMap<number, Field>;
  readonly kept: number;
  readonly moves: readonly FieldMove[];
}

/** Lays the fields out anew after a step: as they are, unless two of them become one. Null where they no longer fit. */
function layFields(before: ReadonlyMap<number, Field>, { entering, changes }: OrderStep, open: number): FieldLayout | null {
  const changed = new Map(changes.map((change) => [change.before, change.after]));
  const merged = new Map<number, { size: number; open: number; from: Field[] }>();
  for (const [member, field] of before) {
    const after = changed.get(member) ?? member;
    const there = merged.get(after);
    if (after === 0) continue;
    if (there === undefined) merged.set(after, { size: field.size, open: field.open - (changed.has(member) ? 1 : 0), from: [field] });
    else {
      there.size += field.size;
      there.from.push(field);
    }
  }
  const joined = entering === 0 ? undefined : merged.get(entering);
  if (joined !== undefined) joined.size += 1;
  else if (entering !== 0) merged.set(entering, { size: 1, open, from: [] });

  const mayStay = joined === undefined && [...merged.values()].every(({ from }) => from.length < 2);
  const bits = [...merged.values()].reduce((sum, { size }) => sum + bitsOf(size), 0);
  if (bits > wordBits) return null;
  const fields = new Map<number, Field>();
  const moves: FieldMove[] = [];
  let kept = 0;
  let next = 0;
  for (const [member, { size, open: links, from }] of merged) {
    const [only] = from;
    if (mayStay && only !== undefined) {
      fields.set(member, { ...only, open: links });
      kept |= only.mask << only.shift;
      continue;
    }
    // The new node stands last, and takes the lowest free bit where the others stay.
    const shift = mayStay ? 31 - Math.clz32(~kept & -~kept) : next;
    const mask = 2 ** bitsOf(size) - 1;
    fields.set(member, { shift, mask, size, open: links });
    moves.push(...from.map((field) => ({ from: field.shift, mask: field.mask, to: shift })));
    next += bitsOf(size);
  }
  return { fields, kept, moves };
}

function bitsOf(size: number): number {
  return 32 - Math.clz32(size);
}
