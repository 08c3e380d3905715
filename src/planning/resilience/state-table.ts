/** Places of a frontier that one 30-bit word holds, five bits each. */
export const placesAWord = 6;

/** Distinct states of one level of a decision diagram with their probabilities, found by hashing. */
export class StateTable {
  count = 0;
  readonly weights: Float64Array;
  /** State being written, six places a word, the first place highest; `add` takes it in. */
  readonly draft: Int32Array;
  private readonly words: number;
  private readonly states: Int32Array;
  /** State number plus one by hash; 0 is free. */
  private readonly slots: Int32Array;

  /** Makes room for at most `most` states of `width` places. */
  constructor(
    readonly width: number,
    most: number,
  ) {
    this.words = Math.ceil(width / placesAWord);
    this.draft = new Int32Array(this.words);
    this.states = new Int32Array(most * this.words);
    this.weights = new Float64Array(most);
    this.slots = new Int32Array(2 ** Math.ceil(Math.log2(2 * most)));
  }

  /** Adds `weight` to the state that the draft spells. */
  add(weight: number): void {
    const { draft, words, states, slots } = this;
    const mask = slots.length - 1;
    let hash = 0;
    for (let word = 0; word < words; word += 1) {
      hash = Math.imul(hash ^ draft[word]!, 0x9e3779b1);
      hash ^= hash >>> 15;
    }
    for (let slot = hash & mask; ; slot = (slot + 1) & mask) {
      const state = slots[slot]! - 1;
      if (state < 0) {
        const start = this.count * words;
        for (let word = 0; word < words; word += 1) states[start + word] = draft[word]!;
        this.weights[this.count] = weight;
        this.count += 1;
        slots[slot] = this.count;
        return;
      }
      const start = state * words;
      let word = 0;
      while (word < words && states[start + word] === draft[word]) word += 1;
      if (word === words) {
        this.weights[state]! += weight;
        return;
      }
    }
  }

  /** Writes the places of a state into `places`. */
  unpack(state: number, places: Uint8Array): void {
    const { states, words, width } = this;
    for (let word = 0; word < words; word += 1) {
      const first = word * placesAWord;
      let packed = states[state * words + word]!;
      for (let place = Math.min(width, first + placesAWord) - 1; place >= first; place -= 1) {
        places[place] = packed & 31;
        packed >>>= 5;
      }
    }
  }
}
