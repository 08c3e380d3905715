import type { TwoTerminalNetwork } from "./two-terminal-network";

/** A link from the node taken up to one taken up before it, and the class of that one before and after the step. */
export interface ClassChange {
  readonly node: number;
  /** Place of the link in the network. */
  readonly link: number;
  readonly before: number;
  /** 0 where the node has no links to come. */
  readonly after: number;
}

/** One node being taken up, with its links to those before it. */
export interface OrderStep {
  readonly node: number;
  /** Class in which it begins; 0 where it has no links to come. */
  readonly entering: number;
  readonly changes: readonly ClassChange[];
}

/**
 * Numbers the links of a network by their chance: the same number, the same chance to the last digit.
 */
export function chanceNumbers({ links }: TwoTerminalNetwork): Int32Array {
  const numbers = new Map<string, number>();
  return Int32Array.from(links, ({ chance: { up, down } }) => {
    const key = `${up} ${down}`;
    const number = numbers.get(key) ?? numbers.size;
    numbers.set(key, number);
    return number;
  });
}

/**
 * Tells, step by step, which of the nodes taken up may be exchanged for each other: those of one class.
 *
 * Two of them are in one class when the links that each has to nodes still to come lead to the same nodes with the same chances. Swapping
 * the two is then an automorphism of all that remains, so that it does not matter which of them is in which part, only how many are. To look
 * alike by degree or by colour is not enough: in a fabric of two planes all spines do, and those of different planes are not to be exchanged.
 *
 * Worked out from the last step to the first, where the links to come begin as none; takes time of nodes and links.
 */
export function exchangeablePlaces(network: TwoTerminalNetwork, chances: Int32Array, order: readonly number[]): OrderStep[] {
  const rank = new Int32Array(network.nodes.length);
  order.forEach((node, index) => (rank[node] = index));
  const backLinks = order.map((): number[] => []);
  network.links.forEach(({ a, b }, link) => backLinks[Math.max(rank[a]!, rank[b]!)]!.push(link));

  const classOf = new Int32Array(network.nodes.length);
  let classes = 1;
  const steps: OrderStep[] = [];
  for (let index = order.length - 1; index >= 0; index -= 1) {
    const node = order[index]!;
    const known = new Map<number, number>();
    const changes = backLinks[index]!.map((link): ClassChange => {
      const { a, b } = network.links[link]!;
      const other = a === node ? b : a;
      const after = classOf[other]!;
      const key = after * network.links.length + chances[link]!;
      const before = known.get(key) ?? classes++;
      known.set(key, before);
      classOf[other] = before;
      return { node: other, link, before, after };
    });
    steps.push({ node, entering: classOf[node]!, changes });
  }
  return steps.reverse();
}
