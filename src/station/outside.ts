import { clauseStart, cuesOf, type Scene } from "./scene.ts";
import type { Voices } from "./voices.ts";

/** The model knows only candidate and patient; what it says of a debrief is believed so much less. */
const OUTSIDE_DISCOUNT = 0.6;

/**
 * After the station, from the first phrase of a debrief on, the one who speaks like a professional is most likely
 * the examiner or coach, and who answers may be the candidate or whoever played the patient: unknown.
 * Roles that labels tell stay as they are.
 */
export function reviseOutside(scene: Scene, voices: Voices, end: number): Voices {
  const debrief = cuesOf(scene, ["examiner_question", "feedback"], Math.max(0, end - 1))[0];
  if (debrief === undefined) return voices;
  const from = Math.max(end, clauseStart(scene, debrief.first));
  const roles = [...voices.roles];
  const belief = voices.belief.slice();
  for (let at = from; at < roles.length; at++) {
    if (voices.modelled[at] === 0) continue;
    if (roles[at] === "candidate") roles[at] = "examiner";
    else if (roles[at] === "patient") roles[at] = "unknown";
    belief[at] = belief[at]! * OUTSIDE_DISCOUNT;
  }
  return { ...voices, roles, belief };
}
