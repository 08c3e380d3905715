/** Words of the longest state: the two ends and as many parts as a part has bits. */
const mostWords = 34;

// Read once: in a sandbox, such as that of a test runner, looking a global up takes longer than the work.
const { imul } = Math;

/** Distinct states of one level of a decision diagram with their probabilities, found by hashing. A state is a short row of words. */
export class StateTable {
  count = 0;
  /** State being written: `add` takes its first `length` words in. */
  readonly draft = new Int32Array(mostWords);
  weights = new Float64Array(64);
  words = new Int32Array(256);
  /** Where the words of each state begin, and, behind the last, where the next will. */
  starts = new Int32Array(65);
  private hashes = new Int32Array(64);
  /** State number plus one by hash; 0 is free. */
  private slots = new Int32Array(128);

  /** Adds `weight` to the state that the draft spells. */
  add(length: number, weight: number): void {
    const { draft, words, starts, slots } = this;
    const mask = slots.length - 1;
    let hash = length;
    for (let word = 0; word < length; word += 1) {
      hash = imul(hash ^ draft[word]!, 0x9e3779b1);
      hash ^= hash >>> 15;
    }
    let slot = hash & mask;
    for (let state = slots[slot]! - 1; state >= 0; state = slots[slot]! - 1) {
      const start = starts[state]!;
      let word = starts[state + 1]! - start === length ? 0 : -1;
      while (word >= 0 && word < length && words[start + word] === draft[word]) word += 1;
      if (word === length) {
        this.weights[state]! += weight;
        return;
      }
      slot = (slot + 1) & mask;
    }
    this.append(length, weight, hash, slot);
  }

  private append(length: number, weight: number, hash: number, slot: number): void {
    const start = this.starts[this.count]!;
    if (start + length > this.words.length) this.words = longer(this.words, new Int32Array(2 * this.words.length));
    for (let word = 0; word < length; word += 1) this.words[start + word] = this.draft[word]!;
    this.weights[this.count] = weight;
    this.hashes[this.count] = hash;
    this.count += 1;
    this.starts[this.count] = start + length;
    this.slots[slot] = this.count;
    if (this.count === this.weights.length) this.grow();
  }

  private grow(): void {
    const room = 2 * this.count;
    this.weights = longer(this.weights, new Float64Array(room));
    this.starts = longer(this.starts, new Int32Array(room + 1));
    this.hashes = longer(this.hashes, new Int32Array(room));
    this.slots = new Int32Array(2 * room);
    const mask = this.slots.length - 1;
    for (let state = 0; state < this.count; state += 1) {
      let slot = this.hashes[state]! & mask;
      while (this.slots[slot] !== 0) slot = (slot + 1) & mask;
      this.slots[slot] = state + 1;
    }
  }

  /** Forgets all states, and keeps the room they took. */
  clear(): void {
    this.count = 0;
    this.slots.fill(0);
  }
}

function longer<Numbers extends Int32Array | Float64Array>(from: Numbers, to: Numbers): Numbers {
  to.set(from);
  return to;
}
