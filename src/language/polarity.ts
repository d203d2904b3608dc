import { carryDenials } from "./carried-denial.ts";
import type { Clause } from "./clause.ts";
import { deniedByClause } from "./denial.ts";
import { eitherWay } from "./either-way.ts";
import { carrySuppositions, supposedByClause } from "./supposition.ts";
import type { Token } from "./token.ts";

/** What a token's clause does with it. */
export interface Polarity {
  /** Denied: by a denial before it, or by what is said about it behind. */
  negated: boolean;
  /** Speaks of what may or does happen ("if you don't shake it"), not of what to do. */
  hypothetical: boolean;
  /**
   * What it comes to is the same denied or not: what is looked for ("make sure there's no fluff", "look for fluff"), and
   * what somebody cannot or can hardly do.
   */
  eitherWay: boolean;
}

/** The polarity of every token, worked out once for each clause. */
export function polarityOf(tokens: readonly Token[], clauses: readonly Clause[]): Polarity[] {
  const supposedHere = supposedByClause(tokens, clauses);
  const deniedHere = deniedByClause(tokens, clauses, supposedHere);
  const negated = [...deniedHere];
  carryDenials(tokens, clauses, (place) => deniedHere[place]!, (first, end) => negated.fill(true, first, end));
  const hypothetical = carrySuppositions(tokens, clauses, supposedHere);
  const same = eitherWay(tokens, negated);
  return tokens.map((_, place) => ({ negated: negated[place]!, hypothetical: hypothetical[place]!, eitherWay: same[place]! }));
}
