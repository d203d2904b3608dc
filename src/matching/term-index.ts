import type { CompiledRubric } from "./compile.ts";
import type { Response, Term } from "./response.ts";

/**
 * The terms of all responses of a rubric as columns of numbers. A station is looked through for each of some two
 * thousand responses; read from the responses themselves, an object a term, most of that time went into waiting for memory.
 */
export class TermIndex {
  /** By response (`Response.place`), and one more: the row of its first term. */
  readonly starts: Int32Array;
  /** By row: the list of keys of the term, -1 of a plain one; its weight; its weight as one of the response's own words. */
  readonly lists: Int32Array;
  readonly weights: Float64Array;
  readonly ownWeights: Float64Array;
  /** How many lists of keys there are. */
  readonly size: number;

  private readonly keys = new Map<string, number>();
  /** By key, and one more: the row of its first list in `carried`. */
  readonly keyStarts: Int32Array;
  /** By row: a list that has the key, how surely the key stands for it, and the key's place in it. */
  readonly carried: Int32Array;
  readonly qualities: Float64Array;
  readonly ranks: Uint8Array;

  /** Numbers the responses. */
  constructor(rubric: Asked) {
    const responses = responsesOf(rubric);
    const rows = responses.reduce((sum, { terms }) => sum + terms.length, 0);
    this.starts = new Int32Array(responses.length + 1);
    this.lists = new Int32Array(rows).fill(-1);
    this.weights = new Float64Array(rows);
    this.ownWeights = new Float64Array(rows);
    const places = new Map<Term["keys"], number>();
    let row = 0;
    for (let place = 0; place < responses.length; place += 1) {
      const response = responses[place]!;
      response.place = place;
      this.starts[place] = row;
      for (const { plain, keys, weight, text } of response.terms) {
        this.weights[row] = weight;
        if (!plain) {
          let list = places.get(keys);
          if (list === undefined) places.set(keys, (list = places.size));
          this.lists[row] = list;
          if (text !== "{quantity}") this.ownWeights[row] = weight;
        }
        row += 1;
      }
    }
    this.starts[responses.length] = row;
    this.size = places.size;
    // For each key the lists that have it: counted first, then filled in.
    const sizes: number[] = [];
    const total = [...places.keys()].reduce((sum, list) => sum + list.length, 0);
    const keyOf = new Int32Array(total);
    let at = 0;
    for (const list of places.keys()) {
      for (const { key } of list) {
        let place = this.keys.get(key);
        if (place === undefined) this.keys.set(key, (place = sizes.push(0) - 1));
        sizes[place]! += 1;
        keyOf[at++] = place;
      }
    }
    this.keyStarts = new Int32Array(sizes.length + 1);
    for (let key = 0; key < sizes.length; key += 1) this.keyStarts[key + 1] = this.keyStarts[key]! + sizes[key]!;
    const next = this.keyStarts.slice();
    this.carried = new Int32Array(total);
    this.qualities = new Float64Array(total);
    this.ranks = new Uint8Array(total);
    at = 0;
    for (const [list, place] of places) {
      for (let rank = 0; rank < list.length; rank += 1) {
        const to = next[keyOf[at++]!]!++;
        this.carried[to] = place;
        this.qualities[to] = list[rank]!.quality;
        this.ranks[to] = rank;
      }
    }
  }

  private used: { users: Int32Array; userRows: Int32Array; userStarts: Int32Array } | undefined;

  /** For each list of keys the responses that have it, and the rows of their terms: by list, and one more, where its first stands in `users`. */
  get usage(): { users: Int32Array; userRows: Int32Array; userStarts: Int32Array } {
    if (this.used !== undefined) return this.used;
    const userStarts = new Int32Array(this.size + 1);
    for (const list of this.lists) if (list >= 0) userStarts[list + 1]! += 1;
    for (let list = 0; list < this.size; list += 1) userStarts[list + 1]! += userStarts[list]!;
    const users = new Int32Array(userStarts[this.size]!);
    const userRows = new Int32Array(users.length);
    const next = userStarts.slice();
    for (let place = 0; place + 1 < this.starts.length; place += 1) {
      for (let row = this.starts[place]!; row < this.starts[place + 1]!; row += 1) {
        const list = this.lists[row]!;
        if (list < 0) continue;
        const at = next[list]!++;
        users[at] = place;
        userRows[at] = row;
      }
    }
    return (this.used = { users, userRows, userStarts });
  }

  /** Place of a key, -1 where no term of the rubric has it. */
  keyAt(key: string): number {
    return this.keys.get(key) ?? -1;
  }
}

type Asked = Pick<CompiledRubric, "elements" | "unsafe" | "questions" | "cues">;

/** Every response that is looked for anywhere. */
function responsesOf({ elements, unsafe, questions, cues }: Asked): Response[] {
  const all: Response[] = [];
  const take = (responses: readonly Response[]) => {
    for (const response of responses) all.push(response);
  };
  for (const { say, incorrect, elsewhere } of elements) {
    take(say);
    take(incorrect);
    for (const { responses } of elsewhere) take(responses);
  }
  for (const { say } of unsafe) take(say);
  for (const { says, answer, incorrect } of questions) {
    take(says);
    take(answer);
    take(incorrect);
  }
  for (const { says } of cues) take(says);
  return all;
}
