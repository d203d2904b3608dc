import type { Passage } from "./passages.ts";

/** A passage whose words are mostly spoken for by a better fit of another item was meant for that item. */
const SPOKEN_FOR = 0.7;
/** So much worse a fit is worse; nearer than that both may stand (two items in one breath). */
const CLEARLY_BETTER = 0.06;

/**
 * Orders the passages of the whole station by fit and closes those whose words a better one has taken, so that one
 * sentence does not pay twice where it should not.
 * @param passages open ones only.
 */
export function assign(passages: readonly Passage[]): { kept: Passage[]; lookAlikes: Passage[] } {
  const owners = new Map<number, Passage[]>();
  const kept: Passage[] = [];
  const lookAlikes: Passage[] = [];
  const ranked = [...passages].sort((a, b) => b.coverage - a.coverage || weightOf(b) - weightOf(a) || a.first - b.first);
  for (const passage of ranked) {
    if (takenBy(passage, owners)) {
      lookAlikes.push(passage);
      continue;
    }
    kept.push(passage);
    for (const { hit } of passage.window.aligned) {
      for (let place = hit.first; place < hit.end; place += 1) {
        const list = owners.get(place);
        if (list) list.push(passage);
        else owners.set(place, [passage]);
      }
    }
  }
  kept.sort((a, b) => a.first - b.first);
  return { kept, lookAlikes };
}

/** "Once a week", said of the cleaning, is no wrong number for how often it is used: it is right where it belongs. */
export function withoutOthersNumbers(passages: readonly Passage[]): Passage[] {
  return passages.filter(({ verdict, quantity, element }) => {
    if (verdict !== "wrong" || quantity === undefined) return true;
    return !passages.some((other) => other.verdict === "right" && other.element !== element && other.element.quantity !== null && other.quantity?.first === quantity.first);
  });
}

function weightOf(passage: Passage): number {
  return passage.window.aligned.reduce((sum, { term }) => sum + passage.window.response.terms[term]!.weight, 0);
}

function tokensOf(passage: Passage): number {
  return new Set(passage.window.aligned.flatMap(({ hit }) => Array.from({ length: hit.end - hit.first }, (_, k) => hit.first + k))).size;
}

function takenBy(passage: Passage, owners: ReadonlyMap<number, Passage[]>): boolean {
  const shares = new Map<Passage, number>();
  let all = 0;
  for (const { term, hit } of passage.window.aligned) {
    const { weight } = passage.window.response.terms[term]!;
    all += weight;
    for (const owner of owners.get(hit.first) ?? []) shares.set(owner, (shares.get(owner) ?? 0) + weight);
  }
  for (const [owner, share] of shares) {
    if (owner.element === passage.element) return true;
    // The elements of one item are meant to be said together: "two sprays up each nostril".
    if (owner.element.item === passage.element.item) continue;
    // The better fit must also say more than the words they share, or the two simply ask for the same thing.
    if (share / all > SPOKEN_FOR && owner.coverage - passage.coverage > CLEARLY_BETTER && tokensOf(owner) > tokensOf(passage)) return true;
  }
  return false;
}
