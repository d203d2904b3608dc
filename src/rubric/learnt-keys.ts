/* What reading by what was learnt has to know of its form. Apart from what checks the form, which loads zod: marking by a shipped rubric needs none. */

/** How an unsafe statement is called among the elements: no id of an item has a colon. Of its two figures `about` tells whether it is stated. */
export function statementKey(statement: string): string {
  return `unsafe:${statement}`;
}

/** Whether a key is an unsafe statement's. */
export function isStatementKey(key: string): boolean {
  return key.startsWith("unsafe:");
}

/** In place of `about`, of an element of which nothing is known: log-odds so low that no words bring it about. */
export const NOTHING_KNOWN = -1000;
