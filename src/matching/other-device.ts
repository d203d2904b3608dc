import { devicesIn } from "../language/devices.ts";
import { devicesNamed, type CompiledRubric } from "./compile.ts";
import type { Passage } from "./passages.ts";
import { remembered } from "./remembered.ts";
import type { Response } from "./response.ts";
import type { Stream } from "./stream.ts";

/** A device named so many tokens before the passage, in its sentence, is what the passage speaks of. */
const REACH = 18;
/** Words before the device that only compare with it, set it aside, or tell where something is. */
const COMPARES = /^(unlike|like|than|not|nor|or|and|as|next|beside|behind|alongside)$/;
/** So many words may stand between them and the device: "unlike the syrup", "like your blood pressure tablets". */
const COMPARED_WITHIN = 4;
/** Behind a device these tell of what is in hand again: "that was her insulin, these go nowhere near the fridge". */
const IN_HAND = /^(these|this|yours)$/;

const devicesOf = remembered(({ text }: Response) => devicesNamed([text]));

/** Whether passages of the element, or this response itself, may speak of it. */
const isOwn = (kind: number, { element, window }: Passage) => element.devices.includes(kind) || devicesOf(window.response).includes(kind);

/** Closes passages that speak of a device which neither the rubric's scenario nor the item names: "with your blue inhaler you squirt it as ...". */
export function closeOtherDevices(passages: readonly Passage[], stream: Stream, rubric: CompiledRubric): Passage[] {
  const named = devicesIn(stream.tokens);
  const own = named.filter(({ kind }) => rubric.devices.has(kind));
  const strange = named.filter(({ kind, first }) => !rubric.devices.has(kind) && !stream.withdrawn.has(first) && !isCompared(first, stream));
  if (strange.length === 0) return [...passages];
  return passages.map((passage) => {
    if (passage.element.kind !== "tell" || !strange.some((device) => !isOwn(device.kind, passage) && governs(device.first, passage, stream))) return passage;
    // "You've a new tablet and a meter": its own is spoken of too.
    if (own.some(({ first }) => passage.first <= first && first < passage.end)) return passage;
    return { ...passage, closed: [...passage.closed, "look-alike"] };
  });
}

function isCompared(device: number, { tokens }: Stream): boolean {
  for (let place = device - 1; place >= Math.max(0, device - COMPARED_WITHIN); place -= 1) {
    if (tokens[place]!.after !== "") return false;
    if (COMPARES.test(tokens[place]!.text)) return true;
  }
  return false;
}

function governs(device: number, passage: Passage, stream: Stream): boolean {
  if (device >= passage.end || stream.position[passage.first]! - stream.position[device]! > REACH) return false;
  if (stream.turnOf[device] !== stream.turnOf[passage.first]) return false;
  for (let place = device; place < passage.first; place += 1) if (/[.?!]/.test(stream.tokens[place]!.after) || IN_HAND.test(stream.tokens[place]!.text)) return false;
  return true;
}
