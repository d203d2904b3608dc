/** Ctrl-C and a polite end from outside let the files in work be finished; a second one ends at once. */
export function onInterrupt(): { signal: NodeJS.Signals | null; forget: () => void } {
  const state = { signal: null as NodeJS.Signals | null, forget: () => {} };
  const stop = (signal: NodeJS.Signals) => {
    state.signal = signal;
    state.forget();
  };
  state.forget = () => {
    process.off("SIGINT", stop);
    process.off("SIGTERM", stop);
  };
  process.on("SIGINT", stop);
  process.on("SIGTERM", stop);
  return state;
}

/** By custom of the shell: 128 and the signal's number. */
export const SIGNAL_EXIT: Partial<Record<NodeJS.Signals, number>> = { SIGINT: 130, SIGTERM: 143 };
