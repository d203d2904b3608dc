import { devicesIn } from "../language/devices.ts";
import type { CompiledRubric } from "./compile.ts";
import type { Passage } from "./passages.ts";
import type { Stream } from "./stream.ts";

/** A device named so many tokens before the passage, in its sentence, is what the passage speaks of. */
const REACH = 14;
/** Words before the device that only compare with it or set it aside. */
const COMPARES = /^(unlike|like|than|not|nor|or|and|as|your other)$/;

/** Closes passages that speak of a device which the rubric never names: "with your blue inhaler you squirt it as ...". */
export function closeOtherDevices(passages: readonly Passage[], stream: Stream, rubric: CompiledRubric): Passage[] {
  const strange = devicesIn(stream.tokens).filter(({ kind, first }) => !rubric.devices.has(kind) && !COMPARES.test(stream.tokens[first - 1]?.text ?? ""));
  if (strange.length === 0) return [...passages];
  return passages.map((passage) => (passage.element.kind === "tell" && strange.some((device) => governs(device.first, passage, stream)) ? { ...passage, closed: [...passage.closed, "look-alike"] } : passage));
}

function governs(device: number, passage: Passage, stream: Stream): boolean {
  if (device >= passage.end || stream.position[passage.first]! - stream.position[device]! > REACH) return false;
  if (stream.turnOf[device] !== stream.turnOf[passage.first]) return false;
  for (let place = device; place < passage.first; place += 1) if (/[.?!]/.test(stream.tokens[place]!.after)) return false;
  return true;
}
