import type { Finding } from "../problem/problem.ts";
import type { Transcript } from "../transcript/types.ts";
import type { Announcement } from "./announcements.ts";
import { isPunctuated } from "./clauses.ts";
import { courseOf } from "./course.ts";
import { OFFICIAL, type CueKind, type CueMatch } from "./cues.ts";
import { marginals, type ChainScores } from "./chain.ts";
import { mapLabels, type LabelRole } from "./labels.ts";
import { roleFeatures } from "./role-features.ts";
import { chainScores, weigh } from "./role-model.ts";
import type { Token } from "./token.ts";
import type { Role, Station, StationOptions } from "./types.ts";
import { decoding, roleWeights } from "./weights.ts";

/** Who says each token. */
export interface Voices {
  roles: Role[];
  /** Probability of that role, before calibration where the model gave it. */
  belief: Float64Array;
  /** Whether the role came from the sequence model (and its belief wants calibrating). */
  modelled: Uint8Array;
  source: Station["roleSource"];
  labels: LabelRole[];
  findings: Finding[];
}

/** What an examiner says before, at the edges of and after a station. */
const AROUND: readonly CueKind[] = [...OFFICIAL, "setup", "examiner_question", "feedback"];
/** A log-odds that no other evidence outweighs. */
const CERTAIN = 1e4;
/** Log-odds a word that a mixed label's own role still carries, beside the model. */
const MIXED_LABEL_PULL = 0.3;
/** Belief in a role that the announcement's own wording tells. */
const ANNOUNCED = 0.9;

export function assignVoices(transcript: Transcript, tokens: readonly Token[], announcements: readonly Announcement[], cues: readonly CueMatch[], options: StationOptions): Voices {
  const count = tokens.length;
  const labels = tokens.map((token) => transcript.segments[transcript.words[token.word]!.segment]!.speaker);
  const announced = new Uint8Array(count);
  for (const span of announcements) announced.fill(1, span.first, span.end);

  const around = new Uint8Array(count);
  for (const cue of cues) if (AROUND.includes(cue.kind)) around.fill(1, cue.first, cue.end);

  // The model reads the conversation without the announcements that break into it.
  const spoken = tokens.map((_, at) => at).filter((at) => announced[at] === 0);
  const heard = spoken.map((at) => tokens[at]!);
  const scores = weigh(chainScores(roleFeatures(heard), roleWeights()), decoding(isPunctuated(tokens)));
  const mapping = mapLabels({ transcript, tokens, labels, announced, around, spoken, scores, options });

  const roles: Role[] = new Array<Role>(count).fill("unknown");
  const belief = new Float64Array(count);
  const modelled = new Uint8Array(count);
  const clamped: ChainScores = { ...scores, emission: scores.emission.slice() };
  const fixed = new Map(mapping.labels.filter((each) => !each.mixed).map((each) => [each.label, each]));
  const mixed = new Map(mapping.labels.filter((each) => each.mixed).map((each) => [each.label, each]));
  spoken.forEach((at, place) => {
    const label = labels[at] ?? null;
    const told = label === null ? undefined : fixed.get(label);
    const leaning = label === null ? undefined : mixed.get(label);
    if (told?.role === "candidate") clamped.emission[place] = CERTAIN;
    if (told?.role === "patient") clamped.emission[place] = -CERTAIN;
    if (leaning?.role === "candidate") clamped.emission[place]! += MIXED_LABEL_PULL;
    if (leaning?.role === "patient") clamped.emission[place]! -= MIXED_LABEL_PULL;
  });
  // The course of the talk is told by cues whose wording is the candidate's; labels go before it.
  const course = courseOf(tokens, cues, isPunctuated(tokens));
  spoken.forEach((at, place) => {
    if (Math.abs(clamped.emission[place]!) < CERTAIN) clamped.emission[place]! += course[at]!;
  });
  // The likelier role at every word: it gets more words right than the single best sequence does.
  const { candidate } = marginals(clamped);
  spoken.forEach((at, place) => {
    const p = candidate[place]!;
    roles[at] = p >= 0.5 ? "candidate" : "patient";
    belief[at] = Math.max(p, 1 - p);
    modelled[at] = 1;
  });
  for (let at = 0; at < count; at++) {
    const label = labels[at] ?? null;
    const told = label === null ? undefined : fixed.get(label);
    // An announcement read out by the patient's own voice ("two minutes left") is an announcement all the same,
    // unless a person wrote the label.
    if (announced[at] === 1 && (told === undefined || !told.told)) {
      roles[at] = "announcer";
      belief[at] = ANNOUNCED;
      modelled[at] = 0;
    } else if (told !== undefined) {
      roles[at] = told.role;
      belief[at] = told.confidence;
      modelled[at] = 0;
    }
  }
  return { roles, belief, modelled, source: mapping.source, labels: mapping.labels, findings: mapping.findings };
}
